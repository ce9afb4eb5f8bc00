package files

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/site"
	"suffice/site/weather"
)

// everyFile gives each record of testdata, opened with what it has to be told.
func everyFile(t testing.TB) []*weather.Record {
	t.Helper()
	said := map[string][][2]string{angoche: saidOfAngoche, bangalore: saidOfBangalore, johannesburg: saidOfJohannesburg, sydneyHours: saidOfSydney}
	paths, err := filepath.Glob("testdata/*.gz")
	if err != nil || len(paths) < 22 {
		t.Fatalf("%d files, %v", len(paths), err)
	}
	var all []*weather.Record
	for _, path := range paths {
		name := filepath.Base(path)
		all = append(all, open(t, name, said[name]...))
	}
	return append(all, open(t, reference, saidOf("94084")))
}

// same reports whether two records hold the same, but for file names and line numbers.
func same(t testing.TB, a, b *weather.Record) {
	t.Helper()
	plain := func(r *weather.Record) weather.Record {
		out := *r
		out.File, out.Series = "", nil
		return out
	}
	if x, y := plain(a), plain(b); !reflect.DeepEqual(x, y) {
		t.Errorf("%s came back otherwise:\n%+v\n%+v", a.File, x, y)
	}
	if len(a.Series) != len(b.Series) {
		t.Fatalf("%s: %d columns came back as %d", a.File, len(a.Series), len(b.Series))
	}
	for k := range a.Series {
		s, u := &a.Series[k], &b.Series[k]
		if s.Column != u.Column || s.Source != u.Source || s.Unit != u.Unit || len(s.Values) != len(u.Values) {
			t.Fatalf("%s: column %s (%s, %s) came back as %s (%s, %s)", a.File, s.Column, s.Source, s.Unit, u.Column, u.Source, u.Unit)
		}
		for i, v := range s.Values {
			if w := u.Values[i]; v != w && !(math.IsNaN(v) && math.IsNaN(w)) || s.MarkAt(i) != u.MarkAt(i) {
				t.Fatalf("%s, row %d of %s: %g (%s) came back as %g (%s)", a.File, i, s.Column, v, s.MarkAt(i), w, u.MarkAt(i))
			}
		}
	}
}

// A record written in our own form reads back the same to the last bit, marks and notes
// with it.
func TestOwnFormReadsBack(t *testing.T) {
	all := everyFile(t)
	for _, name := range []string{desertRock, pennState, alamosa, southPole} { // no day of theirs is whole on their own clock
		all = append(all, open(t, name))
	}
	for _, r := range all {
		var text bytes.Buffer
		if err := Write(&text, r); err != nil {
			t.Fatal(err)
		}
		back, err := Read("own", &text, Options{})
		if err != nil {
			t.Fatalf("%s: %v", r.File, err)
		}
		same(t, r, back)
	}
}

// A record in our own form that names no place takes the one that is given, and only then.
func TestOwnFormTakesAPlace(t *testing.T) {
	var o Options
	for _, kv := range [][2]string{{"latitude", "-37.8"}, {"longitude", "145"}, {"altitude", "31"}} {
		if err := o.Set(kv[0], kv[1]); err != nil {
			t.Fatal(err)
		}
	}
	for name, placed := range map[string]bool{melbourne: false, campeche: true} {
		r := open(t, name)
		var text bytes.Buffer
		if err := Write(&text, r); err != nil {
			t.Fatal(err)
		}
		back, err := Read("own", &text, o)
		if err != nil {
			t.Fatal(err)
		}
		if r.Placed != placed || !back.Placed || placed != (back.Place.Latitude == r.Place.Latitude) || !placed && back.Place.Clock != 10 {
			t.Errorf("%s: placed %v, came back at %+v", name, r.Placed, back.Place)
		}
	}
}

