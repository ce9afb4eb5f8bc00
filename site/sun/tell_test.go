package sun

import (
	"math"
	"testing"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site"
)

// The sheet light-hour, told an hour of a track of many days, gives its light again to the last bit.
func TestLightHourTellsTheColumn(t *testing.T) {
	skyline, err := site.NewHorizon(site.HorizonPoint{Azimuth: 80, Height: 6}, site.HorizonPoint{Azimuth: 200, Height: 2}, site.HorizonPoint{Azimuth: 285, Height: 5})
	if err != nil {
		t.Fatal(err)
	}
	at := site.Place{Latitude: 39.83, Longitude: -104.65, Clock: -7}
	var days []Date
	for month := int8(1); month <= 12; month++ {
		days = append(days, Date{2003, month, 14}, Date{2003, month, 15})
	}
	track := NewTrack(at, days)
	clear := make([]float64, track.Hours())
	for i := range clear {
		clear[i] = 700 * max(0, track.CosZenith[i]) * track.Share[i]
	}
	diffuse := make([]float64, len(clear))
	for i := range diffuse {
		diffuse[i] = 0.3 * clear[i]
	}
	for _, horizon := range []site.Horizon{{}, skyline} {
		f := NewFace(Plane{Slope: 55, Azimuth: 170}, 0.2, Perez, horizon)
		column := f.Fill(nil, track, diffuse, clear)
		for i := range column {
			l := Light{Diffuse: quantity.Irradiance(diffuse[i]), Beam: quantity.Irradiance(clear[i])}
			holdLight(t, f.Tell(at, horizon, days[i/24], i%24, l), column[i])
		}
	}
}

func holdLight(t *testing.T, told map[string]sheet.Value, want PlaneLight) {
	t.Helper()
	s := lightHourSheet()
	w, err := s.Work(told)
	if err != nil {
		t.Fatal(err)
	}
	wants := map[string]float64{"cos_incidence": want.Incidence, "beam": float64(want.Beam), "sky": float64(want.Sky),
		"ground": float64(want.Ground), "shaded": float64(want.Shaded), "total": float64(want.Total())}
	for _, r := range w.Results {
		v, ok := wants[r.Name]
		if ok && math.Float64bits(r.Value.Number) != math.Float64bits(v) {
			t.Errorf("%s on %s at %g: the sheet gives %v, the column %v", r.Name, told["date"].Text, told["hour"].Number, r.Value.Number, v)
		}
		delete(wants, r.Name)
	}
	if len(wants) > 0 {
		t.Errorf("no result for %v", wants)
	}
}

func TestLightHourRefuses(t *testing.T) {
	for _, args := range []map[string]string{{"date": "14 August"}, {"date": "2003-13-01"}, {"hour": "7.5"}, {"skyline_azimuth": "90deg"}} {
		if _, _, err := work(t, "light-hour", args); err == nil {
			t.Errorf("%v was taken", args)
		}
	}
}
