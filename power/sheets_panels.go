package power

import (
	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

func panelTemperature() sheet.Sheet {
	return sheet.Sheet{
		Name: "panel-temperature", Title: "How hot the cells of a panel get",
		Inputs: []sheet.Input{
			number("noct", "degC", "45degC", "cell temperature at 800 W/m2, 20 degC and 1 m/s, from the data sheet", 30, 70),
			number("ambient", "degC", "25degC", "air", -60, 60),
			number("light", "W/m2", "1000W/m2", "total on the panel", 0, 1500),
		},
		Sources:  []string{"iec61215: definition of the nominal operating cell temperature"},
		Cautions: []string{"Panels close to a roof run 10 K hotter than on an open rack; wind cools them."},
		Do: func(c *sheet.Calc) {
			noct, air, light := c.Number("noct"), c.Number("ambient"), c.Number("light")
			t := float64(CellTemperature(quantity.Celsius(noct), quantity.Celsius(air), quantity.Irradiance(light)))
			c.Step("cell temperature", "Ta + (NOCT - 20) G / 800", say("%g + (%g - 20) x %g / 800", air, noct, light), t, "degC")
			c.Result("temperature", t, "degC")
		},
	}
}

func panelString() sheet.Sheet {
	return sheet.Sheet{
		Name: "panel-string", Title: "Panels in series at the coldest dawn",
		Inputs: []sheet.Input{
			number("open_circuit_voltage", "V", "41V", "of one panel at standard conditions, from the data sheet", 1, 300),
			maybe(number("coefficient", "/K", "", "change of that voltage with temperature, as -0.28%/K; without it the code's table is used", -0.01, 0)),
			number("coldest", "degC", "-10degC", "coldest air on record at the place: at dawn no sun has warmed the cells", -60, 25),
			number("limit", "V", "150V", "largest voltage that the controller or inverter stands", 10, 2000),
			maybe(number("short_circuit_current", "A", "", "of one panel, for the current that cables and fuses are chosen for", 0.1, 50)),
		},
		Sources:  []string{"iec62548: largest voltage at the lowest expected temperature", "nec: table 690.7(A) (remembered), used without a coefficient", "nec: 690.8"},
		Cautions: []string{electricCaution, "A voltage above the limit destroys the controller at the first frosty dawn, often out of warranty."},
		Do:       doPanelString,
	}
}

func doPanelString(c *sheet.Calc) {
	s := String{OpenVoltage: c.Number("open_circuit_voltage")}
	coldest, limit := c.Number("coldest"), c.Number("limit")
	if c.Given("coefficient") {
		s.Coefficient = c.Number("coefficient")
	}
	v, ok := s.ColdVoltage(quantity.Celsius(coldest))
	switch {
	case !ok:
		c.Fail("coldest is %g degC: the code's table ends at -40 degC, so give the panel's coefficient", coldest)
		return
	case s.Coefficient == 0:
		c.Step("voltage of one panel in the cold", "Voc x factor of the table", say("%g x %g", s.OpenVoltage, v/s.OpenVoltage), v, "V")
	default:
		c.Step("voltage of one panel in the cold", "Voc (1 + beta (T - 25))", say("%g x (1 + %g x (%g - 25))", s.OpenVoltage, s.Coefficient, coldest), v, "V")
	}
	most := float64(MostInSeries(v, limit))
	c.Step("panels in series", "limit / voltage, rounded down", say("%g / %.4g", limit, v), most, "")
	c.Result("voltage", v, "V")
	c.Result("most_in_series", most, "")
	if c.Given("short_circuit_current") {
		s.ShortCurrent = c.Number("short_circuit_current")
		i := s.DesignCurrent()
		c.Step("current for cables and fuses", "1.25 x 1.25 x Isc", say("1.25 x 1.25 x %g", s.ShortCurrent), i, "A")
		c.Result("design_current", i, "A")
	}
	if most == 0 {
		c.Caution("Not even one such panel may be connected to this limit.")
	}
}

func panelHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "panel-hour", Title: "What panels give in an hour",
		Inputs: []sheet.Input{
			number("peak", "W", "2kW", "of the group at standard conditions", 0, 1e6),
			number("slope", "deg", "40deg", "of the panels, from level", 0, 90),
			number("cosine", "", "0.9", "of the angle between sun and the panels' normal", -1, 1),
			number("beam", "W/m2", "600W/m2", "on the panels, straight from the sun", 0, 1500),
			number("sky", "W/m2", "120W/m2", "on the panels, from the sky", 0, 1500),
			number("ground", "W/m2", "15W/m2", "on the panels, from the ground", 0, 1500),
			number("ambient", "degC", "20degC", "air", -60, 60),
			number("noct", "degC", "45degC", "nominal operating cell temperature", 30, 70),
			number("coefficient", "/K", "-0.4%/K", "change of power with cell temperature", -0.02, 0),
			fraction("soiling", "3%", "light lost to dirt"),
			fraction("mismatch", "1%", "power lost by unequal panels"),
			fraction("wiring", "2%", "power lost in cables"),
			fraction("ageing", "0%", "power lost in a year of age"),
			number("age", "years", "0years", "of the panels", 0, 60),
			fraction("snow", "0%", "share of the panels under snow"),
		},
		Sources:  []string{"desoto-2006: angle losses of the glass (remembered)", "brandemuehl-beckman-1980: angles of sky and ground light (remembered)", "iec61215: cell temperature"},
		Cautions: []string{electricCaution},
		Do:       doPanelHour,
	}
}

