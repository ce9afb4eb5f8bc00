package power

import (
	"math"

	"suffice/quantity"
	"suffice/site/sun"
)

// Usual values for an Array that is described by its peak power alone.
const (
	UsualNOCT        quantity.Celsius = 45     // common practice for open racks, no source; data sheets say 42 to 48
	UsualCoefficient float64          = -0.004 // per K; common practice for silicon, no source; -0.003 to -0.005
	UsualSoiling     float64          = 0.03   // common practice, no source; 0.02 to 0.05
	UsualMismatch    float64          = 0.01   // common practice, no source; 0.01 to 0.02
	UsualWiring      float64          = 0.02   // common practice, no source; 0.01 to 0.03
	UsualAgeing                       = 0.005  // per year; common practice for silicon, no source
)

// An Array is a group of equal panels that face the same way. It is read-only after Prepare.
type Array struct {
	Name        string
	Peak        quantity.Watts   // of the group, at 1000 W/m2, 25 degC cells, straight light
	Plane       sun.Plane        // slope and azimuth
	NOCT        quantity.Celsius // cell temperature at 800 W/m2, 20 degC, 1 m/s
	Coefficient float64          // change of power per kelvin of cell temperature, 1/K, negative
	Soiling     float64          // share of light lost to dirt, 0 to 1
	Mismatch    float64          // share of power lost by unequal panels, 0 to 1
	Wiring      float64          // share of power lost in cables up to the controller, 0 to 1
	Ageing      float64          // share of power lost per year of age
	Age         float64          // years; the age the array is judged at, half its life for a mean
	String      String           // how it is wired, for the design check alone

	sky, ground float64 // angle losses of the light from sky and ground: a share kept, 0 to 1
	factor      float64 // peak times the constant losses over 1000 W/m2, W per W/m2
	slide       float64 // share of the array that a sliding hour frees of snow
}

// Prepare works out what depends on the design alone. It must come before Output, Power or Fill.
func (a *Array) Prepare() {
	slope := float64(a.Plane.Slope)
	a.sky = angleShare(math.Cos(skyAngle(slope) * math.Pi / 180))
	a.ground = angleShare(math.Cos(groundAngle(slope) * math.Pi / 180))
	a.factor = float64(a.Peak) / 1000 * a.Kept()
	a.slide = slideShare(a.Plane.Slope)
}

// Kept gives the share of power left by dirt, mismatch, wiring and age: losses one after
// another multiply, they do not add.
func (a *Array) Kept() float64 {
	return (1 - a.Soiling) * (1 - a.Mismatch) * (1 - a.Wiring) * math.Pow(1-a.Ageing, a.Age)
}

// Absorbed gives the light that reaches the cells, W/m2, counted as straight light: each part
// less what the glass throws back at its angle.
func (a *Array) Absorbed(l sun.PlaneLight) quantity.Irradiance {
	light := float64(l.Sky)*a.sky + float64(l.Ground)*a.ground
	if l.Beam > 0 {
		light += float64(l.Beam) * angleShare(l.Incidence)
	}
	return quantity.Irradiance(light)
}

// CellTemperature gives the temperature of cells in light on an open rack.
func (a *Array) CellTemperature(ambient quantity.Celsius, light quantity.Irradiance) quantity.Celsius {
	return CellTemperature(a.NOCT, ambient, light)
}

// CellTemperature gives the temperature of cells from the nominal operating cell
// temperature, which is measured at 800 W/m2, 20 degC and 1 m/s [iec61215].
func CellTemperature(noct, ambient quantity.Celsius, light quantity.Irradiance) quantity.Celsius {
	return ambient + (noct-20)*quantity.Celsius(light)/800
}

// Power gives direct current power at the controller's input from light in the cells and
// their temperature, with no snow and the controller at the point of most power. Never below
// zero: cells hot enough for that (125 degC with the steepest coefficient) would give nothing.
func (a *Array) Power(absorbed quantity.Irradiance, cell quantity.Celsius) quantity.Watts {
	return quantity.Watts(a.factor * float64(absorbed) * max(0, 1+a.Coefficient*float64(cell-25)))
}

// Output gives direct current power at the controller's input from light on the plane and
// the air's temperature, with no snow. Zero in the dark.
func (a *Array) Output(l sun.PlaneLight, ambient quantity.Celsius) quantity.Watts {
	total := l.Total()
	if total <= 0 {
		return 0
	}
	return a.Power(a.Absorbed(l), a.CellTemperature(ambient, total))
}

// A Column is what one array gives in every hour of a record.
type Column struct {
	Watts     []float64          // W at the controller's input, mean of the hour
	SnowLost  quantity.WattHours // what snow on the panels kept away, over all hours
	SnowHours int                // sunlit hours in which it kept something away
}

// Fill makes the array's column: light on its plane, air temperature (degC) and precipitation
// (mm in the hour, snow as water; nil where the record has none, then no snow lies).
// It depends on weather and design only, so it is done once before the hour loop. Memory
// of c is reused if it is long enough.
func (a *Array) Fill(c *Column, light []sun.PlaneLight, temperature, precipitation []float64) {
	if cap(c.Watts) < len(light) {
		c.Watts = make([]float64, len(light))
	}
	*c = Column{Watts: c.Watts[:len(light)]}
	var snow SnowState
	for i := range light {
		t := quantity.Celsius(temperature[i])
		w := float64(a.Output(light[i], t))
		if precipitation != nil {
			covered := a.snow(&snow, float64(light[i].Total()), temperature[i], precipitation[i])
			if lost := w * covered; lost > 0 {
				w -= lost
				c.SnowLost += quantity.WattHours(lost)
				c.SnowHours++
			}
		}
		c.Watts[i] = w
	}
}
