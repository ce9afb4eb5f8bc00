package cli

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"

	"suffice/internal/words"
)

// The help of verbs whose own file is about something else. Every verb has at least one
// example; a test parses them all.

func (*weatherVerb) Help() string {
	return `A verdict is only as good as its weather: look at a record before a house is led through it.

Examples:
  suffice weather look sky.csv.gz
  suffice weather import sky.csv.gz -o plain.csv.gz`
}

func (*lookVerb) Help() string {
	return `Nothing is filled or made: what the file lacks is counted. What it does not say itself, such as
where it was measured, can be given.

Examples:
  suffice weather look sky.csv.gz
  suffice weather look table.csv --given latitude=-16.22 --given longitude=39.91 --given unit.PRECTOTCORR=mm/day
  suffice weather look gauge.dly.gz --json`
}

func (*importVerb) Help() string {
	return `The plain form says its place, clock and units in its header, and reads back to the same
record (docs/records.md).

Examples:
  suffice weather import sky.csv.gz -o plain.csv.gz
  suffice weather import table.csv -o plain.csv --given unit.RAIN=mm`
}

func (*makeVerb) Help() string {
	return `Made years hang together: rain, light, temperature and humidity of a day belong to each other,
and dry years come as often as in what they are made from. What is assumed where the
normals are silent is said (docs/made-weather.md).

Examples:
  suffice weather make --from sky.csv.gz --years 200 -o made.csv.gz
  suffice weather make --normals normals.yaml -o made.csv.gz
  suffice weather make --from gauge.dly.gz --sky sky.csv.gz -o long.csv.gz
  suffice weather make --from sky.csv.gz --warmer "2 K" --less-rain "10 %" -o drier.csv.gz`
}

func (versionVerb) Help() string {
	return `Examples:
  suffice version`
}

// helpWords turns "help VERB" into what the parser knows.
func helpWords(args []string) []string {
	if len(args) == 0 {
		return []string{"--help"}
	}
	if args[0] == "help" {
		return append(append([]string{}, args[1:]...), "--help")
	}
	return args
}

// knownVerb refuses to help with a verb that does not exist.
func knownVerb(root *kong.Node, typed []string) error {
	line := typedLine{node: root}
	for _, w := range typed {
		line.read(w)
	}
	if len(line.args) == 0 {
		return nil
	}
	var names []string
	for _, c := range verbs(line.node, "") {
		name, _, _ := strings.Cut(c, "\t")
		names = append(names, name)
	}
	if len(names) == 0 {
		return fmt.Errorf("help takes a verb and no more: suffice help %s", strings.Join(typed[:len(typed)-len(line.args)], " "))
	}
	return fmt.Errorf("there is no verb %q: the nearest is %q; suffice help lists them", line.args[0], words.Nearest(line.args[0], names))
}
