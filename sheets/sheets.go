// Package sheets is the one list of all sheets. Each is declared in the domain
// whose physics it shows; its tests and sources stand there.
package sheets

import (
	"slices"
	"strings"

	"suffice/crop"
	"suffice/garden"
	"suffice/gas"
	"suffice/glass"
	"suffice/hotwater"
	"suffice/internal/words"
	"suffice/people"
	"suffice/power"
	"suffice/pump"
	"suffice/reuse"
	"suffice/sheet"
	"suffice/site/evap"
	"suffice/site/rain"
	"suffice/site/sun"
	"suffice/stove"
	"suffice/warmth"
	"suffice/warmth/comfort"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
	"suffice/warmth/light"
	"suffice/warmth/vent"
	"suffice/waste"
	"suffice/water"
)

// All lists every sheet by name.
func All() []sheet.Sheet {
	all := slices.Concat(sun.Sheets(), evap.Sheets(), rain.Sheets(), gas.Sheets(), pump.Sheets(),
		people.Sheets(), water.Sheets(), waste.Sheets(), power.Sheets(), hotwater.Sheets(), stove.Sheets(), reuse.Sheets(),
		glass.Sheets(), crop.Sheets(), garden.Sheets(), fabric.Sheets(), ground.Sheets(), light.Sheets(), vent.Sheets(), comfort.Sheets(), warmth.Sheets())
	slices.SortFunc(all, func(a, b sheet.Sheet) int { return strings.Compare(a.Name, b.Name) })
	return all
}

// Named gives the sheet of that name, or nil.
func Named(name string) *sheet.Sheet {
	for _, s := range All() {
		if s.Name == name {
			return &s
		}
	}
	return nil
}

// Nearest gives the name of the sheet written most like the one asked for.
func Nearest(name string) string {
	var names []string
	for _, s := range All() {
		names = append(names, s.Name)
	}
	return words.Nearest(name, names)
}
