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
	Within float64   // leave out modes that together weigh no more than this share of all; 0 keeps all
	Inputs []float64 // how far each input is expected to go up and down, K or W; nil for 10 K and 300 W
	Watch  []float64 // by output, the swing of a heat there that would make a change worth seeing, W; nil for 300 W
	Quick  []float64 // of a large network, the times in which its inputs change, s; nil for Usual
}

// Usual are the times for which the answers of a large network are exact beside rest: year, ten days, day and two hours as times of
// a swing over 2π.
func Usual() []float64 {
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
	} else if space, err = m.answers(o.Quick); err != nil {
		return nil, fmt.Errorf("reduce: %w", err)
	}
	p, err := m.project(space).alone()
	if err != nil {
		return nil, err
	}
	return n.thin(p, o)
}

// thin leaves out what weighs little.
func (n *Network) thin(p *modal, o Options) (*Model, error) {
	if o.Modes == 0 && o.Within == 0 || o.Modes >= p.size() {
		return p.model(n), nil
	}
	turned, weights, err := p.balance(p.drives(o.swings(n)))
	if err != nil {
		return nil, err
	}
	keep := o.Modes
	if keep == 0 {
		keep = few(weights, o.Within)
	}
	if keep >= p.size() {
		return p.model(n), nil
	}
	if p, err = turned.settle(keep); err != nil {
		return nil, err
	}
	if p, err = p.alone(); err != nil {
		return nil, err
	}
	m := p.model(n)
	m.Left = share(weights, keep)
	return m, nil
}

// swings gives those of inputs and outputs.
func (o *Options) swings(n *Network) (inputs, outputs []float64) {
	inputs, outputs = o.Inputs, o.Watch
	if inputs == nil {
		for _, in := range n.inputs {
			swing := usualSwing
			if in.Heat {
				swing = usualHeat
			}
			inputs = append(inputs, swing)
		}
	}
	if outputs == nil {
		for _, out := range n.outputs {
			outputs = append(outputs, out.watch)
		}
	}
	return inputs, outputs
}

func share(weights []float64, keep int) float64 {
	kept, left := 0.0, 0.0
	for i, w := range weights {
		if i < keep {
			kept += w
		} else {
			left += w
		}
	}
	return left / (kept + left)
}

func (o *Options) faults(n *Network) error {
	var faults []error
	refuse := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("reduce: "+format, args...))
		}
	}
	refuse(o.Modes < 0, "%d modes: keep one or more, or 0 to go by the share", o.Modes)
	refuse(!(o.Within >= 0 && o.Within < 1), "leave out a share of %g: 0 or more and below 1", o.Within)
	refuse(o.Inputs != nil && len(o.Inputs) != len(n.inputs), "%d swings of %d inputs", len(o.Inputs), len(n.inputs))
	refuse(o.Watch != nil && len(o.Watch) != len(n.outputs), "%d swings of %d outputs", len(o.Watch), len(n.outputs))
	for _, s := range o.Quick {
		refuse(!(s > 0), "inputs that change in %g s: above 0", s)
	}
	return errors.Join(faults...)
}
