package web

import (
	"sync"

	"suffice/crop"
	"suffice/hourly"
	"suffice/house"
	"suffice/people"
	"suffice/quantity"
	"suffice/report"
	"suffice/sheet"
)

// A lived is a house and what its life came to. It is only read once it is shown.
type lived struct {
	Path, Name string // of the house file; Path "": kept in memory only
	Text       []byte
	Hash       house.Hash
	File       *house.File
	Proof      *report.Proof
	Seen       *seen
	Last       *changed // the change that made it so, nil for none
	Earlier    [][]byte // the texts before the changes of this sitting

	leaving leaving       // its measures, for the page Warmth
	sowing  sowingWindows // for the page Garden

	explaining sync.Mutex
	explained  map[int][]sheet.Worked // by hour
}

// seen is what was noted down, day by day, while the record was lived once more.
type seen struct {
	Drawn, Leaked []float64           // L
	Tanks         [][]quantity.Litres // in each tank at midnight
	Served        [][people.Kinds]quantity.Litres
	Clearness     []float64 // as people expected it at noon
	ChargeEnd     []float64 // at midnight, 0 to 1

	Persons float64                      // hours of people at home
	Beds    [1 + hourly.MostBeds]bedSeen // the planter's is the first
	Heap    heapSeen
	Air     [][]crop.Swing // of each lived room and day

	// Hours that show best how the figures of a page come about: of most rain caught, of
	// the greatest flow through the battery, of most backup heat.
	hours map[string]int
	most  map[string]float64
}

// The groups of figures that have a telling hour.
const (
	tellsWater = "water"
	tellsPower = "power"
	tellsHeat  = "heat"

	tellsWarmth = "warmth"
	tellsAir    = "air"

	tellsPlanter = "planter"
	tellsWell    = "well"
)

// live proves a house and notes what the pages show of it.
func (s *Site) live(l *lived, file *house.File) (*lived, error) {
	proof, err := s.prove(file)
	if err != nil {
		return nil, err
	}
	l.Hash, l.File, l.Proof = house.HashOf(l.Text), file, proof
	if l.Seen, err = look(proof.Run); err != nil {
		return nil, err
	}
	go l.warm()
	return l, nil
}

// warm works the telling hours before a reader asks for them; a fault shows when one does.
func (l *lived) warm() {
	for _, hour := range l.Seen.hours {
		_, _ = l.explain(hour)
	}
}

// look lives the record from the stated start and notes each day.
func look(r *hourly.Run) (*seen, error) {
	days := len(r.Weather.Days)
	n := &seen{
		Drawn: make([]float64, days), Leaked: make([]float64, days), Clearness: make([]float64, days), ChargeEnd: make([]float64, days),
		Tanks: make([][]quantity.Litres, days), Served: make([][people.Kinds]quantity.Litres, days),
		hours: make(map[string]int), most: make(map[string]float64),
	}
	state := r.Start()
	span := hourly.Span{Last: r.Hours(), See: func(i int, row *hourly.Row) {
		n.hour(i, row)
		if r.House.Rooms != nil {
			n.rooms(i, row, r.House.Rooms.LivedIn)
		}
		n.chain(i, int(r.Weather.Days[i/24].Month), r.House, row)
		if w := r.House.Water; w != nil && i%24 == 23 {
			for _, tank := range state.Water.Tanks[:w.Tanks()] {
				n.Tanks[i/24] = append(n.Tanks[i/24], tank.Held)
			}
		}
	}}
	return n, r.Live(&state, &span)
}

// hour notes one hour.
func (n *seen) hour(i int, row *hourly.Row) {
	d := i / 24
	n.Drawn[d] += float64(row.Taps.Drawn)
	n.Leaked[d] += float64(row.Income.Leaked)
	n.ChargeEnd[d] = row.Power.Charge
	for k, litres := range row.Taps.Served {
		n.Served[d][k] += litres
	}
	if i%24 == 12 {
		n.Clearness[d] = row.Signs.Clearness
	}
	n.tells(tellsWater, i, float64(row.Income.Caught))
	n.tells(tellsPower, i, float64(row.Power.Charged+row.Power.Discharged))
	n.tells(tellsHeat, i, float64(row.Heat.Gas+row.Heat.Electric))
}

// rooms notes the coldest hour of a room that people live in, and that of the stalest air.
func (n *seen) rooms(i int, row *hourly.Row, livedIn []bool) {
	for k, lived := range livedIn {
		n.roomAir(i/24, k, len(livedIn), float64(row.Rooms.Rooms[k].Air))
		if o := &row.Rooms.Rooms[k]; lived {
			n.tells(tellsWarmth, i, -float64(o.Operative))
			n.tells(tellsAir, i, o.Carbon)
		}
	}
}

// tells keeps the hour with the most of something.
func (n *seen) tells(group string, hour int, much float64) {
	if _, any := n.hours[group]; !any || much > n.most[group] {
		n.hours[group], n.most[group] = hour, much
	}
}

// mostExplained is how many hours are kept worked out; each is a few dozen kilobytes.
const mostExplained = 32

// explain works an hour and keeps it, since an hour late in the record takes a third of a second.
func (l *lived) explain(hour int) ([]sheet.Worked, error) {
	l.explaining.Lock()
	defer l.explaining.Unlock()
	if w, known := l.explained[hour]; known {
		return w, nil
	}
	w, err := l.Proof.Run.Explain(hour)
	if err != nil {
		return nil, err
	}
	if l.explained == nil || len(l.explained) >= mostExplained {
		l.explained = make(map[int][]sheet.Worked)
	}
	l.explained[hour] = w
	return w, nil
}

// works gives the sheets of a name in the hour that tells most of a group of figures.
func (l *lived) works(group string, names ...string) ([]sheet.Worked, error) {
	all, err := l.explain(l.Seen.hours[group])
	if err != nil {
		return nil, err
	}
	var found []sheet.Worked
	for _, name := range names {
		for _, w := range all {
			if w.Sheet.Name == name {
				found = append(found, w)
			}
		}
	}
	return found, nil
}

// hasWater and its like say what the house has.
func (l *lived) hasWater() bool { return l.Proof.Run.House.Water != nil }
func (l *lived) hasPower() bool { return l.Proof.Run.House.Power != nil }
func (l *lived) hasHeat() bool  { return l.Proof.Run.House.HotWater != nil }
func (l *lived) hasGas() bool   { return l.Proof.Run.House.Gas != nil }

// hasDrains reports whether used water is followed.
func (l *lived) hasDrains() bool { return l.Proof.Run.House.Drains != nil }

func (l *lived) years() float64 { return float64(l.Proof.Years()) }
