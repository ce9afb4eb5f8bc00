package web

import (
	"strings"

	"suffice/hourly"
)

// A spell is told with a few days before it, so that one sees it come, and at most two weeks.
const (
	daysBefore = 4
	daysAfter  = 1
	daysTold   = 14
)

// A spell is the hardest days of a budget, one row a day.
type spell struct {
	Title string
	Heads []string
	Rows  []spellDay
	More  int // days of it that are not told
}

type spellDay struct {
	Day   string
	At    string // the hour in the middle of it, for an address
	Cells []string
	Level float64 // of the store, 0 to 1
	Deeds string
}

// window gives the days to tell of a run of days.
func window(first, days, all int) (from, to int) {
	to = min(first+days+daysAfter, all)
	from = max(0, first-daysBefore)
	return from, min(to, from+daysTold)
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

func (v *view) waterSpell() spell {
	a := v.Proof.Stated
	return v.spell(a.Water.Spell, "water", func(t *hourly.Tally) float64 { return t.TankEnd }, func(t *hourly.Tally) []string {
		return []string{amount(t.Rain), grouped(t.Caught + t.Delivered), grouped(t.WaterAsked), lacking(t.WaterAsked-t.WaterMet, t.WaterAsked)}
	})
}

func (v *view) powerSpell() spell {
	a := v.Proof.Stated
	return v.spell(a.Power.Spell, "power", func(t *hourly.Tally) float64 { return t.ChargeLow }, func(t *hourly.Tally) []string {
		return []string{amount(t.Panels / 1000), amount(t.PowerAsked / 1000), lacking((t.PowerAsked-t.PowerMet)/1000, t.PowerAsked/1000)}
	})
}

// spell tells the longest run of short days, or the days around the lowest store where none was short.
func (v *view) spell(run hourly.Spell, budget string, level func(*hourly.Tally) float64, cells func(*hourly.Tally) []string) spell {
	a := v.Proof.Stated
	title, heads := "spell.short", map[string][]string{
		"water": {"spell.rain", "spell.caught", "spell.asked_l", "spell.short_l", "spell.tanks"},
		"power": {"spell.panels", "spell.asked_kwh", "spell.short_kwh", "spell.lowest"},
	}[budget]
	if run.Days == 0 {
		title, run = "spell.tight", hourly.Spell{First: tightest(a.Days, level), Days: 1}
	}
	s := spell{Title: v.Say(title)}
	for _, key := range heads {
		s.Heads = append(s.Heads, v.Say(key))
	}
	from, to := window(run.First, run.Days, len(a.Days))
	for d := from; d < to; d++ {
		t := &a.Days[d]
		why := v.deeds(d)
		if budget == "water" && t.Unpowered > 0 {
			why = append([]string{v.Say("spell.unpowered")}, why...)
		}
		s.Rows = append(s.Rows, spellDay{Day: v.daySaid(d), At: v.dayTyped(d) + "T12", Cells: cells(t), Level: level(t), Deeds: strings.Join(why, ", ")})
	}
	s.More = max(0, run.First+run.Days-to)
	return s
}

// lacking writes a shortfall, a dash where there is none beyond rounding.
func lacking(short, asked float64) string {
	if short <= 1e-9*asked {
		return "\u2013"
	}
	return amount(short)
}
