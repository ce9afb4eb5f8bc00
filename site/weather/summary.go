package weather

import (
	"math"
	"slices"
)

// DryDay is the rain, mm, below which a day counts as dry.
const DryDay = 1

// mostGaps is how many gaps a summary lists.
const mostGaps = 1000

// A Summary is what a record truly holds, as "suffice weather look --json" prints it.
type Summary struct {
	Format     string                   `json:"format"`
	Latitude   *float64                 `json:"latitude"` // deg; null where nobody said
	Longitude  *float64                 `json:"longitude"`
	Altitude   *float64                 `json:"altitude_m"`
	First      string                   `json:"first"`           // the first day, or the hour by its beginning with its distance from UTC
	Last       string                   `json:"last"`            // the last day, or the beginning of the last hour
	Hours      int                      `json:"hours,omitempty"` // rows of an hourly record
	Days       int                      `json:"days,omitempty"`  // rows of a daily record
	Columns    map[string]ColumnSummary `json:"columns"`
	Rain       *RainSummary             `json:"rain_mm_per_year"`       // null without a complete year
	Global     *float64                 `json:"global_kwh_m2_per_year"` // mean of the complete years; null without one
	LongestDry *int                     `json:"longest_dry_spell_days"` // days under 1 mm in a row, in complete years
	DrySpells  []Spell                  `json:"dry_spells"`             // the five longest of them, the longest first
	DullSpells []Spell                  `json:"dull_spells"`            // days of a clearness below 0.35 in a row, in complete years, the same; empty without a place
	DullDays   *float64                 `json:"dull_days_per_year"`     // null without a place or a complete year
	Frost      *FrostSummary            `json:"frost"`                  // null without a complete year
	DriestRuns []DryRun                 `json:"driest_runs"`            // of 6, 12 and 24 months
	Months     []MonthSummary           `json:"months"`                 // January to December
	Trends     []Trend                  `json:"trends"`                 // of yearly values, from ten complete years on
	Jumps      []Jump                   `json:"jumps"`                  // the same
	Gaps       []Gap                    `json:"gaps"`                   // the longest, at most 1000, in the order of time
	MoreGaps   int                      `json:"more_gaps"`              // shorter ones that are not listed
	Unread     []string                 `json:"unread"`                 // the file's names of what it holds beside these columns
	Notes      []string                 `json:"notes"`
	Warnings   []string                 `json:"warnings"`
}

// A ColumnSummary is the range of one column. A column without any value is not listed.
type ColumnSummary struct {
	Unit    string  `json:"unit"`
	Source  string  `json:"source"` // what the file calls it
	Min     float64 `json:"min"`
	Mean    float64 `json:"mean"`
	Max     float64 `json:"max"`
	Missing int     `json:"missing"` // rows without a value, whatever the reason

	Traces      int `json:"traces,omitempty"`      // rain too little to measure, counted as 0
	Accumulated int `json:"accumulated,omitempty"` // shares of totals over several days
	Flagged     int `json:"flagged,omitempty"`     // missing since the agency doubted them
	Presumed    int `json:"presumed,omitempty"`    // missing since the zero was presumed
	Impossible  int `json:"impossible,omitempty"`  // missing since they cannot be
}

// A RainSummary is what fell in the complete years.
type RainSummary struct {
	Mean          float64 `json:"mean"`
	Min           float64 `json:"min"`
	Max           float64 `json:"max"`
	CompleteYears int     `json:"complete_years"`
	MinYear       int     `json:"min_year"`
	MaxYear       int     `json:"max_year"`
}

// A Gap is a run of rows in which a column has no value.
type Gap struct {
	Column string `json:"column"`
	First  string `json:"first"`
	Last   string `json:"last"`
	Rows   int    `json:"rows"`
	start  int
}

// Summarise says what a record truly holds. Only complete years, on the record's own
// calendar, count towards rain, global light and dry spells.
func Summarise(r *Record) Summary {
	s := Summary{Format: r.Format, First: r.when(0), Last: r.when(max(0, r.Steps-1)),
		Columns: make(map[string]ColumnSummary), Unread: append([]string{}, r.Unread...), Notes: append([]string{}, r.Notes...), Warnings: append([]string{}, r.Warnings...)}
	if r.Placed {
		s.Latitude, s.Longitude = new(float64(r.Place.Latitude)), new(float64(r.Place.Longitude))
		s.Altitude = new(float64(r.Place.Altitude))
	}
	if r.Step == Hourly {
		s.Hours = r.Steps
	} else {
		s.Days = r.Steps
	}
	for i := range r.Series {
		if c, any := r.summariseColumn(&r.Series[i]); any {
			s.Columns[r.Series[i].Column.String()] = c
		}
		s.Gaps = append(s.Gaps, r.gaps(&r.Series[i])...)
	}
	s.Gaps, s.MoreGaps = longestGaps(s.Gaps)
	s.rain(r)
	s.global(r)
	s.spells(r)
	return s
}

// spells tells of runs of days, of months, and of what changed from year to year.
func (s *Summary) spells(r *Record) {
	d := r.byDay()
	s.DrySpells, s.DriestRuns, s.DullSpells = d.dry(), d.driest(), []Spell{}
	if r.Placed {
		s.DullSpells, s.DullDays = d.dull(r.Place.Latitude)
	}
	s.Frost, s.Months = d.frost(), d.byMonth()
	s.drift(d)
}

