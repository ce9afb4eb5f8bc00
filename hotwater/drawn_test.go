package hotwater

import (
	"testing"

	"pgregory.net/rapid"
)

// An hour taken the short way is the same, to the last bit, as the long way would have it; and where the short way gives
// up it has touched nothing.
func TestDrawnIsBusy(t *testing.T) {
	drawn, refused, mixed := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s := drawState(t, y)
		if rapid.Bool().Draw(t, "mixed") {
			s.Lower = s.Upper
		}
		for hour := range rapid.IntRange(1, 24).Draw(t, "hours") {
			in := drawIn(t)
			y.p.look(&s, &in)
			short, long := s, s
			var outShort, outLong Out
			y.busy(&long, &in, &outLong)
			if y.p.drawn(&short, &in, &outShort) {
				drawn++
				if s.Lower == s.Upper && short.Lower == short.Upper {
					mixed++
				}
				if short != long || outShort != outLong {
					t.Fatalf("hour %d, %+v\nfrom %+v:\n got %+v %+v\nwant %+v %+v", hour, in, s, short, outShort, long, outLong)
				}
			} else if refused++; short != s || outShort != (Out{}) {
				t.Fatalf("hour %d was refused and moved the state: %+v, was %+v", hour, short, s)
			}
			s = long
		}
	})
	if drawn == 0 || refused == 0 || mixed == 0 {
		t.Errorf("%d hours went the short way, %d of them mixed, and %d were refused: all must occur", drawn, mixed, refused)
	}
}
