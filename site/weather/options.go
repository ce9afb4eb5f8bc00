package weather

import "suffice/site"

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
	// temperature (FAO-56 eq. 50).
	Coast bool
	// Seed picks the stream from which sky years are drawn for gauge years that the sky
	// record does not have.
	Seed uint64
	// OnlyMatched drops the gauge years that the sky record does not have, instead of
	// drawing a sky for them.
	OnlyMatched bool
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

// A Tally counts the hours of one column by origin. They sum to the hours there are.
type Tally struct {
	Column Column
	Hours  [Origins]int
}

// A Report says what was done to make a record complete.
type Report struct {
	Years    []int32  // complete years kept, in their order
	Dropped  []int32  // years left out since more than 5 days are missing
	Tallies  []Tally  // one for each column of Hours that is there
	Notes    []string // the same sentences that the Hours carry
	Warnings []string // the record's own
}
