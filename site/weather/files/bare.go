package files

import (
	"fmt"
	"slices"
	"strings"

	"suffice/site/weather"
)

// looksBare reports whether a file begins with the names of columns, as a NASA POWER
// table does whose header someone took off.
func looksBare(lines []string) bool {
	head := splitNames(lines[0])
	_, err := stampsOf(head)
	return err == nil && len(head) > 1
}

// readBare reads such a table. The file says neither where it is nor its units: both
// have to come with the options, or the file is refused with the list of what is wanted.
func readBare(s *source, o Options) (*weather.Record, error) {
	names, _ := s.next()
	head := splitNames(names)
	st, err := stampsOf(head)
	if err != nil {
		return nil, s.at("%w", err)
	}
	if err := o.unused(s.name, head); err != nil {
		return nil, err
	}
	r := &weather.Record{Format: fmt.Sprintf("%s CSV without header", st.step), Step: st.step}
	t := &table{src: s, step: st.step}
	fields, wanted := bareFields(o, r, t, head)
	var placed bool
	if r.Place, placed = o.place(); !placed {
		wanted = append([]string{"latitude=", "longitude=", "altitude="}, wanted...)
	}
	r.Placed = true
	if o.Time != nil {
		r.Time = *o.Time
	} else if st.step == weather.Hourly {
		wanted = append(wanted, "time= (utc or solar)")
	} else {
		r.Time = weather.SolarHours
		r.Notes = append(r.Notes, "the file does not say which midnight its days begin at: taken as local solar")
	}
	if len(wanted) > 0 {
		return nil, s.at("the file has no header that tells place and units: give %s", strings.Join(wanted, ", "))
	}
	if len(fields) == 0 {
		return nil, s.at("no column is known: say what each is, for example column.%s=rain unit.%s=mm/day; the kinds are %s",
			lastName(head), lastName(head), columnNames())
	}
	if o.Altitude == nil {
		r.Notes = append(r.Notes, "the altitude is not given: taken as 0 m")
	}
	r.Place.Clock = clockOf(r.Time, r.Place, o)
	readRows(t, st, fields, "-999", len(head))
	if err := t.finish(r); err != nil {
		return nil, err
	}
	r.Notes = append(r.Notes, "the file has no header: place, units and time are those given on opening it; -999 is taken as missing")
	return r, nil
}

// bareFields decides which columns are read, and lists the options that are wanted. A
// name of NASA POWER whose unit never varied needs none; column.NAME gives any other.
func bareFields(o Options, r *weather.Record, t *table, head []string) (fields []powerField, wanted []string) {
	strangers := true
	for at, name := range head {
		if isStamp(name) {
			continue
		}
		p, known := powerNamed(name, head)
		strangers = strangers && !known
		if c, named := o.Columns[name]; named {
			p, known = powerColumn{name: name, column: c}, true
		}
		if !known || slices.ContainsFunc(t.series, func(c weather.Series) bool { return c.Column == p.column }) {
			r.Unread = append(r.Unread, name)
			continue
		}
		unit := o.Units[name]
		if unit == "" {
			unit = p.unit
		}
		sc, ok := scaleOf(p.column, r.Step, unit)
		if !ok {
			wanted = append(wanted, fmt.Sprintf("unit.%s= (%s)", name, unitHint(p.column, r.Step)))
			continue
		}
		t.add(p.column, name, unit)
		fields = append(fields, powerField{at, sc})
	}
	if strangers && len(o.Columns) == 0 {
		for _, name := range r.Unread {
			wanted = append(wanted, fmt.Sprintf("column.%s= with unit.%s=", name, name))
		}
	}
	return fields, wanted
}

func lastName(head []string) string { return head[len(head)-1] }
