package draw

import "suffice/report"

// OfProof gives every picture of a proof that its house has the parts for.
func OfProof(p *report.Proof, say Sentences) []Picture {
	var list []Picture
	h := p.Run.House
	if h.Water != nil {
		list = append(list, MonthsOfTank(p, say), YearsOfTank(p, say), FlowOfWater(p, say), UseOfWater(p, say), WorstSpellOfWater(p, say))
	}
	if h.Water != nil && h.Drains != nil {
		list = append(list, WayOfWater(p, say))
	}
	if h.Power != nil {
		list = append(list, MonthsOfCharge(p, say), YearsOfCharge(p, say), FlowOfPower(p, say), WorstSpellOfPower(p, say))
	}
	if p.Stated.Coldest.Found {
		for k := range p.Stated.Rooms {
			list = append(list, MonthsOfRoom(p, k, say))
		}
		list = append(list, ColdestWeek(p, say), HottestWeek(p, say))
	}
	if h.HotWater != nil {
		list = append(list, FlowOfHeat(p, say))
	}
	if h.Power != nil || h.HotWater != nil {
		list = append(list, Skyline(h, say))
	}
	return list
}
