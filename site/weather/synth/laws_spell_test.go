package synth_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

// drawnSpell is some spell whose days hang together more or less than a plain chain's.
func drawnSpell(t *rapid.T) (s synth.Spell) {
	shift := rapid.Float64Range(-0.6, 0.6)
	for a := range 2 {
		s.Dry[a], s.Wet[a] = shift.Draw(t, "dry"), shift.Draw(t, "wet")
	}
	for k := range s.Class {
		s.Class[k] = shift.Draw(t, "class")
	}
	for j := range s.Next {
		sum := 0.0
		for k := range s.Next[j] {
			s.Next[j][k] = rapid.Float64Range(0.1, 1).Draw(t, "next")
			sum += s.Next[j][k]
		}
		for k := range s.Next[j] {
			s.Next[j][k] /= sum
		}
	}
	return s
}

// With an index and with spells or without, the chance of rain after a dry and after a wet day, and
// the rain of a wet day, are in the long run the month's own: exactly, by the formulas.
func TestMeansStayWhateverTheSpell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &synth.Rain{WetDay: 0.3, Spell: drawnSpell(t), Between: synth.Between{Chance: rapid.Float64Range(0, 1).Draw(t, "chance"),
			Amount: rapid.Float64Range(0, 1).Draw(t, "amount"), Memory: 30}}
		for m := range r.Months {
			r.Months[m] = synth.RainMonth{AfterDry: rapid.Float64Range(0.02, 0.5).Draw(t, "after dry"),
				AfterWet: rapid.Float64Range(0.1, 0.8).Draw(t, "after wet"), Amount: 8, Parts: storms}
		}
		got := r.Moments()
		for m, p := range r.Months {
			days := p.WetShare() * synth.MeanDays(m)
			// The balance is sought to 1e-7 of log-odds and shares.
			if math.Abs(got.WetDays[m]-days) > 1e-5*days || math.Abs(got.Rain[m]-8*days) > 1e-5*8*days {
				t.Fatalf("month %d: %.7f wet days and %.6f mm, the chances say %.7f and %.6f", m+1, got.WetDays[m], got.Rain[m], days, 8*days)
			}
		}
	})
}

// storms are amounts of drizzle, rain and storms with mean 1.
var storms = [3]synth.Part{{Share: 0.3, Mean: 0.1}, {Share: 0.5, Mean: 0.7}, {Share: 0.2, Mean: 3.1}}

// Without spell and index the wet days of a month have gabriel-1959's variance, less what they share with the
// neighbouring months: 2 p q d/(1-d)^2 of a chain whose correlation from day to day is d.
func TestPlainChainHasGabrielsVariance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		up, stay := rapid.Float64Range(0.02, 0.6).Draw(t, "after dry"), rapid.Float64Range(0.05, 0.9).Draw(t, "after wet")
		r := &synth.Rain{WetDay: 0.3}
		for m := range r.Months {
			r.Months[m] = synth.RainMonth{AfterDry: up, AfterWet: stay, Amount: 8, Shape: 0.7}
		}
		p, d := r.Months[0].WetShare(), stay-up
		want := synth.MeanDays(0)*p*(1-p)*(1+d)/(1-d) - 2*p*(1-p)*d/((1-d)*(1-d))
		if got := r.Moments().WetDaysVary[0]; math.Abs(got-want) > 1e-9*want {
			t.Fatalf("wet days of January vary by %.10f, the formula says %.10f", got, want)
		}
	})
}

// follows counts how often days of a kind come after days of a kind.
type follows struct{ n, of float64 }

func (f follows) share() float64 { return f.n / f.of }

// habits counts how rain follows rain in a record: after two wet and after two dry days, after a heavy day, heavy
// after heavy.
func habits(r *weather.Record, heavy float64) (all [4]follows) {
	v := r.Of(weather.Rain).Values
	for i := 2; i < len(v); i++ {
		if math.IsNaN(v[i] + v[i-1] + v[i-2]) {
			continue
		}
		wet := func(x float64) bool { return x >= 0.3 }
		for k, c := range [4]struct{ of, is bool }{
			{wet(v[i-1]) && wet(v[i-2]), wet(v[i])},
			{!wet(v[i-1]) && !wet(v[i-2]), wet(v[i])},
			{v[i-1] >= heavy, wet(v[i])},
			{v[i-1] >= heavy, v[i] >= heavy},
		} {
			all[k].of += float64(ifTrue(c.of))
			all[k].n += float64(ifTrue(c.of && c.is))
		}
	}
	return all
}

// exceededOnAFifth gives the rain that a fifth of the wet days have more of, mm.
func exceededOnAFifth(rain []float64) float64 {
	var wet []float64
	for _, v := range rain {
		if v >= 0.3 {
			wet = append(wet, v)
		}
	}
	slices.Sort(wet)
	return wet[len(wet)*4/5]
}

var habitNames = [4]string{"rain after two wet days", "rain after two dry days", "rain after a heavy day", "a heavy day after a heavy day"}

// Made of a gauge, rain follows rain and heavy days heavy days as they do in its record. Within five standard
// errors of the recorded share, p(1-p)/n, which days that hang together make larger rather than smaller. A day is heavy
// here as the chain has it, if a fifth of the wet days have more; of heavier ones it knows nothing (at Melbourne
// 0.75 of the days with 15 mm were followed by rain, and 0.68 of the made ones).
func TestRainFollowsRainAsRecorded(t *testing.T) {
	const years = 300
	for _, at := range judged {
		r := open(t, at.file, files.Options{})
		g, err := synth.Fit(r, nil)
		if err != nil {
			t.Fatal(err)
		}
		g.Sky = nil
		heavy := exceededOnAFifth(r.Of(weather.Rain).Values)
		want, got := habits(r, heavy), habits(g.Years(years, 5), heavy)
		for k, name := range habitNames {
			p := want[k].share()
			t.Logf("%s: %s: made %.3f, recorded %.3f +- %.3f", at.name, name, got[k].share(), p, math.Sqrt(p*(1-p)/want[k].of))
			if within := 5 * math.Sqrt(p*(1-p)/want[k].of); math.Abs(got[k].share()-p) > within {
				t.Errorf("%s: %s: made %.3f, recorded %.3f +- %.3f", at.name, name, got[k].share(), p, within)
			}
		}
	}
}

// What a refusal names as the most can be had.
func TestTheMostThatIsNamedCanBeHad(t *testing.T) {
	farmThatDeviates := func(by float64) error {
		n, err := synth.ReadNormals("farm.yaml", strings.NewReader(strings.Replace(hillFarm, "165 mm", fmt.Sprintf("%g mm", by), 1)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = n.Generator()
		return err
	}
	err := farmThatDeviates(4999)
	if err == nil {
		t.Fatal("years of 564 mm deviate by 4999 mm")
	}
	named := regexp.MustCompile(`the most (\d+)`).FindStringSubmatch(err.Error())
	if named == nil {
		t.Fatalf("%v names no most", err)
	}
	most, _ := strconv.ParseFloat(named[1], 64)
	if err := farmThatDeviates(most - 1); err != nil {
		t.Errorf("just below the most: %v", err)
	}
	if err := farmThatDeviates(1.02 * most); err == nil {
		t.Errorf("more than the most, %g mm, is not refused", most)
	}
}
