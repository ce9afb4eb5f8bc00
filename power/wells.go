package power

import "math"

// Wells are the two wells of a kinetic battery (Manwell & McGowan 1993): one that the
// terminals draw from, and one that it refills from at a rate. Charge may be counted in Ah
// or, as in Battery, in Wh: the equations are linear.
type Wells struct {
	Full  float64 // charge in both wells when full, drawn ever so slowly (q max)
	Share float64 // part of it in the available well (c), 0 to 1
	Rate  float64 // rate constant, 1/h (k; where authors quote k' as conductance, k = k'/(c(1-c)))
}

// A Charge is what the wells hold.
type Charge struct {
	Available float64 // q1
	Bound     float64 // q2
}

// Sum gives both.
func (q Charge) Sum() float64 { return q.Available + q.Bound }

// Full charge of both wells.
func (w Wells) full() Charge { return Charge{w.Share * w.Full, (1 - w.Share) * w.Full} }

// A pace is the wells' equations over a fixed time: the exponentials are taken once.
type pace struct {
	stays   float64 // e^-kt: part of the difference between the wells that stays
	spreads float64 // c (1 - e^-kt): what total charge adds to the available well
	takes   float64 // what one unit of current over the time takes from the available well
	hours   float64 // t
	level   float64 // c q max: the available well when full
}

// over gives the equations for a time in hours.
func (w Wells) over(hours float64) pace {
	k, c := w.Rate, w.Share
	e := math.Exp(-k * hours)
	return pace{
		stays:   e,
		spreads: c * (1 - e),
		takes:   ((1 - e) + c*(k*hours-1+e)) / k, // [manwell-mcgowan-1993] both terms in I of q1
		hours:   hours,
		level:   c * w.Full,
	}
}

// rest gives the available well after the time with no current.
func (p *pace) rest(q Charge) float64 { return p.stays*q.Available + p.spreads*q.Sum() }

// after gives the wells after the time at a constant current, positive out of the battery.
// The sum falls by current times hours.
func (p *pace) after(q Charge, current float64) Charge {
	sum := q.Sum() - current*p.hours
	available := p.rest(q) - current*p.takes
	return Charge{available, sum - available}
}

// After gives the wells after some hours at a constant current, positive out of the battery.
// A negative available well means that the battery ran out before.
func (w Wells) After(q Charge, current, hours float64) Charge {
	p := w.over(hours)
	return p.after(q, current)
}

// MostOut gives the largest constant current that the wells keep up for so many hours.
func (w Wells) MostOut(q Charge, hours float64) float64 {
	p := w.over(hours)
	return p.rest(q) / p.takes
}

// MostIn gives the largest constant charging current, as a positive number, that so many
// hours can take in before the available well is full.
func (w Wells) MostIn(q Charge, hours float64) float64 {
	p := w.over(hours)
	return (p.level - p.rest(q)) / p.takes
}

// Capacity gives the charge that full wells give at the constant current that empties the available
// well in so many hours: c q max for a very short time, q max for a very long one.
func (w Wells) Capacity(hours float64) float64 { return w.MostOut(w.full(), hours) * hours }

// Lasts gives the hours for which the wells keep up a constant current, by halving to the
// last bit. Zero where the current is too large for any time; the current must be positive.
func (w Wells) Lasts(q Charge, current float64) float64 {
	low, high := 0.0, q.Sum()/current // at high the sum is used up, so the available well is empty by then
	for {
		mid := (low + high) / 2
		if mid == low || mid == high {
			return low
		}
		if w.After(q, current, mid).Available >= 0 {
			low = mid
		} else {
			high = mid
		}
	}
}

// Peukert gives the capacity at another current: a battery rated for so much in so many
// hours gives rated times (rated current / current)^(exponent-1). An exponent of 1 is no loss.
func Peukert(rated, hours, exponent, current float64) float64 {
	return current * hours * math.Pow(rated/(hours*current), exponent)
}
