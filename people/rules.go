package people

import (
	"errors"
	"fmt"
)

// Signs are what people in the house can see when they decide.
type Signs struct {
	Clearness float64 // expected clearness index of the day, 0 to 1, from Expect; not a number: they cannot tell
	Charge    float64 // of the battery, 0 to 1; not a number: there is none
	Tank      float64 // usable water in all tanks over what they can hold, 0 to 1; not a number: there is none
	Duty      float64 // the same for the tank the house draws from
	Away      bool    // nobody is there to see or do anything
}

// Do is what people do while a sign is bad.
type Do struct {
	Swap       bool // do with gas what gas can do
	Wait       bool // put off what can be put off
	Save       bool // cut the savable uses of water down
	ChangeTank bool // draw from another tank
}

// A Line is a level at which people begin, and the higher one at which they stop.
type Line struct {
	Below float64 // begin when the sign falls below this; 0: never
	Until float64 // stop when it has come back to this; less than Below counts as Below
}

// Back is how far above its line a store must come back before people give up a rule
// they follow, where the house file names no level (common practice, no source).
const Back = 0.10

// Rules are what the people of a house do when a store runs low or the sky is dull.
type Rules struct {
	Dull   Line // clearness of the day
	Charge Line // of the battery
	Tank   Line // all usable water
	Duty   Line // usable water of the tank in use

	WhenDull   Do
	WhenCharge Do
	WhenTank   Do
	WhenDuty   Do

	Saves float64 // share saved on savable uses, 0 to 1
}

// Mind is what people remember of the rules they follow: which signs are bad.
// It is a plain value; the zero Mind follows none.
type Mind struct{ Dull, Charge, Tank, Duty bool }

// A Choice is what the people do in the hour.
type Choice struct {
	Save       float64 // share saved on savable uses, 0 to 1
	Swap       bool
	Wait       bool
	ChangeTank bool
}

// Decide looks at the signs, brings the mind up to date and says what is done. Somebody
// away sees nothing, does nothing and keeps his mind. A tank is changed when its sign
// turns bad, and again whenever nothing usable is left in the one in use.
func (r *Rules) Decide(m *Mind, s *Signs) Choice {
	if s.Away {
		return Choice{}
	}
	was := m.Duty
	m.Dull = r.Dull.bad(m.Dull, s.Clearness)
	m.Charge = r.Charge.bad(m.Charge, s.Charge)
	m.Tank = r.Tank.bad(m.Tank, s.Tank)
	m.Duty = r.Duty.bad(m.Duty, s.Duty)
	if *m == (Mind{}) {
		return Choice{}
	}
	var c Choice
	r.do(&c, m.Dull, r.WhenDull)
	r.do(&c, m.Charge, r.WhenCharge)
	r.do(&c, m.Tank, r.WhenTank)
	r.do(&c, m.Duty, r.WhenDuty)
	c.ChangeTank = c.ChangeTank && (m.Duty && !was || s.Duty <= 0)
	return c
}

// Any reports whether a sign is bad.
func (m Mind) Any() bool { return m.Dull || m.Charge || m.Tank || m.Duty }

// do adds what a bad sign calls for.
func (r *Rules) do(c *Choice, bad bool, d Do) {
	if !bad {
		return
	}
	c.Swap = c.Swap || d.Swap
	c.Wait = c.Wait || d.Wait
	c.ChangeTank = c.ChangeTank || d.ChangeTank
	if d.Save {
		c.Save = r.Saves
	}
}

// bad reports whether a sign is bad, given whether it was: a sign that cannot be told is not.
func (l Line) bad(was bool, sign float64) bool {
	if was && l.Until > l.Below {
		return sign < l.Until
	}
	return sign < l.Below
}

// Check gives every fault of the rules at once.
func (r *Rules) Check() error {
	return errors.Join(
		r.Dull.check("rules.dull"),
		r.Charge.check("rules.charge_below"),
		r.Tank.check("rules.tank_below"),
		r.Duty.check("rules.duty_below"),
		share("rules: saves", r.Saves),
	)
}

func (l Line) check(where string) error {
	return errors.Join(share(where+": below", l.Below), share(where+": until", l.Until))
}

func share(where string, v float64) error {
	if !(v >= 0 && v <= 1) {
		return fmt.Errorf("%s: %v is no share: write 0 to 100 %%", where, v)
	}
	return nil
}
