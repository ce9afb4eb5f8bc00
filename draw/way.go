package draw

import (
	"suffice/draw/canvas"
	"suffice/house"
	"suffice/people"
	"suffice/quantity"
	"suffice/report"
	"suffice/reuse"
)

// WayOfWater shows a mean year of all the water from the cloud to the tree: every use, what passes one by, and where it leaves.
func WayOfWater(p *report.Proof, say Sentences) Picture {
	w := wayOf(p)
	d := Cascade{About: About{Name: "way-of-water", Title: say.Say("way.title"), Unit: say.Say("flow.litres")},
		Rows: w.rows(), Bands: w.bands, Places: map[string]Place{}, Notes: map[string]string{}, Shared: map[string]string{}, Write: litres,
		Headers: [3]string{say.Say("flow.head.from"), say.Say("flow.head.to"), say.Say("flow.head.litres")}}
	for _, b := range w.bands {
		for _, name := range [2]string{b.From, b.To} {
			look := wayLooks[name]
			look.Says = say.Say("way." + name)
			d.Places[name] = look
		}
	}
	for _, name := range noted {
		if _, there := d.Places[name]; there {
			d.Notes[name] = say.Say("way.note." + name)
		}
	}
	for _, name := range waySources {
		d.Shared[name] = say.Say("way.shared.taps")
	}
	d.Summary = say.Say("way.summary", "fell", litres(w.out("cloud", "")), "used", litres(w.taps()))
	if uses := p.Run.Uses(&p.Stated.Totals); uses.Fresh > 0 {
		d.Summary += " " + say.Say("way.summary.uses", "uses", number(uses.Mean(), 1))
	}
	if got := w.out("trench", "trees"); got > 0 {
		d.Summary += " " + say.Say("way.summary.trees", "trees", litres(got))
	}
	return Fall(d)
}

// wayLooks gives every end of the water's way its look.
var wayLooks = map[string]Place{
	"cloud": {Ink: canvas.Water}, "road": {Ink: canvas.Text}, "tanks": {Ink: canvas.Water, Hatch: canvas.Level},
	"dried": lostAway, "gutters": lostAway, "first flush": lostAway, "overflow": lostAway, "leak": lostAway, "backwash": lostAway,
	"beds": {Ink: canvas.Plant}, "outdoors": {Ink: canvas.Plant},
	"basin": {Ink: canvas.Water}, "shower": {Ink: canvas.Water}, "bath": {Ink: canvas.Water}, "laundry": {Ink: canvas.Water},
	"dishwasher": {Ink: canvas.Water}, "kitchen": {Ink: canvas.Water},
	"drain": {Ink: canvas.Glass}, "planter": {Ink: canvas.Plant}, "bed rain": {Ink: canvas.Water}, "bed plants": {Ink: canvas.Plant},
	"rim": lostAway, "well": {Ink: canvas.Glass, Hatch: canvas.Level}, "toilet": {Ink: canvas.Earth},
	"septic": {Ink: canvas.Earth, Hatch: canvas.Level}, "sewer": {Ink: canvas.Earth}, "sludge": lostAway, "away": lostAway,
	"trench": {Ink: canvas.Earth, Hatch: canvas.Dotted}, "trench rain": {Ink: canvas.Water}, "trees": {Ink: canvas.Plant}, "grass": {Ink: canvas.Plant},
	"ground": {Ink: canvas.Earth}, "run-off": lostAway, "surface": {Ink: canvas.Short, Hatch: canvas.Crossed},
}

var lostAway = Place{Ink: canvas.Lost, Hatch: canvas.Falling}

// noted are the stops at which something happens that a note tells.
var noted = []string{"planter", "well", "toilet", "septic", "trench"}

// waySources names the drains as the picture does, in the order of the reuse package.
var waySources = [reuse.Sources]string{"basin", "shower", "bath", "laundry", "dishwasher", "kitchen"}

// waterWay is the bands of a mean year.
type waterWay struct {
	bands []Band
	years float64
	feeds [reuse.Sources]bool
}

func (w *waterWay) add(from, to string, total quantity.Litres) {
	if total > 0 {
		w.bands = append(w.bands, Band{from, to, float64(total) / w.years})
	}
}

func (w *waterWay) out(from, to string) float64 { return out(w.bands, from, to) }

// taps is what people draw in a year, for whatever use.
func (w *waterWay) taps() float64 {
	return w.out("tanks", "") - w.out("tanks", "overflow") - w.out("tanks", "leak") - w.out("tanks", "backwash")
}

