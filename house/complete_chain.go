package house

import (
	"fmt"
	"time"

	"suffice/quantity"
	"suffice/waste"
)

// completeChain puts in what planter and trees take from the rest of the file.
func (r *reader) completeChain(f *File) {
	if p := f.Planter; p != nil && len(p.Crops) == 0 {
		put(r, "planter.roots", &p.Roots, p.Soil, quantity.Text(float64(p.Soil), "m"), "as deep as the soil")
	}
	if f.Septic == nil || f.Septic.Trench == nil || f.Septic.Trench.Trees == nil || f.Septic.Trench.Trees.Evergreen {
		return
	}
	t, usual, south := f.Septic.Trench.Trees, waste.PecanCalendar(), f.Site.Latitude < 0
	for _, end := range []struct {
		key string
		to  **MonthDay
		day int
	}{{"leaves_from", &t.From, usual.Out}, {"leaves_to", &t.To, usual.Bare}} {
		d := monthDay(here(end.day, south))
		put(r, "septic.trench.trees."+end.key, end.to, d, fmt.Sprintf("%02d-%02d", d.Month, d.Day), "a pecan, common practice, no source")
	}
}

// here gives the day with the season of a day of a northern year; northern turns it back.
func here(day int, south bool) int {
	if !south {
		return day
	}
	return (day+182)%365 + 1
}

// monthDay gives the date of a day of the year, 1 to 365.
func monthDay(day int) MonthDay {
	d := time.Date(2001, 1, day, 0, 0, 0, 0, time.UTC)
	return MonthDay{int(d.Month()), d.Day()}
}
