package weather

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"suffice/site/sun"
)

// worstShare is the share of impossible values above which a column is refused rather
// than mended: single readings go wrong, but one in twenty means a wrong unit or column.
// Common practice, no source.
const worstShare = 0.05

// Check looks over what a file gave. A value outside the bounds of what can be is
// marked Impossible, counts as missing and is warned of; a column with more than a
// twentieth of them is a fault of the file. Years without a value and a sun in the wrong
// hour are warned of.
func Check(r *Record) error {
	var faults []error
	if r.Placed {
		faults = append(faults, r.Place.Faults())
		for _, d := range r.Place.Doubts() {
			if r.Time != UTC {
				r.warn("%s", d)
			}
		}
	}
	l := newLimits(r)
	for i := range r.Series {
		faults = append(faults, r.checkBounds(&r.Series[i], l))
	}
	r.checkOrder()
	r.checkYears()
	r.checkClearness(l)
	if s := r.Of(Global); s != nil && l.track != nil {
		r.checkClock(s, l.track)
	}
	return errors.Join(faults...)
}

// warn adds a warning once.
func (r *Record) warn(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(r.Warnings, text) {
		r.Warnings = append(r.Warnings, text)
	}
}

// note adds a note once.
func (r *Record) note(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(r.Notes, text) {
		r.Notes = append(r.Notes, text)
	}
}

// drop marks a value as missing for a reason.
func (s *Series) drop(i int, why Mark) {
	if s.Marks == nil {
		s.Marks = make([]Mark, len(s.Values))
		for k := range s.Marks {
			s.Marks[k] = s.plainMark(k)
		}
	}
	s.Values[i], s.Marks[i] = math.NaN(), why
}

func (s *Series) plainMark(i int) Mark {
	if math.IsNaN(s.Values[i]) {
		return Absent
	}
	return Recorded
}

// where names the row for a person: the line of the file if it is known, and the time.
func (r *Record) where(s *Series, i int) string {
	if s.Lines != nil && s.Lines[i] > 0 {
		return fmt.Sprintf("line %d, %s", s.Lines[i], r.when(i))
	}
	return r.when(i)
}

// track computes the sun over the record's own days, on its own clock.
func (r *Record) track() *sun.Track {
	days := make([]sun.Date, (r.StartHour+r.Steps+23)/24)
	for i := range days {
		d := DayOf(r.Start + i)
		days[i] = sun.Date{Year: d.Year, Month: d.Month, Date: d.Date}
	}
	return sun.NewTrack(r.Place, days)
}

// checkBounds marks what cannot be.
func (r *Record) checkBounds(s *Series, l *limits) error {
	low, high := traits[s.Column].low, traits[s.Column].high
	var bad, have, below, first int
	var firstValue float64
	for i, v := range s.Values {
		if math.IsNaN(v) {
			continue
		}
		have++
		if s.Column.light() || s.Column == Rain {
			high = l.highest(s.Column, i)
		}
		// An instrument under a clear night sky reads a little below nothing: down to -4 W/m2
		// is physically possible (long-shi).
		if r.Step == Hourly && s.Column.light() && v < 0 && v >= -4 {
			s.Values[i] = 0
			below++
			continue
		}
		if v < low || v > high {
			if bad == 0 {
				first, firstValue = i, v
			}
			bad++
			s.drop(i, Impossible)
		}
	}
	if below > 0 {
		r.note("%s: %d values down to -4 W/m2 (night) count as 0", s.Column, below)
	}
	if bad == 0 {
		return nil
	}
	what := fmt.Sprintf("%s (%s): %d of %d values cannot be, the first is %.4g %s (%s)",
		s.Column, s.Source, bad, have, firstValue, s.Column.Unit(r.Step), r.where(s, first))
	if float64(bad) > worstShare*float64(have) && bad > 1 {
		return fmt.Errorf("%s: %s: look at the column's unit (read as %q) and the place", r.File, what, s.Unit)
	}
	r.warn("%s: they count as missing", what)
	return nil
}

