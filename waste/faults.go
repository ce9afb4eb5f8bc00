package waste

import (
	"errors"
	"fmt"
)

// A bound is one figure of a design with the least and the most it may be.
type bound struct {
	what             string
	value, low, high float64
	unit             string
}

// check gives a sentence where the figure is outside, or no number.
func (b bound) check() error {
	if b.value >= b.low && b.value <= b.high {
		return nil
	}
	return fmt.Errorf("%s is %g%s: give from %g to %g%s", b.what, b.value, b.unit, b.low, b.high, b.unit)
}

func all(bounds []bound) error {
	var faults []error
	for _, b := range bounds {
		faults = append(faults, b.check())
	}
	return errors.Join(faults...)
}

// Faults gives every fault of a tank at once.
func (k *SepticTank) Faults() error {
	return all([]bound{
		{"septic tank: what it holds", float64(k.Holds), 1, 1e6, " L"},
		{"septic tank: share of BOD that settles", k.Settles, 0, 1, ""},
		{"septic tank: share of nitrogen in sludge", k.Binds, 0, 1, ""},
		{"septic tank: sludge of a person", k.Sludge, 0, 500, " L/person/year"},
		{"septic tank: share of scum", k.Scum, 0, 1, ""},
		{"septic tank: share of solids at the most", k.Most, 0, 1, ""},
		{"septic tank: share digested in a day", k.Digests, 0, 1, ""},
		{"septic tank: share left by an emptying", k.Leaves, 0, 1, ""},
	})
}

// Faults gives every fault of a trench and its trees at once.
func (t *Trench) Faults() error {
	err := all([]bound{
		{"trench: length", float64(t.Length), 0.1, 1000, " m"},
		{"trench: width", float64(t.Width), 0.1, 100, " m"},
		{"trench: depth of gravel", float64(t.Gravel), 0.01, 5, " m"},
		{"trench: pores", t.Pores, 0.05, 1, ""},
		{"trench: ground that catches rain", float64(t.Catch), 0, 1e5, " m2"},
		{"trench: share of rain that runs off", t.RunsOff, 0, 1, ""},
		{"trench: water in the cover", float64(t.Cover), 0, 1e6, " L"},
		{"trench: long-term rate of the soil", t.Soil.Long, 0, 1e5, " mm/d"},
		{"trench: fresh rate of the soil, not below the long-term one", t.Soil.Fresh, t.Soil.Long, 1e6, " mm/d"},
		{"trench: BOD that clogs the soil", t.Soil.Clogs, 1, 1e6, " g/m2"},
		{"trench: coefficient of grass", t.Grass, 0, 2, ""},
		{"trench: trees", float64(t.Grove.Trees), 0, 1000, ""},
	})
	if t.Grove.Trees > 0 {
		err = errors.Join(err, t.Grove.faults())
	}
	return err
}

func (g *Grove) faults() error {
	err := all([]bound{
		{"trees: crown", float64(g.Crown), 0, 1000, " m2"},
		{"trees: years until grown", g.Grown, 0.1, 200, " years"},
		{"trees: crop coefficient", g.Kc, 0, 2, ""},
		{"trees: share of thirst from the gravel", g.Reach, 0, 1, ""},
	})
	if c := g.Leaves; !c.Evergreen && !(1 <= c.Out && c.Out < c.Full && c.Full <= c.Turn && c.Turn < c.Bare && c.Bare <= 366) {
		err = errors.Join(err, fmt.Errorf("trees: leaves open on day %d to %d and fall on day %d to %d: give days of a northern year in that order", c.Out, c.Full, c.Turn, c.Bare))
	}
	return err
}
