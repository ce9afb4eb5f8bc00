package files

import (
	"math"
	"strings"
	"testing"

	"suffice/site/weather"
)

// fuzz feeds a reader with text that begins as its format does. What is read must be
// sound, and completing it must not fall over. The seed must be read, or refused for
// saying so: a seed that nothing gets past would test nothing.
func fuzz(f *testing.F, seed, refused string, options ...[2]string) {
	var o Options
	for _, kv := range options {
		if err := o.Set(kv[0], kv[1]); err != nil {
			f.Fatal(err)
		}
	}
	_, err := Read("seed", strings.NewReader(seed), o)
	if (err == nil) != (refused == "") || err != nil && !strings.Contains(err.Error(), refused) {
		f.Fatalf("the seed: %v, want %q", err, refused)
	}
	f.Add(seed)
	f.Fuzz(func(t *testing.T, text string) { sound(t, text, o) })
}

// lines gives the first lines of a file.
func lines(f *testing.F, name string, n int) string {
	all := strings.SplitAfter(text(f, name), "\n")
	return strings.Join(all[:n], "")
}

func sound(t *testing.T, text string, o Options) {
	r, err := Read("fuzz", strings.NewReader(text), o)
	if err != nil {
		return
	}
	if r.Steps < 1 || r.StartHour < 0 || r.StartHour > 23 || len(r.Series) == 0 {
		t.Fatalf("a record of %d steps from hour %d with %d columns", r.Steps, r.StartHour, len(r.Series))
	}
	for _, s := range r.Series {
		if len(s.Values) != r.Steps || s.Marks != nil && len(s.Marks) != r.Steps {
			t.Fatalf("%s has %d values and %d marks of %d", s.Column, len(s.Values), len(s.Marks), r.Steps)
		}
		for i, v := range s.Values {
			if math.IsInf(v, 0) || math.IsNaN(v) != (s.MarkAt(i) >= weather.Absent) {
				t.Fatalf("%s, row %d: %g is marked %s", s.Column, i, v, s.MarkAt(i))
			}
		}
	}
	weather.Summarise(r)
	if r.Steps > 2000 {
		return
	}
	h, _, err := weather.Complete(r, weather.Options{})
	if err != nil {
		return
	}
	for _, column := range [][]float64{h.Global, h.Diffuse, h.Beam, h.Temperature, h.Humidity, h.Wind, h.Rain} {
		for i, v := range column {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("hour %d of %d days is %g: %q", i, len(h.Days), v, h.Notes)
			}
		}
	}
}

func FuzzPower(f *testing.F) {
	fuzz(f, strings.Replace(lines(f, campeche, 21), "through 12/31/2024", "through 01/06/2013", 1), "")
}

func FuzzPowerJSON(f *testing.F) {
	fuzz(f, `{"geometry":{"coordinates":[-47.883,-21.979,655.46]},"properties":{"parameter":{
"T2M":{"2026040100":18.74,"2026040101":-999.0,"2026040103":null},"PRECTOTCORR":{"2026040100":0.5,"2026040102":1}}},
"header":{"fill_value":-999.0,"time_standard":"LST"},"parameters":{"T2M":{"units":"C"},"PRECTOTCORR":{"units":"mm/day"}}}`, "")
}

func FuzzBare(f *testing.F) { fuzz(f, lines(f, sydneyHours, 8), "", saidOfSydney...) }

func FuzzTMY3(f *testing.F) { fuzz(f, lines(f, denver, 4), "8760 hours") }

func FuzzDaily(f *testing.F) {
	fuzz(f, lines(f, melbourne, 3), "", [2]string{"latitude", "-37.8"}, [2]string{"longitude", "145"})
}

func FuzzOwn(f *testing.F) {
	for _, name := range []string{seattle, houston} {
		var own strings.Builder
		if err := Write(&own, open(f, name)); err != nil {
			f.Fatal(err)
		}
		lines := strings.SplitAfter(own.String(), "\n")
		f.Add(strings.Join(lines[:min(30, len(lines))], ""))
	}
	f.Fuzz(func(t *testing.T, text string) { sound(t, text, Options{}) })
}

func FuzzOptions(f *testing.F) {
	for _, kv := range append(saidOfJohannesburg, saidOfSydney...) {
		f.Add(kv[0], kv[1])
	}
	f.Fuzz(func(t *testing.T, key, value string) {
		var o Options
		if o.Set(key, value) == nil && o.Latitude != nil && !(math.Abs(float64(*o.Latitude)) <= 90) {
			t.Errorf("latitude %g from %q", *o.Latitude, value)
		}
	})
}
