package water

import (
	"math"

	"suffice/quantity"
)

// spellGap is how many hours without water coming down make a roof dry again, so that the
// next rain wets it anew. Common practice for telling storms apart, no source for roofs;
// published gaps for records run from a quarter of an hour to a day [dunkerley-events, abstract].
const spellGap = 6

// A RoofIn is the water that comes down on a roof in the hour, rain and melting snow.
type RoofIn struct {
	Down quantity.Millimetres
	Dry  float64 // hours since water came down before this hour
}

// A RoofOut is what a roof did in the hour.
type RoofOut struct {
	Wetted   quantity.Litres // dries off
	Missed   quantity.Litres // splashed, blown, or lost past the gutter
	Diverted quantity.Litres // by first flush
	Passed   quantity.Litres // into the tank
}

// UsualSnow is snow on open ground, the best that is published for roofs that are not warm
// from below: half of what falls at 1 degC is snow, it melts above 0 degC [nws-snow: PXTEMP,
// MBASE, seen], 3.51 mm/(K d) is the mean of nine open Finnish sites [kuusisto-degree-day,
// abstract, seen]. Single sites and seasons run from about 1.6 to 6 (from memory).
func UsualSnow() Snow { return Snow{Below: 1, Melts: 0, Factor: 3.51} }

// UsualWetting is 2 mm a month [enhealth-rainwater, appendix B, seen] over five wet spells
// a month (assumed); it belongs with a Coefficient that leaves wetting out.
const UsualWetting quantity.Millimetres = 0.4

// Step lets the hour's rain fall or lie and gives what comes down as water.
//
// Rain + lying before = down + lying after.
func (n Snow) Step(lying *quantity.Millimetres, in SkyIn) (down quantity.Millimetres) {
	down = in.Rain
	if in.Temperature < n.Below {
		*lying += in.Rain
		down = 0
	}
	melt := quantity.Millimetres(n.Factor / 24 * max(0, float64(in.Temperature.Above(n.Melts))))
	melt = min(melt, *lying)
	*lying -= melt
	return down + melt
}

// Step lets the water of an hour run off the roof.
//
// Down on the area = Wetted + Missed + Diverted + Passed.
func (r *Roof) Step(s *RoofState, in RoofIn) (out RoofOut) {
	if in.Down == 0 {
		return out
	}
	r.dryOff(s, in.Dry)
	wetted := min(max(0, r.Wetting-s.Film), in.Down)
	s.Film += wetted
	out.Wetted = wetted.On(r.Area)
	runs := (in.Down - wetted).On(r.Area)
	caught := quantity.Litres(r.Coefficient) * runs
	out.Missed = runs - caught
	out.Diverted = r.divert(s, caught)
	out.Passed = caught - out.Diverted
	return out
}

// dryOff empties film and diverter where it has been dry for long enough.
func (r *Roof) dryOff(s *RoofState, dry float64) {
	if dry >= spellGap {
		s.Film = 0
	}
	if dry >= r.Flush.AfterDry {
		s.Flushed = 0
	}
}

// divert gives what the first-flush diverter takes of the water that was caught.
func (r *Roof) divert(s *RoofState, caught quantity.Litres) quantity.Litres {
	taken := min(max(0, r.Flush.Takes(r.Area)-s.Flushed), caught)
	s.Flushed += taken
	return taken
}

// Takes gives what an empty diverter takes from a roof of this area.
func (f FirstFlush) Takes(roof quantity.SquareMetres) quantity.Litres {
	return f.Depth.On(roof) + f.Litres
}

// RemainingContamination gives the share of the dirt on a roof that the water still carries
// after so much of it was flushed away: each millimetre halves it [martinson-first-flush, abstract].
func RemainingContamination(flushed quantity.Millimetres) float64 {
	return math.Pow(0.5, float64(flushed))
}

// Yield gives the water a roof sheds in a time from the rain in it:
// coefficient (rain - wetting) area [enhealth-rainwater, appendix B]. Rain up to the wetting loss yields nothing.
func Yield(roof quantity.SquareMetres, rain, wetting quantity.Millimetres, coefficient float64) quantity.Litres {
	if rain <= wetting {
		return 0
	}
	return quantity.Litres(coefficient) * (rain - wetting).On(roof)
}
