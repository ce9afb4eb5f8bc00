// Package hourly lets the house live through its weather. It holds the only loop over
// hours, and no formula: it orders the parts and connects them.
//
// Checked against: the sums of the parts (laws_test.go: no litre, watt-hour or joule
// appears or vanishes in random houses and weather), the closed form of a tank that runs
// dry (laws_test.go), and the table of couplings (couplings_test.go), each link of which
// is cut once and must be missed by the other budget.
//
// An hour has three phases, so that a cause and its effect fall in the same hour and
// only states are an hour old, never flows:
//
//  1. income and wants: sky, light, roofs; the people look at last hour's stores and
//     decide; taps, pumps and loads say what they want;
//  2. shares: power by priority, then water as far as its pumps and lamps got power;
//  3. what happens: hot water with the litres that really flowed, gas with what burned, rooms
//     with the heat of people and of what really ran.
//
// Rooms are lived where the file tells their walls by layers; else the air inside is what the file
// assumes (House.Indoors) wherever a store or a battery stands inside.
//
// Used water leaves by the drains of its customs: to the planter's bed, through it to the flush well and the toilet, to the septic tank and the trench with
// its trees. Those parts live hour by hour; crops, sludge, salt and heaps once a day, when it ends.
//
// The earth of a room's section has a face that lives under grass through the record before the house is lived in it: the house's warmth does not
// reach that face's balance.
//
// Left out: frost in pipes and trench; what one house does to a neighbour's ground.
package hourly
