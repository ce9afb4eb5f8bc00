package synth

import "math"

// A matrix joins the things of a day with each other.
type matrix [things][things]float64

func (a matrix) times(b matrix) (c matrix) {
	for i := range c {
		for j := range c {
			for k := range c {
				c[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return c
}

func (a matrix) less(b matrix) matrix {
	for i := range a {
		for j := range a {
			a[i][j] -= b[i][j]
		}
	}
	return a
}

func (a matrix) turned() (t matrix) {
	for i := range a {
		for j := range a {
			t[j][i] = a[i][j]
		}
	}
	return t
}

// inverse inverts a matrix of correlations by Gauss and Jordan; its diagonal leads, so that
// no rows need be changed.
func (a matrix) inverse() (b matrix) {
	for i := range b {
		b[i][i] = 1
	}
	for i := range a {
		pivot := a[i][i]
		for j := range a {
			a[i][j] /= pivot
			b[i][j] /= pivot
		}
		for k := range a {
			if k == i {
				continue
			}
			f := a[k][i]
			for j := range a {
				a[k][j] -= f * a[i][j]
				b[k][j] -= f * b[i][j]
			}
		}
	}
	return b
}

// lower gives the lower triangle L with L L' = a (Cholesky). What rounding or gaps made
// negative on the way counts as nothing.
func (a matrix) lower() (l matrix) {
	for i := range l {
		for j := range i + 1 {
			sum := a[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			switch {
			case i == j:
				l[i][i] = math.Sqrt(max(0, sum))
			case l[j][j] > 0:
				l[i][j] = sum / l[j][j]
			}
		}
	}
	return l
}
