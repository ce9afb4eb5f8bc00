package synth

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"suffice/quantity"
)

// mostBytes bounds a file of normals: a page of text.
const mostBytes = 64 << 10

// ReadNormals reads normals, docs/made-weather.md: YAML ("rain: 83 70 ... 90 mm", twelve
// numbers and their unit) or, where the name ends in .csv, a table with one quantity a
// line. All faults are reported, with their lines.
func ReadNormals(name string, from io.Reader) (*Normals, error) {
	text, err := io.ReadAll(io.LimitReader(from, mostBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(text) > mostBytes {
		return nil, fmt.Errorf("%s has more than %d kB: normals are a page of text", name, mostBytes>>10)
	}
	var entries []entry
	if strings.HasSuffix(name, ".csv") {
		entries, err = tableEntries(text)
	} else {
		entries, err = pageEntries(text)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	n := new(Normals)
	if err := n.take(entries); err != nil {
		return nil, prefixed(name, err)
	}
	if err := n.Faults(); err != nil {
		return nil, prefixed(name, err)
	}
	return n, nil
}

// prefixed puts the file's name before every line of a fault.
func prefixed(name string, err error) error {
	var all []error
	for line := range strings.SplitSeq(err.Error(), "\n") {
		all = append(all, errors.New(name+": "+line))
	}
	return errors.Join(all...)
}

// An entry is one thing that the file says.
type entry struct {
	key, value string
	line       int
}

// pageEntries reads "key: value" lines as YAML.
func pageEntries(text []byte) (all []entry, err error) {
	var root yaml.Node
	if err := yaml.Unmarshal(text, &root); err != nil {
		return nil, fmt.Errorf("this is no YAML: %w", err)
	}
	if root.Kind != yaml.DocumentNode || len(root.Content) != 1 || root.Content[0].Kind != yaml.MappingNode {
		return nil, errors.New("normals are lines of \"key: value\": there are none")
	}
	content := root.Content[0].Content
	for i := 0; i+1 < len(content); i += 2 {
		key, value := content[i], content[i+1]
		if key.Kind != yaml.ScalarNode || value.Kind != yaml.ScalarNode {
			return nil, fmt.Errorf("line %d: %s is a list or group: write twelve numbers and their unit on one line, as in \"rain: 83 70 55 31 12 3 0 1 15 60 70 90 mm\"", value.Line, clip(key.Value))
		}
		all = append(all, entry{key.Value, value.Value, key.Line})
	}
	return all, nil
}

// tableEntries reads "key,unit,January,...,December" and "key,unit,value" lines.
func tableEntries(text []byte) (all []entry, err error) {
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord, r.Comment, r.TrimLeadingSpace = -1, '#', true
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return all, nil
		}
		if err != nil {
			return nil, fmt.Errorf("this is no table of commas: %w", err)
		}
		line, _ := r.FieldPos(0)
		if len(all) == 0 && len(row) > 1 && row[0] == "quantity" {
			continue // the head
		}
		for len(row) > 2 && row[len(row)-1] == "" {
			row = row[:len(row)-1]
		}
		if len(row) < 3 {
			return nil, fmt.Errorf("line %d: a line is quantity, unit and one or twelve values", line)
		}
		all = append(all, entry{row[0], strings.TrimSpace(strings.Join(row[2:], " ") + " " + row[1]), line})
	}
}

// take puts entries into normals.
func (n *Normals) take(entries []entry) error {
	var faults []error
	seen := make(map[string]int)
	for _, e := range entries {
		if before := seen[e.key]; before > 0 {
			faults = append(faults, fmt.Errorf("line %d: %s stands already in line %d", e.line, clip(e.key), before))
			continue
		}
		seen[e.key] = e.line
		if err := n.set(e.key, e.value); err != nil {
			faults = append(faults, fmt.Errorf("line %d: %w", e.line, err))
		}
	}
	for _, key := range []string{"latitude", "longitude"} {
		if seen[key] == 0 {
			faults = append(faults, fmt.Errorf("%s is missing: the sun depends on it", key))
		}
	}
	if seen["clock"] == 0 {
		n.Place.Clock = math.Round(float64(n.Place.Longitude) / 15)
	}
	return errors.Join(faults...)
}

func (n *Normals) set(key, value string) error {
	for i := range monthlies {
		if k := &monthlies[i]; k.name == key {
			months, err := twelve(value, k.unit)
			if err != nil {
				return fmt.Errorf("%s: %w", key, err)
			}
			*k.at(n) = &months
			return nil
		}
	}
	var err error
	switch key {
	case "name":
		n.Place.Name = value
	case "latitude":
		err = readInto(&n.Place.Latitude, value, "deg")
	case "longitude":
		err = readInto(&n.Place.Longitude, value, "deg")
	case "altitude":
		err = readInto(&n.Place.Altitude, value, "m")
	case "clock":
		err = readInto(&n.Place.Clock, value, "h")
	case "wet_day":
		err = readInto(&n.WetDay, value, "mm")
	case "yearly_rain_deviation":
		err = readInto(&n.Deviation, value, "mm")
	case "coast":
		n.Coast = value == "yes"
		if value != "yes" && value != "no" {
			err = fmt.Errorf("%q is neither yes nor no", clip(value))
		}
	default:
		return fmt.Errorf("%q is not known: there are %s", clip(key), knownKeys())
	}
	if err != nil {
		return fmt.Errorf("%s: %w", key, err)
	}
	return nil
}

func knownKeys() string {
	keys := []string{"name", "latitude", "longitude", "altitude", "clock", "wet_day", "yearly_rain_deviation", "coast"}
	for _, k := range monthlies {
		keys = append(keys, k.name)
	}
	return strings.Join(keys, ", ")
}

func readInto[T ~float64](to *T, text, unit string) error {
	v, err := quantity.ReadIn(text, unit)
	*to = T(v)
	return err
}

// twelve reads twelve numbers and the unit they share.
func twelve(text, unit string) (months [12]float64, err error) {
	words := strings.Fields(text)
	n := 0
	for n < len(words) {
		if _, err := strconv.ParseFloat(words[n], 64); err != nil {
			break
		}
		n++
	}
	if n != 12 {
		return months, fmt.Errorf("twelve numbers are wanted, January first, then their unit; here are %d", n)
	}
	shared := strings.Join(words[n:], " ")
	if shared == "" && unit != "" {
		return months, fmt.Errorf("no unit: write it after the last number, for example %s", quantity.Text(1, unit))
	}
	for m, word := range words[:12] {
		if months[m], err = quantity.ReadIn(word+" "+shared, unit); err != nil {
			return months, fmt.Errorf("month %d: %w", m+1, err)
		}
	}
	return months, nil
}

// clip keeps a quoted text short.
func clip(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return text
}
