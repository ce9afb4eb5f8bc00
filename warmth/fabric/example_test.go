package fabric_test

import (
	"fmt"

	"suffice/material"
	"suffice/warmth/fabric"
)

// A wall of rammed earth with cork outside: what it loses, and what the day's heat does in it.
func Example() {
	earth, _ := material.Named("rammed earth")
	cork, _ := material.Named("cork board")
	wall := fabric.Element{Layers: []fabric.Layer{fabric.Of(earth, 0.30), fabric.Of(cork, 0.10)}, Inside: fabric.InsideLevel, Outside: fabric.Outside}
	day := wall.Swing(24)
	fmt.Printf("U %.2f W/m2K; %.0f %% of a swing comes through, %.0f h later; holds %.0f kJ/m2K for the room\n", float64(wall.U()), 100*day.Decrement, day.Lag, day.InnerStore)
	nodes := wall.Network(fabric.Spacing{Hours: 24, Fineness: fabric.Fineness})
	fmt.Printf("%d nodes, %.2f W/m2K\n", len(nodes.Capacity), nodes.Steady())
	// Output:
	// U 0.38 W/m2K; 8 % of a swing comes through, 13 h later; holds 71 kJ/m2K for the room
	// 20 nodes, 0.38 W/m2K
}
