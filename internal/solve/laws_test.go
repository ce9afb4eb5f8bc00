package solve

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// anyBand draws a network of conductances: weakly diagonal, so positive definite.
func anyBand(t *rapid.T) *Banded {
	n := rapid.IntRange(1, 30).Draw(t, "size")
	b := NewBanded(n, rapid.IntRange(0, n).Draw(t, "half"))
	for i := range n {
		b.Add(i, i, rapid.Float64Range(0.01, 10).Draw(t, "to the known"))
		for j := max(0, i-b.Half); j < i; j++ {
			g := rapid.Float64Range(0, 10).Draw(t, "between")
			b.Add(i, j, -g)
			b.Add(i, i, g)
			b.Add(j, j, g)
		}
	}
	return b
}

// anyRight draws thousandths: the squares of numbers below 1e-154 vanish, and with them every measure of an error.
func anyRight(t *rapid.T, n int) []float64 {
	right := make([]float64, n)
	for i := range right {
		right[i] = float64(rapid.IntRange(-100000, 100000).Draw(t, "right")) / 1000
	}
	return right
}

// The solution multiplied back gives the right side; the dense solver of gonum and conjugate gradients agree.
func TestBandedSolves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBand(t)
		right := anyRight(t, b.Size)
		f, err := b.Factor()
		if err != nil {
			t.Fatal(err)
		}
		x := append([]float64(nil), right...)
		f.Solve(x)
		back := make([]float64, b.Size)
		b.Multiply(back, x)
		dense := mat.NewSymDense(b.Size, nil)
		diagonal := make([]float64, b.Size)
		for i := range b.Size {
			diagonal[i] = b.At(i, i)
			for j := range i + 1 {
				dense.SetSym(i, j, b.At(i, j))
			}
		}
		var cholesky mat.Cholesky
		if !cholesky.Factorize(dense) {
			t.Fatal("gonum refuses the matrix")
		}
		twin := mat.NewVecDense(b.Size, nil)
		if err := cholesky.SolveVecTo(twin, mat.NewVecDense(b.Size, right)); err != nil {
			t.Fatal(err)
		}
		walked := make([]float64, b.Size)
		if err := ConjugateGradients(b.Multiply, diagonal, right, walked, 1e-11, 1000); err != nil {
			t.Fatal(err)
		}
		for i := range x {
			if d := math.Abs(back[i] - right[i]); d > 1e-7 {
				t.Errorf("row %d multiplied back: %g, want %g", i, back[i], right[i])
			}
			// The worst matrix drawn has a condition of some 1e5.
			if d := max(math.Abs(x[i]-twin.AtVec(i)), math.Abs(x[i]-walked[i])); d > 1e-5 {
				t.Errorf("row %d: %g, gonum %g, conjugate gradients %g", i, x[i], twin.AtVec(i), walked[i])
			}
		}
	})
}

// Three diagonals are a band of one.
func TestTridiagonalIsABandOfOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "size")
		b := NewBanded(n, min(1, n))
		lower, diagonal, upper := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range n {
			b.Add(i, i, rapid.Float64Range(0.1, 10).Draw(t, "own"))
			if i > 0 {
				g := rapid.Float64Range(0, 10).Draw(t, "between")
				b.Add(i, i-1, -g)
				b.Add(i, i, g)
				b.Add(i-1, i-1, g)
				lower[i], upper[i-1] = -g, -g
			}
		}
		for i := range n {
			diagonal[i] = b.At(i, i)
		}
		x := anyRight(t, n)
		y := append([]float64(nil), x...)
		f, err := b.Factor()
		if err != nil {
			t.Fatal(err)
		}
		f.Solve(x)
		Tridiagonal(lower, diagonal, upper, y)
		for i := range x {
			if math.Abs(x[i]-y[i]) > 1e-9*max(1, math.Abs(x[i])) {
				t.Errorf("row %d: %g and %g", i, x[i], y[i])
			}
		}
	})
}

// Cells that reach no known temperature are refused, not solved.
func TestFloatingCellsAreRefused(t *testing.T) {
	b := NewBanded(2, 1)
	b.Add(0, 0, 1)
	b.Add(1, 1, 1)
	b.Add(1, 0, -1)
	if _, err := b.Factor(); err == nil || !strings.Contains(err.Error(), "no known temperature") {
		t.Errorf("got %v", err)
	}
	x := []float64{0, 0}
	if err := ConjugateGradients(b.Multiply, []float64{1, 1}, []float64{1, 1}, x, 1e-9, 50); err == nil {
		t.Errorf("conjugate gradients answered %v", x)
	}
}
