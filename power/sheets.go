package power

import (
	"fmt"

	"suffice/sheet"
)

// Sheets gives the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{
		panelTemperature(), panelString(), panelHour(),
		batteryDays(), batteryCapacity(), batteryCycles(), batteryAir(), batteryHour(),
		cable(), inverterSize(), inverterHour(),
		loadsHour(), powerHour(),
	}
}

const (
	electricCaution = "Direct current from panels and batteries kills and starts fires, and panels cannot be switched off in daylight: local code and a licensed electrician decide what is built."
	batteryCaution  = "A battery delivers thousands of amperes into a dropped spanner: fuse it at its poles, cover them, and take off rings. Lead-acid cells give off hydrogen and hold acid; lithium packs burn. Makers' papers and local code come first."
	hydrogenCaution = "Hydrogen collects under ceilings and explodes from 4 %: let air in low and out at the highest point, keep sparks, flames and switches away from the bank."
)

// fraction makes an input that is a share, 0 to 1.
func fraction(name, usual, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "fraction", Default: usual, Low: sheet.At(0), High: sheet.At(1), Meaning: meaning}
}

// number makes an input with limits.
func number(name, unit, usual, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: usual, Low: sheet.At(low), High: sheet.At(high), Meaning: meaning}
}

// maybe takes the default away: the input may be absent.
func maybe(in sheet.Input) sheet.Input {
	in.Default, in.Maybe = "", true
	return in
}

// say puts numbers into a formula.
func say(format string, numbers ...any) string { return fmt.Sprintf(format, numbers...) }
