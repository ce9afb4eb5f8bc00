package weather

import (
	"math"
	"slices"
)

// A grid is a record laid on whole calendar years of the clock that is wanted. What the
// record does not reach is missing.
type grid struct {
	step   Step
	days   []Day // from a 1 January to a 31 December
	from   int   // first day that lies wholly in the record
	to     int   // day after the last such
	parted int   // days at the ends that lie only partly in the record
	values [Columns][]float64
}

// newGrid lays a record on a clock that is shift hours ahead of its own. A typical year
// is a ring: what a shift moves over its end comes in at its beginning.
func newGrid(r *Record, shift int) *grid {
	per := r.Step.perDay()
	begin := r.StartHour + shift // in steps after the start day's beginning
	if r.Step == Daily {
		begin = 0
	}
	first, last := floorDiv(begin, per), floorDiv(begin+r.Steps-1, per)
	g := &grid{step: r.Step}
	if r.Typical {
		first, last = 0, floorDiv(r.Steps-1, per)
	}
	y0, y1 := int(DayOf(r.Start+first).Year), int(DayOf(r.Start+last).Year)
	origin := DayNumber(y0, 1, 1)
	for n := origin; n < DayNumber(y1+1, 1, 1); n++ {
		g.days = append(g.days, DayOf(n))
	}
	offset := (r.Start-origin)*per + begin // grid row of the record's row 0
	rows := per * len(g.days)
	for _, s := range r.Series {
		v := slices.Repeat([]float64{math.NaN()}, rows)
		for i, x := range s.Values {
			v[(offset+i+rows)%rows] = x
		}
		g.values[s.Column] = v
	}
	if r.Typical {
		g.to = len(g.days)
		return g
	}
	g.from = (offset + per - 1) / per
	g.to = max(g.from, (offset+r.Steps)/per)
	g.parted = b2i(offset%per != 0) + b2i((offset+r.Steps)%per != 0)
	return g
}

func floorDiv(a, b int) int { return int(math.Floor(float64(a) / float64(b))) }

// missing counts the days from one to before another on which a column is missing: a
// day row without a value, or more than three hours without.
func (g *grid) missing(c Column, from, to int) int {
	per, n := g.step.perDay(), 0
	for d := from; d < to; d++ {
		if g.dayMissing(c, d, per) {
			n++
		}
	}
	return n
}

func (g *grid) dayMissing(c Column, day, per int) bool {
	gone := 0
	for _, v := range g.values[c][day*per : (day+1)*per] {
		if math.IsNaN(v) {
			gone++
		}
	}
	return gone > hoursMissingAllowed || gone == per
}

// needed gives the columns that have to be there for a year to count as complete, for
// use as sky, as gauge, or as both.
func (g *grid) needed(sky, gauge bool) []Column {
	var need []Column
	has := func(c Column) bool { return g.values[c] != nil }
	if gauge && has(Rain) {
		need = append(need, Rain)
	}
	if !sky {
		return need
	}
	if has(Global) {
		need = append(need, Global)
	}
	switch {
	case g.step == Daily && has(TemperatureMin) && has(TemperatureMax):
		need = append(need, TemperatureMin, TemperatureMax)
	case has(Temperature):
		need = append(need, Temperature)
	}
	return need
}

// keep chooses the days to be completed: those of complete years between two years (0
// for no bound), or, where no year is complete, all days that lie wholly in the record.
func (g *grid) keep(need []Column, fromYear, toYear int) (days []int, kept, dropped []int32) {
	for d := 0; d < len(g.days); {
		year := int(g.days[d].Year)
		end := d + DaysIn(year)
		if (fromYear == 0 || year >= fromYear) && (toYear == 0 || year <= toYear) {
			complete := !slices.ContainsFunc(need, func(c Column) bool { return g.missing(c, d, end) > MissingDaysAllowed })
			if complete && len(need) > 0 {
				kept = append(kept, int32(year))
				for k := d; k < end; k++ {
					days = append(days, k)
				}
			} else if d < g.to && end > g.from {
				dropped = append(dropped, int32(year))
			}
		}
		d = end
	}
	if len(kept) > 0 {
		return days, kept, dropped
	}
	for d := g.from; d < g.to; d++ {
		if year := int(g.days[d].Year); (fromYear == 0 || year >= fromYear) && (toYear == 0 || year <= toYear) {
			days = append(days, d)
		}
	}
	return days, nil, nil
}
