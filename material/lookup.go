package material

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"suffice/internal/words"
)

// A Library is the table of this package with a house's own materials before it. The zero
// Library is the table alone.
type Library struct{ own []Material }

// NewLibrary takes a house's own materials. One with a name of the table replaces that
// row. All faults come at once.
func NewLibrary(own ...Material) (Library, error) {
	var faults []error
	known := make(map[string]bool)
	for _, m := range own {
		faults = append(faults, m.Faults())
		if known[key(m.Name)] {
			faults = append(faults, fmt.Errorf("material %q is given twice: give each its own name", m.Name))
		}
		known[key(m.Name)] = true
	}
	if err := errors.Join(faults...); err != nil {
		return Library{}, err
	}
	return Library{own: slices.Clone(own)}, nil
}

// Named gives the material of a name; case, hyphens and spaces do not count. Where there
// is none the fault names the nearest.
func (l Library) Named(name string) (Material, error) {
	if m, ok := l.find(key(name)); ok {
		return m, nil
	}
	return Material{}, fmt.Errorf("no material is called %q: the nearest name is %q; or give conductivity, density and specific heat of your own", name, l.Nearest(name))
}

// Nearest gives the name that is written most like the one asked for.
func (l Library) Nearest(name string) string { return words.Nearest(name, l.Names()) }

// Names lists all names: the house's own, then the table's.
func (l Library) Names() []string {
	var names []string
	for _, m := range l.All() {
		names = append(names, m.Name)
	}
	return names
}

// All lists all materials: the house's own, then those of the table that it does not replace.
func (l Library) All() []Material {
	all := slices.Clone(l.own)
	for _, m := range table {
		if !slices.ContainsFunc(l.own, func(o Material) bool { return key(o.Name) == key(m.Name) }) {
			all = append(all, m)
		}
	}
	return all
}

func (l Library) find(k string) (Material, bool) {
	for _, list := range [][]Material{l.own, table} {
		if i := slices.IndexFunc(list, func(m Material) bool { return key(m.Name) == k }); i >= 0 {
			return list[i], true
		}
	}
	return Material{}, false
}

// Table lists the materials of this package.
func Table() []Material { return slices.Clone(table) }

// Named gives a material of this package's table.
func Named(name string) (Material, error) { return Library{}.Named(name) }

// Nearest gives the name in this package's table written most like the one asked for.
func Nearest(name string) string { return Library{}.Nearest(name) }

// key makes names alike that people take for the same.
func key(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' || r == '_' }), " ")
}
