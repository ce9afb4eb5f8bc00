package cli

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"suffice/house"
	"suffice/internal/check/table"
	"suffice/sheets"
)

// filesHere tells the shell to complete names of files, which it does better.
const filesHere = ":files"

type completeVerb struct {
	Words []string `arg:"" optional:""`
}

// Run prints what could stand in the place of the last word: one candidate a line, with a tab
// before its meaning.
func (v *completeVerb) Run(s Streams, k *kong.Context) error {
	for _, c := range completions(k.Model.Node, v.Words) {
		if _, err := fmt.Fprintln(s.Out, c); err != nil {
			return err
		}
	}
	return nil
}

// A typed line is what stands before the word that is being completed.
type typedLine struct {
	node    *kong.Node
	args    []string   // behind the verb
	pending *kong.Flag // waits for its value
	plain   bool       // behind --, where nothing is a flag
}

// completions gives the candidates for the last word.
func completions(root *kong.Node, words []string) []string {
	if len(words) == 0 {
		words = []string{""}
	}
	line, last := typedLine{node: root}, words[len(words)-1]
	for _, w := range words[:len(words)-1] {
		line.read(w)
	}
	name, value, given := strings.Cut(last, "=")
	switch {
	case line.pending != nil:
		return line.values(line.pending.Value, strings.TrimPrefix(last, "="), "")
	case !line.plain && strings.HasPrefix(last, "--") && given:
		if f := line.flag(name); f != nil {
			return line.values(f.Value, value, name+"=")
		}
		return nil
	case !line.plain && strings.HasPrefix(last, "-"):
		return line.flags(last)
	case len(line.node.Children) > 0 && len(line.args) > 0:
		return nil // behind a verb that does not exist
	case len(line.node.Children) > 0:
		return verbs(line.node, last)
	}
	if i := min(len(line.args), len(line.node.Positional)-1); i >= 0 && (i == len(line.args) || line.node.Positional[i].IsCumulative()) {
		return line.values(line.node.Positional[i], last, "")
	}
	return nil
}

// read takes in one whole word.
func (l *typedLine) read(w string) {
	switch {
	case l.pending != nil && w == "=": // bash cuts --flag=value into three words
	case l.pending != nil:
		l.pending = nil
	case w == "--":
		l.plain = true
	case !l.plain && strings.HasPrefix(w, "-"):
		if f := l.flag(w); f != nil && !f.IsBool() {
			l.pending = f
		}
	default:
		if i := slices.IndexFunc(l.node.Children, func(c *kong.Node) bool { return c.Name == w }); i >= 0 && len(l.args) == 0 {
			l.node = l.node.Children[i]
			return
		}
		l.args = append(l.args, w)
	}
}

// flag gives the flag of a word such as --json or -o, or nil.
func (l *typedLine) flag(word string) *kong.Flag {
	for _, group := range l.node.AllFlags(false) {
		for _, f := range group {
			if word == "--"+f.Name || f.Short != 0 && word == "-"+string(f.Short) {
				return f
			}
		}
	}
	return nil
}

func (l *typedLine) flags(begin string) (found []string) {
	for _, group := range l.node.AllFlags(true) {
		for _, f := range group {
			found = append(found, candidate("--"+f.Name, f.Help))
		}
	}
	return beginning(found, begin)
}

func verbs(n *kong.Node, begin string) (found []string) {
	for _, c := range n.Children {
		if !c.Hidden {
			found = append(found, candidate(c.Name, c.Help))
		}
	}
	return beginning(found, begin)
}

// candidate is a word and what it means.
func candidate(word, meaning string) string {
	return word + "\t" + strings.ReplaceAll(meaning, "\n", " ")
}

// beginning keeps the candidates that begin with what was typed.
func beginning(all []string, begin string) []string {
	return slices.DeleteFunc(all, func(c string) bool { return !strings.HasPrefix(c, begin) })
}

// values gives what an argument or a flag can be; before is put in front of each.
func (l *typedLine) values(v *kong.Value, begin, before string) []string {
	var all []string
	switch kind := v.Tag.Get("complete"); {
	case v.Enum != "":
		all = v.EnumSlice()
	case kind == "sheet":
		all = sheetNames()
	case kind == "input":
		all = inputsOf(l.args)
	case kind == "part":
		all = parts()
	case kind == "value":
		all = valuesOf(l.args)
	case kind == "surface":
		all = strings.Split(choices("water.roofs[0].surface"), ", ")
	case v.Flag != nil && strings.HasPrefix(v.Flag.FormatPlaceHolder(), "FILE") || v.Name == "file" || v.Name == "out":
		return []string{filesHere}
	}
	all = beginning(all, begin)
	for i := range all {
		all[i] = before + all[i]
	}
	return all
}

func sheetNames() (all []string) {
	for _, s := range sheets.All() {
		all = append(all, candidate(s.Name, s.Title))
	}
	return all
}

// inputsOf gives the inputs of the sheet that is named, but those that are given already.
func inputsOf(args []string) (all []string) {
	if len(args) == 0 {
		return nil
	}
	sh := sheets.Named(args[0])
	if sh == nil {
		return nil
	}
	for _, in := range sh.Inputs {
		if !slices.ContainsFunc(args[1:], func(a string) bool { return a == in.Name || strings.HasPrefix(a, in.Name+"=") }) {
			all = append(all, candidate(in.Name+"=", in.Meaning+", "+shown(in)))
		}
	}
	return all
}

// parts gives the packages that have published checks.
func parts() []string {
	rows, err := table.Of("")
	if err != nil {
		return nil // the verb itself will say so
	}
	var all []string
	for _, r := range rows {
		all = append(all, r.Package)
	}
	return slices.Compact(all)
}

// valuesOf gives the values of the house file that is named: those it states, and those it
// leaves to their defaults.
func valuesOf(args []string) (all []string) {
	if len(args) == 0 {
		return nil
	}
	file, err := house.Open(args[0])
	if err != nil {
		return nil // the verb itself will say so
	}
	for _, path := range house.Given(file) {
		k, err := house.KeyAt(path)
		if err == nil {
			all = append(all, candidate(path, k.Says))
		}
	}
	for _, d := range house.Defaults(file) {
		all = append(all, candidate(d.Path, "left out: "+d.Value))
	}
	return all
}

//go:embed complete.bash
var bashScript string

//go:embed complete.zsh
var zshScript string

//go:embed complete.fish
var fishScript string

type completionVerb struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"Which shell: bash, zsh or fish."`
}

func (v *completionVerb) Help() string {
	return `Put the line for your shell into its start file. Verbs, flags, the sheets with their inputs, and
the values of a house file are then completed.

Examples:
  suffice completion bash > ~/.local/share/bash-completion/completions/suffice
  suffice completion zsh > ~/.zfunc/_suffice      with fpath+=(~/.zfunc) before compinit
  suffice completion fish > ~/.config/fish/completions/suffice.fish`
}

func (v *completionVerb) Run(s Streams) error {
	script := map[string]string{"bash": bashScript, "zsh": zshScript, "fish": fishScript}[v.Shell]
	_, err := fmt.Fprint(s.Out, script)
	return err
}
