// Package fabric says how walls, roofs and floors made of layers let heat through and hold
// it: in a steady state, in a daily swing, and as a network of nodes for the rooms' heat
// balance.
//
// Checked against: the published constructions of the standard fabric suite (U-values from
// surface to surface and from air to air), a published solid wall, one wall of ISO 13786
// known with fifteen digits, a timber frame worked by the combined method, and the exact cooling of
// one store of heat. The network is held against ISO 13786 as its nodes are refined, and in time
// against frost that reaches a water main and a thick wall warmed through a film.
//
// Left out: heat sideways at corners and edges (add its linear transmittance), air that moves
// inside a layer, moisture that travels and freezes, and metal that bridges insulation: the
// limits of ISO 6946 do not hold there, nor where the upper limit is more than half again the lower
// (Bounds.Usable says so). In a swing, a bridged layer counts as an even one of the same resistance
// and mass (Even): wool and studs, which answer at their own paces, answer as one.
package fabric
