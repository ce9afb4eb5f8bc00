package section

import (
	"testing"

	"suffice/internal/check"
)

func TestShadowDropPublished(t *testing.T) {
	check.That(t, float64(ShadowDrop(0.9, 50, 30)), check.Published{Source: "duffie-beckman", At: "eq. 1.6.12: sun 50 deg high, 30 deg beside the pane, 0.9 m overhang", Value: "1.239", Unit: "m", Standing: "own"})
	check.That(t, 1.2/float64(ShadowDrop(1, 60, 0)), check.Published{Source: "duffie-beckman", At: "eq. 1.6.12: depth that shades 1.2 m at a profile of 60 deg", Value: "0.69", Unit: "m", Standing: "own"})
	check.That(t, float64(ShadowDrop(1, Noon(40, Midsummer), 0)), check.Published{Source: "duffie-beckman", At: "eq. 1.6.12 at 40 N, noon in June, for each metre", Value: "3.363", Unit: "m", Within: 0.006, Why: "the value was worked with a declination of 23.45 deg, we take 23.44", Standing: "own"})
	check.That(t, float64(ShadowDrop(1, Noon(40, Equinox), 0)), check.Published{Source: "duffie-beckman", At: "eq. 1.6.12 at 40 N, noon at the equinox, for each metre", Value: "1.192", Unit: "m", Standing: "own"})
	check.That(t, float64(ShadowDrop(1, Noon(40, Midwinter), 0)), check.Published{Source: "duffie-beckman", At: "eq. 1.6.12 at 40 N, noon in December, for each metre", Value: "0.500", Unit: "m", Standing: "own"})
}
