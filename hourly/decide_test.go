package hourly

import (
	"testing"

	"suffice/people"
)

// Where no sign is bad and none was, nobody has anything to decide: then the rules choose nothing and change no mind. In the
// other hours somebody is there to decide or has decided before.
func TestNothingToDecideIsNothingDecided(t *testing.T) {
	for name, r := range map[string]*Run{"crete": four(t, "crete"), "denver": four(t, "denver"), "demo": opened(t, "../examples/demo.yaml")} {
		calm, restless := 0, 0
		var row Row
		for s, i := r.Start(), 0; i < min(r.Hours(), 10*8760); i++ {
			now, usual := &r.sky[i], &r.customs[i/24][i%24]
			before := s
			r.hour(i, &s, &row)
			mind := before.Mind
			choice := r.House.Rules.Decide(&mind, &row.Signs)
			if r.restless(now, &before) {
				if restless++; usual.persons > 0 && before.Mind == (people.Mind{}) && mind == (people.Mind{}) {
					t.Fatalf("%s, hour %d: restless at %+v, and nothing came of it", name, i, row.Signs)
				}
				continue
			}
			if calm++; choice != (people.Choice{}) || mind != before.Mind || row.Choice != (people.Choice{}) {
				t.Fatalf("%s, hour %d: nothing to decide at %+v, and yet %+v %+v", name, i, row.Signs, choice, mind)
			}
		}
		if calm == 0 || restless == 0 {
			t.Errorf("%s: %d hours had nothing to decide and %d had: both must occur", name, calm, restless)
		}
	}
}
