package cli

import (
	"fmt"

	"suffice/house"
)

type checkVerb struct {
	File     string `arg:"" optional:"" help:"The house file; else house.yaml here, else the built-in demo."`
	Defaults bool   `name:"defaults" help:"Also list every default the file leans on, with its source."`
	JSON     bool   `name:"json" help:"Print JSON."`
}

func (v *checkVerb) Help() string {
	return `Every fault is told at once, each with its line, its column, the value, the limit
and the remedy.

Examples:
  suffice check house.yaml
  suffice check house.yaml --defaults`
}

type checkJSON struct {
	House     string          `json:"house"`
	Described []string        `json:"described_not_computed"`
	Warnings  []string        `json:"warnings"`
	Defaults  []house.Default `json:"defaults,omitempty"`
}

func (v *checkVerb) Run(s Streams) error {
	file, err := openHouse(v.File, s)
	if err != nil {
		return err
	}
	h, err := house.Compose(file)
	if err != nil {
		return err
	}
	if v.JSON {
		j := checkJSON{House: h.Name, Described: orEmpty(h.Described), Warnings: orEmpty(h.Warnings)}
		if v.Defaults {
			j.Defaults = house.Defaults(file)
		}
		return writeJSON(s.Out, j)
	}
	fmt.Fprintf(s.Out, "%s: no fault found\n", h.Name)
	printList(s.Out, "Described and not computed yet", h.Described)
	printList(s.Out, "Look at this", h.Warnings)
	if v.Defaults {
		fmt.Fprintln(s.Out, "\nDefaults this file leans on")
		for _, d := range house.Defaults(file) {
			fmt.Fprintf(s.Out, "  %-40s %-14s %s\n", d.Path, d.Value, d.Source)
		}
	}
	next(s, "suffice prove%s", ifNot(v.File, ""))
	return nil
}
