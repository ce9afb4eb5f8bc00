package fabric

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"suffice/material"
	"suffice/quantity"
)

// ReadLayers reads layers from inside to outside, parted by commas, as
// name:thickness:conductivity:density:capacity. Fields after the thickness may be left out:
// the name is then looked up, and an unknown one is a fault. Where mass is false, density and
// capacity are not asked for. An air gap is name:resistance, with its unit m2K/W, or air:thickness for still
// air in a wall. Numbers without a unit are m, W/mK, kg/m3 and J/kgK. All faults come at once.
func ReadLayers(text string, mass bool, known material.Library) ([]Layer, error) {
	var layers []Layer
	var faults []error
	for part := range strings.SplitSeq(text, ",") {
		l, err := readLayer(part, mass, known)
		if err != nil {
			faults = append(faults, fmt.Errorf("%q: %w", strings.TrimSpace(part), err))
		}
		layers = append(layers, l)
	}
	return layers, errors.Join(faults...)
}

// barest is the thickness over which a number without a unit was surely meant as millimetres.
const barest = 5 // m

func readLayer(text string, mass bool, known material.Library) (Layer, error) {
	fields := strings.Split(strings.TrimSpace(text), ":")
	l := Layer{Name: strings.TrimSpace(fields[0])}
	if len(fields) < 2 || len(fields) > 5 {
		return l, errors.New("a layer is name:thickness:conductivity, then :density:capacity where its mass counts; or name:thickness for a known material")
	}
	if r, err := quantity.ReadIn(fields[1], "m2K/W"); err == nil && len(fields) == 2 {
		l.Gap = material.Resistance(r)
		return l, nil
	}
	if key := strings.ToLower(l.Name); len(fields) == 2 && (key == "air" || key == "air gap") {
		thickness, err := bare(fields[1], "m")
		if err != nil {
			return l, err
		}
		air, err := AirLayer(quantity.Millimetres(1000*thickness), Level)
		air.Name = l.Name
		return air, err
	}
	want := 5
	if !mass {
		want = 3
	}
	if len(fields) < want {
		m, err := known.Named(l.Name)
		if err != nil {
			return l, err
		}
		m.Name = l.Name
		l = Of(m, 0)
	}
	targets := []struct {
		to   *float64
		unit string
	}{{(*float64)(&l.Thickness), "m"}, {(*float64)(&l.Conductivity), "W/mK"}, {(*float64)(&l.Density), "kg/m3"}, {(*float64)(&l.Capacity), "J/kgK"}}
	var faults []error
	for i, field := range fields[1:] {
		v, err := bare(field, targets[i].unit)
		faults = append(faults, err)
		*targets[i].to = v
	}
	if _, err := strconv.ParseFloat(strings.TrimSpace(fields[1]), 64); err == nil && l.Thickness > barest {
		faults = append(faults, fmt.Errorf("a thickness of %g without a unit is %g m: write %gmm if millimetres are meant", float64(l.Thickness), float64(l.Thickness), float64(l.Thickness)))
	}
	return l, errors.Join(faults...)
}

// bare reads a quantity that may do without its unit.
func bare(text, unit string) (float64, error) {
	if v, err := strconv.ParseFloat(strings.TrimSpace(text), 64); err == nil {
		return v, nil
	}
	return quantity.ReadIn(text, unit)
}

// ReadBridges puts what bridges layers into them, read as name:share:conductivity, parted by
// commas; the name may stand last. Density and specific heat may follow where mass counts.
func ReadBridges(text string, layers []Layer) error {
	var faults []error
	for part := range strings.SplitSeq(text, ",") {
		if err := readBridge(part, layers); err != nil {
			faults = append(faults, fmt.Errorf("%q: %w", strings.TrimSpace(part), err))
		}
	}
	return errors.Join(faults...)
}

func readBridge(text string, layers []Layer) error {
	fields := strings.Split(strings.TrimSpace(text), ":")
	if len(fields) != 3 {
		return errors.New("a bridge is name:share:conductivity, with the name of the layer that it stands in: wool:10%:0.13W/mK")
	}
	if _, err := bare(fields[0], "fraction"); err == nil {
		fields = []string{fields[2], fields[0], fields[1]}
	}
	share, err1 := bare(fields[1], "fraction")
	conductivity, err2 := bare(fields[2], "W/mK")
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	found := false
	for i := range layers {
		if strings.EqualFold(layers[i].Name, strings.TrimSpace(fields[0])) {
			layers[i].Bridge = Bridge{Share: share, Conductivity: material.Conductivity(conductivity)}
			found = true
		}
	}
	if !found {
		return fmt.Errorf("no layer is called %q: it is one of %s", fields[0], strings.Join(names(layers), ", "))
	}
	return nil
}

func names(layers []Layer) []string {
	var all []string
	for _, l := range layers {
		all = append(all, l.Name)
	}
	return all
}