func doPanelHour(c *sheet.Calc) {
	a := Array{Peak: quantity.Watts(c.Number("peak")), Plane: sun.Plane{Slope: quantity.Degrees(c.Number("slope"))},
		NOCT: quantity.Celsius(c.Number("noct")), Coefficient: c.Number("coefficient"),
		Soiling: c.Number("soiling"), Mismatch: c.Number("mismatch"), Wiring: c.Number("wiring"), Ageing: c.Number("ageing"), Age: c.Number("age")}
	a.Prepare()
	l := sun.PlaneLight{Incidence: c.Number("cosine"), Beam: quantity.Irradiance(c.Number("beam")), Sky: quantity.Irradiance(c.Number("sky")), Ground: quantity.Irradiance(c.Number("ground"))}
	air, snow := quantity.Celsius(c.Number("ambient")), c.Number("snow")
	straight := angleShare(l.Incidence)
	c.Step("share of the beam that gets in at its angle", "tau(theta) / tau(0)", say("cos theta = %g", l.Incidence), straight, "fraction")
	light := c.Step("light in the cells", "beam x share + sky x share + ground x share",
		say("%g x %.4f + %g x %.4f + %g x %.4f", l.Beam, straight, l.Sky, a.sky, l.Ground, a.ground), float64(a.Absorbed(l)), "W/m2")
	cell := a.CellTemperature(air, l.Total())
	c.Step("cell temperature", "Ta + (NOCT - 20) G / 800", say("%g + (%g - 20) x %g / 800", air, a.NOCT, l.Total()), float64(cell), "degC")
	kept := c.Step("share left by dirt, mismatch, wiring and age", "(1 - s)(1 - m)(1 - w)(1 - a)^age",
		say("(1 - %g)(1 - %g)(1 - %g)(1 - %g)^%g", a.Soiling, a.Mismatch, a.Wiring, a.Ageing, a.Age), a.Kept(), "fraction")
	w := float64(a.Output(l, air))
	c.Step("power without snow", "peak x G/1000 x kept x (1 + gamma (Tc - 25))", say("%g x %.2f/1000 x %.4f x (1 + %g x (%.2f - 25))", a.Peak, light, kept, a.Coefficient, cell), w, "W")
	lost := w * snow
	w -= lost
	c.Step("power", "power without snow x (1 - snow)", say("x (1 - %g)", snow), w, "W")
	c.Result("power", w, "W")
	c.Result("snow_lost", lost, "W")
	c.Result("cell_temperature", float64(cell), "degC")
	c.Result("absorbed", light, "W/m2")
}
