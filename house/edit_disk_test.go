package house

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A frailDisk is a disk in memory that can fail or lose its power before any step. What a
// running program sees is not what is left then: bytes and names that were not synced may
// be there or not, each for itself.
type frailDisk struct {
	bytes            map[string]string // as a program sees them
	durable          map[string]string // what is there for certain after a power cut
	pending          []func(map[string]string)
	pendingIn        []string        // the folder whose sync makes each pending step certain
	unsynced         map[string]bool // written files whose bytes are not certain
	loose            string          // a folder made whose own name is not certain yet
	steps, fail, cut int             // the step at which it fails, or loses its power; 0 for never
}

var errFailed, errCut = errors.New("the disk failed"), errors.New("the power went")

func newFrailDisk(files map[string]string) *frailDisk {
	return &frailDisk{bytes: maps.Clone(files), durable: maps.Clone(files), unsynced: make(map[string]bool)}
}

// step counts one step and says whether it may take place.
func (d *frailDisk) step() error {
	d.steps++
	switch {
	case d.cut > 0 && d.steps >= d.cut:
		return errCut // and nothing more happens
	case d.steps == d.fail:
		return errFailed
	}
	return nil
}

// later notes a change of names that is certain only once its folder is synced.
func (d *frailDisk) later(path string, change func(map[string]string)) {
	d.pending, d.pendingIn = append(d.pending, change), append(d.pendingIn, filepath.Dir(path))
}

func (d *frailDisk) read(path string) ([]byte, error) {
	text, there := d.bytes[path]
	if !there {
		return nil, fs.ErrNotExist
	}
	return []byte(text), d.step()
}

func (d *frailDisk) write(path string, text []byte, _ string) error {
	if err := d.step(); err != nil {
		if d.cut > 0 {
			d.bytes[path], d.unsynced[path] = string(text[:len(text)/2]), true
		}
		return err
	}
	d.bytes[path], d.unsynced[path] = string(text), true
	return nil
}

func (d *frailDisk) sync(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	if _, isFile := d.bytes[path]; isFile {
		delete(d.unsynced, path)
		text := d.bytes[path]
		d.later(path, func(m map[string]string) { m[path] = text })
		return nil
	}
	if d.loose != "" && filepath.Dir(d.loose) == path {
		d.loose = ""
	}
	for i := 0; i < len(d.pending); {
		if d.pendingIn[i] != path {
			i++
			continue
		}
		d.pending[i](d.durable)
		d.pending, d.pendingIn = slices.Delete(d.pending, i, i+1), slices.Delete(d.pendingIn, i, i+1)
	}
	return nil
}

func (d *frailDisk) rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	text := d.bytes[from]
	d.bytes[to] = text
	if d.unsynced[from] {
		d.unsynced[to] = true
		text = text[:len(text)/3] // its name may arrive without its bytes
	}
	delete(d.bytes, from)
	delete(d.unsynced, from)
	d.later(to, func(m map[string]string) { m[to] = text; delete(m, from) })
	return nil
}

func (d *frailDisk) remove(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	if _, there := d.bytes[path]; !there {
		return fs.ErrNotExist
	}
	delete(d.bytes, path)
	delete(d.unsynced, path)
	d.later(path, func(m map[string]string) { delete(m, path) })
	return nil
}

func (d *frailDisk) folder(path string) error {
	if len(d.namesIn(path)) == 0 {
		d.loose = path
	}
	return d.step()
}

func (d *frailDisk) list(path string) ([]string, error) { return d.namesIn(path), d.step() }

func (d *frailDisk) namesIn(path string) (names []string) {
	for name := range d.bytes {
		if filepath.Dir(name) == path {
			names = append(names, filepath.Base(name))
		}
	}
	slices.Sort(names)
	return names
}

