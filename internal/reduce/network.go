package reduce

import (
	"errors"
	"fmt"
	"math"
)

// A Network is nodes that store heat or do not, joined by conductances to each other and to inputs. Build it with
// NewNetwork and the methods that say what is joined; what they refuse is told by Reduce.
type Network struct {
	capacity []float64 // J/K of each state
	ones     []float64 // each state when every place is one degree warm: 1 for a node
	own      []bool    // the state decays by itself
	inputs   []Input
	outputs  []output
	groups   []group
	form     []element
	faults   []error
}

// An Input drives a network: a temperature, degC or K, or a heat, W.
type Input struct {
	Name  string
	Heat  bool    // a heat; else a temperature
	Share float64 // how much of a heat enters the network, 1 where all of it does
}

// output is a weighted sum of states and inputs.
type output struct {
	name  string
	scale float64 // K for one of it: 1 for a temperature
	sum   mix
}

// A mix is a weighted sum of states and inputs.
type mix []part

type part struct {
	at    int
	share float64
}

// A group is states whose heat is told by itself.
type group struct {
	name   string
	states []int
}

// Group adds a part of the network whose heat is told by itself, and gives its number. A reduced network tells it so that the heats which
// enter and leave the part add up to what it gains, as those of the whole do.
func (n *Network) Group(name string) int {
	n.groups = append(n.groups, group{name: name})
	return len(n.groups) - 1
}

// Part adds a node to a group.
func (n *Network) Part(group, node int) {
	if group < 0 || group >= len(n.groups) {
		n.fault("group %d is none of %d", group, len(n.groups))
		return
	}
	if n.isNode(node) {
		n.groups[group].states = append(n.groups[group].states, node)
	}
}

// An element is a place off or on the diagonal of the symmetric matrix that gives the heats which leave states and inputs
// by the temperatures of both. States count from 0 up, inputs from -1 down.
type element struct {
	a, b int
	v    float64
}

func inputAt(input int) int { return -1 - input }

// NewNetwork makes a network of so many nodes without any capacity.
func NewNetwork(nodes int) *Network {
	n := &Network{}
	for range nodes {
		n.state(0, 1, false)
	}
	return n
}

func (n *Network) state(capacity, one float64, own bool) int {
	n.capacity, n.ones, n.own = append(n.capacity, capacity), append(n.ones, one), append(n.own, own)
	return len(n.capacity) - 1
}

// Node adds a node, capacity in J/K, and gives its number.
func (n *Network) Node(capacity float64) int {
	i := n.state(0, 1, false)
	n.Store(i, capacity)
	return i
}

// Store adds to the capacity of a node, J/K. A node to which nothing is added stores nothing and follows at once.
func (n *Network) Store(node int, capacity float64) {
	if n.isNode(node) && n.sound("capacity", capacity) {
		n.capacity[node] += capacity
	}
}

// Link joins two nodes by a conductance, W/K.
func (n *Network) Link(i, j int, conductance float64) {
	if n.isNode(i) && n.isNode(j) && n.sound("conductance", conductance) && i != j {
		n.pair(i, j, conductance)
	}
}

// Boundary adds an input that is a temperature, and gives its number.
func (n *Network) Boundary(name string) int { return n.input(Input{Name: name}) }

// Heat adds an input that is a heat, W, and gives its number.
func (n *Network) Heat(name string) int { return n.input(Input{Name: name, Heat: true}) }

func (n *Network) input(in Input) int {
	n.inputs = append(n.inputs, in)
	return len(n.inputs) - 1
}

// Meet joins a node to a boundary by a conductance, W/K. Several nodes may meet one boundary.
func (n *Network) Meet(node, boundary int, conductance float64) {
	if n.isNode(node) && n.isInput(boundary, false) && n.sound("conductance", conductance) {
		n.pair(node, inputAt(boundary), conductance)
	}
}

