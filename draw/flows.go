package draw

import (
	"math"
	"slices"

	"suffice/draw/canvas"
	"suffice/power"
	"suffice/report"
)

// places gives every end of a flow its look: losses fall away hatched, what is used keeps its ink.
var places = map[string]Place{
	"roofs": {Ink: canvas.Water}, "road": {Ink: canvas.Text}, "tanks": {Ink: canvas.Water, Hatch: canvas.Level},
	"air": {Ink: canvas.Lost, Hatch: canvas.Falling}, "past the gutters": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"first flush": {Ink: canvas.Lost, Hatch: canvas.Falling}, "overflow": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"leak": {Ink: canvas.Lost, Hatch: canvas.Falling}, "backwash": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"drinking": {Ink: canvas.Water}, "washing": {Ink: canvas.Water}, "flushing": {Ink: canvas.Water}, "outdoor": {Ink: canvas.Plant},
	"panels": {Ink: canvas.Sun}, "generator": {Ink: canvas.Heat}, "curtailed": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"controller loss": {Ink: canvas.Lost, Hatch: canvas.Falling}, "charger loss": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"gathered": {Ink: canvas.Sun}, "battery": {Ink: canvas.Power, Hatch: canvas.Upright}, "battery loss": {Ink: canvas.Lost, Hatch: canvas.Falling},
	"house": {Ink: canvas.Power}, "inverter loss": {Ink: canvas.Lost, Hatch: canvas.Falling}, "water works and solar pump": {Ink: canvas.Power},
	"must": {Ink: canvas.Power}, "should": {Ink: canvas.Power}, "could": {Ink: canvas.Power}, "hot water element": {Ink: canvas.Heat},
	"tasks made up for": {Ink: canvas.Power},
	"collector":         {Ink: canvas.Sun}, "gas": {Ink: canvas.Heat, Hatch: canvas.Rising}, "element": {Ink: canvas.Power}, "hot water": {Ink: canvas.Heat},
	"taps": {Ink: canvas.Heat}, "room": {Ink: canvas.Lost, Hatch: canvas.Falling}, "frost protection": {Ink: canvas.Lost, Hatch: canvas.Falling},
}

// named gives the places of some bands with their words.
func named(bands []Band, say Sentences) map[string]Place {
	list := map[string]Place{}
	for _, b := range bands {
		for _, name := range [2]string{b.From, b.To} {
			p := places[name]
			p.Says = say.Say("place." + name)
			list[name] = p
		}
	}
	return list
}

// litres writes a volume of a year.
func litres(v float64) string {
	if math.Abs(v) >= 999.5 {
		return figures(v/1000) + gap + "kL"
	}
	return figures(v) + gap + "L"
}

func kilowattHours(v float64) string { return figures(v) + gap + "kWh" }

// total adds the flows into or out of a place.
func total(bands []Band, ends func(b Band) bool) float64 {
	sum := 0.0
	for _, b := range bands {
		if ends(b) {
			sum += b.Amount
		}
	}
	return sum
}

func out(bands []Band, from, to string) float64 {
	return total(bands, func(b Band) bool { return (from == "" || b.From == from) && (to == "" || b.To == to) })
}

// FlowOfWater shows a mean year of the water from rain to its first use; what becomes of it then is WayOfWater's.
func FlowOfWater(p *report.Proof, say Sentences) Picture {
	bands := waterBands(p)
	used := 0.0
	for _, use := range [4]string{"drinking", "washing", "flushing", "outdoor"} {
		used += out(bands, "tanks", use)
	}
	summary := say.Say("flow.water.summary", "fell", litres(out(bands, "roofs", "")), "caught", litres(out(bands, "roofs", "tanks")),
		"used", litres(used), "spilled", litres(out(bands, "tanks", "overflow")))
	if road := out(bands, "road", ""); road > 0 {
		summary += " " + say.Say("flow.water.road", "road", litres(road))
	}
	short := 0.0
	for _, v := range p.Stated.Totals.Short {
		short += float64(v)
	}
	if short > 0 {
		summary += " " + say.Say("flow.water.short", "short", litres(short/float64(p.Years())))
	}
	return Flow(FlowChart{About: About{"flow-water", say.Say("flow.water.title"), say.Say("flow.litres"), summary},
		Bands: bands, Places: named(bands, say), Write: litres,
		Headers: [3]string{say.Say("flow.head.from"), say.Say("flow.head.to"), say.Say("flow.head.litres")}})
}

// firstUse is where the water of the first use comes from.
var firstUse = []string{"roofs", "road", "tanks"}

func waterBands(p *report.Proof) (bands []Band) {
	for _, f := range p.Flows() {
		if f.Unit == "L" && slices.Contains(firstUse, f.From) {
			bands = append(bands, Band{f.From, f.To, f.PerYear})
		}
	}
	return bands
}

