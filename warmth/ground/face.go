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

// sky is what an hour does to the surface, apart from how warm that is.
type sky struct {
	air, kelvin, wind float64
	absorbed          float64 // W/m2: light and long-wave, less what a face as warm as the air gives off
	radiant           float64 // W/m2K
	through           float64 // W/m2K
	damp              float64 // J/m3kPa: ρc/γ times the share of evaporation that soil water allows
	slope, dry        float64 // kPa/K; kPa, what the air could take more
}

// sky gathers the hour over the present state.
func (c *Column) sky(s *ColumnState, in ColumnIn, wet wetSoil) sky {
	white := s.white()
	albedo := white*s.Albedo + (1-white)*c.Cover.Albedo
	k := in.Air.Kelvin()
	now := sky{
		air: float64(in.Air), kelvin: k, wind: max(in.Wind, stillest),
		absorbed: (1-albedo)*float64(in.Light) + float64(in.Sky) - air.SkyLight(in.Air, 1),
		radiant:  4 * air.StefanBoltzmann * k * k * k,
		through:  c.through(s, wet, white),
	}
	if s.Snow == 0 && s.Ice[0] == 0 {
		now.damp = c.unhindered(s) * c.holds / c.gamma // fao56 eq. 3, its vapour part
		now.slope = air.SaturationSlope(in.Air)
		now.dry = air.Saturation(in.Air) - in.Vapour
	}
	return now
}

// balance gives the surface's balance if it is so warm: radiation and evaporation on straight lines about
// the air's temperature, moving air by the buoyancy that belongs to the warmth.
func (c *Column) balance(now sky, warm float64) face {
	slow := calm / now.wind / buoyant(warm-now.air, now.kelvin, now.wind)
	by := now.damp / (slow + c.Cover.Leaves)
	f := face{loss: c.holds/slow + now.radiant, through: now.through}
	f.gain = now.absorbed + f.loss*now.air
	f.vapourBy = by * now.slope
	f.vapour = by * (now.dry - now.slope*now.air)
	f.loss += f.vapourBy
	f.gain -= f.vapour
	return f
}

// close is how near the warmth that gives the buoyancy comes to the warmth that comes of it, K.
const close = 1e-3

// face finds the balance over ground that pulls so: by Steffensen's iteration from the last hour's warmth, and where that
// does not settle, by halving.
func (now sky) face(c *Column, last float64, p *pull) face {
	off := func(warm float64) float64 { return c.balance(now, warm).meets(p) - warm }
	warm := last
	for range 6 {
		once := off(warm)
		twice := off(warm + once)
		if math.Abs(twice) < close {
			return c.balance(now, warm+once)
		}
		if twice == once {
			break
		}
		warm -= once * once / (twice - once)
	}
	low, high := now.air-150, now.air+150 // no light of this sun warms or cools a face by so much
	for high-low > close {
		if warm = (low + high) / 2; off(warm) > 0 {
			low = warm
		} else {
			high = warm
		}
	}
	return c.balance(now, warm)
}

// meets gives the warmth of a face over ground that pulls so.
func (f face) meets(p *pull) float64 {
	joined := series(f.through, p.diagonal[0])
	return (f.gain + joined*p.free()) / (f.loss + joined)
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
