// Package solve holds the few solvers of linear equations that the physics shares:
// a symmetric band by factors, three diagonals, and conjugate gradients.
//
// Checked against: products with random matrices that are multiplied back, and
// the dense Cholesky solver of gonum as a twin.
//
// Left out: pivoting. Matrices of conduction are symmetric and positive definite
// as soon as one cell touches a known temperature; another matrix is refused.
package solve

import "fmt"

// Banded is a symmetric matrix that is zero farther than Half places from its
// diagonal. Only the lower half is kept.
type Banded struct {
	Size, Half int
	rows       []float64 // row i, columns i-Half to i
}

// NewBanded makes a matrix of zeros.
func NewBanded(size, half int) *Banded {
	return &Banded{Size: size, Half: half, rows: make([]float64, size*(half+1))}
}

// Add adds v to element i, j and, where they differ, to j, i.
func (b *Banded) Add(i, j int, v float64) {
	if j > i {
		i, j = j, i
	}
	b.rows[i*(b.Half+1)+j-i+b.Half] += v
}

// At gives element i, j.
func (b *Banded) At(i, j int) float64 {
	if j > i {
		i, j = j, i
	}
	if i-j > b.Half {
		return 0
	}
	return b.rows[i*(b.Half+1)+j-i+b.Half]
}

// Multiply writes the product with x into dst.
func (b *Banded) Multiply(dst, x []float64) {
	clear(dst)
	w := b.Half + 1
	for i := range b.Size {
		row := b.rows[i*w : (i+1)*w]
		for j := max(0, i-b.Half); j < i; j++ {
			a := row[j-i+b.Half]
			dst[i] += a * x[j]
			dst[j] += a * x[i]
		}
		dst[i] += row[b.Half] * x[i]
	}
}

// Factored is a matrix ready to be solved for any right side.
type Factored struct {
	size, half int
	rows       []float64 // L below the diagonal, 1/D on it, of A = L D Lᵀ
}

// Factor gives A = L D Lᵀ, and an error where the matrix is not positive definite.
func (b *Banded) Factor() (*Factored, error) {
	f := &Factored{size: b.Size, half: b.Half, rows: append([]float64(nil), b.rows...)}
	w := f.half + 1
	for i := range f.size {
		ri := f.rows[i*w : (i+1)*w]
		first := max(0, i-f.half)
		for j := first; j < i; j++ { // ri holds L times D until the row is done
			rj := f.rows[j*w : (j+1)*w]
			sum := ri[j-i+f.half]
			for k := max(first, j-f.half); k < j; k++ {
				sum -= ri[k-i+f.half] * rj[k-j+f.half]
			}
			ri[j-i+f.half] = sum
		}
		d := ri[f.half]
		for j := first; j < i; j++ {
			l := ri[j-i+f.half] * f.rows[j*w+f.half]
			d -= l * ri[j-i+f.half]
			ri[j-i+f.half] = l
		}
		if !(d > 0) {
			return nil, fmt.Errorf("solve: row %d of %d: pivot %g is not above 0: no known temperature is reached from there", i, f.size, d)
		}
		ri[f.half] = 1 / d
	}
	return f, nil
}

// Solve turns the right side x into the solution, in place.
func (f *Factored) Solve(x []float64) {
	w := f.half + 1
	for i := range f.size {
		row := f.rows[i*w : (i+1)*w]
		sum := x[i]
		for j := max(0, i-f.half); j < i; j++ {
			sum -= row[j-i+f.half] * x[j]
		}
		x[i] = sum
	}
	for i := range f.size {
		x[i] *= f.rows[i*w+f.half]
	}
	for i := f.size - 1; i >= 0; i-- {
		row := f.rows[i*w : (i+1)*w]
		for j := max(0, i-f.half); j < i; j++ {
			x[j] -= row[j-i+f.half] * x[i]
		}
	}
}
