package hourly

import "suffice/quantity"

// Uses is how often a litre that the taps gave is used, mean of all: once at the tap, and then by the planter, to flush and by the trees.
type Uses struct {
	Fresh                 float64 // L that the taps gave
	Planter, Flush, Trees float64 // uses of each litre of them
	Offered               float64 // to trees: all that reaches their trench, not only what they drink of it
}

// Mean gives all uses of a litre, 0 where the taps gave none.
func (u *Uses) Mean() float64 {
	if u.Fresh == 0 {
		return 0
	}
	return 1 + u.Planter + u.Flush + u.Trees
}

// MeanOffered gives the same with all that reaches the trees.
func (u *Uses) MeanOffered() float64 { return u.Mean() - u.Trees + u.Offered }

// Uses counts the uses of the house's water. Rain that the trees drink counts for nothing, and of what they take from the gravel the share
// of sewage in all that came down there.
func (r *Run) Uses(t *Totals) (u Uses) {
	if r.chain == nil || r.chain.parts == nil {
		return u
	}
	c, p := &t.Chain, r.chain.parts
	for _, litres := range c.Used {
		u.Fresh += float64(litres)
	}
	u.Fresh += float64(c.Topped.Litres)
	if u.Fresh == 0 {
		return u
	}
	if p.Planter != nil {
		u.Planter = float64(c.Fed.Litres) / u.Fresh
	}
	if p.Well != nil {
		u.Flush = float64(c.Flushed-c.Topped.Litres) / u.Fresh
	}
	if p.Trench != nil && p.Trench.Grove.Trees > 0 {
		sewage := c.Effluent.Inflow + c.Carried.Inflow
		if came := sewage + c.Trench.Through; came > 0 {
			u.Trees = float64(c.Trench.Deep*(sewage/came)) / u.Fresh
		}
		u.Offered = float64(sewage) / u.Fresh
	}
	return u
}

// LargestBed gives the area of planter that the greywater of a month keeps moist while the cisterns get what they want, without rain on
// it, m2; false where plants want nothing in that month or there is no planter.
func (r *Run) LargestBed(t *Totals, month int) (area quantity.SquareMetres, ok bool) {
	if r.chain == nil || r.chain.parts == nil || r.chain.parts.Planter == nil || t.Chain.ThirstIn[month] <= 0 {
		return 0, false
	}
	c := &t.Chain
	left := c.FedIn[month]
	if r.chain.parts.Well != nil {
		left -= c.FlushIn[month]
	}
	return max(0, r.chain.parts.Planter.Bed.Area()*quantity.SquareMetres(left/c.ThirstIn[month])), true
}

// ScarcestMonth gives the month in which the largest bed is the smallest; false where there is none.
func (r *Run) ScarcestMonth(t *Totals) (month int, ok bool) {
	var least quantity.SquareMetres
	for m := 1; m <= 12; m++ {
		if area, can := r.LargestBed(t, m); can && (!ok || area < least) {
			least, month, ok = area, m, true
		}
	}
	return month, ok
}

// HottestMonth gives the month with the warmest air of the record, 1 to 12.
func (r *Run) HottestMonth() int {
	var sum, hours [13]float64
	for i, t := range r.Weather.Temperature {
		m := r.Weather.Days[i/24].Month
		sum[m] += t
		hours[m]++
	}
	hottest := 0
	for m := 1; m <= 12; m++ {
		if hours[m] > 0 && (hottest == 0 || sum[m]/hours[m] > sum[hottest]/hours[hottest]) {
			hottest = m
		}
	}
	return hottest
}