// afterCut gives what is found when the power is back: what is certain, and of the rest
// what kept says.
func (d *frailDisk) afterCut(kept func() bool) *frailDisk {
	found := maps.Clone(d.durable)
	for _, change := range d.pending {
		if kept() {
			change(found)
		}
	}
	for _, path := range slices.Sorted(maps.Keys(d.unsynced)) { // half written files may lie there too
		if _, there := found[path]; kept() && !there {
			found[path] = ""
		}
	}
	if d.loose != "" && !kept() {
		maps.DeleteFunc(found, func(path, _ string) bool { return filepath.Dir(path) == d.loose })
	}
	return newFrailDisk(found)
}

const frailPath = "house.yaml"

// Two texts of one house, the second made by a change of the first.
func frailTexts(t testing.TB) (old, next string, change Change) {
	t.Helper()
	change = Change{"water.tanks[0].holds", "7 kL"}
	text, _, err := Splice(frailPath, []byte(whole), change)
	if err != nil {
		t.Fatal(err)
	}
	return whole, string(text), change
}

// has reports whether some file holds exactly a text: the house file, a version, what was undone.
func (d *frailDisk) has(text string) bool {
	for name, is := range d.bytes {
		if is == text && !strings.HasSuffix(name, ".new") {
			return true
		}
	}
	return false
}

// Whenever the power goes, the file is wholly the old or wholly the new one, the old text is
// in one of the files, and the next change and its undo work.
func TestPowerCutLosesNothing(t *testing.T) {
	old, next, change := frailTexts(t)
	all := newFrailDisk(map[string]string{frailPath: old})
	if _, err := edit(all, frailPath, HashOf([]byte(old)), []Change{change}); err != nil {
		t.Fatal(err)
	}
	if _, err := undo(all, frailPath, HashOf([]byte(next))); err != nil {
		t.Fatal(err)
	}
	steps := all.steps
	if steps < 20 {
		t.Fatalf("a change and its undo are %d steps, so the cuts would miss some", steps)
	}
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		d := newFrailDisk(map[string]string{frailPath: old})
		d.cut = rapid.IntRange(1, steps).Draw(t, "cut")
		_, err := edit(d, frailPath, HashOf([]byte(old)), []Change{change})
		if err == nil {
			_, err = undo(d, frailPath, HashOf([]byte(next)))
		}
		if err == nil {
			t.Fatalf("the cut at step %d was not noticed", d.cut)
		}
		found := d.afterCut(func() bool { return rapid.Bool().Draw(t, "kept") })
		now := found.bytes[frailPath]
		if now != old && now != next {
			t.Fatalf("cut at step %d: the file is neither the old nor the new one:\n%s", d.cut, now)
		}
		if !found.has(old) {
			t.Fatalf("cut at step %d: the old text is nowhere: %v", d.cut, slices.Sorted(maps.Keys(found.bytes)))
		}
		seen[now]++
		if now == next {
			if back, err := undo(found, frailPath, HashOf([]byte(next))); err != nil || string(back.Text) != old {
				t.Fatalf("cut at step %d: the change cannot be undone: %v", d.cut, err)
			}
		}
		again, err := edit(found, frailPath, HashOf([]byte(old)), []Change{change})
		if err != nil || string(again.Text) != next {
			t.Fatalf("cut at step %d: the next change fails: %v", d.cut, err)
		}
		if back, err := undo(found, frailPath, again.Hash); err != nil || found.bytes[frailPath] != old {
			t.Fatalf("cut at step %d: the next undo fails: %v, %+v", d.cut, err, back.Changes)
		}
	})
	if seen[old] == 0 || seen[next] == 0 {
		t.Errorf("the cuts found the old text %d times and the new one %d times: both were to be seen", seen[old], seen[next])
	}
}

