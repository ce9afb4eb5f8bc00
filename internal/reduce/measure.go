package reduce

import (
	"math"
	"math/cmplx"
)

// swingHours are the periods at which what is left out is measured: year, month, ten days, three days, day and its parts.
var swingHours = [...]float64{8760, 730, 240, 72, 24, 12, 8, 6, 4}

// A sight is how strongly each thing that is looked at answers each input in a swing, by the swing's period.
type sight [len(swingHours)][][]complex128

// sight looks at modes that are alone: at outputs or, where there are none, at the answers of inputs.
func (p *modal) sight() (s sight) {
	shows, direct := p.out, p.through
	if shows == nil {
		shows, direct = turned(p.in), p.at
	}
	for f, hours := range swingHours {
		follows := make([]complex128, p.size())
		for i := range follows {
			follows[i] = 1 / complex(p.a.At(i, i), 2*math.Pi/(hours*3600))
		}
		for y := range rows(shows) {
			row := make([]complex128, cols(p.in))
			for k, v := range direct.RawRowView(y) {
				row[k] = complex(v, 0)
			}
			for i, v := range shows.RawRowView(y) {
				shown := complex(v, 0) * follows[i]
				for k, b := range p.in.RawRowView(i) {
					row[k] += shown * complex(b, 0)
				}
			}
			s[f] = append(s[f], row)
		}
	}
	return s
}

// off gives how far two sights are apart, K, for the thing looked at that is worst: the root of the sum over all inputs of the squared difference at
// the period where that is largest. Inputs swing as told, below a day in proportion to the period.
func (s *sight) off(other *sight, swings, scales []float64) (worst float64) {
	for y, scale := range scales {
		sum := 0.0
		for k, swing := range swings {
			most := 0.0
			for f, hours := range swingHours {
				most = max(most, cmplx.Abs(s[f][y][k]-other[f][y][k])*min(1, hours/24))
			}
			sum += most * swing * most * swing
		}
		worst = max(worst, math.Sqrt(sum)*scale)
	}
	return worst
}

// scales turns what is looked at into K: outputs as told, or else heat into a boundary over the conductance of its skin.
func (p *modal) scales(n *Network, watch []float64) (scales []float64) {
	if p.out != nil {
		return n.counts(watch)
	}
	for k, in := range n.inputs {
		scale := 1.0
		if !in.Heat {
			scale = over(p.at.At(k, k))
		}
		scales = append(scales, scale)
	}
	return scales
}

// counts gives how many K one of each output counts.
func (n *Network) counts(watch []float64) []float64 {
	if watch != nil {
		return watch
	}
	counts := make([]float64, len(n.outputs))
	for y, o := range n.outputs {
		counts[y] = o.scale
	}
	return counts
}

// over gives 1/conductance, 0 for a boundary that nothing meets.
func over(conductance float64) float64 {
	if conductance == 0 {
		return 0
	}
	return 1 / conductance
}
