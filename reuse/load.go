package reuse

import "suffice/quantity"

// A Load is what water carries, in grams.
type Load struct {
	Salt     float64 // all dissolved salts
	BOD      float64 // oxygen that its organic dirt takes in five days at 20 degC
	Nitrogen float64
}

// Water is litres with what they carry.
type Water struct {
	Litres quantity.Litres
	Load
}

// saltPerLitre is g/L of dissolved salts for each dS/m of conductivity (fao29: 640 mg/L to
// the dS/m up to 5 dS/m; reported factors run from 550 to 900 with the kind of salt).
const saltPerLitre = 0.640

// Conductivity gives the electrical conductivity, dS/m, of litres with so much salt.
// Without water it is 0: what has dried up conducts nothing until it is wetted.
func (w *Water) Conductivity() float64 {
	if w.Litres <= 0 {
		return 0
	}
	return w.Salt / (saltPerLitre * float64(w.Litres))
}

// molecule is the litres of one molecule of water, 18 g/mol: a store with less has nothing to give.
const molecule = 3e-26

// Set makes it the same as other water, number by number: where those were written just before, a copy of the whole
// would wait for them.
func (w *Water) Set(other *Water) {
	w.Litres, w.Salt, w.BOD, w.Nitrogen = other.Litres, other.Salt, other.BOD, other.Nitrogen
}

// add pours more in.
func (w *Water) add(more *Water) {
	w.Litres += more.Litres
	w.Salt += more.Salt
	w.BOD += more.BOD
	w.Nitrogen += more.Nitrogen
}

// pour moves litres off a mixed store into another, at most what is there, with their part of its load.
func (w *Water) pour(litres quantity.Litres, into *Water) {
	if litres >= w.Litres {
		into.add(w)
		*w = Water{}
		return
	}
	part := float64(litres / w.Litres)
	salt, dirt, nitrogen := w.Salt*part, w.BOD*part, w.Nitrogen*part
	w.Litres -= litres
	w.Salt -= salt
	w.BOD -= dirt
	w.Nitrogen -= nitrogen
	into.Litres += litres
	into.Salt += salt
	into.BOD += dirt
	into.Nitrogen += nitrogen
}
