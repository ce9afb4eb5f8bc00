package comfort

import (
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func band(t testing.TB, s Standard, c Category, mean float64) Band {
	t.Helper()
	b, err := At(s, c, quantity.Celsius(mean))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestNeutralTemperatures(t *testing.T) {
	for _, c := range []struct {
		mean float64
		want check.Published
	}{
		{10, check.Published{Source: "ashrae55", At: "5.4, neutral at 10 degC", Value: "20.9", Unit: "degC", Standing: "remembered"}},
		{15, check.Published{Source: "ashrae55", At: "5.4, neutral at 15 degC", Value: "22.45", Unit: "degC", Standing: "remembered"}},
		{20, check.Published{Source: "ashrae55", At: "5.4, neutral at 20 degC", Value: "24.0", Unit: "degC", Standing: "remembered"}},
		{25, check.Published{Source: "ashrae55", At: "5.4, neutral at 25 degC", Value: "25.55", Unit: "degC", Standing: "remembered"}},
		{30, check.Published{Source: "ashrae55", At: "5.4, neutral at 30 degC", Value: "27.1", Unit: "degC", Standing: "remembered"}},
		{33.5, check.Published{Source: "ashrae55", At: "5.4, neutral at 33.5 degC", Value: "28.19", Unit: "degC", Standing: "remembered"}},
	} {
		check.That(t, float64(band(t, ASHRAE55, "80", c.mean).Neutral), c.want)
	}
	for _, c := range []struct {
		mean float64
		want check.Published
	}{
		{10, check.Published{Source: "en16798-1", At: "annex B, neutral at 10 degC", Value: "22.1", Unit: "degC", Standing: "remembered"}},
		{15, check.Published{Source: "en16798-1", At: "annex B, neutral at 15 degC", Value: "23.75", Unit: "degC", Standing: "remembered"}},
		{20, check.Published{Source: "en16798-1", At: "annex B, neutral at 20 degC", Value: "25.4", Unit: "degC", Standing: "remembered"}},
		{25, check.Published{Source: "en16798-1", At: "annex B, neutral at 25 degC", Value: "27.05", Unit: "degC", Standing: "remembered"}},
		{30, check.Published{Source: "en16798-1", At: "annex B, neutral at 30 degC", Value: "28.7", Unit: "degC", Standing: "remembered"}},
	} {
		check.That(t, float64(band(t, EN16798, "II", c.mean).Neutral), c.want)
	}
}

func TestBandWidths(t *testing.T) {
	above := func(b Band) float64 { return float64(b.High.Above(b.Neutral)) }
	below := func(b Band) float64 { return float64(b.Neutral.Above(b.Low)) }
	one, two, three := band(t, EN16798, "I", 20), band(t, EN16798, "II", 20), band(t, EN16798, "III", 20)
	check.That(t, above(one), check.Published{Source: "en16798-1", At: "annex B, category I, above", Value: "2", Unit: "K", Standing: "remembered"})
	check.That(t, below(one), check.Published{Source: "en16798-1", At: "annex B, category I, below", Value: "3", Unit: "K", Standing: "remembered"})
	check.That(t, above(two), check.Published{Source: "en16798-1", At: "annex B, category II, above", Value: "3", Unit: "K", Standing: "remembered"})
	check.That(t, below(two), check.Published{Source: "en16798-1", At: "annex B, category II, below", Value: "4", Unit: "K", Standing: "remembered"})
	check.That(t, above(three), check.Published{Source: "en16798-1", At: "annex B, category III, above", Value: "4", Unit: "K", Standing: "remembered"})
	check.That(t, below(three), check.Published{Source: "en16798-1", At: "annex B, category III, below", Value: "5", Unit: "K", Standing: "remembered"})
	check.That(t, above(band(t, ASHRAE55, "80", 20)), check.Published{Source: "ashrae55", At: "5.4, 80 % content", Value: "3.5", Unit: "K", Standing: "remembered"})
	check.That(t, below(band(t, ASHRAE55, "90", 20)), check.Published{Source: "ashrae55", At: "5.4, 90 % content", Value: "2.5", Unit: "K", Standing: "remembered"})
}

func TestRunningMeanOfAWeek(t *testing.T) {
	check.That(t, float64(RunningMean([7]float64{20, 18, 16, 17, 19, 21, 22})), check.Published{
		Source: "en16798-1", At: "running mean of 20, 18, 16, 17, 19, 21, 22 degC, yesterday first", Value: "18.63", Unit: "degC", Standing: "own"})
}
