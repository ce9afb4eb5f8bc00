package cli

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"

	"suffice/house"
)

type newVerb struct {
	File string `arg:"" optional:"" default:"house.yaml" help:"The house file to write. One that is there is never replaced."`

	Name      *string  `name:"name" help:"What the house is called."`
	Latitude  *string  `name:"latitude" placeholder:"DEG" help:"North positive; or crete, to try the built-in weather."`
	Longitude *string  `name:"longitude" placeholder:"DEG" help:"East positive."`
	Altitude  *string  `name:"altitude" placeholder:"M" help:"Height above the sea."`
	Clock     *string  `name:"clock" placeholder:"UTC+2" help:"Standard time."`
	Weather   *string  `name:"weather" placeholder:"FILE" help:"A weather record, or crete for the built-in one."`
	Given     []string `name:"given" sep:"none" placeholder:"KEY=VALUE" help:"What the weather file does not say itself, as weather look takes it. May be repeated."`
	Residents *string  `name:"residents" help:"How many live here."`
	Supplies  *string  `name:"supplies" help:"Some of tank, panels, collector, gas, with blanks between."`
	Roof      *string  `name:"roof" placeholder:"M2" help:"Roof that rain is caught from, as seen from above."`
	Surface   *string  `name:"surface" complete:"surface" help:"What the rain falls on."`
	Budgets   *string  `name:"budgets" help:"Which must suffice: water, power or both, with blanks between."`

	Usual bool `name:"usual" help:"Take the answer in brackets wherever one is offered."`
}

func (v *newVerb) Help() string {
	return `Each question can be answered at a terminal, from a pipe, or by its flag beforehand; an
empty line takes the answer in brackets. The sizes in the file are rules of thumb, each
written out as a comment: change them, and let suffice prove say what they are worth.
Mains water and mains power are not computed yet.

Examples:
  suffice new                                     asks, and writes house.yaml
  suffice new cabin.yaml --latitude=crete --usual
  suffice new --latitude -33.87 --longitude 151.21 --altitude 30 --weather sky.csv.gz`
}

// Run asks, tries the answers, and writes the file.
func (v *newVerb) Run(ctx context.Context, s Streams) error {
	if _, err := os.Lstat(v.File); !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s is there already and is never replaced: name another file, or change a value with suffice set %s", v.File, v.File)
	}
	a := asker{ctx: ctx, s: s, in: bufio.NewReader(s.In), usual: v.Usual}
	p := v.plan(&a)
	if a.err != nil {
		return a.err
	}
	text, err := p.text()
	if err != nil {
		return ownFault{err}
	}
	h, err := composed(v.File, text)
	if err != nil {
		return ownFault{fmt.Errorf("the file that the answers make has faults:\n%w", err)}
	}
	if err := writeNew(v.File, text); err != nil {
		return err
	}
	fmt.Fprintf(s.Err, "suffice: wrote %s\n", v.File)
	printList(s.Err, "Look at this", h.Warnings)
	next(s, "suffice prove%s, then look through the sizes in the file", ifNot(v.File, ownHouse))
	return nil
}

// ifNot gives a word with a blank before it, unless it is what a verb takes anyway.
func ifNot(word, anyway string) string {
	if word == anyway {
		return ""
	}
	return " " + word
}

func composed(path string, text []byte) (*house.House, error) {
	file, err := house.Read(path, text)
	if err != nil {
		return nil, err
	}
	return house.Compose(file)
}

// writeNew writes a file that was not there, or nothing.
func writeNew(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("%s cannot be made: %w", path, err)
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return errors.Join(fmt.Errorf("%s was not written: %w", path, err), os.Remove(path))
	}
	return nil
}

