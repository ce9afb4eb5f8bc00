package web

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"suffice/examples"
	"suffice/house"
	"suffice/waste"
	"suffice/water"
)

// said fails for every text that a page does not hold.
func said(t *testing.T, page string, list ...string) {
	t.Helper()
	for _, says := range list {
		if !strings.Contains(page, says) {
			t.Errorf("the page does not say %q", says)
		}
	}
}

// The page Garden says what the proof says: harvest, energy, beds, light, water, salt.
func TestGardenPage(t *testing.T) {
	s := reading(t)
	page := get(t, s, "/garden").Body.String()
	v := &view{catalogue: s.say, lived: s.house.Load()}
	f := &v.Proof.Stated.Food
	said(t, page, percent(f.Share), percent(f.Fresh), percentOf(f.Energy), "mostly water", "terrace", "glass lean-to", "Planter: light through the year",
		"nicotine", "Greywater carries germs", "four months", "How this is worked out", "Good days", "shake or tap the trusses", "thin to the distance")
	for _, row := range v.cropTable(v.plots()).Rows {
		said(t, page, row[0], row[3])
	}
}

// What was noted down of the beds is what the account sums up: litres given and kilograms picked.
func TestBedsSeenAreTheAccounts(t *testing.T) {
	s := reading(t)
	v := &view{catalogue: s.say, lived: s.house.Load()}
	c := &v.Proof.Stated.Totals.Chain
	given, evaporated, picked := 0.0, 0.0, 0.0
	for b := range v.Seen.Beds {
		for m := range 12 {
			if b > 0 {
				given += float64(v.Seen.Beds[b].Given[m])
				evaporated += float64(v.Seen.Beds[b].Evaporated[m])
			}
		}
		for _, k := range v.Seen.Beds[b].Crops {
			picked += k.Picked
		}
	}
	all := 0.0
	for i := range v.Proof.Stated.Food.Years {
		all += v.Proof.Stated.Food.Years[i].Harvest.Total()
	}
	planter := 0.0
	for m := range 12 {
		planter += float64(v.Seen.Beds[0].Evaporated[m])
	}
	for _, k := range []struct {
		what      string
		got, want float64
	}{{"L given", given, float64(c.BedGiven)}, {"L given off by beds", evaporated, float64(c.Beds.Evaporated)}, {"L given off by the planter", planter, float64(c.Evaporated)}, {"kg picked", picked, all}} {
		if k.want == 0 || math.Abs(k.got-k.want) > 1e-9*k.want {
			t.Errorf("%s: %g were seen, the account has %g", k.what, k.got, k.want)
		}
	}
}

// The harvest of the picture is that of the whole years: what is eaten in its month is the share that is fresh.
func TestHarvestByMonthIsTheFreshShare(t *testing.T) {
	s := reading(t)
	v := &view{catalogue: s.say, lived: s.house.Load()}
	f := &v.Proof.Stated.Food
	month := f.Kitchen.People * f.Kitchen.Wants / 12
	fresh, years := 0.0, v.wholeYears()
	for _, y := range years {
		for _, kg := range y.Harvest.Eaten {
			fresh += min(kg, month) / float64(len(years))
		}
	}
	if got := fresh / (12 * month); math.Abs(got-f.Fresh) > 1e-9 || f.Fresh == 0 {
		t.Errorf("%g of the year's vegetables are eaten in their month, the verdict says %g", got, f.Fresh)
	}
}

// The page Waste says what the proof says, shows every rule that answers, and every row of the tables.
func TestWastePage(t *testing.T) {
	s := reading(t)
	page := get(t, s, "/waste").Body.String()
	v := &view{catalogue: s.say, lived: s.house.Load()}
	d := v.Proof.Run.House.Drains
	said(t, page, "Never enter a septic tank", "licensed person", "days a year", "years (in this record on", "Sludge, taken away", "Ripe compost")
	for _, rule := range waste.TankRules() {
		if _, err := rule.Capacity(v.told(d)); err == nil {
			said(t, page, rule.Name)
		}
	}
	for _, table := range waste.SetbackTables() {
		said(t, page, table.Name)
		for _, b := range waste.Breaches(table.Rows, d.Spacing) {
			said(t, page, fmt.Sprintf("%s asks for at least %s m", table.Name, amount(b.Least)))
		}
	}
	emptied := 0
	for i := 1; i < len(v.Proof.Stated.Days); i++ {
		if v.Proof.Stated.Days[i].Sludge < v.Proof.Stated.Days[i-1].Sludge/2 {
			emptied++
		}
	}
	if want := v.Proof.Stated.Totals.Chain.Desludgings; emptied != want && emptied != want-1 || want == 0 {
		t.Errorf("the days tell of %d emptyings, the account of %d", emptied, want)
	}
}

// noNumber is how Go writes what no figure may be.
var noNumber = regexp.MustCompile(`\bNaN\b|\bInf\b`)

var unsafe = regexp.MustCompile(`(?i)\bsafe(ly|ty)?\b`)

// The page Water follows a litre to the tree, credits barriers and never calls the water safe.
func TestWaterPageFollowsTheLitre(t *testing.T) {
	s := reading(t)
	page := get(t, s, "/water").Body.String()
	v := &view{catalogue: s.say, lived: s.house.Load()}
	uses := v.Proof.Run.Uses(&v.Proof.Stated.Totals)
	said(t, page, "from the cloud to the tree", fmt.Sprintf("used %.1f times", uses.Mean()), "at the tap, by the planter, to flush and by the trees", "days old",
		"ultraviolet lamp", "household-uv", "E. coli must not be found", "tested by a laboratory", ">nothing<", "While the power fails")
	if found := unsafe.FindString(page); found != "" {
		t.Errorf("the page says %q", found)
	}
	uv, err := water.BarrierNamed("household-uv")
	if err != nil {
		t.Fatal(err)
	}
	said(t, page, credit(uv.Low[water.Viruses], uv.High[water.Viruses], true))
}

