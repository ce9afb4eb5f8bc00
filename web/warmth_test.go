package web

import (
	"fmt"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"suffice/examples"
	"suffice/house"
	"suffice/warmth"
)

// roomed is the house with its rooms told by layers, through three years.
func roomed(t testing.TB) *Site {
	t.Helper()
	text, err := os.ReadFile("../examples/earth-house.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := New(Options{Name: "earth-house.yaml", Text: text, Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The page is whole, says what the proof says, and unfolds a working for every room.
func TestWarmthPage(t *testing.T) {
	s := roomed(t)
	page := get(t, s, "/warmth").Body.String()
	_, faults := hold(page)
	for _, f := range faults {
		t.Error(f)
	}
	if found := missingKey.FindString(forScript.ReplaceAllString(page, "")); found != "" {
		t.Errorf("the page shows %s", found)
	}
	v := &view{catalogue: s.say, lived: s.house.Load()}
	w := &v.Proof.Stated.Warmth
	said := []string{grouped(w.Outside) + " hours a year", w.Room, "radon", "carbon monoxide alarm"}
	for _, f := range v.Proof.RoomBudget(0) {
		said = append(said, withUnit(f.KWh, "kWh"))
	}
	for i := range v.Proof.Stated.Rooms {
		said = append(said, "Heat of a room in one hour: "+v.Proof.Stated.Rooms[i].Name, degrees(v.Proof.Stated.Rooms[i].Warmest))
	}
	for _, says := range said {
		if !strings.Contains(page, says) {
			t.Errorf("the page does not say %q", says)
		}
	}
}

// Measures are left out when somebody asks, beside the other pages, and shown when all are.
func TestMeasuresOnDemand(t *testing.T) {
	s := roomed(t)
	if l := s.house.Load(); l.leaving.begun {
		t.Error("nobody asked and the work has begun")
	}
	w := get(t, s, "/warmth?measures=yes")
	if w.Header().Get("Refresh") == "" || !strings.Contains(w.Body.String(), fmt.Sprintf("of %d lives are done", warmth.Measures)) {
		t.Errorf("the page does not say that it is at work: Refresh %q", w.Header().Get("Refresh"))
	}
	var page string
	for range 1200 {
		if w = get(t, s, "/warmth?measures=yes"); w.Header().Get("Refresh") == "" {
			page = w.Body.String()
			break
		}
		time.Sleep(100 * time.Millisecond)
	}
	v := &view{catalogue: s.say, lived: s.house.Load()}
	for _, row := range v.lackRows(v.leaveOut().List, 0) {
		if !strings.Contains(page, row.Says) || !strings.Contains(page, row.Cells[0]) {
			t.Errorf("the page does not tell %s: %v", row.Says, row.Cells)
		}
	}
	if _, faults := hold(page); len(faults) > 0 {
		t.Error(faults)
	}
}

// A house whose rooms are not told by layers reads what is missing, and what it is shown can be written into a file.
func TestWarmthSaysWhatIsMissing(t *testing.T) {
	s := reading(t)
	page := get(t, s, "/warmth").Body.String()
	for _, says := range []string{"layers", s.house.Load().File.Rooms[0].Name, "living room", "south glass"} {
		if !strings.Contains(page, says) {
			t.Errorf("the page does not say %q", says)
		}
	}
	head, _, _ := strings.Cut(string(examples.Demo), "\nrooms:")
	head = strings.Replace(head, "\n  food: {share: 40 %}\n  waste: {surfacing: no}", "", 1) // wants of parts that follow the rooms
	f, err := house.Read("shown.yaml", []byte(head+"\n"+roomExample+"\n"))
	if err != nil {
		t.Fatalf("the example is refused: %v", err)
	}
	h, err := house.Compose(f)
	if err != nil || h.Rooms == nil {
		t.Errorf("the example gives no rooms: %v", err)
	}
	bare, err := New(Options{Name: "roof-and-tank.yaml", Text: examples.RoofAndTank, Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	if page := get(t, bare, "/warmth").Body.String(); !strings.Contains(page, "describes no rooms") {
		t.Error("a house without rooms is not told so")
	}
}

// In a real browser the page is no wider than the screen, its pictures can be read, and axe-core finds nothing serious in it.
func TestWarmthInBrowser(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	server := httptest.NewServer(roomed(t))
	t.Cleanup(server.Close)
	axe := axeSource(t)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range []int64{360, 1440} {
			t.Run(fmt.Sprintf("%s at %d", scheme, width), func(t *testing.T) {
				ctx := tab(t, base)
				media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
				if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
					t.Fatal(err)
				}
				if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(server.URL+"/warmth"), chromedp.Evaluate[chromedp.Void](axe)); err != nil {
					t.Fatal(err)
				}
				over, err := chromedp.Run(ctx, chromedp.Evaluate[float64]("document.documentElement.scrollWidth - window.innerWidth"))
				if err != nil || over > 0 {
					t.Errorf("the page is %g pixels wider than the screen (%v)", over, err)
				}
				pictures(t, ctx)
				faults, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`axe.run(document, {resultTypes: ["violations"]}).then(r => r.violations
					.filter(v => v.impact === "serious" || v.impact === "critical").map(v => v.id + ": " + v.help))`, chromedp.EvalAwaitPromise))
				if err != nil {
					t.Fatal(err)
				}
				for _, fault := range faults {
					t.Error(fault)
				}
			})
		}
	}
}
