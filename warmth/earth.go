package warmth

import (
	"errors"
	"fmt"
	"math"

	"suffice/material"
	"suffice/quantity"
	"suffice/site/weather"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
)

// slabEarth is how much earth under a floor is counted as a layer of it, m (iso52016-1 annex on floors: half a metre; from
// memory).
const slabEarth = 0.5

// earthed gives a wall's layers with the earth that belongs to them.
func (w *Wall) earthed() []fabric.Layer {
	if w.Faces != Earth || w.Ground.Slab == nil {
		return w.Layers
	}
	g := w.Ground.Slab.Ground
	return append(append([]fabric.Layer(nil), w.Layers...), fabric.Layer{Name: g.Name, Thickness: slabEarth,
		Conductivity: material.Conductivity(g.Conductivity), Density: 1, Capacity: material.Capacity(g.Capacity)})
}

// behind gives the resistance from the last layer to the place with the ground's temperature, m2K/W. For a slab it is
// what iso13370 leaves over film, floor and half a metre of earth.
func (g *Ground) behind() float64 {
	if g.Slab == nil {
		return float64(g.Behind)
	}
	s := g.Slab
	return 1/s.On() - s.Inside - s.Resists - slabEarth/s.Ground.Conductivity
}

// hours gives the temperature of the ground for every hour of a record, nil where it never changes.
func (g *Ground) hours(h *weather.Hours) []float64 {
	var at func(day float64) float64
	switch {
	case g.Fixed != nil:
		return nil
	case g.Slab != nil:
		at = virtual(g.Slab, h)
	default:
		at = func(day float64) float64 { return float64(g.Of.At(*g.Depth, day)) }
	}
	values := make([]float64, 0, 24*len(h.Days))
	for _, day := range h.Days {
		for hour := range 24 {
			values = append(values, at(float64(day.DayOfYear)+(float64(hour)-12)/24))
		}
	}
	return values
}

// slabClimate gives the year outside as iso13370 takes it: the cosine that fits the record's first year.
func slabClimate(h *weather.Hours) ground.Climate {
	daily := make([]float64, min(365, len(h.Days)))
	for d := range daily {
		for _, t := range h.Temperature[24*d : 24*d+24] {
			daily[d] += t / 24
		}
	}
	u := ground.FitSurface(daily, 1)
	return ground.Climate{OutsideMean: float64(u.Mean), OutsideSwing: float64(u.Swing), Coldest: month(u.Coldest)}
}

// month gives a day of the year in months, the middle of January being 1.
func month(day float64) float64 { return day/365*12 + 0.5 }

// virtual gives the temperature under a slab by the day of the year, which makes the heat through it that of
// iso13370 whatever the room does: θe − Hpe θ̂e cos(2π(m−τ−β)/12)/(A U), the standard's flow with a room at 0 degC, turned.
func virtual(s *ground.Floor, h *weather.Hours) func(day float64) float64 {
	c, y := slabClimate(h), s.YearlyOn()
	return func(day float64) float64 { return -y.Flow(c, month(day)) / (float64(s.Area) * s.On()) }
}

func (g *Ground) faults(wall string) error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("wall %q: "+format, append([]any{wall}, args...)...))
		}
	}
	fault(g.Fixed == nil && g.Slab == nil && (g.Depth == nil || g.Of == nil), "it faces earth: tell a temperature, or a depth with the ground's own, or a slab")
	fault(!(g.Behind >= 0), "the earth behind it resists %g m2K/W: give 0 or more", float64(g.Behind))
	if g.Fixed != nil {
		fault(!(math.Abs(float64(*g.Fixed)) <= 60), "the earth behind it is at %s: -60 degC to 60 degC", quantity.Text(float64(*g.Fixed), "degC"))
	}
	if g.Slab != nil {
		if err := g.Slab.Faults(); err != nil {
			fault(true, "%v", err)
		} else {
			fault(g.behind() <= 0, "the ground under the slab resists less than half a metre of it: a floor so narrow is not one of iso13370's")
		}
	}
	return errors.Join(faults...)
}
