package web

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"suffice/house"
)

// A fieldGroup is what stands in one group of the house file.
type fieldGroup struct {
	Name         string
	Stated, Open []field
}

// grouping puts fields under the group that they stand in, in the file's order; an entry that has a
// name is called by it.
func (v *view) grouping(part string, list []field) []fieldGroup {
	var paths []string
	groups := make(map[string]*fieldGroup)
	for _, f := range list {
		at := f.Path[:strings.LastIndex(f.Path, ".")]
		g := groups[at]
		if g == nil {
			g = &fieldGroup{Name: v.groupSaid(part, at)}
			groups[at], paths = g, append(paths, at)
		}
		if f.Key.Name == "name" && f.Value != "" {
			g.Name = plainly(entryOf.ReplaceAllString(inside(part, at), "")) + ": " + f.Value
		}
		if f.Stated {
			g.Stated = append(g.Stated, f)
		} else {
			g.Open = append(g.Open, f)
		}
	}
	if i := slices.Index(paths, part); i > 0 { // what stands in the part itself comes first
		paths = slices.Insert(slices.Delete(paths, i, i+1), 0, part)
	}
	sorted := make([]fieldGroup, len(paths))
	for i, at := range paths {
		sorted[i] = *groups[at]
	}
	return sorted
}

var entryOf = regexp.MustCompile(`\[[0-9]+\]`)

func inside(part, at string) string { return strings.TrimPrefix(strings.TrimPrefix(at, part), ".") }

// plainly writes a key as words.
func plainly(key string) string { return strings.NewReplacer("_", " ", ".", ", ").Replace(key) }

// groupSaid names a group: what stands in the part itself, or a thing in it, entries counted from 1.
func (v *view) groupSaid(part, at string) string {
	rest := inside(part, at)
	if rest == "" {
		return v.Say("part.general")
	}
	return plainly(entryOf.ReplaceAllStringFunc(rest, func(entry string) string {
		n, _ := strconv.Atoi(strings.Trim(entry, "[]")) // the pattern lets only digits through
		return " " + strconv.Itoa(n+1)
	}))
}

// leftOut says what holds where the file leaves a key out.
func (v *view) leftOut(f field) string {
	switch {
	case f.Stated:
		return ""
	case f.Key.Default != "":
		return v.Say("change.default", "value", f.Key.Default)
	}
	return v.Say("change.absent")
}

// fieldSaid says what a value means and what it may be.
func (v *view) fieldSaid(f field) string {
	says := []string{v.Say("sentence", "says", f.Key.Says)}
	switch k := f.Key; {
	case k.Least != "" && k.Most != "":
		says = append(says, v.Say("limits.both", "low", k.Least, "high", k.Most))
	case k.Least != "":
		says = append(says, v.Say("limits.low", "low", k.Least))
	}
	if f.Key.Form != "" {
		says = append(says, v.Say("change.form", "form", f.Key.Form))
	} else if f.Key.Kind == house.YesNo {
		says = append(says, v.Say("change.yes_no"))
	}
	if !f.Stated && f.Key.Default != "" {
		says = append(says, v.Say("change.source", "value", f.Key.Default, "source", f.Key.Source))
	}
	return strings.Join(says, " ")
}

func (v *view) partSaid(part string) string {
	return v.Say(map[string]string{"site": "part.site", "people": "part.people", "water": "part.water", "power": "part.power",
		"hot_water": "part.hot_water", "gas": "part.gas", "rules": "part.rules", "wants": "part.wants"}[part])
}

// partCautions are what stands above the values of a part that can hurt someone.
func (v *view) partCautions(part string) []string {
	keys := map[string][]string{"water": {"caution.drinking"}, "power": {"caution.battery"}, "gas": {"caution.gas"}, "hot_water": {"caution.hot_water"}}
	var list []string
	for _, key := range keys[part] {
		list = append(list, v.Say(key))
	}
	return list
}

func (v *view) madeSaid(c *changed) string {
	if c.Undone {
		return v.Say("change.undone")
	}
	return v.Count("change.made", len(c.Changes))
}

func (v *view) changeSaid(c house.Changed) string {
	if c.Added {
		return v.Say("change.added", "path", c.Path, "is", c.Is)
	}
	return v.Say("change.one", "path", c.Path, "was", c.Was, "is", c.Is)
}
