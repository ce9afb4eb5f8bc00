package hotwater

import "math"

// work is one hour while it is being solved.
type work struct {
	lower0, upper0 float64 // degC as the hour begins
	cold, room     float64 // degC
	want           float64 // Wh at the taps over the cold inlet
	floor          float64 // degC under which water from the store is no longer mixed down to its use
	fuel           float64 // Wh of heat that gas can give
	most           float64 // Wh of heat that the backup can put into the upper layer
	share          float64 // of the hour in which the solar pump turns
	sun, slope     float64 // solar heat is sun - slope*lower mean, W and W/K
	keep           float64 // W that recirculation would spend
	runs           bool    // the solar pump is wanted

	lower, upper node
	flow         float64 // W/K of the water drawn through the store
	short        float64 // Wh wanted that the flow would not carry
	sink         float64 // W taken with the draw to make up for that
	heat         float64 // W of the backup into the upper layer
	frost        float64 // W that recirculation did spend
}

// closeEnough is how far, as a share of the heat wanted, the draw's flow may be from the
// one that the layer's mean temperature asks for. Heat is not affected, only how much
// cold water the same heat brings in.
const closeEnough = 0.01

// mostTries caps the search for the flow; a house's hour takes one or two.
const mostTries = 12

// draw finds the flow through the store. Where the upper layer is hot, the mixing valve
// takes as little of it as carries the heat wanted: flow*(mean-cold) = want. Where it is
// not, the flow is that which the heater (or the tap, if none) needs, and the layer gives
// what it has. The heat that a flow carries grows with the flow, so that the first case is
// the one in which the largest flow would carry more than is wanted.
func (p *prepared) draw(w *work) {
	if w.want == 0 {
		p.try(w, 0, false)
		return
	}
	if w.upper0 < w.floor {
		p.try(w, w.mostFlow(), false)
		if w.upper.mean <= w.floor {
			return
		}
	}
	flow := p.firstFlow(w)
	p.try(w, flow, true)
	if !w.close() {
		p.seek(w, flow)
	}
}

// mostFlow is the flow that carries the heat wanted at the least temperature that serves.
func (w *work) mostFlow() float64 { return w.want / (w.floor - w.cold) }

// close reports whether the flow tried was near enough.
func (w *work) close() bool { return math.Abs(w.short) <= closeEnough*w.want }

// seek goes on from a flow that was tried, hot, and was not near enough.
func (p *prepared) seek(w *work, flow float64) {
	most := w.mostFlow()
	low, high := 0.0, most
	last, carried := 0.0, 0.0
	for range mostTries {
		if w.short < 0 {
			high = flow
		} else if low = flow; flow >= most {
			p.try(w, most, false)
			return
		}
		carries := w.want - w.short
		next := flow + w.short*(flow-last)/(carries-carried) // secant; the first goes through the origin
		last, carried = flow, carries
		switch {
		case next >= most && high == most:
			next = most
		case !(next > low && next < high):
			next = (low + high) / 2
		}
		flow = next
		p.try(w, flow, true)
		if w.close() {
			return
		}
	}
	// A store colder than its inlet, or one that mixes at just this flow, has no such flow:
	// it gives what the last flow under the want carries, and the rest is short.
	p.try(w, low, false)
}

// firstFlow guesses the flow from a layer that falls in a straight line: want/(mean - cold)
// with mean = u - fall/2 and fall = want/(u - cold)*(u - lower)/C, in one division. A store that
// is mixed rises with the sun.
func (p *prepared) firstFlow(w *work) float64 {
	u := w.upper0
	if u < w.floor {
		u = w.floor
	}
	over := u - w.cold
	if w.lower0 == w.upper0 {
		over += p.gains(w.sun - w.slope*u)
	}
	square := over*over - w.want*(u-w.lower0)*p.perUpper/2 // over*(mean - cold)
	if p.intoUpper && 2*(over*over-square) > (u-p.set)*over {
		square = over * ((u+p.set)/2 - w.cold)
	}
	return guess(w.want, over, square, w.floor-w.cold)
}

// guess gives want/(square/over), and no more than flows at the least temperature that serves.
func guess(want, over, square, least float64) float64 {
	if square <= least*over {
		return want / least
	}
	return want * over / square
}

// gains gives by how much a mixed store's mean over the hour lies higher for so many W of sun, by sight.
func (p *prepared) gains(sun float64) float64 {
	if sun < 0 {
		return 0
	}
	return sun * p.perWhole / 2
}

// try solves both layers for a flow. The lower does not feel the upper, so it comes first.
func (p *prepared) try(w *work, flow float64, hot bool) {
	w.flow = flow
	lower := relax((flow+w.slope+p.lossLower)*p.perLower).
		node(w.lower0, flow*w.cold+w.sun+p.lossLower*w.room, p.perLower)
	if w.keep > 0 {
		lower = w.keepWarm(lower)
	}
	upper := relax((flow+p.lossUpper)*p.perUpper).
		node(w.upper0, flow*lower.mean+p.lossUpper*w.room, p.perUpper)
	w.lower = lower
	w.upper = p.settle(w, upper, w.most, hot)
	if w.lower.end <= w.upper.end {
		return
	}
	if w.lower0 >= w.upper0 {
		p.tryWhole(w, hot)
	} else if w.heat > 0 {
		p.spareHeat(w, upper, hot)
	}
}

// tryWhole solves the store as one volume: it began mixed, and the sun keeps it so.
func (p *prepared) tryWhole(w *work, hot bool) {
	loss := p.lossLower + p.lossUpper
	t0 := (p.lower*w.lower0 + p.upper*w.upper0) * p.perWhole
	all := relax((w.flow+w.slope+loss)*p.perWhole).
		node(t0, w.flow*w.cold+w.sun+loss*w.room, p.perWhole)
	if w.keep > 0 {
		all = w.keepWarm(all)
	}
	w.upper = p.settle(w, all, w.most, hot)
	w.lower = w.upper
}

// spareHeat takes back what the backup need not have given, where the lower layer ends
// hotter and will mix into the upper.
func (p *prepared) spareHeat(w *work, upper node, hot bool) {
	mixed := (p.lower*w.lower.end + p.upper*w.upper.end) * p.perWhole
	if mixed <= p.set {
		return
	}
	spare := (mixed - p.set) * p.whole / (p.upper * upper.endPerW)
	w.upper = p.settle(w, upper, max(0, w.heat-spare), hot)
}

// keepWarm takes from a volume what keeps the collector from freezing, as far as it is
// warm enough itself.
func (w *work) keepWarm(n node) node {
	w.frost = max(0, min(w.keep, (n.end-frostKeep)/n.endPerW))
	return n.heated(-w.frost)
}

// settle lets backup and draw act on the volume that both touch. The backup ends the
// hour at its set temperature if its power allows. If hot, or if more than the heat
// wanted would flow, the draw is made to carry exactly that heat.
func (p *prepared) settle(w *work, n node, most float64, hot bool) node {
	missing := w.want - w.flow*(n.mean-w.cold) // without backup
	w.heat, w.sink, w.short = 0, 0, missing
	if p.intoUpper && most > 0 {
		net := (p.set - n.end) / n.endPerW // heat - sink that ends at the set temperature
		w.heat = net
		if hot {
			w.heat = net + missing - w.flow*net*n.meanPerW
		}
		w.heat = min(max(0, w.heat), most)
		w.short = missing - w.flow*w.heat*n.meanPerW
	}
	if hot || w.short < 0 {
		w.sink = w.short / (1 - w.flow*n.meanPerW)
	}
	return n.heated(w.heat - w.sink)
}
