package weather

import "math"

// shortGap is the longest gap, in hours, that is interpolated.
const shortGap = 3

// A filled column has a value in every row of the days that are kept, unless left is
// above zero.
type filled struct {
	values []float64
	origin []Origin
	left   int // rows of kept days that nothing could fill
}

// fill fills a column's gaps on the days that are kept: up to three hours by a straight
// line, up to a day from the days beside it, longer from the same dates of the nearest
// year that has them. Where no year has them, up to five days come from the nearest day
// that is recorded. Rain is copied from one day, since a mean of two would make every
// day a little wet. outside, where given, is the light outside the air: the straight line
// is then one of clearness, so that no light comes before sunrise.
func (g *grid) fill(c Column, days []int, outside []float64) filled {
	per := g.step.perDay()
	from := g.values[c]
	f := filled{values: make([]float64, len(from)), origin: make([]Origin, len(from))}
	copy(f.values, from)
	wanted := make([]bool, len(from))
	for _, d := range days {
		for i := d * per; i < (d+1)*per; i++ {
			wanted[i] = true
			if g.step == Daily {
				f.origin[i] = FromDay
			}
		}
	}
	for i := 0; i < len(from); i++ {
		if !math.IsNaN(from[i]) {
			continue
		}
		j := i
		for j < len(from) && math.IsNaN(from[j]) {
			j++
		}
		for k := i; k < j; k++ {
			if wanted[k] {
				f.values[k], f.origin[k] = g.patch(c, k, i, j, outside)
				if math.IsNaN(f.values[k]) {
					f.left++
				}
			}
		}
		i = j
	}
	return f
}

// patch gives a value for row k of the gap from row i to before row j.
func (g *grid) patch(c Column, k, i, j int, outside []float64) (float64, Origin) {
	v, per := g.values[c], g.step.perDay()
	if g.step == Hourly && j-i <= shortGap && i > 0 && j < len(v) {
		return between(v, k, i, j, outside), Interpolated
	}
	if j-i <= per {
		if x := beside(c, v, k, per); !math.IsNaN(x) {
			return x, FromNeighbour
		}
	}
	if x := g.otherYear(v, k); !math.IsNaN(x) {
		return x, FromOtherYear
	}
	if j-i <= MissingDaysAllowed*per {
		for n := 2; n <= MissingDaysAllowed; n++ {
			if x := beside(c, v, k, n*per); !math.IsNaN(x) {
				return x, FromNeighbour
			}
		}
	}
	return math.NaN(), FromOtherYear
}

// between lies on the straight line over the gap, of the values or of their clearness.
func between(v []float64, k, i, j int, outside []float64) float64 {
	left, right := v[i-1], v[j]
	share := float64(k-i+1) / float64(j-i+1)
	if outside == nil {
		return left + (right-left)*share
	}
	clear := func(i int, value float64) float64 {
		if outside[i] < 1 {
			return math.NaN()
		}
		return value / outside[i]
	}
	a, b := clear(i-1, left), clear(j, right)
	switch {
	case math.IsNaN(a) && math.IsNaN(b): // the gap lies in the night, or fills the whole day
		if outside[k] < 1 {
			return 0
		}
		return left + (right-left)*share
	case math.IsNaN(a):
		a = b
	case math.IsNaN(b):
		b = a
	}
	return (a + (b-a)*share) * outside[k]
}

// beside gives the mean of the rows some days before and after, or the one that is
// there; for rain the earlier one.
func beside(c Column, v []float64, k, rows int) float64 {
	before, after := math.NaN(), math.NaN()
	if k >= rows {
		before = v[k-rows]
	}
	if k+rows < len(v) {
		after = v[k+rows]
	}
	switch {
	case math.IsNaN(before):
		return after
	case math.IsNaN(after) || c == Rain:
		return before
	}
	return (before + after) / 2
}

// otherYear gives the value of the same date and hour in the nearest year that has it,
// the earlier of two equally near. 28 February serves for a 29 February.
func (g *grid) otherYear(v []float64, k int) float64 {
	per := g.step.perDay()
	first := g.days[0].Number()
	day := g.days[k/per]
	years := int(g.days[len(g.days)-1].Year-g.days[0].Year) + 1
	for n := 1; n < years; n++ {
		for _, year := range [2]int{int(day.Year) - n, int(day.Year) + n} {
			date := min(int(day.Date), MonthDays(max(1, year), int(day.Month)))
			i := (DayNumber(max(1, year), int(day.Month), date)-first)*per + k%per
			if i >= 0 && i < len(v) && !math.IsNaN(v[i]) {
				return v[i]
			}
		}
	}
	return math.NaN()
}
