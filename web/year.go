package web

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"suffice/hourly"
)

// A yearRow is one year of the life.
type yearRow struct {
	Year                   string
	Rain                   float64 // mm
	Tank, Charge           float64 // lowest of the year, 0 to 1
	TankDay, ChargeDay     string
	ShortWater, ShortPower int // days
}

// lacks reports whether a day was short by more than the rounding of its sums, as the verdict counts
// it (package hourly; figures_test.go holds the two to each other).
func lacks(short, asked float64) bool { return short > 1e-9*asked }

// byYear adds the days up by calendar year.
func (v *view) byYear() []yearRow {
	var rows []yearRow
	for d, day := range v.Proof.Run.Weather.Days {
		year := strconv.Itoa(int(day.Year))
		if len(rows) == 0 || rows[len(rows)-1].Year != year {
			rows = append(rows, yearRow{Year: year, Tank: math.Inf(1), Charge: math.Inf(1)})
		}
		rows[len(rows)-1].add(&v.Proof.Stated.Days[d], v.dayTyped(d))
	}
	return rows
}

func (y *yearRow) add(t *hourly.Tally, day string) {
	y.Rain += t.Rain
	if t.TankEnd < y.Tank {
		y.Tank, y.TankDay = t.TankEnd, day
	}
	if t.ChargeLow < y.Charge {
		y.Charge, y.ChargeDay = t.ChargeLow, day
	}
	if lacks(t.WaterAsked-t.WaterMet, t.WaterAsked) {
		y.ShortWater++
	}
	if lacks(t.PowerAsked-t.PowerMet, t.PowerAsked) {
		y.ShortPower++
	}
}

// recordSummary says in a sentence what the picture of the record shows.
func (v *view) recordSummary() string {
	rows := v.byYear()
	text := ""
	if v.hasWater() {
		dry := slices.MinFunc(rows, func(a, b yearRow) int { return cmp.Compare(a.Tank, b.Tank) })
		text = v.Say("year.driest", "day", v.saidOf(dry.TankDay), "share", percent(dry.Tank))
	}
	if v.hasPower() {
		dull := slices.MinFunc(rows, func(a, b yearRow) int { return cmp.Compare(a.Charge, b.Charge) })
		text += " " + v.Say("year.dullest", "day", v.saidOf(dull.ChargeDay), "share", percent(dull.Charge))
	}
	return text
}

// saidOf writes a typed day in words.
func (v *view) saidOf(typed string) string {
	hour, err := v.Proof.Run.HourAt(typed + "T00")
	if err != nil {
		return typed
	}
	return v.daySaid(hour / 24)
}
