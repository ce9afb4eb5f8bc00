package hotwater

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// prepared is what depends on the design alone.
type prepared struct {
	upper, lower, whole          float64 // Wh/K of the layers and of both
	perUpper, perLower, perWhole float64 // their inverses
	lossUpper, lossLower         float64 // W/K to the room
	rest                         relaxation
	limit, set                   float64 // degC
	most                         float64 // W of heat the backup may put into the upper layer
	efficiency                   float64
	after, intoUpper             bool // where the backup heats
	element                      bool // it is electric

	area, a1, a2 float64
	rise         float64 // K of the fluid's mean over the lower layer, per W of solar heat
	riseNow      float64 // K per W/m2 of heat at first sight: rise*area/(1+area*a1*rise)
	difference   float64 // K
	pump         float64 // W
	freezes      float64 // degC of the air under which the collector may freeze; -inf for never
	recirculates bool
}

// Temperatures of frost. Under a clear night a collector is colder than the air, so
// protection begins above 0 degC. Common practice, no source.
const (
	frostAir  = 3.0 // degC of the air under which water in a collector may freeze
	frostKeep = 5.0 // degC at which recirculation keeps the collector
)

// Prepare works out what depends on the design alone. The error lists all its faults.
func (y *System) Prepare() error {
	if err := errors.Join(y.Collector.faults(), y.Store.faults(), y.backupFaults()); err != nil {
		return err
	}
	p := &y.p
	y.prepareStore(p)
	y.prepareCollector(p)
	b := y.Backup
	p.set, p.efficiency = float64(b.Set), b.Efficiency
	p.after, p.element = b.By == GasAfter, b.By == ElectricUpper
	p.intoUpper = b.By == GasUpper || b.By == ElectricUpper
	p.most = float64(b.Power)
	return nil
}

func (y *System) prepareStore(p *prepared) {
	s := y.Store
	p.whole = quantity.WaterHeat * float64(s.Holds)
	p.upper = p.whole * s.UpperShare
	p.lower = p.whole - p.upper
	p.perUpper, p.perLower, p.perWhole = 1/p.upper, 1/p.lower, 1/p.whole
	p.lossUpper = s.Loss * s.UpperShare
	p.lossLower = s.Loss - p.lossUpper
	p.rest = relaxationAtRest(s.Loss / p.whole)
	p.limit = float64(s.Limit)
}

func (y *System) prepareCollector(p *prepared) {
	c := &y.Collector
	p.area, p.a1, p.a2 = float64(c.Area), c.A1, c.A2
	p.pump, p.difference = float64(c.Pump), float64(c.Difference)
	p.freezes = math.Inf(-1)
	if p.area == 0 {
		return
	}
	p.rise = 1 / (2 * c.Flow * p.area * quantity.WaterHeat) // half of what the fluid gains on its way
	if c.Exchanger > 0 {
		p.rise += 1 / c.Exchanger
	}
	p.riseNow = p.rise * p.area / (1 + p.area*p.a1*p.rise)
	switch c.Frost {
	case NoFrost, Recirculate:
		p.freezes = frostAir
	case Antifreeze:
		p.freezes = float64(c.FreezesAt)
	case DrainBack: // no water stands in the collector
	}
	p.recirculates = c.Frost == Recirculate
}

// faulty collects faults as sentences.
type faulty []error

func (f *faulty) unless(ok bool, format string, args ...any) {
	if !ok {
		*f = append(*f, fmt.Errorf("hot water: "+format, args...))
	}
}

func (c *Collector) faults() error {
	var f faulty
	f.unless(c.Area >= 0 && c.Area <= 1000, "a collector of %g m2 is out of range: 0 to 1000 m2", float64(c.Area))
	if c.Area == 0 {
		return errors.Join(f...)
	}
	f.unless(c.Eta0 > 0 && c.Eta0 <= 1, "eta0 of %g is out of range: over 0, at most 1", c.Eta0)
	f.unless(c.A1 >= 0 && c.A1 <= 50, "a1 of %g W/m2K is out of range: 0 to 50", c.A1)
	f.unless(c.A2 >= 0 && c.A2 <= 1, "a2 of %g W/m2K2 is out of range: 0 to 1", c.A2)
	f.unless(c.A1+c.A2 > 0, "a1 and a2 are both 0: a collector that loses nothing would heat without end")
	f.unless(c.K50 > 0 && c.K50 <= 1, "an incidence modifier of %g at 50 deg is out of range: over 0, at most 1; a flat collector has about 0.94", c.K50)
	f.unless(c.Flow > 0 && c.Flow <= 1000, "a collector flow of %g L/h per m2 is out of range: over 0, at most 1000; usual is 40", c.Flow)
	f.unless(c.Exchanger >= 0, "an exchanger of %g W/K is out of range: 0 for none, or more", c.Exchanger)
	f.unless(c.Difference >= 0 && c.Difference <= 50, "a starting difference of %g K is out of range: 0 to 50 K; usual is 6", float64(c.Difference))
	f.unless(c.Pump >= 0 && c.Pump <= 10000, "a solar pump of %g W is out of range: 0 to 10000 W", float64(c.Pump))
	f.unless(c.Frost >= NoFrost && c.Frost <= Recirculate, "frost protection %d is not known", c.Frost)
	f.unless(c.Slope >= 0 && c.Slope <= 180, "a slope of %g deg is out of range: 0 to 180", float64(c.Slope))
	f.unless(finite(float64(c.Azimuth)), "the azimuth %g is not a number", float64(c.Azimuth))
	return errors.Join(f...)
}

func (s *Store) faults() error {
	var f faulty
	f.unless(s.Holds > 0 && s.Holds <= 1e6, "a store of %g L is out of range: over 0, at most 1000000 L", float64(s.Holds))
	f.unless(s.UpperShare >= 0.01 && s.UpperShare <= 0.99, "an upper share of %g is out of range: 0.01 to 0.99", s.UpperShare)
	f.unless(s.Loss >= 0 && finite(s.Loss), "a standing loss of %g W/K is out of range: 0 or more", s.Loss)
	f.unless(s.Limit > 0 && s.Limit <= 99, "a store limit of %g degC is out of range: over 0, at most 99 degC", float64(s.Limit))
	return errors.Join(f...)
}

func (y *System) backupFaults() error {
	var f faulty
	b := &y.Backup
	f.unless(b.By >= NoBackup && b.By <= ElectricUpper, "backup %d is not known", b.By)
	if b.By == NoBackup {
		return errors.Join(f...)
	}
	f.unless(b.Efficiency > 0 && b.Efficiency <= 1.1, "a backup efficiency of %g is out of range: over 0, at most 1.1", b.Efficiency)
	f.unless(b.Set > 0 && b.Set <= 95, "a backup set to %g degC is out of range: over 0, at most 95 degC", float64(b.Set))
	if b.By != GasAfter {
		f.unless(b.Power > 0 && b.Power <= 1e6, "a backup of %g W is out of range: over 0, at most 1000 kW", float64(b.Power))
		f.unless(b.Set <= y.Store.Limit, "the backup is set to %g degC, over the store's limit of %g degC", float64(b.Set), float64(y.Store.Limit))
	}
	return errors.Join(f...)
}
