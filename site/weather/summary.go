package weather

// A Summary is what a record truly holds, as "suffice weather look --json" prints it.
type Summary struct {
	Format     string                   `json:"format"`
	Latitude   *float64                 `json:"latitude"` // deg; null where the file names no place
	Longitude  *float64                 `json:"longitude"`
	First      string                   `json:"first"` // RFC 3339 hour or date, on the record's own clock
	Last       string                   `json:"last"`
	Hours      int                      `json:"hours,omitempty"` // rows of an hourly record
	Days       int                      `json:"days,omitempty"`  // rows of a daily record
	Columns    map[string]ColumnSummary `json:"columns"`
	Rain       *RainSummary             `json:"rain_mm_per_year"`       // null without a complete year
	Global     *float64                 `json:"global_kwh_m2_per_year"` // mean of the complete years; null without one
	LongestDry *int                     `json:"longest_dry_spell_days"` // days under 1 mm in a row, in complete years
	Gaps       []Gap                    `json:"gaps"`
	Notes      []string                 `json:"notes"`
	Warnings   []string                 `json:"warnings"`
}

// A ColumnSummary is the range of one column.
type ColumnSummary struct {
	Unit    string  `json:"unit"`
	Source  string  `json:"source"` // what the file calls it
	Min     float64 `json:"min"`
	Mean    float64 `json:"mean"`
	Max     float64 `json:"max"`
	Missing int     `json:"missing"` // rows without a value
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
}

// Summarise says what a record truly holds. Only complete years count towards rain,
// global light and dry spells.
func Summarise(r *Record) Summary { return Summary{Format: r.Format} }
