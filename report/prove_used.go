package report

import (
	"fmt"
	"strings"

	"suffice/quantity"
)

// chainWords says what the way of used water comes to, in words and by the month.
func (p *Proof) chainWords(w *lines) {
	say := func(format string, args ...any) {
		for i, l := range wrap(fmt.Sprintf(format, args...), 74) {
			w.line("%s%s", [2]string{"  ", "    "}[min(i, 1)], l)
		}
	}
	p.usesWords(say)
	if p.Run.House.Drains.Planter == nil {
		return
	}
	p.bedWords(say)
	t, years := &p.Stated.Totals.Chain, float64(p.Years())
	w.line("\n  %-12s %10s %10s %10s %10s", "litres", "to planter", "its plants", "flushed", "topped up")
	for m := 1; m <= 12; m++ {
		w.line("  %-12s %10s %10s %10s %10s", monthNames[m], grouped(float64(t.FedIn[m])/years), grouped(float64(t.EvaporatedIn[m])/years),
			grouped(float64(t.FlushIn[m])/years), grouped(float64(t.TopUpIn[m])/years))
	}
}

// usesWords says how often a litre is used.
func (p *Proof) usesWords(say func(string, ...any)) {
	d, u := p.Run.House.Drains, p.Run.Uses(&p.Stated.Totals)
	if u.Fresh == 0 {
		return
	}
	way := []string{"once at the tap"}
	if d.Planter != nil {
		way = append(way, fmt.Sprintf("%.2f times by the planter", u.Planter))
	}
	if d.Well != nil {
		way = append(way, fmt.Sprintf("%.2f times to flush", u.Flush))
	}
	more := ""
	if d.Trench != nil && d.Trench.Grove.Trees > 0 {
		way = append(way, fmt.Sprintf("%.2f times by the trees", u.Trees))
		more = fmt.Sprintf(" Counting all that reaches the trees and not only what they drink, it is used %.1f times.", u.MeanOffered())
	}
	week := u.Fresh / float64(len(p.Stated.Days)) * 7
	say("The taps give %s L a week. A litre of it is used %.1f times on average: %s.%s The longest way has %s.",
		grouped(week), u.Mean(), strings.Join(way, ", "), more, plural(len(way), "use"))
}

// bedWords says how the planter fares, and how large it could be.
func (p *Proof) bedWords(say func(string, ...any)) {
	a, d := p.Stated, p.Run.House.Drains
	t, years := &a.Totals.Chain, float64(p.Years())
	built, hottest := float64(d.Planter.Bed.Area()), p.Run.HottestMonth()
	size := func(area quantity.SquareMetres) string { return quantity.Text(float64(area), "m2") }
	if area, ok := p.Run.LargestBed(&a.Totals, hottest); ok {
		say("The planter of %s gives off %s L a year, and %.1f mm a day in %s, the hottest month, in which %s L are topped up. The greywater of %s would keep %s m2 moist and flush too, without rain on it.",
			size(d.Planter.Bed.Area()), grouped(float64(t.Evaporated)/years), float64(t.EvaporatedIn[hottest])/built/p.daysIn(hottest), monthNames[hottest],
			grouped(float64(t.TopUpIn[hottest])/years), monthNames[hottest], short3(float64(area)))
	}
	if month, ok := p.Run.ScarcestMonth(&a.Totals); ok && month != hottest {
		area, _ := p.Run.LargestBed(&a.Totals, month)
		say("%s is the scarcest month: the greywater it brings would keep %s m2.", monthNames[month], short3(float64(area)))
	}
	say("Its plants had %s of the water they wanted; on %s days a year the soil was too dry at the end of the day, on %s too wet all day. Common practice, no source: such a house keeps a bed of that order green all year. Salt in the soil stood at %.1f dS/m at the end.",
		percent(float64(t.Evaporated/max(1, t.PlanterWanted))), short(float64(t.Dry)/years), short(float64(t.Wet)/years), a.Days[len(a.Days)-1].Salinity)
	if d.Well != nil {
		say("The flush well's water was older than %s days in %s of the hours.", short(d.Well.StaleAfter), percent(float64(t.Stale)/float64(p.Run.Hours())))
	}
}

// daysIn counts the days of the record that lie in a month.
func (p *Proof) daysIn(month int) (days float64) {
	for i := range p.Run.Weather.Days {
		if int(p.Run.Weather.Days[i].Month) == month {
			days++
		}
	}
	return days
}

// UsedWaterJSON is how often a litre is used and how large the planter could be; areas are null where plants want nothing.
type UsedWaterJSON struct {
	LitresPerWeek  float64      `json:"litres_per_week"` // that the taps give
	Uses           float64      `json:"uses_of_a_litre"`
	ByPlanter      float64      `json:"by_planter"`
	ToFlush        float64      `json:"to_flush"`
	ByTrees        float64      `json:"by_trees"`
	OfferedToTrees float64      `json:"offered_to_trees"`
	HottestMonth   int          `json:"hottest_month"`
	LargestHottest *float64     `json:"largest_bed_hottest_m2"`
	ScarcestMonth  int          `json:"scarcest_month,omitempty"`
	Largest        *float64     `json:"largest_bed_scarcest_m2"`
	BedLitres      [12]float64  `json:"bed_evaporation_l"` // of each month, mean of the years
	TopUpLitres    [12]float64  `json:"top_up_l"`
	StaleShare     float64      `json:"stale_well_share"` // of the hours
	Beds           *BedDaysJSON `json:"planter"`
}

// BedDaysJSON is how the planter's soil was, in days a year.
type BedDaysJSON struct {
	DryDays  float64 `json:"too_dry_days"`
	WetDays  float64 `json:"too_wet_days"`
	Had      float64 `json:"share_of_water_wanted"`
	Salinity float64 `json:"salinity_ds_m"` // of the soil at the end
}

// usedWaterJSON is nil where nobody follows used water.
func (p *Proof) usedWaterJSON() *UsedWaterJSON {
	a, d := p.Stated, p.Run.House.Drains
	if d == nil {
		return nil
	}
	t, u, years := &a.Totals.Chain, p.Run.Uses(&a.Totals), float64(p.Years())
	out := &UsedWaterJSON{LitresPerWeek: u.Fresh / float64(len(a.Days)) * 7, Uses: u.Mean(), ByPlanter: u.Planter, ToFlush: u.Flush, ByTrees: u.Trees, OfferedToTrees: u.Offered,
		HottestMonth: p.Run.HottestMonth(), StaleShare: float64(t.Stale) / float64(p.Run.Hours())}
	size := func(month int) *float64 {
		if area, ok := p.Run.LargestBed(&a.Totals, month); ok {
			v := float64(area)
			return &v
		}
		return nil
	}
	out.LargestHottest = size(out.HottestMonth)
	if month, ok := p.Run.ScarcestMonth(&a.Totals); ok {
		out.ScarcestMonth, out.Largest = month, size(month)
	}
	for m := range 12 {
		out.BedLitres[m], out.TopUpLitres[m] = float64(t.EvaporatedIn[m+1])/years, float64(t.TopUpIn[m+1])/years
	}
	if d.Planter != nil {
		out.Beds = &BedDaysJSON{DryDays: float64(t.Dry) / years, WetDays: float64(t.Wet) / years, Had: float64(t.Evaporated / max(1, t.PlanterWanted)), Salinity: a.Days[len(a.Days)-1].Salinity}
	}
	return out
}
