package reduce

import "math"

// A Stepper carries a model through time in steps of one length, with inputs that stand still in each step. It is only read.
type Stepper struct {
	Step  float64     // s
	Decay []float64   // of each mode, what is left of it after a step
	Rest  []float64   // of each mode, its share in its own mean over the step
	Lasts []float64   // of each mode, the share of its rise by inputs in its mean
	Push  [][]float64 // of each input, the rise of each mode by the end of the step
}

// Steps prepares steps of so many seconds.
func (m *Model) Steps(step float64) *Stepper {
	s := &Stepper{Step: step, Push: make([][]float64, len(m.Inputs))}
	for k := range s.Push {
		s.Push[k] = make([]float64, len(m.Rate))
	}
	for i, rate := range m.Rate {
		x := rate * step
		rest := -math.Expm1(-x) / x
		s.Decay = append(s.Decay, math.Exp(-x))
		s.Rest = append(s.Rest, rest)
		s.Lasts = append(s.Lasts, later(x)/rest)
		for k, b := range m.In[i] {
			s.Push[k][i] = b * rest * step
		}
	}
	return s
}

// later is (1 - (1-e^-x)/x)/x: the mean over a step of what has come in since its beginning.
func later(x float64) float64 {
	if x < 1e-3 { // five terms of its series leave less than 1e-17
		return 1.0/2 - x/6*(1-x/4*(1-x/5*(1-x/6)))
	}
	return (1 + math.Expm1(-x)/x) / x
}

// Go moves the modes z on by a step, in place, and writes their means over the step: both exact for inputs u that
// stand still in it.
func (s *Stepper) Go(z, mean, u []float64) {
	mean = mean[:len(z)]
	clear(mean)
	for k, v := range u {
		if v == 0 {
			continue
		}
		for i, push := range s.Push[k][:len(mean)] {
			mean[i] += push * v
		}
	}
	rest, lasts, decay := s.Rest[:len(z)], s.Lasts[:len(z)], s.Decay[:len(z)]
	for i, rise := range mean {
		mean[i] = rest[i]*z[i] + lasts[i]*rise
		z[i] = decay[i]*z[i] + rise
	}
}
