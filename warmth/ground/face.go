package ground

import (
	"math"

	"suffice/quantity"
	"suffice/site/air"
)

const (
	airHolds = 1013.0 // J/kgK (fao56 eq. 8: 1.013 kJ/kgK)

	// calm is the resistance of air over short grass times the wind at 2 m, without any
	// buoyancy (fao56 box 4: ra = 208/u2), measured at height minus displacement.
	calm     = 208.0
	measured = 2 - 0.08 // m
	rough    = 0.0148   // m, that grass's roughness for momentum
	stillest = 0.5      // m/s, the least wind that is counted (fao56 p. 63)

	// Buoyancy by louis-1982, from memory: b = c = d = 5.
	louis   = 5.0
	gravity = 9.80665
)

// SkyLight gives the long-wave light of the sky from the air, its vapour in kPa and the day's
// light as a share of a clear day's, as fao56 eq. 39 implies it for a black ground.
func SkyLight(t quantity.Celsius, vapour, relative float64) quantity.Irradiance {
	black := air.SkyLight(t, 1)
	return quantity.Irradiance(black * (1 - (0.34-0.14*math.Sqrt(vapour))*(1.35*min(max(relative, 0.3), 1)-0.35)))
}

// face is the balance of what meets the air: gain − loss·T flows inward, through a
// conductance, to the middle of the first layer.
type face struct {
	gain, loss       float64 // W/m2, W/m2K
	vapour, vapourBy float64 // W/m2 at 0 degC, W/m2K: evaporation, contained in gain and loss
	through          float64 // W/m2K
}

// face makes the surface's balance for the present state. Radiation and evaporation are taken on
// straight lines about the air's temperature, buoyancy from the last of a few looks at the face.
func (c *Column) face(s *ColumnState, in ColumnIn, wet wetSoil) face {
	white := s.white()
	albedo := white*s.Albedo + (1-white)*c.Cover.Albedo
	through := c.through(s, wet, white)
	t, k := float64(in.Air), in.Air.Kelvin()
	radiant := 4 * air.StefanBoltzmann * k * k * k
	wind := max(in.Wind, stillest)
	var f face
	for range 3 {
		slow := calm / wind / buoyant(s.Face-t, k, wind)
		moving := c.holds / slow
		f = face{loss: moving + radiant, through: through}
		f.gain = (1-albedo)*float64(in.Light) + float64(in.Sky) - air.SkyLight(in.Air, 1) + f.loss*t
		if s.Snow == 0 && s.Ice[0] == 0 {
			slope := air.SaturationSlope(in.Air)
			by := c.unhindered(s) * c.holds / c.gamma / (slow + c.Cover.Leaves) // fao56 eq. 3, its vapour part
			f.vapourBy = by * slope
			f.vapour = by * (air.Saturation(in.Air) - in.Vapour - slope*t)
			f.loss += f.vapourBy
			f.gain -= f.vapour
		}
		s.Face = (f.gain + through*s.Temperature[0]) / (f.loss + through)
		if s.Snow > 0 {
			s.Face = min(s.Face, 0)
		}
	}
	return f
}

// buoyant gives how much faster than in neutral air warmth leaves a face warmer than the
// air by so many kelvin, or slower where it is cooler.
func buoyant(warmer, kelvin, wind float64) float64 {
	Ri := -gravity * measured * warmer / (kelvin * wind * wind) // bulk Richardson number
	if Ri >= 0 {
		return 1 / (1 + 3*louis*Ri*math.Sqrt(1+louis*Ri))
	}
	return 1 - 3*louis*Ri/(1+3*louis*louis/calm*math.Sqrt(-Ri*(measured/rough+1)))
}

// through gives the conductance from the face to the middle of the first layer, through grass and,
// over part of the ground, snow.
func (c *Column) through(s *ColumnState, wet wetSoil, white float64) float64 {
	below := 1/c.Cover.Skin + 1/c.first(s, wet)
	if white == 0 {
		return 1 / below
	}
	deep := s.Snow / s.Density / white
	return (1-white)/below + white/(below+deep/(iceConducts*math.Pow(s.Density/iceDensity, snowExponent)))
}
