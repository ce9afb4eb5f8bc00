package crop

const (
	// Visible is the share of the sun's energy between 400 and 700 nm: 0.45 of global light, 0.42 to 0.50 by sky and author.
	Visible = 0.45
	// PhotonsPerJoule is for sunlight between 400 and 700 nm, µmol/J (mccree-1972, from memory).
	PhotonsPerJoule = 4.57
)

// A Conversion is one way from the sun's energy to the light that plants use.
type Conversion struct {
	Name     string
	Visible  float64 // share of global light between 400 and 700 nm
	PerJoule float64 // µmol/J of that
	Source   string
}

// Conversions lists three that are in use; they differ by 12 %, most of it in the share. The first is ours.
func Conversions() []Conversion {
	return []Conversion{
		{"mccree", Visible, PhotonsPerJoule, "mccree-1972: 4.57 µmol/J, with 0.45 of global light"},
		{"half-at-4.6", 0.5, 4.6, "flux-photons: half of global light, 4.6 µmol/J"},
		{"half-at-220-kJ", 0.5, 1e6 / 220e3, "flux-photons: half of global light, 220 kJ/mol"},
	}
}

// Photons gives µmol/m2s of W/m2.
func (v Conversion) Photons(irradiance float64) float64 { return irradiance * v.Visible * v.PerJoule }

// Day gives mol/m2d of MJ/m2d on the glass and the share that passes it.
func (v Conversion) Day(radiation, passes float64) float64 { return v.Photons(radiation * passes) }

// brightest is the most that light-needs tells of places in the open, mol/m2d: a sum above it is doubtful.
const brightest = 60

// DailyLight gives the light of a day that plants use, mol/m2d, from the sun's energy in MJ/m2d on the glass and the
// share that passes it (1 in the open).
func DailyLight(radiation, passes float64) float64 {
	return radiation * passes * Visible * PhotonsPerJoule
}

// LampLight gives the same, mol/m2d, from a steady photon flux in µmol/m2s over hours a day.
func LampLight(flux, hours float64) float64 { return flux * 3600 * hours / 1e6 }

// LightYield gives the share of full growth that a day's light allows, 0 to 1: growth follows the light taken in
// (monteith-1977), and none is gained above what the crop is said to need.
func (c *Crop) LightYield(dli float64) float64 { return min(1, max(0, dli/c.Light.High)) }
