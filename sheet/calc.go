package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"suffice/quantity"
)

// Calc is what a sheet's Do works on.
type Calc struct {
	worked *Worked
	faults []error
}

// Number gives a numeric input in the unit the sheet declares for it.
func (c *Calc) Number(name string) float64 { return c.value(name, Number).Number }

// Numbers gives a list input, each in the declared unit.
func (c *Calc) Numbers(name string) []float64 { return c.value(name, List).List }

// Text gives a text input.
func (c *Calc) Text(name string) string { return c.value(name, Text).Text }

// Given reports whether an input has a value: from the caller, or its default.
func (c *Calc) Given(name string) bool { _, ok := c.worked.Inputs[name]; return ok }

// Chosen reports whether the caller gave the input himself.
func (c *Calc) Chosen(name string) bool { return c.worked.Given[name] }

// Step adds a line of working and hands the value on, so that it can be used in place.
func (c *Calc) Step(says, formula, numbers string, value float64, unit string) float64 {
	c.worked.Steps = append(c.worked.Steps, Step{says, formula, numbers, value, unit})
	return value
}

// Result names a numeric outcome.
func (c *Calc) Result(name string, value float64, unit string) {
	c.result(Result{Name: name, Value: Value{Kind: Number, Number: value}, Unit: unit})
}

// ResultList names an outcome of several numbers.
func (c *Calc) ResultList(name string, values []float64, unit string) {
	c.result(Result{Name: name, Value: Value{Kind: List, List: values}, Unit: unit})
}

// ResultText names an outcome in words.
func (c *Calc) ResultText(name, text string) {
	c.result(Result{Name: name, Value: Value{Kind: Text, Text: text}})
}

// ResultByMethod names the answers of several published methods.
func (c *Calc) ResultByMethod(name string, by map[string]float64, unit string) {
	c.result(Result{Name: name, ByMethod: by, Unit: unit})
}

// Caution adds a caution that these numbers raise.
func (c *Calc) Caution(text string) { c.worked.Cautions = append(c.worked.Cautions, text) }

// Fail reports a fault of an input for the person: what, the value, the limit, the remedy.
func (c *Calc) Fail(format string, args ...any) {
	c.faults = append(c.faults, fmt.Errorf(format, args...))
}

func (c *Calc) result(r Result) { c.worked.Results = append(c.worked.Results, r) }

func (c *Calc) value(name string, kind Kind) Value {
	in := c.worked.Sheet.input(name)
	if in == nil || in.Kind != kind {
		panic(fmt.Sprintf("sheet %s: no input %q of that kind is declared", c.worked.Sheet.Name, name))
	}
	return c.worked.Inputs[name]
}

func (s *Sheet) input(name string) *Input {
	for i := range s.Inputs {
		if s.Inputs[i].Name == name {
			return &s.Inputs[i]
		}
	}
	return nil
}

// Read turns inputs as a person wrote them (name=value) into values; all faults come at once.
func (s *Sheet) Read(args map[string]string) (map[string]Value, error) {
	values := make(map[string]Value)
	var faults []error
	for name, text := range args {
		in := s.input(name)
		if in == nil {
			faults = append(faults, fmt.Errorf("%s has no input %q: it takes %s", s.Name, name, strings.Join(s.inputNames(), ", ")))
			continue
		}
		v, err := in.read(text)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %s: %w", s.Name, name, err))
		}
		values[name] = v
	}
	slices.SortFunc(faults, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) })
	return values, errors.Join(faults...)
}

func (s *Sheet) inputNames() []string {
	names := make([]string, len(s.Inputs))
	for i, in := range s.Inputs {
		names[i] = in.Name
	}
	return names
}

// Work does the calculation from values in the declared units. Inputs left out
// take their defaults. The error joins every fault.
func (s *Sheet) Work(given map[string]Value) (Worked, error) {
	w := Worked{Sheet: s, Inputs: make(map[string]Value), Given: make(map[string]bool), Cautions: slices.Clone(s.Cautions)}
	c := Calc{worked: &w}
	for i := range s.Inputs {
		in := &s.Inputs[i]
		if v, ok := given[in.Name]; ok {
			w.Inputs[in.Name], w.Given[in.Name] = v, true
			continue
		}
		if in.Maybe {
			continue
		}
		v, err := in.read(in.Default)
		if err != nil {
			panic(fmt.Sprintf("sheet %s: default of %s: %v", s.Name, in.Name, err))
		}
		w.Inputs[in.Name] = v
	}
	s.Do(&c)
	return w, errors.Join(c.faults...)
}

// read turns one input's text into its value and holds it against the declared limits.
func (in *Input) read(text string) (Value, error) {
	switch in.Kind {
	case Text:
		text = strings.TrimSpace(text)
		if len(in.Choices) > 0 && !slices.Contains(in.Choices, text) {
			return Value{}, fmt.Errorf("%q is not known: it is one of %s", text, strings.Join(in.Choices, ", "))
		}
		return Value{Kind: Text, Text: text}, nil
	case List:
		v := Value{Kind: List}
		for part := range strings.SplitSeq(text, ",") {
			n, err := in.number(part)
			if err != nil {
				return Value{}, err
			}
			v.List = append(v.List, n)
		}
		return v, nil
	default:
		n, err := in.number(text)
		return Value{Kind: Number, Number: n}, err
	}
}

func (in *Input) number(text string) (float64, error) {
	n, err := quantity.ReadIn(text, in.Unit)
	if err != nil {
		return 0, err
	}
	if in.Low != nil && n < *in.Low {
		return 0, fmt.Errorf("%s is too small: the least is %s", strings.TrimSpace(text), quantity.Text(*in.Low, in.Unit))
	}
	if in.High != nil && n > *in.High {
		return 0, fmt.Errorf("%s is too large: the most is %s", strings.TrimSpace(text), quantity.Text(*in.High, in.Unit))
	}
	return n, nil
}
