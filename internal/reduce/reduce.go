package reduce

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Options say how far a network is reduced. The zero Options keep every mode of a network of fewer than 400 storing nodes.
type Options struct {
	Modes  int       // keep so many; 0 leaves it to Within
	Within float64   // keep so few that no output is off by more, K rms, as Off says; 0 keeps all
	Inputs []float64 // how far each input goes up and down, rms, K or W; nil for 10 K and 300 W
	Watch  []float64 // how many K one of each output counts, 0 where it need not be right in the hour; nil for 1, and for a component's heat 1 over its conductance
	Step   float64   // time for which inputs stand still and over which means are looked at, s; 0 for an hour
	Times  []float64 // of a large network, the times in which its inputs change, s; nil for UsualTimes
}

// UsualTimes are those for which the answers of a large network are exact beside rest: year, ten days, day and two hours as times of
// a swing over 2π.
func UsualTimes() []float64 {
	const turn = 3600 / (2 * math.Pi)
	return []float64{8760 * turn, 240 * turn, 24 * turn, 2 * turn}
}

// Reduce gives a network as few modes. It may be asked again with other options.
func (n *Network) Reduce(o Options) (*Model, error) {
	if err := errors.Join(n.check(), o.faults(n)); err != nil {
		return nil, err
	}
	m, err := n.matrices()
	if err != nil {
		return nil, err
	}
	var space *mat.Dense
	if m.states-len(m.massless) < many {
		space = m.units()
	} else if space, err = m.answers(o.Times); err != nil {
		return nil, fmt.Errorf("reduce: %w", err)
	}
	p, err := m.project(space).alone()
	if err != nil {
		return nil, err
	}
	return n.thin(p, o)
}

func (o *Options) step() float64 {
	if o.Step == 0 {
		return 3600
	}
	return o.Step
}

// slight is the share of all weights below which modes are left out before the rest are tried one number after another: what they do is
// far below a thousandth of a kelvin.
const slight = 1e-10

// thin leaves out what shows little.
func (n *Network) thin(p *modal, o Options) (*Model, error) {
	if o.Modes == 0 && o.Within == 0 || o.Modes >= p.size() {
		return p.model(n), nil
	}
	swings := o.swings(n)
	ranked, weights, err := p.balance(p.drives(n, swings, o.Watch), o.step())
	if err != nil {
		return nil, err
	}
	all, scales := p.sight(), p.scales(n, o.Watch)
	first, last := o.Modes, o.Modes
	if o.Modes == 0 {
		first, last = 1, few(weights, slight)
		if ranked, err = ranked.settle(last); err != nil {
			return nil, err
		}
	}
	for keep := first; keep <= last; keep++ {
		kept, err := ranked.settle(keep)
		if err != nil {
			return nil, err
		}
		if kept, err = kept.alone(); err != nil {
			return nil, err
		}
		seen := kept.sight()
		if off := seen.off(&all, swings, scales); o.Modes > 0 || off <= o.Within {
			m := kept.model(n)
			m.Off = off
			return m, nil
		}
	}
	return p.model(n), nil
}

// swings gives those of the inputs.
func (o *Options) swings(n *Network) []float64 {
	if o.Inputs != nil {
		return o.Inputs
	}
	swings := make([]float64, len(n.inputs))
	for k, in := range n.inputs {
		swings[k] = usualSwing
		if in.Heat {
			swings[k] = usualHeat
		}
	}
	return swings
}

func (o *Options) faults(n *Network) error {
	var faults []error
	refuse := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("reduce: "+format, args...))
		}
	}
	refuse(o.Modes < 0, "%d modes: keep one or more, or 0 to go by the share", o.Modes)
	refuse(!(o.Within >= 0), "within %g K: 0 or more", o.Within)
	refuse(!(o.Step >= 0), "steps of %g s: above 0, or 0 for an hour", o.Step)
	refuse(o.Inputs != nil && len(o.Inputs) != len(n.inputs), "%d swings of %d inputs", len(o.Inputs), len(n.inputs))
	refuse(o.Watch != nil && len(o.Watch) != len(n.outputs), "%d counts of %d outputs", len(o.Watch), len(n.outputs))
	for _, s := range o.Times {
		refuse(!(s > 0), "inputs that change in %g s: above 0", s)
	}
	return errors.Join(faults...)
}
