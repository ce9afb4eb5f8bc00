package main

import (
	"errors"
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"

	"suffice/internal/check"
	"suffice/internal/check/table"
)

// checkPath is the package whose Published literals are collected.
const checkPath = "suffice/internal/check"

// A Law is a test of a balance, a limit or a symmetry, which needs no book.
type Law struct {
	Package string
	Name    string // in words
	Says    string // first sentence of its comment
}

// A reading is what the test files hold.
type reading struct {
	rows   []table.Row
	laws   []Law
	faults []string // file:line: what is wrong and the remedy
}

// read collects the published numbers and the laws of the module's files, given in order.
func read(root string, files []string) (reading, error) {
	var r reading
	fset := token.NewFileSet()
	parsed := make(map[string]*ast.File)
	packages := make(map[string][]*ast.File) // by folder and name
	for _, file := range files {
		if strings.HasPrefix(file, "internal/") {
			continue
		}
		p, err := parser.ParseFile(fset, filepath.Join(root, file), nil, parser.ParseComments)
		if err != nil {
			return reading{}, err
		}
		parsed[file] = p
		id := path.Dir(file) + " " + p.Name.Name
		packages[id] = append(packages[id], p)
	}
	info := types.Info{Types: make(map[ast.Expr]types.TypeAndValue)}
	for id, all := range packages {
		// Faults are the compiler's business; here only constants and the type Published must be known.
		config := types.Config{Importer: publishedOnly{}, Error: func(error) {}}
		_, _ = config.Check(id, fset, all, &info)
	}
	for _, file := range files {
		if p := parsed[file]; p != nil && strings.HasSuffix(file, "_test.go") {
			r.file(literals{reading: &r, fset: fset, info: &info, file: file}, p)
		}
	}
	return r, nil
}

// publishedOnly is an importer that knows nothing but check.Published.
type publishedOnly struct{}

func (publishedOnly) Import(name string) (*types.Package, error) {
	if name != checkPath {
		return nil, errors.New("not read")
	}
	pkg := types.NewPackage(checkPath, path.Base(checkPath))
	var fields []*types.Var
	for f := range reflect.TypeFor[check.Published]().Fields() {
		kind := types.Typ[types.String]
		if f.Type.Kind() == reflect.Float64 {
			kind = types.Typ[types.Float64]
		}
		fields = append(fields, types.NewField(token.NoPos, pkg, f.Name, kind, false))
	}
	object := types.NewTypeName(token.NoPos, pkg, "Published", nil)
	types.NewNamed(object, types.NewStruct(fields, nil), nil)
	pkg.Scope().Insert(object)
	pkg.MarkComplete()
	return pkg, nil
}

// file takes the literals and laws of one parsed file into r.
func (r *reading) file(l literals, parsed *ast.File) {
	if path.Base(l.file) == "laws_test.go" {
		r.lawsOf(parsed, path.Dir(l.file))
	}
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			if l.isPublished(n) {
				l.published(n)
			}
		case *ast.AssignStmt:
			l.assignment(n)
		}
		return true
	})
}

func (r *reading) lawsOf(parsed *ast.File, pkg string) {
	for _, d := range parsed.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || f.Recv != nil {
			continue
		}
		for _, prefix := range []string{"Test", "Fuzz"} {
			if name, found := strings.CutPrefix(f.Name.Name, prefix); found && name != "" {
				r.laws = append(r.laws, Law{Package: pkg, Name: inWords(name), Says: firstSentence(f.Doc.Text(), f.Name.Name)})
			}
		}
	}
}

// literals reads the composite literals of one file.
type literals struct {
	*reading
	fset *token.FileSet
	info *types.Info
	file string
}

func (l *literals) fault(n ast.Node, format string, args ...any) {
	line := l.fset.Position(n.Pos()).Line
	l.faults = append(l.faults, fmt.Sprintf("%s:%d: ", l.file, line)+fmt.Sprintf(format, args...))
}

