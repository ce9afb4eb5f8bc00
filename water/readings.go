package water

import (
	"fmt"
	"math"
)

// A Guideline is what a water test's figure is held against.
type Guideline struct {
	Name   string  // as a sheet's input
	Words  string  // for a person
	Unit   string  // of readings; "" for counts and figures without one
	Least  float64 // 0 where there is no lower end
	Most   float64
	Health bool   // beyond it people may fall ill; else it is of taste, pipes, or of how well disinfection works
	Low    string // what a reading below Least means, and what to do
	High   string // what one above Most means, and what to do
	Source string
}

// gdwq is where the figures of Guidelines stand.
const gdwq = "who-gdwq-4: from memory"

// Guidelines are those of the World Health Organization for what rain off a roof may carry, all from memory of the fourth edition: those of a country may be
// stricter and go first. Left out: what grows in pipes, pesticides, and most of what is not from roof, pipe, ground or chlorine.
func Guidelines() []Guideline {
	return []Guideline{
		{Name: "ecoli", Words: "E. coli in 100 mL", Most: 0, Health: true, Source: gdwq,
			High: "Dirt of people or animals reached the water. Boil what is drunk from now on; look for droppings on the roof, a cracked lid, a lamp that is dark or fouled, a filter past its day; then disinfect tank and pipes and test again."},
		{Name: "turbidity", Words: "turbidity in NTU", Most: 1, Source: gdwq,
			High: "Cloudy water shades germs from lamp and chlorine: clean or change the filter before them, and count neither until it is clear. Five is the most that people accept."},
		{Name: "ph", Words: "pH", Least: 6.5, Most: 8.5, Source: gdwq,
			Low:  "Soft, sour water takes lead, copper and zinc out of pipes and taps: run the tap before drinking, have those metals tested, and let the water pass limestone.",
			High: "Chlorine works slowly in such water, and more so above 8: allow it more time. New concrete or mortar in the tank may be the cause."},
		{Name: "chlorine", Words: "free chlorine", Unit: "mg/L", Least: 0.2, Most: 5, Health: true, Source: gdwq + "; the least is for water that is chlorinated",
			Low:  "Little is left against germs that come in later: dose again and look for what eats it, such as leaves or sludge.",
			High: "Too much: do not drink it, let it stand open or thin it, and weigh the next dose."},
		{Name: "nitrate", Words: "nitrate", Unit: "mg/L", Most: 50, Health: true, Source: gdwq,
			High: "It can keep the blood of bottle-fed infants from carrying oxygen: give them other water, since boiling makes it worse. Look for droppings, manure or a drain field near the tank."},
		{Name: "lead", Words: "lead", Unit: "mg/L", Most: 0.01, Health: true, Source: gdwq + ", provisional",
			High: "It harms children for life, and boiling makes it worse. Drink other water until flashing, old paint, solder or brass that gives it off is found and gone."},
		{Name: "copper", Words: "copper", Unit: "mg/L", Most: 2, Health: true, Source: gdwq,
			High: "Pipes give it off into soft, sour water that stood: run the tap before drinking and raise the pH."},
		{Name: "zinc", Words: "zinc", Unit: "mg/L", Most: 3, Source: gdwq,
			High: "It tastes and looks milky; roofs and tanks of zinc-coated steel give it off into sour water."},
		{Name: "arsenic", Words: "arsenic", Unit: "mg/L", Most: 0.01, Health: true, Source: gdwq + ", provisional",
			High: "Not of rain: well water was mixed in, or treated timber touches it. Do not drink it; boiling makes it worse."},
		{Name: "fluoride", Words: "fluoride", Unit: "mg/L", Most: 1.5, Health: true, Source: gdwq,
			High: "Not of rain: well water was mixed in. Over years it harms teeth and bones; boiling makes it worse."},
		{Name: "sodium", Words: "sodium", Unit: "mg/L", Most: 200, Source: gdwq,
			High: "It tastes of salt: spray of the sea, or a softener. It also spoils soil that such water is given to; people on a diet ask their doctor."},
	}
}

// A Finding is a reading beside its guideline.
type Finding struct {
	Guideline
	Reading float64
	Over    bool    // above Most
	Under   bool    // below Least
	Share   float64 // of Most; +Inf for any of what must not be found
}

// Find holds a reading against a guideline.
func (g Guideline) Find(reading float64) Finding {
	f := Finding{Guideline: g, Reading: reading, Over: reading > g.Most, Under: reading < g.Least}
	switch {
	case g.Most > 0:
		f.Share = reading / g.Most
	case reading > 0:
		f.Share = math.Inf(1)
	}
	return f
}

// Beyond reports whether a reading is outside its guideline.
func (f Finding) Beyond() bool { return f.Over || f.Under }

// Says tells a reading in words.
func (f Finding) Says() string {
	unit := f.Unit
	if unit != "" {
		unit = " " + unit
	}
	switch {
	case f.Over:
		return fmt.Sprintf("%s: %g%s, at most %g. %s", f.Words, f.Reading, unit, f.Most, f.High)
	case f.Under:
		return fmt.Sprintf("%s: %g%s, at least %g. %s", f.Words, f.Reading, unit, f.Least, f.Low)
	default:
		return fmt.Sprintf("%s: %g%s, within the guideline", f.Words, f.Reading, unit)
	}
}
