package waste

import "suffice/quantity"

// A Load is what water carries with it, in grams: never negative.
type Load struct {
	Salt     float64 // dissolved salts
	BOD      float64 // oxygen that bacteria use up in five days to break down what is in the water
	Nitrogen float64 // of all kinds
}

// Plus adds.
func (l Load) Plus(m Load) Load {
	return Load{l.Salt + m.Salt, l.BOD + m.BOD, l.Nitrogen + m.Nitrogen}
}

// Add adds grams of each kind in place.
func (l *Load) Add(salt, bod, nitrogen float64) {
	l.Salt += salt
	l.BOD += bod
	l.Nitrogen += nitrogen
}

// Minus takes away.
func (l Load) Minus(m Load) Load {
	return Load{l.Salt - m.Salt, l.BOD - m.BOD, l.Nitrogen - m.Nitrogen}
}

// Times gives a share of the load, or a multiple.
func (l Load) Times(f float64) Load { return Load{l.Salt * f, l.BOD * f, l.Nitrogen * f} }

// UsualPerPerson is what a person at home sends down all drains in a day: BOD of the worked case in
// unhabitat-wetlands (40 g); nitrogen 12 g and salt 30 g from memory, with a third of doubt either way.
// A toilet alone carries nearly all of the nitrogen and about half of the rest.
func UsualPerPerson() Load { return Load{Salt: 30, BOD: 40, Nitrogen: 12} }

// draw takes litres of well-mixed water, and what is dissolved in them, out of a store. What is
// asked for is in the store. The last litre takes the last gram.
func draw(held *quantity.Litres, in *Load, litres quantity.Litres, out *Load) {
	switch {
	case litres <= 0:
		*out = Load{}
	case litres >= *held:
		*out = *in
		*held, *in = 0, Load{}
	default:
		share := float64(litres / *held)
		stays := 1 - share
		*held -= litres
		salt, bod, nitrogen := in.Salt, in.BOD, in.Nitrogen
		out.Salt, out.BOD, out.Nitrogen = salt*share, bod*share, nitrogen*share
		in.Salt, in.BOD, in.Nitrogen = salt*stays, bod*stays, nitrogen*stays
	}
}
