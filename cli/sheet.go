package cli

import (
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"suffice/internal/check/table"
	"suffice/quantity"
	"suffice/sheet"
	"suffice/sheets"
)

type sheetVerb struct {
	Name   string   `arg:"" optional:"" complete:"sheet" help:"The sheet; without it, all are listed."`
	Inputs []string `arg:"" optional:"" complete:"input" help:"Inputs as name=value, with units: roof=120m2."`
	JSON   bool     `name:"json" help:"Print JSON."`
}

func (v *sheetVerb) Help() string {
	return `Examples:
  suffice sheet                                  list every sheet with its inputs
  suffice sheet gas                              work one with its defaults
  suffice sheet roof-yield roof=120m2 rain=450mm coefficient=0.9`
}

func (v *sheetVerb) Run(s Streams) error {
	if v.Name == "" {
		return listSheets(s.Out, v.JSON)
	}
	sh := sheets.Named(v.Name)
	if sh == nil {
		return fmt.Errorf("no sheet is called %q: the nearest is %q; suffice sheet lists them", v.Name, sheets.Nearest(v.Name))
	}
	args, err := pairs(v.Inputs)
	if err != nil {
		return err
	}
	in, err := sh.Read(args)
	if err != nil {
		return err
	}
	w, err := sh.Work(in)
	if err != nil {
		return err
	}
	if v.JSON {
		return writeJSON(s.Out, sheetJSON(&w))
	}
	printWorked(s.Out, &w)
	return nil
}

// pairs splits "name=value" words.
func pairs(words []string) (map[string]string, error) {
	args := make(map[string]string, len(words))
	for _, w := range words {
		name, value, ok := strings.Cut(w, "=")
		if !ok {
			return nil, fmt.Errorf("%q is no input: write name=value, for example roof=120m2", w)
		}
		if _, twice := args[name]; twice {
			return nil, fmt.Errorf("%s is given twice: give it once", name)
		}
		args[name] = value
	}
	return args, nil
}

func listSheets(w io.Writer, asJSON bool) error {
	if asJSON {
		return writeJSON(w, listJSON())
	}
	for _, s := range sheets.All() {
		fmt.Fprintf(w, "%s: %s\n", s.Name, s.Title)
		for _, in := range s.Inputs {
			fmt.Fprintf(w, "    %-24s %s\n", in.Name+"="+shown(in), in.Meaning)
		}
	}
	return nil
}

func shown(in sheet.Input) string {
	if in.Maybe {
		return "(" + orWord(in.Unit, "text") + ")"
	}
	return in.Default
}

