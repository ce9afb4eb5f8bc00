package waste

import "fmt"

// PercolationRate gives s/mm from the seconds in which the water in a test hole falls by so many mm.
// Its reciprocal is the speed.
func PercolationRate(seconds, fall float64) float64 { return seconds / fall }

// MinutesPerInch gives the rate of North American rules.
func MinutesPerInch(rate float64) float64 { return rate * 25.4 / 60 }

// A Window is the range of rates, in s/mm, in which a rule lets a drain trench be built.
type Window struct {
	Name      string
	Low, High float64
	Source    string
}

// Windows lists the ranges of two editions; they differ at the fast end.
func Windows() []Window {
	return []Window{
		{"ad-h2", 12, 100, "ad-h2: percolation values, seen as quoted"},
		{"bs6297-2007", 15, 100, "bs6297: 2007, seen as quoted"},
	}
}

// Usable says in words whether ground of that rate serves, by both windows.
func Usable(rate float64) string {
	var in []string
	for _, w := range Windows() {
		if w.Low <= rate && rate <= w.High {
			in = append(in, w.Name)
		}
	}
	switch {
	case len(in) == len(Windows()):
		return "yes"
	case len(in) > 0:
		return fmt.Sprintf("doubtful: %s allows it, the other asks for at least %g s/mm", in[0], Windows()[1].Low)
	case rate < Windows()[0].Low:
		return "no: the ground is too fast to clean the water before it reaches groundwater"
	}
	return "no: the ground is too slow, the water would surface"
}
