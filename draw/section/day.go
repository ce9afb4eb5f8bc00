package section

import (
	"fmt"

	"suffice/hourly"
	"suffice/people"
	"suffice/quantity"
)

// A Day is one day of the house, to show levels and flows in its section.
type Day struct {
	Says   string            // the date in words
	Tanks  []quantity.Litres // in each tank at midnight after it, in the file's order
	Charge float64           // lowest reading of the battery on it, 0 to 1
	// Litres of the whole day: rain into the tanks, by road, overflowed, and served by kind.
	Rain, Road, Overflow quantity.Litres
	Served               [people.Kinds]quantity.Litres
}

// DayOf lives a record from its stated start to the end of a day, counted from 0, and tells that day.
func DayOf(r *hourly.Run, day int, says string) (*Day, error) {
	if day < 0 || 24*day+24 > r.Hours() {
		return nil, fmt.Errorf("day %d is not in the record of %d days", day, r.Hours()/24)
	}
	d := &Day{Says: says, Charge: 1}
	state := r.Start()
	if err := r.Live(&state, &hourly.Span{Last: 24 * day}); err != nil {
		return nil, err
	}
	span := hourly.Span{First: 24 * day, Last: 24*day + 24, See: func(_ int, row *hourly.Row) {
		d.Rain += row.Income.Caught
		d.Road += row.Income.Delivered
		d.Overflow += row.Income.Spilled
		for k, served := range row.Taps.Served {
			d.Served[k] += served
		}
		d.Charge = min(d.Charge, row.Power.Charge)
	}}
	if err := r.Live(&state, &span); err != nil {
		return nil, err
	}
	if w := r.House.Water; w != nil {
		for i := range w.Tanks() {
			d.Tanks = append(d.Tanks, state.Water.Tanks[i].Held)
		}
	}
	return d, nil
}
