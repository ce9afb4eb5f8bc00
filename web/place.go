package web

import (
	"maps"
	"slices"

	"suffice/sheet"
)

// A place is one entry of the list of pages.
type place struct{ Here, Name string }

func (v *view) places() []place {
	return []place{{"/", v.Say("today.title")}, {"/year", v.Say("year.title")}, {"/water", v.Say("water.title")},
		{"/power", v.Say("power.title")}, {"/warmth", v.Say("warmth.title")},
		{"/garden", v.Say("garden.title")}, {"/waste", v.Say("waste.title")}, {"/sheets", v.Say("sheets.title")}, {"/change", v.Say("change.title")}}
}

// lifeSaid says which weather stands behind the figures.
func (v *view) lifeSaid() string {
	days := v.Proof.Run.Weather.Days
	return v.Count("foot.life", v.Proof.Years(), "first", days[0].Year, "last", days[len(days)-1].Year, "weather", v.Proof.Weather.Source)
}

// methods gives the names of the published methods that answer a result, sorted.
func methods(r sheet.Result) []string { return slices.Sorted(maps.Keys(r.ByMethod)) }
