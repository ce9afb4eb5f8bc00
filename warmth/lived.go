package warmth

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/mat"
)

// A lived is the model as an hour uses it, in plain tables. What is read of an hour comes from the modes at its beginning, the weather and what the
// house puts in, so that nothing waits for the modes' end:
//
//	ends  = read z + weather + given watts      of the ports, at the hour's end
//	means = the same                            of all that is read, over the hour
//	z     = decay z + weather + push watts
type lived struct {
	width  int       // modes
	inputs int       // of the house
	decay  []float64 // of each mode, what is left after an hour
	rest   []float64 // of each mode, its share in its own mean
	lasts  []float64 // of each mode, the share of its rise in its mean
	push   []float64 // of each input of the house in turn, rise of each mode for a watt
	read   []float64 // of each port, then of each mean in turn, its share of each mode
	given  []float64 // the same, K for a watt of each input of the house

	rows   []float64 // of each hour: push of the weather to each mode, then what it gives each port and mean
	stride int
}

// live makes the hour's tables.
func (r *Rooms) live() {
	s, m, l := r.model.Steps(hourSeconds), r.model, &r.lived
	n, inputs := r.modes, len(m.Inputs)
	l.width, l.inputs, l.stride = n, len(r.house), n+r.ports+r.count
	l.decay, l.rest, l.lasts = s.Decay, s.Rest, s.Lasts
	shares := mat.NewDense(l.stride, inputs, nil) // of each part of a row, for one of each input
	for i := range n {
		for k := range inputs {
			shares.Set(i, k, s.Push[k][i])
		}
	}
	reads := func(row, output int, stays, comes []float64) {
		for k := range inputs {
			sum := m.Through[output][k]
			for i, v := range m.Out[output] {
				sum += v * comes[i] * s.Push[k][i]
			}
			shares.Set(n+row, k, sum)
		}
		for i, v := range m.Out[output] {
			l.read = append(l.read, v*stays[i])
		}
		for _, k := range r.house {
			l.given = append(l.given, shares.At(n+row, k))
		}
	}
	whole := make([]float64, n)
	for i := range whole {
		whole[i] = 1
	}
	for p := range r.ports {
		reads(p, p, l.decay, whole)
	}
	for y := range r.count {
		reads(r.ports+y, y, l.rest, l.lasts)
	}
	for _, k := range r.house {
		l.push = append(l.push, s.Push[k]...)
	}
	for p := range r.ports {
		for q := range r.ports {
			r.answers[p][q] = l.given[p*l.inputs+r.portInput(q)]
		}
	}
	r.weather(shares)
}

// portInput gives the house input that is a port's heat.
func (r *Rooms) portInput(port int) int {
	if port < r.rooms {
		return port
	}
	return r.rooms + port
}

// chunk is how many hours are worked at once: their inputs stay in the processor's cache.
const chunk = 240

// weather sums what the weather and clock do, hour by hour.
func (r *Rooms) weather(shares *mat.Dense) {
	l := &r.lived
	hours, inputs := 24*len(r.hours.Days), len(r.columns)
	l.rows = make([]float64, hours*l.stride)
	given := make([]float64, chunk*inputs)
	for from := 0; from < hours; from += chunk {
		count := min(chunk, hours-from)
		for k, c := range r.columns {
			if c.values == nil {
				for h := range count {
					given[h*inputs+k] = c.always
				}
				continue
			}
			for h, v := range c.values[from : from+count] {
				given[h*inputs+k] = v
			}
		}
		blas64.Gemm(blas.NoTrans, blas.Trans, 1,
			blas64.General{Rows: count, Cols: inputs, Stride: inputs, Data: given}, shares.RawMatrix(), 0,
			blas64.General{Rows: count, Cols: l.stride, Stride: l.stride, Data: l.rows[from*l.stride : (from+count)*l.stride]})
	}
}
