package waste

import (
	"math"
	"strings"
	"testing"

	"suffice/quantity"
)

func TestUsualDesignsHaveNoFaults(t *testing.T) {
	k, _, g, _ := works()
	if err := k.Faults(); err != nil {
		t.Error(err)
	}
	if err := g.Faults(); err != nil {
		t.Error(err)
	}
}

func TestFaultsComeAtOnce(t *testing.T) {
	k, _, g, _ := works()
	k.Holds, k.Scum = quantity.Litres(math.NaN()), 1.2
	if err := k.Faults(); err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("two faults of the tank: %v", err)
	}
	g.Soil.Fresh, g.Width, g.Grove.Kc, g.Grove.Leaves.Out = g.Soil.Long/2, 0, -1, 200
	if err := g.Faults(); err == nil || strings.Count(err.Error(), "\n") != 3 {
		t.Errorf("four faults of the trench: %v", err)
	}
}

// Solids that find no room go on to the trench, and the fuller the tank, the shorter a litre stays.
func TestNeglectedTankCarriesSolids(t *testing.T) {
	k := UsualTank(1000)
	s := k.Start()
	before := k.Detention(&s, 500)
	var out TankDayOut
	var flow TankOut
	carried := 0.0
	for range 4 * 366 {
		k.Step(&s, &TankIn{Inflow: 500, Load: UsualPerPerson().Times(6)}, &flow)
		k.Day(&s, &TankDayIn{People: 6}, &out)
		carried += float64(out.Carried)
	}
	if full := k.Full(&s); math.Abs(full-k.Most) > 1e-9 {
		t.Errorf("the tank is full to %g, want %g", full, k.Most)
	}
	if grown := 6 * 80 * 4 * 366 / daysPerYear; math.Abs(carried-(grown-750)) > 1e-6*grown {
		t.Errorf("%g L of solids were carried on, want %g", carried, grown-750)
	}
	if after := k.Detention(&s, 500); math.Abs(before-2) > 1e-12 || math.Abs(after-0.5) > 1e-9 {
		t.Errorf("a litre stays %g days in the new tank and %g in the full one, want 2 and 0.5", before, after)
	}
}

// A steady day gives the same stand by hours and by days.
func TestHoursAndDaysAgree(t *testing.T) {
	_, _, g, _ := works()
	g.Catch, g.Grove.Trees = 0, 0
	hourly, daily := g.Start(&TrenchDayIn{Day: 1}), g.Start(&TrenchDayIn{Day: 1})
	var out TrenchOut
	for range 400 * 24 {
		g.Step(&hourly, &TrenchIn{Hours: 1, Inflow: 1000.0 / 24}, &out)
	}
	for range 400 {
		g.Step(&daily, &TrenchIn{Hours: 24, Inflow: 1000}, &out)
	}
	if h, d := float64(g.Stands(&hourly)), float64(g.Stands(&daily)); h < 0.05 || h > 0.25 || math.Abs(h-d) > 1e-9 {
		t.Errorf("stands at %g m by hours, %g m by days", h, d)
	}
}
