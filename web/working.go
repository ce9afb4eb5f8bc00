package web

import (
	"fmt"
	"strconv"

	"suffice/sheet"
	"suffice/sheets"
)

// workings are sheets worked with the house's own figures, and what they refused.
type workings struct {
	Worked  []sheet.Worked
	Refused []string
}

// A wanted is a sheet to be worked, with what stands beside its title and its inputs as a person writes them.
type wanted struct {
	sheet, of string
	args      map[string]string
}

// unfold works sheets. What a sheet refuses is told in its words: a house may lie outside the limits of a rule.
func (v *view) unfold(list ...wanted) (u workings) {
	for _, a := range list {
		sh := sheets.Named(a.sheet)
		if sh == nil {
			panic(fmt.Sprintf("web: there is no sheet %s", a.sheet))
		}
		worked, err := work(*sh, a)
		if err != nil {
			u.Refused = append(u.Refused, v.Say("working.refused", "sheet", sh.Title, "fault", err))
			continue
		}
		u.Worked = append(u.Worked, worked)
	}
	return u
}

func work(sh sheet.Sheet, a wanted) (sheet.Worked, error) {
	if a.of != "" {
		sh.Title += ": " + a.of
	}
	in, err := sh.Read(a.args)
	if err != nil {
		return sheet.Worked{}, err
	}
	return sh.Work(in)
}

// inUnit writes a number as an input of a sheet takes it; the unit is the sheet's own.
func inUnit(v float64, unit string) string { return strconv.FormatFloat(v, 'g', -1, 64) + " " + unit }

// A grid is a table of words and numbers: its columns of words stand first.
type grid struct {
	Label string // for who does not see it
	Heads []string
	Rows  [][]string
	Words int // columns of words
}