// isPublished reports whether an expression is a Published or a pointer to one, as it
// is for a literal that leaves its type out in a list of pointers.
func (l *literals) isPublished(e ast.Expr) bool {
	t := l.info.TypeOf(e)
	if t == nil {
		return false
	}
	if p, ok := types.Unalias(t).(*types.Pointer); ok {
		t = p.Elem()
	}
	named, ok := types.Unalias(t).(*types.Named)
	return ok && named.Obj().Pkg() != nil && named.Obj().Pkg().Path() == checkPath && named.Obj().Name() == "Published"
}

// published takes one literal as a row. An empty one is a zero to compare with.
func (l *literals) published(lit *ast.CompositeLit) {
	if len(lit.Elts) == 0 {
		return
	}
	var p check.Published
	fields := reflect.ValueOf(&p).Elem()
	whole := true
	for i, e := range lit.Elts {
		if i >= fields.NumField() {
			return // the compiler refuses it, as it does a field of another kind
		}
		name := fields.Type().Field(i).Name
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			name, e = types.ExprString(kv.Key), kv.Value
		}
		if err := set(fields.FieldByName(name), l.info.Types[e].Value); err != nil {
			l.fault(e, "%s of a published number is %s, which %v: the tables are made by reading the tests, so write it out there or make it a const", name, types.ExprString(e), err)
			whole = false
		}
	}
	if whole {
		l.row(lit, p)
	}
}

// set puts a constant into a field.
func set(field reflect.Value, v constant.Value) error {
	switch {
	case v == nil:
		return errors.New("is no constant")
	case !field.IsValid():
		return errors.New("has no such field to go to")
	case field.Kind() == reflect.String && v.Kind() == constant.String:
		field.SetString(constant.StringVal(v))
	case field.Kind() == reflect.Float64 && constant.ToFloat(v).Kind() == constant.Float:
		f, _ := constant.Float64Val(constant.ToFloat(v))
		field.SetFloat(f)
	default:
		return fmt.Errorf("is not a %s", field.Kind())
	}
	return nil
}

func (l *literals) row(lit *ast.CompositeLit, p check.Published) {
	_, within, err := p.Allowed()
	if err != nil {
		l.fault(lit, "%v", err)
		return
	}
	if p.Standing == "" {
		p.Standing = "published"
	}
	if table.Meaning(p.Standing) == "" {
		l.fault(lit, "standing %q is not known: it is one of %s, or left out for published", p.Standing, strings.Join(table.Standings(), ", "))
		return
	}
	l.rows = append(l.rows, table.Row{
		Package: path.Dir(l.file), Source: p.Source, At: p.At, Printed: p.Value, Unit: p.Unit,
		Allowed: round(within), Standing: p.Standing, Why: p.Why,
	})
}

// assignment refuses what is put into a published number after its literal, unseen by
// a reader of the literal.
func (l *literals) assignment(a *ast.AssignStmt) {
	for _, left := range a.Lhs {
		if s, ok := left.(*ast.SelectorExpr); ok && l.isPublished(s.X) {
			l.fault(a, "%s is assigned to a published number: write it into the literal", s.Sel.Name)
		}
	}
}

// round drops the hair that Allowed adds for binary rounding.
func round(within float64) float64 {
	f, _ := strconv.ParseFloat(strconv.FormatFloat(within, 'g', 6, 64), 64)
	return f
}

// inWords turns "TankLosesNothing" into "tank loses nothing"; an underscore is a space.
func inWords(name string) string {
	var b strings.Builder
	for i, r := range name {
		switch {
		case r == '_':
			b.WriteByte(' ')
		case r >= 'A' && r <= 'Z' && i > 0:
			b.WriteByte(' ')
			fallthrough
		default:
			b.WriteRune(r)
		}
	}
	return strings.Join(strings.Fields(strings.ToLower(b.String())), " ")
}

// firstSentence gives the first sentence of a comment, without the function's own name.
func firstSentence(doc, name string) string {
	doc = strings.TrimPrefix(strings.Join(strings.Fields(doc), " "), name+" ")
	if end := strings.Index(doc, ". "); end >= 0 {
		doc = doc[:end]
	}
	return strings.TrimSuffix(strings.TrimSuffix(doc, "."), ":")
}
