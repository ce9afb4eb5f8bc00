package web

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"suffice/hourly"
	"suffice/site/weather"
)

// daySaid writes a day of the record as people do: 14 August 2003.
func (v *view) daySaid(day int) string {
	d := v.Proof.Run.Weather.Days[day]
	return v.Say("date", "day", d.Date, "month", v.month(int(d.Month)), "year", d.Year)
}

// dayTyped writes it as a form does: 2003-08-14.
func (v *view) dayTyped(day int) string {
	d := v.Proof.Run.Weather.Days[day]
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}

func (v *view) hourSaid(hour int) string {
	return v.Say("hour", "day", v.daySaid(hour/24), "from", fmt.Sprintf("%02d:00", hour%24), "to", fmt.Sprintf("%02d:00", (hour+1)%24))
}

// month gives the name of a month, 1 to 12.
func (v *view) month(m int) string {
	return v.Say([13]string{"", "month.1", "month.2", "month.3", "month.4", "month.5", "month.6",
		"month.7", "month.8", "month.9", "month.10", "month.11", "month.12"}[m])
}

// monthNames gives all of them for a script, with commas between.
func (v *view) monthNames() string {
	var names []string
	for m := 1; m <= 12; m++ {
		names = append(names, v.month(m))
	}
	return strings.Join(names, ",")
}

// A verdict is what is said of one budget.
type verdict struct {
	Name  string // of the budget
	Sign  string // suffices, short or open: the shape beside the word
	Word  string
	Lines []string
}

func (v *view) waterVerdict() verdict {
	return v.verdict(v.Say("water.title"), &v.Proof.Stated.Water, v.hasWater(), "litres")
}

func (v *view) powerVerdict() verdict {
	return v.verdict(v.Say("power.title"), &v.Proof.Stated.Power, v.hasPower(), "watt_hours")
}

func (v *view) verdict(name string, b *hourly.Budget, computed bool, thing string) verdict {
	said := verdict{Name: name, Sign: "open", Word: v.Say("verdict.none")}
	if !computed {
		said.Word = v.Say("verdict.absent")
		return said
	}
	if b.Wanted {
		said.Sign, said.Word = "short", v.Say("verdict.short")
		if b.Suffices() {
			said.Sign, said.Word = "suffices", v.Say("verdict.suffices")
		}
		said.Lines = append(said.Lines, v.Say("verdict.rate_wanted", "rate", amount(b.ShortDaysPerYear()), "want", amount(b.Want)))
	} else {
		said.Lines = append(said.Lines, v.Say("verdict.rate", "rate", amount(b.ShortDaysPerYear())))
	}
	said.Lines = append(said.Lines, v.yearsSaid(b))
	if b.Spell.Days > 0 {
		said.Lines = append(said.Lines, v.Count("verdict.spell", b.Spell.Days, "from", v.daySaid(b.Spell.First)))
	}
	key := map[string]string{"litres": "verdict.litres", "watt_hours": "verdict.watt_hours"}[thing]
	said.Lines = append(said.Lines, v.Say(key, "share", percent(b.ShareMet())))
	return said
}

// bare is a verdict on a page that names the budget itself.
func (v *view) bare(said verdict) verdict {
	said.Name = v.Say("verdict.title")
	return said
}

// yearsSaid tells in how many years something was short, and how sure that makes one.
func (v *view) yearsSaid(b *hourly.Budget) string {
	bound := fmt.Sprintf("%.0f", math.Ceil(100*b.Upper95()))
	switch {
	case b.ShortYears == b.Years:
		return v.Count("verdict.every_year", b.ShortDays, "years", b.Years)
	case b.ShortYears == 0:
		return v.Count("verdict.no_year", b.Years, "bound", bound)
	}
	return v.Count("verdict.some_years", b.ShortDays, "short", b.ShortYears, "years", b.Years, "bound", bound)
}

// deeds says what the people did on a day.
func (v *view) deeds(day int) []string {
	t := &v.Proof.Stated.Days[day]
	var list []string
	for _, deed := range []struct {
		did bool
		key string
	}{{t.Swapped > 0, "deed.swap"}, {t.Waited > 0, "deed.wait"}, {t.Saved > 0, "deed.save"},
		{t.Delivered > 0, "deed.truck"}, {t.Generator > 0, "deed.generator"}} {
		if deed.did {
			list = append(list, v.Say(deed.key))
		}
	}
	return list
}

// midnight gives the beginning of a day in seconds since 1970, as a chart counts them.
func midnight(d weather.Day) int64 {
	return time.Date(int(d.Year), time.Month(d.Month), int(d.Date), 0, 0, 0, 0, time.UTC).Unix()
}

// listed writes a list as a sentence holds it.
func listed(v *view, list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return v.Say("list", "list", strings.Join(list[:last], ", "), "last", list[last])
}

// warnings are what the design, the weather and the record give reason to look at.
func (v *view) warnings() []string {
	return slices.Concat(v.Proof.Run.Alarms, v.Proof.Run.House.Warnings, v.Proof.Weather.Report.Warnings)
}

// startsSaid tells how much the first hour matters.
func (v *view) startsSaid() (list []string) {
	tell := func(key string, of func(*hourly.Account) *hourly.Budget) {
		rate := func(a *hourly.Account) string { return amount(of(a).ShortDaysPerYear()) }
		list = append(list, v.Say(key, "stated", rate(v.Proof.Stated), "full", rate(v.Proof.Full), "half", rate(v.Proof.HalfFull)))
	}
	if v.hasWater() {
		tell("behind.water", func(a *hourly.Account) *hourly.Budget { return &a.Water })
	}
	if v.hasPower() {
		tell("behind.power", func(a *hourly.Account) *hourly.Budget { return &a.Power })
	}
	return list
}
