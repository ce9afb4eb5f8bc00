package sun

import (
	"fmt"
	"slices"
	"strings"

	"suffice/quantity"
)

// A Plane is a flat surface: panel, roof, wall, window.
type Plane struct {
	Slope   quantity.Degrees // from horizontal: 0 lies flat, 90 stands, 180 faces the ground
	Azimuth quantity.Degrees // where it faces, from north, east positive
}

// Light is what the sky gives in an hour or at an instant.
type Light struct {
	Diffuse quantity.Irradiance // on the horizontal
	Beam    quantity.Irradiance // facing the sun
}

// PlaneLight is what falls on a plane. Total does not contain Shaded.
type PlaneLight struct {
	Incidence float64             // cosine of the angle between sun and plane's normal: negative behind, -1 while the sun is down
	Beam      quantity.Irradiance // straight from the sun
	Sky       quantity.Irradiance // from the sky, brightening round the sun and at the horizon included
	Round     quantity.Irradiance // of Sky, what comes from round the sun and so falls as the beam does
	Ground    quantity.Irradiance // thrown back by the ground
	Shaded    quantity.Irradiance // what the skyline kept away: beam, sky round the sun, hidden sky
}

// Total gives all light that arrives.
func (l PlaneLight) Total() quantity.Irradiance { return l.Beam + l.Sky + l.Ground }

// A Model says how the sky's diffuse light is spread over the sky.
type Model int8

const (
	Perez      Model = iota // Perez et al. 1990, clearness with the zenith angle: the default
	HayDavies               // Hay & Davies 1980: isotropic and a part round the sun
	HDKR                    // Hay-Davies with Reindl's horizon term (1990)
	Isotropic               // Liu & Jordan 1963: the same from everywhere, too little on a sunny slope
	Perez52010              // Perez with the clearness and air mass of ISO 52010-1:2017
)

// A Face is a plane made ready: it is read-only afterwards and may be shared.
type Face struct {
	Plane  Plane
	Albedo float64 // share of global light that the ground throws back, 0 to 1
	Model  Model

	sinSlope, cosSlope     float64
	sinAzimuth, cosAzimuth float64
	leant                  float64   // cube of the sine of half the slope
	seen                   float64   // part of the plane's sky, weighted by cosine, that the skyline leaves free
	skyline                []float64 // sine of the skyline's height by whole degrees of azimuth, 361 long; nil if flat
}

// Light gives the light on the face at one moment.
func (f *Face) Light(at Moment, l Light) PlaneLight {
	return f.light(lookOf(at), l)
}

// modelNames are the words a person writes.
var modelNames = [...]string{"perez", "hay-davies", "hdkr", "isotropic", "iso52010"}

// String gives the model's word.
func (m Model) String() string { return modelNames[m] }

// ModelNamed gives the model of a word.
func ModelNamed(word string) (Model, error) {
	if i := slices.Index(modelNames[:], word); i >= 0 {
		return Model(i), nil
	}
	return 0, fmt.Errorf("sky model %q is not known: it is one of %s", word, strings.Join(modelNames[:], ", "))
}
