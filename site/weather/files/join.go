package files

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"suffice/site/weather"
)

// OpenAll opens several files of one place, such as the days of a station or the years of
// a point, and joins them in the order of time. A single file is opened as Open does.
func OpenAll(paths []string, o Options) (*weather.Record, error) {
	var records []*weather.Record
	var faults []error
	for _, path := range paths {
		r, err := Open(path, o)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		records = append(records, r)
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return Join(records)
}

// Join puts records of one place, format and step one after the other. What lies between
// them is missing; they may not overlap. The notes and warnings of all are kept.
func Join(records []*weather.Record) (*weather.Record, error) {
	if len(records) == 0 {
		return nil, errors.New("no weather file is named")
	}
	if len(records) == 1 {
		return records[0], nil
	}
	records = slices.Clone(records)
	slices.SortStableFunc(records, func(a, b *weather.Record) int { return firstStep(a) - firstStep(b) })
	var faults []error
	for i := 1; i < len(records); i++ {
		faults = append(faults, follows(records[i-1], records[i]))
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	first, last := records[0], records[len(records)-1]
	out := *first
	out.File = first.File + " to " + last.File
	out.Steps = firstStep(last) + last.Steps - firstStep(first)
	out.Series, out.Unread, out.Notes, out.Warnings = nil, nil, nil, nil
	for _, r := range records {
		for k := range r.Series {
			put(&out, &r.Series[k], firstStep(r)-firstStep(first))
		}
		out.Unread = unite(out.Unread, r.Unread)
		out.Notes = unite(out.Notes, r.Notes)
		out.Warnings = unite(out.Warnings, r.Warnings)
	}
	return &out, nil
}

// firstStep counts a record's row 0 in steps from the calendar's beginning.
func firstStep(r *weather.Record) int {
	if r.Step == weather.Daily {
		return r.Start
	}
	return r.Start*24 + r.StartHour
}

// sameCell is how far, in degrees, the coordinates of two files of one place may lie apart:
// the digits that station files round away.
const sameCell = 0.01

// follows tells why b cannot be joined to a, or nil.
func follows(a, b *weather.Record) error {
	pa, pb := a.Place, b.Place
	apart := func(x, y float64) bool { return math.Abs(x-y) > sameCell }
	switch {
	case a.Format != b.Format || a.Step != b.Step:
		return fmt.Errorf("%s is %s, %s is %s: only files of one kind can be joined", a.File, a.Format, b.File, b.Format)
	case a.Typical || b.Typical:
		return fmt.Errorf("%s is a typical year: it cannot be joined to another", b.File)
	case a.Time != b.Time || pa.Clock != pb.Clock:
		return fmt.Errorf("%s follows %s, %s follows %s: only files of one clock can be joined", a.File, a.Time, b.File, b.Time)
	case a.Placed != b.Placed || apart(float64(pa.Latitude), float64(pb.Latitude)) || apart(float64(pa.Longitude), float64(pb.Longitude)):
		return fmt.Errorf("%s is of latitude %g, longitude %g, %s of %g, %g: only files of one place can be joined",
			a.File, float64(pa.Latitude), float64(pa.Longitude), b.File, float64(pb.Latitude), float64(pb.Longitude))
	}
	per := 1
	if a.Step == weather.Hourly {
		per = 24
	}
	switch gap := firstStep(b) - firstStep(a) - a.Steps; {
	case gap < 0:
		return fmt.Errorf("%s begins before %s ends: leave one of them out", b.File, a.File)
	case gap > mostJump*366*per:
		return fmt.Errorf("%s begins more than %d years after the end of %s: look at each alone", b.File, mostJump, a.File)
	}
	return nil
}

// put lays a series into a joined record, so many rows after its beginning.
func put(to *weather.Record, from *weather.Series, at int) {
	s := to.Of(from.Column)
	if s == nil {
		to.Series = append(to.Series, weather.Series{Column: from.Column, Source: from.Source, Unit: from.Unit,
			Values: slices.Repeat([]float64{math.NaN()}, to.Steps), Marks: slices.Repeat([]weather.Mark{weather.Absent}, to.Steps)})
		s = &to.Series[len(to.Series)-1]
	}
	for i, v := range from.Values {
		s.Values[at+i], s.Marks[at+i] = v, from.MarkAt(i)
	}
}

// unite adds the texts that are not there yet.
func unite(have, more []string) []string {
	for _, text := range more {
		if !slices.Contains(have, text) {
			have = append(have, text)
		}
	}
	return have
}
