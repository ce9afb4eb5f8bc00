package power

import (
	"fmt"
	"math"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

func cable() sheet.Sheet {
	return sheet.Sheet{
		Name: "cable", Title: "Voltage lost in a direct-current cable",
		Inputs: []sheet.Input{
			number("current", "A", "20A", "carried", 0, 1e5),
			number("length", "m", "10m", "of the way; out and back is twice this", 0, 1e4),
			number("area", "mm2", "10mm2", "cross-section of one conductor", 0.05, 1000),
			number("voltage", "V", "24V", "of the circuit", 1, 2000),
			{Name: "material", Kind: sheet.Text, Default: "copper", Choices: []string{"copper", "aluminium"}, Meaning: "of the conductors"},
		},
		Sources:  []string{"iec60364-5-52: annex G, resistivity in normal service (remembered)"},
		Cautions: []string{electricCaution, "A cable that loses little voltage may still be too thin to carry its current without fire: heating, fuses and breakers are sized by code."},
		Do: func(c *sheet.Calc) {
			metal := Copper
			if c.Text("material") == "aluminium" {
				metal = Aluminium
			}
			i, l, a, v := c.Number("current"), c.Number("length"), c.Number("area"), c.Number("voltage")
			drop := CableDrop(i, l, a, metal)
			c.Step("voltage lost", "2 L rho I / A", say("2 x %g x %g x %g / %g", l, Resistivity(metal), i, a), drop, "V")
			share := c.Step("share of the voltage", "drop / voltage", say("%.4g / %g", drop, v), drop/v*100, "%")
			c.Result("drop", drop, "V")
			c.Result("share", share, "%")
			if share > 3 {
				c.Caution("More than 3 % is lost: common practice between panels, battery and inverter is to stay below.")
			}
			if drop > v {
				c.Fail("the cable would lose %.4g V of %g V: such a current cannot flow; choose a thicker or shorter cable", drop, v)
			}
		},
	}
}

func inverterSize() sheet.Sheet {
	return sheet.Sheet{
		Name: "inverter-size", Title: "Size of an inverter for its loads",
		Inputs: []sheet.Input{
			{Name: "loads", Kind: sheet.Text, Default: "800:3,120:5,60:1,1200:1", Meaning: "watts:starting factor, one for each; a factor of 1 where nothing starts hard"},
			number("simultaneous", "fraction", "100%", "share of the loads' power that runs at once", 0.01, 1),
		},
		Cautions: []string{"What runs at once, and the largest start on top of it, is common practice, no source.", electricCaution, "Starting factors of motors run from 3 to 7; measure, or ask the maker."},
		Do: func(c *sheet.Calc) {
			loads, err := readLoads(c.Text("loads"))
			if err != nil {
				c.Fail("loads: %v", err)
				return
			}
			share := c.Number("simultaneous")
			running, starting := StartingPower(loads)
			var terms []string
			for _, l := range loads {
				terms = append(terms, quantity.Text(float64(l.Power), ""))
			}
			continuous := c.Step("continuous", "share x sum of powers", say("%g x (%s)", share, strings.Join(terms, " + ")), share*float64(running), "W")
			extra := float64(starting - running)
			most := c.Step("with the largest start", "continuous + largest power x (factor - 1)", say("%g + %g", continuous, extra), continuous+extra, "W")
			c.Result("continuous", continuous, "W")
			c.Result("starting", most, "W")
		},
	}
}

// readLoads reads "800:3,120:5": watts and starting factor. A bare number is in watts, as the
// input's meaning says; "0.8kW:3" serves too.
func readLoads(text string) ([]Load, error) {
	var loads []Load
	for part := range strings.SplitSeq(text, ",") {
		watts, factor, both := strings.Cut(strings.TrimSpace(part), ":")
		q, err := quantity.Parse(watts)
		w := q.Value
		if err == nil && q.Unit.String() != "" {
			w, err = q.In("W")
		}
		if err != nil {
			return nil, fmt.Errorf("%q: %w", part, err)
		}
		f := 1.0
		if both {
			if f, err = quantity.ReadIn(factor, ""); err != nil {
				return nil, fmt.Errorf("%q: %w", part, err)
			}
		}
		if !(w > 0 && w <= 1e6) || !(f >= 1 && f <= 20) {
			return nil, fmt.Errorf("%q: power is above 0 and at most 1 MW, a starting factor from 1 to 20", part)
		}
		loads = append(loads, Load{Power: quantity.Watts(w), Starting: quantity.Watts(w * f)})
	}
	return loads, nil
}

func inverterHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "inverter-hour", Title: "What an inverter carries in an hour, and who gets it",
		Inputs: []sheet.Input{
			number("continuous", "W", "3kW", "largest power without end", 1, 1e6),
			number("idle", "W", "15W", "drawn with no load", 0, 1e4),
			number("peak_efficiency", "fraction", "94%", "at its best load", 0.2, 0.9999),
			number("full_load_efficiency", "fraction", "90%", "at its continuous power", 0.2, 0.9999),
			number("supply", "W", "2kW", "of direct current that sun and battery can give", 0, 1e7),
			number("services", "W", "85W", "wanted by pumps and treatment", 0, 1e6),
			number("must", "W", "600W", "wanted by what must run", 0, 1e6),
			number("should", "W", "400W", "wanted by what should run", 0, 1e6),
			number("could", "W", "0W", "wanted by what could run, where it is let in", 0, 1e6),
		},
		Sources:  []string{"schmidt-sauer-1996: loss as a quadratic in the load (the form remembered)"},
		Cautions: []string{electricCaution},
		Do:       doInverterHour,
	}
}

