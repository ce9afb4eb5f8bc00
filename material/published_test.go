package material

import (
	"testing"

	"suffice/internal/check"
)

// year is the one that iso13370 takes, s.
const year = 3.15e7

func named(t *testing.T, name string) Material {
	t.Helper()
	m, err := Named(name)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The depth that a year's swing of temperature reaches.
func TestPenetrationDepth(t *testing.T) {
	check.That(t, named(t, "clay ground").PenetrationDepth(year), check.Published{Source: "iso13370", At: "table of periodic penetration depths, clay", Value: "2.2", Unit: "m"})
	check.That(t, named(t, "sand ground").PenetrationDepth(year), check.Published{Source: "iso13370", At: "table of periodic penetration depths, sand", Value: "3.2", Unit: "m"})
	check.That(t, named(t, "rock ground").PenetrationDepth(year), check.Published{Source: "iso13370", At: "table of periodic penetration depths, rock", Value: "4.2", Unit: "m"})
}

func TestGroundHoldsWhatIsPrinted(t *testing.T) {
	check.That(t, named(t, "clay ground").PerVolume()/1e6, check.Published{Source: "iso13370", At: "table 7, clay or silt, heat per volume", Value: "3.0", Unit: "MJ/m3K"})
	check.That(t, named(t, "rock ground").PerVolume()/1e6, check.Published{Source: "iso13370", At: "table 7, rock, heat per volume", Value: "2.0", Unit: "MJ/m3K"})
	check.That(t, named(t, "saturated clay").PerVolume()/1e6, check.Published{Source: "en17522", At: "clay and silt saturated, heat per volume", Value: "2.4", Unit: "MJ/m3K"})
	check.That(t, named(t, "moist sand").PerVolume()/1e6, check.Published{Source: "en17522", At: "sand moist, heat per volume", Value: "1.9", Unit: "MJ/m3K"})
}

// Earth of known conductivity, by its fibre, lies where the other table puts that density.
func TestEarthWithFibre(t *testing.T) {
	for _, m := range earths {
		if m.Note != density {
			continue
		}
		e, err := Earth(m.Density)
		if err != nil {
			t.Fatal(err)
		}
		if d := float64(e.Conductivity - m.Conductivity); d < -0.005 || d > 0.005 {
			t.Errorf("%s: %g W/mK, but earth of %g kg/m3 has %g W/mK", m.Name, float64(m.Conductivity), float64(m.Density), float64(e.Conductivity))
		}
	}
}

func TestEarthByDensity(t *testing.T) {
	conductivity := func(d Density) float64 {
		m, err := Earth(d)
		if err != nil {
			t.Fatal(err)
		}
		return float64(m.Conductivity)
	}
	check.That(t, conductivity(2000), check.Published{Source: "din4108-4", At: "earth of 2000 kg/m3", Value: "1.1", Unit: "W/mK", Standing: "remembered"})
	check.That(t, conductivity(1600), check.Published{Source: "din4108-4", At: "earth of 1600 kg/m3", Value: "0.73", Unit: "W/mK", Standing: "remembered"})
	check.That(t, conductivity(1000), check.Published{Source: "din4108-4", At: "earth of 1000 kg/m3", Value: "0.35", Unit: "W/mK", Standing: "remembered"})
}
