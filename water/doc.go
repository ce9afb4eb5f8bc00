// Package water follows rain from the roof to the tap: roofs, first flush, tanks,
// supply, treatment, delivered water.
//
// Checked against: a printed table of roof yields (66 cells; 4 misprints stay misprints),
// the published tank rules, mass curve and first flush (published_test.go); the balance of
// every litre and watt-hour of random works, and the closed form of the hour in which a tank
// runs dry (laws_test.go); a daily record of 37 years for the three rules (rules_test.go).
//
// The rule of the hour: what the hour brings enters the tank first, what then stands
// above the overflow is spilled, the leak is taken, and only then is water drawn. So
// rain of the hour can be drawn in it, but never saves spilled water by making room.
// Published rules lie on both sides of it, see Vessel.Steps.
//
// Left out: evaporation from open tanks (tanks are covered), snow sliding off or melted
// from below by a warm roof, flow within the hour (peaks that an hourly mean hides),
// pressure vessels, warm-up of lamps, and the reuse of what was diverted.
package water
