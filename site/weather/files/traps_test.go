package files

import (
	"bytes"
	"compress/gzip"
	"io"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/site"
	"suffice/site/weather"
)

// text gives a file of testdata, unpacked.
func text(t testing.TB, name string) string {
	t.Helper()
	file, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	z, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	all, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(all)
}

func rainSum(r *weather.Record) (sum float64) {
	for _, mm := range r.Of(weather.Rain).Values {
		sum += mm
	}
	return sum
}

// Hourly rain came as mm/hour from older versions of the service and as a rate of mm/day
// from newer ones: the header's unit decides.
func TestHourlyRainFollowsItsUnit(t *testing.T) {
	as := text(t, seattle)
	if !strings.Contains(as, "Precipitation Corrected (mm/day)") {
		t.Fatal("the file no longer gives its rain in mm/day")
	}
	perDay, err := Read("mm/day", strings.NewReader(as), Options{})
	if err != nil {
		t.Fatal(err)
	}
	perHour, err := Read("mm/hour", strings.NewReader(strings.Replace(as, "Corrected (mm/day)", "Corrected (mm/hour)", 1)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	check.Balance(t, 24*rainSum(perDay), rainSum(perHour), "rain of the same numbers in mm/day and mm/hour")
	_, err = Read("none", strings.NewReader(strings.Replace(as, "Precipitation Corrected (mm/day)", "Precipitation Corrected", 1)), Options{})
	if err == nil || !strings.Contains(err.Error(), "unit.PRECTOTCORR=") {
		t.Errorf("rain without a unit: %v", err)
	}
}

// Every spelling of a unit that the service has used is read, and no other.
func TestLightFollowsItsUnit(t *testing.T) {
	for _, c := range []struct {
		unit string
		step weather.Step
		want float64 // of 1
	}{
		{"Wh/m^2", weather.Hourly, 1}, {"W/m^2", weather.Hourly, 1}, {"W m-2", weather.Hourly, 1}, {"MJ/hr", weather.Hourly, 1000 / 3.6}, {"kW-hr/m^2", weather.Hourly, 1000},
		{"kW-hr/m^2/day", weather.Daily, 1}, {"MJ/m^2/day", weather.Daily, 1 / 3.6}, {"W m-2", weather.Daily, 0.024}, {"kWh/m2/d", weather.Daily, 1},
	} {
		s, ok := scaleOf(weather.Global, c.step, c.unit)
		if !ok || math.Abs(s.factor-c.want) > 1e-12*c.want {
			t.Errorf("%s %s: %v %v, want %g", c.step, c.unit, s, ok, c.want)
		}
	}
	for _, unit := range []string{"", "mm", "kW", "Wh/m^2"} {
		if _, ok := scaleOf(weather.Global, weather.Daily, unit); ok {
			t.Errorf("daily light in %q was taken", unit)
		}
	}
}

// The headers of the service's versions differ in case, in length, in how the date is
// given and in the order of columns.
func TestHeadersOfAllVersions(t *testing.T) {
	for _, c := range []struct {
		file                          string
		latitude, longitude, altitude float64
		time                          weather.Timekeeping
		first                         string
	}{
		{crete, 35.0309, 24.8335, 253.32, weather.SolarHours, "1984-01-01"},
		{uttarakhand, 29.917, 78.71, 1266.18, weather.SolarHours, "2013-01-01"},
		{campeche, 19.84, -90.53, 10.21, weather.SolarHours, "2013-01-01"},
		{delhi, 28.627, 77.172, 230.32, weather.UTC, "2015-01-01T00:00:00Z"},
		{seattle, 47.6101, -122.2015, 110.01, weather.UTC, "2025-01-01T00:00:00Z"},
		{saoCarlos, -21.979, -47.883, 655.46, weather.SolarHours, "2026-04-01T00:00:00-03:00"},
	} {
		r, s := look(t, c.file)
		if !r.Placed || *s.Latitude != c.latitude || *s.Longitude != c.longitude || *s.Altitude != c.altitude || r.Time != c.time || s.First != c.first {
			t.Errorf("%s: %+v, %s, begins %s; want %+v", c.file, r.Place, r.Time, s.First, c)
		}
	}
}

// Columns may stand in any order.
func TestColumnsInAnyOrder(t *testing.T) {
	var turned strings.Builder
	table := false
	for line := range strings.Lines(text(t, crete)) {
		if table {
			cells := strings.Split(strings.TrimSpace(line), ",")
			slices.Reverse(cells)
			line = strings.Join(cells, ",") + "\n"
		}
		table = table || strings.HasPrefix(line, "-END")
		turned.WriteString(line)
	}
	r, err := Read("turned", strings.NewReader(turned.String()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	check.Balance(t, rainSum(r), rainSum(open(t, crete)), "rain of turned columns")
}

// Local solar hours from the first of January begin and end in the middle of a day: the
// parts are dropped and said.
func TestSolarHoursBeginInTheDay(t *testing.T) {
	r, s := look(t, sydneyHours, saidOfSydney...)
	if s.First != "2021-01-01T10:00:00+10:00" || s.Last != "2022-03-01T09:00:00+10:00" || s.Hours != 10176 {
		t.Errorf("from %s to %s, %d hours", s.First, s.Last, s.Hours)
	}
	h, _, err := weather.Complete(r, weather.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if first, last := h.Days[0], h.Days[len(h.Days)-1]; first.Date != 2 || first.Month != 1 || last.Month != 2 || last.Date != 28 {
		t.Errorf("whole days from %+v to %+v", first, last)
	}
	if !hasNote(h.Notes, "2 days at the ends") {
		t.Errorf("the parts of days are not said: %q", h.Notes)
	}
}

// The gap of three months in Sydney's light is filled from the same dates where there
// are such, and made from temperature where there are none.
func TestLongGapOfLight(t *testing.T) {
	h, report, err := weather.Complete(open(t, sydneyHours, saidOfSydney...), weather.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, tally := range report.Tallies {
		if tally.Column != weather.Global {
			continue
		}
		// 2 January to 28 February and the night hours of 1 January have a year before them,
		// 2 to 31 December have not.
		if n := tally.Hours; n[weather.FromOtherYear]+n[weather.Computed] != 2136-10 || n[weather.Computed] != 30*24 {
			t.Errorf("origins of light: %v", n)
		}
	}
	if slices.ContainsFunc(h.Global, math.IsNaN) {
		t.Error("a gap is left in the light")
	}
	if len(report.Years) != 0 || !hasNote(h.Notes, "no year of the record is complete") {
		t.Errorf("years %v, notes %q", report.Years, h.Notes)
	}
}

// -999 at night is normal in derived columns and no gap in those that are read.
func TestSeattleAndDelhiHaveNoGaps(t *testing.T) {
	for _, file := range []string{seattle, delhi} {
		if _, s := look(t, file); len(s.Gaps) != 0 || len(s.Warnings) != 0 {
			t.Errorf("%s: gaps %v, warnings %q", file, s.Gaps, s.Warnings)
		}
	}
}

// moved gives a record's copy whose light is moved by hours.
func moved(r *weather.Record, hours int) *weather.Record {
	out := *r
	out.Series, out.Warnings = nil, nil
	for _, s := range r.Series {
		v := slices.Repeat([]float64{math.NaN()}, len(s.Values))
		for i := range v {
			if k := i - hours; k >= 0 && k < len(v) {
				v[i] = s.Values[k]
			}
		}
		s.Values, s.Marks = v, nil
		out.Series = append(out.Series, s)
	}
	return &out
}

// The rows of all hourly files begin where the reader says: the light lies with the
// computed sun, and a copy moved by one hour is noticed. TMY3 names hours by their end.
func TestHoursLieWithTheSun(t *testing.T) {
	for _, r := range []*weather.Record{open(t, delhi), open(t, seattle), open(t, sydneyHours, saidOfSydney...), open(t, denver), open(t, phoenix)} {
		if hasNote(r.Warnings, "the light lies") {
			t.Errorf("%s: %q", r.File, r.Warnings)
		}
		for _, hours := range []int{-1, 1, 12} {
			off := moved(r, hours)
			if err := weather.Check(off); err == nil && !hasNote(off.Warnings, "the light lies") {
				t.Errorf("%s moved by %d h was not noticed: %q", r.File, hours, off.Warnings)
			}
		}
	}
}

// In the typical year of Fairbanks the light lies an hour before the sun in ten months, eight
// of which are bright enough to tell.
func TestFairbanksLightIsEarly(t *testing.T) {
	r := open(t, fairbanks)
	if !hasNote(r.Warnings, "in 8 of 9 months") || !hasNote(r.Warnings, "before the sun") {
		t.Errorf("warnings: %q", r.Warnings)
	}
}

// The rain of a typical year is never read.
func TestTypicalRainIsLeftUnread(t *testing.T) {
	if !strings.Contains(text(t, denver), "Lprecip depth (mm)") {
		t.Fatal("the file has no rain column to leave unread")
	}
	r, s := look(t, denver)
	if r.Of(weather.Rain) != nil || s.Rain != nil || !hasNote(r.Notes, "Lprecip") {
		t.Errorf("rain was read, or leaving it is not said: %q", r.Notes)
	}
	h, _, err := weather.Complete(r, weather.Options{})
	if err != nil || h.Rain != nil {
		t.Errorf("a typical year rains: %v", err)
	}
}

// The months of a typical year come from different years and go on one of 365 days.
func TestTypicalMonths(t *testing.T) {
	r, s := look(t, denver)
	want := [12]int32{1995, 1994, 1991, 1999, 1991, 1994, 1991, 2001, 2005, 2000, 2002, 1994}
	if !r.Typical || r.MonthFrom != want || r.Steps != 8760 {
		t.Errorf("typical %v, months of %v, %d hours", r.Typical, r.MonthFrom, r.Steps)
	}
	if s.First != "2001-01-01T00:00:00-07:00" || s.Last != "2001-12-31T23:00:00-07:00" || !hasNote(r.Notes, "1995 1994 1991") {
		t.Errorf("from %s to %s: %q", s.First, s.Last, r.Notes)
	}
}

// A presumed zero is no measurement: the 0 mm of Death Valley in 1989 is not a dry year.
func TestPresumedZeroIsMissing(t *testing.T) {
	for file, want := range map[string]int{deathValley: 7580, phoenixGauge: 2520, denverGauge: 50} {
		_, s := look(t, file)
		if got := s.Columns["rain"].Presumed; got != want {
			t.Errorf("%s: %d presumed days, want %d", file, got, want)
		}
	}
	r, s := look(t, deathValley)
	if s.Rain.Min < 1 || s.Rain.MinYear == 1989 {
		t.Errorf("the driest year is %d with %g mm", s.Rain.MinYear, s.Rain.Min)
	}
	days := 0
	for i, m := range r.Of(weather.Rain).Marks {
		if weather.DayOf(r.Start+i).Year == 1989 && m == weather.Presumed {
			days++
		}
	}
	check.That(t, float64(days), check.Published{Source: "ghcn-daily", At: "Death Valley: presumed days in 1989", Value: "363", Unit: "days", Standing: "twin"})
	r = open(t, deathValley, [2]string{"latitude", "36.463"}, [2]string{"longitude", "-116.867"}, [2]string{"altitude", "-59"})
	_, report, err := weather.Complete(r, weather.Options{})
	if err != nil || slices.Contains(report.Years, 1989) || !slices.Contains(report.Dropped, 1989) {
		t.Errorf("1989 was lived through: %v %v", report.Years, err)
	}
}

// Flagged values are dropped, traces are nothing, totals over several days are spread.
func TestGaugeFlags(t *testing.T) {
	if _, s := look(t, sydneyGauge); s.Columns["rain"].Flagged != 1 {
		t.Errorf("Sydney: %d flagged days of rain, want 1", s.Columns["rain"].Flagged)
	}
	if _, s := look(t, newYork); s.Columns["rain"].Traces != 4643 {
		t.Errorf("New York: %d traces, want 4643", s.Columns["rain"].Traces)
	}
	r, s := look(t, melbourne)
	if got := s.Columns["rain"].Accumulated; got != 81 {
		t.Errorf("Melbourne: %d days of totals spread, want 81", got)
	}
	rain := r.Of(weather.Rain)
	for day, want := range map[int]float64{9: 0.8, 12: 0.8, 23: 1.6, 25: 1.6, 27: 0.1} { // 3.2 mm over 4 days, 4.8 over 3, 0.2 over 2
		i := weather.DayNumber(2011, 7, day) - r.Start
		if math.Abs(rain.Values[i]-want) > 1e-12 || rain.Marks[i] != weather.Accumulated {
			t.Errorf("Melbourne, %d July 2011: %g mm, %s; want %g", day, rain.Values[i], rain.Marks[i], want)
		}
	}
}

// Rain of a reanalysis says so, whatever the format.
func TestReanalysisSaysSo(t *testing.T) {
	for _, file := range []string{crete, seattle, saoCarlos} {
		if r := open(t, file); !hasNote(r.Notes, "no gauge") || !hasNote(r.Notes, "LaRC") {
			t.Errorf("%s: %q", file, r.Notes)
		}
	}
	r, err := Demo()
	if err != nil {
		t.Fatal(err)
	}
	if r.Place.Name != "Crete" || r.Steps != 13515 || !hasNote(r.Notes, "no gauge") || !hasNote(r.Notes, "NASA Langley Research Center") {
		t.Errorf("%+v, %d days, %q", r.Place, r.Steps, r.Notes)
	}
}

// A zone of half an hour is rounded to the whole hours of the record, and said.
func TestHalfHourZone(t *testing.T) {
	house := site.Place{Latitude: 28.63, Longitude: 77.17, Altitude: 230, Clock: 5.5}
	h, report, err := weather.Complete(open(t, delhi), weather.Options{Place: &house})
	if err != nil {
		t.Fatal(err)
	}
	if h.Place.Clock != 6 || !hasNote(h.Notes, "0.5 h beside that of the place") {
		t.Errorf("clock %g: %q", h.Place.Clock, h.Notes)
	}
	if len(report.Years) != 6 {
		t.Errorf("years %v", report.Years)
	}
}

func hasNote(notes []string, says string) bool {
	return slices.ContainsFunc(notes, func(n string) bool { return strings.Contains(n, says) })
}

// endless gives a beginning and then the same bytes for ever, and counts what was taken.
type endless struct {
	begin *strings.Reader
	again []byte
	taken int
}

func (e *endless) Read(p []byte) (int, error) {
	if n, err := e.begin.Read(p); err == nil {
		return n, nil
	}
	n := 0
	for n < len(p) {
		n += copy(p[n:], e.again)
	}
	e.taken += n
	return n, nil
}

// A file of garbage is refused after its first blocks, however long it is.
func TestGarbageIsRefusedEarly(t *testing.T) {
	header := text(t, crete)[:1200]
	for name, e := range map[string]*endless{
		"zeros":               {begin: strings.NewReader(""), again: []byte{0}},
		"noise":               {begin: strings.NewReader("%PDF-1.4\n"), again: []byte{0xff, 0xfe, 1, 2, 200}},
		"words":               {begin: strings.NewReader("once upon a time\n"), again: []byte("there was a rain\n")},
		"one line":            {begin: strings.NewReader("YEAR,MO,DY,T2M"), again: []byte(",T2M")},
		"a header for ever":   {begin: strings.NewReader("-BEGIN HEADER-\n"), again: []byte("T2M  temperature (C)\n")},
		"a header, then junk": {begin: strings.NewReader(header), again: []byte("junk,\n")},
		"blank lines":         {begin: strings.NewReader(header), again: []byte("\n")},
		"our header for ever": {begin: strings.NewReader(ownFirst + "\n"), again: []byte("# note: rain\n")},
		"JSON":                {begin: strings.NewReader("{"), again: []byte(`"a":`)},
		"a gauge for ever":    {begin: strings.NewReader(""), again: []byte("USW00023174194408PRCP" + strings.Repeat("    0  X", 31) + "\n")},
	} {
		_, err := Read(name, e, Options{})
		if err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
		if e.taken > 1<<20 {
			t.Errorf("%s: %d bytes were taken before it was refused", name, e.taken)
		}
	}
}

// Every refusal names the file, the line where there is one, and what to do.
func TestRefusals(t *testing.T) {
	whole := text(t, crete)
	lines := strings.SplitAfter(whole, "\n")
	head, rows := strings.Join(lines[:14], ""), lines[14:40]
	packed := new(bytes.Buffer)
	z := gzip.NewWriter(packed)
	if _, err := z.Write([]byte(whole)); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	short := strings.Replace(strings.Join(lines[:40], ""), "through 12/31/2020", "through 01/26/1984", 1)
	with := func(old, new string) string { return strings.Replace(short, old, new, 1) }
	gauge := text(t, houston)
	tmy := text(t, denver)
	for _, c := range []struct{ name, text, says string }{
		{"empty", "", "has no text"},
		{"blank", "\n\n  \n", "has no text"},
		{"picture", "\x89PNG\r\n\x1a\n\x00\x00", "not a text file"},
		{"sixteen", "Y\x00E\x00A\x00R\x00", "UTF-8"},
		{"letter", "Dear cousin,\nit rains.\n", `"Dear cousin,"`},
		{"packed", packed.String()[:packed.Len()/2], "cut short"},
		{"damaged", packed.String()[:2000] + "zzzz" + packed.String()[2004:], "damaged"},
		{"headless", head[:400], "cut short"},
		{"rowless", head, "cut short"},
		{"nameless", strings.Join(lines[:13], ""), "ends after its header"},
		{"cut", strings.Join(lines[:40], ""), "the header promises them until 2020-12-31"},
		{"half a row", short[:len(short)-12], "line 40: there are"},
		{"turned", head + rows[1] + rows[0], "line 16: 1984-01-01 comes after 1984-01-02"},
		{"twice", head + rows[0] + rows[1] + rows[1], "line 17: 1984-01-02 stands twice, first on line 16"},
		{"a word", with(",0.21,", ",wet,"), `line 15: column PRECTOTCORR: "wet" is not a number`},
		{"a day", with("1984,1,2,", "1984,2,30,"), "there is no 1984-02-30"},
		{"far", with("1984,1,3,", "9984,1,3,"), "more than 20 years after the row before it, 1984-01-02"},
		{"unit", with("kW-hr/m^2/day", "furlongs"), `unit "furlongs" is not known`},
		{"pole", with("Latitude  35.0309", "Latitude  95.0309"), "line 4: latitude 95.0309 deg is not possible"},
		{"all negative", strings.ReplaceAll(short, ",0.", ",-0."), "look at the column's unit"},
		{"gauge cut", gauge[:len(gauge)-100], "cut short"},
		{"two gauges", gauge[:270] + "X" + gauge[271:540], "keep one station"},
		{"gauge month twice", gauge[:270] + gauge[:270], "stands twice, first on line 1"},
		{"gauge letters", gauge[:22] + "rain" + gauge[26:270], "is not a whole number"},
		{"typical cut", tmy[:strings.Index(tmy, "12/31/")], "8760 hours"},
		{"typical place", strings.Replace(tmy, ",-7,39.833", ",-7,139.833", 1), "latitude 139.833"},
		{"newer", "# weather record 2\n", "newer program"},
		{"surface network", " Desert Rock\n   36.62 -116.02 1007 m version 1\n 2024 48 2 17 0 0 0.000\n", "line 3: there are 7 values, not 48"},
	} {
		_, err := Read(c.name, strings.NewReader(c.text), Options{})
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), c.name) {
			t.Errorf("%s: got %v, want it to begin with the name and say %q", c.name, err, c.says)
		}
	}
}

// Paths that are no file are told apart.
func TestPathsThatAreNoFile(t *testing.T) {
	empty := t.TempDir() + "/empty.csv"
	if err := os.WriteFile(empty, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	large := t.TempDir() + "/large.csv"
	if err := os.WriteFile(large, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(large, largest+1); err != nil { // a hole: no disk is used
		t.Fatal(err)
	}
	for path, says := range map[string]string{
		"testdata": "is a folder", "testdata/none.csv": "no such file", empty: "is empty", large: "the most is 512 MB",
	} {
		if _, err := Open(path, Options{}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %q", path, err, says)
		}
	}
}

// A table without a header is refused with the options that it needs, and those serve.
func TestHeaderlessFilesSayWhatTheyNeed(t *testing.T) {
	for _, c := range []struct {
		file    string
		options [][2]string
	}{{angoche, saidOfAngoche}, {bangalore, saidOfBangalore}, {johannesburg, saidOfJohannesburg}, {sydneyHours, saidOfSydney}} {
		_, err := Open("testdata/"+c.file, Options{})
		if err == nil || !strings.Contains(err.Error(), "line 1") {
			t.Fatalf("%s was read without place and units: %v", c.file, err)
		}
		for _, o := range c.options {
			if !strings.Contains(err.Error(), o[0]+"=") {
				t.Errorf("%s: the refusal does not ask for %s: %v", c.file, o[0], err)
			}
		}
		open(t, c.file, c.options...)
	}
	var o Options
	for _, kv := range saidOfAngoche {
		if err := o.Set(kv[0], kv[1]); err != nil {
			t.Fatal(err)
		}
	}
	o.Units["ALLSKY_SFC_SW_DWN"] = "kWh/m2/day" // 3.6 times too much light
	if _, err := Open("testdata/"+angoche, o); err == nil || !strings.Contains(err.Error(), "look at the column's unit") {
		t.Errorf("light in the wrong unit: %v", err)
	}
	if err := o.Set("unit.RAIN", "mm"); err != nil {
		t.Fatal(err)
	}
	if _, err := Open("testdata/"+angoche, o); err == nil || !strings.Contains(err.Error(), "no column of that name") {
		t.Errorf("a unit for a column that is not there: %v", err)
	}
}

// Light in a unit that makes it far too little is warned of.
func TestTooLittleLightIsWarnedOf(t *testing.T) {
	r, err := Read("Wh", strings.NewReader(strings.Replace(text(t, crete), "kW-hr/m^2/day", "Wh/m^2/day", 1)), Options{})
	if err != nil || !hasNote(r.Warnings, "look at its unit") {
		t.Errorf("%v %v", r, err)
	}
}

// Options are refused with their limits.
func TestOptionsAreChecked(t *testing.T) {
	for _, c := range []struct{ key, value, says string }{
		{"latitude", "91", "between -90 and 90"}, {"latitude", "north", "number"}, {"longitude", "181", "between"}, {"altitude", "9000", "between"},
		{"clock", "15", "between"}, {"time", "lunar", "utc, solar"}, {"column.X", "snow", "is no column"}, {"colour", "blue", "is no option"}, {"unit.", "mm", "is no option"},
	} {
		var o Options
		if err := o.Set(c.key, c.value); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s=%s: %v, want %q", c.key, c.value, err, c.says)
		}
	}
}
