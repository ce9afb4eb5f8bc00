package tidy

import (
	"fmt"
	"go/ast"
	"go/token"
	"regexp"
	"strings"
)

// promise is the word that no text for a person may hold: what is computed or credited never shows it of water, food, gas or walls.
// A valve or a pane may be a safety one.
var promise = regexp.MustCompile(`(?i)\bsaf(e|er|ely)\b`)

// Promises gives a line for every text in the program, tests apart, that says it.
func Promises(files []File) []string {
	var found []string
	for _, f := range files {
		if strings.HasSuffix(f.Name, "_test.go") || strings.HasPrefix(f.Name, "internal/") {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING && promise.MatchString(text.Value) {
				found = append(found, fmt.Sprintf("%s:%d: %s: say which barrier is credited with what, and to have it tested",
					f.Name, f.Fset.Position(text.Pos()).Line, promise.FindString(text.Value)))
			}
			return true
		})
	}
	return found
}

// Promised does the same for a text that is not Go.
func Promised(name, text string) []string {
	var found []string
	for _, at := range promise.FindAllStringIndex(text, -1) {
		found = append(found, fmt.Sprintf("%s:%d: %s: say which barrier is credited with what, and to have it tested", name, 1+strings.Count(text[:at[0]], "\n"), text[at[0]:at[1]]))
	}
	return found
}
