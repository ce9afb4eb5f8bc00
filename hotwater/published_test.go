package hotwater

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site/sun"
)

func TestCollectorEfficiency(t *testing.T) {
	c := Collector{Eta0: 0.80, A1: 3.5, A2: 0.015}
	check.That(t, c.Efficiency(1000, 0), check.Published{Source: "iso9806", At: "steady-state efficiency, eta0 0.80, a1 3.5, a2 0.015, 1000 W/m2, 0 K", Value: "0.800", Unit: "fraction", Standing: "own"})
	check.That(t, c.Efficiency(1000, 40), check.Published{Source: "iso9806", At: "the same at 40 K", Value: "0.636", Unit: "fraction", Standing: "own"})
	check.That(t, c.Efficiency(800, 50), check.Published{Source: "iso9806", At: "the same at 800 W/m2 and 50 K", Value: "0.534", Unit: "fraction", Standing: "own"})
	check.That(t, float64(c.Stagnation(0.80*1000)), check.Published{Source: "iso9806", At: "no heat at 1000 W/m2: excess over the air", Value: "142", Unit: "K", Standing: "own"})
}

// b0 of 0.1 is a flat plate of one pane; its modifier at 60 deg is 1 - 0.1 (2-1).
func TestIncidenceModifier(t *testing.T) {
	c := Collector{Eta0: 1, K50: 1 - 0.1*(1/cos50-1)}
	check.That(t, c.modifier(math.Cos(60*math.Pi/180)), check.Published{Source: "souka-safwat", At: "b0 0.10 at 60 deg", Value: "0.90", Unit: "fraction", Standing: "remembered"})
	check.That(t, c.modifier(1), check.Published{Source: "souka-safwat", At: "straight on", Value: "1.00", Unit: "fraction", Standing: "remembered"})
	// The sky of a level plane is seen as beam at about 60 deg.
	check.That(t, c.skyModifier(), check.Published{Source: "duffie-beckman", At: "fig. 5.4.1: sky over a level plane counts as beam at about 60 deg", Value: "0.90", Unit: "fraction", Standing: "remembered"})
	l := sun.PlaneLight{Incidence: 0.5, Beam: 400, Sky: 100, Ground: 0}
	if got, want := c.Absorbed(l), c.modifier(0.5)*400+c.skyModifier()*100; got != want {
		t.Errorf("absorbed %g, parts sum to %g", got, want)
	}
}

func TestHeatsByHand(t *testing.T) {
	check.That(t, float64(quantity.Litres(300).Heat(40))/1000, check.Published{Source: "water-heat", At: "300 L by 40 K at 4.186 kJ/kgK", Value: "13.95", Unit: "kWh", Standing: "own"})
	check.That(t, float64(quantity.Litres(150).Heat(45))/1000, check.Published{Source: "water-heat", At: "150 L by 45 K at 4.186 kJ/kgK", Value: "7.85", Unit: "kWh", Standing: "own"})
	check.That(t, float64(StandingLoss(2, 40, 24))/1000, check.Published{Source: "water-heat", At: "2 W/K at 40 K for a day", Value: "1.92", Unit: "kWh", Standing: "own"})
	check.That(t, 1900/float64(StandingLoss(1, 45, 24)), check.Published{Source: "water-heat", At: "1.9 kWh a day at 45 K is a loss of", Value: "1.76", Unit: "W/K", Standing: "own"})
}

// xy is the monthly correlation of Klein, Beckman and Duffie (1976) for liquid systems.
func xy(x, y float64) float64 {
	return 1.029*y - 0.065*x - 0.245*y*y + 0.0018*x*x + 0.0215*y*y*y
}

