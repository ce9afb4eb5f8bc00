// Package sheet says what a worked calculation is: named inputs with units and
// defaults, steps with the formula and the numbers put in, results, sources and
// cautions.
//
// A domain declares its sheets beside the physics they use. The command line,
// the pages and the explanation of an hour show the same sheets, and a sheet
// calls the very functions the hour calls.
package sheet

// Kind says how an input is written.
type Kind int

const (
	Number Kind = iota // one quantity, or a bare number where Unit is ""
	List               // several, separated by commas
	Text               // a word, or text the sheet reads itself
)

// An Input is one named quantity that a sheet starts from.
type Input struct {
	Name    string
	Kind    Kind
	Unit    string   // the unit the sheet works in, as quantity writes it; "" for counts and text
	Default string   // as a person would write it, with its unit; every sheet answers bare
	Meaning string   // one line for a person
	Choices []string // the words allowed, for a Text
	Low     *float64 // the least value allowed, in Unit; nil for no limit
	High    *float64 // the largest value allowed, in Unit; nil for no limit
	Maybe   bool     // may be absent: has no default, and the sheet asks Given
}

// A Sheet is a small pure calculation.
type Sheet struct {
	Name     string // kebab-case, as typed on the command line
	Title    string
	Inputs   []Input
	Sources  []string // "key: place", the key standing in SOURCES.md
	Cautions []string
	Do       func(*Calc)
}

// At makes a limit for Input.Low and Input.High.
func At(v float64) *float64 { return &v }

// A Value is what an input or a result holds: exactly one of the fields that its Kind names.
type Value struct {
	Kind   Kind
	Number float64
	List   []float64
	Text   string
}

// A Step is one line of the working.
type Step struct {
	Says    string  `json:"says"`    // what is worked out, in words
	Formula string  `json:"formula"` // with symbols as in the source
	Numbers string  `json:"numbers"` // the same with the numbers put in
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
}

// A Result is one named outcome. ByMethod is set instead of Value where
// several published methods answer the same question.
type Result struct {
	Name     string
	Value    Value
	Unit     string
	ByMethod map[string]float64
}

// Worked is a sheet with its numbers.
type Worked struct {
	Sheet    *Sheet
	Inputs   map[string]Value
	Given    map[string]bool // inputs the caller gave; the others are defaults
	Steps    []Step
	Results  []Result
	Cautions []string // the sheet's own, then those that these numbers raised
}
