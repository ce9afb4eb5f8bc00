package tidy

import (
	"errors"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
)

// Changed gives a line for every variable of a package that one of its functions
// other than init assigns to: houses are tried in parallel, and such a variable
// makes them disturb each other. All files are of one package, without its tests.
// Changes through a pointer that was handed on are not seen.
func Changed(files []File) []string {
	var parsed []*ast.File
	for _, f := range files {
		parsed = append(parsed, f.File)
	}
	info := types.Info{Uses: make(map[*ast.Ident]types.Object)}
	// Names are all that is asked for: imports stay unread, and types that depend on them unknown.
	config := types.Config{Importer: unread{}, Error: func(error) {}}
	pkg, _ := config.Check(files[0].Package(), files[0].Fset, parsed, &info)
	var found []string
	for _, f := range files {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Body == nil || fn.Recv == nil && fn.Name.Name == "init" {
				continue
			}
			ast.Inspect(fn.Body, func(n ast.Node) bool {
				for _, left := range targets(n) {
					if v, ok := info.Uses[base(left)].(*types.Var); ok && v.Parent() == pkg.Scope() {
						found = append(found, fmt.Sprintf("%s:%d: %s changes the package's variable %s", f.Name, f.Fset.Position(n.Pos()).Line, fn.Name.Name, v.Name()))
					}
				}
				return true
			})
		}
	}
	return found
}

// targets gives what a statement assigns to.
func targets(n ast.Node) []ast.Expr {
	switch n := n.(type) {
	case *ast.AssignStmt:
		if n.Tok != token.DEFINE {
			return n.Lhs
		}
	case *ast.IncDecStmt:
		return []ast.Expr{n.X}
	case *ast.RangeStmt:
		if n.Tok == token.ASSIGN {
			return []ast.Expr{n.Key, n.Value}
		}
	case *ast.CallExpr:
		if f, ok := n.Fun.(*ast.Ident); ok && (f.Name == "delete" || f.Name == "clear" || f.Name == "copy") && len(n.Args) > 0 {
			return n.Args[:1]
		}
	}
	return nil
}

// base gives the name at the root of x.y[i].z, nil where there is none.
func base(e ast.Expr) *ast.Ident {
	switch e := e.(type) {
	case *ast.Ident:
		return e
	case *ast.SelectorExpr:
		return base(e.X)
	case *ast.IndexExpr:
		return base(e.X)
	case *ast.SliceExpr:
		return base(e.X)
	case *ast.StarExpr:
		return base(e.X)
	case *ast.ParenExpr:
		return base(e.X)
	}
	return nil
}

// unread is an importer that knows no package.
type unread struct{}

func (unread) Import(string) (*types.Package, error) { return nil, errors.New("not read") }
