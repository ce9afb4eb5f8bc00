package house

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
)

// MostKept is how many earlier texts of a house file are kept beside it; the oldest goes
// when one more comes.
const MostKept = 50

// versionsFolder holds the earlier texts, beside the house file.
const versionsFolder = ".versions"

// A disk is what keeping a file safe asks of a file system. Each may fail, and the power
// may go between any two: what was not synced by then may be lost.
type disk interface {
	read(path string) ([]byte, error)                  // at most one byte more than a house file may have
	write(path string, text []byte, like string) error // whole, with the permissions of another file, replacing what is there
	sync(path string) error                            // a file's bytes, or a folder's names
	rename(from, to string) error                      // replacing what is there
	remove(path string) error
	folder(path string) error           // made where it is not there
	list(path string) ([]string, error) // names in a folder; none where it is not there
}

// osDisk is the file system of the machine.
type osDisk struct{}

func (osDisk) read(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() // only read from
	return io.ReadAll(io.LimitReader(f, maxBytes+1))
}

func (osDisk) write(path string, text []byte, like string) error {
	info, err := os.Stat(like)
	switch {
	case err != nil:
		return err
	case info.Mode().Perm()&0o200 == 0:
		return fmt.Errorf("%s is protected against writing: allow it first", like)
	}
	if err := os.WriteFile(path, text, info.Mode().Perm()); err != nil {
		return err
	}
	return os.Chmod(path, info.Mode().Perm()) // as it is, whatever the mask of new files
}

func (osDisk) sync(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	how := os.O_RDWR
	if info.IsDir() {
		if runtime.GOOS == "windows" {
			return nil // it has no sync of folders; renames are kept by its own journal
		}
		how = os.O_RDONLY
	}
	f, err := os.OpenFile(path, how, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

func (osDisk) rename(from, to string) error { return os.Rename(from, to) }
func (osDisk) remove(path string) error     { return os.Remove(path) }

func (osDisk) folder(path string) error {
	return os.MkdirAll(path, 0o755) // the texts in it have the permissions of the house file itself
}

func (osDisk) list(path string) ([]string, error) {
	entries, err := os.ReadDir(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = e.Name()
	}
	return names, err
}

// ReadText reads the text of a house file and gives its hash, for Edit and Undo.
func ReadText(path string) ([]byte, Hash, error) {
	text, err := osDisk{}.read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, Hash{}, fmt.Errorf("%s: there is no such file: look at the name and the folder", path)
	case err != nil:
		return nil, Hash{}, fmt.Errorf("%s: cannot be read: %w", path, err)
	}
	return text, HashOf(text), nil
}

// A version is an earlier text that is kept.
type version struct {
	number int
	next   string // how the hash of the text begins that took its place
	path   string
}

var versionName = regexp.MustCompile(`^\.([0-9]{6,9})\.([0-9a-f]{16})$`)

func tag(text []byte) string { return HashOf(text).String()[:16] }

// versions lists the earlier texts of a house file, oldest first.
func versions(d disk, path string) ([]version, error) {
	folder := filepath.Join(filepath.Dir(path), versionsFolder)
	names, err := d.list(folder)
	var all []version
	for _, name := range names {
		rest, ours := strings.CutPrefix(name, filepath.Base(path))
		parts := versionName.FindStringSubmatch(rest)
		if !ours || parts == nil {
			continue
		}
		number, _ := strconv.Atoi(parts[1]) // the pattern lets only a few digits through
		all = append(all, version{number, parts[2], filepath.Join(folder, name)})
	}
	slices.SortFunc(all, func(a, b version) int { return a.number - b.number })
	return all, err
}

// replace puts a new text in the place of the old one, so that at every moment the file is
// wholly the one or wholly the other, also after a power cut, and keeps the old one: first
// the old text is put into the folder of versions, then the new one is written beside the
// file, and last it takes the file's name. It gives the path of what was kept.
//
// Left out: a lock. Of two programs that write within the same milliseconds, the
// later one wins; the text of the other is then in neither place.
func replace(d disk, path string, old, next []byte) (kept string, err error) {
	path, err = target(path)
	if err != nil {
		return "", err
	}
	kept, err = keep(d, path, old, tag(next))
	if err == nil {
		err = swap(d, path, old, next)
	}
	if err != nil {
		return "", fmt.Errorf("%s: %s: %w", path, outcome(d, path, next), err)
	}
	prune(d, path)
	return kept, nil
}

// outcome says, after a failure, which text the file has.
func outcome(d disk, path string, next []byte) string {
	if now, err := d.read(path); err == nil && string(now) == string(next) {
		return "the change is in the file, but the disk did not confirm it"
	}
	return "the change was not saved, and the file is as it was"
}

// target gives the file that a link stands for, so that the link stays one.
func target(path string) (string, error) {
	real, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		return path, nil // the write itself will say what is missing
	}
	return real, err
}