// limits gives the most that light and rain can be in each row of a record.
type limits struct {
	r     *Record
	track *sun.Track       // for hourly records of a known place
	days  [367]sun.Outside // by day of the year, for daily records of a known place
}

func newLimits(r *Record) *limits {
	l := &limits{r: r}
	switch {
	case !r.Placed || !slices.ContainsFunc(r.Series, func(s Series) bool { return s.Column.light() }):
	case r.Step == Hourly:
		l.track = r.track()
	default:
		for day := 1; day < len(l.days); day++ {
			l.days[day] = sun.OutsideDay(r.Place.Latitude, day)
		}
	}
	return l
}

func (l *limits) highest(c Column, i int) float64 {
	switch {
	case c == Rain && l.r.Step == Daily:
		return 1825 // mm in 24 h, Foc-Foc 1966 (wmo-extremes)
	case c == Rain:
		return traits[Rain].high
	case l.r.Step == Daily:
		return l.highestDay(c, i)
	case l.track == nil:
		return traits[c].high
	}
	k := l.r.StartHour + i
	mu := 0.0
	if l.track.Share[k] > 0 {
		mu = max(0, l.track.CosZenith[k])
	}
	Sa := l.track.Normal[k]
	switch c { // long-shi, "physically possible" limits, W/m2
	case Beam:
		return Sa
	case Diffuse:
		return Sa*0.95*math.Pow(mu, 1.2) + 50
	default:
		return Sa*1.5*math.Pow(mu, 1.2) + 100
	}
}

// highestDay gives the most light of a day in kWh/m2: what falls outside the air.
func (l *limits) highestDay(c Column, i int) float64 {
	if !l.r.Placed {
		if c == Beam {
			return 24 * 1.42
		}
		return 13.5 // the pole at midsummer: fao56 eq. 21 gives 13.2
	}
	out := &l.days[DayOf(l.r.Start+i).DayOfYear]
	if c == Beam {
		return out.DayLength * sun.SolarConstant * out.Distance / 1000
	}
	return out.Ra / 3.6
}

// checkOrder drops both of a day's extremes where the lowest is above the highest, and
// warns of means outside them.
func (r *Record) checkOrder() {
	low, high, mean := r.Of(TemperatureMin), r.Of(TemperatureMax), r.Of(Temperature)
	if low == nil || high == nil || r.Step == Hourly {
		return
	}
	crossed, outside, first := 0, 0, 0
	for i := range low.Values {
		switch {
		case low.Values[i] > high.Values[i]:
			if crossed == 0 {
				first = i
			}
			crossed++
			low.drop(i, Impossible)
			high.drop(i, Impossible)
		case mean != nil && (mean.Values[i] < low.Values[i] || mean.Values[i] > high.Values[i]):
			outside++
		}
	}
	if crossed > 0 {
		r.warn("temperature: on %d days the lowest is above the highest, first %s: both count as missing", crossed, r.where(low, first))
	}
	if outside > 0 {
		r.warn("temperature: on %d days the mean is not between the lowest and the highest: the mean is not used there", outside)
	}
}

// checkYears warns of columns that are empty for a whole calendar year of the record.
func (r *Record) checkYears() {
	for k := range r.Series {
		s := &r.Series[k]
		var empty []int32
		r.eachYear(func(year, from, to int) {
			if !slices.ContainsFunc(s.Values[from:to], func(v float64) bool { return !math.IsNaN(v) }) {
				empty = append(empty, int32(year))
			}
		})
		if len(empty) > 0 {
			r.warn("%s (%s) has no value in all of %s", s.Column, s.Source, yearsText(empty))
		}
	}
}

const (
	// dullest and clearest bound the share of the light outside the air that reaches the
	// ground over a whole record. Long means run from 0.3 (cloudy coasts) to 0.75 (deserts),
	// common knowledge of radiation maps, no source: outside these wider bounds the unit is
	// likely to be another.
	dullest, clearest = 0.2, 0.85
	// leastDays is how many days of light are asked for before their mean is judged.
	leastDays = 60
)