// FlowOfPower shows a mean year of the power from panels to use. What passes the battery is
// drawn beside what does not.
func FlowOfPower(p *report.Proof, say Sentences) Picture {
	bands := powerBands(p)
	lost := 0.0
	for _, place := range [4]string{"controller loss", "charger loss", "battery loss", "inverter loss"} {
		lost += out(bands, "", place)
	}
	t, years := &p.Stated.Totals, float64(p.Years())
	summary := say.Say("flow.power.summary", "panels", kilowattHours(out(bands, "panels", "")), "curtailed", kilowattHours(out(bands, "panels", "curtailed")),
		"used", kilowattHours(float64(t.Power.Delivered)/1000/years), "lost", kilowattHours(lost))
	if generator := out(bands, "generator", ""); generator > 0 {
		summary += " " + say.Say("flow.power.generator", "generator", kilowattHours(generator))
	}
	if short := float64(t.Power.ServiceShort + t.Power.Short[power.Must]); short > 0 {
		summary += " " + say.Say("flow.power.short", "short", kilowattHours(short/1000/years))
	}
	if short := float64(t.Power.Short[power.Should] + t.Power.Short[power.Could]); short > 0 {
		summary += " " + say.Say("flow.power.waived", "short", kilowattHours(short/1000/years))
	}
	return energyFlow("power", summary, bands, say)
}

func energyFlow(what, summary string, bands []Band, say Sentences) Picture {
	return Flow(FlowChart{About: About{"flow-" + what, say.Say("flow." + what + ".title"), say.Say("flow.kwh"), summary},
		Bands: bands, Places: named(bands, say), Write: kilowattHours,
		Headers: [3]string{say.Say("flow.head.from"), say.Say("flow.head.to"), say.Say("flow.head.kwh")}})
}

// powerBands parts the bus into what was gathered and what the house draws, since what goes into the
// battery and out again would lead in a circle.
func powerBands(p *report.Proof) []Band {
	var bands []Band
	for _, f := range p.Flows() {
		if f.Unit != "kWh" {
			continue
		}
		b := Band{f.From, f.To, f.PerYear}
		switch {
		case b.From == "panels" || b.From == "generator":
			if b.To == "bus" {
				b.To = "gathered"
			}
		case b.From == "bus" && b.To == "battery":
			b.From = "gathered"
		case b.From == "battery" && b.To == "bus":
			b.To = "house"
		case b.From == "battery":
		case b.From == "bus" || b.From == "inverter":
			b.From = "house"
		default:
			continue
		}
		bands = append(bands, b)
	}
	if straight := out(bands, "", "gathered") - out(bands, "gathered", "battery"); straight > 0 {
		bands = append(bands, Band{"gathered", "house", straight})
	}
	return bands
}

// FlowOfHeat shows a mean year of the hot water's warmth.
func FlowOfHeat(p *report.Proof, say Sentences) Picture {
	bands := heatBands(p)
	came, solar := out(bands, "", "hot water"), out(bands, "collector", "hot water")
	share := 0.0
	if came > 0 {
		share = solar / came
	}
	return energyFlow("heat", say.Say("flow.heat.summary", "came", kilowattHours(came), "solar", kilowattHours(solar),
		"share", percent(share), "taps", kilowattHours(out(bands, "hot water", "taps"))), bands, say)
}

func heatBands(p *report.Proof) (bands []Band) {
	for _, f := range p.Flows() {
		if f.Unit == "kWh" && (f.From == "hot water" || f.To == "hot water") {
			bands = append(bands, Band{f.From, f.To, f.PerYear})
		}
	}
	return bands
}

// UseOfWater compares what water is used for.
func UseOfWater(p *report.Proof, say Sentences) Picture {
	d := BarChart{Headers: [2]string{say.Say("use.head"), say.Say("use.head.amount")}}
	days := float64(len(p.Stated.Days))
	sum, most := 0.0, Bar{}
	for i, use := range [4]string{"drinking", "washing", "flushing", "outdoor"} {
		b := Bar{Says: say.Say("use." + use), Amount: float64(p.Stated.Totals.Served[i]) / days, Ink: canvas.Water}
		sum += b.Amount
		if b.Amount > most.Amount {
			most = b
		}
		if b.Amount > 0 {
			d.Bars = append(d.Bars, b)
		}
	}
	share := 0.0
	if sum > 0 {
		share = most.Amount / sum
	}
	d.About = About{"use-water", say.Say("use.title"), say.Say("use.unit"),
		say.Say("use.summary", "total", number(sum, 0), "most", most.Says, "share", percent(share))}
	return Bars(d)
}
