// Package tree finds the files of this module for the tests and generators that
// read them. It serves the workshop only: nothing that a resident runs imports it.
package tree

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Root gives the folder of go.mod, at or above the working directory.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod at or above the working directory")
		}
		dir = up
	}
}

// Files gives every file under root, sorted, with slashes and without the root.
// Left out are testdata, hidden folders other than .ci, folders that hold a module
// of their own, and what a build leaves behind.
func Files(root string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case path == root:
			return nil
		case entry.IsDir() && left(path, entry.Name()):
			return filepath.SkipDir
		case entry.Type().IsRegular():
			name, err := filepath.Rel(root, path)
			files = append(files, filepath.ToSlash(name))
			return err
		}
		return nil
	})
	slices.Sort(files)
	return files, err
}

func left(path, name string) bool {
	if name != ".ci" && strings.HasPrefix(name, ".") || slices.Contains([]string{"testdata", "node_modules", "bin"}, name) {
		return true
	}
	_, err := os.Stat(filepath.Join(path, "go.mod"))
	return err == nil
}

// Go gives the Go files under root, as Files does.
func Go(root string) ([]string, error) {
	files, err := Files(root)
	return slices.DeleteFunc(files, func(f string) bool { return !strings.HasSuffix(f, ".go") }), err
}

// Notes gives the README files that lie beside test data, which Files leaves out.
func Notes(root string) ([]string, error) {
	var notes []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && path != root && entry.Name() != "testdata" && left(path, entry.Name()):
			return filepath.SkipDir
		case entry.Name() == "README.md" && strings.Contains(filepath.ToSlash(path), "/testdata/"):
			name, err := filepath.Rel(root, path)
			notes = append(notes, filepath.ToSlash(name))
			return err
		}
		return nil
	})
	return notes, err
}
