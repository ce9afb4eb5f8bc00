package people

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
	Swap       bool
	Wait       bool
	Save       float64 // share saved on savable uses, 0 to 1
	ChangeTank bool
}

// Decide looks at the signs, brings the mind up to date and says what is done.
func (r *Rules) Decide(m *Mind, s Signs) Choice { return Choice{} }

// Check gives every fault of the rules at once.
func (r *Rules) Check() error { return nil }
