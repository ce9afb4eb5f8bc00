package ground

import (
	"fmt"

	"suffice/internal/reduce"
	"suffice/quantity"
)

// skin is how far a reduced section's faces may be off, K rms, with airs that swing by 10 K. In the dug house of the tests 0.02 K leave the year's net heat of
// the garden 0.6 % off, floor and wall 0.03 %; 0.005 K leave all below a thousandth.
const skin = 0.005

// UsualModes says how far a section is reduced for a house that is lived hour by hour.
func UsualModes() reduce.Options { return reduce.Options{Within: skin} }

// Reduce gives the section, for so many metres of house, as few modes with the airs as boundaries, in the section's order: what each air gives
// to it is its answer, W. Steady heat is exact, and heat that enters is heat held. The model is a plain value: keep it as long as the
// section and the options stay, in memory or in a file. A face's mean temperature is that of its air less the answer
// times what the air Resists over the face's area, length times that of Faces.
func (n *Network) Reduce(length quantity.Metres, o reduce.Options) (*reduce.Model, error) {
	if !(length > 0) {
		return nil, fmt.Errorf("section: a house of %g m: its length is above 0", float64(length))
	}
	r := reduce.NewNetwork(len(n.capacity))
	for i, c := range n.capacity {
		r.Store(i, c*float64(length))
	}
	for _, j := range n.joints {
		r.Link(int(j.a), int(j.b), j.g*float64(length))
	}
	for _, a := range n.Section.Airs {
		r.Boundary(a.Name)
	}
	for _, f := range n.faces {
		r.Meet(int(f.node), int(f.air), f.g*float64(length))
	}
	m, err := r.Reduce(o)
	if err != nil {
		return nil, fmt.Errorf("section: %w", err)
	}
	return m, nil
}

// Faces gives the length of each air's face in the cut, m.
func (n *Network) Faces() []float64 {
	long := make([]float64, len(n.Section.Airs))
	for _, f := range n.faces {
		long[f.air] += f.long
	}
	return long
}
