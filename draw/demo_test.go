package draw

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"suffice/draw/canvas"
	"suffice/examples"
	"suffice/hourly"
	"suffice/house"
	"suffice/report"
)

var update = flag.Bool("update", false, "write the pictures of the demo and the golden files anew")

// demo lives the demo house once for all tests.
var demo = sync.OnceValues(func() (*report.Proof, error) {
	f, err := house.Read("demo.yaml", examples.Demo)
	if err != nil {
		return nil, err
	}
	h, err := house.Compose(f)
	if err != nil {
		return nil, err
	}
	w, done, source, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, err
	}
	run, err := hourly.Prepare(h, w)
	if err != nil {
		return nil, err
	}
	p, err := report.Prove(run)
	if err == nil {
		p.Weather = report.Sky{Source: source, Report: done}
	}
	return p, err
})

func demoPictures(t *testing.T) []Picture {
	t.Helper()
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	return OfProof(p, sentences(t))
}

func sentences(t *testing.T) canvas.Sentences {
	t.Helper()
	say, err := English()
	if err != nil {
		t.Fatal(err)
	}
	return say
}

// TestContactSheet writes the pictures of the demo for phone and desk with -update; else it holds the
// files to what is drawn now. They show form and prove nothing.
func TestContactSheet(t *testing.T) {
	for _, p := range demoPictures(t) {
		for _, width := range [2]int{360, 760} {
			keep(t, filepath.Join("../docs/pictures", p.Name+"-"+strconv.Itoa(width)+".svg"), p.Alone(width))
		}
	}
}

func keep(t *testing.T, path, text string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(kept) != text {
		t.Errorf("%s is stale: go test ./draw/... -update writes it anew; look at it then", path)
	}
}
