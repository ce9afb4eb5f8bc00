package fabric

import (
	"math"
	"slices"
)

// A Network is an element as nodes in a row: finite volumes across the layers, each with
// its store in its middle. For the rooms' balance build it from an Element with bare surfaces, and
// join its two ends to the nodes of the surfaces.
type Network struct {
	Capacity []float64 // of each node from inside to outside, J/m2K
	Link     []float64 // W/m2K: Link[0] from the inner end to the first node, Link[i] from node i-1 to node i, the last one to the outer end
}

// Fineness is the default of Spacing.Fineness: cells of a fifth of the depth of penetration.
// For the walls of the tests, up to five depths thick, what comes through and both
// admittances then differ from iso13786 by less than one part in fifty, phases counted.
const Fineness = 5

// A Spacing says how finely layers are cut.
type Spacing struct {
	Hours    float64 // the shortest period that has to be right
	Fineness float64 // cells for one depth of penetration at that period
}

// Cells gives how many equal cells a layer is cut into: the fewest that are no thicker than
// the spacing allows, none where the layer stores nothing.
func (s Spacing) Cells(l Layer) int {
	if l.Areal() == 0 {
		return 0
	}
	depths := math.Sqrt(angular(s.Hours) * l.Areal() * float64(l.Resistance()) / 2)
	return max(1, int(math.Ceil(depths*s.Fineness)))
}

// Network cuts the element's layers by the spacing's rule. Layers that store nothing,
// and the surfaces, become part of the link they lie in. An element that stores nothing has one
// link and no nodes.
func (e Element) Network(s Spacing) Network {
	e = e.Even()
	cells := make([]int, len(e.Layers))
	for i, l := range e.Layers {
		cells[i] = s.Cells(l)
	}
	return e.Cut(cells)
}

// Cut makes the network with so many cells in each layer; a count of 0 is for layers that
// store nothing.
func (e Element) Cut(cells []int) Network {
	e = e.Even()
	var n Network
	before := float64(e.Inside) // resistance since the last node
	for i, l := range e.Layers {
		if cells[i] == 0 {
			before += float64(l.Resistance())
			continue
		}
		count := float64(cells[i])
		half := float64(l.Resistance()) / count / 2
		for range cells[i] {
			n.Link = append(n.Link, 1/(before+half))
			n.Capacity = append(n.Capacity, l.Areal()/count)
			before = half
		}
	}
	n.Link = append(n.Link, 1/(before+float64(e.Outside)))
	return n
}

// Steady gives the heat that flows through for one kelvin, W/m2K: exactly the layers' own.
func (n Network) Steady() float64 {
	var resistance float64
	for _, g := range n.Link {
		resistance += 1 / g
	}
	return 1 / resistance
}

// Store gives the heat that all nodes hold for one kelvin, J/m2K.
func (n Network) Store() float64 {
	var sum float64
	for _, c := range n.Capacity {
		sum += c
	}
	return sum
}

// Swing gives the network's own answer to a period in hours, to be held against the
// element's.
func (n Network) Swing(hours float64) Swing {
	return swing(n.at, hours, n.Store())
}

func (n Network) at(w float64) Transfer {
	t := through(1 / n.Link[0])
	for i, c := range n.Capacity {
		t = t.Then(into(c, w)).Then(through(1 / n.Link[i+1]))
	}
	return t
}

// A System is a network as equations: Capacity dT/dt = -Conductance T + Ends u, with the
// temperatures T of the nodes and u of the two ends. The heat that enters at end k is
// Through[k] u[k] less the sum over the nodes of Ends[i][k] T[i]; without nodes it is
// Through[k] times the difference of the two ends.
type System struct {
	Capacity    []float64    // J/m2K
	Conductance [][]float64  // W/m2K, symmetric; each row sums to what the node gives to the ends
	Ends        [][2]float64 // W/m2K, of each node to the inner and the outer end
	Through     [2]float64   // W/m2K, the whole conductance at each end
}

// System writes the network as matrices.
func (n Network) System() System {
	count := len(n.Capacity)
	s := System{Capacity: slices.Clone(n.Capacity), Conductance: make([][]float64, count), Ends: make([][2]float64, count)}
	s.Through = [2]float64{n.Link[0], n.Link[count]}
	for i := range count {
		s.Conductance[i] = make([]float64, count)
		s.Conductance[i][i] = n.Link[i] + n.Link[i+1]
		if i > 0 {
			s.Conductance[i][i-1] = -n.Link[i]
		}
		if i+1 < count {
			s.Conductance[i][i+1] = -n.Link[i+1]
		}
	}
	if count > 0 {
		s.Ends[0][0] += n.Link[0]
		s.Ends[count-1][1] += n.Link[count]
	}
	return s
}
