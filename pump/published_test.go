package pump

import (
	"math"
	"testing"

	"suffice/internal/check"
)

// Oil, 900 kg/m3 and 1e-5 m2/s, 0.2 m3/s through 500 m of 200 mm cast iron, 0.26 mm rough.
func TestOilThroughCastIron(t *testing.T) {
	oil := flowing{density: 900, viscosity: 900 * 1e-5}
	p := Pipe{Length: 500, Bore: 200, Roughness: 0.26}
	v := 0.2 / (math.Pi / 4 * 0.2 * 0.2)
	reynolds := oil.density * v * 0.2 / oil.viscosity
	check.That(t, v, check.Published{Source: "white-fluids", At: "example 6.7, speed", Value: "6.4", Unit: "m/s"})
	check.That(t, reynolds, check.Published{Source: "white-fluids", At: "example 6.7, Reynolds number", Value: "128000", Unit: "",
		Within: 700, Why: "the example goes on with the rounded speed"})
	check.That(t, FrictionFactor(reynolds, 0.0013), check.Published{Source: "white-fluids", At: "example 6.7, friction factor read off the Moody chart", Value: "0.0225", Unit: "",
		Within: 0.00025, Why: "read off a chart by eye, 1 %; Colebrook's equation, which the chart draws, gives 0.0227"})
	check.That(t, p.loss(0.2, oil), check.Published{Source: "white-fluids", At: "example 6.7, head loss", Value: "117", Unit: "m",
		Within: 1.3, Why: "the example rounds the speed to 6.4 m/s, 0.5 % more than 6.37, and squares it", Standing: "remembered"})
}

// Water at 60 degF, 0.2 ft3/s through 200 ft of 2 in stainless pipe, 7e-6 ft rough, horizontal.
func TestWaterThroughSteel(t *testing.T) {
	const foot, pound = 0.3048, 0.45359237
	w := flowing{density: 62.36 * pound / (foot * foot * foot), viscosity: 7.536e-4 * pound / foot}
	p := Pipe{Length: 200 * foot, Bore: 2 * 25.4, Roughness: 7e-6 * foot * 1000}
	q := 0.2 * foot * foot * foot
	d := float64(p.Bore) / 1000
	reynolds := w.density * q / (math.Pi / 4 * d * d) * d / w.viscosity
	check.That(t, reynolds, check.Published{Source: "cengel-fluids", At: "example 8-3, Reynolds number", Value: "126400", Unit: "",
		Within: 100, Why: "the example rounds the speed to 9.17 ft/s"})
	check.That(t, FrictionFactor(reynolds, 0.000042), check.Published{Source: "cengel-fluids", At: "example 8-3, friction factor by Colebrook", Value: "0.0174", Unit: "", Standing: "remembered"})
	check.That(t, p.loss(q, w)/foot, check.Published{Source: "cengel-fluids", At: "example 8-3, head loss", Value: "27.3", Unit: "ft", Standing: "remembered"})
	check.That(t, waterPower(w.density, q, p.loss(q, w)), check.Published{Source: "cengel-fluids", At: "example 8-3, power put into the water", Value: "461", Unit: "W",
		Within: 1.5, Why: "the example goes on with the rounded pressure of 1700 lbf/ft2 and 0.737 lbf ft/s for a watt", Standing: "remembered"})
}

// A shaft of 10 kW lifts 25 L/s of water by 25 m and loses 5 m on the way.
func TestPumpEfficiency(t *testing.T) {
	power := waterPower(1000, 0.025, 30)
	check.That(t, power/1000, check.Published{Source: "pump-exercises", At: "situation 3, power put into the water", Value: "7.36", Unit: "kW",
		Within: 0.006, Why: "worked with 9.81 m/s2"})
	check.That(t, 100*power/10000, check.Published{Source: "pump-exercises", At: "situation 3, efficiency", Value: "73.58", Unit: "%",
		Within: 0.04, Why: "worked with 9.81 m/s2"})
}

func TestMoodyChart(t *testing.T) {
	check.That(t, FrictionFactor(1e5, 0.001), check.Published{Source: "moody-chart", At: "Re 1e5, relative roughness 0.001", Value: "0.0222", Unit: "", Standing: "remembered"})
	check.That(t, FrictionFactor(1e8, 0.001), check.Published{Source: "moody-chart", At: "fully rough, relative roughness 0.001", Value: "0.0196", Unit: "", Standing: "remembered"})
	check.That(t, FrictionFactor(1e8, 0.01), check.Published{Source: "moody-chart", At: "fully rough, relative roughness 0.01", Value: "0.0379", Unit: "", Standing: "remembered"})
	check.That(t, FrictionFactor(1e8, 0.05), check.Published{Source: "moody-chart", At: "fully rough, relative roughness 0.05", Value: "0.0716", Unit: "", Standing: "remembered"})
	check.That(t, FrictionFactor(1e5, 0), check.Published{Source: "moody-chart", At: "Re 1e5, smooth", Value: "0.018", Unit: "", Standing: "remembered"})
	check.That(t, FrictionFactor(1000, 0.01), check.Published{Source: "moody-chart", At: "Re 1000, any roughness", Value: "0.064", Unit: "", Standing: "remembered"})
}

func TestWaterTables(t *testing.T) {
	check.That(t, densityOfWater(0), check.Published{Source: "tanaka-density", At: "density at 0 degC", Value: "999.8428", Unit: "kg/m3",
		Within: 0.004, Why: "a later determination; the older formula is good to 0.01"})
	check.That(t, densityOfWater(20), check.Published{Source: "tanaka-density", At: "density at 20 degC", Value: "998.2067", Unit: "kg/m3",
		Within: 0.004, Why: "a later determination; the older formula is good to 0.01"})
	check.That(t, densityOfWater(30), check.Published{Source: "tanaka-density", At: "density at 30 degC", Value: "995.6488", Unit: "kg/m3",
		Within: 0.004, Why: "a later determination; the older formula is good to 0.01"})
	check.That(t, viscosityOfWater(0)*1e3, check.Published{Source: "vogel-viscosity", At: "SI table, 0 degC", Value: "1.787", Unit: "mPa s",
		Within: 0.045, Why: "2.5 % is what Vogel's equation claims"})
	check.That(t, viscosityOfWater(10)*1e3, check.Published{Source: "vogel-viscosity", At: "SI table, 10 degC", Value: "1.307", Unit: "mPa s",
		Within: 0.033, Why: "2.5 % is what Vogel's equation claims"})
	check.That(t, viscosityOfWater(20)*1e3, check.Published{Source: "vogel-viscosity", At: "SI table, 20 degC", Value: "1.002", Unit: "mPa s",
		Within: 0.025, Why: "2.5 % is what Vogel's equation claims"})
	check.That(t, viscosityOfWater(80)*1e3, check.Published{Source: "vogel-viscosity", At: "SI table, 80 degC", Value: "0.355", Unit: "mPa s",
		Within: 0.009, Why: "2.5 % is what Vogel's equation claims"})
}
