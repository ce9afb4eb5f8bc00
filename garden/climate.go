package garden

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"suffice/crop"
	"suffice/site/weather"
	"suffice/soil"
)

// soilDays is how many days' mean air the soil stands at where seed lies: a week (common practice, no source).
const soilDays = 7

// A Climate is the days of a record, at the beds: outside, or in a room.
type Climate struct {
	DayOfYear []int16 // 1 to 366, of days that follow each other
	Air       []crop.Swing
	soil      []float64
}

// Outside takes the days of a record.
func Outside(h *weather.Hours) Climate {
	day := make([]int16, len(h.Days))
	air := make([]crop.Swing, len(h.Days))
	for i := range h.Days {
		t := h.Temperature[24*i : 24*i+24]
		day[i], air[i] = h.Days[i].DayOfYear, crop.Swing{Warmest: slices.Max(t), Coolest: slices.Min(t)}
	}
	return climate(day, air)
}

// Room takes the days of a room, as they were lived or assumed.
func Room(dayOfYear []int16, air []crop.Swing) (Climate, error) {
	if len(dayOfYear) != len(air) {
		return Climate{}, fmt.Errorf("room: %d days of the year beside %d of air: give one of each", len(dayOfYear), len(air))
	}
	return climate(dayOfYear, air), nil
}

func climate(day []int16, air []crop.Swing) Climate {
	c := Climate{DayOfYear: day, Air: air, soil: make([]float64, len(air))}
	sum := 0.0
	for i, a := range air {
		sum += (a.Warmest + a.Coolest) / 2
		if i >= soilDays {
			sum -= (air[i-soilDays].Warmest + air[i-soilDays].Coolest) / 2
		}
		c.soil[i] = sum / float64(min(i+1, soilDays))
	}
	return c
}

// Soil gives the temperature where seed lies on day i of the record: the mean air of a week.
func (c *Climate) Soil(i int) float64 { return c.soil[i] }

// A Fate is what became of a sowing.
type Fate int8

// The fates.
const (
	Bears Fate = iota
	Unsprouted
	Frosted
	Unripe
	TooHot
	fates
)

// String gives the fate in words.
func (f Fate) String() string {
	return [...]string{"bears", "does not come up", "is killed by frost", "does not ripen", "stands in more heat than it bears"}[f]
}

// A Trial is the fates of sowing on the same day in every year of a record.
type Trial struct {
	Years int // that the record is long enough to tell
	Of    [fates]int
}

// Share gives the part of the years in which it bears; 0 where no year tells.
func (t Trial) Share() float64 { return float64(t.Of[Bears]) / float64(max(1, t.Years)) }

// trialPlot is a square metre without want of water or nitrogen, with the one crop.
func trialPlot(plant *crop.Crop, day int) (*Plot, error) {
	bed := &Bed{Name: plant.Name, Area: 1, Depth: 0.3, Soil: soil.LoamWater(), Arrives: 1, Plantings: []Planting{{Crop: plant, Day: day}}}
	p, err := bed.Prepare()
	return &p, err
}

// plenty of nitrogen for a square metre, g: ten times what the hungriest takes.
const plenty = 1000

// Try sows on a day of the year in every year of the record, with the beds' own Day, until the first picking.
func (c *Climate) Try(plant *crop.Crop, day int) (Trial, error) {
	p, err := trialPlot(plant, day)
	if err != nil {
		return Trial{}, err
	}
	var t Trial
	for i := range c.DayOfYear {
		if int(c.DayOfYear[i]) != day {
			continue
		}
		if fate, told := c.follow(p, plant, i); told {
			t.Years++
			t.Of[fate]++
		}
	}
	return t, nil
}

// follow lives a sowing from day i on; told is false where the record ends before it does.
func (c *Climate) follow(p *Plot, plant *crop.Crop, i int) (fate Fate, told bool) {
	s := p.Start(0, plenty)
	var out BedDayOut
	warmth, up := 0.0, 0
	for ; i < len(c.Air); i++ {
		in := BedDayIn{Day: int(c.DayOfYear[i]), Air: c.Air[i], Soil: c.soil[i], Light: plant.Light.High, Pollinated: true}
		p.Day(&s, &in, &out)
		if s.Up {
			warmth += (c.Air[i].Warmest + c.Air[i].Coolest) / 2
			up++
		}
		switch {
		case out.Picked > 0 && warmth > plant.Air.Most*float64(up):
			return TooHot, true
		case out.Picked > 0:
			return Bears, true
		case out.Event == Rotted:
			return Unsprouted, true
		case out.Event == Frozen:
			return Frosted, true
		case out.Event == GivenUp:
			return Unripe, true
		}
	}
	return 0, false
}

// Often is the share of years that makes a day one to sow on: four in five (assumed).
const Often = 0.8

// A Window is the days of the year on which a crop may be put in.
type Window struct {
	Crop   *crop.Crop
	Trials [366]Trial // from 1 January; the last tells 29 February's year
}

// Window tries every day of the year.
func (c *Climate) Window(plant *crop.Crop) (Window, error) {
	w := Window{Crop: plant}
	for day := 1; day <= 365; day++ {
		t, err := c.Try(plant, day)
		if err != nil {
			return w, err
		}
		w.Trials[day-1] = t
	}
	w.Trials[365] = w.Trials[364]
	return w, nil
}

// Good says whether to put it in on that day, 1 to 366.
func (w *Window) Good(day int) bool { return w.Trials[day-1].Share() >= Often }

// A Span is the first and the last day of a run of days of the year, which may pass New Year.
type Span struct{ First, Last int }

// Spans gives the runs of good days; one from 1 to 365 where all are.
func (w *Window) Spans() []Span {
	var spans []Span
	for day := 1; day <= 365; day++ {
		switch {
		case !w.Good(day):
		case len(spans) > 0 && spans[len(spans)-1].Last == day-1:
			spans[len(spans)-1].Last = day
		default:
			spans = append(spans, Span{day, day})
		}
	}
	if n := len(spans); n > 1 && spans[0].First == 1 && spans[n-1].Last == 365 {
		spans[0].First = spans[n-1].First
		spans = spans[:n-1]
	}
	return spans
}

// Says gives the spans in words.
func (w *Window) Says() string {
	var says []string
	for _, s := range w.Spans() {
		says = append(says, date(s.First)+" to "+date(s.Last))
	}
	if len(says) == 0 {
		return "no day of the year"
	}
	return strings.Join(says, ", ")
}

// Check gives the sentence for a day on which the crop does not bear often enough; nil for a good day.
func (w *Window) Check(day int) error {
	if day < 1 || day > 366 {
		return fmt.Errorf("%s: day %d is not a day of the year: 1 to 366", w.Crop.Name, day)
	}
	t := w.Trials[day-1]
	if t.Years == 0 {
		return errors.New("the record is too short to tell when " + w.Crop.Name + " may be sown: give one of two years or more")
	}
	if w.Good(day) {
		return nil
	}
	worst := Unsprouted
	for f := Unsprouted; f < fates; f++ {
		if t.Of[f] > t.Of[worst] {
			worst = f
		}
	}
	return fmt.Errorf("%s put in on %s bears in %d of %d years: in %d it %s; good days are %s", w.Crop.Name, date(day), t.Of[Bears], t.Years, t.Of[worst], worst, w.Says())
}

func date(day int) string {
	return time.Date(2023, 1, day, 0, 0, 0, 0, time.UTC).Format("2 January")
}
