package hourly

import (
	"suffice/sheet"
	"suffice/waste"
)

// dayEnds says what the sheets of the last hour of a day do not show.
const dayEnds = "The day ends with this hour: growth, uptake of nitrogen, salt's harm, sludge and what an emptying takes come after it, by the day."

// tellChain tells drains, planter, flush well, septic tank, trees, trench and beds, in the order in which the hour lives them.
func (w *witness) tellChain() (list []told) {
	c := w.r.chain
	if c == nil {
		return nil
	}
	before, u := &w.state.Chain, &w.row.Chain
	add := func(sheet, part string, inputs map[string]sheet.Value) {
		one := told{sheet: sheet, part: part, inputs: inputs}
		if u.Ended {
			one.caution = dayEnds
		}
		list = append(list, one)
	}
	if d := c.parts; d != nil {
		add("drains-hour", "", d.Grey.Tell(before.Grey, &u.GreyIn))
		if d.Planter != nil {
			add("planter-hour", d.Planter.Name, d.Planter.Bed.Tell(&before.Planter, &u.PlanterIn))
		}
		if d.Well != nil {
			add("well-hour", "", d.Well.Tell(&before.Well, &u.WellIn))
		}
		if d.Septic != nil {
			add("septic-hour", "", d.Septic.Tell(&before.Septic, &u.Sewage))
		}
		if d.Septic != nil && d.Trench != nil {
			day := w.r.trenchDay(w.hour / 24)
			if d.Trench.Grove.Trees > 0 {
				add("trees-hour", "", d.Trench.Grove.Tell(&day, u.TrenchIn.Reference))
			}
			begun := w.trench(&day)
			add("trench-hour", "", d.Trench.Tell(&begun, &u.TrenchIn))
		}
	}
	if g := c.garden; g != nil {
		for b := range g.Beds {
			add("bed-hour", g.Beds[b].Plot.Bed.Name, g.Beds[b].Plot.Tell(&before.Beds[b], &u.BedIn[b]))
		}
	}
	return list
}

// trench gives the trench as the hour finds it: with its day begun.
func (w *witness) trench(day *waste.TrenchDayIn) waste.TrenchState {
	s := w.state.Chain.Trench
	if w.hour%24 == 0 {
		w.r.chain.parts.Trench.Day(&s, day)
	}
	return s
}

// trenchDay says where the year and the age of its trees stand for the trench.
func (r *Run) trenchDay(day int) waste.TrenchDayIn {
	return waste.TrenchDayIn{Day: r.chain.days[day].ofYear, South: r.south(), Age: r.chain.parts.Age + float64(day)/daysOfAYear}
}
