// Package tidy holds tests about the tree itself: comments, the length of functions,
// words that must not stay, variables that must not change, modules that nobody needs.
package tidy

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"path/filepath"
	"slices"
	"strings"

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

// Skips gives a line for every test that may skip itself: it would be green for
// nothing. A property test that throws one draw away (rapid.T) draws another.
func Skips(files []File) []string {
	var found []string
	for _, f := range files {
		var around []*ast.FuncType // the functions that a node stands in
		var visit func(n ast.Node) bool
		inside := func(fn *ast.FuncType, body *ast.BlockStmt) bool {
			if body == nil {
				return false // written in assembly
			}
			around = append(around, fn)
			ast.Inspect(body, visit)
			around = around[:len(around)-1]
			return false
		}
		visit = func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				return inside(n.Type, n.Body)
			case *ast.FuncLit:
				return inside(n.Type, n.Body)
			case *ast.CallExpr:
				if s, ok := n.Fun.(*ast.SelectorExpr); ok && skips(s, around) {
					found = append(found, fmt.Sprintf("%s:%d: a test that skips itself is green for nothing", f.Name, f.Fset.Position(n.Pos()).Line))
				}
			}
			return true
		}
		ast.Inspect(f.File, visit)
	}
	return found
}

// skips reports whether a call skips the whole test: its receiver is the argument of
// the nearest function that has one of this name.
func skips(s *ast.SelectorExpr, around []*ast.FuncType) bool {
	name := types.ExprString(s.X)
	if s.Sel.Name != "Skip" && s.Sel.Name != "Skipf" && s.Sel.Name != "SkipNow" {
		return false
	}
	for _, fn := range slices.Backward(around) {
		for _, field := range fn.Params.List {
			for _, ident := range field.Names {
				if ident.Name == name {
					return strings.HasPrefix(types.ExprString(field.Type), "*testing.") || strings.HasPrefix(types.ExprString(field.Type), "testing.")
				}
			}
		}
	}
	return false
}
