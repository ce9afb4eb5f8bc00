package warmth

// A dest is a face that sunlight inside can fall on.
type dest struct {
	input  int // W that it takes up
	area   float64
	takes  float64 // absorptance
	window int     // of the plan, -1 for a wall
	floor  bool
}

// shine lets the sun into the rooms: first on the floor (the beam) or on all faces by area (the rest), then what they
// throw back on all faces alike by area, until it is taken up or has gone out through glass again.
func (o *outside) shine(p *plan, c []column) {
	hours := len(o.sky.Hours.Temperature)
	for room := range p.air {
		faces := o.faces(p, room)
		var beam, rest []float64
		for _, w := range p.windows {
			if w.room != room {
				continue
			}
			if beam == nil {
				beam, rest = make([]float64, hours), make([]float64, hours)
			}
			h := &o.windows[room][w.index]
			for i := range hours {
				beam[i] += w.area * h.Beam[i]
				rest[i] += w.area * h.Diffuse[i]
			}
		}
		if beam == nil {
			continue
		}
		onFloor, onAll := spread(faces)
		for k, f := range faces {
			if f.window >= 0 {
				continue
			}
			values := make([]float64, hours)
			for i := range values {
				values[i] = onFloor[k]*beam[i] + onAll[k]*rest[i]
			}
			c[f.input].values = values
		}
	}
}

// faces lists what light meets in a room.
func (o *outside) faces(p *plan, room int) (faces []dest) {
	for _, w := range p.walls {
		wall := &o.design.Rooms[w.room].Walls[w.index]
		if w.room == room {
			faces = append(faces, dest{input: w.sun, area: float64(wall.Area), takes: wall.InsideAbsorptance, window: -1, floor: wall.Role == Floor})
		}
		if w.behind >= 0 && wall.Other == room {
			faces = append(faces, dest{input: w.behindSun, area: float64(wall.Area), takes: wall.OutsideAbsorptance, window: -1, floor: wall.Role == Roof})
		}
	}
	for k, w := range p.windows {
		if w.room == room {
			glazing := o.design.Rooms[room].Windows[w.index].Glazing.Reversed()
			faces = append(faces, dest{input: w.pane, area: w.area, takes: 1 - glazing.Diffuse().Reflected, window: k})
		}
	}
	return faces
}

// spread gives the share of the light that each face takes up at last, of light that first falls on the floor and of light that first
// falls on all faces by area. A room without a floor has both alike.
func spread(faces []dest) (onFloor, onAll []float64) {
	var area, takes, floor float64
	for _, f := range faces {
		area += f.area
		takes += f.area * f.takes
		if f.floor {
			floor += f.area
		}
	}
	onFloor, onAll = make([]float64, len(faces)), make([]float64, len(faces))
	for k, f := range faces {
		onAll[k] = f.area * f.takes / takes
	}
	if floor == 0 {
		return onAll, onAll
	}
	var left float64
	for k, f := range faces {
		if f.floor {
			onFloor[k] = f.area / floor * f.takes
			left += f.area / floor * (1 - f.takes)
		}
	}
	for k := range faces {
		onFloor[k] += left * onAll[k]
	}
	return onFloor, onAll
}
