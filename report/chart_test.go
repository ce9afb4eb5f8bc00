package report

import "testing"

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		low, middle, high float64
		want              string
	}{
		{0, 0.5, 1, "·····●·····"}, {0, 0, 0, "●          "}, {0.5, 0.7, 0.9, "     ··●·· "}, {1, 1, 1, "          ●"},
	} {
		if got := span(c.low, c.middle, c.high, 11); got != c.want {
			t.Errorf("%v %v %v: %q, want %q", c.low, c.middle, c.high, got, c.want)
		}
	}
}

func TestBarKeepsItsWidth(t *testing.T) {
	for share, want := range map[float64]string{0: "    ", 0.5: "██  ", 1: "████", 0.53125: "██▏ "} {
		if got := bar(share, 4); got != want {
			t.Errorf("%v: %q, want %q", share, got, want)
		}
	}
}

func TestTicks(t *testing.T) {
	if got := ticks("0 %", "50 %", "100 %", 21); got != "0 %     50 %    100 %" {
		t.Errorf("%q", got)
	}
}
