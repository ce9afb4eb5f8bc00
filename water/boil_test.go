package water

import (
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

// Boiling points beside the steam tables.
func TestBoilsAsTheSteamTablesSay(t *testing.T) {
	const why = "Antoine's three constants fit the tables that well"
	for _, c := range []struct {
		pressure float64
		want     check.Published
	}{
		{50, check.Published{Source: "steam-tables", At: "saturation at 50 kPa", Value: "81.32", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
		{60, check.Published{Source: "steam-tables", At: "saturation at 60 kPa", Value: "85.93", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
		{70, check.Published{Source: "steam-tables", At: "saturation at 70 kPa", Value: "89.93", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
		{80, check.Published{Source: "steam-tables", At: "saturation at 80 kPa", Value: "93.49", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
		{90, check.Published{Source: "steam-tables", At: "saturation at 90 kPa", Value: "96.69", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
		{101.325, check.Published{Source: "steam-tables", At: "saturation at 101.325 kPa", Value: "99.97", Unit: "degC", Within: 0.1, Why: why, Standing: "remembered"}},
	} {
		check.That(t, float64(boilsUnder(c.pressure)), c.want)
	}
}

// Minutes of a rolling boil as four authorities tell them.
func TestBoilAdvices(t *testing.T) {
	by := map[string]BoilAdvice{}
	for _, a := range BoilAdvices() {
		by[a.By] = a
	}
	check.That(t, by["cdc"].For(1981), check.Published{Source: "eid-boil-2025", At: "table, CDC, not above 1,981 m", Value: "1", Unit: "min"})
	check.That(t, by["cdc"].For(1982), check.Published{Source: "eid-boil-2025", At: "table, CDC, above 1,981 m", Value: "3", Unit: "min"})
	check.That(t, by["epa"].For(1524), check.Published{Source: "eid-boil-2025", At: "table, EPA, not above 1,524 m", Value: "1", Unit: "min"})
	check.That(t, by["epa"].For(1525), check.Published{Source: "eid-boil-2025", At: "table, EPA, above 1,524 m", Value: "3", Unit: "min"})
	check.That(t, by["health-canada"].For(2001), check.Published{Source: "eid-boil-2025", At: "table, Health Canada, above 2,000 m", Value: "2", Unit: "min"})
	check.That(t, by["who"].For(4000), check.Published{Source: "eid-boil-2025", At: "table, WHO, no time after the boil, no altitude", Value: "0", Unit: "min"})
}

// Where air is thinner water boils cooler.
func TestHigherBoilsCooler(t *testing.T) {
	last := BoilsAt(-430)
	for altitude := -400.0; altitude <= 6000; altitude += 50 {
		at := BoilsAt(quantity.Metres(altitude))
		if at >= last {
			t.Fatalf("at %g m water boils at %g degC, not cooler than 50 m below", altitude, float64(at))
		}
		last = at
	}
}
