package ground

import (
	"errors"

	"suffice/internal/solve"
)

// Network is a section as nodes with what joins them, ready to be solved. It is only read.
type Network struct {
	Section *Section

	node     []int32 // of each cell, -1 for none
	capacity []float64
	joints   []joint
	faces    []surface
	half     int
}

type joint struct {
	a, b int32
	g    float64 // W/mK: for a metre across the cut
}

// surface is the face of a cell to an air.
type surface struct {
	node, air int32
	g         float64
	long      float64 // m
}

// Network joins the cells of a section.
func (s *Section) Network() (*Network, error) {
	if err := s.Faults(); err != nil {
		return nil, err
	}
	n := &Network{Section: s, node: make([]int32, len(s.cells))}
	n.number()
	columns, rows := len(s.X)-1, len(s.Y)-1
	for j := range rows {
		for i := range columns {
			dx, dy := s.X[i+1]-s.X[i], s.Y[j+1]-s.Y[j]
			if i+1 < columns {
				n.join(j*columns+i, j*columns+i+1, [2]float64{dx, s.X[i+2] - s.X[i+1]}, dy)
			}
			if j+1 < rows {
				n.join(j*columns+i, (j+1)*columns+i, [2]float64{dy, s.Y[j+2] - s.Y[j+1]}, dx)
			}
		}
	}
	if len(n.capacity) == 0 || len(n.faces) == 0 {
		return nil, errors.New("section: no material meets an air, so there is nothing to compute")
	}
	return n, nil
}

// number counts the cells of material along the shorter side first, which keeps the band narrow.
func (n *Network) number() {
	s := n.Section
	columns, rows := len(s.X)-1, len(s.Y)-1
	count := func(i, j int) {
		cell := j*columns + i
		n.node[cell] = -1
		if what := s.cells[cell]; what > 0 {
			n.node[cell] = int32(len(n.capacity))
			n.capacity = append(n.capacity, s.Materials[what-1].Capacity*(s.X[i+1]-s.X[i])*(s.Y[j+1]-s.Y[j]))
		}
	}
	if rows <= columns {
		for i := range columns {
			for j := range rows {
				count(i, j)
			}
		}
		return
	}
	for j := range rows {
		for i := range columns {
			count(i, j)
		}
	}
}

// join joins two neighbouring cells, their depths across the face and the face's length given.
func (n *Network) join(a, b int, deep [2]float64, long float64) {
	s := n.Section
	wa, wb := s.cells[a], s.cells[b]
	if wa == 0 || wb == 0 || wa < 0 && wb < 0 {
		return
	}
	g := long / (s.half(wa, deep[0]) + s.half(wb, deep[1]))
	switch {
	case wa < 0:
		n.faces = append(n.faces, surface{n.node[b], -wa - 1, g, long})
	case wb < 0:
		n.faces = append(n.faces, surface{n.node[a], -wb - 1, g, long})
	default:
		n.joints = append(n.joints, joint{n.node[a], n.node[b], g})
		n.half = max(n.half, int(max(n.node[a]-n.node[b], n.node[b]-n.node[a])))
	}
}

// Nodes gives how many cells of material there are.
func (n *Network) Nodes() int { return len(n.capacity) }

// matrix gives share times the conductances, plus the capacities over a step where one is given.
func (n *Network) matrix(share, step float64) *solve.Banded {
	m := solve.NewBanded(len(n.capacity), n.half)
	for _, j := range n.joints {
		m.Add(int(j.a), int(j.a), share*j.g)
		m.Add(int(j.b), int(j.b), share*j.g)
		m.Add(int(j.a), int(j.b), -share*j.g)
	}
	for _, f := range n.faces {
		m.Add(int(f.node), int(f.node), share*f.g)
	}
	if step > 0 {
		for i, c := range n.capacity {
			m.Add(i, i, c/step)
		}
	}
	return m
}

// flows writes what each air gives to the section, W/m, at temperatures of nodes and airs.
func (n *Network) flows(dst, nodes, airs []float64) {
	clear(dst)
	for _, f := range n.faces {
		dst[f.air] += f.g * (airs[f.air] - nodes[f.node])
	}
}

// Field is a section's temperatures.
type Field struct {
	Nodes []float64 // degC, as numbered by the network
	Airs  []float64 // degC
	Flows []float64 // W/m, what each air gives to the section
	of    *Network
}

// Steady gives the temperatures that no longer change, with the airs at these temperatures, degC.
func (n *Network) Steady(airs []float64) (Field, error) {
	factored, err := n.matrix(1, 0).Factor()
	if err != nil {
		return Field{}, err
	}
	f := Field{Nodes: make([]float64, n.Nodes()), Airs: airs, Flows: make([]float64, len(airs)), of: n}
	for _, s := range n.faces {
		f.Nodes[s.node] += s.g * airs[s.air]
	}
	factored.Solve(f.Nodes)
	n.flows(f.Flows, f.Nodes, airs)
	return f, nil
}

// Coupling gives what flows from each air to each other, W/mK, at one degree between them: element a, b
// is what air a gives with air b a degree colder and every other as warm as a. Below the diagonal it is the same again.
func (n *Network) Coupling() ([][]float64, error) {
	count := len(n.Section.Airs)
	coupling := make([][]float64, count)
	for a := range coupling {
		coupling[a] = make([]float64, count)
	}
	factored, err := n.matrix(1, 0).Factor()
	if err != nil {
		return nil, err
	}
	airs, flows := make([]float64, count), make([]float64, count)
	nodes := make([]float64, n.Nodes())
	for b := range count {
		clear(airs)
		clear(nodes)
		airs[b] = -1
		for _, s := range n.faces {
			nodes[s.node] += s.g * airs[s.air]
		}
		factored.Solve(nodes)
		n.flows(flows, nodes, airs)
		for a := range count {
			if a != b {
				coupling[a][b] = flows[a]
			}
		}
	}
	return coupling, nil
}

// Storing gives the heat held, J/m, counted from 0 degC.
func (n *Network) Storing(nodes []float64) float64 {
	sum := 0.0
	for i, c := range n.capacity {
		sum += c * nodes[i]
	}
	return sum
}
