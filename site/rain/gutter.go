package rain

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// DesignIntensity, mm/h, is the storm English guidance builds house gutters for, 0.0208 L/s on
// a square metre [approved-document-h3, printed as 0.021]. Other places need other storms:
// ask the local weather service.
const DesignIntensity = 75.0

// Rate gives L/s on a square metre for an intensity in mm/h.
func Rate(intensity float64) float64 { return intensity / 3600 }

// EffectiveArea gives the area that catches rain driven at 1 across to 2 down, for a roof of
// this plan area and slope: plan (1 + tan(slope)/2) [en12056-3: L (W + H/2)].
func EffectiveArea(plan quantity.SquareMetres, slope quantity.Degrees) quantity.SquareMetres {
	return plan * quantity.SquareMetres(1+math.Tan(float64(slope.Radians()))/2)
}

// A Gutter is a level eaves gutter.
type Gutter struct {
	Shape Shape
	Width quantity.Millimetres // across the top
	Depth quantity.Millimetres // of a rectangular one; a half-round one is half as deep as wide
	Run   quantity.Metres      // from the highest point to the outlet; 0: short, nothing is taken off
}

// A Shape is the cross-section of a gutter.
type Shape int

const (
	HalfRound Shape = iota
	Rectangular
)

// safety is the share of the tested capacity that may be designed for [en12056-3, 5.1].
const safety = 0.9

// Capacity gives the L/s a gutter carries to its outlet by design.
func (g Gutter) Capacity() (float64, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	factor, err := RunFactor(float64(g.Run) * 1000 / float64(g.deep()))
	return safety * g.Nominal() * factor, err
}

// Nominal gives the L/s of a short gutter in tests, before anything is taken off.
func (g Gutter) Nominal() float64 {
	W := float64(g.Width)
	if g.Shape == HalfRound {
		AE := math.Pi * W * W / 8           // mm2
		return 2.78e-5 * math.Pow(AE, 1.25) // [en12056-3, 5.1.2]; recomputed from the flows of approved-document-h3
	}
	T := float64(g.Depth)
	// [en12056-3, 5.1.3] has 3.48e-5 AE^1.25 Fd Fs, with Fd and Fs read off figures. Fs is 1 for
	// a rectangle; (T/W)^0.25 stands for Fd here, the shape that the free outfall gives (see Outfall).
	return 3.48e-5 * math.Pow(W*T, 1.25) * math.Pow(T/W, 0.25)
}

func (g Gutter) deep() quantity.Millimetres {
	if g.Shape == HalfRound {
		return g.Width / 2
	}
	return g.Depth
}

func (g Gutter) check() error {
	var faults []error
	if !(g.Width >= 50 && g.Width <= 500) {
		faults = append(faults, fmt.Errorf("gutter width %v mm is outside the tests the formula rests on: take 50 to 500 mm", float64(g.Width)))
	}
	if d := g.deep(); g.Shape == Rectangular && !(d >= 25 && d <= 2*g.Width) {
		faults = append(faults, fmt.Errorf("gutter depth %v mm: take 25 mm to twice the width", float64(d)))
	}
	return errors.Join(faults...)
}

// runFactors are what a long run leaves of the capacity, by its length over the gutter's depth
// [en12056-3 as quoted by a supplier].
var runFactors = [...]struct{ ratio, factor float64 }{{50, 1.00}, {100, 0.93}, {150, 0.86}, {200, 0.80}}

// RunFactor gives the share of the capacity that is left on a run so many times the gutter's
// depth, read off between printed values in straight lines.
func RunFactor(ratio float64) (float64, error) {
	if ratio <= runFactors[0].ratio {
		return 1, nil
	}
	for i := range runFactors[1:] {
		a, b := runFactors[i], runFactors[i+1]
		if ratio <= b.ratio {
			return a.factor + (ratio-a.ratio)/(b.ratio-a.ratio)*(b.factor-a.factor), nil
		}
	}
	return 0, fmt.Errorf("the run is %.0f times the gutter's depth: factors are printed to 200, so give the gutter another outlet", ratio)
}

// Outfall gives the L/s that a level gutter without friction sheds over its open end when it
// stands full at the other: momentum between still water there and critical depth at the end.
// It is the twin of the formulas above, which tests put at 0.8 of it.
func (g Gutter) Outfall() float64 {
	const gravity = 9.80665
	W, D := float64(g.Width)/1000, float64(g.deep())/1000
	if g.Shape == Rectangular {
		yc := D / math.Sqrt(3) // D2/2 = yc2/2 + yc2
		return 1000 * W * math.Sqrt(gravity*yc*yc*yc)
	}
	r := W / 2
	full := 2. / 3 * r * r * r // moment of the full half circle about its surface
	low, high := 0.0, r
	for range 60 {
		y := (low + high) / 2
		A, T, moment := segment(r, y)
		if moment+A*A/T < full {
			low = y
		} else {
			high = y
		}
	}
	A, T, _ := segment(r, low)
	return 1000 * math.Sqrt(gravity*A*A*A/T)
}

// segment gives area, surface width and moment about the surface of water of depth y in a half circle of radius r.
func segment(r, y float64) (area, surface, moment float64) {
	theta := 2 * math.Acos((r-y)/r)
	area = r * r / 2 * (theta - math.Sin(theta))
	surface = 2 * r * math.Sin(theta/2)
	return area, surface, surface*surface*surface/12 - area*(r-y)
}

// pipeRoughness, mm, is what EN 12056-3 takes for downpipes of any material.
const pipeRoughness = 0.25

// UsualFilling is the share of a downpipe's cross-section that water may take where nothing
// else is prescribed [en12056-3, 6.1; remembered].
const UsualFilling = 0.33

// Downpipe gives the L/s a vertical pipe of this inside diameter carries with water on a share
// of its cross-section, 0.20 to 0.33 (Wyly and Eaton's formula as in [en12056-3]).
func Downpipe(diameter quantity.Millimetres, filling float64) float64 {
	kb, di, f := pipeRoughness, float64(diameter), filling
	return 2.5e-4 * math.Pow(kb, -0.167) * math.Pow(di, 2.667) * math.Pow(f, 1.667)
}
