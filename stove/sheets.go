package stove

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{woodSheet(), hourSheet()} }

func input(name, unit, usual, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: usual, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high)}
}

// fireInputs are those of wood and stove.
func fireInputs() []sheet.Input {
	return []sheet.Input{
		input("moisture", "fraction", "20 %", "share of the wood's weight that is water: 15 to 20 % after two years under a roof, 50 % fresh", 0, MostMoisture),
		input("dry", "kWh/kg", "5.139 kWh/kg", "net heating value without water: 18.5 MJ/kg for broad-leaved trees, 19 for conifers", 4, 7),
		input("efficiency", "fraction", "70 %", "share that stays in the room (common practice, no source: 65 to 80 % for a closed stove, 10 to 30 % for an open fire)", 0.05, 1),
	}
}

func sources() []string {
	return []string{"wood-fuels: heating value by moisture", "iso17225-1: what wood is made of, for its air (from memory)", "en13240: oxygen left in the flue gas (from memory)"}
}

func woodOf(c *sheet.Calc) Wood { return Wood{Dry: c.Number("dry"), Moisture: c.Number("moisture")} }

func woodSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "firewood", Title: "Wood for a heat, and the air that burning it takes",
		Inputs: append([]sheet.Input{
			input("heat", "kWh", "1000 kWh", "wanted in the room", 0, 1e6),
			input("stacked", "kg/m3", "400 kg/m3", "of the stack as it stands, gaps and water included: 300 for spruce, 450 for beech (common practice, no source)", 50, 1000),
		}, fireInputs()...),
		Sources:  sources(),
		Cautions: Cautions(),
		Do: func(c *sheet.Calc) {
			w := woodOf(c)
			holds := c.Step("a kilogram holds", "dry (1 - M) - 2.44/3.6 M", fmt.Sprintf("%.4g (1 - %.3g) - 0.678 x %.3g", w.Dry, w.Moisture, w.Moisture), float64(w.Holds())/1000, "kWh/kg")
			kg := c.Step("wood", "heat/(efficiency x holds)", fmt.Sprintf("%.5g/(%.3g x %.4g)", c.Number("heat"), c.Number("efficiency"), holds), c.Number("heat")/(c.Number("efficiency")*holds), "kg")
			c.Result("heating_value", holds, "kWh/kg")
			c.Result("wood", kg, "kg")
			c.Result("stack", kg/c.Number("stacked"), "m3")
			c.Result("air", kg*w.Draws(), "m3")
			if w.Moisture > 0.25 {
				c.Caution("Wood as wet as this smokes and tars the flue: let it dry to 20 % or less.")
			}
		},
	}
}

func hourSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "stove-hour", Title: "A wood stove in one hour",
		Inputs: append([]sheet.Input{
			input("burns", "kg/h", "1.5 kg/h", "at full fire", 0, 100), input("least", "kg/h", "0.5 kg/h", "the smallest fire that burns clean", 0, 100),
			input("radiant", "fraction", "60 %", "share that goes to the faces and not to the air", 0, 1),
			input("below", "degC", "18 degC", "air of the room under which it is lit", -40, 60), input("until", "degC", "20 degC", "to which people bring the room", -40, 60),
			input("room", "degC", "16 degC", "its air as the hour begins", -90, 120), input("outside", "degC", "2 degC", "the air outside", -90, 60),
			input("kelvin", "W/K", "600 W/K", "heat that warms the room's air by a kelvin in an hour", 0, 1e6),
			input("carries", "J/m3K", "1200 J/m3K", "the room's air", 0, 2000),
			{Name: "lit", Kind: sheet.Text, Default: "no", Choices: []string{"yes", "no"}, Meaning: "it burns as the hour begins"},
			{Name: "watched", Kind: sheet.Text, Default: "yes", Choices: []string{"yes", "no"}, Meaning: "somebody is at home and awake"},
			{Name: "air", Kind: sheet.Text, Default: "outside", Choices: []string{"outside", "room"}, Meaning: "from where the fire has its air: by a pipe of its own, or out of the room"},
		}, fireInputs()...),
		Sources:  sources(),
		Cautions: Cautions(),
		Do:       workHour,
	}
}

func workHour(c *sheet.Calc) {
	v := Stove{Burns: quantity.Kilograms(c.Number("burns")), Least: quantity.Kilograms(c.Number("least")), Wood: woodOf(c), Efficiency: c.Number("efficiency"),
		Radiant: c.Number("radiant"), RoomAir: c.Text("air") == "room", Rule: Rule{Below: quantity.Celsius(c.Number("below")), Until: quantity.Celsius(c.Number("until"))}}
	if err := v.Faults(); err != nil {
		c.Fail("%v", err)
		return
	}
	v.Rule.Hours[0] = true
	in := In{Room: quantity.Celsius(c.Number("room")), Outside: quantity.Celsius(c.Number("outside")), Home: c.Text("watched") == "yes",
		Kelvin: quantity.Watts(c.Number("kelvin")), Carries: c.Number("carries")}
	s := State{Lit: c.Text("lit") == "yes"}
	var out Out
	v.Step(&s, &in, &out)
	if s.Lit {
		c.Step("wood laid on", "(until - room) kelvin/(efficiency x a kilogram), from the least to a full fire",
			fmt.Sprintf("(%.5g - %.5g) x %.5g/(%.3g x %.5g)", float64(v.Rule.Until), float64(in.Room), float64(in.Kelvin), v.Efficiency, float64(v.Wood.Holds())), float64(out.Wood), "kg")
		c.Step("stays in the room", "efficiency x wood x a kilogram", fmt.Sprintf("%.3g x %.5g x %.5g", v.Efficiency, float64(out.Wood), float64(v.Wood.Holds())), float64(out.Air+out.Faces), "W")
	}
	if out.Draught != 0 {
		c.Step("taken by the fire's air", "air carries (room - outside)/3600", fmt.Sprintf("%.5g x %.5g (%.5g - %.5g)/3600", out.Drawn, in.Carries, float64(in.Room), float64(in.Outside)), float64(out.Draught), "W")
	}
	c.ResultText("lit_after", yes(s.Lit))
	c.Result("wood", float64(out.Wood), "kg")
	c.Result("fuel", float64(out.Fuel), "W")
	c.Result("to_air", float64(out.Air), "W")
	c.Result("to_faces", float64(out.Faces), "W")
	c.Result("flue", float64(out.Flue), "W")
	c.Result("air_drawn", out.Drawn, "m3")
	c.Result("draught", float64(out.Draught), "W")
}

// Tell gives the inputs with which the sheet stove-hour works an hour again, to the last bit.
func (v *Stove) Tell(before State, in *In) map[string]sheet.Value {
	air := "outside"
	if v.RoomAir {
		air = "room"
	}
	values := map[string]sheet.Value{}
	for name, word := range map[string]string{"lit": yes(before.Lit), "watched": yes(in.Home && v.Rule.Hours[in.Hour]), "air": air} {
		values[name] = sheet.Value{Kind: sheet.Text, Text: word}
	}
	for name, n := range map[string]float64{
		"burns": float64(v.Burns), "least": float64(v.Least), "moisture": v.Wood.Moisture, "dry": v.Wood.Dry, "efficiency": v.Efficiency, "radiant": v.Radiant,
		"below": float64(v.Rule.Below), "until": float64(v.Rule.Until), "room": float64(in.Room), "outside": float64(in.Outside), "kelvin": float64(in.Kelvin), "carries": in.Carries,
	} {
		values[name] = sheet.Value{Kind: sheet.Number, Number: n}
	}
	return values
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
