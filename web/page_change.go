package web

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"suffice/house"
)

// parts are the groups of a house file that are computed, in its order.
var parts = []string{"site", "people", "water", "power", "hot_water", "gas", "rules", "wants"}

// A field is one value of the house file.
type field struct {
	Key    house.Key
	Path   string // lists counted from 0: water.tanks[0].holds
	Value  string // as the file states it; "" where it leaves the key out
	Typed  string // what a person wrote
	Stated bool
}

// A changeForm is a part of the house file as a form.
type changeForm struct {
	Part   string
	Parts  []string
	Fields []field
	Faults []string
}

func changePage(v *view, r *http.Request) shown { return v.changing(r, nil) }

// changing is the form, with what was wrong with what a person wrote.
func (v *view) changing(r *http.Request, fault error) shown {
	f := changeForm{Part: r.FormValue("part")}
	for _, part := range parts {
		if v.has(part) {
			f.Parts = append(f.Parts, part)
		}
	}
	p := shown{Here: "/change", Title: v.Say("change.title"), Body: changeBody(v, &f)}
	if fault != nil {
		p.Status, f.Faults = http.StatusBadRequest, lines(fault)
	}
	if f.Part == "" && len(f.Parts) > 0 {
		f.Part = f.Parts[len(f.Parts)-1]
		if slices.Contains(f.Parts, "water") {
			f.Part = "water"
		}
	}
	if !slices.Contains(f.Parts, f.Part) {
		p.Status, f.Faults = http.StatusNotFound, append(f.Faults, v.Say("change.no_part", "part", f.Part))
		return p
	}
	f.Fields = fields(v.Name, v.Text, f.Part)
	for i := range f.Fields {
		f.Fields[i].Typed = f.Fields[i].Value
		if fault != nil && r.PostForm.Has(f.Fields[i].Path) {
			f.Fields[i].Typed = r.PostFormValue(f.Fields[i].Path)
		}
	}
	return p
}

// has reports whether the file describes a part.
func (v *view) has(part string) bool {
	return slices.ContainsFunc(fields(v.Name, v.Text, part), func(f field) bool { return f.Stated })
}

// fields lists the single values of a part, those stated and those that could be. Lists have as
// many entries as the file gives them.
func fields(name string, text []byte, part string) (list []field) {
	for _, k := range house.Keys() {
		if k.Kind == house.Group || k.Kind == house.List || !strings.HasPrefix(k.Path, part+".") {
			continue
		}
		list = append(list, entries(name, text, k, k.Path)...)
	}
	return list
}

// entries puts a number into the first open list of a path, as long as the file has such an entry.
func entries(name string, text []byte, k house.Key, path string) (list []field) {
	before, after, open := strings.Cut(path, "[]")
	if !open {
		value, stated, err := house.ValueAt(name, text, path)
		if err != nil {
			return nil // the file describes no such group, or not as one value
		}
		return []field{{Key: k, Path: path, Value: value, Stated: stated}}
	}
	for i := range mostEntries {
		more := entries(name, text, k, before+"["+strconv.Itoa(i)+"]"+after)
		if more == nil {
			return list
		}
		list = append(list, more...)
	}
	return list
}

// mostEntries is as many as any list of a house file may have (house.Key.Most, loads and horizon).
const mostEntries = 40