func (r *Record) summariseColumn(s *Series) (out ColumnSummary, any bool) {
	out = ColumnSummary{Unit: s.Column.Unit(r.Step), Source: s.Source}
	low, high, sum, n := math.Inf(1), math.Inf(-1), 0.0, 0
	for i, v := range s.Values {
		switch s.MarkAt(i) {
		case Trace:
			out.Traces++
		case Accumulated:
			out.Accumulated++
		case Flagged:
			out.Flagged++
		case Presumed:
			out.Presumed++
		case Impossible:
			out.Impossible++
		}
		if math.IsNaN(v) {
			out.Missing++
			continue
		}
		low, high, sum, n = min(low, v), max(high, v), sum+v, n+1
	}
	if n > 0 {
		out.Min, out.Mean, out.Max = round(low, 4), round(sum/float64(n), 4), round(high, 4)
	}
	return out, n > 0
}

// round takes off the digits that only binary arithmetic put there.
func round(v float64, decimals int) float64 {
	ten := math.Pow10(decimals)
	return math.Round(v*ten) / ten
}

func (r *Record) gaps(s *Series) []Gap {
	var gaps []Gap
	for i := 0; i < len(s.Values); i++ {
		if !math.IsNaN(s.Values[i]) {
			continue
		}
		j := i
		for j+1 < len(s.Values) && math.IsNaN(s.Values[j+1]) {
			j++
		}
		gaps = append(gaps, Gap{Column: s.Column.String(), First: r.when(i), Last: r.when(j), Rows: j - i + 1, start: i})
		i = j
	}
	return gaps
}

// longestGaps keeps the longest, in the order of time.
func longestGaps(gaps []Gap) ([]Gap, int) {
	slices.SortStableFunc(gaps, func(a, b Gap) int { return b.Rows - a.Rows })
	more := max(0, len(gaps)-mostGaps)
	gaps = gaps[:len(gaps)-more]
	slices.SortStableFunc(gaps, func(a, b Gap) int { return a.start - b.start })
	if gaps == nil {
		gaps = []Gap{}
	}
	return gaps, more
}

// daySums gives the total of each whole day in rows from to to, NaN where the day is missing.
func (r *Record) daySums(s *Series, from, to int) []float64 {
	per := r.Step.perDay()
	sums := make([]float64, 0, (to-from)/per)
	for i := from; i < to; i += per {
		sums = append(sums, dayTotal(s.Values[i:i+per]))
	}
	return sums
}

// dayTotal sums a day's rows, up to a quarter of a day of them missing; with more the day
// is missing.
func dayTotal(rows []float64) float64 {
	sum, missing := 0.0, 0
	for _, v := range rows {
		if math.IsNaN(v) {
			missing++
		} else {
			sum += v
		}
	}
	if missing > hoursMissingAllowed || missing == len(rows) {
		return math.NaN()
	}
	return sum
}

// hoursMissingAllowed is how many hours of a day may be missing before the day is: those
// that are interpolated.
const hoursMissingAllowed = 3

// total sums the days that are there, and counts the missing ones.
func total(days []float64) (sum float64, missing int) {
	for _, v := range days {
		if math.IsNaN(v) {
			missing++
		} else {
			sum += v
		}
	}
	return sum, missing
}

func (s *Summary) rain(r *Record) {
	rain := r.Of(Rain)
	if rain == nil {
		return
	}
	out := RainSummary{Min: math.Inf(1), Max: math.Inf(-1)}
	longest, run, before := 0, 0, math.MinInt
	r.eachYear(func(year, from, to int) {
		days := r.daySums(rain, from, to)
		sum, missing := total(days)
		if missing > MissingDaysAllowed {
			return
		}
		out.CompleteYears++
		out.Mean += sum
		if sum < out.Min {
			out.Min, out.MinYear = sum, year
		}
		if sum > out.Max {
			out.Max, out.MaxYear = sum, year
		}
		if from != before {
			run = 0
		}
		before = to
		for _, v := range days {
			if v < DryDay {
				run++
			} else { // rain, or nobody knows
				run = 0
			}
			longest = max(longest, run)
		}
	})
	if out.CompleteYears > 0 {
		out.Mean = round(out.Mean/float64(out.CompleteYears), 2)
		out.Min, out.Max = round(out.Min, 2), round(out.Max, 2)
		s.Rain, s.LongestDry = &out, &longest
	}
}

func (s *Summary) global(r *Record) {
	light := r.Of(Global)
	if light == nil {
		return
	}
	perRow := 1.0 // kWh/m2 in the day
	if r.Step == Hourly {
		perRow = 0.001 // W/m2 over the hour
	}
	sum, years := 0.0, 0
	r.eachYear(func(_, from, to int) {
		if yearly, missing := total(r.daySums(light, from, to)); missing <= MissingDaysAllowed {
			sum, years = sum+yearly*perRow, years+1
		}
	})
	if years > 0 {
		s.Global = new(round(sum/float64(years), 2))
	}
}
