package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Factors by definition: BIPM SI Brochure, 9th ed. (2019), tables 2, 4 and 8.
func TestReadIn(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		want       float64
	}{
		{"40 kL", "L", 40000}, {"40kL", "m3", 40}, {"2.1 kW", "W", 2100}, {"12 kWh/d", "W", 500},
		{"21 degC", "degC", 21}, {"21 °C", "degC", 21}, {"-0.28%/K", "%/K", -0.28}, {"180 m²", "m2", 180},
		{"90 L/person/d", "L/person/d", 90}, {"80 %", "", 0.8}, {"0.8", "", 0.8}, {"1 kL/week", "L/d", 1000.0 / 7},
		{"7.85 kWh", "MJ", 28.26}, {"0.3 W/m2K", "W/m2K", 0.3}, {"0.015 W/m²K²", "W/m2K2", 0.015}, {"3 W/(m2K)", "", math.NaN()},
		{"40 kL", "L", 40000}, {"45 deg", "rad", math.Pi / 4}, {"1 bar", "kPa", 100}, {"18 s/mm", "s/m", 18000},
	} {
		got, err := ReadIn(c.text, c.unit)
		if math.IsNaN(c.want) {
			if err == nil {
				t.Errorf("%q was read as %g, want a refusal", c.text, got)
			}
			continue
		}
		if err != nil || math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%q in %s: got %v, %v, want %v", c.text, c.unit, got, err, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	for text, says := range map[string]string{
		"40": "no unit", "2,1 kW": "comma", "21 C": "degC", "5 gal": "US-gallon", "3 months": "days",
		"ten kL": "number", "5 kW": "not a quantity in L", "": "number", "1e999 L": "not a number", "NaN L": "number",
		"4 kWx": "not known", "1_000 L": "not known",
	} {
		if _, err := ReadIn(text, "L"); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, want an error saying %q", text, err, says)
		}
	}
}

// Whole percents are the floats that a programmer would write.
func TestPercentsAreExact(t *testing.T) {
	for text, want := range map[string]float64{"94 %": 0.94, "29 %": 0.29, "7 %": 0.07, "58 %": 0.58} {
		if got, err := ReadIn(text, ""); err != nil || got != want {
			t.Errorf("%s is %v, %v, want %v", text, got, err, want)
		}
	}
}

func TestPointIsNoDifference(t *testing.T) {
	if _, err := ReadIn("5 K", "degC"); err == nil {
		t.Error("a difference was taken for a point on the scale")
	}
	if _, err := ReadIn("5 degC", "K"); err == nil {
		t.Error("a point on the scale was taken for a difference")
	}
}

func TestTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e12, 1e12).Draw(t, "value")
		unit := rapid.SampledFrom([]string{"L", "kWh", "W/m2K", "degC", "%", "L/person/d"}).Draw(t, "unit")
		got, err := ReadIn(Text(v, unit), unit)
		if err != nil || got != v {
			t.Fatalf("%s read back as %v, %v", Text(v, unit), got, err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"40 kL", "-1.5e3 W/m2K", "80%", "12 kWh/d", "²", "1/", "1 //", "3 degC/K"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		q, err := Parse(s)
		if err == nil && (math.IsNaN(q.Value) || math.IsInf(q.Value, 0)) {
			t.Errorf("%q was read as %v", s, q.Value)
		}
	})
}
