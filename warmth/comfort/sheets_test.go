package comfort

import (
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/sheet"
)

func work(t *testing.T, args map[string]string) (map[string]sheet.Value, sheet.Worked, error) {
	t.Helper()
	s := Sheets()[0]
	values, err := s.Read(args)
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Work(values)
	got := make(map[string]sheet.Value)
	for _, r := range w.Results {
		got[r.Name] = r.Value
	}
	return got, w, err
}

// The sheet answers bare, by days, and for both standards, with what the package computes.
func TestBandSheet(t *testing.T) {
	got, w, err := work(t, nil)
	if err != nil || len(w.Steps) == 0 {
		t.Fatal(err, w.Steps)
	}
	check.Balance(t, got["neutral"].Number, float64(band(t, EN16798, "II", 18).Neutral), "neutral")
	got, _, err = work(t, map[string]string{"days": "20degC,18degC,16degC,17degC,19degC,21degC,22degC", "standard": "ashrae55", "category": "90", "temperature": "30degC"})
	if err != nil {
		t.Fatal(err)
	}
	want := band(t, ASHRAE55, "90", float64(RunningMean([7]float64{20, 18, 16, 17, 19, 21, 22})))
	check.Balance(t, got["low"].Number, float64(want.Low), "low")
	check.Balance(t, got["high"].Number, float64(want.High), "high")
	if !strings.HasPrefix(got["verdict"].Text, "too hot") {
		t.Errorf("30 degC in %+v is %q", want, got["verdict"].Text)
	}
}

func TestBandSheetSaysWhereItEnds(t *testing.T) {
	_, w, err := work(t, map[string]string{"outside_running_mean": "4degC", "temperature": "15degC"})
	if err != nil || len(w.Cautions) != 2 {
		t.Errorf("%v, cautions %q", err, w.Cautions)
	}
	for _, args := range []map[string]string{{"days": "20degC,18degC"}, {"standard": "ashrae55", "category": "II"}, {"outside_running_mean": "4degC", "days": "1degC,2degC,3degC,4degC,5degC,6degC,7degC"}} {
		if _, _, err := work(t, args); err == nil {
			t.Errorf("%v was taken", args)
		}
	}
}
