package web

import (
	"encoding/json"
	"math"
	"net/http"
)

func yearPage(v *view, _ *http.Request) shown {
	return shown{Here: "/year", Title: v.Say("year.title"), Body: yearBody(v)}
}

// A record is every day of the life in columns, for the picture that can be looked into.
type record struct {
	First  string      `json:"first"` // day, the others follow it where Days is empty
	Days   []int64     `json:"days"`  // seconds since 1970, at the day's midnight
	Series []recordRow `json:"series"`
}

type recordRow struct {
	Name   string    `json:"name"`
	Ink    string    `json:"ink"`  // custom property that holds its colour
	Dash   []float64 `json:"dash"` // of its line, so that two lines are told apart without colour
	Values []float64 `json:"values"`
}

// days answers with the record as JSON.
func (s *Site) days(w http.ResponseWriter, _ *http.Request) {
	v := &view{catalogue: s.say, lived: s.house.Load()}
	text, err := json.Marshal(v.record())
	if err != nil {
		http.Error(w, v.Say("fault.own", "fault", err), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	_, _ = w.Write(text) // a reader that has gone is no fault
}

func (v *view) record() record {
	days := v.Proof.Stated.Days
	r := record{First: v.dayTyped(0), Days: make([]int64, len(days)), Series: []recordRow{}}
	for d := range days {
		r.Days[d] = midnight(v.Proof.Run.Weather.Days[d])
	}
	column := func(key, ink string, dash []float64, of func(d int) float64) {
		row := recordRow{Name: v.Say(key), Ink: ink, Dash: dash, Values: make([]float64, len(days))}
		for d := range days {
			row.Values[d] = math.Round(1000*of(d)) / 10
		}
		r.Series = append(r.Series, row)
	}
	if v.hasWater() {
		column("year.tanks", "--water", []float64{}, func(d int) float64 { return days[d].TankEnd })
	}
	if v.hasPower() {
		column("year.battery", "--power", []float64{4, 3}, func(d int) float64 { return days[d].ChargeLow })
	}
	return r
}