// plan asks for all that the file needs.
func (v *newVerb) plan(a *asker) plan {
	p := plan{file: v.File}
	p.name = a.ask(v.Name, question{flag: "name", asks: "What is the house called", key: "name", usual: "House"})
	v.where(a, &p)
	p.residents = a.count(v.Residents, question{flag: "residents", asks: "How many people live in it", key: "people.residents", usual: "2", most: mostHeads})
	p.supplies = a.words(v.Supplies, question{flag: "supplies", asks: "What is or will be there: tank (rain), panels (with a battery), collector (solar hot water), gas (bottles)",
		usual: "tank panels gas"}, []string{"tank", "panels", "collector", "gas"})
	if p.has("tank") {
		p.roof = a.number(v.Roof, question{flag: "roof", asks: "Roof that rain is caught from, as seen from above", unit: "m2", key: "water.roofs[0].area", usual: "100"})
		p.surface = a.ask(v.Surface, question{flag: "surface", asks: "What the rain falls on: " + choices("water.roofs[0].surface"), key: "water.roofs[0].surface", usual: "metal"})
	}
	var budgets []string
	for _, b := range [][2]string{{"tank", "water"}, {"panels", "power"}} {
		if p.has(b[0]) {
			budgets = append(budgets, b[1])
		}
	}
	if len(budgets) > 0 {
		all := strings.Join(budgets, " ")
		p.budgets = a.words(v.Budgets, question{flag: "budgets", asks: "Which must suffice: " + strings.Join(budgets, ", "), usual: all}, budgets)
	} else if a.err == nil {
		a.err = errors.New("--supplies: with neither tank nor panels there is nothing to prove yet: name one of them")
	}
	return p
}

// where asks for the place and its weather.
func (v *newVerb) where(a *asker, p *plan) {
	latitude := question{flag: "latitude", asks: "Where: latitude, north positive, or crete for the built-in weather", unit: "deg", key: "site.latitude", or: "crete"}
	if a.usual && v.Latitude == nil {
		latitude.usual = "crete"
	}
	if p.latitude = a.ask(v.Latitude, latitude); p.latitude == "crete" {
		p.latitude, p.longitude, p.altitude, p.clock = crete.latitude, crete.longitude, crete.altitude, crete.clock
	} else {
		p.longitude = a.ask(v.Longitude, question{flag: "longitude", asks: "Longitude, east positive", unit: "deg", key: "site.longitude"})
		p.altitude = a.ask(v.Altitude, question{flag: "altitude", asks: "Height above the sea", unit: "m", key: "site.altitude"})
		p.clock = a.ask(v.Clock, question{flag: "clock", asks: "Standard time of the clock, without summer time", key: "site.clock", usual: clockAt(number(p.longitude))})
	}
	if a.err == nil {
		v.weather(a, p)
	}
}

// crete is where the built-in record is from.
var crete = place{latitude: "35.03 deg", longitude: "24.83 deg", altitude: "250 m", clock: "UTC+2"}

// near reports whether the built-in weather serves: within a degree, as suffice check has it.
func (p *place) near(q place) bool {
	return math.Abs(number(p.latitude)-number(q.latitude)) <= 1 && math.Abs(number(p.longitude)-number(q.longitude)) <= 1
}

// clockAt guesses the zone from the longitude: the sun highest about noon.
func clockAt(longitude float64) string {
	if hours := math.Round(longitude / 15); hours != 0 {
		return fmt.Sprintf("UTC%+g", hours)
	}
	return "UTC"
}

