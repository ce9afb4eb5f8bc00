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

// read collects the published numbers and the laws of test files, given in order.
func read(root string, files []string) (reading, error) {
	var r reading
	fset := token.NewFileSet()
	parsed := make(map[string]*ast.File)
	named := make(map[string]map[string]ast.Expr) // by folder
	for _, file := range files {
		if !strings.HasSuffix(file, "_test.go") || strings.HasPrefix(file, "internal/") {
			continue
		}
		p, err := parser.ParseFile(fset, filepath.Join(root, file), nil, parser.ParseComments)
		if err != nil {
			return reading{}, err
		}
		dir := path.Dir(file)
		if named[dir] == nil {
			named[dir] = make(map[string]ast.Expr)
		}
		addTypes(named[dir], p)
		parsed[file] = p
	}
	for _, file := range files {
		if p := parsed[file]; p != nil {
			r.file(literals{reading: &r, fset: fset, file: file, check: importName(p, checkPath), named: named[path.Dir(file)]}, p)
		}
	}
	return r, nil
}

// file takes the literals and laws of one parsed file into r.
func (r *reading) file(l literals, parsed *ast.File) {
	if path.Base(l.file) == "laws_test.go" {
		r.lawsOf(parsed, path.Dir(l.file))
	}
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			if n.Type != nil {
				l.composite(n, n.Type)
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

// importName gives the name under which a file imports a package: its last element,
// unless the file gives it another.
func importName(parsed *ast.File, importPath string) string {
	for _, spec := range parsed.Imports {
		if p, _ := strconv.Unquote(spec.Path.Value); p == importPath && spec.Name != nil {
			return spec.Name.Name
		}
	}
	return path.Base(importPath)
}

// addTypes notes the types that a file declares, so that "type table []check.Published" is understood.
func addTypes(named map[string]ast.Expr, parsed *ast.File) {
	ast.Inspect(parsed, func(n ast.Node) bool {
		if spec, ok := n.(*ast.TypeSpec); ok {
			named[spec.Name.Name] = spec.Type
		}
		return true
	})
}

// literals reads the composite literals of one file.
type literals struct {
	*reading
	fset  *token.FileSet
	file  string
	check string // local name of the check package
	named map[string]ast.Expr
}

func (l *literals) fault(n ast.Node, format string, args ...any) {
	line := l.fset.Position(n.Pos()).Line
	l.faults = append(l.faults, fmt.Sprintf("%s:%d: ", l.file, line)+fmt.Sprintf(format, args...))
}

// composite looks at a literal of a known type, and at those inside it that leave
// their type out. Those that write their type are met on their own.
func (l *literals) composite(lit *ast.CompositeLit, typ ast.Expr) {
	typ = l.resolve(typ)
	if l.isPublished(typ) {
		l.published(lit)
		return
	}
	key, value := elements(typ)
	for _, e := range lit.Elts {
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			l.elided(kv.Key, key)
			e = kv.Value
		}
		l.elided(e, value)
	}
}

func (l *literals) elided(e, typ ast.Expr) {
	if lit, ok := e.(*ast.CompositeLit); ok && lit.Type == nil && typ != nil {
		l.composite(lit, typ)
	}
}

// elements gives the types that the elements of a literal take when they name none.
func elements(typ ast.Expr) (key, value ast.Expr) {
	switch t := typ.(type) {
	case *ast.ArrayType:
		return nil, t.Elt
	case *ast.MapType:
		return t.Key, t.Value
	}
	return nil, nil
}

// resolve follows local names, brackets and the pointer that an elided literal may hide.
func (l *literals) resolve(typ ast.Expr) ast.Expr {
	for range 20 { // deeper nesting of names than anybody writes
		switch t := typ.(type) {
		case *ast.ParenExpr:
			typ = t.X
		case *ast.StarExpr:
			typ = t.X
		case *ast.Ident:
			under, known := l.named[t.Name]
			if !known {
				return typ
			}
			typ = under
		default:
			return typ
		}
	}
	return typ
}

func (l *literals) isPublished(typ ast.Expr) bool {
	s, ok := typ.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	x, ok := s.X.(*ast.Ident)
	return ok && x.Name == l.check && s.Sel.Name == "Published"
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
			return // the compiler refuses it
		}
		name := fields.Type().Field(i).Name
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			name, e = types.ExprString(kv.Key), kv.Value
		}
		if err := set(fields.FieldByName(name), e); err != nil {
			l.fault(e, "%s of a published number %v: the tables are made by reading the tests, so write it out there", name, err)
			whole = false
		}
	}
	if whole {
		l.row(lit, p)
	}
}

// set puts a literal, or a sum or ratio of literals, into a field.
func set(field reflect.Value, e ast.Expr) error {
	text := types.ExprString(e)
	v, err := types.Eval(token.NewFileSet(), nil, token.NoPos, text)
	if err != nil || v.Value == nil {
		return fmt.Errorf("is %s, which is no literal", text)
	}
	switch {
	case !field.IsValid():
		return errors.New("is not a field")
	case field.Kind() == reflect.String && v.Value.Kind() == constant.String:
		field.SetString(constant.StringVal(v.Value))
	case field.Kind() == reflect.Float64 && constant.ToFloat(v.Value).Kind() == constant.Float:
		f, _ := constant.Float64Val(constant.ToFloat(v.Value))
		field.SetFloat(f)
	default:
		return fmt.Errorf("is %s, which is not a %s", text, field.Kind())
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

// assignment refuses a bound or reason that is put in after the literal, unseen by a reader of it.
func (l *literals) assignment(a *ast.AssignStmt) {
	for _, left := range a.Lhs {
		if s, ok := left.(*ast.SelectorExpr); ok && (s.Sel.Name == "Within" || s.Sel.Name == "Why" || s.Sel.Name == "Standing") {
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
