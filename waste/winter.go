package waste

import "suffice/quantity"

// Wettest gives the first day of the wettest spell of so many days in a row, all of them
// without leaves, and its rain in mm. False where no such spell is in the record. The shorter of the two
// lists counts.
func Wettest(rain []quantity.Millimetres, bare []bool, span int) (first int, total quantity.Millimetres, found bool) {
	if span < 1 {
		return 0, 0, false
	}
	var sum quantity.Millimetres
	run := 0
	for i := range min(len(rain), len(bare)) {
		if !bare[i] {
			sum, run = 0, 0
			continue
		}
		sum += rain[i]
		run++
		if run > span {
			sum -= rain[i-span]
		}
		if run >= span && (!found || sum > total) {
			first, total, found = i-span+1, sum, true
		}
	}
	return first, total, found
}

// A WinterIn is a leafless spell by days.
type WinterIn struct {
	Rain      []quantity.Millimetres // of each day
	Inflow    quantity.Litres        // a day
	Reference quantity.Millimetres   // evapotranspiration, a day
}

// A WinterOut says whether a trench holds through it.
type WinterOut struct {
	Days     int             // with sewage on the ground
	Surfaced quantity.Litres // in all
	Highest  quantity.Metres // the gravel stood, at the end of a day
}

// Winter lives a trench through a spell without leaves, with the ground clogged for good, and the
// cover and gravel as the same spell before left them.
func (t *Trench) Winter(in *WinterIn) WinterOut {
	still := *t
	still.Grove.Trees = 0 // leafless trees want nothing
	s := TrenchState{Mat: 1}
	still.Day(&s, &TrenchDayIn{Day: 1})
	still.spell(&s, in)
	return still.spell(&s, in)
}

func (t *Trench) spell(s *TrenchState, in *WinterIn) WinterOut {
	var sum WinterOut
	var out TrenchOut
	for _, rain := range in.Rain {
		t.Step(s, &TrenchIn{Hours: 24, Inflow: in.Inflow, Rain: rain, Reference: in.Reference}, &out)
		if out.Surfaced > 0 {
			sum.Days++
			sum.Surfaced += out.Surfaced
		}
		sum.Highest = max(sum.Highest, t.Stands(s))
	}
	return sum
}
