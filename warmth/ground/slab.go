package ground

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/soil"
)

// Usual surface resistances, m2K/W (iso6946 table: heat going down, heat on the level, outside).
const (
	InsideDown  = 0.17
	InsideLevel = 0.13
	Outside     = 0.04
)

// Floor is a floor near the ground, by ISO 13370. Width and lengths are measured inside.
type Floor struct {
	Area      quantity.SquareMetres
	Perimeter quantity.Metres // of what faces outside or an unheated room
	Wall      quantity.Metres // full thickness of the walls above it
	Ground    soil.Ground
	Resists   float64 // m2K/W of the floor itself, thin hard coverings and gravel left out
	Inside    float64 // m2K/W at its surface; see InsideDown
	Outside   float64 // m2K/W at the ground's; see Outside
}

// Faults gives everything about the floor that cannot be, or nil.
func (f Floor) Faults() error {
	var faults []error
	above := func(what string, v, low float64, unit string) {
		if !(v > low) || math.IsInf(v, 1) {
			faults = append(faults, fmt.Errorf("floor: %s is %s: it is above %s", what, quantity.Text(v, unit), quantity.Text(low, unit)))
		}
	}
	above("area", float64(f.Area), 0, "m2")
	above("perimeter", float64(f.Perimeter), 0, "m")
	above("conductivity of the ground", f.Ground.Conductivity, 0, "W/mK")
	for _, v := range []struct {
		what string
		v    float64
		unit string
	}{{"thickness of the wall", float64(f.Wall), "m"}, {"resistance of the floor", f.Resists, "m2K/W"},
		{"resistance inside", f.Inside, "m2K/W"}, {"resistance outside", f.Outside, "m2K/W"}} {
		if !(v.v >= 0) {
			faults = append(faults, fmt.Errorf("floor: %s is %s: it is not below 0", v.what, quantity.Text(v.v, v.unit)))
		}
	}
	if f.Thickness() <= 0 && len(faults) == 0 {
		faults = append(faults, errors.New("floor: wall, floor and surfaces have no resistance at all, and then the loss has no limit: give the wall its thickness"))
	}
	return errors.Join(faults...)
}

// Breadth gives the characteristic dimension, m (iso13370: B′ = A/(0.5 P)).
func (f Floor) Breadth() float64 { return float64(f.Area) / (0.5 * float64(f.Perimeter)) }

// Thickness gives the equivalent thickness of the floor as ground, m (iso13370: dt = w + λ(Rsi + Rf + Rse)).
func (f Floor) Thickness() float64 { return f.thick(f.Inside + f.Resists + f.Outside) }

func (f Floor) thick(resistance float64) float64 {
	return float64(f.Wall) + f.Ground.Conductivity*resistance
}

// On gives the transmittance of a floor lying on the ground, W/m2K, from the room to the outside.
func (f Floor) On() float64 { return f.through(f.Thickness()) }

// through gives the transmittance at an equivalent thickness (iso13370, floors without and with
// moderate insulation, and well insulated floors).
func (f Floor) through(dt float64) float64 {
	lambda, B := f.Ground.Conductivity, f.Breadth()
	if dt < B {
		return 2 * lambda / (math.Pi*B + dt) * math.Log(math.Pi*B/dt+1)
	}
	return lambda / (0.457*B + dt)
}

// Edge is insulation along the edge of a slab.
type Edge struct {
	Upright    bool            // down the foundation; otherwise lying, under or over the slab
	Reach      quantity.Metres // down from the ground's face, or inward from the edge
	Thickness  quantity.Metres
	Resistance float64 // m2K/W of the insulation or the light foundation
}

// Gain gives the change of loss for a metre of perimeter, W/mK, below 0 where the edge saves
// (iso13370, annex on edge insulation).
func (f Floor) Gain(e Edge) float64 {
	lambda, dt := f.Ground.Conductivity, f.Thickness()
	d := f.extra(e)
	D := float64(e.Reach)
	if e.Upright {
		D *= 2
	}
	return -lambda / math.Pi * (math.Log(D/dt+1) - math.Log(D/(dt+d)+1))
}

// extra gives d′ = R′λ with R′ = Rn − dn/λ, m.
func (f Floor) extra(e Edge) float64 {
	return (e.Resistance - float64(e.Thickness)/f.Ground.Conductivity) * f.Ground.Conductivity
}

// OnEdged gives the transmittance of a slab with edge insulation (iso13370: U + 2ψ/B′).
func (f Floor) OnEdged(e Edge) float64 { return f.On() + 2*f.Gain(e)/f.Breadth() }

// Gap is the open space under a suspended floor, its own ground at most half a metre below that outside.
type Gap struct {
	Height  quantity.Metres // of the floor above the ground outside
	Wall    float64         // W/m2K of the walls around the gap
	Vents   float64         // m2 of openings for a metre of perimeter
	Wind    float64         // m/s at 10 m, mean
	Shelter float64         // of wind: 0.02 in towns, 0.05 in suburbs, 0.10 in open country
	Resists float64         // m2K/W laid on the ground in the gap
}

// below gives the way from the gap into the ground and into the air outside, W/m2K (iso13370,
// suspended floors: Ug with dg, Ux = 2hUw/B′ + 1450 ε v fw/B′).
func (f Floor) below(g Gap) (ground, air float64) {
	B := f.Breadth()
	dg := f.thick(f.Inside + g.Resists + f.Outside)
	ground = 2 * f.Ground.Conductivity / (math.Pi*B + dg) * math.Log(math.Pi*B/dg+1)
	air = 2*float64(g.Height)*g.Wall/B + 1450*g.Vents*g.Wind*g.Shelter/B
	return ground, air
}

// own gives the transmittance of the floor alone, W/m2K, with a surface on either side.
func (f Floor) own() float64 { return 1 / (2*f.Inside + f.Resists) }

// Over gives the transmittance of a floor over a gap, W/m2K.
func (f Floor) Over(g Gap) float64 {
	ground, air := f.below(g)
	return 1 / (1/f.own() + 1/(ground+air))
}

// Basement is a heated room below ground.
type Basement struct {
	Depth quantity.Metres // of its floor below the ground outside
	Wall  float64         // m2K/W of its walls below ground
	Side  float64         // m2K/W at the inside of those walls, 0.13 for a heat flow on the level
}

// In gives the transmittances of a basement's floor and walls, W/m2K (iso13370, heated basements).
func (f Floor) In(b Basement) (floor, walls float64) {
	lambda, B, z := f.Ground.Conductivity, f.Breadth(), float64(b.Depth)
	dt, dw := f.Thickness(), f.sideThick(b)
	if x := dt + z/2; x < B {
		floor = 2 * lambda / (math.Pi*B + x) * math.Log(math.Pi*B/x+1)
	} else {
		floor = lambda / (0.457*B + x)
	}
	return floor, 2 * lambda / (math.Pi * z) * (1 + 0.5*min(dt, dw)/(min(dt, dw)+z)) * math.Log(z/dw+1)
}

// sideThick gives the equivalent thickness of the walls, m: dw = λ(Rsi + Rw + Rse).
func (f Floor) sideThick(b Basement) float64 {
	return f.Ground.Conductivity * (b.Side + b.Wall + f.Outside)
}
