package draw

import (
	"strconv"

	"suffice/draw/canvas"
	"suffice/hourly"
	"suffice/report"
)

// Of a spell so many days are drawn at most: some before it, so that one sees it come, and one after.
const (
	daysBefore = 4
	daysAfter  = 1
	daysDrawn  = 21
)

// spell is what is drawn of the worst days of one budget.
type spell struct {
	p        *report.Proof
	say      Sentences
	what     string // power or water
	short    hourly.Spell
	tightest int // the day of the lowest store, where no day was short
	from, to int // days drawn
}

func newSpell(p *report.Proof, say Sentences, what string, b *hourly.Budget, store func(*hourly.Tally) float64) *spell {
	s := &spell{p: p, say: say, what: what, short: b.Spell}
	days := p.Stated.Days
	for d := range days {
		if store(&days[d]) < store(&days[s.tightest]) {
			s.tightest = d
		}
	}
	first, length := s.short.First, s.short.Days
	if length == 0 {
		first, length = s.tightest, 1
		// Days are more telling before the low point than after it.
		s.from, s.to = max(0, first-daysDrawn/2), min(len(days), first+length+daysBefore)
		return s
	}
	s.from = max(0, first-daysBefore)
	s.to = min(first+length+daysAfter, s.from+daysDrawn, len(days))
	return s
}

func (s *spell) date(day int) string {
	d := s.p.Run.Weather.Days[day]
	return s.say.Say("date", "day", strconv.Itoa(int(d.Date)), "month", s.month(day), "year", strconv.Itoa(int(d.Year)))
}

func (s *spell) month(day int) string {
	return s.say.Say("month." + strconv.Itoa(int(s.p.Run.Weather.Days[day].Month)))
}

// told is the day that the summary names.
func (s *spell) told() int {
	if s.short.Days == 0 {
		return s.tightest
	}
	return s.short.First
}

// values gives one figure of each day drawn.
func (s *spell) values(of func(t *hourly.Tally) float64) []float64 {
	var list []float64
	for d := s.from; d < s.to; d++ {
		list = append(list, of(&s.p.Stated.Days[d]))
	}
	return list
}

// chart lays the days out for given rows.
func (s *spell) chart(rows []DayRow, deeds []Deed) DayChart {
	c := DayChart{Rows: rows, Told: s.told() - s.from, Headers: []string{s.say.Say("spell.head.day")}}
	for d := s.from; d < s.to; d++ {
		day := s.p.Run.Weather.Days[d]
		c.Dates = append(c.Dates, s.date(d))
		c.Short = append(c.Short, strconv.Itoa(int(day.Date)))
		if d == s.from || day.Date == 1 {
			c.Months = append(c.Months, Mark{d - s.from, s.say.Say("month and year", "month", s.month(d), "year", strconv.Itoa(int(day.Year)))})
		}
	}
	for _, r := range rows {
		if r.Lacks == nil {
			c.Headers = append(c.Headers, r.Says)
			continue
		}
		c.Headers = append(c.Headers, s.say.Say("spell."+s.what+".had"), s.say.Say("spell."+s.what+".lack"))
	}
	for _, deed := range deeds {
		for _, done := range deed.Done {
			if done {
				deed.Yes = s.say.Say("deed.yes")
				c.Deeds = append(c.Deeds, deed)
				c.Headers = append(c.Headers, deed.Says)
				break
			}
		}
	}
	return c
}

func (s *spell) deed(key string, done func(t *hourly.Tally) bool) Deed {
	d := Deed{Says: s.say.Say("deed." + key)}
	for day := s.from; day < s.to; day++ {
		d.Done = append(d.Done, done(&s.p.Stated.Days[day]))
	}
	return d
}

// about tells the spell in a sentence.
func (s *spell) about(lack func(*hourly.Tally) float64, least float64) About {
	key := "spell." + s.what
	a := About{Name: "spell-" + s.what, Title: s.say.Say(key + ".title"), Unit: ""}
	if s.short.Days == 0 {
		a.Summary = s.say.Say(key+".tight", "date", s.date(s.tightest), "least", number(least, 0))
		return a
	}
	most := 0.0
	for d := s.short.First; d < s.short.First+s.short.Days; d++ {
		most = max(most, lack(&s.p.Stated.Days[d]))
	}
	if s.short.Days == 1 {
		key += ".short one"
	} else {
		key += ".short"
	}
	a.Summary = s.say.Say(key, "days", strconv.Itoa(s.short.Days), "date", s.date(s.short.First), "lack", figures(most))
	if s.to < s.short.First+s.short.Days {
		a.Summary += " " + s.say.Say("spell.cut", "told", strconv.Itoa(s.to-s.from))
	}
	return a
}

