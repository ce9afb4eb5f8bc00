package report

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"suffice/site/weather"
	"suffice/site/weather/files"
)

func recordPage(t *testing.T, r *weather.Record) string {
	t.Helper()
	var out strings.Builder
	s := weather.Summarise(r)
	if err := Record(&out, &s); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// The page of a record tells its spells, its driest runs, its frost and what drifts, in lines that
// fit a terminal.
func TestRecordPage(t *testing.T) {
	for file, says := range map[string][]string{
		"power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz": {"172 days  2000-05-04 to 2000-10-22", "Longest dull spells", "frost: none", "  12 months    252 mm  1989-12 to 1990-11   51 % of 492 mm", "temperature: the yearly values rise by 0.325"},
		"USW00023062_denver-central-park.dly.gz":                 {"winters without frost: 0 of 67", "at the earliest 1962-09-08", "  24 months"},
		"725650TYA_denver-intl-ap.csv.gz":                        {"rain: no complete year", "Air, degC"},
	} {
		r, err := files.Open(filepath.Join("../site/weather/files/testdata", file), files.Options{})
		if err != nil {
			t.Fatal(err)
		}
		page := recordPage(t, r)
		for _, want := range says {
			if !strings.Contains(page, want) {
				t.Errorf("%s does not say %q:\n%s", file, want, page)
			}
		}
		for line := range strings.Lines(page) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 90 {
				t.Errorf("%s: a line of %d columns: %s", file, n, line)
			}
		}
	}
}

// A chart's marks stand where its scale has them.
func TestBandsStandOnTheirScale(t *testing.T) {
	var out strings.Builder
	months := []weather.MonthSummary{{Month: 1, Rain: &weather.Band{Low: 0, Middle: 50, High: 100, Months: 3}}, {Month: 2}}
	w := &lines{to: &out}
	w.bands("rain", months, func(m *weather.MonthSummary) *weather.Band { return m.Rain }, 0, true)
	rows := strings.Split(out.String(), "\n")
	from := len("  " + strings.Repeat(" ", 10) + strings.Repeat(" ", 3*7) + "  ")
	chart := []rune(rows[3])[from:]
	if len(chart) != recordWidth || chart[0] != '·' || chart[recordWidth-1] != '·' || chart[(recordWidth-1)/2] != '●' && chart[recordWidth/2] != '●' {
		t.Errorf("%q", string(chart))
	}
	if !strings.Contains(rows[4], "no whole month") {
		t.Errorf("%q", rows[4])
	}
}
