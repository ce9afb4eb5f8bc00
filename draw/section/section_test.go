package section

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
)

var update = flag.Bool("update", false, "write the pictures anew")

// demoDay gives the demo house on a day of January 2003.
var demoDay = sync.OnceValues(func() (*Day, error) {
	f, err := house.Read("demo.yaml", examples.Demo)
	if err != nil {
		return nil, err
	}
	h, err := house.Compose(f)
	if err != nil {
		return nil, err
	}
	w, _, _, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, err
	}
	run, err := hourly.Prepare(h, w)
	if err != nil {
		return nil, err
	}
	hour, err := run.HourAt("2003-01-14T00")
	if err != nil {
		return nil, err
	}
	return DayOf(run, hour/24, "14 January 2003")
})

func fileOf(t *testing.T, text []byte) *house.File {
	t.Helper()
	f, err := house.Read("made.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func sentences(t *testing.T) canvas.Sentences {
	t.Helper()
	say, err := English()
	if err != nil {
		t.Fatal(err)
	}
	return say
}

func demoSection(t *testing.T) canvas.Picture {
	t.Helper()
	day, err := demoDay()
	if err != nil {
		t.Fatal(err)
	}
	return Of(fileOf(t, examples.Demo), day, sentences(t))
}

// TestContactSheet holds the drawn sections to the files in docs/pictures. They show form and prove nothing.
func TestContactSheet(t *testing.T) {
	southern := Of(fileOf(t, examples.Southern), nil, sentences(t))
	southern.Name = "section-southern"
	roof := Of(fileOf(t, examples.RoofAndTank), nil, sentences(t))
	roof.Name = "section-roof"
	for _, p := range []canvas.Picture{demoSection(t), southern, roof} {
		for _, width := range [2]int{360, 760} {
			keep(t, filepath.Join("../../docs/pictures", p.Name+"-"+strconv.Itoa(width)+".svg"), p.Alone(width))
		}
	}
}

func keep(t *testing.T, path, text string) {
	t.Helper()
	if *update {
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
