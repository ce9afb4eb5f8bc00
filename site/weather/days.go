package weather

import (
	"math"
	"slices"
)

// daily is a record by whole days of its own calendar; NaN where a day is missing, nil
// where the record does not have the column.
type daily struct {
	first           int       // number of the first day
	rain            []float64 // mm
	light           []float64 // kWh/m2 on the level
	low, mean, high []float64 // of the air, degC; mean is half the sum of the extremes where that is known for more years
}

// byDay sums and takes extremes of a record's whole days. In an hourly record a day with more
// than three hours missing is missing.
func (r *Record) byDay() *daily {
	d := &daily{first: r.Start}
	per := r.Step.perDay()
	from := 0
	if r.StartHour > 0 {
		d.first, from = r.Start+1, 24-r.StartHour
	}
	n := max(0, (r.Steps-from)/per)
	fold := func(c Column, f func(rows []float64) float64) []float64 {
		s := r.Of(c)
		if s == nil {
			return nil
		}
		out := make([]float64, n)
		for i := range out {
			out[i] = f(s.Values[from+i*per : from+(i+1)*per])
		}
		return out
	}
	if r.Step == Hourly {
		d.rain = fold(Rain, dayTotal)
		d.light = fold(Global, func(rows []float64) float64 { return dayTotal(rows) / 1000 })
		d.low = fold(Temperature, extreme(slices.Min))
		d.high = fold(Temperature, extreme(slices.Max))
		d.mean = fold(Temperature, dayMean)
		return d
	}
	one := func(rows []float64) float64 { return rows[0] }
	d.rain, d.light = fold(Rain, one), fold(Global, one)
	d.low, d.mean, d.high = fold(TemperatureMin, one), fold(Temperature, one), fold(TemperatureMax, one)
	d.middle()
	return d
}

// middle takes half the sum of the extremes for the mean where it makes more years complete:
// never one for some years and the other for the rest, which would look like a jump.
func (d *daily) middle() {
	if d.low == nil || d.high == nil {
		return
	}
	half := make([]float64, len(d.low))
	for i := range half {
		half[i] = (d.low[i] + d.high[i]) / 2
	}
	if d.mean == nil || len(d.complete(half)) > len(d.complete(d.mean)) {
		d.mean = half
	}
}

// extreme takes the least or the most of a day that has at most three hours missing.
func extreme(of func([]float64) float64) func([]float64) float64 {
	return func(rows []float64) float64 {
		if math.IsNaN(dayTotal(rows)) {
			return math.NaN()
		}
		return of(slices.DeleteFunc(slices.Clone(rows), math.IsNaN))
	}
}

func dayMean(rows []float64) float64 {
	have := 0
	for _, v := range rows {
		have += b2i(!math.IsNaN(v))
	}
	return dayTotal(rows) / float64(have)
}

// A yearOf is a complete calendar year of days.
type yearOf struct {
	year     int
	from, to int // days, to not included
	sum      float64
	days     int // that are there
}

// complete gives the calendar years that have at most 5 days missing.
func (d *daily) complete(v []float64) []yearOf {
	var all []yearOf
	if len(v) == 0 {
		return nil
	}
	for year := int(DayOf(d.first).Year); ; year++ {
		from := DayNumber(year, 1, 1) - d.first
		to := from + DaysIn(year)
		if to > len(v) {
			return all
		}
		if from < 0 {
			continue
		}
		if sum, missing := total(v[from:to]); missing <= MissingDaysAllowed {
			all = append(all, yearOf{year, from, to, sum, to - from - missing})
		}
	}
}

// within gives the days of complete years, all others as missing.
func (d *daily) within(v []float64, years []yearOf) []float64 {
	out := slices.Repeat([]float64{math.NaN()}, len(v))
	for _, y := range years {
		copy(out[y.from:y.to], v[y.from:y.to])
	}
	return out
}

// A monthOf is a calendar month that lies wholly in the record.
type monthOf struct {
	year, month int
	sum         float64
	days        int // that are there
	missing     int
}

// months gives the calendar months that lie wholly in the record, in order.
func (d *daily) months(v []float64) []monthOf {
	var all []monthOf
	for i := 0; i < len(v); {
		day := DayOf(d.first + i)
		n := MonthDays(int(day.Year), int(day.Month))
		if day.Date > 1 {
			i += n - int(day.Date) + 1
			continue
		}
		if i+n > len(v) {
			break
		}
		sum, missing := total(v[i : i+n])
		all = append(all, monthOf{int(day.Year), int(day.Month), sum, n - missing, missing})
		i += n
	}
	return all
}

// quantile gives the value below which a share of sorted values lies, on the straight line
// between the two nearest.
func quantile(sorted []float64, share float64) float64 {
	at := share * float64(len(sorted)-1)
	i := min(int(at), len(sorted)-1)
	j := min(i+1, len(sorted)-1)
	return sorted[i] + (sorted[j]-sorted[i])*(at-float64(i))
}
