package hotwater

import "math"

// A volume of water under constant power P and conductance K follows
// C dT/dt = P - K T. With x = K/C (one hour) and r for exp(-x),
//
//	T(1)  = T0 r + P/C m,   m = (1-r)/x
//	mean  = T0 m + P/C n,   n = (1-m)/x
//
// and C (T(1)-T0) = P - K mean holds for any r: the balance is exact whatever stands
// for the exponential.
type relaxation struct{ end, mean, ramp float64 } // r, m, n

// relax takes r = 1/(1+x+x2/2+x3/6+x4/24), which is within x5/120 of exp(-x), falls
// from 1 to 0 for every x of 0 or more, and needs one division.
func relax(x float64) relaxation {
	x2 := x * x
	r := 1 / (1 + x + x2*(1./2+x*(1./6)+x2*(1./24)))
	return relaxation{
		end:  r,
		mean: r * (1 + x*(1./2) + x2*(1./6+x*(1./24))),
		ramp: r * (1./2 + x*(1./3) + x2*(1./8+x*(1./24))),
	}
}

// relaxationAtRest is the exact one, for the hours in which nothing but the loss acts.
func relaxationAtRest(x float64) relaxation {
	if x < 1e-4 { // the closed forms cancel; relax is within 1e-22 there
		return relax(x)
	}
	r := math.Exp(-x)
	m := -math.Expm1(-x) / x
	return relaxation{r, m, (1 - m) / x}
}

// node is a volume over the hour, and how it answers to one more watt.
type node struct {
	end, mean         float64 // degC
	endPerW, meanPerW float64 // K/W
}

// node solves one volume: t0 in degC, power in W, conductance in W/K, perC in K/Wh.
func (r relaxation) node(t0, power, perC float64) node {
	return node{
		end: t0*r.end + power*perC*r.mean, mean: t0*r.mean + power*perC*r.ramp,
		endPerW: perC * r.mean, meanPerW: perC * r.ramp,
	}
}

// heated gives the node under some watts more.
func (n node) heated(watts float64) node {
	n.end += watts * n.endPerW
	n.mean += watts * n.meanPerW
	return n
}
