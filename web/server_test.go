package web

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"suffice/examples"
	"suffice/hourly"
	"suffice/house"
	"suffice/report"
)

// prove lives a house through the weather that its file names.
func prove(f *house.File) (*report.Proof, error) {
	h, err := house.Compose(f)
	if err != nil {
		return nil, err
	}
	hours, done, source, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, err
	}
	run, err := hourly.Prepare(h, hours)
	if err != nil {
		return nil, err
	}
	p, err := report.Prove(run)
	if err == nil {
		p.Weather = report.Sky{Source: source, Report: done}
	}
	return p, err
}

func demo(t testing.TB) *Site {
	t.Helper()
	s, err := New(Options{Name: "demo.yaml", Text: examples.Demo, Prove: prove})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func get(t testing.TB, s http.Handler, path string) *httptest.ResponseRecorder {
	t.Helper()
	w := httptest.NewRecorder()
	s.ServeHTTP(w, httptest.NewRequest("GET", "http://localhost:8080"+path, nil))
	return w
}

func TestPagesAnswer(t *testing.T) {
	s := demo(t)
	for _, path := range []string{"/", "/?day=1999-11-20&tank=30%25", "/year", "/year/days.json", "/change", "/change?part=power", "/water", "/power", "/sheets", "/sheets/roof-yield", "/hour"} {
		if w := get(t, s, path); w.Code != http.StatusOK {
			t.Errorf("%s answers %d:\n%s", path, w.Code, w.Body)
		}
	}
}
