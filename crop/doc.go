// Package crop gives what plants of the kitchen garden want and give: water by
// FAO-56 coefficients, warmth as degree-days, light as a daily integral, the share
// of seeds that come up, what salt takes from a yield, how long seed keeps, what a
// square metre bears and what it feeds.
//
// Checked against: the coefficients, stages, roots and depletion shares of FAO-56
// (1998) and three rows of its revision of 2025, its examples on coefficients in wind
// and damp air and on the curve, salt tolerances of Maas (1990) and the yields that
// follow, Harrington's germination at nine temperatures, temperatures of Knott's
// handbook, and light sums by three conversions.
//
// Left out: varieties (a row is a kind of plant; varieties differ by a third and more
// in time and yield), the bare-soil part of evaporation (the single coefficient holds
// its mean), carbon dioxide, day length (onion bulbs and spinach bolts by it), and
// seed that grows old: only the years for which it is sown as good are known.
package crop

import (
	"fmt"
	"strings"
)

// A Standing says how a number is known.
type Standing int8

// The standings, best first.
const (
	Seen       Standing = iota // read in the source, or in a page that prints its table
	Quoted                     // read in a data file that names the source
	Remembered                 // from memory of the source
	Practice                   // common practice, no source
	Worked                     // worked out here from other figures of the table
)

// String gives the standing in words.
func (s Standing) String() string {
	return [...]string{"seen", "quoted", "from memory", "common practice, no source", "worked out from other figures"}[s]
}

// From says where figures come from and how they are known.
type From struct {
	Source string // "key: place"; "" for common practice
	Standing
}

// Says gives source and standing as one text.
func (f From) Says() string {
	if f.Source == "" {
		return f.Standing.String()
	}
	return f.Source + " (" + f.Standing.String() + ")"
}

// A Figure is one number with where it comes from.
type Figure struct {
	Value float64
	From
}

// A Crop is one kind of plant.
type Crop struct {
	Name string
	Eats Part // what of it is eaten

	Stages    Stages    // of the season, FAO-56 table 11
	Kc        Kc        // coefficients of the edition of 1998
	Revised   *Kc       // those of the revision of 2025, where they are known
	Height    Figure    // m, at mid season
	Roots     Range     // m, deepest, where water is short and where it is plenty
	Depletion Figure    // share p of the water that roots reach, taken before the plant suffers, at 5 mm/d
	Salt      Tolerance // to salt in the soil
	Ky        Figure    // share of yield lost for each share of water missed

	Air      Temperatures
	Light    Range  // mol/m2d: below Low it hardly bears, from High on more gives no more
	Maturity Range  // days to the first harvest, from Maturity's start
	Planted  bool   // Maturity and Season count from setting out a seedling or tuber, not from the seed
	Picks    Figure // share of the season's warmth after which picking begins; 1 for a single harvest

	Sprouts *Germination // nil for what is not grown from seed
	Soil    Sowing       // how warm the soil should be
	Seed    Seed

	Yield  Range  // kg fresh per m2 and season: poor and good; Usual between
	Usual  Figure // kg fresh per m2 and season
	Edible Figure // share of the harvest that is eaten
	Energy Figure // kcal per kg eaten

	Nitrogen Figure // g per kg of the harvest
	Residue  Figure // kg of leaves and stems per kg of harvest
	Straw    Figure // g of nitrogen per kg of these
}

// A Part is what of a plant is eaten.
type Part int8

// The parts. Fruit and Pod hang on the plant and need their flowers fertilised.
const (
	Leaf Part = iota
	Root
	Bulb
	Pod
	Fruit
)

// String gives the part in words.
func (p Part) String() string { return [...]string{"leaf", "root", "bulb", "pod", "fruit"}[p] }

// A Range is a low and a high figure of one source.
type Range struct {
	Low, High float64
	From
}

// A Seed says how a plant makes its own seed.
type Seed struct {
	Keeps    Figure // years in dry, cool storage
	True     bool   // pollinates itself: kept seed comes true with little care
	Insects  bool   // fruit sets only where insects, or a hand with a brush, carry pollen
	Biennial bool   // seeds in its second year
	Hybrids  bool   // most bought seed, or most bought fruit, is of hybrids, which do not come true
	Mates    string // who pollinates, and with what it crosses
	Weight   Figure // g per 1000 seeds
	Distance Range  // m: in the row, between rows, when grown
	From
}

// Named gives the crop of that name, or the fault with the names there are.
func Named(name string) (*Crop, error) {
	all := All()
	for i := range all {
		if all[i].Name == strings.TrimSpace(name) {
			return &all[i], nil
		}
	}
	return nil, fmt.Errorf("crop %q is not known: it is one of %s", name, strings.Join(Names(), ", "))
}

// Names lists the crops, in the order of All.
func Names() []string {
	all := All()
	names := make([]string, len(all))
	for i := range all {
		names[i] = all[i].Name
	}
	return names
}
