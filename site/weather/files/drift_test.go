package files

import (
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/site/weather"
)

func jumpOf(s *weather.Summary, column string) *weather.Jump {
	for i := range s.Jumps {
		if s.Jumps[i].Column == column {
			return &s.Jumps[i]
		}
	}
	return nil
}

// A reanalysis may jump: at a point by the Caspian the corrected rain went from about 470 mm a
// year before 2011 to about 800. A jump of that size put into two other records is found, in its
// year, and warned of; in the records as they are there is none.
func TestJumpOfReanalysis(t *testing.T) {
	for _, c := range []struct {
		file    string
		options [][2]string
	}{{crete, nil}, {angoche, saidOfAngoche}} {
		r, s := look(t, c.file, c.options...)
		if j := jumpOf(&s, "rain"); j != nil {
			t.Errorf("%s jumps: %+v", c.file, *j)
		}
		rain := r.Of(weather.Rain)
		for i := range rain.Values {
			if weather.DayOf(r.Start+i).Year >= 2011 {
				rain.Values[i] *= 800.0 / 470
			}
		}
		s = weather.Summarise(r)
		j := jumpOf(&s, "rain")
		if j == nil || j.From < 2009 || j.From > 2012 || j.After < 1.4*j.Before || !hasNote(s.Warnings, "rain: the ") || !hasNote(s.Warnings, "a changed product") {
			t.Errorf("%s with a jump in 2011: %+v, %q", c.file, j, s.Warnings)
		}
	}
}

// Of nine gauges one jumps in its rain: that of New York, wetter from the 1970s on. All that
// record temperature grow warmer.
func TestJumpsOfGauges(t *testing.T) {
	for _, name := range []string{sydneyGauge, melbourne, losAngeles, sanFrancisco, phoenixGauge, houston, deathValley, denverGauge, newYork} {
		_, s := look(t, name)
		j := jumpOf(&s, "rain")
		if (j != nil) != (name == newYork) || j != nil && (j.From < 1965 || j.From > 1975 || j.After < j.Before) {
			t.Errorf("%s: jump of rain %+v", name, j)
		}
		warmer := slices.ContainsFunc(s.Trends, func(x weather.Trend) bool { return x.Column == "temperature" && x.PerDecade > 0 })
		if !warmer || !hasNote(s.Warnings, "temperature: the yearly values rise") {
			t.Errorf("%s: trends %+v", name, s.Trends)
		}
	}
}

// The presumed zeros of Death Valley, taken for rain, would be a jump and the driest years; as
// missing they are neither.
func TestPresumedZerosMakeNoDriestYear(t *testing.T) {
	_, s := look(t, deathValley)
	for _, run := range s.DriestRuns {
		if run.Rain == 0 && run.Months >= 12 {
			t.Errorf("%+v", run)
		}
	}
	believed := strings.ReplaceAll(text(t, deathValley), "    0P ", "    0  ")
	r, err := Read("believed", strings.NewReader(believed), Options{})
	if err != nil {
		t.Fatal(err)
	}
	b := weather.Summarise(r)
	if year := b.DriestRuns[1]; year.Months != 12 || year.Rain != 0 {
		t.Errorf("believed: %+v", b.DriestRuns)
	}
}

// The longest dry spell that is listed is the one that is told, in every record, and the runs of
// months hang together: a longer one is never drier than a shorter one.
func TestSpellsOfEveryFile(t *testing.T) {
	for _, r := range everyFile(t) {
		s := weather.Summarise(r)
		if s.LongestDry != nil && (*s.LongestDry > 0) != (len(s.DrySpells) > 0) || len(s.DrySpells) > 0 && s.DrySpells[0].Days != *s.LongestDry {
			t.Errorf("%s: longest %v, listed %+v", r.File, s.LongestDry, s.DrySpells)
		}
		for i := 1; i < len(s.DriestRuns); i++ {
			if s.DriestRuns[i].Rain < s.DriestRuns[i-1].Rain {
				t.Errorf("%s: %+v", r.File, s.DriestRuns)
			}
		}
		if s.Rain != nil && len(s.DriestRuns) > 1 && s.DriestRuns[1].Rain > s.Rain.Min+1e-9 {
			t.Errorf("%s: the driest calendar year has %g mm, the driest twelve months %+v", r.File, s.Rain.Min, s.DriestRuns[1])
		}
		if s.DullDays != nil && !(*s.DullDays >= 0 && *s.DullDays <= 366) {
			t.Errorf("%s: %g dull days a year", r.File, *s.DullDays)
		}
	}
}

// The middle of the months' rain, summed over the year, lies near the mean year, and the months'
// light makes the year's.
func TestMonthsMakeTheYear(t *testing.T) {
	_, s := look(t, crete)
	light := 0.0
	for _, m := range s.Months {
		light += m.Global.Middle * float64(weather.MonthDays(2001, m.Month))
		if !(m.Temperature.Low < m.Temperature.Middle && m.Temperature.Middle < m.Temperature.High) || m.Rain.Months != 37 {
			t.Errorf("%+v", m)
		}
	}
	if math.Abs(light / *s.Global - 1) > 0.02 { // medians beside a mean: they differ by the skew of the months
		t.Errorf("the months' light makes %g, the year has %g", light, *s.Global)
	}
}
