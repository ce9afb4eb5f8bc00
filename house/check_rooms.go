package house

import "fmt"

func (r *reader) checkRooms(rooms []Room) {
	unique(r, "rooms", rooms, func(m *Room) string { return m.Name })
	var names []string
	for i := range rooms {
		names = append(names, rooms[i].Name)
	}
	for i := range rooms {
		where := fmt.Sprintf("rooms[%d]", i)
		unique(r, where+".walls", rooms[i].Walls, func(w *Wall) string { return w.Name })
		unique(r, where+".windows", rooms[i].Windows, func(w *Window) string { return w.Name })
		r.checkFaces(rooms[i].Walls, i, names)
		r.checkOpenings(rooms[i].Openings, i, names)
		for j := range rooms[i].Windows {
			r.checkGlass(&rooms[i].Windows[j], fmt.Sprintf("%s.windows[%d]", where, j))
		}
		r.checkStove(rooms[i].Stove, where+".stove")
		if rooms[i].Inlets != nil && rooms[i].Vents == nil && r.sound(where+".vents") {
			r.fault(where+".inlets", "feed no vents: write for example  vents: 1 m2, or take this key out")
		}
	}
}

// checkFaces holds what the walls of a room face against what there is.
func (r *reader) checkFaces(walls []Wall, room int, names []string) {
	things := append([]string{"air", "earth", "nothing"}, names...)
	for j, w := range walls {
		where := fmt.Sprintf("rooms[%d].walls[%d].faces", room, j)
		if r.oneOf(where, w.Faces, "thing to face called", things) == room+3 {
			r.fault(where, "a wall of %q cannot face the same room: write air, earth, nothing or another room", w.Faces)
		}
	}
}

func (r *reader) checkOpenings(openings []Opening, room int, names []string) {
	for j, o := range openings {
		where := fmt.Sprintf("rooms[%d].openings[%d].to", room, j)
		if r.oneOf(where, o.To, "room called", names) == room {
			r.fault(where, "%q cannot open to itself: name another room", o.To)
		}
	}
}

// checkGlass looks at what a coated pane is told by.
func (r *reader) checkGlass(w *Window, where string) {
	g := w.Glass
	if g == nil {
		return
	}
	where += ".glass"
	if (g.Transmitted == nil) != (g.Reflected == nil) && r.sound(where+".transmitted", where+".reflected") {
		r.fault(where, "tells half of a coating: write both  transmitted  and  reflected, or neither")
	}
	if g.Coated > w.Panes && r.sound(where+".coated", where[:len(where)-len(".glass")]+".panes") {
		r.fault(where+".coated", "there is no pane %d: the window has %d", g.Coated, w.Panes)
	}
}

// layered reports whether the file tells the layers of all walls, so that its rooms can be computed.
func layered(rooms []Room) bool {
	walls := 0
	for i := range rooms {
		for j := range rooms[i].Walls {
			if len(rooms[i].Walls[j].Layers) == 0 {
				return false
			}
			walls++
		}
	}
	return walls > 0
}
