package draw

import (
	"math"
	"slices"
	"strconv"

	"suffice/draw/canvas"
	"suffice/report"
)

// Sentences is the catalogue that pictures speak from.
type Sentences = canvas.Sentences

// MonthsOfTank shows how full the tanks stand at midnight through the year.
func MonthsOfTank(p *report.Proof, say Sentences) Picture {
	d := monthsOf(p, say, "tank", func(day int) float64 { return 100 * p.Stated.Days[day].TankEnd })
	d.Ink = canvas.Water
	if below := p.Run.House.Rules.Tank.Below; below > 0 {
		d.Rule = Rule{say.Say("tank.rule", "level", number(100*below, 0)), 100 * below}
	}
	return Months(d)
}

// MonthsOfCharge shows the lowest charge of the battery in a day through the year.
func MonthsOfCharge(p *report.Proof, say Sentences) Picture {
	d := monthsOf(p, say, "charge", func(day int) float64 { return 100 * p.Stated.Days[day].ChargeLow })
	d.Ink = canvas.Power
	if below := p.Run.House.Rules.Charge.Below; below > 0 {
		d.Rule = Rule{say.Say("charge.rule", "level", number(100*below, 0)), 100 * below}
	}
	return Months(d)
}

// monthsOf gathers the days of each month.
func monthsOf(p *report.Proof, say Sentences, what string, of func(day int) float64) MonthChart {
	d := MonthChart{To: 100, Digits: 0}
	var days [12][]float64
	for i, day := range p.Run.Weather.Days {
		days[day.Month-1] = append(days[day.Month-1], of(i))
	}
	lowest, least := 0, math.Inf(1)
	for m := range 12 {
		key := strconv.Itoa(m + 1)
		d.Names[m], d.Short[m] = say.Say("month."+key), say.Say("short."+key)
		slices.Sort(days[m])
		d.Least[m], d.Low[m], d.Middle[m], d.High[m] = quantile(days[m], 0), quantile(days[m], 0.1), quantile(days[m], 0.5), quantile(days[m], 0.9)
		least = min(least, d.Least[m])
		if d.Middle[m] < d.Middle[lowest] {
			lowest = m
		}
	}
	for i, column := range [5]string{"month", "tenth", "middle", "ninetieth", "least"} {
		d.Headers[i] = say.Say("months.head." + column)
	}
	d.Key = [3]string{say.Say("months.key.middle"), say.Say("months.key.span"), say.Say("months.key.least")}
	d.About = About{what + "-months", say.Say(what + ".months.title"), say.Say(what + ".months.unit"),
		say.Say(what+".months.summary", "month", d.Names[lowest], "middle", number(d.Middle[lowest], 0), "least", number(least, 0), "years", strconv.Itoa(p.Years()))}
	return d
}

// quantile gives the value with that share of sorted values under it, no number where there are none.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	return sorted[int(share*float64(len(sorted)-1)+0.5)]
}

// YearsOfTank shows the lowest day of each year.
func YearsOfTank(p *report.Proof, say Sentences) Picture {
	return yearsOf(p, say, "tank", canvas.Water, func(day int) float64 { return 100 * p.Stated.Days[day].TankEnd })
}

// YearsOfCharge shows the lowest hour of each year.
func YearsOfCharge(p *report.Proof, say Sentences) Picture {
	return yearsOf(p, say, "charge", canvas.Power, func(day int) float64 { return 100 * p.Stated.Days[day].ChargeLow })
}

func yearsOf(p *report.Proof, say Sentences, what string, ink canvas.Ink, of func(day int) float64) Picture {
	d := LineChart{To: 100, Headers: []string{say.Say("years.head"), say.Say(what + ".years.head")}}
	var lowest []float64
	for i, day := range p.Run.Weather.Days {
		if year := strconv.Itoa(int(day.Year)); len(d.Times) == 0 || d.Times[len(d.Times)-1] != year {
			d.Times = append(d.Times, year)
			lowest = append(lowest, math.Inf(1))
			if day.Year%5 == 0 {
				d.Marks = append(d.Marks, Mark{len(d.Times) - 1, year})
			}
		}
		lowest[len(lowest)-1] = min(lowest[len(lowest)-1], of(i))
	}
	if len(d.Marks) < 2 {
		d.Marks = []Mark{{0, d.Times[0]}, {len(d.Times) - 1, d.Times[len(d.Times)-1]}}
	}
	d.Series = []Series{{Says: say.Say(what + ".years.title"), Values: lowest, Ink: ink}}
	worst := slices.Index(lowest, slices.Min(lowest))
	d.Told = Mark{worst, say.Say("years.told", "year", d.Times[worst], "least", number(lowest[worst], 0))}
	sorted := slices.Sorted(slices.Values(lowest))
	d.About = About{what + "-years", say.Say(what + ".years.title"), say.Say(what + ".years.unit"),
		say.Say(what+".years.summary", "year", d.Times[worst], "least", number(lowest[worst], 0), "middle", number(quantile(sorted, 0.5), 0), "years", strconv.Itoa(len(lowest)))}
	return Lines(d)
}
