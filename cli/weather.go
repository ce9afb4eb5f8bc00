package cli

import (
	"fmt"
	"strings"

	"suffice/report"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

type weatherVerb struct {
	Look   lookVerb   `cmd:"" help:"Say what a record truly holds: ranges, gaps, rain, dry spells."`
	Import importVerb `cmd:"" help:"Write a record as plain CSV with its units in the header."`
	Fetch  fetchVerb  `cmd:"" help:"Fetch a record for a point from NASA POWER (not tried on the live network)."`
	Make   makeVerb   `cmd:"" help:"Make years of weather from normals or a record, stretch a sky, change the climate."`
}

// saidFlags is what a person adds where a file is silent.
type saidFlags struct {
	Given []string `name:"given" sep:"none" placeholder:"KEY=VALUE" help:"What the file does not say: latitude, longitude, altitude, name, time, clock, station, unit.COLUMN, column.COLUMN. May be repeated."`
}

// setOption puts one KEY=VALUE into the options of a file.
func setOption(o *files.Options, word string) error {
	key, value, ok := strings.Cut(word, "=")
	if !ok {
		return fmt.Errorf("--given %q: write KEY=VALUE, for example --given latitude=-33.87", word)
	}
	if err := o.Set(key, value); err != nil {
		return fmt.Errorf("--given %s: %w", word, err)
	}
	return nil
}

func (f saidFlags) open(paths ...string) (*weather.Record, error) {
	var o files.Options
	for _, word := range f.Given {
		if err := setOption(&o, word); err != nil {
			return nil, err
		}
	}
	return files.OpenAll(paths, o)
}

type lookVerb struct {
	Files []string `arg:"" name:"file" help:"A weather file, gzip-compressed or not; several files of one place are joined."`
	JSON  bool     `name:"json" help:"Print JSON."`
	saidFlags
}

func (v *lookVerb) Run(s Streams) error {
	r, err := v.open(v.Files...)
	if err != nil {
		return err
	}
	summary := weather.Summarise(r)
	if v.JSON {
		return writeJSON(s.Out, summary)
	}
	if err := report.Record(s.Out, &summary); err != nil {
		return err
	}
	if len(v.Files) == 1 {
		next(s, "suffice prove house.yaml --weather %s, or suffice new --weather=%s", v.Files[0], v.Files[0])
	}
	return nil
}

type importVerb struct {
	Files []string `arg:"" name:"file" help:"A weather file; several files of one place are joined."`
	Out   string   `short:"o" name:"out" required:"" help:"The plain CSV to write; compressed where its name ends in .gz."`
	saidFlags
}

func (v *importVerb) Run(s Streams) error {
	r, err := v.open(v.Files...)
	if err != nil {
		return err
	}
	if err := files.Save(v.Out, r); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.Err, "wrote %s: %d %s rows\n", v.Out, r.Steps, r.Step)
	return err
}
