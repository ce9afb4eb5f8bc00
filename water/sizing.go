package water

import "suffice/quantity"

// DrySeason gives the tank that carries people through a dry season: consumption, people and
// days multiplied [rwh-lesson-demand].
func DrySeason(people float64, perPerson quantity.Litres, days float64) quantity.Litres {
	return quantity.Litres(people*days) * perPerson
}

// SimplifiedShare and GermanShare are the parts of a year's yield or demand that the simplified
// approaches store [en16941-1, quoted; din1989-1, remembered].
const (
	SimplifiedShare = 0.05
	GermanShare     = 0.06
)

// Simplified gives the tank by the simplified approach: a share of the lesser of the
// year's yield and the year's demand. It knows no dry season and suits even climates alone.
func Simplified(yield, demand quantity.Litres, share float64) quantity.Litres {
	return quantity.Litres(share) * min(yield, demand)
}

// MassCurve gives, for every step, how far the store would have to be drawn down to release a
// constant amount, and the largest of these: the capacity that would never run dry
// (sequent peak, K = max(0, K + R - Q) [sequent-peak]). With two passes the record follows
// itself once, for deficits that run over its end.
func MassCurve(inflow []float64, release float64, passes int) (capacity float64, deficits []float64) {
	var K float64
	for range passes {
		for _, Q := range inflow {
			K = max(0, K+release-Q)
			deficits = append(deficits, K)
			capacity = max(capacity, K)
		}
	}
	return capacity, deficits
}
