package cli

import (
	"math"

	"suffice/quantity"
)

// The rules of thumb by which "suffice new" sizes a house. Each is common practice without
// a source, stands as a comment in the file that it writes, and is there to be proved and
// changed: they are where a first guess begins, and no design.

// A thumbUse is one line of the water that people draw, in litres a head and day.
type thumbUse struct {
	name, water, hours string
	litres             float64
	hot                string // "" for cold
}

var thumbUses = []thumbUse{
	{"drinking and cooking", "drinking", "6-9 12-14 18-21", 8, ""},
	{"shower", "washing", "6-9 19-22", 18, "38 degC"},
	{"basin and dishes", "washing", "7-9 13-15 20-22", 8, "40 degC"},
	{"laundry", "washing", "10-15", 6, ""},
	{"toilet", "flushing", "0-24", 10, ""},
}

// headLitres is what one person draws in a day.
func headLitres() (sum float64) {
	for _, u := range thumbUses {
		sum += u.litres
	}
	return sum
}

// mostHeads is how many people these rules are for: one household.
const mostHeads = 24

// Rules for water.
const (
	dryAgain  = 1.5 // over the longest run of dry days: the season around it brings little
	dryLeast  = 60  // days, whatever the record says
	dryUnsaid = 90  // days, where the record has no complete year
)

// carried is the days without rain that the tank is to carry.
func (p *plan) carried() float64 {
	if p.dry == 0 {
		return dryUnsaid
	}
	return max(dryLeast, math.Ceil(dryAgain*float64(p.dry)))
}

// draw is the water of all people in a day, L.
func (p *plan) draw() float64 { return float64(max(1, p.residents)) * headLitres() }

// tank holds what is drawn in those days, L, in whole kilolitres.
func (p *plan) tank() float64 { return upTo(p.carried()*p.draw(), 1000) }

// A thumbLoad is one thing that runs on power.
type thumbLoad struct {
	name        string
	each, fixed float64 // Wh a day, for each head and beside that
	watts       float64 // while it runs, at least
	from, to    int     // hours of the clock
	more        string  // of its entry in the file
}

func (p *plan) loads() []thumbLoad {
	cooks := "need: must, when_away: no"
	if p.has("gas") {
		cooks += ", gas: 50 %"
	}
	return []thumbLoad{
		{"refrigerator", 0, 700, 80, 0, 24, "need: must, starting: 400 W"},
		{"lights", 50, 100, 60, 18, 23, "need: must, when_away: no"},
		{"network and telephones", 0, 240, 10, 0, 24, "need: must"},
		{"computers", 150, 150, 150, 9, 17, "need: must, when_away: no"},
		{"kettle and hob", 250, 200, 1200, 17, 20, cooks},
		{"washing machine", 100, 0, 1800, 11, 15, "need: should, waits: 2 days, when_away: no"},
	}
}

// running is what a load takes: more than its least where many heads would not be served in its hours.
func (p *plan) running(l thumbLoad) float64 {
	return max(l.watts, upTo(p.energy(l)/float64(l.to-l.from), 10))
}

// together is the most that may run in one hour, W, with an electric element in the store.
func (p *plan) together() (most float64) {
	for hour := range 24 {
		sum := 0.0
		for _, l := range p.loads() {
			if l.from <= hour && hour < l.to {
				sum += p.running(l)
			}
		}
		most = max(most, sum)
	}
	if p.electricBackup() {
		most += elementPower
	}
	return most
}

// inverter is its continuous power, W: what may run together, in steps of 500 W.
func (p *plan) inverter() float64 { return max(3000, upTo(p.together(), 500)) }

func (p *plan) energy(l thumbLoad) float64 { return l.fixed + l.each*float64(max(1, p.residents)) }

// Rules for power.
const (
	inverterIdle = 15.0 // W, day and night
	arrives      = 0.75 // of the light's energy at full sun, after dust, heat, wires, battery and inverter
	darkDays     = 3.0  // that the battery carries
	lithiumUsed  = 0.9  // of its capacity
	bankVoltage  = 48.0
	elementPower = 1500.0 // W, of an electric element in the store
	backupEnergy = 700.0  // Wh a head and day that it gives on dull days

	lampPower     = 20.0  // W, of the treatment, day and night
	liftEnergy    = 150.0 // Wh a kilolitre, of a small pump
	collectorPump = 25.0  // W
	pumpHours     = 5.0   // of it on a winter day
)

// wanted is the electricity of a day, Wh: of the loads, the inverter itself, lamp and pumps, and
// of an electric backup on the dull days that the collector leaves.
func (p *plan) wanted() float64 {
	sum := 24 * inverterIdle
	if p.has("tank") {
		sum += 24*lampPower + liftEnergy*p.draw()/1000
	}
	if p.has("collector") {
		sum += pumpHours * collectorPump
	}
	for _, l := range p.loads() {
		sum += p.energy(l)
	}
	if p.electricBackup() {
		sum += backupEnergy * float64(max(1, p.residents))
	}
	return sum
}

// winterSun is the hours of full sun in a day of the darkest month, on panels that lean
// towards it; from memory.
func winterSun(latitude float64) float64 {
	switch l := math.Abs(latitude); {
	case l <= 25:
		return 4
	case l <= 35:
		return 3
	case l <= 45:
		return 2
	case l <= 52:
		return 1.2
	}
	return 0.7
}

// panels is their peak power, W, in steps of 100 W.
func (p *plan) panels() float64 {
	return upTo(p.wanted()/(winterSun(number(p.latitude))*arrives), 100)
}

// battery is its capacity, Wh, in whole kilowatt-hours.
func (p *plan) battery() float64 { return upTo(darkDays*p.wanted()/lithiumUsed, 1000) }

// lean is the slope of panels and collector: steeper than the latitude, for winter.
func (p *plan) lean() float64 {
	return math.Round(min(70, max(15, math.Abs(number(p.latitude))+10)))
}

// faces is the azimuth towards the noon sun.
func (p *plan) faces() float64 {
	if number(p.latitude) < 0 {
		return 0
	}
	return 180
}

// Rules for hot water: a square metre and 75 L a head.
func (p *plan) collector() float64 { return max(2, float64(p.residents)) }
func (p *plan) store() float64     { return max(150, upTo(75*float64(p.residents), 50)) }

func (p *plan) electricBackup() bool {
	return p.has("collector") && !p.has("gas") && p.has("panels")
}

func inUnit(v float64, unit string) string { return quantity.Text(v, unit) }
