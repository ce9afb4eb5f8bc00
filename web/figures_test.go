package web

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"suffice/sheets"
)

// The figures of the pages are the report's: what both tell, they tell alike.
func TestFiguresAreTheReports(t *testing.T) {
	s := reading(t)
	v := &view{catalogue: s.say, lived: s.house.Load()}
	told := make(map[string]float64)
	for _, make := range []func() (tally, error){v.roofs, v.tanks, v.taps, v.panels, v.battery, v.sharing, v.store, v.bottles} {
		list, err := make()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range list.Rows {
			told[row.Says] = row.Value
		}
	}
	for says, flow := range map[string][2]string{
		"water.fell": {"sky", "roofs"}, "water.wetted": {"roofs", "air"}, "water.missed": {"roofs", "past the gutters"}, "water.diverted": {"roofs", "first flush"},
		"water.caught": {"roofs", "tanks"}, "water.spilled": {"tanks", "overflow"}, "water.leaked": {"tanks", "leak"}, "water.washing": {"tanks", "washing"},
		"power.curtailed": {"panels", "curtailed"}, "power.charged": {"bus", "battery"}, "power.discharged": {"battery", "bus"}, "power.must": {"inverter", "must"},
		"heat.solar": {"collector", "hot water"}, "heat.delivered": {"hot water", "taps"}, "heat.cooked": {"gas", "cooking"},
	} {
		want := math.NaN()
		for _, f := range v.Proof.Flows() {
			if f.From == flow[0] && f.To == flow[1] {
				want = f.PerYear
			}
		}
		if got := told[v.Say(says)]; got != want {
			t.Errorf("%s is %v on the page, %v from %s to %s in the report", says, got, want, flow[0], flow[1])
		}
	}
}

// Every figure has at least one worked sheet below it, and the sheets named for it exist.
func TestEveryFigureUnfoldsASheet(t *testing.T) {
	s := reading(t)
	v := &view{catalogue: s.say, lived: s.house.Load()}
	for _, from := range []source{fromRoofs, fromTanks, fromTaps, fromPanels, fromBattery, fromInverter, fromStore, fromBottles} {
		for _, name := range from.sheets {
			if sheets.Named(name) == nil {
				t.Errorf("%s names the sheet %s, which there is not", from.title, name)
			}
			if worked, err := v.works(from.group, name); err != nil || len(worked) == 0 {
				t.Errorf("%s has no %s worked in its hour (%v)", from.title, name, err)
			}
		}
	}
}

// The table of years counts short days as the verdict does: it is shown of a house with many.
func TestYearsCountShortDaysAsTheVerdictDoes(t *testing.T) {
	s := demo(t)
	post(t, s, "/change", values(s, "water.tanks[0].holds", "5 kL", "water.tanks[0].start", "2.7 kL"))
	v := &view{catalogue: s.say, lived: s.house.Load()}
	water, power := 0, 0
	for _, row := range v.byYear() {
		water, power = water+row.ShortWater, power+row.ShortPower
	}
	if want := v.Proof.Stated.Water.ShortDays; water != want || want == 0 {
		t.Errorf("the years count %d days short of water, the verdict %d; want many", water, want)
	}
	if want := v.Proof.Stated.Power.ShortDays; power != want {
		t.Errorf("the years count %d days short of power, the verdict %d", power, want)
	}
}

var daysLeft = regexp.MustCompile(`Water for (\d+) days`)

// Days of water left are usable water over what leaves a day: half the water lasts half as long, and
// the demo's full tanks (50 kL less 1 kL dead and 2 kL for fire) last 47 kL over the week's draw.
func TestDaysLeftAreADivision(t *testing.T) {
	s := reading(t)
	left := func(tank string) float64 {
		page := get(t, s, "/?day=2003-02-20&tank="+tank+"%25").Body.String()
		m := daysLeft.FindStringSubmatch(page)
		if m == nil {
			t.Fatalf("no days are told with the tanks at %s %%:\n%s", tank, page)
		}
		n, err := strconv.Atoi(m[1])
		if err != nil {
			t.Fatal(err)
		}
		return float64(n)
	}
	l := s.house.Load()
	hour, err := l.Proof.Run.HourAt("2003-02-20T00")
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for d := hour/24 - 6; d <= hour/24; d++ {
		sum += l.Seen.Drawn[d] + l.Seen.Leaked[d]
	}
	full, half := left("100"), left("50")
	if want := math.Floor(47000 / (sum / 7)); full != want {
		t.Errorf("full tanks last %v days, want 47000 L / %.1f L = %v", full, sum/7, want)
	}
	if math.Abs(full/2-half) > 1 {
		t.Errorf("full tanks last %v days and half-full ones %v", full, half)
	}
}

// What cannot be a day or a level is refused with a sentence, all faults at once, and shown as written.
func TestTodayRefusesWhatIsNoDay(t *testing.T) {
	s := reading(t)
	w := get(t, s, "/?day=2003-02-30&tank=120%25&charge=much")
	page := w.Body.String()
	for _, says := range []string{"is no day", "a store is between 0 % and 100 % full", "Battery: ", "3 things are not right", `value="120%"`} {
		if !strings.Contains(page, says) {
			t.Errorf("the page does not say %q", says)
		}
	}
	if w.Code != 400 {
		t.Errorf("it answers %d, want 400", w.Code)
	}
	if page := get(t, s, "/?day=1899-01-01").Body.String(); !strings.Contains(page, "is not in the weather lived through") {
		t.Error("a day before the record is not refused")
	}
}
