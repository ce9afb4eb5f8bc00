// Package tidy holds tests about the tree itself: comments, the length of functions,
// words that must not stay, variables that must not change, modules that nobody needs.
package tidy

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"slices"

	"suffice/internal/tree"
)

// A File is one parsed Go file.
type File struct {
	Name string // slashes, from the module's root
	Fset *token.FileSet
	*ast.File
}

// Package gives the folder the file lies in.
func (f File) Package() string { return path.Dir(f.Name) }

// Parse reads every Go file of the module.
func Parse(root string) ([]File, error) {
	names, err := tree.Go(root)
	if err != nil {
		return nil, err
	}
	fset := token.NewFileSet()
	files := make([]File, len(names))
	for i, name := range names {
		parsed, err := parser.ParseFile(fset, filepath.Join(root, name), nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		files[i] = File{Name: name, Fset: fset, File: parsed}
	}
	return files, nil
}

// A Length is how many lines a function's body has.
type Length struct {
	Lines int
	Name  string // "water/tank.go: Step"
}

// Lengths gives the functions of files, longest first.
func Lengths(files []File) []Length {
	var all []Length
	for _, f := range files {
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Body != nil {
				all = append(all, Length{bodyLines(f.Fset, fn.Body), f.Name + ": " + fn.Name.Name})
			}
		}
	}
	slices.SortFunc(all, func(a, b Length) int { return b.Lines - a.Lines })
	return all
}

// bodyLines counts the lines between the braces; a body beside its braces has one.
func bodyLines(fset *token.FileSet, body *ast.BlockStmt) int {
	return max(1, fset.Position(body.Rbrace).Line-fset.Position(body.Lbrace).Line-1)
}
