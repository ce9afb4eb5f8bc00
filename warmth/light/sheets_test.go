package light

import (
	"testing"

	"suffice/glass"
	"suffice/internal/check"
	"suffice/sheet"
	"suffice/site/air"
	"suffice/site/sun"
)

func worked(t *testing.T, s sheet.Sheet, args map[string]string) map[string]float64 {
	t.Helper()
	values, err := s.Read(args)
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Work(values)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Steps) < 3 || len(w.Cautions) == 0 {
		t.Errorf("%s: %d steps, %d cautions", s.Name, len(w.Steps), len(w.Cautions))
	}
	out := make(map[string]float64)
	for _, r := range w.Results {
		out[r.Name] = r.Value.Number
	}
	return out
}

// The sheets answer bare, and what the hour computes.
func TestSheets(t *testing.T) {
	for _, s := range Sheets() {
		worked(t, s, nil)
	}
	sky := worked(t, skySheet(), map[string]string{"temperature": "5degC", "humidity": "50%", "clearness": "0.7", "solar_time": "15h", "method": "clark-allen"})
	dew := air.DewPoint(air.VapourOfHumidity(5, 50))
	check.Balance(t, sky["emissivity"], ClarkAllen.Emissivity(dew, 15, ClarkAllen.Cloud(0.7)), "emissivity of the sheet")
	check.Balance(t, sky["light"], air.SkyLight(5, sky["emissivity"]), "long-wave light of the sheet, W/m2")

	in := worked(t, windowSheet(), map[string]string{"beam": "300W/m2", "incidence": "60deg", "sky": "0W/m2", "ground": "0W/m2", "sunlit": "0.5", "panes": "1", "thickness": "2.3mm", "extinction": "32/m", "frame_share": "0"})
	check.That(t, in["beam"]/150, check.Published{Source: "duffie-beckman", At: "ex. 5.3.1: one pane of 2.3 mm, 32/m, at 60 deg: share let through", Value: "0.768", Within: 0.001, Why: "the hour's table is straight between rows: held to 0.0005 of the glass itself", Standing: "remembered"})
	b := Window{Pane: glass.Window{Glazing: glass.Alike(1, glass.Pane{Thickness: 2.3, Index: glass.GlassIndex, Extinction: 32, Conductivity: 1}), Inside: 7.7, Outside: 25}}.open()
	beam, diffuse, inside := b.hour(sun.PlaneLight{Incidence: 0.5000000000000001, Beam: 300}, 0.5)
	check.Balance(t, in["total"], beam+diffuse+inside, "sun let in of the sheet, W/m2")
}

func TestWindowSheetRefusesHalfAPane(t *testing.T) {
	s := windowSheet()
	values, err := s.Read(map[string]string{"panes": "1.5"})
	if err != nil {
		t.Fatal(err)
	}
	if _, err = s.Work(values); err == nil {
		t.Error("half a pane was taken")
	}
}
