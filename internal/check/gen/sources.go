package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// entry is a line of SOURCES.md that explains a key.
var entry = regexp.MustCompile(`(?m)^- \*\*([^*]*)\*\*(.*)$`)

// keys gives the keys of SOURCES.md in order, and what is wrong with its lines.
func keys(text string) (found, faults []string) {
	seen := make(map[string]bool)
	for _, m := range entry.FindAllStringSubmatch(text, -1) {
		key, says := m[1], m[2]
		switch {
		case seen[key]:
			faults = append(faults, fmt.Sprintf("%s stands twice", key))
		case !regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(key):
			faults = append(faults, fmt.Sprintf("%q is no key: lower case letters, digits and hyphens", key))
		case len(found) > 0 && key < found[len(found)-1]:
			faults = append(faults, fmt.Sprintf("%s stands after %s: keep the keys in order", key, found[len(found)-1]))
		case !strings.Contains(says, "seen") && !strings.Contains(says, "from memory"):
			faults = append(faults, fmt.Sprintf("%s does not say whether it was seen or is from memory", key))
		}
		seen[key] = true
		found = append(found, key)
	}
	return found, faults
}

// publications gives a line for every key, with a tab before what it stands for.
func publications(text string) string {
	var b strings.Builder
	for _, m := range entry.FindAllStringSubmatch(text, -1) {
		fmt.Fprintf(&b, "%s\t%s\n", m[1], strings.TrimLeft(m[2], " —"))
	}
	return b.String()
}

// A citation is a key that a sheet names, and where.
type citation struct{ key, at string }

// cited gives the keys in the Sources of the sheets that a file declares.
func cited(root, file string) ([]citation, error) {
	fset := token.NewFileSet()
	parsed, err := parser.ParseFile(fset, filepath.Join(root, file), nil, 0)
	if err != nil {
		return nil, err
	}
	var found []citation
	ast.Inspect(parsed, func(n ast.Node) bool {
		kv, ok := n.(*ast.KeyValueExpr)
		if !ok {
			return true
		}
		if name, ok := kv.Key.(*ast.Ident); !ok || name.Name != "Sources" {
			return true
		}
		ast.Inspect(kv.Value, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				text, _ := strconv.Unquote(lit.Value)
				key, _, _ := strings.Cut(text, ":")
				found = append(found, citation{strings.TrimSpace(key), fmt.Sprintf("%s:%d", file, fset.Position(lit.Pos()).Line)})
			}
			return true
		})
		return false
	})
	return found, nil
}
