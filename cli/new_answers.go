package cli

import (
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"suffice/examples"
	"suffice/house"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

// refused says what the house file has against a value of a key, or "". It is tried in a
// house that is known to be sound.
func refused(key, answer string) string {
	text, _, err := house.Splice("answer", examples.RoofAndTank, house.Change{Path: key, Value: answer})
	if err == nil {
		_, err = house.Read("answer", text)
	}
	var faults house.Faults
	switch {
	case err == nil:
		return ""
	case errors.As(err, &faults):
		return faults[0].Says
	}
	return err.Error()
}

// choices lists the words that a key takes.
func choices(path string) string {
	k, err := house.KeyAt(path)
	if err != nil {
		panic(fmt.Sprintf("cli: %v", err))
	}
	return strings.Join(k.Choices, ", ")
}

// number gives the figure of an answer that was found right before.
func number(answer string) float64 {
	figure, _, _ := strings.Cut(answer, " ")
	v, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		return 0 // an answer that was refused; the asker keeps the reason
	}
	return v
}

// count asks for a whole number.
func (a *asker) count(flag *string, q question) int {
	q.refuse = func(answer string) string {
		if says := refused(q.key, answer); says != "" {
			return says
		}
		if number(answer) > float64(q.most) {
			return fmt.Sprintf("%s is too many for these rules of thumb, which are for one household: the most is %d", answer, q.most)
		}
		return ""
	}
	return int(number(a.ask(flag, q)))
}

// number asks for a quantity and gives it in the question's unit.
func (a *asker) number(flag *string, q question) float64 {
	q.refuse = func(answer string) string {
		if says := refused(q.key, answer); says != "" {
			return says
		}
		if !strings.HasSuffix(answer, " "+q.unit) {
			return fmt.Sprintf("%s is not in %s: write the figure in %s", answer, q.unit, q.unit)
		}
		return ""
	}
	return number(a.ask(flag, q))
}

// words asks for some of the known words.
func (a *asker) words(flag *string, q question, known []string) []string {
	q.refuse = func(answer string) string {
		for _, word := range wordsOf(answer) {
			if !slices.Contains(known, word) {
				return fmt.Sprintf("%q is not one of %s", word, strings.Join(known, ", "))
			}
		}
		return ""
	}
	return wordsOf(a.ask(flag, q))
}

func wordsOf(answer string) []string { return strings.Fields(strings.ReplaceAll(answer, ",", " ")) }

type place struct{ latitude, longitude, altitude, clock string }

// A plan is what the answers say.
type plan struct {
	file, name string
	place
	builtIn   string
	record    string   // path as the house file names it
	reading   []string // what the record does not say itself
	dry       int      // longest run of days under 1 mm in the record, 0 where it has no complete year
	residents int
	supplies  []string
	roof      float64 // m2
	surface   string
	budgets   []string
}

func (p *plan) has(supply string) bool { return slices.Contains(p.supplies, supply) }

// takeWeather tries a record at the place: what proves the house later must open now.
func (p *plan) takeWeather(answer string, reading []string) error {
	p.builtIn, p.record, p.reading, p.dry = "", "", nil, 0
	switch {
	case answer == "crete":
		p.builtIn = answer
	case isFile(answer):
		p.record, p.reading = besideFile(p.file, answer), reading
	default:
		_, err := os.Stat(answer)
		return orError(err, fmt.Errorf("%s is not a file", answer))
	}
	text, err := p.siteAlone()
	if err != nil {
		return err
	}
	h, err := composed(p.file, text)
	if err != nil {
		return err
	}
	if p.record != "" {
		if _, _, _, err = h.Weather.Hours(h.Place); err != nil {
			return err
		}
	}
	return p.takeDry(&h.Weather)
}

func orError(err, otherwise error) error {
	if err != nil {
		return err
	}
	return otherwise
}

// takeDry looks up how long it stayed dry.
func (p *plan) takeDry(r *house.Record) error {
	var record *weather.Record
	var err error
	if r.BuiltIn != "" {
		record, err = files.Demo()
	} else {
		record, err = files.Open(r.Path, r.Reading)
	}
	if err != nil {
		return err
	}
	if longest := weather.Summarise(record).LongestDry; longest != nil {
		p.dry = *longest
	}
	return nil
}

// upTo rounds up to a multiple of a step.
func upTo(v, step float64) float64 { return math.Ceil(v/step-1e-9) * step }