// keep puts a text into the folder of versions.
func keep(d disk, path string, text []byte, next string) (string, error) {
	all, err := versions(d, path)
	if err != nil {
		return "", err
	}
	number := 1
	if len(all) > 0 {
		number = all[len(all)-1].number + 1
	}
	folder := filepath.Join(filepath.Dir(path), versionsFolder)
	if err := d.folder(folder); err != nil {
		return "", err
	}
	if err := d.sync(filepath.Dir(path)); err != nil {
		return "", err
	}
	kept := filepath.Join(folder, fmt.Sprintf("%s.%06d.%s", filepath.Base(path), number, next))
	return kept, settle(d, kept, text, path)
}

// settle writes a text under a name, so that the name is never seen with half of it.
func settle(d disk, path string, text []byte, like string) error {
	draft := path + ".new"
	err := d.write(draft, text, like)
	if err == nil {
		err = d.sync(draft)
	}
	if err == nil {
		err = d.rename(draft, path)
	}
	if err != nil {
		return errors.Join(err, gone(d.remove(draft)))
	}
	return d.sync(filepath.Dir(path))
}

// gone leaves out of an error that there was nothing to remove.
func gone(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// swap puts the new text in the place of the old, if that is still there.
func swap(d disk, path string, old, next []byte) error {
	now, err := d.read(path)
	if err != nil {
		return err
	}
	if string(now) != string(old) {
		return ErrChangedOnDisk
	}
	return settle(d, path, next, path)
}

// prune takes away the oldest versions beyond MostKept. One that cannot be removed stays:
// it harms nobody, and the next change tries again.
func prune(d disk, path string) {
	all, err := versions(d, path)
	for i := 0; err == nil && i < len(all)-MostKept; i++ {
		err = d.remove(all[i].path)
	}
}

// Undo brings back the text that stood before the last change by Edit. The hash is of
// the text that is there now. It refuses where somebody else changed the file after that
// change. Undone again, it goes one more step back; what is undone stays beside the file
// as NAME.undone until the next undo.
func Undo(path string, hash Hash) (Result, error) { return undo(osDisk{}, path, hash) }

func undo(d disk, path string, hash Hash) (Result, error) {
	text, err := loadSame(d, path, hash)
	if err != nil {
		return Result{}, err
	}
	if path, err = target(path); err != nil {
		return Result{}, err
	}
	last, old, err := earlier(d, path, text)
	if err != nil {
		return Result{}, err
	}
	undone := path + ".undone"
	if err := settle(d, undone, text, path); err != nil {
		return Result{}, fmt.Errorf("%s: was not undone: %w", path, err)
	}
	if err := swap(d, path, text, old); err != nil {
		return Result{}, fmt.Errorf("%s: %s: %w", path, outcome(d, path, old), err)
	}
	if err := gone(d.remove(last.path)); err != nil {
		return Result{}, fmt.Errorf("%s: was undone, but %s could not be removed: %w", path, last.path, err)
	}
	file, err := Read(path, old)
	if err != nil {
		return Result{}, fmt.Errorf("%s: was undone, but what stood there is not without fault:\n%w", path, err)
	}
	return Result{File: file, Text: old, Hash: HashOf(old), Kept: undone}, nil
}

// earlier finds the text that the present one took the place of.
func earlier(d disk, path string, text []byte) (version, []byte, error) {
	all, err := versions(d, path)
	if err != nil {
		return version{}, nil, err
	}
	for _, v := range slices.Backward(all) {
		old, err := d.read(v.path)
		switch {
		case err != nil:
			return version{}, nil, fmt.Errorf("%s: cannot be read: %w", v.path, err)
		case v.next == tag(text):
			return v, old, nil
		case string(old) != string(text): // else a change that was cut off before it took place
			return version{}, nil, fmt.Errorf("%s: was changed by something else after the last change by this program: compare it with %s and take over by hand what you want back", path, v.path)
		}
	}
	return version{}, nil, fmt.Errorf("%s: there is nothing to undo: no earlier text of it is kept", path)
}
