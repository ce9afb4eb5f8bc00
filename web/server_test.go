package web

import (
	"math"
	"net/http"
	"net/http/httptest"
	"sync"
	"testing"

	"suffice/examples"
	"suffice/hourly"
	"suffice/house"
	"suffice/report"
	"suffice/site/weather"
)

// prove lives a house through the weather that its file names.
func prove(f *house.File) (*report.Proof, error) { return proveDays(f, math.MaxInt) }

// proveShort lives it through three years, for tests that change it again and again.
func proveShort(f *house.File) (*report.Proof, error) { return proveDays(f, 3*365+1) }

// cut leaves the first days of some weather.
func cut(w *weather.Hours, days int) {
	if days >= len(w.Days) {
		return
	}
	w.Days = w.Days[:days]
	for _, column := range []*[]float64{&w.Global, &w.Diffuse, &w.Beam, &w.Temperature, &w.Humidity, &w.Wind, &w.Rain} {
		if *column != nil {
			*column = (*column)[:24*days]
		}
	}
}

func proveDays(f *house.File, most int) (*report.Proof, error) {
	h, err := house.Compose(f)
	if err != nil {
		return nil, err
	}
	hours, done, source, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, err
	}
	cut(hours, most)
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

// demo is one that a test may change.
func demo(t testing.TB) *Site {
	t.Helper()
	s, err := New(Options{Name: "demo.yaml", Text: examples.Demo, Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// shared is a demo that tests share, each only reading.
var shared = sync.OnceValues(func() (*Site, error) {
	return New(Options{Name: "demo.yaml", Text: examples.Demo, Prove: prove})
})

func reading(t testing.TB) *Site {
	t.Helper()
	s, err := shared()
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
