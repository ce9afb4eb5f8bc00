package web

import (
	"net/http"
	"slices"

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
	f.Fields = fields(v.lived, f.Part)
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
	return slices.ContainsFunc(fields(v.lived, part), func(f field) bool { return f.Stated })
}

// fields lists the single values of a part, those stated and those that could be.
func fields(l *lived, part string) []field {
	values, err := house.Values(l.Name, l.Text, part)
	if err != nil {
		return nil // the text was read without fault when it was lived
	}
	list := make([]field, len(values))
	for i, v := range values {
		list[i] = field{Key: v.Key, Path: v.Path, Value: v.Text, Stated: v.Stated}
	}
	return list
}
