package web

import (
	"net/http"
	"strings"

	"suffice/sheet"
)

// An hourView is an hour of the record, worked out.
type hourView struct {
	At     string // as it was written
	Said   string
	Before string // the hour before and after, for addresses; "" at an end
	After  string
	Faults []string
	Worked []sheet.Worked
}

// hourPage works the hour that the address names, else the one that tells most of the water.
func hourPage(v *view, r *http.Request) shown {
	run := v.Proof.Run
	h := hourView{At: strings.TrimSpace(r.FormValue("at"))}
	p := shown{Title: v.Say("hour.title"), Body: hourOf(v, &h)}
	if h.At == "" {
		h.At = string(run.AppendHour(nil, v.Seen.hours[tellsWater]))
	}
	at, err := run.HourAt(h.At)
	if err != nil {
		p.Status, h.Faults = http.StatusBadRequest, lines(err)
		return p
	}
	if h.Worked, err = v.explain(at); err != nil {
		return v.faulty(err)
	}
	h.At, h.Said = string(run.AppendHour(nil, at)), v.hourSaid(at)
	if at > 0 {
		h.Before = string(run.AppendHour(nil, at-1))
	}
	if at+1 < run.Hours() {
		h.After = string(run.AppendHour(nil, at+1))
	}
	return p
}