func wayOf(p *report.Proof) *waterWay {
	w := &waterWay{years: float64(p.Years())}
	in := &p.Stated.Totals.Income
	w.add("cloud", "tanks", in.Caught)
	w.add("cloud", "dried", in.Wetted)
	w.add("cloud", "gutters", in.Missed)
	w.add("cloud", "first flush", in.Diverted)
	w.add("road", "tanks", in.Delivered)
	w.use(p)
	w.add("tanks", "backwash", p.Stated.Totals.Backwash)
	w.add("tanks", "leak", in.Leaked)
	w.add("tanks", "overflow", in.Spilled)
	d := p.Run.House.Drains
	if d == nil {
		return w
	}
	w.feeds = d.Grey.Feeds
	w.drain(p, d)
	w.bury(p, d)
	return w
}

// use leads water to the taps, by the drain that it leaves them through.
func (w *waterWay) use(p *report.Proof) {
	t := &p.Stated.Totals
	c := &t.Chain
	rest := t.Served[people.Drinking] + t.Served[people.Washing] + t.Served[people.Outdoor] - c.BedGiven - c.Poured.Litres
	if p.Run.House.Drains != nil {
		for s, used := range c.Used {
			w.add("tanks", waySources[s], used)
			rest -= used
		}
		if p.Run.House.Drains.Planter != nil {
			w.add("tanks", "planter", c.Poured.Litres)
		}
		if p.Run.House.Drains.Well != nil {
			w.add("tanks", "well", c.Topped.Litres)
		} else {
			w.add("tanks", "toilet", c.Topped.Litres)
		}
	}
	w.add("tanks", "beds", c.BedGiven)
	if rest > quantity.Litres(1e-6*t.Income.Caught) { // less is the rounding of the sums
		w.add("tanks", "outdoors", rest)
	}
}

// drain leads used water through planter and well to where sewage goes.
func (w *waterWay) drain(p *report.Proof, d *house.DrainParts) {
	c, sewage := &p.Stated.Totals.Chain, sewageTo(d)
	past := c.Diverted.Litres + c.Surged.Litres
	feeding := "planter"
	if past > 0 {
		feeding = "drain"
	}
	for s, used := range c.Used {
		to := sewage
		if d.Planter != nil && d.Grey.Feeds[s] {
			to = feeding
		}
		w.add(waySources[s], to, used)
	}
	if past > 0 {
		w.add("drain", "planter", c.Fed.Litres)
		w.add("drain", sewage, past)
	}
	flushes := sewage
	if d.Well != nil {
		flushes = "well"
		w.add("well", "toilet", c.Flushed)
		w.add("well", sewage, c.WellOverflow.Litres)
	}
	if d.Planter != nil {
		w.add("bed rain", "planter", c.Rain)
		w.add("planter", flushes, c.Drained.Litres)
		w.add("planter", "rim", c.Rim.Litres)
		w.add("planter", "bed plants", c.Evaporated)
	}
	w.add("toilet", sewage, c.Flushed)
}

func sewageTo(d *house.DrainParts) string {
	if d.Septic == nil {
		return "sewer"
	}
	return "septic"
}

// bury leads sewage through tank and trench.
func (w *waterWay) bury(p *report.Proof, d *house.DrainParts) {
	c := &p.Stated.Totals.Chain
	if d.Septic == nil {
		return
	}
	w.add("septic", "sludge", c.Removed.Inflow)
	to := "trench"
	if d.Trench == nil {
		to = "away"
	}
	w.add("septic", to, c.Effluent.Inflow+c.Carried.Inflow)
	if d.Trench == nil {
		return
	}
	o := &c.Trench
	w.add("trench rain", "trench", c.CatchRain)
	w.add("trench", "run-off", o.RunOff)
	w.add("trench", "surface", o.Surfaced)
	w.add("trench", "ground", o.Infiltrated)
	w.add("trench", "grass", o.Grass)
	w.add("trench", "trees", o.Trees)
}

// rows gives the stops that are there; drains that feed no bed stand at the left, where their water passes it by.
func (w *waterWay) rows() (rows [][]string) {
	all := [][]string{{"cloud"}, {"tanks"}, nil, {"drain"}, {"planter"}, {"well"}, {"toilet"}, {"septic"}, {"sewer"}, {"trench"}}
	for _, feeds := range [2]bool{false, true} {
		for s, name := range waySources {
			if w.feeds[s] == feeds {
				all[2] = append(all[2], name)
			}
		}
	}
	for _, row := range all {
		var there []string
		for _, name := range row {
			if w.out(name, "")+w.out("", name) > 0 {
				there = append(there, name)
			}
		}
		if len(there) > 0 {
			rows = append(rows, there)
		}
	}
	return rows
}
