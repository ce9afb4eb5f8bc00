package cli

import (
	"errors"
	"fmt"
	"slices"

	"suffice/house"
)

type setVerb struct {
	File  string  `arg:"" help:"The house file."`
	Path  string  `arg:"" optional:"" complete:"value" help:"Which value, such as water.tanks[0].holds; lists count from 0."`
	Value *string `arg:"" optional:"" help:"Its new text, such as \"50 kL\". Without it the value is only shown."`
	Undo  bool    `name:"undo" help:"Take back the last change that was made by this verb or on a page."`
	JSON  bool    `name:"json" help:"Print JSON."`
}

func (v *setVerb) Help() string {
	return `Only the bytes of that one value change: comments, order and layout stay. A key that the
file leaves out is added to its group. A change after which the house would have a fault
is refused. The text before is kept in .versions beside the file.

Examples:
  suffice set house.yaml water.tanks[0].holds             show a value
  suffice set house.yaml water.tanks[0].holds "50 kL"
  suffice set house.yaml site.coldest "-4 degC"
  suffice set house.yaml --undo`
}

type setJSON struct {
	File    string          `json:"file"`
	Changes []house.Changed `json:"changes"`
	Kept    string          `json:"kept"` // where the text before lies, "" where nothing changed
	Hash    string          `json:"hash"`
}

func (v *setVerb) Run(s Streams) error {
	text, hash, err := house.ReadText(v.File)
	switch {
	case err != nil:
		return err
	case v.Undo && v.Path != "":
		return errors.New("--undo takes back the last change whole: name no value beside it")
	case v.Undo:
		return v.undo(hash, s)
	case v.Path == "":
		return errors.New("which value? write for example  suffice set house.yaml water.tanks[0].holds \"50 kL\"")
	case v.Value == nil:
		return v.show(text, s)
	}
	r, err := house.Edit(v.File, hash, []house.Change{{Path: v.Path, Value: *v.Value}})
	if err != nil {
		return err
	}
	if v.JSON {
		return writeJSON(s.Out, setJSON{v.File, r.Changes, r.Kept, r.Hash.String()})
	}
	c := r.Changes[0]
	switch {
	case r.Kept == "":
		fmt.Fprintf(s.Out, "%s: it is %s already\n", c.Path, c.Is)
		return nil
	case c.Added:
		fmt.Fprintf(s.Out, "%s: %s, which the file left out before\n", c.Path, c.Is)
	default:
		fmt.Fprintf(s.Out, "%s: %s, was %s\n", c.Path, c.Is, c.Was)
	}
	next(s, "suffice prove %s, or back: suffice set %s --undo", v.File, v.File)
	return nil
}

func (v *setVerb) undo(hash house.Hash, s Streams) error {
	r, err := house.Undo(v.File, hash)
	if err != nil {
		return err
	}
	if v.JSON {
		return writeJSON(s.Out, setJSON{v.File, []house.Changed{}, r.Kept, r.Hash.String()})
	}
	fmt.Fprintf(s.Out, "%s is as it was before the last change; what was undone is in %s\n", v.File, r.Kept)
	return nil
}

// show prints a value, or what holds where the file leaves it out.
func (v *setVerb) show(text []byte, s Streams) error {
	value, there, err := house.ValueAt(v.File, text, v.Path)
	if err != nil {
		return err
	}
	if v.JSON {
		return writeJSON(s.Out, map[string]any{"path": v.Path, "value": value, "given": there})
	}
	if there {
		_, err = fmt.Fprintln(s.Out, value)
		return err
	}
	file, err := house.Read(v.File, text)
	if err != nil {
		return err
	}
	defaults := house.Defaults(file)
	i := slices.IndexFunc(defaults, func(d house.Default) bool { return d.Path == v.Path })
	if i < 0 {
		_, err = fmt.Fprintln(s.Out, "left out, and nothing holds in its place")
		return err
	}
	_, err = fmt.Fprintf(s.Out, "left out: %s (%s)\n", defaults[i].Value, defaults[i].Source)
	return err
}

// next names the step that usually comes now. It goes to the error stream, so that a result
// that is read by a program stays a result.
func next(s Streams, format string, args ...any) {
	fmt.Fprintf(s.Err, "suffice: next: "+format+"\n", args...)
}
