package report

import (
	"strings"

	"suffice/hourly"
)

// A spell is told with a few days before it, so that one sees it come.
const (
	daysBefore = 4
	daysAfter  = 1
	daysTold   = 14
)

// worst tells the hardest days of each budget, day by day.
func (p *Proof) worst(w *lines) {
	if p.Run.House.Power != nil {
		p.worstPower(w)
	}
	if p.Run.House.Water != nil {
		p.worstWater(w)
	}
	p.weeks(w)
}

// window gives the days to tell of a spell: its end always, and as much before as fits.
func (p *Proof) window(first, days int) (from, to int) {
	to = min(first+days+daysAfter, len(p.Stated.Days))
	from = max(0, first-daysBefore)
	if to-from > daysTold {
		to = from + daysTold
	}
	return from, to
}

// tightest gives the day on which a store stood lowest.
func tightest(days []hourly.Tally, level func(*hourly.Tally) float64) int {
	lowest := 0
	for d := range days {
		if level(&days[d]) < level(&days[lowest]) {
			lowest = d
		}
	}
	return lowest
}

func (p *Proof) worstPower(w *lines) {
	a := p.Stated
	first, days := a.Power.Spell.First, a.Power.Spell.Days
	title := "The worst spell of power, day by day"
	if days == 0 {
		first, days = tightest(a.Days, func(t *hourly.Tally) float64 { return t.ChargeLow }), 1
		title = "The tightest days of power, day by day"
	}
	w.line("\n%s", title)
	w.line("  %-10s %8s %9s %9s %9s  %-22s %s", "", "sun", "panels", "asked", "short", "battery, lowest", "the people")
	w.line("  %-10s %8s %9s %9s %9s", "", "kWh/m2", "kWh", "kWh", "kWh")
	from, to := p.window(first, days)
	for d := from; d < to; d++ {
		t := &a.Days[d]
		w.line("  %s %8.1f %9.1f %9.1f %9s  %s %3.0f %%  %s", p.date(d), p.sunOf(d), t.Panels/1000, t.PowerAsked/1000,
			lacking(t.PowerAsked-t.PowerMet, t.PowerAsked, 1000), bar(t.ChargeLow, 15), 100*t.ChargeLow, p.deeds(d))
	}
	p.more(w, first+days, to)
}

func (p *Proof) worstWater(w *lines) {
	a := p.Stated
	first, days := a.Water.Spell.First, a.Water.Spell.Days
	title := "The worst spell of water, day by day"
	if days == 0 {
		first, days = tightest(a.Days, func(t *hourly.Tally) float64 { return t.TankEnd }), 1
		title = "The tightest days of water, day by day"
	}
	w.line("\n%s", title)
	w.line("  %-10s %8s %9s %9s %9s  %-22s %s", "", "rain", "caught", "asked", "short", "tanks at midnight", "the people")
	w.line("  %-10s %8s %9s %9s %9s", "", "mm", "L", "L", "L")
	from, to := p.window(first, days)
	for d := from; d < to; d++ {
		t := &a.Days[d]
		w.line("  %s %8.1f %9.0f %9.0f %9s  %s %3.0f %%  %s", p.date(d), t.Rain, t.Caught+t.Delivered, t.WaterAsked,
			lacking(t.WaterAsked-t.WaterMet, t.WaterAsked, 1), bar(t.TankEnd, 15), 100*t.TankEnd, why(t, p.deeds(d)))
	}
	p.more(w, first+days, to)
	if a.Water.Spell.Days > 0 && a.Days[first].Unpowered == 0 {
		w.line("  the last rain of 1 mm or more before it was on %s", p.lastRain(first))
	}
}

// why names the cause when water was there and power was not.
func why(t *hourly.Tally, deeds string) string {
	if t.Unpowered == 0 {
		return deeds
	}
	return strings.TrimSuffix("no power for pump or lamp; "+deeds, "; ")
}

func (p *Proof) lastRain(day int) string {
	for d := day; d >= 0; d-- {
		if p.Stated.Days[d].Rain >= 1 {
			return p.said(d)
		}
	}
	return "no day of the record"
}

func (p *Proof) more(w *lines, end, told int) {
	if end > told {
		w.line("  ... and so on for %s (--rows FILE.csv writes every hour)", plural(end-told, "more day"))
	}
}

func (p *Proof) sunOf(day int) float64 {
	sum := 0.0
	for _, g := range p.Run.Weather.Global[24*day : 24*day+24] {
		sum += g
	}
	return sum / 1000
}

// deeds says what the people did that day.
func (p *Proof) deeds(day int) string {
	t := &p.Stated.Days[day]
	var list []string
	for _, deed := range []struct {
		hours uint8
		word  string
	}{{t.Swapped, "cook with gas"}, {t.Waited, "put tasks off"}, {t.Saved, "save water"}} {
		if deed.hours > 0 {
			list = append(list, deed.word)
		}
	}
	if t.Delivered > 0 {
		list = append(list, "water by road")
	}
	if t.Generator > 0 {
		list = append(list, "run the generator")
	}
	return strings.Join(list, ", ")
}

// lacking prints a shortfall, a dash where there is none.
func lacking(short, asked, scale float64) string {
	if short <= 1e-9*asked {
		return "-"
	}
	return short3(short / scale)
}
