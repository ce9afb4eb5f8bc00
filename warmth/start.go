package warmth

import (
	"math"

	"suffice/warmth/vent"
)

// settled is how near a year's end has to be to its beginning, K of any mode's share in an air or star.
const settled = 1e-6

// mostYears is how often the first year is lived to find its beginning.
const mostYears = 12

// Start gives the state of 1 January to which the first year of the record, lived again and again with the same
// gains of the house, comes: solved, not lived in. Each mode's beginning is moved by what the year left it short of,
// over what of that is still there a year later (1 − e^−λ·year): exact at once where no vents or machines act,
// and mended in a few rounds where they do.
func (r *Rooms) Start(in In) State {
	var s State
	days := min(len(r.hours.Days), 365)
	hours := 24 * days
	for i := range r.rooms {
		s.Air[i], s.Carbon[i], s.Vapour[i] = 20, vent.OutsideCarbon, math.NaN()
		if r.damp.outside != nil {
			s.Vapour[i] = r.damp.outside[0]
		}
	}
	var out Out
	for range mostYears {
		begin := s
		for h := range hours {
			in.Hour = h
			r.Step(&s, &in, &out)
		}
		var off float64
		for i := range r.modes {
			stays := math.Pow(r.lived.decay[i], float64(hours))
			move := s.Modes[i] - begin.Modes[i]
			if stays < 1 {
				move /= 1 - stays
			}
			begin.Modes[i] += move
			for y := range r.count {
				off = max(off, math.Abs(move*r.model.Out[y][i]))
			}
		}
		begin.Air, begin.Vapour, begin.Carbon = s.Air, s.Vapour, s.Carbon
		s = begin
		if off < settled {
			break
		}
	}
	return s
}