// Madison, January: FR(ta)n 0.74, FRUL 4.0 W/m2K, FR'/FR 0.97, (ta)/(ta)n 0.96, 50 m2,
// 13.7 MJ/m2 d on the slope, -7 degC, 36 GJ wanted.
func TestMonthlyCorrelation(t *testing.T) {
	const area, load = 50.0, 36e9
	seconds := 31 * 86400.0
	x := 4.0 * 0.97 * (100 - -7) * seconds * area / load
	y := 0.74 * 0.97 * 0.96 * 13.7e6 * 31 * area / load
	check.That(t, x, check.Published{Source: "duffie-beckman", At: "example 20.2.1, monthly X-Y correlation of Klein, Beckman & Duffie 1976, X", Value: "1.54", Unit: "", Standing: "remembered"})
	check.That(t, y, check.Published{Source: "duffie-beckman", At: "example 20.2.1, Y", Value: "0.41", Unit: "", Standing: "remembered"})
	check.That(t, xy(x, y), check.Published{Source: "duffie-beckman", At: "example 20.2.1, share met by the sun", Value: "0.29", Unit: "fraction",
		Within: 0.01, Why: "0.28 to 0.29 by editions; the correlation gives 0.283", Standing: "remembered"})
	check.That(t, xy(x, y)*load/1e9, check.Published{Source: "duffie-beckman", At: "example 20.2.1, heat of the sun in January", Value: "10.3", Unit: "GJ",
		Within: 0.15, Why: "10.2 to 10.4 by editions", Standing: "remembered"})
}

// Cold water of four towns: mean and half swing over the year, day of the year when it
// crosses its mean upwards: 137. The air's mean and half swing are of monthly normals.
func TestColdWaterOfTheStandard(t *testing.T) {
	lag := func(days float64) float64 { // of a yearly wave behind a running mean
		w := 2 * math.Pi / 365
		return math.Atan(w*days) / w
	}
	// Air of the northern temperate zone is warmest about 20 July, day 201; a sine that
	// crosses upwards on day 137 is warmest a quarter year later.
	check.That(t, 201+lag(30), check.Published{Source: "en12976-2", At: "reference cold water: warmest a quarter of a year after day 137", Value: "228", Unit: "day",
		Within: 4, Why: "the air's warmest day differs by a few days from town to town", Standing: "remembered"})
	n := Inlet{Days: 30, Swing: 0.7, Mean: 18.5} // the air of Athens, swing 9.5 K either way
	if err := n.Prepare(); err != nil {
		t.Fatal(err)
	}
	s := n.Start()
	low, high := math.Inf(1), math.Inf(-1)
	for hour := range 24 * 365 * 3 {
		air := 18.5 + 9.5*math.Sin(2*math.Pi*(float64(hour)/24-110)/365)
		out := n.Step(&s, quantity.Celsius(air))
		if hour > 24*365*2 {
			low, high = min(low, float64(out.Cold)), max(high, float64(out.Cold))
		}
	}
	check.That(t, (high-low)/2, check.Published{Source: "en12976-2", At: "reference cold water, Athens, half swing", Value: "7.4", Unit: "K",
		Within: 1.7, Why: "the share of the swing that arrives is a choice of 0.7 of the running mean's; the standard's towns have 0.3 to 0.8 of the air's", Standing: "remembered"})
}

// The hours counted as under 60 and 50 degC are those of the guidance.
func TestStorageTemperatures(t *testing.T) {
	y := Usual()
	y.Store.Loss = 0
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	// lowest temperature, to the tenth, that no hour is counted for
	lowest := func(counted func(*Out) float64) float64 {
		for tenth := 300; tenth < 900; tenth++ {
			s := State{Upper: quantity.Celsius(tenth) / 10, Lower: 20}
			var out Out
			y.Step(&s, &In{Air: 20, Room: 20}, &out)
			if counted(&out) == 0 {
				return float64(tenth) / 10
			}
		}
		return math.NaN()
	}
	check.That(t, lowest(func(o *Out) float64 { return o.Under60 }), check.Published{Source: "hsg274-2", At: "hot water stored at, at least", Value: "60", Unit: "degC", Within: 0.05, Why: "a limit, tried in steps of a tenth"})
	check.That(t, lowest(func(o *Out) float64 { return o.Under50 }), check.Published{Source: "hsg274-2", At: "hot water at the outlet within a minute, at least", Value: "50", Unit: "degC", Within: 0.05, Why: "a limit, tried in steps of a tenth"})
}
