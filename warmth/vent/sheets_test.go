package vent

import (
	"testing"

	"suffice/internal/check"
)

// The sheet answers bare, and with the wind, with what the package computes.
func TestStackSheet(t *testing.T) {
	s := Sheets()[0]
	for _, c := range []struct {
		args map[string]string
		want float64
	}{
		{nil, Through(Opening{Area: 0.5, Discharge: Sharp}, Opening{Area: 0.5, Height: 3, Discharge: Sharp}, Weather{Inside: 25, Outside: 18}).Flow},
		{map[string]string{"inlet": "1m2", "outlet": "2m2", "height": "4m", "wind": "3m/s", "inlet_pressure": "0.5", "outlet_pressure": "-0.3", "volume": "100m3"},
			Through(Opening{Area: 1, Discharge: Sharp, Pressure: 0.5}, Opening{Area: 2, Height: 4, Discharge: Sharp, Pressure: -0.3}, Weather{Inside: 25, Outside: 18, Wind: 3}).Flow},
		{map[string]string{"inside_temperature": "10degC", "outside_temperature": "25degC"},
			-Through(Opening{Area: 0.5, Discharge: Sharp}, Opening{Area: 0.5, Height: 3, Discharge: Sharp}, Weather{Inside: 10, Outside: 25}).Flow},
	} {
		values, err := s.Read(c.args)
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Work(values)
		if err != nil {
			t.Fatal(err)
		}
		if got := w.Results[0]; got.Name != "flow" || got.Unit != "m3/s" || len(w.Steps) < 3 || len(w.Cautions) < 3 {
			t.Errorf("%+v, %d steps, %d cautions", got, len(w.Steps), len(w.Cautions))
		}
		check.Balance(t, w.Results[0].Value.Number, c.want, "flow of the sheet, m3/s")
	}
}
