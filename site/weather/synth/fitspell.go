package synth

import "math"

// leastWet is how many wet days tell how a month's amounts are spread. A month with fewer
// borrows those of the months beside it, each over its own month's mean. Common practice, no source.
const leastWet = 100

// A pile is amounts over their mean, counted in steps of a sixth of an octave from a thousandth to a thousandfold; what
// lies beyond counts to the last step, its sum unchanged.
type pile struct {
	n, sum [pileSteps]float64
	days   float64
}

const pileSteps, pileStep, pileFrom = 120, 6, 60

func (p *pile) add(amount float64) {
	i := max(0, min(pileSteps-1, int(math.Floor(pileFrom+pileStep*math.Log2(amount)))))
	p.n[i], p.sum[i], p.days = p.n[i]+1, p.sum[i]+amount, p.days+1
}

func (p *pile) join(o *pile) {
	for i := range p.n {
		p.n[i], p.sum[i] = p.n[i]+o.n[i], p.sum[i]+o.sum[i]
	}
	p.days += o.days
}

// fitParts fits a mixture of exponential distributions to what is above the wet day, over the month's mean.
func (r *Rain) fitParts(d *diary, tallies *[12]dayTally) {
	var own [12]pile
	for i, v := range d.rain {
		if m := d.days[i].Month - 1; v >= r.WetDay && tallies[m].sum > 0 {
			own[m].add(max(leastAbove, v-r.WetDay) * tallies[m].n / tallies[m].sum)
		}
	}
	for m := range r.Months {
		all := own[m]
		for reach := 1; all.days < leastWet && reach <= 6; reach++ {
			all.join(&own[(m+reach)%12])
			if reach < 6 {
				all.join(&own[(m+12-reach)%12])
			}
		}
		r.Months[m].Parts = all.parts()
	}
}

// someParts is where the search for parts begins: drizzle, rain and storms. Common practice, no source.
var someParts = [parts]Part{{0.3, 0.1}, {0.5, 0.7}, {0.2, 2.9}}

// parts finds shares and means of greatest likelihood, to 1e-4 of a wet day's share and mean.
func (p *pile) parts() [parts]Part {
	if p.days == 0 {
		return [parts]Part{{1, 1}, {0, 1}, {0, 1}}
	}
	e := someParts
	for range 400 {
		is, moved := p.nearer(&e), 0.0
		for k := range e {
			moved = max(moved, math.Abs(is[k].Share-e[k].Share), math.Abs(is[k].Mean-e[k].Mean))
		}
		if e = is; moved < 1e-4 {
			break
		}
	}
	mean := 0.0
	for _, k := range e {
		mean += k.Share * k.Mean
	}
	for k := range e {
		e[k].Mean /= mean
	}
	return e
}

// nearer counts each amount to each part by the chance that it is of it, and gives the shares and means
// that follow, which are never less likely (dempster-1977).
func (p *pile) nearer(e *[parts]Part) [parts]Part {
	is := *e
	var days, sum [parts]float64
	for i, n := range p.n {
		if n == 0 {
			continue
		}
		var at [parts]float64
		all, amount := 0.0, p.sum[i]/n
		for k := range e {
			at[k] = e[k].Share / e[k].Mean * math.Exp(-amount/e[k].Mean)
			all += at[k]
		}
		for k := range e {
			days[k] += n * at[k] / all
			sum[k] += p.sum[i] * at[k] / all
		}
	}
	for k := range is {
		if days[k] > 0 {
			is[k] = Part{days[k] / p.days, sum[k] / days[k]}
		}
	}
	return is
}

// A spellTally counts, by month and kind of yesterday, the days and the wet ones; over the whole year the classes
// that follow each other.
type spellTally struct {
	days, wet [12]state
	next      [1 + classes][classes]float64
}

// tallySpells counts the days whose two days before are known.
func (r *Rain) tallySpells(d *diary) (t spellTally) {
	mixes := r.mixes()
	classOf := func(i int) int {
		p := &r.Months[d.days[i].Month-1]
		x := (d.rain[i] - r.WetDay) / (p.Amount - r.WetDay)
		edge := &mixes[d.days[i].Month-1].edge
		for k := range classes - 1 {
			if x < edge[k+1] {
				return k
			}
		}
		return classes - 1
	}
	for i := 2; i < len(d.rain); i++ {
		if math.IsNaN(d.rain[i] + d.rain[i-1] + d.rain[i-2]) {
			continue
		}
		m := d.days[i].Month - 1
		is, was, first := d.rain[i] >= r.WetDay, d.rain[i-1] >= r.WetDay, d.rain[i-2] >= r.WetDay
		later := int(count(was == first))
		row := 0
		if was {
			row = 1 + classOf(i-1)
			t.days[m].wet[later][row-1]++
			t.wet[m].wet[later][row-1] += count(is)
		} else {
			t.days[m].dry[later]++
			t.wet[m].dry[later] += count(is)
		}
		if is {
			t.next[row][classOf(i)]++
		}
	}
	return t
}

// fitSpell fits the spell: shares of classes by counting, with as many days as there are classes
// added in their long-run shares; log-odds by likelihood beside each month's own chances, with a
// prior of deviation 1 that keeps what was hardly ever met near 0.
func (r *Rain) fitSpell(d *diary) {
	t := r.tallySpells(d)
	for j := range t.next {
		n := float64(classes)
		for k := range classes {
			n += t.next[j][k]
		}
		for k := range classes {
			r.Spell.Next[j][k] = (t.next[j][k] + classes*classShare[k]) / n
		}
	}
	for range 50 {
		moved := 0.0
		for a := range 2 {
			moved += r.moveShift(&t, &r.Spell.Dry[a], func(v *state) []*float64 { return []*float64{&v.dry[a]} })
			moved += r.moveShift(&t, &r.Spell.Wet[a], func(v *state) []*float64 {
				return []*float64{&v.wet[a][0], &v.wet[a][1], &v.wet[a][2]}
			})
		}
		for k := range classes {
			moved += r.moveShift(&t, &r.Spell.Class[k], func(v *state) []*float64 { return []*float64{&v.wet[0][k], &v.wet[1][k]} })
		}
		if moved < 1e-6 {
			break
		}
	}
}

// moveShift takes one step of Newton's rule for one log-odds, and gives its length.
func (r *Rain) moveShift(t *spellTally, shift *float64, of func(*state) []*float64) float64 {
	slope, bend := -*shift, 1.0
	for m := range t.days {
		p := &r.Months[m]
		if p.AfterDry <= 0 || p.AfterWet <= 0 {
			continue
		}
		dry, wet := logit(p.AfterDry), logit(p.AfterWet)
		var chances state
		for a := range 2 {
			chances.dry[a] = logistic(dry + r.Spell.Dry[a])
			for k := range classes {
				chances.wet[a][k] = logistic(wet + r.Spell.Wet[a] + r.Spell.Class[k])
			}
		}
		days, rained, c := of(&t.days[m]), of(&t.wet[m]), of(&chances)
		for i := range days {
			slope += *rained[i] - *days[i]**c[i]
			bend += *days[i] * *c[i] * (1 - *c[i])
		}
	}
	*shift += slope / bend
	return math.Abs(slope / bend)
}
