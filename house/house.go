// Package house is the design on paper: it reads and checks the house file and
// composes the parts that are built from it.
//
// A house file is one YAML document that a person can read aloud. Units are
// written, never assumed. Read tells all faults at once, each with its line, its
// column, the value, the limit and the remedy.
//
// Left out: physics. What a part does with its figures is the part's own matter.
package house

import "suffice/site"

// A House is what is built, ready for the hour. Parts that the file leaves out are nil or empty.
type House struct {
	Name      string
	Place     site.Place
	Horizon   site.Horizon
	Weather   Record
	Described []string // what the file describes and nothing computes yet
	Warnings  []string // what may be meant but is rarely right, as sentences for a person
}

// A Record says which weather the house is led through. Nothing is opened here.
type Record struct {
	Path    string     // of the record, "" for none or a built-in one
	BuiltIn string     // name of a built-in record, "" for none
	Rain    string     // path of a rain gauge to put in the place of the record's rain, "" for none
	Years   string     // "matched" or "drawn", where Rain is given
	Place   site.Place // for records that do not say where they are from
}
