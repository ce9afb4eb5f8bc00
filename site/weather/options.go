package weather

import (
	"encoding/json"

	"suffice/site"
)

// MissingDaysAllowed is how many missing days a complete year may have.
const MissingDaysAllowed = 5

// Options says how a record is completed. The zero value serves.
type Options struct {
	// Place is the house's: its clock becomes the clock of the hours, and it serves where
	// the record names no place. Nil keeps the record's own place, on the whole hour of its
	// longitude.
	Place *site.Place
	From  int // first year wanted, 0 for the record's first
	To    int // last year wanted, 0 for the record's last
	// Coast takes the coefficient 0.19 instead of 0.16 where light is estimated from
	// temperature (fao56 eq. 50).
	Coast bool
	// Seed picks the stream from which Combine draws sky years for gauge years that the sky
	// record does not have.
	Seed uint64
	// OnlyMatched lets Combine drop the gauge years that the sky record does not have,
	// instead of drawing a sky for them. A typical sky belongs to no year and serves for all.
	OnlyMatched bool
}

// kRs gives the coefficient of fao56 eq. 50.
func (o *Options) kRs() float64 {
	if o.Coast {
		return coast
	}
	return interior
}

// An Origin says where an hour's value comes from.
type Origin uint8

const (
	AsRecorded    Origin = iota // the record's own hour
	FromDay                     // made hourly from a recorded day
	Interpolated                // a gap of up to 3 hours
	FromNeighbour               // a gap of up to a day, from the days beside it
	FromOtherYear               // a longer gap, from the same dates of another year
	Computed                    // from other columns of the same hour or day
	Drawn                       // the sky of another year, set beside a gauge year
	Origins                     // how many there are; not an origin
)

// String names the origin as it stands in JSON.
func (o Origin) String() string {
	return [...]string{"as_recorded", "from_day", "interpolated", "from_neighbour", "from_other_year", "computed", "drawn"}[o]
}

// words says the origin in a sentence.
func (o Origin) words() string {
	return [...]string{"as recorded", "made from the day's figure", "interpolated over gaps of up to 3 hours", "taken from neighbouring days",
		"taken from the same dates of other years", "computed from other columns", "taken from the sky of other years"}[o]
}

// A Tally counts the hours of one column by origin. They sum to the hours there are.
type Tally struct {
	Column Column
	Hours  [Origins]int
}

// A Report says what was done to make a record complete.
type Report struct {
	Years    []int32  `json:"years"`    // complete years kept, in their order; none if no year is complete
	Dropped  []int32  `json:"dropped"`  // years left out since more than 5 days are missing
	Tallies  []Tally  `json:"columns"`  // one for each column of Hours that is there
	Notes    []string `json:"notes"`    // the same sentences that the Hours carry
	Warnings []string `json:"warnings"` // the records' own
}

// MarshalJSON writes the column's name and the origins that occur, each with its hours.
func (t Tally) MarshalJSON() ([]byte, error) {
	counts := map[string]any{"column": t.Column.String()}
	for o, n := range t.Hours {
		if n > 0 {
			counts[Origin(o).String()] = n
		}
	}
	return json.Marshal(counts)
}
