package solve

import (
	"fmt"
	"math"
)

// Tridiagonal solves lower[i] x[i-1] + diagonal[i] x[i] + upper[i] x[i+1] = right[i];
// the solution replaces right, and diagonal is used up (Thomas's elimination).
func Tridiagonal(lower, diagonal, upper, right []float64) {
	n := len(right)
	for i := 1; i < n; i++ {
		m := lower[i] / diagonal[i-1]
		diagonal[i] -= m * upper[i-1]
		right[i] -= m * right[i-1]
	}
	right[n-1] /= diagonal[n-1]
	for i := n - 2; i >= 0; i-- {
		right[i] = (right[i] - upper[i]*right[i+1]) / diagonal[i]
	}
}

// ConjugateGradients solves A x = right from the x given, in place, where multiply
// writes A x and diagonal holds A's own. It stops when the residual has fallen to within of
// the right side's length, and gives an error if that takes more than most turns
// (Hestenes and Stiefel's method, scaled by the diagonal).
func ConjugateGradients(multiply func(dst, x []float64), diagonal, right, x []float64, within float64, most int) error {
	n := len(right)
	r, z, p, q := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	multiply(q, x)
	for i := range r {
		r[i] = right[i] - q[i]
		z[i] = r[i] / diagonal[i]
		p[i] = z[i]
	}
	goal := within * math.Sqrt(dot(right, right))
	rz := dot(r, z)
	for range most {
		if math.Sqrt(dot(r, r)) <= goal {
			return nil
		}
		multiply(q, p)
		step := rz / dot(p, q)
		for i := range x {
			x[i] += step * p[i]
			r[i] -= step * q[i]
			z[i] = r[i] / diagonal[i]
		}
		before := rz
		rz = dot(r, z)
		for i := range p {
			p[i] = z[i] + rz/before*p[i]
		}
	}
	return fmt.Errorf("solve: residual %.3g after %d turns is above %.3g", math.Sqrt(dot(r, r)), most, goal)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
