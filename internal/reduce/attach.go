package reduce

// A Port says what an input of a component is in the network to which it is attached.
//
// For a boundary of the component the parts are the conductances, W/K, of the film between its face and nodes or boundaries, and shares
// of heats that fall on that face. The component has this film within it, of the same whole conductance h: its boundary then is at
// what the film touches in the mean, (Σ g T + heats)/h, and the face lies q/h below that, q being the heat that
// the component takes there. Where a film touches one boundary or node alone, and no heat falls on the face, the component's boundary is
// that one, whatever the conductance.
//
// For a heat of the component the parts are shares of heats.
type Port struct {
	Nodes  []Part // conductances
	Inputs []Part // conductances to boundaries, shares of heats
}

// A Part is the number of a node or input with its conductance, W/K, or its share.
type Part struct {
	Of   int
	Much float64
}

// Attached are the numbers of the outputs that came with a component.
type Attached struct {
	Heats   []int // by its inputs: heat that a boundary gives it, W; -1 for a heat
	Faces   []int // by its inputs: mean temperature of the face behind a boundary; -1 for a heat
	Outputs []int // its own outputs
	States  []int // its modes, to be put into a group
}

// Attach joins a component that is already a model, with a port for each of its inputs.
//
// Where the film's parts g meet at a face with the heats S and the component behind, Σ g (Ti - Tf)²/2 - S Tf + component(Tf) is least for the
// true Tf. With p = g/h, S/h that is Σ g Ti²/2 - h (p·T)²/2 and the component with its film at p·T: symmetric, so that what is
// attached keeps every law of the network.
func (n *Network) Attach(c *Model, ports []Port) Attached {
	if len(ports) != len(c.Inputs) {
		n.fault("a component of %d inputs has %d ports", len(c.Inputs), len(ports))
		return Attached{}
	}
	touches, films := make([]mix, len(ports)), make([]float64, len(ports))
	for k, p := range ports {
		if c.Inputs[k].Heat {
			touches[k] = n.passOn(p, c.Inputs[k])
		} else {
			touches[k], films[k] = n.film(p, c.Inputs[k])
		}
	}
	first := len(n.capacity)
	var states []int
	for i, rate := range c.Rate {
		z := n.state(1, c.Held[i], true)
		states = append(states, z)
		n.add(z, z, rate)
		for k, b := range c.In[i] {
			for _, p := range touches[k] {
				n.add(z, p.at, -b*p.share)
			}
		}
	}
	for k, row := range c.At {
		for l, v := range row[:k] {
			n.product(touches[k], touches[l], v)
		}
		n.square(touches[k], row[k])
	}
	a := n.follow(c, first, touches, films)
	a.States = states
	return a
}

// film joins what a boundary of a component touches, and gives its temperature as a mix and the film's conductance.
func (n *Network) film(p Port, in Input) (touches mix, h float64) {
	for _, q := range p.Nodes {
		if n.isNode(q.Of) && n.sound("conductance", q.Much) {
			touches, h = append(touches, part{q.Of, q.Much}), h+q.Much
			n.add(q.Of, q.Of, q.Much)
		}
	}
	for _, q := range p.Inputs {
		switch {
		case q.Of >= 0 && q.Of < len(n.inputs) && n.inputs[q.Of].Heat:
			n.inputs[q.Of].Share += q.Much
		case n.isInput(q.Of, false) && n.sound("conductance", q.Much):
			h += q.Much
			n.add(inputAt(q.Of), inputAt(q.Of), q.Much)
		default:
			continue
		}
		touches = append(touches, part{inputAt(q.Of), q.Much})
	}
	if !(h > 0) {
		n.fault("the film at %q conducts nothing: give it a conductance", in.Name)
		return nil, 1
	}
	for i := range touches {
		touches[i].share /= h
	}
	n.square(touches, -h)
	return touches, h
}

// passOn gives a heat of a component as a mix of heats.
func (n *Network) passOn(p Port, in Input) (m mix) {
	if len(p.Nodes) > 0 {
		n.fault("the heat %q of a component is given nodes: give heats", in.Name)
	}
	for _, q := range p.Inputs {
		if n.isInput(q.Of, true) && n.finite("share", q.Much) {
			n.inputs[q.Of].Share += q.Much * in.Share
			m = append(m, part{inputAt(q.Of), q.Much})
		}
	}
	return m
}

// square adds v times a mix by itself.
func (n *Network) square(m mix, v float64) {
	for i, a := range m {
		n.add(a.at, a.at, v*a.share*a.share)
		n.product(m[i:i+1], m[:i], v)
	}
}

// product adds v times two mixes, and their turned places too.
func (n *Network) product(m, l mix, v float64) {
	for _, a := range m {
		for _, b := range l {
			w := v * a.share * b.share
			if a.at == b.at {
				w *= 2
			}
			n.add(a.at, b.at, w)
		}
	}
}

// follow makes outputs of what a component takes, of its faces and of its own outputs.
func (n *Network) follow(c *Model, first int, touches []mix, films []float64) (a Attached) {
	sum := func(modes []float64, sign float64, inputs []float64) (s mix) {
		for i, v := range modes {
			s = append(s, part{first + i, sign * v})
		}
		for k, v := range inputs {
			s = s.with(touches[k], v)
		}
		return s
	}
	for k, in := range c.Inputs {
		if in.Heat {
			a.Heats, a.Faces = append(a.Heats, -1), append(a.Faces, -1)
			continue
		}
		modes := make([]float64, len(c.Rate))
		for i := range modes {
			modes[i] = c.In[i][k]
		}
		takes := sum(modes, -1, c.At[k])
		a.Heats = append(a.Heats, n.output(output{in.Name + ", heat", over(c.At[k][k]), takes}))
		a.Faces = append(a.Faces, n.output(output{in.Name + ", face", 1, append(mix(nil), touches[k]...).with(takes, -1/films[k])}))
	}
	for y, name := range c.Outputs {
		a.Outputs = append(a.Outputs, n.output(output{name, 1, sum(c.Out[y], 1, c.Through[y])}))
	}
	return a
}

// with adds another mix, so many times.
func (m mix) with(other mix, times float64) mix {
	for _, p := range other {
		m = append(m, part{p.at, times * p.share})
	}
	return m
}