// Spread lets a share of a heat enter at a node.
func (n *Network) Spread(node, heat int, share float64) {
	if n.isNode(node) && n.isInput(heat, true) && n.finite("share", share) {
		n.add(node, inputAt(heat), -share)
		n.inputs[heat].Share += share
	}
}

// usualHeat and usualSwing are how far heats, W, and temperatures, K, are expected to go up and down where nothing else
// is said: common practice, no source.
const usualHeat, usualSwing = 300.0, 10.0

// Output adds a temperature to be read, and gives its number.
func (n *Network) Output(name string) int { return n.output(output{name: name, scale: 1}) }

// Outputs gives how many outputs there are.
func (n *Network) Outputs() int { return len(n.outputs) }

func (n *Network) output(o output) int {
	n.outputs = append(n.outputs, o)
	return len(n.outputs) - 1
}

// See adds a node to an output with a weight.
func (n *Network) See(node, output int, weight float64) {
	if output < 0 || output >= len(n.outputs) {
		n.fault("output %d is none of %d", output, len(n.outputs))
		return
	}
	if n.isNode(node) && n.finite("weight", weight) {
		n.outputs[output].sum = append(n.outputs[output].sum, part{node, weight})
	}
}

// pair joins two places.
func (n *Network) pair(a, b int, g float64) {
	n.add(a, a, g)
	n.add(b, b, g)
	n.add(a, b, -g)
}

func (n *Network) add(a, b int, v float64) {
	if v != 0 {
		n.form = append(n.form, element{a, b, v})
	}
}

func (n *Network) fault(format string, args ...any) {
	n.faults = append(n.faults, fmt.Errorf("reduce: "+format, args...))
}

func (n *Network) isNode(i int) bool {
	if i < 0 || i >= len(n.capacity) {
		n.fault("node %d is none of %d", i, len(n.capacity))
		return false
	}
	return true
}

func (n *Network) isInput(i int, heat bool) bool {
	if i < 0 || i >= len(n.inputs) || n.inputs[i].Heat != heat {
		n.fault("input %d of %d is none, or of the other kind (heat %t)", i, len(n.inputs), heat)
		return false
	}
	return true
}

func (n *Network) sound(what string, v float64) bool {
	if !(v >= 0) || math.IsInf(v, 0) {
		n.fault("%s of %g: it is not below 0", what, v)
		return false
	}
	return true
}

func (n *Network) finite(what string, v float64) bool {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		n.fault("%s of %g: give a number", what, v)
		return false
	}
	return true
}

// check gives everything about the network that cannot be reduced, or nil.
func (n *Network) check() error {
	faults := n.faults
	if floating := n.floating(); floating >= 0 {
		faults = append(faults, fmt.Errorf("reduce: node %d reaches no given temperature: join it to one", floating))
	}
	if len(n.capacity) == n.massless() {
		faults = append(faults, errors.New("reduce: nothing in the network stores heat: give a node a capacity"))
	}
	return errors.Join(faults...)
}

func (n *Network) massless() (count int) {
	for _, c := range n.capacity {
		if c == 0 {
			count++
		}
	}
	return count
}

// floating gives a node that reaches no boundary, -1 where all do.
func (n *Network) floating() int {
	of := make([]int, len(n.capacity)+1) // the last stands for all that is held
	held := len(n.capacity)
	for i := range of {
		of[i] = i
	}
	root := func(i int) int {
		for of[i] != i {
			of[i] = of[of[i]]
			i = of[i]
		}
		return i
	}
	for i, own := range n.own {
		if own {
			of[root(i)] = root(held)
		}
	}
	for _, e := range n.form {
		a, b := e.a, e.b
		switch {
		case a < 0 && b < 0:
			continue
		case a < 0:
			a, b = b, a
		}
		if b < 0 {
			if n.inputs[-1-b].Heat {
				continue
			}
			b = held
		}
		of[root(a)] = root(b)
	}
	for i := range n.capacity {
		if root(i) != root(held) {
			return i
		}
	}
	return -1
}
