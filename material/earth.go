package material

import "fmt"

// earthByDensity is the conductivity of building earth, W/mK, by its dry density, kg/m3
// [din4108-4, also in the German rules for building with earth; remembered].
var earthByDensity = [...]struct{ density, conductivity float64 }{
	{1000, 0.35}, {1200, 0.47}, {1400, 0.59}, {1600, 0.73}, {1800, 0.91}, {2000, 1.1},
}

// earthCapacity is the specific heat of dry earth, J/kgK [din4108-4, remembered].
const earthCapacity = 1000

// Earth gives building earth (rammed, adobe, cob, light earth) of a dry density from 1000
// to 2000 kg/m3, straight between the rows of the table (din4108-4).
func Earth(density Density) (Material, error) {
	rows := earthByDensity[:]
	first, last := rows[0].density, rows[len(rows)-1].density
	d := float64(density)
	if !(d >= first && d <= last) {
		return Material{}, fmt.Errorf("earth of %g kg/m3 is not in the table: it goes from %g to %g kg/m3; give a conductivity of your own", d, first, last)
	}
	i := 1
	for rows[i].density < d {
		i++
	}
	a, b := rows[i-1], rows[i]
	conductivity := a.conductivity + (b.conductivity-a.conductivity)*(d-a.density)/(b.density-a.density)
	return Material{
		Name: fmt.Sprintf("earth %g", d), Kind: "earth", Conductivity: Conductivity(conductivity), Density: density, Capacity: earthCapacity,
		Source: "din4108-4: earth by density", Standing: Remembered,
		Note: "air-dry; damp earth conducts half again as much and more, and loses strength: keep rising damp and rain out",
	}, nil
}
