package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"suffice/hourly"
	"suffice/site/weather"
	"suffice/stove"
)

func (p *Proof) date(day int) string {
	d := p.Run.Weather.Days[day]
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}

var monthNames = [13]string{"", "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// said writes a day as people do.
func (p *Proof) said(day int) string {
	d := p.Run.Weather.Days[day]
	return fmt.Sprintf("%d %s %d", d.Date, monthNames[d.Month], d.Year)
}

func weatherOrigin(o int) string { return weather.Origin(o).String() }

// Text prints the proof for people.
func (p *Proof) Text(out io.Writer) error {
	w := &lines{to: out}
	p.heading(w)
	p.verdicts(w)
	p.starts(w)
	p.waterYear(w)
	p.powerYear(w)
	p.heatYear(w)
	p.chainYear(w)
	p.foodYear(w)
	p.septicRules(w)
	p.roomBudgets(w)
	p.months(w)
	p.worst(w)
	w.list("Assumed and made up", p.Run.Notes)
	w.list("Look at this", p.warnings())
	p.cautions(w)
	return w.err
}

func (p *Proof) heading(w *lines) {
	h, days := p.Run.House, p.Run.Weather.Days
	w.line("%s", h.Name)
	w.line("%s of weather, %s, lived hour by hour (%s hours)", plural(p.Years(), "year"), fromTo(days[0].Year, days[len(days)-1].Year), grouped(float64(p.Run.Hours())))
	w.line("weather: %s", p.Weather.Source)
	if dropped := p.Weather.Report.Dropped; len(dropped) > 0 {
		w.line("left out, since more than 5 days are missing: %s", yearList(dropped))
	}
	w.line("")
}

// fromTo writes the first and last year of a stretch.
func fromTo(first, last int32) string {
	if first == last {
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d to %d", first, last)
}

// yearList writes runs of years shortly: 1948 to 1951, 1960.
func yearList(years []int32) string {
	var parts []string
	for i := 0; i < len(years); {
		j := i
		for j+1 < len(years) && years[j+1] == years[j]+1 {
			j++
		}
		if j > i {
			parts = append(parts, fmt.Sprintf("%d to %d", years[i], years[j]))
		} else {
			parts = append(parts, fmt.Sprintf("%d", years[i]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

func (p *Proof) verdicts(w *lines) {
	h, a := p.Run.House, p.Stated
	p.verdict(w, "WATER", &a.Water, h.Water != nil, "litre")
	p.gaveUp(w, "saved water", "what they did without", func(t *hourly.Tally) bool { return t.Saved > 0 })
	w.line("")
	p.verdict(w, "POWER", &a.Power, h.Power != nil, "watt-hour")
	p.gaveUp(w, "cooked with gas", "the power that would have cooked", func(t *hourly.Tally) bool { return t.Swapped > 0 })
	p.gaveUp(w, "put tasks off", "the task, until it is due,", func(t *hourly.Tally) bool { return t.Waited > 0 })
	w.line("")
	p.warmth(w)
	p.food(w)
	p.waste(w)
	if len(h.Described) > 0 {
		for i, l := range wrap("Described in the file, not computed yet: "+strings.Join(h.Described, "; ")+".", 74) {
			w.line("%s%s", [2]string{"", "  "}[min(i, 1)], l)
		}
		w.line("")
	}
}

// verdict tells one budget.
func (p *Proof) verdict(w *lines, name string, b *hourly.Budget, computed bool, thing string) {
	if !computed {
		w.line("%-7s not described in the file", name)
		return
	}
	word, want := "no want is stated, so no verdict", ""
	if b.Wanted {
		word, want = "FALLS SHORT", fmt.Sprintf("; the file allows %s", short(b.Want))
		if b.Suffices() {
			word = "SUFFICES"
		}
	}
	w.line("%-7s %s", name, word)
	w.line("        %s short days a year%s", short(b.ShortDaysPerYear()), want)
	p.years(w, b)
	if b.Spell.Days > 0 {
		w.line("        longest spell %s, from %s", plural(b.Spell.Days, "day"), p.said(b.Spell.First))
	}
	w.line("        %s of every %s that must run was had", percent(b.ShareMet()), thing)
}

// gaveUp tells on how many days the people followed a rule: what they then do not ask for
// makes no day short, and a reader of the verdict must know it.
func (p *Proof) gaveUp(w *lines, deed, what string, did func(*hourly.Tally) bool) {
	days := 0
	for d := range p.Stated.Days {
		if did(&p.Stated.Days[d]) {
			days++
		}
	}
	if days > 0 {
		told := fmt.Sprintf("on %s days a year they %s; %s is not counted as short", short(float64(days)/float64(p.Years())), deed, what)
		for _, l := range wrap(told, 70) {
			w.line("        %s", l)
		}
	}
}

// years tells in how many years something was short, and how sure that makes one.
func (p *Proof) years(w *lines, b *hourly.Budget) {
	if b.ShortYears == b.Years {
		w.line("        %s, in every year of %d", plural(b.ShortDays, "short day"), b.Years)
		return
	}
	if b.ShortYears == 0 {
		w.line("        no short day in %s; with 95 %% confidence fewer than %.0f %% of", plural(b.Years, "year"), math.Ceil(100*b.Upper95()))
	} else {
		w.line("        %s in %d of %s; with 95 %% confidence fewer than %.0f %% of", plural(b.ShortDays, "short day"), b.ShortYears, plural(b.Years, "year"), math.Ceil(100*b.Upper95()))
	}
	w.line("        years have one (if years are independent of each other)")
}

// percent never rounds a shortfall away.
func percent(share float64) string {
	if share >= 1 {
		return "100 %"
	}
	for decimals := 1; decimals < 8; decimals++ {
		if s := fmt.Sprintf("%.*f", decimals, 100*share); !strings.HasPrefix(s, "100") {
			return s + " %"
		}
	}
	return "just under 100 %"
}

func plural(n int, thing string) string {
	switch n {
	case 0:
		return "no " + thing
	case 1:
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// short prints a small number in two digits.
func short(v float64) string {
	if v == 0 || v >= 10 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.2g", v)
}

// grouped prints a whole number with thin gaps between thousands.
func grouped(v float64) string {
	s := fmt.Sprintf("%.0f", v)
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return sign + s
}

// starts tells how much the first hour matters.
func (p *Proof) starts(w *lines) {
	h := p.Run.House
	tell := func(name string, of func(*hourly.Account) *hourly.Budget) {
		w.line("%-7s short days a year from full stores %s, from half-full %s, as the file starts %s", name,
			short(of(p.Full).ShortDaysPerYear()), short(of(p.HalfFull).ShortDaysPerYear()), short(of(p.Stated).ShortDaysPerYear()))
	}
	if h.Water != nil {
		tell("Water", func(a *hourly.Account) *hourly.Budget { return &a.Water })
	}
	if h.Power != nil {
		tell("Power", func(a *hourly.Account) *hourly.Budget { return &a.Power })
	}
}

// warnings are what the design, the weather and the record give reason to look at.
func (p *Proof) warnings() []string {
	return slices.Concat(p.Run.Alarms, p.Run.House.Warnings, p.chainWarnings(), p.Weather.Report.Warnings)
}

// cautions stand at the end of every proof.
func (p *Proof) cautions(w *lines) {
	var list []string
	h := p.Run.House
	if h.Water != nil {
		list = append(list, "Rain from a roof is not drinking water until it is treated, and no calculation shows that it may be drunk: have it tested, keep the barriers in order, and follow the rules of your health authority.")
	}
	if h.Power != nil {
		list = append(list, "Batteries give off explosive gas, hold enough current to burn and can catch fire; panels are live in light. Wiring, fuses and ventilation are for a licensed electrician under the local code.")
	}
	if h.Gas != nil {
		list = append(list, "Gas burns the air of the room and a poor flame makes carbon monoxide: fresh air, an alarm, bottles outside and upright, and a licensed fitter.")
	}
	if h.Rooms != nil && slices.ContainsFunc(h.Rooms.Stoves, func(v *stove.Stove) bool { return v != nil }) {
		list = append(list, stove.Cautions()...)
	}
	if h.HotWater != nil {
		list = append(list, "Hot water scalds, and legionella grow in water kept lukewarm: mix at the tap, heat the store through as your local rule says.")
	}
	w.list("Cautions", list)
}

// short3 prints a number in three digits.
func short3(v float64) string {
	if v >= 100 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.3g", v)
}
