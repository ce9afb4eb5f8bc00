package power

// A Cell is a kind of cell for the air of a battery room.
type Cell int8

const (
	Vented Cell = iota // with liquid that can be topped up
	Sealed             // valve-regulated
)

// A Regime is how the bank is being charged.
type Regime int8

const (
	Float Regime = iota // kept full
	Boost               // charged hard
)

// gassing is the charging current that makes gas, mA per Ah of rated capacity, by cell and
// regime, for lead-acid cells [en62485-2, table 1, remembered; Sealed with Boost least surely].
var gassing = [2][2]float64{Vented: {Float: 5, Boost: 20}, Sealed: {Float: 1, Boost: 8}}

const (
	// airPerGas is the air, m3/h, for each ampere that makes gas in one cell: 0.42e-3 m3/Ah of hydrogen
	// (see HydrogenPerAh), thinned 24 times to stay below 4 %, and 5 for safety. The product is
	// 0.0504; the standard prints and uses 0.05 [en62485-2, 7.2].
	airPerGas  = 0.05
	openingPer = 28 // cm2 of inlet and of outlet for each m3/h, where the air moves at 0.1 m/s [en62485-2, 7.3]
)

// Gassing gives the current that makes gas, mA per Ah.
func Gassing(c Cell, r Regime) float64 { return gassing[c][r] }

// RoomAir gives the air, m3/h, that keeps hydrogen from a bank of so many lead-acid cells below
// 4 % of the room [en62485-2, 7.2]. Capacity in Ah.
func RoomAir(cells int, capacity float64, c Cell, r Regime) float64 {
	return airPerGas * float64(cells) * gassing[c][r] * capacity / 1000
}

// Opening gives the free area, cm2, of the inlet and of the outlet each for an air flow in m3/h.
func Opening(flow float64) float64 { return openingPer * flow }

// HydrogenPerAh gives the hydrogen, L, that one cell makes from one Ah once it is full, at a
// temperature in degC: Faraday's law with two electrons a molecule.
func HydrogenPerAh(celsius float64) float64 {
	const (
		molar   = 22.414  // L/mol at 0 degC and 101.325 kPa
		faraday = 26.8015 // Ah/mol
	)
	return molar * (celsius + 273.15) / 273.15 / (2 * faraday)
}
