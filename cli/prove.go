package cli

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"runtime"

	"suffice/examples"
	"suffice/house"
	"suffice/report"
	"suffice/warmth"
	"suffice/web"
)

type proveVerb struct {
	File    string `arg:"" optional:"" help:"The house file; else house.yaml here, else the built-in demo."`
	JSON    bool   `name:"json" help:"Print JSON."`
	Rows    string `name:"rows" placeholder:"FILE.csv" help:"Write every hour as a row, the unit as the last word of each column's name."`
	Measure bool   `name:"measures" help:"Tell what each measure of warmth does: mass, insulation, earth, glass, overhang, shutters, vents and the section of earth left out in turn, which takes as many lives more."`
	Explain string `name:"explain" placeholder:"HOUR" help:"Show the working of one hour, for example 2003-08-14T15."`
	weatherFlags
}

func (v *proveVerb) Help() string {
	return `Examples:
  suffice prove                                   the house of this folder, or the demo
  suffice prove house.yaml --rows hours.csv       with every hour written out
  suffice prove house.yaml --explain 2003-08-14T15
  suffice prove house.yaml --measures             and the rooms without mass, glass, vents, ...
  suffice prove house.yaml --weather sky.csv --rain gauge.dly.gz --drawn

Exit status: 0 every budget with a want suffices, 1 one falls short, 2 the input is at fault.`
}

func (v *proveVerb) Run(s Streams) error {
	file, err := openHouse(v.File, s)
	if err != nil {
		return err
	}
	err = v.prove(file, s)
	v.afterwards(err, s)
	return err
}

// afterwards names what one does about a house that falls short.
func (v *proveVerb) afterwards(err error, s Streams) {
	if !errors.Is(err, errFallsShort) || v.JSON {
		return
	}
	file := orWord(v.File, ownHouse)
	next(s, "suffice prove %s --explain HOUR, for the working of an hour of the worst spell; suffice set %s PATH VALUE, for another size", file, file)
}

func (v *proveVerb) prove(file *house.File, s Streams) error {
	run, sky, err := v.prepare(file)
	if err != nil {
		return err
	}
	if v.Explain != "" {
		return explain(run, v.Explain, v.JSON, s)
	}
	proof, err := report.Prove(run)
	if err != nil {
		return ownFault{err}
	}
	proof.Weather = sky
	if v.Rows != "" {
		if err := writeRows(v.Rows, proof, s); err != nil {
			return err
		}
	}
	if err := v.print(proof, s); err != nil {
		return err
	}
	if !proof.Suffices() {
		return errFallsShort
	}
	return nil
}

func (v *proveVerb) print(p *report.Proof, s Streams) error {
	var lacks []report.Lack
	if v.Measure {
		if len(p.Run.Rooms()) == 0 {
			return errors.New("--measures: the file does not tell its rooms by their layers: give each wall its  layers, as examples/earth-house.yaml does")
		}
		var err error
		if lacks, err = p.Measures(runtime.GOMAXPROCS(0), progress(s, "measures left out", warmth.Measures)); err != nil {
			return ownFault{err}
		}
	}
	if v.JSON {
		all := p.JSON()
		if v.Measure {
			all.Measures = p.JSONOfMeasures(lacks)
		}
		return writeJSON(s.Out, all)
	}
	if err := p.Text(s.Out); err != nil || !v.Measure {
		return err
	}
	return p.TextOfMeasures(lacks, s.Out)
}

// writeRows writes every hour to a file.
func writeRows(path string, p *report.Proof, s Streams) error {
	f, err := create(path)
	if err != nil {
		return fmt.Errorf("--rows: %w", err)
	}
	out := bufio.NewWriterSize(f, 1<<16)
	err = report.Rows(out, p.Run, progress(s, "hours written", p.Run.Hours()))
	if flushed := out.Flush(); err == nil {
		err = flushed
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return fmt.Errorf("--rows %s: %w", path, err)
	}
	fmt.Fprintf(s.Err, "suffice: wrote %d hours to %s\n", p.Run.Hours(), path)
	return nil
}

// progress tells on the error stream how far long work is: a line that renews itself where a
// person is watching, nothing elsewhere.
func progress(s Streams, what string, all int) func(done int) {
	if !s.Terminal {
		return func(int) {}
	}
	last := -1
	return func(done int) {
		percent := 100 * done / all
		if percent == last {
			return
		}
		last = percent
		end := ""
		if percent == 100 {
			end = "\n"
		}
		fmt.Fprintf(s.Err, "\r%s: %d %%%s", what, percent, end)
	}
}

type demoVerb struct {
	JSON bool `name:"json" help:"Print JSON."`
	Open bool `name:"open" help:"Show the demo as pages too, though nobody watches a terminal; until Ctrl-C."`
	Once bool `name:"once" help:"End after the verdict, at a terminal too."`
	serveFlags
}

func (v *demoVerb) Help() string {
	return `The demo is an invented family of four with a home workshop, in a dry-summer climate.
suffice prove --rows and --explain work on it too, in a folder without a house.yaml.
At a terminal its pages are then served to this machine alone, until Ctrl-C; --once ends after
the verdict, and --open serves where nobody watches. What is changed there is forgotten when
the program ends.

Examples:
  suffice demo
  suffice demo --json
  suffice demo --once
  suffice demo --open`
}

// serves reports whether the pages follow the verdict.
func (v *demoVerb) serves(s Streams) bool {
	return v.Open || s.Terminal && s.Typed && !v.JSON && !v.Once
}

func (v *demoVerb) Run(ctx context.Context, s Streams) error {
	if err := loopbackOnly(v.Address); err != nil {
		return err
	}
	file, err := openDemo()
	if err != nil {
		return ownFault{err}
	}
	p := proveVerb{JSON: v.JSON}
	err = p.prove(file, s)
	if !v.serves(s) || err != nil && !errors.Is(err, errFallsShort) {
		return err
	}
	return errors.Join(v.serve(ctx, web.Options{Name: "demo.yaml", Text: examples.Demo, Prove: p.proved}, s), err)
}
