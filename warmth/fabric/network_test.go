package fabric

import (
	"math"
	"math/cmplx"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
)

// distance gives the largest relative error of a network's daily swing: of what comes through
// and of both admittances, as complex numbers, so that phases count.
func distance(e Element, n Network) float64 {
	a, b := e.Transfer(24), n.at(angular(24))
	off := func(x, y complex128) float64 { return cmplx.Abs(x/y - 1) }
	return max(off(b.Z12, a.Z12), off(b.Z11/b.Z12, a.Z11/a.Z12), off(b.Z22/b.Z12, a.Z22/a.Z12))
}

func cutEvenly(e Element, cells int) Network {
	counts := make([]int, len(e.Layers))
	for i, l := range e.Layers {
		if l.Areal() > 0 {
			counts[i] = cells
		}
	}
	return e.Cut(counts)
}

var walls = []struct {
	name    string
	element Element
}{
	{"light wall", lightWall}, {"roof", suiteRoof}, {"light floor", lightFloor}, {"heavy wall", heavyWall}, {"heavy floor", heavyFloor},
	{"fifteen digits", fifteen}, {"concrete", concreteWall}, {"insulated concrete", insulatedWall},
}

// Finite volumes with the node amid the cell are right to the second order: twice the nodes,
// a quarter of the error.
func TestNetworkConvergesToTheStandard(t *testing.T) {
	for _, w := range walls {
		last := math.Inf(1)
		for _, cells := range []int{1, 2, 4, 8, 16, 32, 64} {
			off := distance(w.element, cutEvenly(w.element, cells))
			t.Logf("%-20s %2d cells a layer: error %.2e", w.name, cells, off)
			if cells >= 8 && !(off < last/3.8 && off > last/4.2) {
				t.Errorf("%s, %d cells a layer: error %g after %g; it should fall to a quarter", w.name, cells, off, last)
			}
			last = off
		}
	}
}

// The rule of the spacing keeps every wall within what the comment of Fineness says.
func TestSpacingKeepsItsPromise(t *testing.T) {
	for _, w := range walls {
		n := w.element.Network(Spacing{Hours: 24, Fineness: Fineness})
		off := distance(w.element, n)
		t.Logf("%-20s %2d nodes: error %.2e", w.name, len(n.Capacity), off)
		if off > 0.02 {
			t.Errorf("%s: %d nodes, error %g, promised 0.02", w.name, len(n.Capacity), off)
		}
	}
}

// However it is cut, the network holds and lets through steadily what the layers do.
func TestNetworkIsSteadilyExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		n := e.Network(Spacing{Hours: rapid.Float64Range(1, 100).Draw(t, "hours"), Fineness: rapid.Float64Range(0.1, 5).Draw(t, "fineness")})
		var store float64
		for _, l := range e.Layers {
			store += l.Areal()
		}
		check.Balance(t, n.Store(), store, "heat stored, J/m2K")
		check.Balance(t, 1/n.Steady(), float64(e.Resistance()), "resistance, m2K/W")
	})
}

// The matrices say the same as the chain: for two ends that swing, solved as one dense
// system, the heat that enters at each end agrees.
func TestSystemAgreesWithChain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		n := e.Network(Spacing{Hours: 24, Fineness: 2})
		s := n.System()
		count := len(s.Capacity)
		if count == 0 {
			if s.Through != [2]float64{n.Link[0], n.Link[0]} {
				t.Errorf("no nodes, ends %v, link %v", s.Through, n.Link)
			}
			return
		}
		w := angular(rapid.Float64Range(2, 1000).Draw(t, "period"))
		ends := [2]complex128{1, complex(0.3, -0.7)}
		T := solved(s, w, ends)
		z := n.at(w)
		// theta2 = Z11 theta1 + Z12 q1 turned round, with a determinant of 1; q2 leaves.
		q1 := (ends[1] - z.Z11*ends[0]) / z.Z12
		q2 := (z.Z22*ends[1] - ends[0]) / z.Z12
		for k, want := range []complex128{q1, -q2} {
			got := complex(s.Through[k], 0) * ends[k]
			for i := range count {
				got -= complex(s.Ends[i][k], 0) * T[i]
			}
			if cmplx.Abs(got-want) > 1e-9*(1+cmplx.Abs(q1)+cmplx.Abs(q2)) {
				t.Errorf("%d nodes, end %d: %v by matrices, %v by chain", count, k, got, want)
			}
		}
		for i, row := range s.Conductance {
			sum := -s.Ends[i][0] - s.Ends[i][1]
			for j := range row {
				sum += row[j]
				if row[j] != s.Conductance[j][i] {
					t.Errorf("element %d, %d is not symmetric", i, j)
				}
			}
			if math.Abs(sum) > 1e-9*row[i] {
				t.Errorf("row %d leaks %g W/m2K", i, sum)
			}
		}
	})
}

// solved gives the nodes' swings: (i w C + K) T = B u, by elimination.
func solved(s System, w float64, ends [2]complex128) []complex128 {
	n := len(s.Capacity)
	a := make([][]complex128, n)
	for i := range a {
		a[i] = make([]complex128, n+1)
		for j := range n {
			a[i][j] = complex(s.Conductance[i][j], 0)
		}
		a[i][i] += complex(0, w*s.Capacity[i])
		a[i][n] = complex(s.Ends[i][0], 0)*ends[0] + complex(s.Ends[i][1], 0)*ends[1]
	}
	for k := range n { // diagonally dominant: no pivots needed
		for i := k + 1; i < n; i++ {
			f := a[i][k] / a[k][k]
			for j := k; j <= n; j++ {
				a[i][j] -= f * a[k][j]
			}
		}
	}
	T := make([]complex128, n)
	for i := n - 1; i >= 0; i-- {
		T[i] = a[i][n]
		for j := i + 1; j < n; j++ {
			T[i] -= a[i][j] * T[j]
		}
		T[i] /= a[i][i]
	}
	return T
}
