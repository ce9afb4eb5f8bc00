package hourly

import (
	"math"

	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/site/weather"
	"suffice/water"
)

// An ahead is what weather and design decide of an hour before anybody lives it. It stands in
// one place because an hour that reads eight columns waits for eight lines of memory.
type ahead struct {
	air       quantity.Celsius
	rain      quantity.Millimetres
	panels    quantity.Watts       // direct current of all arrays at the controller
	absorbed  float64              // W/m2 that the collector takes up
	cold      quantity.Celsius     // of the water coming in
	clear     float64              // clearness of the day as people expect it
	light     float64              // W/m2 on the level, where beds are
	reference quantity.Millimetres // of evaporation outdoors, where beds are
}

// columns are the same by column, as they are worked out; what a house does not need is nil.
type columns struct{ panels, absorbed, cold, clear, light, reference []float64 }

// weave writes the columns out by hours.
func (r *Run) weave(c *columns) {
	r.sky = make([]ahead, r.Hours())
	for i := range r.sky {
		h := &r.sky[i]
		h.air = quantity.Celsius(r.Weather.Temperature[i])
		h.rain = quantity.Millimetres(in(r.Weather.Rain, i))
		h.panels, h.absorbed, h.cold = quantity.Watts(in(c.panels, i)), in(c.absorbed, i), quantity.Celsius(in(c.cold, i))
		h.clear = math.NaN()
		if c.clear != nil {
			h.clear = c.clear[i]
		}
		h.light, h.reference = in(c.light, i), quantity.Millimetres(in(c.reference, i))
	}
}

// in gives a column's hour, 0 where there is no such column.
func in(column []float64, i int) float64 {
	if column == nil {
		return 0
	}
	return column[i]
}

// A custom is what calendar, household and loads decide of a clock hour: the same on all days alike.
type custom struct {
	full, saving asking
	persons      float64            // at home, over 24: their part of the day's
	loads        [2][2]*power.Wants // by swap and wait; nil without power
}

// An asking is what people want of water, and what the taps give of it where nothing is short.
type asking struct {
	wants *people.Wants
	taps  water.Plan
	used  [reuse.Sources]quantity.Litres // down each drain
}

// prepareCustoms writes the customs out, one table for all days alike: few, so that they stay
// in the processor's nearest memory.
func (r *Run) prepareCustoms() {
	type sort struct {
		weekday int8
		wants   *people.Wants
	}
	saving := r.diary.Save(r.House.Rules.Saves)
	seen := make(map[sort]*[24]custom)
	r.customs = make([]*[24]custom, len(r.Weather.Days))
	for d := range r.customs {
		k := sort{r.Weather.Days[d].Weekday, r.diary.At(d, 0)}
		if seen[k] == nil {
			seen[k] = r.customsOf(&r.Weather.Days[d], func(clock int) (full, less *people.Wants) { return r.diary.At(d, clock), saving.At(d, clock) })
		}
		r.customs[d] = seen[k]
	}
}

// customsOf writes out one day.
func (r *Run) customsOf(d *weather.Day, wants func(clock int) (full, less *people.Wants)) *[24]custom {
	day := new([24]custom)
	for clock := range day {
		c := &day[clock]
		full, less := wants(clock)
		c.full, c.saving, c.persons = r.asking(full), r.asking(less), full.Persons/24
		if r.power == nil {
			continue
		}
		for swap := range 2 {
			for wait := range 2 {
				c.loads[swap][wait] = r.power.Loads.At(int(d.Weekday), clock, full.Persons > 0, power.Choice{Swap: swap == 1, Wait: wait == 1})
			}
		}
	}
	return day
}

func (r *Run) asking(w *people.Wants) asking {
	a := asking{wants: w, used: drained(w, &[people.Kinds]float64{1, 1, 1, 1})}
	if r.water != nil {
		a.taps = r.water.Plan(&w.Litres)
	}
	return a
}
