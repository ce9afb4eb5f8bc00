package hourly

import (
	"suffice/crop"
	"suffice/garden"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// ChainTotals are sums over all hours of the second to fourth use of water, of waste and of food.
type ChainTotals struct {
	Fed, Apart, Diverted, Surged reuse.Water                    // the waste of the taps: to the planter, and past it
	Emptied                      float64                        // g of BOD taken out of the trap
	Used                         [reuse.Sources]quantity.Litres // down each drain
	Topped, Poured               reuse.Water                    // from the tanks: for the cisterns or the well, and on the planter's soil
	Rain                         quantity.Litres                // on a planter outdoors
	PlanterWanted, Evaporated    quantity.Litres
	Drained, Rim                 reuse.Water // from the planter: to the well, and over its rim
	Decayed                      float64     // g of BOD in the planter
	Nitrogen                     float64     // g that the planter's plants took up
	Flush, Flushed               quantity.Litres
	FlushNoPower                 quantity.Litres
	WellOverflow                 reuse.Water
	Stale                        int        // hours in which the well's water was called stale
	Bowl                         waste.Load // by people into toilets
	Sewage                       waste.TankIn
	Effluent                     waste.TankIn // from the septic tank
	Carried                      waste.TankIn // solids that the tank had no room for
	Gas                          float64      // g of BOD digested
	Removed                      waste.TankIn
	Desludgings                  int
	CatchRain                    quantity.Litres // on the ground that drains to the trench
	Trench                       waste.TrenchOut
	Beds                         garden.BedOut // sums of all beds
	BedRain, BedGiven, BedWanted quantity.Litres
	Animals                      quantity.Litres // wanted
	LawnGiven                    quantity.Litres
	LawnHours                    int             // in which it was watered
	LawnMost                     quantity.Litres // given to it in one hour
	Wet, Dry                     int             // days on which the planter's roots were too wet all day, and too dry at its end
	PlanterStress                float64         // sum over days of evaporated over wanted
	Days                         int

	// By month of the year, 1 to 12, sums over all years.
	TopUpIn, EvaporatedIn, FedIn, ThirstIn, FlushIn, SurfacedIn [13]quantity.Litres
}

// add takes in one hour.
func (t *ChainTotals) add(c *chain, month int, row *Row) {
	if p := c.parts; p != nil {
		t.addUsed(p.Planter != nil, month, row)
		t.addWaste(c, month, row)
	}
	u := &row.Chain
	if c.garden != nil {
		for b := range c.garden.Beds {
			t.Beds.Evaporated += u.BedOut[b].Evaporated
			t.Beds.Drained += u.BedOut[b].Drained
			t.Beds.Sprayed += u.BedOut[b].Sprayed
			t.Beds.Leached += u.BedOut[b].Leached
			t.BedGiven += u.BedIn[b].Given
			t.BedRain += u.BedIn[b].Rain.On(c.garden.Beds[b].Plot.Bed.Area)
			if given := u.BedIn[b].Given; given > 0 && c.garden.Beds[b].Lawn {
				t.LawnGiven += given
				t.LawnHours++
				t.LawnMost = max(t.LawnMost, given)
			}
		}
		t.Animals += u.Animals
	}
	t.BedWanted += u.Beds
	if u.Ended {
		t.endDay(c, u)
	}
}

func (t *ChainTotals) addUsed(planter bool, month int, row *Row) {
	u := &row.Chain
	sum(&t.Fed, &u.Grey.Fed)
	sum(&t.Apart, &u.Grey.Apart)
	sum(&t.Diverted, &u.Grey.Diverted)
	sum(&t.Surged, &u.Grey.Surged)
	t.Emptied += u.Grey.Emptied
	for source, litres := range u.GreyIn.Used {
		t.Used[source] += litres
	}
	t.Flush += u.Flush
	t.Flushed += u.Flushed
	t.FlushIn[month] += u.Flush
	sum(&t.Topped, &u.Topped)
	t.TopUpIn[month] += u.Topped.Litres
	t.FedIn[month] += u.Grey.Fed.Litres
	t.FlushNoPower += u.Well.NoPower
	sum(&t.WellOverflow, &u.Well.Overflowed)
	if u.Well.Stale {
		t.Stale++
	}
	if !planter {
		return
	}
	sum(&t.Poured, &u.PlanterIn.Poured)
	t.Rain += u.Rain
	t.PlanterWanted += u.Planter.Wanted
	t.Evaporated += u.Planter.Evaporated
	t.EvaporatedIn[month] += u.Planter.Evaporated
	t.ThirstIn[month] += u.Planter.Wanted
	sum(&t.Drained, &u.Planter.Drained)
	sum(&t.Rim, &u.Planter.Overflowed)
	t.Decayed += u.Planter.Decayed
}

// sum adds litres and what they carry.
func sum(to *reuse.Water, w *reuse.Water) {
	to.Litres += w.Litres
	to.Salt += w.Salt
	to.BOD += w.BOD
	to.Nitrogen += w.Nitrogen
}

func (t *ChainTotals) addWaste(c *chain, month int, row *Row) {
	u := &row.Chain
	t.Bowl = t.Bowl.Plus(c.parts.Toilet.Times(row.Wants.Persons / 24))
	t.Sewage.Inflow += u.Sewage.Inflow
	t.Sewage.Load = t.Sewage.Load.Plus(u.Sewage.Load)
	if c.parts.Septic == nil {
		return
	}
	t.Effluent.Inflow += u.Septic.Outflow
	t.Effluent.Load = t.Effluent.Load.Plus(u.Septic.Load)
	if c.parts.Trench == nil {
		return
	}
	o, of := &t.Trench, &u.Trench
	o.RunOff += of.RunOff
	o.Through += of.Through
	o.Infiltrated += of.Infiltrated
	o.ToSoil = o.ToSoil.Plus(of.ToSoil)
	o.Grass += of.Grass
	o.Trees += of.Trees
	o.Deep += of.Deep
	o.Taken = o.Taken.Plus(of.Taken)
	o.Surfaced += of.Surfaced
	o.SurfacedLoad = o.SurfacedLoad.Plus(of.SurfacedLoad)
	o.Unmet += of.Unmet
	t.CatchRain += u.TrenchIn.Rain.On(c.parts.Trench.Catch)
	t.SurfacedIn[month] += of.Surfaced
}

func (t *ChainTotals) endDay(c *chain, u *ChainRow) {
	t.Days++
	if p := c.parts; p != nil && p.Planter != nil {
		t.Nitrogen += u.Day.Planter.Nitrogen
		t.PlanterStress += u.Day.Planter.Stress
		if u.Day.Planter.TooWet {
			t.Wet++
		}
		if u.Day.Planter.TooDry {
			t.Dry++
		}
	}
	if p := c.parts; p != nil && p.Septic != nil {
		d := &u.Day.Septic
		t.Carried.Inflow += d.Carried
		t.Carried.Load = t.Carried.Load.Plus(d.CarriedLoad)
		t.Gas += d.Gas
		t.Removed.Inflow += d.Removed
		t.Removed.Load = t.Removed.Load.Plus(d.RemovedLoad)
		if u.Day.Desludged {
			t.Desludgings++
		}
	}
}

// A FoodYear is what one calendar year bore.
type FoodYear struct {
	Year              int32
	Days              int
	Harvest           garden.Harvest
	Eggs, Milk, Honey float64 // pieces, L, kg
	Lost              Lost
	Share             garden.Share
}

// Lost is what cost a year's crops part of what warmth alone would have borne, kg; Died is what stood and perished.
type Lost struct {
	ToFlowers, ToLight, ToWater, ToSalt, ToNitrogen, Died float64
	Plantings, Failed                                     int // sown, and of them rotted, frozen or given up
}

// Add adds the losses of another year.
func (l *Lost) Add(o *Lost) {
	l.ToFlowers += o.ToFlowers
	l.ToLight += o.ToLight
	l.ToWater += o.ToWater
	l.ToSalt += o.ToSalt
	l.ToNitrogen += o.ToNitrogen
	l.Died += o.Died
	l.Plantings += o.Plantings
	l.Failed += o.Failed
}

// addFood takes in the end of a day.
func (c *chain) addFood(years []FoodYear, day int, year int32, u *ChainRow) []FoodYear {
	if len(years) == 0 || years[len(years)-1].Year != year {
		years = append(years, FoodYear{Year: year})
	}
	y := &years[len(years)-1]
	y.Days++
	month := c.days[day].month
	if p := c.parts; p != nil && p.Planter != nil && p.Planter.Plot != nil {
		y.add(month, u.Day.GrowthCrop, &u.Day.Growth)
	}
	if g := c.garden; g != nil {
		for b := range g.Beds {
			y.add(month, u.Day.BedCrops[b], &u.Day.Beds[b])
		}
		y.Eggs += u.Day.Stock.Eggs
		y.Milk += u.Day.Stock.Milk
		y.Honey += u.Day.Stock.Honey
	}
	return years
}

func (y *FoodYear) add(month int, grown *crop.Crop, d *garden.BedDayOut) {
	if grown != nil && d.Picked > 0 {
		y.Harvest.Add(month, grown, d.Picked)
	}
	l := &y.Lost
	l.ToFlowers += d.LostToFlowers
	l.ToLight += d.LostToLight
	l.ToWater += d.LostToWater
	l.ToSalt += d.LostToSalt
	l.ToNitrogen += d.LostToNitrogen
	l.Died += d.Died
	if d.Sown {
		l.Plantings++
	}
	switch d.Event {
	case garden.Frozen, garden.Rotted, garden.GivenUp:
		l.Failed++
	case garden.Nothing, garden.Finished:
	}
}

// A Food is the verdict on what the beds bear: the mean over the years of the share of the household's vegetables.
type Food struct {
	Wanted               bool
	Want                 float64        // share that the file asks for
	Kitchen              garden.Kitchen // what the household eats
	Years                []FoodYear
	Share, Fresh, Energy float64 // means of the whole years
	Worst                float64 // least share of a year
	Reached              int     // years that reach Want
}

// Suffices reports whether the mean share reaches the want.
func (f *Food) Suffices() bool { return f.Share >= f.Want }

// wholeYear is the fewest days that count as a year of food: a record may lack a day or two.
const wholeYear = 360

// foodOf sums up the years.
func (r *Run) foodOf(years []FoodYear) Food {
	f := Food{Wanted: r.House.Wants.Food.Stated && r.chain != nil, Want: r.House.Wants.Food.Share, Years: years, Worst: 1e9}
	if r.chain == nil {
		return f
	}
	kitchen := garden.UsualKitchen(r.meanPersons())
	if g := r.chain.garden; g != nil {
		kitchen.Wants = g.Kitchen.Wants
	}
	f.Kitchen = kitchen
	whole := 0
	for i := range years {
		y := &years[i]
		y.Share = kitchen.Share(&y.Harvest)
		if y.Days < wholeYear {
			continue
		}
		whole++
		f.Share += y.Share.Vegetables
		f.Fresh += y.Share.Fresh
		f.Energy += y.Share.Energy
		f.Worst = min(f.Worst, y.Share.Vegetables)
		if y.Share.Vegetables >= f.Want {
			f.Reached++
		}
	}
	if whole > 0 {
		f.Share /= float64(whole)
		f.Fresh /= float64(whole)
		f.Energy /= float64(whole)
	} else {
		f.Worst = 0
	}
	return f
}

// meanPersons gives the people at home, mean of all days.
func (r *Run) meanPersons() float64 {
	sum := 0.0
	for d := range r.Weather.Days {
		sum += r.diary.Persons(d)
	}
	return sum / float64(len(r.Weather.Days))
}

// ChainResiduals are what the sums of the chain do not explain: litres, and grams of salt, BOD and nitrogen.
type ChainResiduals struct {
	Litres, BedLitres, Salt, BOD, Nitrogen float64
}

// residuals holds what came against what went and what planter, well, tank and trench gained.
func (c *chain) residuals(start, end *ChainState, t *ChainTotals) (left ChainResiduals) {
	if p := c.parts; p != nil {
		grey := add(add(t.Fed, t.Apart), add(t.Diverted, t.Surged))
		in := add(add(grey, t.Topped), t.Poured)
		litres := float64(in.Litres + t.Rain + t.CatchRain)
		load := waste.Load(in.Load).Plus(t.Bowl)
		litres -= float64(t.Evaporated + t.Rim.Litres + t.Removed.Inflow)
		gone := waste.Load(t.Rim.Load).Plus(waste.Load{BOD: t.Decayed + t.Gas, Nitrogen: t.Nitrogen}).Plus(t.Removed.Load)
		switch {
		case p.Septic == nil:
			litres -= float64(t.Sewage.Inflow)
			gone = gone.Plus(t.Sewage.Load)
		case p.Trench == nil:
			litres -= float64(t.Effluent.Inflow + t.Carried.Inflow)
			gone = gone.Plus(t.Effluent.Load).Plus(t.Carried.Load)
		default:
			o := &t.Trench
			litres -= float64(o.RunOff + o.Infiltrated + o.Grass + o.Trees + o.Surfaced)
			gone = gone.Plus(o.ToSoil).Plus(o.Taken).Plus(o.SurfacedLoad)
		}
		before, beforeLoad := c.held(start)
		after, afterLoad := c.held(end)
		lost := load.Minus(gone).Minus(afterLoad.Minus(beforeLoad))
		left.Litres = litres - (after - before)
		left.Salt, left.BOD, left.Nitrogen = lost.Salt, lost.BOD, lost.Nitrogen
	}
	if g := c.garden; g != nil {
		left.BedLitres = float64(t.BedGiven + t.BedRain - t.Beds.Evaporated - t.Beds.Drained - t.Beds.Sprayed)
		for b := range g.Beds {
			left.BedLitres -= float64(end.Beds[b].Held - start.Beds[b].Held)
		}
	}
	return left
}

func add(a, b reuse.Water) reuse.Water {
	sum(&a, &b)
	return a
}

// held gives the litres and loads in planter, well, bowl, tank and trench.
func (c *chain) held(s *ChainState) (litres float64, load waste.Load) {
	if c.parts == nil {
		return 0, waste.Load{}
	}
	planter := s.Planter.Held()
	litres = float64(planter.Litres + s.Well.Held.Litres)
	load = waste.Load(planter.Load).Plus(waste.Load(s.Well.Held.Load)).Plus(s.Bowl)
	if c.parts.Septic != nil {
		litres += float64(s.Septic.Held() + s.Carry.Inflow)
		load = load.Plus(s.Septic.Dissolved).Plus(s.Septic.Settled).Plus(s.Carry.Load)
	}
	if c.parts.Trench != nil {
		litres += float64(s.Trench.Gravel + s.Trench.Cover)
		load = load.Plus(s.Trench.Load)
	}
	return litres, load
}

// midnight notes how well and tank stand at the end of a day.
func (c *chain) midnight(t *Tally, s *ChainState) {
	t.WellAge = s.Well.Age / 24
	if p := c.parts; p != nil && p.Septic != nil {
		t.Sludge = p.Septic.Full(&s.Septic)
	}
}
