package warmth

import "math"

// hold finds the machines' heat: first nobody heats or cools, then those rooms are held that are beyond their
// limits, until no machine would have to work the wrong way.
func (r *Rooms) hold(m *meeting, clock int) {
	for p := range r.ports {
		m.held[p] = math.NaN()
	}
	for range 2*r.rooms + 2 {
		r.meet(m)
		changed := false
		for i := range r.rooms {
			t := &r.tables[i]
			heat, cool := t.heat[clock], t.cool[clock]
			switch held := m.held[i]; {
			case math.IsNaN(held) && m.at[i] < heat:
				m.held[i], changed = heat, true
			case math.IsNaN(held) && m.at[i] > cool:
				m.held[i], changed = cool, true
			case held == heat && m.made[i] < 0 && held != cool, held == cool && m.made[i] > 0 && held != heat:
				m.held[i], changed = math.NaN(), true
			}
		}
		if !changed {
			return
		}
	}
}

// meet solves the ports together: T = free + answers q, where q is what doors and air bring at the temperatures of
// the end of the hour, and what machines make. Rooms held have their temperature known and their heat unknown.
func (r *Rooms) meet(m *meeting) {
	n := r.ports
	if n == 1 {
		r.meetOne(m)
		return
	}
	a, loss := &m.a, &m.loss
	for p := range n {
		clear(loss[p][:n])
		clear(a[p][:n])
		loss[p][p] = m.g[p]
	}
	for _, d := range m.pairs[:m.doors] {
		loss[d.a][d.a] += d.g
		loss[d.b][d.b] += d.g
		loss[d.a][d.b] -= d.g
		loss[d.b][d.a] -= d.g
	}
	for p := range n {
		a[p][n] = m.free[p]
		for q := range n {
			a[p][n] += r.answers[p][q] * m.gt[q]
			for k := range n {
				a[p][k] += r.answers[p][q] * loss[q][k]
			}
		}
		a[p][p]++
	}
	for q := range n {
		if math.IsNaN(m.held[q]) {
			continue
		}
		for p := range n {
			a[p][n] -= a[p][q] * m.held[q]
			a[p][q] = -r.answers[p][q]
		}
	}
	solveSmall(a, n)
	for p := range n {
		m.at[p], m.made[p] = a[p][n], 0
		if !math.IsNaN(m.held[p]) {
			m.at[p], m.made[p] = m.held[p], a[p][n]
		}
	}
	for p := range n {
		m.heat[p] = m.gt[p] + m.made[p]
		for k := range n {
			m.heat[p] -= loss[p][k] * m.at[k]
		}
	}
}

// meetOne is meet for a room alone.
func (r *Rooms) meetOne(m *meeting) {
	w := r.answers[0][0]
	f, g := m.free[0]+w*m.gt[0], 1+w*m.g[0]
	m.at[0], m.made[0] = f/g, 0
	if held := m.held[0]; !math.IsNaN(held) {
		m.at[0], m.made[0] = held, (held*g-f)/w
	}
	m.heat[0] = m.gt[0] + m.made[0] - m.g[0]*m.at[0]
}

// solveSmall leaves the solution in the last column (Gauss, the largest of each column first).
func solveSmall(a *[mostPorts][mostPorts + 1]float64, n int) {
	for c := range n {
		best := c
		for p := c + 1; p < n; p++ {
			if math.Abs(a[p][c]) > math.Abs(a[best][c]) {
				best = p
			}
		}
		if best != c {
			a[c], a[best] = a[best], a[c]
		}
		for p := range n {
			if p == c || a[p][c] == 0 {
				continue
			}
			f := a[p][c] / a[c][c]
			for k := c; k <= n; k++ {
				a[p][k] -= f * a[c][k]
			}
		}
	}
	for c := range n {
		a[c][n] /= a[c][c]
	}
}
