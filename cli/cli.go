// Package cli is the command line: one file per verb. A verb reads its input,
// asks the packages below once, and shows the answer. Results go to the output,
// everything else to the error stream.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/alecthomas/kong"
)

// Exit statuses, the same for every verb.
const (
	Suffices   = 0 // the answer was given; for a verdict: it suffices
	FallsShort = 1 // a budget with a want falls short
	InputFault = 2 // what was typed or a file is at fault
	OwnFault   = 3 // the program is at fault
)

// Streams is where a verb reads and writes, and what it may assume of them.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
	Width    int  // columns of text, 80 where not a terminal
	Colour   bool // may use colour, never as the only sign
	Terminal bool // a person is watching Err
	Typed    bool // a person types In
}

// a shortfall is no fault: it carries the exit status through kong.
var errFallsShort = errors.New("falls short")

// an ownFault is a mistake of the program and not of its user.
type ownFault struct{ error }

type commands struct {
	New     newVerb     `cmd:"" help:"Ask a few questions and write a house file that proves at once."`
	Prove   proveVerb   `cmd:"" help:"Let the house live through its weather and say whether water and power suffice."`
	Check   checkVerb   `cmd:"" help:"Read a house file and tell every fault in it."`
	Set     setVerb     `cmd:"" help:"Show or change one value of a house file, or take a change back."`
	Weather weatherVerb `cmd:"" help:"Look at a weather record, or write it in plain form."`
	Sheet   sheetVerb   `cmd:"" help:"Work a single calculation, or list them all."`
	Checks  checksVerb  `cmd:"" help:"List what the figures were checked against."`
	Open    openVerb    `cmd:"" help:"Show the house as pages on this machine."`
	Demo    demoVerb    `cmd:"" help:"Prove the built-in demo house."`
	Schema  schemaVerb  `cmd:"" help:"Print the house file's JSON Schema, for editors."`
	Version versionVerb `cmd:"" help:"Print the version."`

	Completion completionVerb `cmd:"" help:"Print the script that lets a shell complete verbs, flags, sheets and files."`
	Complete   completeVerb   `cmd:"" name:"__complete" hidden:"" passthrough:"" help:"What could stand here; the completion scripts ask it."`
}

const description = `Will it suffice? suffice lives a house through decades of weather, hour by hour,
and says whether its rain, sun and stores carry the people in it.

suffice help VERB shows a verb with examples. A beginning: suffice demo, or suffice new.

Exit status: 0 suffices or done, 1 falls short, 2 the input is at fault, 3 the program is.`

// parser reads command lines into the verbs.
func (c *commands) parser(s Streams, exit func(int), more ...kong.Option) (*kong.Kong, error) {
	return kong.New(c, append(more, kong.Name("suffice"), kong.Description(description), kong.Writers(s.Out, s.Err), kong.Exit(exit),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true}), kong.Bind(s))...)
}

// Run carries out one command line and gives the exit status.
func Run(ctx context.Context, args []string, s Streams) (status int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(s.Err, "suffice: a fault of the program: %v\n", r)
			status = OwnFault
		}
	}()
	var c commands
	exit := -1
	parser, err := c.parser(s, func(code int) { exit = code }, kong.BindTo(ctx, (*context.Context)(nil)))
	if err != nil {
		fmt.Fprintf(s.Err, "suffice: a fault of the program: %v\n", err)
		return OwnFault
	}
	if len(args) > 1 && args[0] == "help" {
		if err := knownVerb(parser.Model.Node, args[1:]); err != nil {
			return fault(s.Err, err)
		}
	}
	k, err := parser.Parse(negatives(helpWords(args)))
	if exit >= 0 {
		return Suffices // kong printed help
	}
	if err != nil {
		return fault(s.Err, fmt.Errorf("%w (suffice --help lists the verbs)", err))
	}
	return fault(s.Err, k.Run())
}

// fault prints what went wrong, one line a fault, and gives the exit status.
func fault(w io.Writer, err error) int {
	var own ownFault
	switch {
	case err == nil:
		return Suffices
	case errors.Is(err, errFallsShort):
		return FallsShort
	case errors.As(err, &own):
		fmt.Fprintf(w, "suffice: a fault of the program: %v\n", own.error)
		return OwnFault
	}
	for line := range strings.Lines(err.Error()) {
		fmt.Fprintf(w, "suffice: %s\n", strings.TrimRight(line, "\n"))
	}
	return InputFault
}

// create opens a file for a result and refuses to replace anything that is not a plain file.
func create(path string) (*os.File, error) {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a plain file: name another for the result", path)
	}
	return os.Create(path)
}
