package report

import "suffice/warmth"

// A RoomFlow is heat of a room in a mean year, kWh; what goes out is below 0.
type RoomFlow struct {
	Key string // sun, given, stove, heating, doors, air, earth, rooms, glass, leaks, vents, cooling
	KWh float64
}

// RoomBudget gives what warmed a room in a mean year and where it went, each read off by itself; flows of nothing are left out. What walls
// and ground hold at the end more than at the start is the rest.
func (p *Proof) RoomBudget(room int) (list []RoomFlow) {
	y := &p.Stated.Rooms[room]
	sums := map[string]float64{
		"given": float64(y.Given), "stove": float64(y.Stove.Heat), "heating": float64(y.Heating), "cooling": -float64(y.Cooling), "doors": float64(y.Between), "vents": -float64(y.Vented),
	}
	faces := map[warmth.Side]string{warmth.Air: "air", warmth.Earth: "earth", warmth.Neighbour: "rooms"}
	for _, h := range y.Heats {
		key := map[warmth.Way]string{warmth.ThroughWall: faces[h.Faces], warmth.ThroughWindow: "glass", warmth.ThroughLeaks: "leaks", warmth.Sun: "sun"}[h.Way]
		sums[key] -= float64(h.Out)
	}
	for _, key := range flowKeys() {
		if sums[key] != 0 {
			list = append(list, RoomFlow{key, sums[key] / 1000 / float64(p.Years())})
		}
	}
	return list
}

// flowKeys gives the keys in the order in which they are told.
func flowKeys() []string {
	return []string{"sun", "given", "stove", "heating", "doors", "air", "glass", "earth", "rooms", "leaks", "vents", "cooling"}
}

var flowWords = map[string]string{
	"sun": "sun, let in by the glass", "given": "people and machines", "stove": "stove, less what its air costs", "heating": "heater", "doors": "doors to other rooms", "air": "walls and roof to the air, sun on them too",
	"glass": "glass, without its sun", "earth": "earth: walls and floor", "rooms": "walls to other rooms", "leaks": "leaks", "vents": "vents and fans", "cooling": "cooler",
}

// roomBudgets tells them side by side.
func (p *Proof) roomBudgets(w *lines) {
	if len(p.Stated.Rooms) == 0 {
		return
	}
	w.line("\nHeat of the rooms in a mean year, kWh (out: below 0)")
	sums := make([]map[string]float64, len(p.Stated.Rooms))
	line := "  %-42s"
	heads := []any{""}
	there := map[string]bool{}
	for k := range sums {
		sums[k] = map[string]float64{}
		for _, f := range p.RoomBudget(k) {
			sums[k][f.Key], there[f.Key] = f.KWh, true
		}
		line += " %11s"
		heads = append(heads, headed(p.Stated.Rooms[k].Name, 11))
	}
	w.line(line, heads...)
	for _, key := range flowKeys() {
		if !there[key] {
			continue
		}
		cells := []any{flowWords[key]}
		for k := range sums {
			cells = append(cells, grouped(sums[k][key]))
		}
		w.line(line, cells...)
	}
}
