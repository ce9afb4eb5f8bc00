package weather

import (
	"errors"
	"fmt"
	"math"
	"slices"

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
