package hourly

import (
	"fmt"

	"suffice/warmth"
)

// Without gives the run of a house that lacks a measure in the same weather, made ready anew, and from how many of its walls,
// windows or rooms the measure was taken. From none, the run is nil: the house never had it.
func (r *Run) Without(m warmth.Measure) (run *Run, taken int, err error) {
	if r.in == nil {
		return nil, 0, fmt.Errorf("hourly: the file does not tell its rooms by their layers, so no measure can be left out of them")
	}
	lacking, parts := *r.House, *r.House.Rooms
	if parts.Design, taken = r.House.Rooms.Design.Without(m); taken == 0 {
		return nil, 0, nil
	}
	lacking.Rooms = &parts
	run, err = Prepare(&lacking, r.Weather)
	return run, taken, err
}