// weather asks for the record until it can be read.
func (v *newVerb) weather(a *asker, p *plan) {
	q := question{flag: "weather", asks: "Weather: a file of past weather of this place (suffice weather fetch gets one)", or: "crete"}
	if p.near(crete) {
		q.usual, q.asks = "crete", "Weather: a file of past weather, or the built-in one"
	}
	q.refuse = func(answer string) string {
		err := p.takeWeather(answer, v.Given)
		if err != nil && len(v.Given) == 0 && isFile(answer) {
			// Most files that cannot be read so only leave out what their header would say.
			fmt.Fprintf(a.s.Err, "%s cannot be read so: %v\n", answer, err)
			said := a.line("What the file does not say, as name=value with blanks between", "")
			if len(strings.Fields(said)) > 0 {
				err = p.takeWeather(answer, strings.Fields(said))
			}
		}
		if err != nil {
			return err.Error()
		}
		return ""
	}
	a.ask(v.Weather, q)
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// besideFile gives a path as the house file names it: from its own folder where that can be.
func besideFile(file, path string) string {
	from, err := filepath.Abs(filepath.Dir(file))
	if err != nil {
		return path
	}
	to, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	if rel, err := filepath.Rel(from, to); err == nil {
		return filepath.ToSlash(rel)
	}
	return filepath.ToSlash(to)
}

// An asker puts questions until one cannot be answered; then err says why.
type asker struct {
	ctx   context.Context // ends the wait for an answer
	s     Streams
	in    *bufio.Reader
	usual bool
	ended bool
	err   error
}

// A question is one thing to know.
type question struct {
	flag, asks string
	unit       string // that a bare number gets
	key        string // of the house file, whose limits the answer keeps
	usual      string // the answer that an empty line takes
	most       int    // of a count, 0 for what the key allows
	or         string // a word that is an answer too
	refuse     func(answer string) string
}

// ask gives the answer of the flag, of the person, or the usual one.
func (a *asker) ask(flag *string, q question) string {
	switch {
	case a.err != nil:
		return ""
	case flag != nil:
		answer := q.whole(*flag)
		if says := q.wrong(answer); says != "" {
			a.err = fmt.Errorf("--%s: %s", q.flag, says)
		}
		return answer
	case a.usual && q.usual != "":
		answer := q.whole(q.usual)
		fmt.Fprintf(a.s.Err, "%s: %s\n", q.asks, answer)
		if says := q.wrong(answer); says != "" {
			a.err = fmt.Errorf("--%s: %s", q.flag, says)
		}
		return answer
	}
	return a.until(q)
}

// until asks a person again until the answer is right. A pipe is asked once: its next line
// is the answer to the next question.
func (a *asker) until(q question) string {
	asks := q.asks
	if q.unit != "" {
		asks += ", in " + q.unit
	}
	for {
		answer := a.line(asks, q.usual)
		if a.err != nil {
			return ""
		}
		if answer == "" && (a.ended || !a.s.Typed) {
			a.err = fmt.Errorf("%s: there is no answer: type one, or give --%s", q.asks, q.flag)
			return ""
		}
		answer = q.whole(answer)
		says := "this has no usual answer: type one"
		if answer != "" {
			says = q.wrong(answer)
		}
		switch {
		case says == "":
			return answer
		case !a.s.Typed:
			a.err = fmt.Errorf("%s: %s", q.asks, says)
			return ""
		}
		fmt.Fprintf(a.s.Err, "  %s\n", says)
	}
}

// line asks and reads one line; an empty one, or none, is the usual answer.
func (a *asker) line(asks, usual string) string {
	if usual != "" {
		asks += " [" + usual + "]"
	}
	fmt.Fprintf(a.s.Err, "%s: ", asks)
	text, err := a.read()
	if a.err != nil {
		return ""
	}
	a.ended = a.ended || err == io.EOF
	text = orWord(strings.TrimSpace(text), usual)
	if !a.s.Typed || err != nil {
		fmt.Fprintln(a.s.Err, text) // so that the question and its answer can be read afterwards
	}
	return text
}

// read waits for a line, or for the person to break off.
func (a *asker) read() (string, error) {
	type read struct {
		text string
		err  error
	}
	lines := make(chan read, 1)
	go func() {
		text, err := a.in.ReadString('\n')
		lines <- read{text, err}
	}()
	select {
	case line := <-lines:
		return line.text, line.err
	case <-a.ctx.Done():
		fmt.Fprintln(a.s.Err)
		a.err = errors.New("broken off: nothing was written")
		return "", nil
	}
}

// whole puts the unit behind a bare number.
func (q *question) whole(answer string) string {
	answer = strings.TrimSpace(answer)
	if q.unit != "" && answer != "" && strings.Trim(answer, "+-.0123456789") == "" {
		return strings.TrimPrefix(answer, "+") + " " + q.unit
	}
	return answer
}

// wrong says what an answer does not keep to, or "".
func (q *question) wrong(answer string) string {
	switch {
	case q.refuse != nil:
		return q.refuse(answer)
	case answer == q.or && answer != "", q.key == "":
		return ""
	}
	return refused(q.key, answer)
}
