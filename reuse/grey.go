package reuse

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Source is a use of water whose waste may feed a bed.
type Source int

// The sources, the cleanest first by common practice, kitchen water last.
const (
	Basin Source = iota
	Shower
	Bath
	Laundry
	Dishwasher
	Kitchen
	Sources // how many there are
)

// String names the source as a house file does.
func (s Source) String() string {
	return [...]string{"basin", "shower", "bath", "laundry", "dishwasher", "kitchen"}[s]
}

// A Strength is what a litre of greywater carries beyond what it brought from the tap, mg/L.
type Strength struct {
	Salt, BOD, Nitrogen float64
	Sodium              float64 // part of Salt, as the next two
	Calcium, Magnesium  float64
}

// A Span is the least and the most that measured greywaters of a source carried.
type Span struct{ Low, High Strength }

// Middle gives the figures half way.
func (s Span) Middle() Strength {
	l, h := s.Low, s.High
	return Strength{(l.Salt + h.Salt) / 2, (l.BOD + h.BOD) / 2, (l.Nitrogen + h.Nitrogen) / 2,
		(l.Sodium + h.Sodium) / 2, (l.Calcium + h.Calcium) / 2, (l.Magnesium + h.Magnesium) / 2}
}

var (
	// bathroom and laundry: christova-boal-1996, table of bathroom and laundry water, from memory; salt from
	// conductivity 0.082-0.25 and 0.19-1.4 dS/m at 640 mg/L to the dS/m.
	bathroom = Span{Strength{52, 76, 4.6, 7.4, 3.5, 1.4}, Strength{160, 200, 20, 18, 7.9, 2.3}}
	washing  = Span{Strength{122, 48, 1, 49, 3.9, 1.1}, Strength{896, 290, 40, 480, 12, 2.9}}
	// kitchen: BOD and nitrogen eriksson-2002, from memory; salt and its parts common practice, no source.
	cooking = Span{Strength{200, 1040, 40, 50, 5, 1}, Strength{600, 1460, 74, 200, 30, 5}}
)

// Measured gives the span for a source. Measured strengths differ severalfold between houses,
// mostly with the soap powder: a house that has its own analysis should give it.
func Measured(s Source) Span {
	switch s {
	case Laundry:
		return washing
	case Dishwasher, Kitchen:
		return cooking
	default:
		return bathroom
	}
}

// A Trap holds back grease, hair and lint before the bed.
type Trap struct {
	Keeps      float64 // share of the BOD held back while there is room, 0 to 1
	Holds      float64 // g of BOD until it is full and keeps nothing
	CleanEvery int     // days after which cleaning is due; 0: only when full
}

// A Grey is the way from the drains to the bed.
type Grey struct {
	Feeds    [Sources]bool // which sources go to the bed; the others go to the sewer
	Strength [Sources]Strength
	Inlet    quantity.Litres // most that passes the trap in an hour; a surge beyond it goes to the sewer
	Trap     Trap
}

// UsualGrey feeds the bed from all but the kitchen, at the middle of measured strengths, with
// a trap that keeps 30 % of the BOD (the manual's share for primary treatment) and is cleaned monthly.
func UsualGrey() Grey {
	g := Grey{Inlet: 300, Trap: Trap{Keeps: 0.3, Holds: 2000, CleanEvery: 30}}
	for s := range Sources {
		g.Feeds[s] = s != Kitchen && s != Dishwasher
		g.Strength[s] = Measured(s).Middle()
	}
	return g
}

// Faults says what a drain way cannot be.
func (g *Grey) Faults() error {
	var faults []error
	if g.Inlet < 0 || g.Trap.Keeps < 0 || g.Trap.Keeps > 1 || g.Trap.Holds < 0 || g.Trap.CleanEvery < 0 {
		faults = append(faults, fmt.Errorf("greywater: inlet %g L an hour, trap keeping %g of the BOD up to %g g, cleaned every %d days: none may be negative, the share at most 1",
			float64(g.Inlet), g.Trap.Keeps, g.Trap.Holds, g.Trap.CleanEvery))
	}
	for s, k := range g.Strength {
		if k.Salt < 0 || k.BOD < 0 || k.Nitrogen < 0 || k.Sodium < 0 || k.Calcium < 0 || k.Magnesium < 0 || k.Sodium+k.Calcium+k.Magnesium > k.Salt {
			faults = append(faults, fmt.Errorf("greywater: %s carries salt %g, of it sodium %g, calcium %g, magnesium %g, BOD %g, nitrogen %g mg/L: none may be negative, the three are part of the salt",
				Source(s), k.Salt, k.Sodium, k.Calcium, k.Magnesium, k.BOD, k.Nitrogen))
		}
	}
	return errors.Join(faults...)
}

