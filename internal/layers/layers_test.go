package layers

import (
	"fmt"
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"suffice/internal/tree"
)

// An edge is one import of one of our packages by another.
type edge struct {
	file string // where the import stands
	to   string // without the module's name
}

func TestImportsGoDownward(t *testing.T) {
	root, err := tree.Root()
	if err != nil {
		t.Fatal(err)
	}
	packages, edges := read(t, root)
	if len(packages) == 0 || len(edges) == 0 {
		t.Fatalf("found %d packages and %d imports: the list was held against nothing", len(packages), len(edges))
	}
	for _, fault := range faults(Shelves, Workshop, packages, edges) {
		t.Error(fault)
	}
}

// read parses the imports of every Go file of the module.
func read(t *testing.T, root string) (packages []string, edges []edge) {
	t.Helper()
	files, err := tree.Go(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		packages = append(packages, path.Dir(file))
		parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, file), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range parsed.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			if to, ours := strings.CutPrefix(name, "suffice/"); ours {
				edges = append(edges, edge{file, to})
			}
		}
	}
	slices.Sort(packages)
	return slices.Compact(packages), edges
}

// faults gives one line for everything that the lists do not allow.
func faults(list, workshop string, packages []string, edges []edge) []string {
	shelves, tools := Read(list), strings.Fields(workshop)
	var found []string
	for _, name := range packages {
		shelf, listed := shelves[name]
		switch {
		case !listed && !slices.Contains(tools, name):
			found = append(found, fmt.Sprintf("%s stands on no shelf: add it to the list in internal/layers/layers.go", name))
		case shelf.Planned:
			found = append(found, fmt.Sprintf("%s exists: take the word planned off its entry in internal/layers/layers.go", name))
		}
	}
	for name, shelf := range shelves {
		if !shelf.Planned && !slices.Contains(packages, name) {
			found = append(found, fmt.Sprintf("%s is on the list but has no folder: mark it planned in internal/layers/layers.go", name))
		}
	}
	for _, e := range edges {
		if fault := e.fault(shelves, tools); fault != "" {
			found = append(found, fault)
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// fault says why an import is not allowed, or nothing.
func (e edge) fault(shelves map[string]Shelf, tools []string) string {
	from := path.Dir(e.file)
	test := strings.HasSuffix(e.file, "_test.go")
	switch {
	case slices.Contains(tools, from), from == e.to && test, test && slices.Contains(tools, e.to):
		return ""
	case slices.Contains(tools, e.to):
		return fmt.Sprintf("%s imports %s, which is for tests only", e.file, e.to)
	case shelves[e.to].Line == shelves[from].Line:
		return fmt.Sprintf("%s imports %s, its neighbour on the same shelf: what they share goes on a lower shelf, a meeting goes to hourly", e.file, e.to)
	case shelves[e.to].Line > shelves[from].Line:
		return fmt.Sprintf("%s imports %s, which stands on a higher shelf than %s", e.file, e.to, from)
	}
	return ""
}

func TestFaultsAreSeen(t *testing.T) {
	const list = "quantity\nwater, power\nplanned waste\nhouse"
	packages := []string{"house", "power", "quantity", "water"}
	for _, c := range []struct {
		name     string
		packages []string
		edge     edge
		says     string // "" where all is well
	}{
		{"downward", packages, edge{"house/file.go", "water"}, ""},
		{"own test package", packages, edge{"water/tank_test.go", "water"}, ""},
		{"check in a test", packages, edge{"quantity/laws_test.go", "internal/check"}, ""},
		{"check outside a test", packages, edge{"water/tank.go", "internal/check"}, "tests only"},
		{"sideways", packages, edge{"water/tank.go", "power"}, "neighbour"},
		{"sideways in a test", packages, edge{"water/tank_test.go", "power"}, "neighbour"},
		{"upward", packages, edge{"water/tank.go", "house"}, "higher shelf"},
		{"not listed", append(packages, "roof"), edge{"house/file.go", "water"}, "no shelf"},
		{"come true", append(packages, "waste"), edge{"house/file.go", "water"}, "take the word planned off"},
		{"gone", []string{"house", "quantity", "water"}, edge{"house/file.go", "water"}, "has no folder"},
	} {
		got := strings.Join(faults(list, "internal/check", c.packages, []edge{c.edge}), "; ")
		if c.says == "" && got != "" || !strings.Contains(got, c.says) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.says)
		}
	}
}