// WorstSpellOfPower tells the longest run of days on which power fell short, or the tightest days
// where none did.
func WorstSpellOfPower(p *report.Proof, say Sentences) Picture {
	s := newSpell(p, say, "power", &p.Stated.Power, func(t *hourly.Tally) float64 { return t.ChargeLow })
	lack := func(t *hourly.Tally) float64 { return lacking(t.PowerAsked, t.PowerMet) / 1000 }
	var rows []DayRow
	if len(p.Run.Weather.Global) > 0 {
		rows = append(rows, DayRow{Says: say.Say("spell.sun"), Values: s.light(), Top: 2, Ink: canvas.Sun, Digits: 1})
	}
	rows = append(rows,
		DayRow{Says: say.Say("spell.panels"), Values: s.values(func(t *hourly.Tally) float64 { return t.Panels / 1000 }), Top: 1, Ink: canvas.Sun, Hatch: canvas.Rising, Digits: 1},
		DayRow{Says: say.Say("spell.power"), Values: s.values(func(t *hourly.Tally) float64 { return t.PowerMet / 1000 }), Lacks: s.values(lack), Top: 1, Ink: canvas.Power, Digits: 2},
		DayRow{Says: say.Say("spell.charge"), Values: s.values(func(t *hourly.Tally) float64 { return 100 * t.ChargeLow }), Top: 100, Ink: canvas.Power, Hatch: canvas.Upright})
	c := s.chart(rows, []Deed{
		s.deed("swap", func(t *hourly.Tally) bool { return t.Swapped > 0 }),
		s.deed("wait", func(t *hourly.Tally) bool { return t.Waited > 0 }),
		s.deed("generator", func(t *hourly.Tally) bool { return t.Generator > 0 })})
	c.About = s.about(lack, 100*p.Stated.Days[s.tightest].ChargeLow)
	return Days(c)
}

// lacking gives what was asked and not met; rounding in sums of 24 hours is no lack.
func lacking(asked, met float64) float64 {
	if asked-met <= 1e-9*asked {
		return 0
	}
	return asked - met
}

// light gives the light of each day on the level, kWh/m2.
func (s *spell) light() []float64 {
	var list []float64
	for d := s.from; d < s.to; d++ {
		sum := 0.0
		for _, g := range s.p.Run.Weather.Global[24*d : 24*d+24] {
			sum += g
		}
		list = append(list, sum/1000)
	}
	return list
}

// WorstSpellOfWater tells the longest run of days on which water fell short, or the tightest days
// where none did.
func WorstSpellOfWater(p *report.Proof, say Sentences) Picture {
	s := newSpell(p, say, "water", &p.Stated.Water, func(t *hourly.Tally) float64 { return t.TankEnd })
	lack := func(t *hourly.Tally) float64 { return lacking(t.WaterAsked, t.WaterMet) }
	rows := []DayRow{
		{Says: say.Say("spell.rain"), Values: s.values(func(t *hourly.Tally) float64 { return t.Rain }), Top: 5, Ink: canvas.Water, Hatch: canvas.Falling, Digits: 1},
		{Says: say.Say("spell.caught"), Values: s.values(func(t *hourly.Tally) float64 { return t.Caught + t.Delivered }), Top: 100, Ink: canvas.Water, Hatch: canvas.Level},
		{Says: say.Say("spell.water"), Values: s.values(func(t *hourly.Tally) float64 { return t.WaterMet }), Lacks: s.values(lack), Top: 10, Ink: canvas.Water},
		{Says: say.Say("spell.tank"), Values: s.values(func(t *hourly.Tally) float64 { return 100 * t.TankEnd }), Top: 10, Ink: canvas.Water, Hatch: canvas.Level},
	}
	c := s.chart(rows, []Deed{
		s.deed("save", func(t *hourly.Tally) bool { return t.Saved > 0 }),
		s.deed("road", func(t *hourly.Tally) bool { return t.Delivered > 0 })})
	c.About = s.about(lack, 100*p.Stated.Days[s.tightest].TankEnd)
	return Days(c)
}
