package warmth

import "suffice/internal/reduce"

// A circuit is a network of heat together with its ties and joints, by each of which heat is told.
type circuit struct {
	net      *reduce.Network
	capacity []float64 // J/K of each node, 0 where it stores nothing
	joints   []joint
	ties     []tie
	inputs   int
	sights   []sight
}

// A sight is a node whose temperature is read, and the output that tells it.
type sight struct{ node, output int }

// A joint is a conductance between two nodes, W/K.
type joint struct {
	from, to int
	g        float64
}

// A tie is a conductance from a node to an input that is a temperature, W/K.
type tie struct {
	node, input int
	g           float64
}

func (c *circuit) node(capacity float64) int {
	c.capacity = append(c.capacity, capacity)
	return c.net.Node(capacity)
}

// boundary adds an input that is a temperature.
func (c *circuit) boundary(name string) int {
	c.inputs++
	return c.net.Boundary(name)
}

// heat adds an input that is a heat, W, which enters at a node.
func (c *circuit) heat(name string, node int) int {
	c.inputs++
	in := c.net.Heat(name)
	c.net.Spread(node, in, 1)
	return in
}

// falls adds an input that is a heat, W, on a face that is no node.
func (c *circuit) falls(name string) int {
	c.inputs++
	return c.net.Heat(name)
}

func (c *circuit) join(from, to int, g float64) int {
	c.net.Link(from, to, g)
	c.joints = append(c.joints, joint{from, to, g})
	return len(c.joints) - 1
}

func (c *circuit) tie(node, input int, g float64) int {
	c.net.Meet(node, input, g)
	c.ties = append(c.ties, tie{node, input, g})
	return len(c.ties) - 1
}

// see adds the temperature of a node to what is read.
func (c *circuit) see(name string, node int) int {
	y := c.net.Output(name)
	c.net.See(node, y, 1)
	c.sights = append(c.sights, sight{node, y})
	return y
}

// ensure sees a node that is not seen yet.
func (c *circuit) ensure(node int) {
	for _, at := range c.sights {
		if at.node == node {
			return
		}
	}
	c.see("", node)
}
