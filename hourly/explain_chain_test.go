package hourly

import (
	"suffice/garden"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// parted names the litres, salt, BOD and nitrogen of a flow or a store.
func parted(to map[string]truth, name string, of func(*lesson) reuse.Water) {
	to[name] = func(l *lesson) float64 { return float64(of(l).Litres) }
	to[name+"_salt"] = func(l *lesson) float64 { return of(l).Salt }
	to[name+"_bod"] = func(l *lesson) float64 { return of(l).BOD }
	to[name+"_nitrogen"] = func(l *lesson) float64 { return of(l).Nitrogen }
}

func gramsOf(to map[string]truth, name string, of func(*lesson) waste.Load) {
	to[name+"_salt"] = func(l *lesson) float64 { return of(l).Salt }
	to[name+"_bod"] = func(l *lesson) float64 { return of(l).BOD }
	to[name+"_nitrogen"] = func(l *lesson) float64 { return of(l).Nitrogen }
}

// The stores after the hour are those of the state; in the last hour of a day, which the day's end has changed since, they are what the
// part's own step makes of the hour before.

func (l *lesson) planterAfter() reuse.PlanterState {
	if !l.row.Chain.Ended {
		return l.after.Chain.Planter
	}
	s := l.w.state.Chain.Planter
	in, out := l.row.Chain.PlanterIn, reuse.PlanterOut{}
	l.w.r.chain.parts.Planter.Bed.Step(&s, &in, &out)
	return s
}

func (l *lesson) septicAfter() waste.TankState {
	if !l.row.Chain.Ended {
		return l.after.Chain.Septic
	}
	s := l.w.state.Chain.Septic
	in, out := l.row.Chain.Sewage, waste.TankOut{}
	l.w.r.chain.parts.Septic.Step(&s, &in, &out)
	return s
}

func (l *lesson) plot() *garden.Plot { return &l.w.r.chain.garden.Beds[l.nth].Plot }

func (l *lesson) bedAfter() garden.BedState {
	if !l.row.Chain.Ended {
		return l.after.Chain.Beds[l.nth]
	}
	s := l.w.state.Chain.Beds[l.nth]
	in, out := l.row.Chain.BedIn[l.nth], garden.BedOut{}
	l.plot().Step(&s, &in, &out)
	return s
}

func drainsTruths() map[string]truth {
	t := map[string]truth{
		"emptied":    func(l *lesson) float64 { return l.row.Chain.Grey.Emptied },
		"trap_after": func(l *lesson) float64 { return l.after.Chain.Grey.Kept },
	}
	parted(t, "fed", func(l *lesson) reuse.Water { return l.row.Chain.Grey.Fed })
	parted(t, "apart", func(l *lesson) reuse.Water { return l.row.Chain.Grey.Apart })
	parted(t, "diverted", func(l *lesson) reuse.Water { return l.row.Chain.Grey.Diverted })
	parted(t, "surged", func(l *lesson) reuse.Water { return l.row.Chain.Grey.Surged })
	return t
}

func planterTruths() map[string]truth {
	t := map[string]truth{
		"evaporated":  func(l *lesson) float64 { return float64(l.row.Chain.Planter.Evaporated) },
		"short":       func(l *lesson) float64 { return float64(l.row.Chain.Planter.Short) },
		"rose":        func(l *lesson) float64 { return float64(l.row.Chain.Planter.Rose) },
		"sank":        func(l *lesson) float64 { return float64(l.row.Chain.Planter.Sank) },
		"bod_decayed": func(l *lesson) float64 { return l.row.Chain.Planter.Decayed },
	}
	parted(t, "drained", func(l *lesson) reuse.Water { return l.row.Chain.Planter.Drained })
	parted(t, "overflowed", func(l *lesson) reuse.Water { return l.row.Chain.Planter.Overflowed })
	parted(t, "free_after", func(l *lesson) reuse.Water { return l.planterAfter().Gravel })
	parted(t, "held_after", func(l *lesson) reuse.Water { return l.planterAfter().Soil })
	return t
}

func wellTruths() map[string]truth {
	t := map[string]truth{
		"level": func(l *lesson) float64 {
			return float64(l.w.r.chain.parts.Well.Level(&l.after.Chain.Well))
		},
		"top_up_asked": func(l *lesson) float64 { return float64(l.row.Chain.Ask.TopUp) },
		"pump_asked":   func(l *lesson) float64 { return float64(l.row.Chain.Ask.Pump) },
		"short":        func(l *lesson) float64 { return float64(l.row.Chain.Well.Short) },
		"no_power":     func(l *lesson) float64 { return float64(l.row.Chain.Well.NoPower) },
		"pump_used":    func(l *lesson) float64 { return float64(l.row.Chain.Well.Pump) },
		"age_after":    func(l *lesson) float64 { return l.after.Chain.Well.Age },
	}
	parted(t, "flushed", func(l *lesson) reuse.Water { return l.row.Chain.Well.Flushed })
	parted(t, "overflowed", func(l *lesson) reuse.Water { return l.row.Chain.Well.Overflowed })
	parted(t, "held_after", func(l *lesson) reuse.Water { return l.after.Chain.Well.Held })
	return t
}

func septicTruths() map[string]truth {
	t := map[string]truth{
		"outflow":      func(l *lesson) float64 { return float64(l.row.Chain.Septic.Outflow) },
		"liquid_after": func(l *lesson) float64 { return float64(l.septicAfter().Liquid) },
		"full":         func(l *lesson) float64 { s := l.septicAfter(); return l.w.r.chain.parts.Septic.Full(&s) },
	}
	gramsOf(t, "outflow", func(l *lesson) waste.Load { return l.row.Chain.Septic.Load })
	gramsOf(t, "dissolved_after", func(l *lesson) waste.Load { return l.septicAfter().Dissolved })
	gramsOf(t, "settled_after", func(l *lesson) waste.Load { return l.septicAfter().Settled })
	return t
}

func trenchTruths() map[string]truth {
	out := func(of func(*waste.TrenchOut) quantity.Litres) truth {
		return func(l *lesson) float64 { return float64(of(&l.row.Chain.Trench)) }
	}
	t := map[string]truth{
		"run_off":     out(func(o *waste.TrenchOut) quantity.Litres { return o.RunOff }),
		"through":     out(func(o *waste.TrenchOut) quantity.Litres { return o.Through }),
		"grass":       out(func(o *waste.TrenchOut) quantity.Litres { return o.Grass }),
		"trees":       out(func(o *waste.TrenchOut) quantity.Litres { return o.Trees }),
		"trees_deep":  out(func(o *waste.TrenchOut) quantity.Litres { return o.Deep }),
		"infiltrated": out(func(o *waste.TrenchOut) quantity.Litres { return o.Infiltrated }),
		"surfaced":    out(func(o *waste.TrenchOut) quantity.Litres { return o.Surfaced }),
		"unmet":       out(func(o *waste.TrenchOut) quantity.Litres { return o.Unmet }),

		"gravel_after":      func(l *lesson) float64 { return float64(l.after.Chain.Trench.Gravel) },
		"cover_after":       func(l *lesson) float64 { return float64(l.after.Chain.Trench.Cover) },
		"stands":            func(l *lesson) float64 { return float64(l.w.r.chain.parts.Trench.Stands(&l.after.Chain.Trench)) * 1000 },
		"bod_to_soil":       func(l *lesson) float64 { return l.row.Chain.Trench.ToSoil.BOD },
		"salt_to_soil":      func(l *lesson) float64 { return l.row.Chain.Trench.ToSoil.Salt },
		"nitrogen_to_soil":  func(l *lesson) float64 { return l.row.Chain.Trench.ToSoil.Nitrogen },
		"nitrogen_to_trees": func(l *lesson) float64 { return l.row.Chain.Trench.Taken.Nitrogen },
	}
	gramsOf(t, "surfaced", func(l *lesson) waste.Load { return l.row.Chain.Trench.SurfacedLoad })
	gramsOf(t, "gravel_after", func(l *lesson) waste.Load { return l.after.Chain.Trench.Load })
	return t
}

func treesTruths() map[string]truth {
	return map[string]truth{
		"thirst": func(l *lesson) float64 { return l.after.Chain.Trench.Today.Trees },
		"wanted": func(l *lesson) float64 {
			return l.after.Chain.Trench.Today.Trees * float64(l.row.Chain.TrenchIn.Reference)
		},
		"leaf": func(l *lesson) float64 {
			return l.w.r.chain.parts.Trench.Grove.Leaves.Leaf(l.w.r.chain.days[l.hour/24].ofYear, l.w.r.south())
		},
		"crown": func(l *lesson) float64 {
			return float64(l.w.r.chain.parts.Trench.Grove.CrownAt(l.w.r.trenchDay(l.hour / 24).Age))
		},
	}
}

func bedTruths() map[string]truth {
	return map[string]truth{
		"evaporated": func(l *lesson) float64 { return float64(l.row.Chain.BedOut[l.nth].Evaporated) },
		"drained":    func(l *lesson) float64 { return float64(l.row.Chain.BedOut[l.nth].Drained) },
		"sprayed":    func(l *lesson) float64 { return float64(l.row.Chain.BedOut[l.nth].Sprayed) },
		"leached":    func(l *lesson) float64 { return l.row.Chain.BedOut[l.nth].Leached },
		"wanted": func(l *lesson) float64 {
			return float64(l.plot().Want(&l.w.state.Chain.Beds[l.nth]))
		},
		"held_after":    func(l *lesson) float64 { return float64(l.bedAfter().Held) },
		"mineral_after": func(l *lesson) float64 { return l.bedAfter().Mineral },
	}
}

// rareInChain names what seldom happens in the chain and must have been explained.
var rareInChain = []rarity{
	{"greywater is turned away", func(_ *State, row *Row) bool { return row.Chain.Grey.Diverted.Litres > 0 }},
	{"the trap is emptied", func(_ *State, row *Row) bool { return row.Chain.Grey.Emptied > 0 }},
	{"the planter is rinsed", func(_ *State, row *Row) bool { return row.Chain.PlanterIn.Poured.Litres > 0 }},
	{"rain falls on the planter", func(_ *State, row *Row) bool { return row.Chain.PlanterIn.Rain > 0 }},
	{"the planter's plants thirst", func(_ *State, row *Row) bool { return row.Chain.Planter.Short > 0.01 }},
	{"the well is topped up", func(_ *State, row *Row) bool { return row.Chain.WellIn.Topped.Litres > 0 }},
	{"the well overflows", func(_ *State, row *Row) bool { return row.Chain.Well.Overflowed.Litres > 0 }},
	{"the well is stale", func(_ *State, row *Row) bool { return row.Chain.Well.Stale }},
	{"toilets are not flushed for want of power", func(_ *State, row *Row) bool { return row.Chain.Well.NoPower > 0 }},
	{"the tank has been emptied", func(s *State, _ *Row) bool { return s.Chain.Septic.Liquid > 0 && s.Chain.Septic.Held() < 1000 }},
	{"sludge goes on to the trench", func(s *State, row *Row) bool { return row.Chain.TrenchIn.Inflow > row.Chain.Septic.Outflow }},
	{"rain comes through to the gravel", func(_ *State, row *Row) bool { return row.Chain.Trench.Through > 0 }},
	{"sewage surfaces", func(_ *State, row *Row) bool { return row.Chain.Trench.Surfaced > 0 }},
	{"trees drink from the gravel", func(_ *State, row *Row) bool { return row.Chain.Trench.Deep > 0 }},
	{"a bed is watered", func(_ *State, row *Row) bool { return row.Chain.BedIn[0].Given > 0 }},
	{"dew lies on a bed", func(_ *State, row *Row) bool { return row.Chain.BedIn[0].Reference < 0 }},
	{"a bed leaches", func(_ *State, row *Row) bool { return row.Chain.BedOut[0].Leached > 0 }},
	{"a day ends with crops in the planter", func(_ *State, row *Row) bool { return row.Chain.Ended && row.Chain.Day.GrowthCrop != nil }},
}