// A saved record is there whole, packed or not, and nothing else is left beside it.
func TestSavedRecordOpens(t *testing.T) {
	r, err := Demo()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for _, name := range []string{"demo.csv", "demo.csv.gz"} {
		if err := Save(filepath.Join(folder, name), r); err != nil {
			t.Fatal(err)
		}
		back, err := Open(filepath.Join(folder, name), Options{})
		if err != nil {
			t.Fatal(err)
		}
		same(t, r, back)
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 2 {
		t.Errorf("the folder has %v, %v", entries, err)
	}
	if err := Save(filepath.Join(folder, "none", "demo.csv"), r); err == nil {
		t.Error("a record was saved into a folder that is not there")
	}
}

// The rain, light and extremes of every complete day are those of the record.
func TestDaysKeepTheirTotals(t *testing.T) {
	for _, r := range []*weather.Record{open(t, crete), open(t, angoche, saidOfAngoche...), open(t, johannesburg, saidOfJohannesburg...), open(t, uttarakhand)} {
		h, _, err := weather.Complete(r, weather.Options{})
		if err != nil {
			t.Fatal(err)
		}
		column := func(c weather.Column, i int) float64 {
			s := r.Of(c)
			if s == nil {
				return math.NaN()
			}
			return s.Values[h.Days[i].Number()-r.Start]
		}
		for i := range h.Days {
			day := func(hours []float64) []float64 { return hours[24*i : 24*i+24] }
			if rain := column(weather.Rain, i); !math.IsNaN(rain) {
				check.Balance(t, sum(day(h.Rain)), rain, "rain of a day")
			}
			check.Balance(t, sum(day(h.Global))/1000, column(weather.Global, i), "light of a day")
			if low := column(weather.TemperatureMin, i); !math.IsNaN(low) {
				if got, high := day(h.Temperature), column(weather.TemperatureMax, i); slices.Min(got) != low || slices.Max(got) != high {
					t.Fatalf("%s, %+v: from %g to %g degC, recorded %g to %g", r.File, h.Days[i], slices.Min(got), slices.Max(got), low, high)
				}
			}
		}
		if t.Failed() {
			t.Fatalf("the days of %s do not close", r.File)
		}
	}
}

func sum(values []float64) (total float64) {
	for _, v := range values {
		total += v
	}
	return total
}

// Light closes in every hour: beam on the level and diffuse make the global light where
// they were split, and none falls while the sun is down.
func TestLightCloses(t *testing.T) {
	for _, r := range []*weather.Record{open(t, crete), open(t, delhi), open(t, melbourne, [2]string{"latitude", "-37.808"}, [2]string{"longitude", "144.97"})} {
		h, _, err := weather.Complete(r, weather.Options{From: 2004, To: 2016})
		if err != nil {
			t.Fatal(err)
		}
		for i := range h.Global {
			g, b, d := h.Global[i], h.Beam[i], h.Diffuse[i]
			if b < 0 || d < 0 || d > g*(1+1e-9)+1e-9 || g > 1500 || b > 1420 {
				t.Fatalf("%s, hour %d: global %g, beam %g, diffuse %g", r.File, i, g, b, d)
			}
		}
	}
}

// Every column of every record that can be completed has a finite value in every hour,
// its origins sum to the hours, and the same record gives the same hours.
func TestEveryRecordCompletes(t *testing.T) {
	place := &site.Place{Latitude: 35, Longitude: -100, Altitude: 100, Clock: -7}
	for _, r := range everyFile(t) {
		o := weather.Options{From: 2008} // the years since serve, and take less time
		if r.Typical {
			o.From = 0
		}
		if !r.Placed {
			o.Place = place
		}
		h, report, err := weather.Complete(r, o)
		if err != nil {
			t.Fatalf("%s: %v", r.File, err)
		}
		again, _, err := weather.Complete(r, o)
		if err != nil || !reflect.DeepEqual(h, again) {
			t.Fatalf("%s gave other hours the second time: %v", r.File, err)
		}
		for name, column := range map[string][]float64{"global": h.Global, "diffuse": h.Diffuse, "beam": h.Beam, "temperature": h.Temperature, "humidity": h.Humidity, "wind": h.Wind, "rain": h.Rain} {
			if len(column) != 0 && len(column) != 24*len(h.Days) {
				t.Errorf("%s: %s has %d hours of %d days", r.File, name, len(column), len(h.Days))
			}
			if i := slices.IndexFunc(column, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }); i >= 0 {
				t.Errorf("%s: %s of hour %d is %g", r.File, name, i, column[i])
			}
		}
		for _, tally := range report.Tallies {
			n := 0
			for _, hours := range tally.Hours {
				n += hours
			}
			if n != 24*len(h.Days) {
				t.Errorf("%s: the origins of %s sum to %d of %d hours", r.File, tally.Column, n, 24*len(h.Days))
			}
		}
	}
}

