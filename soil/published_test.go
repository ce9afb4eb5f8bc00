package soil

import (
	"testing"

	"suffice/internal/check"
)

func named(t *testing.T, name string) Ground {
	t.Helper()
	g, err := Named(name)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestPenetrationOfTheStandardsGrounds(t *testing.T) {
	for name, want := range map[string]check.Published{
		"clay or silt":   {Source: "iso13370", At: "periodic penetration depth, clay or silt", Value: "2.2", Unit: "m"},
		"sand or gravel": {Source: "iso13370", At: "periodic penetration depth, sand or gravel", Value: "3.2", Unit: "m"},
		"rock":           {Source: "iso13370", At: "periodic penetration depth, rock", Value: "4.2", Unit: "m"},
	} {
		check.That(t, float64(named(t, name).Penetration(Year)), want)
	}
}

// The source prints ranges over several methods and measurements; its middle and half
// its width are held against the formula, with 20 % for what the formula itself claims.
func TestFaroukiConductivities(t *testing.T) {
	sand := Earth{Name: "sand", DryDensity: 1600, Quartz: 1, Coarse: true}
	clay := Earth{Name: "clay", DryDensity: 1600, Quartz: 0}
	const why = "the source prints a range, here its half width and 20 % more, the scatter that Johansen's dry conductivity is known to have"
	for _, c := range []struct {
		earth Earth
		mass  float64 // kg water per kg dry
		want  check.Published
	}{
		{sand, 0.05, check.Published{Source: "farouki-1982", At: "100 % sand, 1600 kg/m3, 5 % moist: 1.4 to 2.4", Value: "1.9", Unit: "W/mK", Within: 0.88, Why: why}},
		{sand, 0.10, check.Published{Source: "farouki-1982", At: "100 % sand, 1600 kg/m3, 10 % moist: 2.1 to 2.6", Value: "2.35", Unit: "W/mK", Within: 0.72, Why: why}},
		{sand, 0.15, check.Published{Source: "farouki-1982", At: "100 % sand, 1600 kg/m3, 15 % moist: 2.3 to 2.8", Value: "2.55", Unit: "W/mK", Within: 0.76, Why: why}},
		{sand, 0.20, check.Published{Source: "farouki-1982", At: "100 % sand, 1600 kg/m3, 20 % moist: 2.4 to 2.9", Value: "2.65", Unit: "W/mK", Within: 0.78, Why: why}},
		{clay, 0.10, check.Published{Source: "farouki-1982", At: "100 % clay, 1600 kg/m3, 10 % moist: 0.9 to 1.0", Value: "0.95", Unit: "W/mK", Within: 0.24, Why: why}},
		{clay, 0.15, check.Published{Source: "farouki-1982", At: "100 % clay, 1600 kg/m3, 15 % moist: 1.0 to 1.2", Value: "1.1", Unit: "W/mK", Within: 0.32, Why: why}},
		{clay, 0.20, check.Published{Source: "farouki-1982", At: "100 % clay, 1600 kg/m3, 20 % moist: 1.0 to 1.4", Value: "1.2", Unit: "W/mK", Within: 0.44, Why: why}},
	} {
		check.That(t, c.earth.At(c.mass*c.earth.DryDensity/1000).Conductivity, c.want)
	}
}

// What a metre of soil gives to roots is a column of its own in the table.
func TestWaterForRootsByTexture(t *testing.T) {
	const why = "the table prints a range, here half its width and half a thousandth, to which the middles are rounded"
	for name, want := range map[string]check.Published{
		"sand":            {Source: "fao56", At: "table 19, sand: 0.05 to 0.11", Value: "0.08", Unit: "m3/m3", Within: 0.0305, Why: why, Standing: "remembered"},
		"loamy sand":      {Source: "fao56", At: "table 19, loamy sand: 0.06 to 0.12", Value: "0.09", Unit: "m3/m3", Within: 0.0305, Why: why, Standing: "remembered"},
		"sandy loam":      {Source: "fao56", At: "table 19, sandy loam: 0.11 to 0.15", Value: "0.13", Unit: "m3/m3", Within: 0.0205, Why: why, Standing: "remembered"},
		"loam":            {Source: "fao56", At: "table 19, loam: 0.13 to 0.18", Value: "0.155", Unit: "m3/m3", Within: 0.0255, Why: why, Standing: "remembered"},
		"silt loam":       {Source: "fao56", At: "table 19, silt loam: 0.13 to 0.19", Value: "0.16", Unit: "m3/m3", Within: 0.0305, Why: why, Standing: "remembered"},
		"silty clay loam": {Source: "fao56", At: "table 19, silt clay loam: 0.13 to 0.18", Value: "0.155", Unit: "m3/m3", Within: 0.0255, Why: why, Standing: "remembered"},
		"silty clay":      {Source: "fao56", At: "table 19, silty clay: 0.13 to 0.19", Value: "0.16", Unit: "m3/m3", Within: 0.0305, Why: why, Standing: "remembered"},
		"clay":            {Source: "fao56", At: "table 19, clay: 0.12 to 0.20", Value: "0.16", Unit: "m3/m3", Within: 0.0405, Why: why, Standing: "remembered"},
	} {
		w, err := WaterOf(name)
		if err != nil {
			t.Fatal(err)
		}
		check.That(t, float64(w.Held(1))/1000, want)
	}
}