// GreyState is what the trap remembers.
type GreyState struct {
	Kept  float64 // g of BOD in the trap
	Hours int     // since it was cleaned
}

// GreyIn is what an hour sends down the drains.
type GreyIn struct {
	Used    [Sources]quantity.Litres
	Salt    float64 // g/L that the tap water brought
	Ill     bool    // somebody has a catching illness: all goes to the sewer
	Harsh   bool    // bleach, drain cleaner, dye or the like: all goes to the sewer
	Cleaned bool    // the trap is cleaned at the beginning of the hour
}

// GreyOut is where it went.
type GreyOut struct {
	Fed      Water   // to the bed
	Apart    Water   // from sources that feed no bed, to the sewer
	Diverted Water   // because of illness or harsh chemicals, to the sewer
	Surged   Water   // beyond what the inlet passes, to the sewer
	Emptied  float64 // g of BOD taken out of the trap by hand
	TrapDue  bool    // the trap wants cleaning
}

// Sewer gives all that went to the sewer.
func (o *GreyOut) Sewer() Water {
	sum := o.Apart
	sum.add(&o.Diverted)
	sum.add(&o.Surged)
	return sum
}

// perMilli is the grams in a milligram.
const perMilli = 0.001

// Carried gives what the waste of a source carries.
func (g *Grey) Carried(s Source, used quantity.Litres, salt float64) Water {
	l, k := float64(used), &g.Strength[s]
	return Water{used, Load{l*salt + l*k.Salt*perMilli, l * k.BOD * perMilli, l * k.Nitrogen * perMilli}}
}

// Milligrams that make a milliequivalent: atomic weight over charge.
const sodiumWeight, calciumWeight, magnesiumWeight = 22.990, 20.039, 12.153

// Ions gives the sodium, calcium and magnesium, meq/L, of what the litres of the sources that feed the bed bring together,
// beside those that the tap water brought; rain brings next to none. Without water it is nothing.
func (g *Grey) Ions(used *[Sources]quantity.Litres) Ions {
	var litres float64
	var i Ions
	for s, l := range used {
		if !g.Feeds[s] {
			continue
		}
		k := &g.Strength[s]
		litres += float64(l)
		i.Sodium += float64(l) * k.Sodium / sodiumWeight
		i.Calcium += float64(l) * k.Calcium / calciumWeight
		i.Magnesium += float64(l) * k.Magnesium / magnesiumWeight
	}
	if litres == 0 {
		return Ions{}
	}
	return Ions{i.Sodium / litres, i.Calcium / litres, i.Magnesium / litres}
}

// Step parts the waste of the hour.
//
// Litres: the sum of Used = Fed + Apart + Diverted + Surged. Salt and nitrogen likewise. BOD: what the
// waste carried + kept before = Fed + Apart + Diverted + Surged + Emptied + kept after.
func (g *Grey) Step(s *GreyState, in *GreyIn, out *GreyOut) {
	*out = GreyOut{}
	if in.Cleaned {
		out.Emptied, *s = s.Kept, GreyState{}
	}
	s.Hours++
	g.part(s, in, out)
	out.TrapDue = s.Kept >= g.Trap.Holds && g.Trap.Keeps > 0 || g.Trap.CleanEvery > 0 && s.Hours >= 24*g.Trap.CleanEvery
}

// part sends each source its way and the bed's share through the trap.
func (g *Grey) part(s *GreyState, in *GreyIn, out *GreyOut) {
	var litres, salt, dirt, nitrogen float64
	for i, used := range &in.Used {
		switch {
		case used == 0:
		case !g.Feeds[i]:
			w := g.Carried(Source(i), used, in.Salt)
			out.Apart.add(&w)
		default:
			k := &g.Strength[i]
			l := float64(used)
			litres += l
			salt += l * k.Salt
			dirt += l * k.BOD
			nitrogen += l * k.Nitrogen
		}
	}
	if litres == 0 {
		return
	}
	way := &out.Fed
	if in.Ill || in.Harsh {
		way = &out.Diverted
	}
	way.Litres = quantity.Litres(litres)
	way.Salt, way.BOD, way.Nitrogen = litres*in.Salt+salt*perMilli, dirt*perMilli, nitrogen*perMilli
	if surge := out.Fed.Litres - g.Inlet; surge > 0 {
		out.Fed.pour(surge, &out.Surged)
	}
	kept := out.Fed.BOD * g.Trap.Keeps
	if room := g.Trap.Holds - s.Kept; kept > room {
		kept = room
	}
	s.Kept += kept
	out.Fed.BOD -= kept
}
