package light

import (
	"errors"
	"fmt"
	"math"

	"suffice/material"
	"suffice/quantity"
	"suffice/site/air"
	"suffice/site/sun"
)

// Outer is how a face trades heat with the air and the sky.
type Outer struct {
	Convection float64 // W/m2K in still air, or always where ByWind is 0
	ByWind     float64 // W/m2K more for each m/s of the record's wind; 4 + 4 v (iso6946 annex C, remembered) where the wind at the face is as the record's
	Emissivity float64 // for warmth, 0 to 1: 0.9 for most building faces
	Even       bool    // the sky is as cold near the skyline as overhead; false takes walton's square root
}

// A Face is an opaque outside face of a wall or a roof.
type Face struct {
	Plane       sun.Plane
	Absorptance float64 // for sunlight, 0 to 1
	Outer       Outer
}

// FaceHours is what the sky does to a face, hour by hour. Heat that flows into the face is
// Conductance times (Equivalent less the face's own temperature), W/m2. Equivalent is each hour's own, wind and
// radiation counted; Conductance is one for all hours, so that the house stays linear: behind insulation the
// face is as warm as Equivalent and nothing is lost by it.
type FaceHours struct {
	Conductance material.Transmittance // convection and radiation together, mean of all hours
	Equivalent  []float64              // degC: what the face would come to if nothing flowed through it
	Light       []float64              // W/m2, sun that arrives
}

// cold gives the share of the sky's own warmth, and not the air's, in what the face sees: the
// view (1 + cos slope)/2, of which the square root is as cold as overhead and the rest as warm as the air (walton). What is below the
// skyline is as warm as the air.
func (o Outer) cold(slope quantity.Degrees) float64 {
	view := (1 + math.Cos(float64(slope.Radians()))) / 2
	if o.Even {
		return view
	}
	return view * math.Sqrt(view)
}

func (o Outer) faults() error {
	var faults []error
	within := func(what string, v, low, high float64, unit string) {
		if !(v >= low && v <= high) {
			faults = append(faults, fmt.Errorf("light: %s of %s is outside %s to %s", what, quantity.Text(v, unit), quantity.Text(low, unit), quantity.Text(high, unit)))
		}
	}
	within("a face's convection", o.Convection, 0.1, 200, "W/m2K")
	within("a face's convection by wind (W/m2K for each m/s)", o.ByWind, 0, 20, "")
	within("a face's emissivity", o.Emissivity, 0, 1, "")
	return errors.Join(faults...)
}

// hour is what meets a face.
type hour struct {
	air        float64 // degC
	loss       float64 // W/m2 to the sky from a face as warm as the air
	absorbed   float64 // W/m2 of sun
	convection float64 // W/m2K
}

// steps of Newton for a face's own radiation, from a straight line at the air's warmth: the fourth leaves less than a
// thousandth of a kelvin even 100 K over the air.
const steps = 4

// meets gives one hour: the temperature to which a face would come by itself, degC, and its
// conductance there, W/m2K, exact for both the sky's radiation and the face's own.
func (o Outer) meets(h hour) (equivalent, conductance float64) {
	outside, gives := h.air+273.15, o.Emissivity*air.StefanBoltzmann
	warm, base := outside, gives*outside*outside*outside*outside
	for range steps {
		cube := gives * warm * warm * warm
		warm += (h.absorbed - h.loss - h.convection*(warm-outside) - (cube*warm - base)) / (h.convection + 4*cube)
	}
	return warm - 273.15, h.convection + gives*(warm*warm+outside*outside)*(warm+outside)
}

// Face gives the hours of an opaque face.
func (o *Outdoors) Face(f Face) (FaceHours, error) {
	if !(f.Absorptance >= 0 && f.Absorptance <= 1) {
		return FaceHours{}, errors.Join(f.Outer.faults(), fmt.Errorf("light: a face that takes up %g of the light is out of range: 0 to 1", f.Absorptance))
	}
	if err := f.Outer.faults(); err != nil {
		return FaceHours{}, err
	}
	light := o.Light(f.Plane)
	out := FaceHours{Equivalent: make([]float64, len(light)), Light: make([]float64, len(light))}
	for i := range light {
		out.Light[i] = float64(light[i].Total())
	}
	out.Conductance = o.outer(f.Outer, f.Plane.Slope, f.Absorptance, out.Light, out.Equivalent)
	return out, nil
}

// outer fills the equivalent temperature of a face that takes up a share of a column of light (nil is none), and
// gives the mean conductance.
func (o *Outdoors) outer(face Outer, slope quantity.Degrees, absorptance float64, light, equivalent []float64) material.Transmittance {
	cold := face.Emissivity * face.cold(slope)
	var whole float64
	for i, t := range o.Hours.Temperature {
		convection := face.Convection
		if face.ByWind > 0 {
			convection += face.ByWind * o.Hours.Wind[i]
		}
		loss := cold * (air.SkyLight(quantity.Celsius(t), 1) - o.Sky.Light[i])
		var conductance float64
		absorbed := 0.0
		if light != nil {
			absorbed = absorptance * light[i]
		}
		equivalent[i], conductance = face.meets(hour{t, loss, absorbed, convection})
		whole += conductance
	}
	return material.Transmittance(whole / float64(len(equivalent)))
}
