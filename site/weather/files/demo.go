package files

import (
	"bytes"
	_ "embed"

	"suffice/site/weather"
)

// packedCrete is the NASA POWER record for 35.03 N 24.83 E, daily, 1984 to 2020, as the
// service gave it, packed.
//
//go:embed testdata/power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz
var packedCrete []byte

// Demo gives the record that comes with the program: central Crete, daily, 1984 to 2020,
// from NASA POWER. Its rain is a reanalysis and no gauge, as its notes say.
func Demo() (*weather.Record, error) {
	r, err := Read("built-in record of Crete", bytes.NewReader(packedCrete), Options{Name: "Crete"})
	if err != nil {
		return nil, err
	}
	r.Notes = append(r.Notes, "the record comes with the program; it is for 35.03 N 24.83 E and for no other place")
	return r, nil
}
