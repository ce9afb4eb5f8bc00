package ground

import (
	"math"

	"suffice/soil"
)

// Yearly says how the heat through a floor answers the swing of a year (iso13370, annex on
// periodic heat flow; from memory of the editions of 1998 and 2007, no printed example seen).
type Yearly struct {
	Steady  float64 // W/K, on the means of inside and outside
	Inside  float64 // W/K, on the swing inside
	Outside float64 // W/K, on the swing outside
	Ahead   float64 // months by which the flow leads the temperature inside
	Behind  float64 // months by which the flow follows the temperature outside
}

// Climate is a month-by-month year as two cosines with their means.
type Climate struct {
	InsideMean, InsideSwing   float64 // degC, K
	OutsideMean, OutsideSwing float64 // degC, K
	Coldest                   float64 // month in which it is coldest outside: 1 north of the equator, 7 south of it
}

// Flow gives the heat from the room in a month, W (iso13370: Φm = Hg(θi − θe) − Hpi θ̂i cos(2π(m−τ+α)/12) +
// Hpe θ̂e cos(2π(m−τ−β)/12)).
func (y Yearly) Flow(c Climate, month float64) float64 {
	turn := func(shift float64) float64 { return math.Cos(2 * math.Pi * (month - c.Coldest + shift) / 12) }
	return y.Steady*(c.InsideMean-c.OutsideMean) - y.Inside*c.InsideSwing*turn(y.Ahead) + y.Outside*c.OutsideSwing*turn(-y.Behind)
}

// lags gives the months of the standard's formulas for floors on the ground and in it.
func lags(delta, dt float64) (ahead, behind float64) {
	return 1.5 - 12/(2*math.Pi)*math.Atan(dt/(dt+delta)), 1.5 - 0.42*math.Log(delta/(dt+1))
}

// inward gives the factor of a layer on the swing inside: √(2/((1 + δ/dt)² + 1)).
func inward(delta, d float64) float64 { return math.Sqrt(2 / ((1+delta/d)*(1+delta/d) + 1)) }

func (f Floor) reach() float64 { return float64(f.Ground.Penetration(soil.Year)) }

// YearlyOn gives the answer of a floor on the ground.
func (f Floor) YearlyOn() Yearly {
	lambda, delta, dt := f.Ground.Conductivity, f.reach(), f.Thickness()
	y := Yearly{
		Steady:  float64(f.Area) * f.On(),
		Inside:  float64(f.Area) * lambda / dt * inward(delta, dt),
		Outside: 0.37 * float64(f.Perimeter) * lambda * math.Log(delta/dt+1),
	}
	y.Ahead, y.Behind = lags(delta, dt)
	return y
}

// YearlyEdged gives the answer of a floor on the ground with edge insulation.
func (f Floor) YearlyEdged(e Edge) Yearly {
	y := f.YearlyOn()
	lambda, delta, dt := f.Ground.Conductivity, f.reach(), f.Thickness()
	D := float64(e.Reach)
	if e.Upright {
		D *= 2
	}
	beyond := math.Exp(-D / delta)
	y.Steady += float64(f.Perimeter) * f.Gain(e)
	y.Outside = 0.37 * float64(f.Perimeter) * lambda * ((1-beyond)*math.Log(delta/(dt+f.extra(e))+1) + beyond*math.Log(delta/dt+1))
	return y
}

// YearlyOver gives the answer of a floor over a gap, where the standard knows no delay.
func (f Floor) YearlyOver(g Gap) Yearly {
	lambda, delta := f.Ground.Conductivity, f.reach()
	dg := f.thick(f.Inside + g.Resists + f.Outside)
	_, air := f.below(g)
	own, A := f.own(), float64(f.Area)
	return Yearly{
		Steady:  A * f.Over(g),
		Inside:  A / (1/own + 1/(lambda/delta+air)),
		Outside: own * (0.37*float64(f.Perimeter)*lambda*math.Log(delta/dg+1) + air*A) / (lambda/delta + air + own),
	}
}

// YearlyIn gives the answer of a basement, floor and walls together.
func (f Floor) YearlyIn(b Basement) Yearly {
	lambda, delta, z := f.Ground.Conductivity, f.reach(), float64(b.Depth)
	dt, dw := f.Thickness(), f.sideThick(b)
	floor, walls := f.In(b)
	A, P := float64(f.Area), float64(f.Perimeter)
	deep := math.Exp(-z / delta)
	y := Yearly{
		Steady:  A*floor + z*P*walls,
		Inside:  A*lambda/dt*inward(delta, dt) + z*P*lambda/dw*(1+dt/(dt+z))*inward(delta, dw),
		Outside: 0.37 * P * lambda * (deep*math.Log(delta/dt+1) + 2*(1-deep)*math.Log(delta/dw+1)),
	}
	y.Ahead, y.Behind = lags(delta, dt)
	return y
}