// A house without beds, planter or septic tank reads so, and the lines that it is shown are a house file's.
func TestChainSaysWhatIsMissing(t *testing.T) {
	bare, err := New(Options{Name: "roof-and-tank.yaml", Text: examples.RoofAndTank, Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	said(t, get(t, bare, "/garden").Body.String(), "describes no beds", "terrace", "flush_well")
	said(t, get(t, bare, "/waste").Body.String(), "describes no septic tank", "percolation")
	said(t, get(t, bare, "/water").Body.String(), "counts as used once", "no treatment", "no flush well")
	text := string(examples.RoofAndTank) + "\n" + planterExample + "\n" + bedExample + "\n" + wasteExample + "\n"
	text = strings.Replace(text, "water:\n", trainExample+"\n", 1)
	text = strings.Replace(text, "{name: washing, water: washing, amount: 25 L/person/d}", "{name: washing, water: washing, amount: 25 L/person/d, drains: shower}", 1)
	file, err := house.Read("shown.yaml", []byte(text))
	if err != nil {
		t.Fatalf("what is shown is refused: %v", err)
	}
	h, err := house.Compose(file)
	if err != nil || h.Drains == nil || h.Drains.Planter == nil || h.Drains.Well == nil || h.Drains.Trench == nil || h.Garden == nil {
		t.Fatalf("what is shown gives %+v, %v", h, err)
	}
	shown, err := New(Options{Name: "shown.yaml", Text: []byte(text), Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/garden", "/waste", "/water"} {
		page := get(t, shown, path).Body.String()
		if _, faults := hold(page); len(faults) > 0 {
			t.Error(path, faults)
		}
		if found := missingKey.FindString(forScript.ReplaceAllString(page, "")); found != "" {
			t.Errorf("%s shows %s", path, found)
		}
	}
}

// A house with lived rooms, one of every part alone, and one whose trench floods have whole pages too.
func TestChainPagesOfOtherHouses(t *testing.T) {
	southern, err := os.ReadFile("../examples/southern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	cut := func(text, from, to string) string {
		head, rest, _ := strings.Cut(text, from)
		_, tail, _ := strings.Cut(rest, to)
		return head + to + tail
	}
	demo := strings.Replace(string(examples.Demo), "\n  food: {share: 40 %}\n  waste: {surfacing: no}", "", 1)
	demo = strings.Replace(demo, "overflow: garden", "overflow: ground", 1)
	head, _, _ := strings.Cut(demo, "\nplanter:")
	houses := map[string]string{"southern.yaml": string(southern), "no garden": strings.Split(demo, "\ngarden:")[0],
		"no septic tank": cut(demo, "\nseptic:", "\ngarden:"), "garden alone": head + "\ngarden:" + strings.Split(demo, "\ngarden:")[1],
		"flooded":          strings.Replace(strings.Replace(demo, "length: 18 m", "length: 4 m", 1), "soil: loam-strong", "soil: clay-strong", 1),
		"plants that stay": cut(demo, "\n  crops:\n    - {crop: spinach", "\n  rinse:")}
	for name, text := range houses {
		t.Run(name, func(t *testing.T) {
			s, err := New(Options{Name: name, Text: []byte(text), Prove: proveShort})
			if err != nil {
				t.Fatal(err)
			}
			for _, path := range []string{"/garden", "/waste", "/water"} {
				page := get(t, s, path).Body.String()
				if _, faults := hold(page); len(faults) > 0 {
					t.Error(path, faults)
				}
				if found := missingKey.FindString(forScript.ReplaceAllString(page, "")); found != "" {
					t.Errorf("%s shows %s", path, found)
				}
				if found := noNumber.FindString(page); found != "" {
					t.Errorf("%s shows %s", path, found)
				}
			}
			v := &view{catalogue: s.say, lived: s.house.Load()}
			if up := v.Proof.Stated.Waste.ShortDays; up > 0 {
				said(t, get(t, s, "/waste").Body.String(), "When foul water comes up", v.Count("waste.comes_up", up, "litres", withUnit(float64(v.Proof.Stated.Totals.Chain.Trench.Surfaced)/v.years(), "L")))
			} else if name == "flooded" {
				t.Error("the trench does not flood: the test shows nothing")
			}
		})
	}
}

// Nothing on the three pages moves after it was drawn.
func TestChainPagesStandStill(t *testing.T) {
	base := browser(t)
	if base == nil {
		return
	}
	home := serve(t)
	for _, page := range []string{"/water", "/garden", "/waste"} {
		for _, width := range []int64{390, 1280} {
			ctx := tab(t, base)
			if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(home+page)); err != nil {
				t.Fatal(err)
			}
			moved, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`new Promise(done => { let sum = 0;
				new PerformanceObserver(list => { for (const e of list.getEntries()) sum += e.value; }).observe({type: "layout-shift", buffered: true});
				setTimeout(() => done(sum), 300); })`, chromedp.EvalAwaitPromise))
			if err != nil || moved > 0 {
				t.Errorf("%s at %d px moves by %g (%v)", page, width, moved, err)
			}
		}
	}
}
