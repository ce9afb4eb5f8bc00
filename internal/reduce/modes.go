package reduce

// A Model is a network along its own ways of decay. It is a plain value to keep, send or store, and is only read.
//
//	dz/dt = -Rate z + In u        each mode by itself
//	y     = Out z + Through u     what is seen
//	a     = At u - Inᵀ z          what each boundary gives to the network, W; for a heat, the temperature of where it enters, with its sign turned
//	heat held over 0 degrees      Held z, J; of each group Parts z
//
// At is symmetric: what a degree at one boundary makes another give, the other makes the first give.
type Model struct {
	Inputs  []Input
	Outputs []string
	Rate    []float64   // 1/s, rising, above 0
	In      [][]float64 // of each mode, by input
	At      [][]float64 // of each input, by input
	Out     [][]float64 // of each output, by mode
	Through [][]float64 // of each output, by input
	Held    []float64   // of each mode
	Parts   [][]float64 // of each group, by mode
	Off     float64     // K: how far what is looked at (outputs; without any, the answers) is off with the expected inputs, by swings of a year to four hours
}

// Modes gives how many there are.
func (m *Model) Modes() int { return len(m.Rate) }

// Steady gives the modes that no longer change under inputs that do not.
func (m *Model) Steady(u []float64) []float64 {
	z := make([]float64, len(m.Rate))
	for i, in := range m.In {
		z[i] = dot(in, u) / m.Rate[i]
	}
	return z
}

// See writes the outputs, of modes and inputs at a moment or of means of both.
func (m *Model) See(dst, z, u []float64) {
	for y := range dst {
		dst[y] = dot(m.Out[y], z) + dot(m.Through[y], u)
	}
}

// Answer writes the answer of each input: the heat that a boundary gives to the network, W, and the temperature of
// where a heat enters, weighted as it is spread; at a moment, or of means.
func (m *Model) Answer(dst, z, u []float64) {
	for k := range dst {
		dst[k] = dot(m.At[k], u)
	}
	for i, in := range m.In {
		for k, b := range in {
			dst[k] -= b * z[i]
		}
	}
	for k := range dst {
		if m.Inputs[k].Heat {
			dst[k] = -dst[k]
		}
	}
}

// Entering sums up what enters the network, W: the answers of boundaries and the shares of heats. In a time it is what
// Stored has risen by, to rounding, in the whole network as in a reduced one.
func (m *Model) Entering(answers, u []float64) (sum float64) {
	for k, in := range m.Inputs {
		if in.Heat {
			sum += in.Share * u[k]
		} else {
			sum += answers[k]
		}
	}
	return sum
}

// Stored gives the heat held, J, counted from 0 degrees.
func (m *Model) Stored(z []float64) float64 { return dot(m.Held, z) }

// StoredBy gives the heat held by each group, J, counted from 0 degrees.
func (m *Model) StoredBy(z []float64) []float64 {
	held := make([]float64, len(m.Parts))
	for g, part := range m.Parts {
		held[g] = dot(part, z)
	}
	return held
}

func dot(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