// A gauge beside a typical sky: each year of the gauge has its own rain and the typical
// year's light, and the notes say that they do not belong together.
func TestGaugeBesideTypicalSky(t *testing.T) {
	sky, gauge := open(t, denver), open(t, denverGauge)
	for _, only := range []bool{false, true} {
		h, report, err := weather.Combine(sky, gauge, weather.Options{OnlyMatched: only})
		if err != nil {
			t.Fatal(err)
		}
		if len(report.Years) != 68 || len(h.Days) != 68*365+17 {
			t.Errorf("%d years, %d days", len(report.Years), len(h.Days))
		}
		check.Balance(t, sum(h.Rain)/68, weather.Summarise(gauge).Rain.Mean*68/68+filledRain(gauge, h)/68, "rain of the gauge's years")
		if !hasNote(h.Notes, "same typical sky") || !hasNote(h.Notes, "17 times the 29 February") || !hasNote(h.Notes, "intensity is invented") {
			t.Errorf("notes: %q", h.Notes)
		}
		year := sum(h.Global[:24*59]) + sum(h.Global[24*60:24*366]) // 1948, without its 29 February
		check.Balance(t, year, sum(sky.Of(weather.Global).Values), "light of the first year and of the typical one")
	}
}

// filledRain sums the rain of days that the gauge does not have, mm, less what rounding of
// the summary's mean leaves.
func filledRain(gauge *weather.Record, h *weather.Hours) float64 {
	rain := gauge.Of(weather.Rain)
	var filled, recorded float64
	for i, day := range h.Days {
		if v := rain.Values[day.Number()-gauge.Start]; math.IsNaN(v) {
			filled += sum(h.Rain[24*i : 24*i+24])
		} else {
			recorded += v
		}
	}
	return filled + recorded - 68*weather.Summarise(gauge).Rain.Mean
}

// Rain of a record's own beside its own sky, with a gauge of other years: matched years
// keep both, the rest are drawn and counted.
func TestGaugeBesideShorterSky(t *testing.T) {
	sky, gauge := open(t, uttarakhand), open(t, losAngeles)
	h, report, err := weather.Combine(sky, gauge, weather.Options{From: 2005, Seed: 11})
	if err != nil {
		t.Fatal(err)
	}
	if len(report.Years) != 20 || !hasNote(h.Notes, "11 of 20 years have their own sky") || !hasNote(h.Notes, "seed 11") {
		t.Errorf("years %v, notes %q", report.Years, h.Notes)
	}
}

// Both fuzzers and people meet files cut anywhere: no cut of a file is read as a whole one.
func TestCutFilesAreRefused(t *testing.T) {
	for _, name := range []string{crete, seattle, denver, houston} {
		whole := text(t, name)
		for part := 1; part < 12; part++ {
			cut := whole[:len(whole)*part/12-7]
			if _, err := Read(name, strings.NewReader(cut), Options{}); err == nil {
				t.Errorf("%s, cut after %d of %d bytes, was read", name, len(cut), len(whole))
			}
		}
	}
}

func BenchmarkCreteReadAndMadeHourly(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		r, err := Demo()
		if err != nil {
			b.Fatal(err)
		}
		if _, _, err := weather.Complete(r, weather.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGaugeOf160Years(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		open(b, sydneyGauge)
	}
}
