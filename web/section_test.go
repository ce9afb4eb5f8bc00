package web

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"suffice/draw/section"
)

// The day that the section shows is noted down while the record is lived; lived once more to that
// day, it is the same to the last bit.
func TestTheSectionShowsTheDayAsItWasLived(t *testing.T) {
	s := demo(t)
	v := &view{catalogue: s.say, lived: s.house.Load()}
	for _, day := range []int{0, 1, 340, 1000} {
		want, err := section.DayOf(v.Proof.Run, day, v.daySaid(day))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, v.sectionDay(day)); diff != "" {
			t.Errorf("day %d is not as it was lived (-lived +noted):\n%s", day, diff)
		}
	}
}