// Whatever step fails, the error says whether the file is the old or the new one, no text is
// lost and no draft stays.
func TestFailuresSayWhatHolds(t *testing.T) {
	old, next, change := frailTexts(t)
	whole := newFrailDisk(map[string]string{frailPath: old})
	if _, err := edit(whole, frailPath, HashOf([]byte(old)), []Change{change}); err != nil {
		t.Fatal(err)
	}
	failures := 0
	for step := 1; step <= whole.steps; step++ {
		d := newFrailDisk(map[string]string{frailPath: old})
		d.fail = step
		_, err := edit(d, frailPath, HashOf([]byte(old)), []Change{change})
		if err == nil {
			if d.bytes[frailPath] != next {
				t.Errorf("step %d failed, no error, and the file is not the new one", step)
			}
			continue // taking old versions away may fail without harm
		}
		failures++
		if !errors.Is(err, errFailed) {
			t.Errorf("step %d: %v does not say that the disk failed", step, err)
		}
		want := old
		if strings.Contains(err.Error(), "the change is in the file") {
			want = next
		}
		if d.bytes[frailPath] != want || !d.has(old) {
			t.Errorf("step %d: %v, but the file is\n%s", step, err, d.bytes[frailPath])
		}
		for name := range d.bytes {
			if strings.HasSuffix(name, ".new") {
				t.Errorf("step %d: the draft %s stays", step, name)
			}
		}
	}
	if failures < 8 {
		t.Errorf("only %d of %d steps failed", failures, whole.steps)
	}
}

// A killedDisk is the true one, on which the program is killed at a step, in the middle of
// what it writes.
type killedDisk struct {
	osDisk
	left *int
}

func (d killedDisk) step() {
	if *d.left--; *d.left == 0 {
		d.kill()
	}
}

func (d killedDisk) kill() {
	p, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = p.Kill()
	}
	panic(fmt.Sprintf("not killed: %v", err))
}

func (d killedDisk) write(path string, text []byte, like string) error {
	if *d.left == 1 {
		_ = os.WriteFile(path, text[:len(text)/2], 0o644) // the program ends in the middle of it
	}
	d.step()
	return d.osDisk.write(path, text, like)
}
func (d killedDisk) sync(path string) error       { d.step(); return d.osDisk.sync(path) }
func (d killedDisk) rename(from, to string) error { d.step(); return d.osDisk.rename(from, to) }
func (d killedDisk) remove(path string) error     { d.step(); return d.osDisk.remove(path) }
func (d killedDisk) folder(path string) error     { d.step(); return d.osDisk.folder(path) }

const killAt = "HOUSE_TEST_KILLED_AT"

// A program killed at any step of a change leaves the old file or the new one, and both can
// be worked on. The test calls itself as the program that is killed.
func TestKilledProgramLosesNothing(t *testing.T) {
	old, next, change := frailTexts(t)
	if at, is := os.LookupEnv(killAt); is {
		step, path, _ := strings.Cut(at, " ")
		left, err := strconv.Atoi(step)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := edit(killedDisk{left: &left}, path, HashOf([]byte(old)), []Change{change}); err != nil {
			t.Fatal(err)
		}
		return
	}
	kills, ends := 0, map[string]int{}
	for step := 1; ; step++ {
		path := filepath.Join(t.TempDir(), frailPath)
		if err := os.WriteFile(path, []byte(old), 0o640); err != nil {
			t.Fatal(err)
		}
		child := exec.Command(os.Args[0], "-test.run=^TestKilledProgramLosesNothing$")
		child.Env = append(os.Environ(), fmt.Sprintf("%s=%d %s", killAt, step, path))
		err := child.Run()
		text, hash, readErr := ReadText(path)
		if readErr != nil || string(text) != old && string(text) != next {
			t.Fatalf("killed at step %d: %v, the file is\n%s", step, readErr, text)
		}
		if err == nil {
			break // it came to its end before that step
		}
		kills++
		ends[string(text)]++
		if string(text) == next {
			back, err := Undo(path, hash)
			if err != nil || string(back.Text) != old {
				t.Fatalf("killed at step %d: undo: %v", step, err)
			}
			hash = back.Hash
		}
		if _, err := Edit(path, hash, []Change{change}); err != nil {
			t.Errorf("killed at step %d: the next change: %v", step, err)
		}
	}
	if kills < 8 || ends[old] == 0 || ends[next] == 0 {
		t.Errorf("%d kills, %d left the old file and %d the new one", kills, ends[old], ends[next])
	}
}
