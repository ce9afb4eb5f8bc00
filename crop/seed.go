package crop

import (
	"fmt"
	"math"
)

// Steps of Harrington's table: 32 to 104 °F, printed every 9 °F.
const (
	coldest    = 0.0 // degC
	stepBy     = 5.0 // K
	tableSteps = 9
)

// Germination is what came up in soil at 0, 5 ... 40 degC.
type Germination struct {
	Share [tableSteps]float64 // %, normal seedlings
	Days  [tableSteps]float64 // until they came up; 0 where none is printed
	From
}

// A Sowing is how warm soil is at least where seed of a crop comes up, and from where on it is worth sowing, degC;
// nil where the source prints none.
type Sowing struct{ Least, Good *Figure }

// sowingAt takes a sowing as printed, in °F; 0 is a figure not printed.
func sowingAt(least, good float64) Sowing {
	printed := func(f float64) *Figure {
		if f == 0 {
			return nil
		}
		return &Figure{c(f), warmSoil}
	}
	return Sowing{printed(least), printed(good)}
}

// ColdSoil says what is to be expected of seed in soil at a temperature, nil where it is warm enough or no figure is known.
func (c *Crop) ColdSoil(soil float64) error {
	switch {
	case c.Soil.Least != nil && soil < c.Soil.Least.Value-1e-9: // a hair, for figures turned from °F
		return fmt.Errorf("soil of %.3g degC is below the %.3g at which seed of %s begins to come up (%s): wait, or sow indoors", soil, c.Soil.Least.Value, c.Name, c.Soil.Least.Source)
	case c.Soil.Good != nil && soil < c.Soil.Good.Value-1e-9:
		return fmt.Errorf("%s is better sown from %.3g degC of soil on (%s): in cooler soil it comes up slowly and grows weakly", c.Name, c.Soil.Good.Value, c.Soil.Good.Source)
	}
	return nil
}

// ShareAt gives the percentage of fresh seed that comes up in soil at a temperature, along straight lines
// between the printed ones. Outside 0 to 40 degC it is 0: nothing is printed there.
func (g *Germination) ShareAt(soil float64) float64 {
	i, part, ok := place(soil)
	if !ok {
		return 0
	}
	return g.Share[i] + part*(g.Share[min(i+1, tableSteps-1)]-g.Share[i])
}

// DaysAt gives the days until they come up; ok is false where the source prints none. Speed, one over days,
// runs along straight lines.
func (g *Germination) DaysAt(soil float64) (days float64, ok bool) {
	i, part, ok := place(soil)
	if !ok || g.Days[i] == 0 {
		return 0, false
	}
	if part == 0 {
		return g.Days[i], true
	}
	if g.Days[i+1] == 0 {
		return 0, false
	}
	return 1 / ((1-part)/g.Days[i] + part/g.Days[i+1]), true
}

func place(soil float64) (i int, part float64, ok bool) {
	at := (soil - coldest) / stepBy
	if !(at >= 0 && at <= tableSteps-1) {
		return 0, 0, false
	}
	whole := math.Floor(at)
	return int(whole), at - whole, true
}

// BreedsTrue says in words whether kept seed gives the same plant.
func (c *Crop) BreedsTrue() string {
	s := &c.Seed
	says := "yes"
	switch {
	case c.Sprouts == nil:
		return "it is planted as a tuber, which is the same plant again; diseases build up in kept ones"
	case !s.True:
		says = "only apart from its kin"
	}
	says += ": " + s.Mates
	if s.Biennial {
		says += "; it seeds in its second year"
	}
	if s.Hybrids {
		says += "; bought ones are mostly hybrids, whose seed does not come true"
	}
	return says
}

// KeptSeed says whether seed of that age in years may be sown as good.
func (c *Crop) KeptSeed(age float64) error {
	if c.Sprouts == nil || age <= c.Seed.Keeps.Value {
		return nil
	}
	return fmt.Errorf("%s seed of %g years is older than the %g it keeps in dry, cool storage: lay ten on damp paper and sow by how many sprout", c.Name, age, c.Seed.Keeps.Value)
}

// Plants gives how many stand on a square metre when grown.
func (c *Crop) Plants() float64 { return 1 / (c.Seed.Distance.Low * c.Seed.Distance.High) }
