package synth_test

import (
	"testing"

	"suffice/internal/check"
	"suffice/site/weather/synth"
)

// The authors give the shape of their density as a formula of the mean,
// a = (2 G - 17.519 exp(-1.3118 G) - 1062 exp(-5.0426 G))/top with G = top/(top - mean), top = 0.864;
// ours is solved from the mean.
func TestClearnessShape(t *testing.T) {
	for mean, p := range map[float64]check.Published{
		0.3: {Source: "hollands-huget", At: "shape at a mean clearness of 0.3", Value: "0.29", Unit: "1", Within: 0.05, Why: "the formula is the authors' own fit to the solution", Standing: "remembered"},
		0.4: {Source: "hollands-huget", At: "shape at a mean clearness of 0.4", Value: "2.44", Unit: "1", Within: 0.05, Why: "the formula is the authors' own fit to the solution", Standing: "remembered"},
		0.5: {Source: "hollands-huget", At: "shape at a mean clearness of 0.5", Value: "4.59", Unit: "1", Within: 0.05, Why: "the formula is the authors' own fit to the solution", Standing: "remembered"},
		0.6: {Source: "hollands-huget", At: "shape at a mean clearness of 0.6", Value: "7.30", Unit: "1", Within: 0.05, Why: "the formula is the authors' own fit to the solution", Standing: "remembered"},
		0.7: {Source: "hollands-huget", At: "shape at a mean clearness of 0.7", Value: "12.17", Unit: "1", Within: 0.05, Why: "the formula is the authors' own fit to the solution", Standing: "remembered"},
	} {
		check.That(t, synth.ClearnessShape(mean), p)
		s := synth.HollandsHuget(mean)
		if got := s.Mean(); got < mean-1e-9 || got > mean+1e-9 {
			t.Errorf("the quantiles of mean %g have mean %g", mean, got)
		}
	}
}