func doInverterHour(c *sheet.Calc) {
	y := System{Inverter: Inverter{Continuous: quantity.Watts(c.Number("continuous")), Idle: quantity.Watts(c.Number("idle")),
		PeakEfficiency: c.Number("peak_efficiency"), FullLoadEfficiency: c.Number("full_load_efficiency")}}
	v := &y.Inverter
	if err := v.Prepare(); err != nil {
		c.Fail("%v", err)
		return
	}
	idle, straight, square := v.LossCurve()
	c.Step("loss in proportion to the load", "1/eta full - 1 - p0 - r", say("1/%g - 1 - %.5g - %.5g", v.FullLoadEfficiency, idle, square), straight, "fraction")
	c.Step("loss with the square of the load", "(sqrt p0 + sqrt(1/eta full - 1/eta peak))^2", say("(sqrt %.5g + sqrt(1/%g - 1/%g))^2", idle, v.FullLoadEfficiency, v.PeakEfficiency), square, "fraction")
	wants := Wants{Now: [Needs]quantity.WattHours{quantity.WattHours(c.Number("must")), quantity.WattHours(c.Number("should")), quantity.WattHours(c.Number("could"))}}
	in := SystemIn{Wants: &wants}
	services, must := c.Number("services"), float64(wants.Now[Must])
	asked := services + must
	asked += float64(wants.Now[Should] + (wants.Now[Could] + in.HotWater))
	c.Step("asked", "services + must + should + could", say("%g + %g + %g + %g", services, must, wants.Now[Should], wants.Now[Could]), asked, "W")
	got := v.carry(asked, c.Number("supply"))
	c.Step("carried", "the least of asked, continuous, and what the supply covers", say("%g, %g, %.6g", asked, v.Continuous, v.Most(c.Number("supply"))), got.load, "W")
	c.Step("drawn", "idle + (1 + v) P + r P2 / continuous; the supply where that is less", say("%g + %.6g x %.6g + %.6g x %.6g^2", v.Idle, v.straight, got.load, v.square, got.load), got.drawn, "W")
	out := SystemOut{ServiceShare: 1}
	y.share(&in, sharing{services, must, math.Inf(1)}, got.load, got.load == asked, &out)
	c.Result("load", got.load, "W")
	c.Result("drawn", got.drawn, "W")
	c.Result("loss", got.drawn-got.load, "W")
	c.Result("services", services-float64(out.ServiceShort), "W")
	for n := range Needs {
		c.Result(n.String(), float64(out.Met[n]), "W")
	}
	c.Result("short", float64(out.ServiceShort+out.Short[Must]+out.Short[Should]+out.Short[Could]), "W")
}
