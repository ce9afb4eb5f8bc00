package report

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"suffice/hourly"
	"suffice/house"
	"suffice/site/weather"
	"suffice/warmth"
)

// roomed is the house with rooms, through the first leap year of its record.
var roomed = sync.OnceValues(func() (*Proof, error) {
	f, err := house.Open("../examples/earth-house.yaml")
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
	const days = 366
	cut := func(column []float64) []float64 { return column[:min(24*days, len(column))] }
	run, err := hourly.Prepare(h, &weather.Hours{Place: w.Place, Days: w.Days[:days], Global: cut(w.Global), Diffuse: cut(w.Diffuse), Beam: cut(w.Beam),
		Temperature: cut(w.Temperature), Humidity: cut(w.Humidity), Wind: cut(w.Wind), Rain: cut(w.Rain)})
	if err != nil {
		return nil, err
	}
	return Prove(run)
})

// Measures lived side by side are those lived one after another, and text and JSON tell them.
func TestMeasuresAreToldAsLived(t *testing.T) {
	p, err := roomed()
	if err != nil {
		t.Fatal(err)
	}
	heard := 0
	list, err := p.Measures(3, func(int) { heard++ })
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != warmth.Measures || heard != len(list) {
		t.Fatalf("%d measures, heard of %d, want %d", len(list), heard, warmth.Measures)
	}
	alone, _, err := p.Run.Without(warmth.Overhang)
	if err != nil {
		t.Fatal(err)
	}
	a, err := alone.Account(alone.Start())
	if err != nil {
		t.Fatal(err)
	}
	if got, want := list[warmth.Overhang].Account.Rooms[0].Comfort, a.Rooms[0].Comfort; got != want || want == p.Stated.Rooms[0].Comfort {
		t.Errorf("without the overhang the living room has %+v side by side and %+v alone", got, want)
	}
	list[warmth.Shutters] = Lack{Measure: warmth.Shutters}
	var text bytes.Buffer
	if err := p.TextOfMeasures(list, &text); err != nil {
		t.Fatal(err)
	}
	hot := func(y *hourly.RoomYears) string { return grouped(y.Seasons[hourly.Summer].HotDegree) }
	for _, says := range []string{"as it is", "no mass", "no vents", "living room", "bedrooms", "shutters: this house has none to leave out", hot(&p.Stated.Rooms[0]), hot(&a.Rooms[0])} {
		if !strings.Contains(text.String(), says) {
			t.Errorf("the text does not say %q:\n%s", says, text.String())
		}
	}
	if strings.Contains(text.String(), "workshop") {
		t.Error("a room where nobody lives is told")
	}
	told := p.JSONOfMeasures(list)
	if len(told) != 1+len(list) || told[0].Measure != "none" || told[1+int(warmth.Shutters)].Rooms != nil ||
		told[1+int(warmth.Overhang)].Rooms[0].Hot["summer"] != a.Rooms[0].Seasons[hourly.Summer].HotDegree {
		t.Errorf("the JSON tells %+v", told)
	}
}

// In the chart of a week every column stands where its three hours were, to half a row.
func TestWeekChartStandsWhereItWas(t *testing.T) {
	p, err := roomed()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []*hourly.Week{&p.Stated.Coldest, &p.Stated.Hottest} {
		chart := p.weekChart(k)
		var scale []float64
		at := map[int]float64{}
		for _, l := range chart {
			head, row, isRow := strings.Cut(l, "|")
			var degrees float64
			if _, err := fmt.Sscan(head, &degrees); !isRow || err != nil {
				continue
			}
			scale = append(scale, degrees)
			for c, mark := range []rune(row) {
				if mark == '●' {
					at[c] = degrees
				}
			}
		}
		if len(scale) < 3 || len(scale) > weekRows+1 || len(at) != WeekColumns {
			t.Fatalf("%d rows and %d columns with a mark, want at most %d and %d:\n%s", len(scale), len(at), weekRows+1, WeekColumns, strings.Join(chart, "\n"))
		}
		for c, got := range at {
			mean := float64(k.Felt[3*c][k.Room]+k.Felt[3*c+1][k.Room]+k.Felt[3*c+2][k.Room]) / 3
			// Half a row, and what a mean of float32 loses.
			if math.Abs(got-mean) > (scale[0]-scale[1])/2+1e-4 {
				t.Errorf("column %d stands at %g degC, the room was at %g", c, got, mean)
			}
		}
	}
}

// The wood of a stove is told in text, JSON, rows and the room's budget as it was burned.
func TestWoodIsTold(t *testing.T) {
	p, err := roomed()
	if err != nil {
		t.Fatal(err)
	}
	b := &p.Stated.Rooms[0].Stove
	if !(b.Wood > 0) {
		t.Fatalf("no wood was burned in the first year: %+v", b)
	}
	var text bytes.Buffer
	if err := p.Text(&text); err != nil {
		t.Fatal(err)
	}
	for _, says := range []string{"the stove in living room burns " + grouped(float64(b.Wood)) + " kg of wood a year", "stove, less what its air costs", "Carbon monoxide has no smell"} {
		if !strings.Contains(text.String(), says) {
			t.Errorf("the text does not say %q", says)
		}
	}
	rooms := p.JSON().Rooms
	if j := rooms[0].Stove; j == nil || j.Wood != float64(b.Wood) || j.HeatKWh != float64(b.Heat)/1000 || rooms[1].Stove != nil {
		t.Errorf("the JSON tells %+v and %+v, want %g kg in the first room only", j, rooms[1].Stove, float64(b.Wood))
	}
	columns := 0
	for _, c := range RowColumns(p.Run) {
		if strings.HasSuffix(c.Name, "_wood_kg") {
			columns++
		}
	}
	if columns != 1 {
		t.Errorf("%d columns of wood, want 1", columns)
	}
	for _, f := range p.RoomBudget(0) {
		if f.Key == "stove" && f.KWh != float64(b.Heat)/1000 {
			t.Errorf("the budget has %g kWh of the stove, want %g", f.KWh, float64(b.Heat)/1000)
		}
	}
}