// checkClearness warns of light that is all too low or too high for the place, as a wrong
// unit makes it.
func (r *Record) checkClearness(l *limits) {
	s := r.Of(Global)
	if s == nil || !r.Placed {
		return
	}
	var light, outside float64
	rows := 0
	for i, v := range s.Values {
		if math.IsNaN(v) {
			continue
		}
		rows++
		light += v
		if r.Step == Daily {
			outside += l.days[DayOf(r.Start+i).DayOfYear].Ra / 3.6
		} else if k := r.StartHour + i; l.track.Share[k] > 0 {
			outside += l.track.Normal[k] * max(0, l.track.CosZenith[k]) * l.track.Share[k]
		}
	}
	if share := light / outside; rows >= leastDays*r.Step.perDay() && (share < dullest || share > clearest) {
		r.warn("global (%s) sums to %.2g of the light outside the air, seldom under %g or over %g: look at its unit (read as %q)",
			s.Source, share, dullest, clearest, s.Unit)
	}
}

// eachYear gives the rows of every calendar year that lies wholly in the record.
func (r *Record) eachYear(give func(year, from, to int)) {
	per := r.Step.perDay()
	for year := int(DayOf(r.Start).Year); ; year++ {
		from := (DayNumber(year, 1, 1)-r.Start)*per - r.StartHour
		to := from + DaysIn(year)*per
		if to > r.Steps {
			return
		}
		if from >= 0 {
			give(year, from, to)
		}
	}
}

const (
	// clockOff is how far the middle of the light may be from the computed noon, h, before
	// the record's clock is doubted. Cloudy afternoons move the middle by up to half an hour;
	// a clock that is wrong is wrong by a whole one.
	clockOff = 0.75
	// dimmest is the mean light, W/m2, below which a month says nothing about noon.
	dimmest = 20
)

// checkClock compares the middle of each month's light with the computed noon: it finds
// hours named by their end, a wrong zone, and summer time.
func (r *Record) checkClock(s *Series, track *sun.Track) {
	type sum struct{ east, up, light, hours float64 }
	var all sum
	months := make(map[[2]int]*sum)
	var order [][2]int
	for i, g := range s.Values {
		if math.IsNaN(g) {
			continue
		}
		k := r.StartHour + i
		sinW, cosW := math.Sincos((track.SolarTime[k] - 12) * math.Pi / 12)
		d := DayOf(r.Start + k/24)
		key := [2]int{int(d.Year), int(d.Month)}
		m := months[key]
		if m == nil {
			m = new(sum)
			months[key], order = m, append(order, key)
		}
		for _, x := range []*sum{&all, m} {
			x.east, x.up, x.light, x.hours = x.east+g*sinW, x.up+g*cosW, x.light+g, x.hours+1
		}
	}
	off := func(x *sum) float64 { return math.Atan2(x.east, x.up) * 12 / math.Pi }
	if all.hours == 0 || all.light/all.hours < dimmest/4 {
		return
	}
	var wrong []string
	bright := 0
	for _, key := range order {
		m := months[key]
		if m.light/m.hours < dimmest {
			continue
		}
		bright++
		if o := off(m); math.Abs(o) > clockOff {
			wrong = append(wrong, fmt.Sprintf("%04d-%02d (%+.1f h)", key[0], key[1], o))
		}
	}
	if len(wrong) == 0 {
		return
	}
	r.warn("the light lies %.1f h %s the sun as computed for this place and clock, in %d of %d months by most of an hour or more: %s: "+
		"is the zone right, was summer time kept, do the hours name their beginning", math.Abs(off(&all)), lateEarly(off(&all)), len(wrong), bright, firstFew(wrong, 6))
}

func lateEarly(o float64) string {
	if o > 0 {
		return "after"
	}
	return "before"
}

// firstFew lists the first n of texts and says how many more there are.
func firstFew(texts []string, n int) string {
	if len(texts) <= n {
		return strings.Join(texts, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(texts[:n], ", "), len(texts)-n)
}
