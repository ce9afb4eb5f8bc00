package cli

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	"suffice/quantity"
	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

type makeVerb struct {
	From    string `name:"from" placeholder:"FILE" help:"A weather file whose days and years are imitated."`
	Normals string `name:"normals" placeholder:"FILE" help:"Monthly normals, YAML or CSV (docs/made-weather.md), instead of a record."`
	Sky     string `name:"sky" placeholder:"FILE" help:"With --from a gauge: stretch the sky of this shorter record over it, instead of making years."`
	Years   int    `name:"years" default:"100" help:"How many years to make."`
	First   int    `name:"first" default:"2001" help:"The calendar year that the first one gets."`
	Seed    uint64 `name:"seed" default:"1" help:"Which of the possible weathers: the same seed gives the same years."`
	Redraw  bool   `name:"redraw" help:"Imitate not the record's years but as many drawn from them with replacement, by the seed: what several seeds then give differs also by what so few years tell."`
	Blocks  int    `name:"blocks" placeholder:"YEARS" help:"Lay the record's own years anew, in runs of so many, instead of making new ones."`
	Warmer  string `name:"warmer" placeholder:"K" help:"Then add to all temperatures, for example \"2 K\"; or twelve values, January first."`
	Less    string `name:"less-rain" placeholder:"%" help:"Then take so much of every month's rain away, for example \"10 %\"; or twelve values."`
	Fewer   string `name:"fewer-wet-days" placeholder:"%" help:"Then turn so many of the wet days dry, for example \"15 %\"; or twelve values."`
	Out     string `short:"o" name:"out" required:"" help:"The plain CSV to write; compressed where its name ends in .gz."`
	saidFlags
}

func (v *makeVerb) Run(s Streams) error {
	climate, changed, err := v.climate()
	if err != nil {
		return err
	}
	r, err := v.make()
	if err != nil {
		return err
	}
	if changed {
		if r, err = synth.Change(r, climate, v.Seed); err != nil {
			return err
		}
	}
	if err := files.Save(v.Out, r); err != nil {
		return err
	}
	for _, n := range r.Notes {
		fmt.Fprintf(s.Err, "%s\n", n)
	}
	_, err = fmt.Fprintf(s.Err, "wrote %s: %d %s rows\n", v.Out, r.Steps, r.Step)
	return err
}

// make makes the record that the flags ask for.
func (v *makeVerb) make() (*weather.Record, error) {
	if err := v.faults(); err != nil {
		return nil, err
	}
	if v.Normals != "" {
		g, err := v.fromNormals()
		if err != nil {
			return nil, err
		}
		return v.years(g)
	}
	r, err := v.open(v.From)
	switch {
	case err != nil:
		return nil, err
	case v.Sky != "":
		return v.stretched(r)
	case v.Blocks > 0:
		return synth.Blocks(r, v.First, v.Years, v.Blocks, v.Seed)
	}
	g, err := v.fit(r)
	if err != nil {
		return nil, err
	}
	return v.years(g)
}

func (v *makeVerb) fit(r *weather.Record) (*synth.Generator, error) {
	if v.Redraw {
		return synth.Redrawn(r, nil, v.Seed)
	}
	return synth.Fit(r, nil)
}

func (v *makeVerb) faults() error {
	var faults []error
	if (v.From == "") == (v.Normals == "") {
		faults = append(faults, errors.New("give either --from FILE or --normals FILE"))
	}
	if v.Normals != "" && (v.Blocks > 0 || v.Sky != "") {
		faults = append(faults, errors.New("--blocks and --sky need the record of --from"))
	}
	if v.Blocks > 0 && v.Sky != "" {
		faults = append(faults, errors.New("--blocks and --sky are done one after the other: write the stretched record first"))
	}
	if v.Redraw && (v.Normals != "" || v.Blocks > 0 || v.Sky != "") {
		faults = append(faults, errors.New("--redraw draws the years that --from FILE is fitted to: it does not go with --normals, --blocks or --sky"))
	}
	if v.Blocks < 0 {
		faults = append(faults, fmt.Errorf("--blocks %d: a run has at least 1 year", v.Blocks))
	}
	if v.Years < 1 || v.Years > synth.MostYears {
		faults = append(faults, fmt.Errorf("--years %d: make 1 to %d", v.Years, synth.MostYears))
	}
	if v.First < 1 || v.First+v.Years > 9999 {
		faults = append(faults, fmt.Errorf("--first %d: the years lie between 1 and 9999", v.First))
	}
	return errors.Join(faults...)
}

func (v *makeVerb) fromNormals() (*synth.Generator, error) {
	file, err := os.Open(v.Normals)
	if err != nil {
		return nil, err
	}
	defer file.Close() // only read
	n, err := synth.ReadNormals(v.Normals, file)
	if err != nil {
		return nil, err
	}
	return n.Generator()
}

func (v *makeVerb) years(g *synth.Generator) (*weather.Record, error) {
	g.First = v.First
	return g.Years(v.Years, v.Seed), nil
}

// stretched lays the sky over the gauge, and the gauge's rain beside it where both are days.
func (v *makeVerb) stretched(gauge *weather.Record) (*weather.Record, error) {
	sky, err := files.Open(v.Sky, files.Options{})
	if err != nil {
		return nil, err
	}
	r, _, err := synth.Stretch(sky, gauge, v.Seed)
	if err != nil {
		return nil, err
	}
	if r.Step == weather.Daily {
		r.Series = append(r.Series, *gauge.Of(weather.Rain))
	} else {
		r.Notes = append(r.Notes, "the sky is hourly and the gauge is not: give both files to the house, this one as sky and "+v.From+" as rain")
	}
	return r, nil
}

// climate reads the three changes.
func (v *makeVerb) climate() (c synth.Climate, changed bool, err error) {
	var warmer, less, fewer [12]float64
	err = errors.Join(
		monthsOf("--warmer", v.Warmer, "K", &warmer),
		monthsOf("--less-rain", v.Less, "", &less),
		monthsOf("--fewer-wet-days", v.Fewer, "", &fewer))
	for m := range 12 {
		c.Warmer[m], c.Rain[m], c.WetDays[m] = quantity.Kelvins(warmer[m]), 0-less[m], 0-fewer[m]
	}
	if err == nil {
		err = c.Faults()
	}
	return c, c != synth.Climate{}, err
}

// monthsOf reads one value or twelve, with the unit they share.
func monthsOf(flag, text, unit string, to *[12]float64) error {
	if text == "" {
		return nil
	}
	words := strings.Fields(text)
	n := 0
	for n < len(words) {
		if _, err := strconv.ParseFloat(words[n], 64); err != nil {
			break
		}
		n++
	}
	if n <= 1 {
		x, err := quantity.ReadIn(text, unit)
		if err != nil {
			return fmt.Errorf("%s: %w", flag, err)
		}
		for m := range to {
			to[m] = x
		}
		return nil
	}
	if n != len(to) {
		return fmt.Errorf("%s: %d values: give one, or one for each month", flag, n)
	}
	for m := range to {
		x, err := quantity.ReadIn(words[m]+" "+strings.Join(words[n:], " "), unit)
		if err != nil {
			return fmt.Errorf("%s: month %d: %w", flag, m+1, err)
		}
		to[m] = x
	}
	return nil
}
