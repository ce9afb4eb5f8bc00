package weather

import (
	"math"

	"suffice/site"
)

// A Timekeeping says what a record's own days and hours follow.
type Timekeeping uint8

const (
	UTC            Timekeeping = iota // universal time
	SolarHours                        // UTC and longitude/15 rounded to whole hours
	StandardTime                      // the clock of the place, standard time all year
	ObservationDay                    // the day on which the gauge was read, often morning to morning
)

// String names the timekeeping for a person.
func (k Timekeeping) String() string {
	return [...]string{"UTC", "local solar hours", "standard time", "the observer's day"}[k]
}

// A Mark says how a value of a record came about, or why it is missing.
type Mark uint8

const (
	Recorded    Mark = iota // as the file has it
	Trace                   // too little to measure, counted as 0
	Accumulated             // a share of a total over several days
	Absent                  // missing: no row, or the file's code for a missing value
	Flagged                 // missing: the agency's own check doubted it
	Presumed                // missing: the file says 0, and that nobody knows
	Impossible              // missing: outside the bounds of what can be
	Marks                   // how many there are; not a mark
)

// String names the mark for a person.
func (m Mark) String() string {
	return [...]string{"recorded", "trace", "accumulated", "absent", "flagged", "presumed", "impossible"}[m]
}

// A Series is one column of a record.
type Series struct {
	Column Column
	Source string    // what the file calls it
	Unit   string    // the unit the file gives it in
	Values []float64 // in Column.Unit; NaN where missing
	Marks  []Mark    // one for each value; nil while all are Recorded or, if NaN, Absent
	Lines  []int32   // line of the file for each value, 0 where there is none; nil where unknown
}

// A Record is what a file truly holds, on an even axis of time: nothing filled, nothing
// made. Row i of each series begins i steps after the start.
type Record struct {
	File      string // where it was read
	Format    string
	Place     site.Place // Clock is the record's own: hours of its time ahead of UTC
	Placed    bool       // whether the file, or whoever opened it, gave the coordinates
	Step      Step
	Time      Timekeeping
	Start     int // number of the first day, as DayNumber counts
	StartHour int // clock hour at which row 0 begins; 0 for daily records
	Steps     int
	Series    []Series
	Typical   bool      // a year whose months come from different years, put on NominalYear
	MonthFrom [12]int32 // the true years of its months
	Unread    []string  // the file's names of columns that were left unread
	Notes     []string  // what a reader should know: how it was read, what was left out
	Warnings  []string  // what looks wrong
}

// Of gives the series of a column, or nil.
func (r *Record) Of(c Column) *Series {
	for i := range r.Series {
		if r.Series[i].Column == c {
			return &r.Series[i]
		}
	}
	return nil
}

// MarkAt gives how value i came about.
func (s *Series) MarkAt(i int) Mark {
	if s.Marks != nil {
		return s.Marks[i]
	}
	if math.IsNaN(s.Values[i]) {
		return Absent
	}
	return Recorded
}