func orWord(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

type inputJSON struct {
	Name    string   `json:"name"`
	Unit    string   `json:"unit"`
	Default *string  `json:"default"`
	Meaning string   `json:"meaning"`
	Choices []string `json:"choices,omitempty"`
}

type titledJSON struct {
	Name   string      `json:"name"`
	Title  string      `json:"title"`
	Inputs []inputJSON `json:"inputs"`
}

func listJSON() []titledJSON {
	var list []titledJSON
	for _, s := range sheets.All() {
		t := titledJSON{Name: s.Name, Title: s.Title, Inputs: []inputJSON{}}
		for _, in := range s.Inputs {
			j := inputJSON{Name: in.Name, Unit: in.Unit, Meaning: in.Meaning, Choices: in.Choices}
			if !in.Maybe {
				j.Default = &in.Default
			}
			t.Inputs = append(t.Inputs, j)
		}
		list = append(list, t)
	}
	return list
}

type workedJSON struct {
	Sheet    string               `json:"sheet"`
	Inputs   map[string]valueJSON `json:"inputs"`
	Steps    []sheet.Step         `json:"steps"`
	Results  map[string]valueJSON `json:"results"`
	Sources  []string             `json:"sources"`
	Cautions []string             `json:"cautions"`
}

type valueJSON struct {
	Value any    `json:"value"`
	Unit  string `json:"unit"`
}

func sheetJSON(w *sheet.Worked) workedJSON {
	out := workedJSON{
		Sheet: w.Sheet.Name, Inputs: map[string]valueJSON{}, Steps: w.Steps, Results: map[string]valueJSON{},
		Sources: orEmpty(w.Sheet.Sources), Cautions: orEmpty(w.Cautions),
	}
	if out.Steps == nil {
		out.Steps = []sheet.Step{}
	}
	for _, in := range w.Sheet.Inputs {
		if v, ok := w.Inputs[in.Name]; ok {
			out.Inputs[in.Name] = valueJSON{plain(v), in.Unit}
		}
	}
	for _, r := range w.Results {
		if r.ByMethod != nil {
			out.Results[r.Name] = valueJSON{r.ByMethod, r.Unit}
			continue
		}
		out.Results[r.Name] = valueJSON{plain(r.Value), r.Unit}
	}
	return out
}

func orEmpty(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func plain(v sheet.Value) any {
	switch v.Kind {
	case sheet.List:
		return v.List
	case sheet.Text:
		return v.Text
	}
	return v.Number
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return ownFault{err}
	}
	return nil
}

// printWorked shows the working the way one would write it on paper.
func printWorked(w io.Writer, k *sheet.Worked) {
	fmt.Fprintf(w, "%s\n%s\n\n", k.Sheet.Title, strings.Repeat("-", len([]rune(k.Sheet.Title))))
	for _, in := range k.Sheet.Inputs {
		v, ok := k.Inputs[in.Name]
		if !ok {
			continue
		}
		from := "given"
		if !k.Given[in.Name] {
			from = "default"
		}
		fmt.Fprintf(w, "  %-22s %-20s %-8s %s\n", in.Name, valueText(v, in.Unit), from, in.Meaning)
	}
	if len(k.Steps) > 0 {
		fmt.Fprintln(w)
	}
	for _, st := range k.Steps {
		fmt.Fprintf(w, "  %s\n    %s\n    = %s = %s\n", st.Says, st.Formula, orWord(st.Numbers, "..."), rounded(st.Value, st.Unit))
	}
	fmt.Fprintln(w)
	for _, r := range k.Results {
		printResult(w, r)
	}
	printList(w, "Sources", published(k.Sheet.Sources))
	printList(w, "Cautions", k.Cautions)
}

func printResult(w io.Writer, r sheet.Result) {
	if r.ByMethod == nil {
		fmt.Fprintf(w, "  %-22s %s\n", r.Name, valueText(r.Value, r.Unit))
		return
	}
	fmt.Fprintf(w, "  %s\n", r.Name)
	for _, name := range slices.Sorted(maps.Keys(r.ByMethod)) {
		fmt.Fprintf(w, "    %-36s %s\n", name, rounded(r.ByMethod[name], r.Unit))
	}
}

func printList(w io.Writer, title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(w, "\n%s\n", title)
	for _, l := range lines {
		fmt.Fprintf(w, "  - %s\n", l)
	}
}

// published puts under each "key: place" which publication the key stands for.
func published(sources []string) (lines []string) {
	for _, source := range sources {
		if said := table.Publication(source); said != "" {
			source += "\n      " + said
		}
		lines = append(lines, source)
	}
	return lines
}

func valueText(v sheet.Value, unit string) string {
	switch v.Kind {
	case sheet.Text:
		return v.Text
	case sheet.List:
		parts := make([]string, len(v.List))
		for i, n := range v.List {
			parts[i] = strconv.FormatFloat(n, 'g', 5, 64)
		}
		return strings.TrimSpace(strings.Join(parts, ", ") + " " + unit)
	}
	return rounded(v.Number, unit)
}

// rounded shows five significant digits; JSON carries them all.
func rounded(v float64, unit string) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 5, 64), 64)
	if err != nil {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return quantity.Text(short, unit)
}
