package weather

import (
	"math"
	"slices"

	"suffice/quantity"
	"suffice/site/sun"
)

const (
	// DullDay is the clearness (light on the level over light outside the air) below which a day
	// counts as dull: from 0.35 down Collares-Pereira & Rabl (1979) count days as overcast.
	DullDay = 0.35
	// leastOutside is the light outside the air, MJ/m2, below which a day has no clearness worth
	// the name: polar winter.
	leastOutside = 1
	// mostSpells is how many spells of a kind are listed.
	mostSpells = 5
)

// A Spell is a run of days alike.
type Spell struct {
	First string `json:"first"`
	Last  string `json:"last"`
	Days  int    `json:"days"`
}

// spells gives the longest runs of days that are so, the longest first, of equals the earlier.
// A missing day ends a run.
func (d *daily) spells(v []float64, so func(float64) bool) []Spell {
	all := []Spell{}
	for i := 0; i < len(v); i++ {
		j := i
		for j < len(v) && so(v[j]) {
			j++
		}
		if j > i {
			all = append(all, Spell{dateText(d.first + i), dateText(d.first + j - 1), j - i})
			i = j
		}
	}
	slices.SortStableFunc(all, func(a, b Spell) int { return b.Days - a.Days })
	return all[:min(len(all), mostSpells)]
}

// dry gives the longest dry spells in complete years.
func (d *daily) dry() []Spell {
	return d.spells(d.within(d.rain, d.complete(d.rain)), func(v float64) bool { return v < DryDay })
}

// clearness gives each day's, NaN where the sun hardly rises.
func (d *daily) clearness(latitude quantity.Degrees) []float64 {
	var outside [367]float64
	for day := 1; day < len(outside); day++ {
		outside[day] = sun.OutsideDay(latitude, day).Ra
	}
	k := make([]float64, len(d.light))
	for i, v := range d.light {
		Ra := outside[DayOf(d.first+i).DayOfYear]
		if k[i] = v * 3.6 / Ra; Ra < leastOutside {
			k[i] = math.NaN()
		}
	}
	return k
}

// dull gives the longest dull spells in complete years, and the dull days a year.
func (d *daily) dull(latitude quantity.Degrees) ([]Spell, *float64) {
	years := d.complete(d.light)
	if len(years) == 0 {
		return []Spell{}, nil
	}
	k := d.within(d.clearness(latitude), years)
	days := 0
	for _, v := range k {
		days += b2i(v < DullDay)
	}
	return d.spells(k, func(v float64) bool { return v < DullDay }), new(round(float64(days)/float64(len(years)), 1))
}

// A FrostSummary tells of days whose lowest temperature is below 0 degC (etccdi). Dates are of
// winters, twelve months around the coldest, that have at most 5 days missing.
type FrostSummary struct {
	DaysPerYear  float64 `json:"days_per_year"` // in complete calendar years
	Winters      int     `json:"winters"`
	Without      int     `json:"winters_without"`
	Earliest     string  `json:"earliest,omitempty"`      // the day in whose winter frost came soonest
	Latest       string  `json:"latest,omitempty"`        // and the one in whose winter it stayed longest
	TypicalFirst string  `json:"typical_first,omitempty"` // month and day, median of the winters with frost
	TypicalLast  string  `json:"typical_last,omitempty"`
	Coldest      float64 `json:"coldest_degc"` // of the whole record
	ColdestOn    string  `json:"coldest_on"`
}

// frost tells of frost; nil without a complete year.
func (d *daily) frost() *FrostSummary {
	years := d.complete(d.low)
	if len(years) == 0 {
		return nil
	}
	f := &FrostSummary{Coldest: math.Inf(1)}
	days := 0
	for _, v := range d.within(d.low, years) {
		days += b2i(v < 0)
	}
	f.DaysPerYear = round(float64(days)/float64(len(years)), 1)
	for i, v := range d.low {
		if v < f.Coldest {
			f.Coldest, f.ColdestOn = v, dateText(d.first+i)
		}
	}
	f.Coldest = round(f.Coldest, 2)
	d.winters(f)
	return f
}

// winters finds the first and last frost of each winter.
func (d *daily) winters(f *FrostSummary) {
	begin := (d.coldestMonth()+5)%12 + 1 // six months after it
	var firsts, lasts []float64          // days from the winter's beginning
	early, late := math.Inf(1), math.Inf(-1)
	for year := int(DayOf(d.first).Year); ; year++ {
		from, to := DayNumber(year, begin, 1)-d.first, DayNumber(year+1, begin, 1)-d.first
		if to > len(d.low) {
			break
		}
		if from < 0 {
			continue
		}
		if _, missing := total(d.low[from:to]); missing > MissingDaysAllowed {
			continue
		}
		f.Winters++
		frosty := func(v float64) bool { return v < 0 }
		first := slices.IndexFunc(d.low[from:to], frosty)
		if first < 0 {
			f.Without++
			continue
		}
		last := to - from - 1
		for !frosty(d.low[from+last]) {
			last--
		}
		if x := float64(first); x < early {
			early, f.Earliest = x, dateText(d.first+from+first)
		}
		if x := float64(last); x > late {
			late, f.Latest = x, dateText(d.first+from+last)
		}
		firsts, lasts = append(firsts, float64(first)), append(lasts, float64(last))
	}
	f.TypicalFirst, f.TypicalLast = typicalDate(firsts, begin), typicalDate(lasts, begin)
}

// typicalDate gives the median of days counted from the first of a month, as month and day of a
// year without 29 February.
func typicalDate(days []float64, begin int) string {
	if len(days) == 0 {
		return ""
	}
	slices.Sort(days)
	return dateText(DayNumber(NominalYear, begin, 1) + int(quantile(days, 0.5)))[len("2001-"):]
}

// coldestMonth gives the month whose nights are the coldest in the mean.
func (d *daily) coldestMonth() int {
	var sum, n [13]float64
	for i, v := range d.low {
		if m := DayOf(d.first + i).Month; !math.IsNaN(v) {
			sum[m], n[m] = sum[m]+v, n[m]+1
		}
	}
	coldest := 1
	for m := 2; m <= 12; m++ {
		if n[m] > 0 && sum[m]/n[m] < sum[coldest]/n[coldest] {
			coldest = m
		}
	}
	return coldest
}

// A DryRun is the run of so many whole months in which least rain fell.
type DryRun struct {
	Months int     `json:"months"`
	Rain   float64 `json:"mm"`
	First  string  `json:"first"` // year and month
	Last   string  `json:"last"`
	Mean   float64 `json:"mean_mm"` // of all runs of that length
}

// driest gives the driest runs of 6, 12 and 24 months. A run may miss as large a share of its
// days as a complete year may.
func (d *daily) driest() []DryRun {
	runs := []DryRun{}
	months := d.months(d.rain)
	for _, n := range []int{6, 12, 24} {
		best, sum, count := -1, 0.0, 0
		least := math.Inf(1)
		for i := 0; i+n <= len(months); i++ {
			rain, missing := 0.0, 0
			for _, m := range months[i : i+n] {
				rain, missing = rain+m.sum, missing+m.missing
			}
			if missing > MissingDaysAllowed*n/12 {
				continue
			}
			sum, count = sum+rain, count+1
			if rain < least {
				least, best = rain, i
			}
		}
		if best >= 0 {
			runs = append(runs, DryRun{n, round(least, 2), months[best].text(), months[best+n-1].text(), round(sum/float64(count), 2)})
		}
	}
	return runs
}

func (m monthOf) text() string { return dateText(DayNumber(m.year, m.month, 1))[:len("2001-01")] }
