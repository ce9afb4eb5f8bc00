package web

import (
	"net/http"
	"strings"

	"suffice/sheet"
	"suffice/sheets"
)

func sheetsPage(v *view, _ *http.Request) shown {
	return shown{Here: "/sheets", Title: v.Say("sheets.title"), Body: sheetList(v, sheets.All())}
}

// A form is a sheet with what a person wrote into it.
type form struct {
	Sheet  *sheet.Sheet
	Typed  map[string]string
	Faults []string
	Worked *sheet.Worked
}

// value gives what stands in the field of an input.
func (f *form) value(in sheet.Input) string {
	if typed, ok := f.Typed[in.Name]; ok {
		return typed
	}
	return in.Default
}

// sheetPage works a sheet with what the address says; left out or empty, an input takes its default.
func sheetPage(v *view, r *http.Request) shown {
	sh := sheets.Named(r.PathValue("name"))
	if sh == nil {
		says := v.Say("sheets.unknown", "name", r.PathValue("name"), "nearest", sheets.Nearest(r.PathValue("name")))
		return shown{Status: http.StatusNotFound, Here: "/sheets", Title: v.Say("sheets.title"), Body: absent(v, v.Say("sheets.title"), says)}
	}
	f := form{Sheet: sh, Typed: make(map[string]string)}
	args := make(map[string]string)
	for name, values := range r.URL.Query() {
		f.Typed[name] = strings.TrimSpace(values[0])
		if f.Typed[name] != "" {
			args[name] = f.Typed[name]
		}
	}
	p := shown{Here: "/sheets", Title: sh.Title, Body: sheetForm(v, &f)}
	if err := f.work(args); err != nil {
		p.Status, f.Faults = http.StatusBadRequest, lines(err)
	}
	return p
}

func (f *form) work(args map[string]string) error {
	in, err := f.Sheet.Read(args)
	if err != nil {
		return err
	}
	w, err := f.Sheet.Work(in)
	if err == nil {
		f.Worked = &w
	}
	return err
}

// lines gives the faults of an error, one each.
func lines(err error) []string { return strings.Split(err.Error(), "\n") }

// inputSaid says what an input means and what it may be.
func (v *view) inputSaid(in sheet.Input) string {
	says := []string{v.Say("sentence", "says", in.Meaning)}
	switch {
	case in.Maybe && in.Unit != "":
		says = append(says, v.Say("sheet.maybe_unit", "unit", in.Unit))
	case in.Maybe:
		says = append(says, v.Say("sheet.maybe"))
	}
	if limits := v.limits(in); limits != "" {
		says = append(says, limits)
	}
	return strings.Join(says, " ")
}

// limits says what an input may be.
func (v *view) limits(in sheet.Input) string {
	low, high := "", ""
	if in.Low != nil {
		low = five(*in.Low, in.Unit)
	}
	if in.High != nil {
		high = five(*in.High, in.Unit)
	}
	switch {
	case low != "" && high != "":
		return v.Say("limits.both", "low", low, "high", high)
	case low != "":
		return v.Say("limits.low", "low", low)
	case high != "":
		return v.Say("limits.high", "high", high)
	}
	return ""
}
