package fabric

import (
	"math"
	"math/cmplx"
)

// A Transfer is a heat transfer matrix (iso13786 7.1): it takes the swings of temperature and
// heat flow at the inner side to those at the outer, heat counted from inside to outside.
type Transfer struct{ Z11, Z12, Z21, Z22 complex128 }

// Then gives what two elements do one after the other, t the inner one.
func (t Transfer) Then(u Transfer) Transfer {
	return Transfer{
		u.Z11*t.Z11 + u.Z12*t.Z21, u.Z11*t.Z12 + u.Z12*t.Z22,
		u.Z21*t.Z11 + u.Z22*t.Z21, u.Z21*t.Z12 + u.Z22*t.Z22,
	}
}

// Determinant gives Z11 Z22 - Z12 Z21, which is 1 for anything that only conducts.
func (t Transfer) Determinant() complex128 { return t.Z11*t.Z22 - t.Z12*t.Z21 }

// through is a resistance that stores nothing.
func through(resistance float64) Transfer {
	return Transfer{1, complex(-resistance, 0), 0, 1}
}

// into is a store, J/m2K, that resists nothing, at w radians per second.
func into(capacity, w float64) Transfer {
	return Transfer{1, 0, complex(0, -w*capacity), 1}
}

// transfer gives the matrix of a layer (iso13786 eq. 15 to 18, there written out in real
// and imaginary parts).
func (l Layer) transfer(w float64) Transfer {
	R, C := float64(l.Resistance()), l.Areal()
	if w*C == 0 {
		return through(R)
	}
	g := cmplx.Sqrt(complex(0, w*C*R)) // (1 + i) d/delta
	return Transfer{cmplx.Cosh(g), -complex(R, 0) * cmplx.Sinh(g) / g, -g * cmplx.Sinh(g) / complex(R, 0), cmplx.Cosh(g)}
}

// Transfer gives the matrix of the element from air to air for a period in hours.
func (e Element) Transfer(hours float64) Transfer { return e.Even().at(angular(hours)) }

// at takes an element that is even already.
func (e Element) at(w float64) Transfer {
	t := through(float64(e.Inside))
	for _, l := range e.Layers {
		t = t.Then(l.transfer(w))
	}
	return t.Then(through(float64(e.Outside)))
}

// secondsPerHour is exact.
const secondsPerHour = 3600

func angular(hours float64) float64 { return 2 * math.Pi / (hours * secondsPerHour) }

// Depths gives the thickness of all layers in depths of penetration for a period in hours
// (iso13786: xi = d/delta).
func (e Element) Depths(hours float64) float64 {
	var sum float64
	for _, l := range e.Even().Layers {
		sum += math.Sqrt(angular(hours) * l.Areal() * float64(l.Resistance()) / 2) // d/delta
	}
	return sum
}

// MostDepths is how thick an element may be, in depths of penetration, for its Swing: beyond
// it less than 1e-40 of a swing comes through, which nobody can feel.
const MostDepths = 100
