package power

import "suffice/quantity"

// A Chemistry is what a kind of battery is like, whatever its size. All shares are 0 to 1.
type Chemistry struct {
	Name          string
	WellShare     float64          // c of the two wells
	WellRate      float64          // k of the two wells, 1/h
	RatedHours    float64          // the rated capacity is what comes out in so many hours, h
	Efficiency    float64          // energy out over energy in, taken on the way in
	SelfDischarge float64          // share of the charge lost in 30 days
	Cold          float64          // share of the rated capacity that is locked per kelvin below Warm, 1/K
	Warm          quantity.Celsius // at and above it nothing is locked
	ChargeAbove   quantity.Celsius // below it nothing is charged
	ChargeRate    float64          // largest charging power over rated capacity, 1/h
	DischargeRate float64          // largest power out over rated capacity, 1/h
	ChargeVoltage float64          // voltage while charging over nominal voltage, for limits in amperes
	CycleLife     []LifePoint      // cycles to the end of life by depth
	CalendarYears float64          // years to the end of life with no cycle at all
}

// LeadAcid gives constants for vented deep-cycle lead-acid cells.
//
// The wells are the least-squares fit of the capacity formula to Peukert's law with
// exponent 1.2 (from memory: 1.1 to 1.3 for such cells) at 1 to 20 hours, see TestWellsFitPeukert.
func LeadAcid() Chemistry {
	return Chemistry{
		Name:          "lead-acid",
		WellShare:     0.51,
		WellRate:      0.47,
		RatedHours:    10,
		Efficiency:    0.75,  // from memory: 0.70 to 0.82 over a full cycle
		SelfDischarge: 0.04,  // from memory: 0.03 to 0.05 in a month at 25 degC when new, more with age
		Cold:          0.011, // straight line through the factors of [ieee485, table 1, remembered]
		Warm:          25,
		ChargeAbove:   -20,                                                // assumed; a discharged cell freezes well above that
		ChargeRate:    0.2,                                                // from memory: 0.1 to 0.25 of the ten-hour capacity
		DischargeRate: 1,                                                  // assumed; the wells limit long before
		ChargeVoltage: 1.15,                                               // from memory: 2.3 V a cell over 2.0
		CycleLife:     []LifePoint{{0.2, 5000}, {0.5, 2500}, {0.8, 1200}}, // from memory, lower ends for tubular plates; flat plates last a third to a half of it
		CalendarYears: 10,                                                 // from memory: 6 to 15 with make and warmth
	}
}

// Lithium gives constants for lithium iron phosphate packs with their own guard electronics.
// The wells are fitted as for LeadAcid, to exponent 1.05 (from memory).
func Lithium() Chemistry {
	return Chemistry{
		Name:          "lithium",
		WellShare:     0.83,
		WellRate:      0.39,
		RatedHours:    10,
		Efficiency:    0.93,  // from memory: 0.90 to 0.96 over a full cycle
		SelfDischarge: 0.02,  // from memory: 0.02 to 0.03 in a month, electronics not counted
		Cold:          0.005, // assumed: an eighth less at freezing
		Warm:          25,
		ChargeAbove:   0,                                                   // from memory: plating of lithium below freezing
		ChargeRate:    0.5,                                                 // from memory: makers allow 0.5 to 1
		DischargeRate: 1,                                                   // from memory: makers allow 1
		ChargeVoltage: 1.06,                                                // from memory: 3.4 V a cell over 3.2
		CycleLife:     []LifePoint{{0.2, 16000}, {0.5, 7000}, {0.8, 4000}}, // assumed around makers' 3500 to 6000 at 80 %
		CalendarYears: 15,                                                  // assumed
	}
}

// ChemistryNamed gives the constants of a kind by the name that a house file uses.
func ChemistryNamed(name string) (Chemistry, bool) {
	for _, c := range []Chemistry{LeadAcid(), Lithium()} {
		if c.Name == name {
			return c, true
		}
	}
	return Chemistry{}, false
}
