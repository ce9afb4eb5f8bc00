package tidy

import (
	"fmt"
	"go/ast"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// promise is the word that no text for a person may hold: what is computed or credited never shows it of water, food, gas or walls.
// A valve or a pane may be a safety one.
var promise = Ban{regexp.MustCompile(`(?i)\bsaf(e|er|ely)\b`), "say which barrier is credited with what, and to have it tested", isShown}

// isShown reports whether a file that is not Go is read by those who use the program.
func isShown(name string) bool {
	top, _, _ := strings.Cut(name, "/")
	return (name == "README.md" || slices.Contains([]string{"docs", "examples", "web"}, top)) && isText(name) && filepath.Ext(name) != ".go"
}

// Promises gives a line for every text in the program, tests apart, that says it.
func Promises(files []File) []string {
	var found []string
	for _, f := range files {
		if strings.HasSuffix(f.Name, "_test.go") || strings.HasPrefix(f.Name, "internal/") {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING && promise.What.MatchString(text.Value) {
				found = append(found, fmt.Sprintf("%s:%d: %q: %s", f.Name, f.Fset.Position(text.Pos()).Line, promise.What.FindString(text.Value), promise.Why))
			}
			return true
		})
	}
	return found
}
