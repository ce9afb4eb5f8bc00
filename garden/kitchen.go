package garden

import "suffice/crop"

const daysPerYear = 365.25

// A Kitchen is what a household eats.
type Kitchen struct {
	People float64
	Wants  float64 // kg of vegetables a person and year, as eaten
	Energy float64 // kcal a person and day
}

// UsualKitchen takes three of the five portions of 80 g of fruit and vegetables a day, which together are the 400 g
// of who-diet-2003, and 2200 kcal a day (common practice, no source; needs run from 1800 to 3000).
func UsualKitchen(people float64) Kitchen {
	return Kitchen{People: people, Wants: 3 * 0.080 * daysPerYear, Energy: 2200}
}

// A Harvest is a year's picking, by month.
type Harvest struct {
	Picked [12]float64 // kg fresh
	Eaten  [12]float64 // kg, without what is cut off
	Energy float64     // kcal
}

// Add books a picking in a month, 1 to 12.
func (h *Harvest) Add(month int, c *crop.Crop, kg float64) {
	eaten := kg * c.Edible.Value
	h.Picked[month-1] += kg
	h.Eaten[month-1] += eaten
	h.Energy += eaten * c.Energy.Value
}

// Total gives the kilograms picked in the year.
func (h *Harvest) Total() float64 {
	sum := 0.0
	for _, kg := range h.Picked {
		sum += kg
	}
	return sum
}

// A Share is how far a harvest feeds a household. Each is 0 to 1 and more.
type Share struct {
	Vegetables float64 // of the year's vegetables, if all could be kept
	Fresh      float64 // of them, if nothing is kept beyond its month: a glut in August feeds nobody in January
	Energy     float64 // of what people burn: vegetables are mostly water, and a garden of them leaves it near nothing
}

// Share gives how far a harvest feeds the household.
func (k Kitchen) Share(h *Harvest) Share {
	want := k.People * k.Wants
	var eaten, fresh float64
	for _, kg := range h.Eaten {
		eaten += kg
		fresh += min(kg, want/12)
	}
	return Share{Vegetables: eaten / want, Fresh: fresh / want, Energy: h.Energy / (k.People * k.Energy * daysPerYear)}
}

// A SeedBill is seed beside what it bears, in quantities: prices are the reader's own.
type SeedBill struct {
	Seeds  float64 // to sow, with the share that does not come up and as many again for thinning
	Grams  float64
	Plants float64 // that stand when grown
	Kilos  float64 // bought vegetables that a usual season stands for
}

// thinning is how many seedlings are raised for each plant that stays: common practice, no source.
const thinning = 2

// Seed gives the bill for an area in m2 with soil at a temperature. ok is false where hardly any come up.
func Seed(c *crop.Crop, area, soil float64) (bill SeedBill, ok bool) {
	bill = SeedBill{Plants: c.Plants() * area, Kilos: c.Usual.Value * area}
	up := 100.0
	raise := 1.0
	if c.Sprouts != nil {
		up, raise = c.Sprouts.ShareAt(soil), thinning
	}
	if up < fewest {
		return bill, false
	}
	bill.Seeds = bill.Plants * raise / (up / 100)
	bill.Grams = bill.Seeds * c.Seed.Weight.Value / 1000
	return bill, true
}
