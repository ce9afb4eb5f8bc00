package warmth

import (
	"fmt"
	"math"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/warmth/comfort"
	"suffice/warmth/vent"
)

// Sheets lists the worked calculations of this package: the hour of the rooms.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{ventsHour(), airHour(), roomHour(), dampHour()}
}

func num(name, unit, usual, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: usual, Meaning: meaning}
}

func from(in sheet.Input, low, high float64) sheet.Input {
	in.Low, in.High = sheet.At(low), sheet.At(high)
	return in
}

func several(name, unit, usual, meaning string) sheet.Input {
	return sheet.Input{Name: name, Kind: sheet.List, Unit: unit, Default: usual, Meaning: meaning, Maybe: usual == ""}
}

func worded(name, usual, meaning string) sheet.Input {
	return sheet.Input{Name: name, Kind: sheet.Text, Default: usual, Meaning: meaning}
}

// degC makes an input that is a temperature.
func degC(name, usual, meaning string) sheet.Input {
	return from(num(name, "degC", usual, meaning), -90, 120)
}

// openingNumber ties an input of an opening to where it lives.
type openingNumber struct {
	name, unit, meaning string
	low, high           float64
	usual               [2]string // of an inlet, of an outlet
	at                  func(*vent.Opening) *float64
}

func openingNumbers() []openingNumber {
	return []openingNumber{
		{"area", "m2", "free, all of it; 0 m2: there is none", 0, 100, [2]string{"0.5 m2", "0.5 m2"}, func(o *vent.Opening) *float64 { return (*float64)(&o.Area) }},
		{"height", "m", "of its middle", -50, 50, [2]string{"0.5 m", "2.5 m"}, func(o *vent.Opening) *float64 { return (*float64)(&o.Height) }},
		{"tall", "m", "from its lower to its upper edge", 0, 20, [2]string{"0.3 m", "0.3 m"}, func(o *vent.Opening) *float64 { return (*float64)(&o.Tall) }},
		{"discharge", "", "its coefficient: 0.61 for a plain hole", 0, 1, [2]string{"0.61", "0.61"}, func(o *vent.Opening) *float64 { return &o.Discharge }},
		{"pressure", "", "its wind pressure coefficient: about 0.6 facing the wind, -0.3 away from it", -3, 3, [2]string{"0.6", "-0.3"}, func(o *vent.Opening) *float64 { return &o.Pressure }},
	}
}

func ventsHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "vents-hour", Title: "Vents of a room in one hour: what people open, and the air through it",
		Inputs: []sheet.Input{
			degC("indoor", "26 degC", "of the room's air as the hour begins"), degC("outdoor", "20 degC", "of the air outside"),
			from(num("wind", "m/s", "2 m/s", "of open country at 10 m"), 0, 90), from(num("rain", "mm", "0 mm", "in the hour"), 0, 500),
			degC("begin", "24 degC", "inside, at which people begin to open"), degC("full", "27 degC", "inside, at which all is open"),
			num("cooler", "K", "1 K", "by which it has to be cooler outside"), degC("frost", "5 degC", "outside, below which the vents stay shut"),
			num("storm", "m/s", "12 m/s", "wind from which they are shut"), num("wet", "mm", "2 mm", "rain in the hour from which they are shut"),
			{Name: "terrain", Kind: sheet.Text, Default: string(vent.Country), Choices: []string{string(vent.Country), string(vent.Windbreaks), string(vent.Town), string(vent.City)}, Meaning: "what the wind has blown over"},
			from(num("fans", "m3/s", "0 m3/s", "that fans move beside"), 0, 1000),
		},
		Sources:  []string{"cibse-am10: two openings in series", "bs5925: one opening alone, wind by height and terrain"},
		Cautions: vent.Cautions(vent.Stands{OpenGas: true, Stove: true}),
		Do:       workVents,
	}
	for k, name := range [2]string{"inlet", "outlet"} {
		for _, n := range openingNumbers() {
			s.Inputs = append(s.Inputs, from(num(name+"_"+n.name, n.unit, n.usual[k], "of the "+name+": "+n.meaning), n.low, n.high))
		}
	}
	return s
}

func workVents(c *sheet.Calc) {
	at := func(name string) quantity.Celsius { return quantity.Celsius(c.Number(name)) }
	v := Vents{Terrain: vent.Terrain(c.Text("terrain")), Rule: vent.Rule{Begin: at("begin"), Full: at("full"), Cooler: quantity.Kelvins(c.Number("cooler")),
		Frost: at("frost"), Storm: c.Number("storm"), Wet: quantity.Millimetres(c.Number("wet"))}}
	for name, o := range map[string]*vent.Opening{"inlet": &v.Inlet, "outlet": &v.Outlet} {
		for _, n := range openingNumbers() {
			*n.at(o) = c.Number(name + "_" + n.name)
		}
	}
	sky := vent.Outdoors{Temperature: at("outdoor"), Wind: c.Number("wind"), Rain: quantity.Millimetres(c.Number("rain"))}
	windy := v.windy()
	open, through := v.pass(at("indoor"), sky, windy)
	c.Step("share that people open", "0 in frost, storm or rain, where it is not cooler outside, or under begin; else (inside - begin)/(full - begin), at most 1",
		fmt.Sprintf("%.6g degC inside, %.6g degC outside, wind %.4g m/s, rain %.4g mm", float64(at("indoor")), float64(sky.Temperature), sky.Wind, float64(sky.Rain)), open, "fraction")
	c.Step("wind at the vents", "U K z^a", fmt.Sprintf("%.4g x %.4g", sky.Wind, windy), sky.Wind*windy, "m/s")
	if through > 0 && v.Inlet.Area > 0 && v.Outlet.Area > 0 {
		c.Step("air through both", "Cd (1/A1^2 + 1/A2^2)^-1/2 sqrt(2 (g H (Ti - To)/Tmean + U^2/2 (Cp1 - Cp2)))",
			fmt.Sprintf("%g m2 and %g m2, of which %.4g stand open, %g m between them", float64(v.Inlet.Area), float64(v.Outlet.Area), open, float64(v.Outlet.Height-v.Inlet.Height)), through, "m3/s")
	} else if through > 0 {
		c.Step("air in and out through one", "the larger of Cd A/3 sqrt(g h |Ti - To|/Tmean) and 0.025 A U", fmt.Sprintf("%.4g of it stands open", open), through, "m3/s")
	}
	flow := c.Number("fans")
	flow += through
	c.Step("with the fans", "fans + vents", fmt.Sprintf("%g + %.6g", c.Number("fans"), through), flow, "m3/s")
	c.Result("open", open, "fraction")
	c.Result("flow", flow, "m3/s")
}

// doorInputs are those of the open doors between rooms.
func doorInputs() []sheet.Input {
	return []sheet.Input{
		several("door_from", "", "", "of each open door, the number of the room on one side, from 1"), several("door_to", "", "", "and on the other"),
		several("door_conductance", "W/K", "", "of the air through it"),
	}
}

// readDoors puts the doors of a sheet into a meeting of so many rooms.
func readDoors(c *sheet.Calc, m *meeting, rooms int) bool {
	if !c.Given("door_from") {
		return true
	}
	from, to, g := c.Numbers("door_from"), c.Numbers("door_to"), c.Numbers("door_conductance")
	if len(from) != len(to) || len(from) != len(g) || len(from) > mostPairs {
		c.Fail("doors are told by %d, %d and %d numbers: give as many of each, %d at most", len(from), len(to), len(g), mostPairs)
		return false
	}
	for i := range from {
		a, b := int(from[i])-1, int(to[i])-1
		if a < 0 || b < 0 || a >= rooms || b >= rooms || a == b {
			c.Fail("door %d joins rooms %g and %g: the rooms are 1 to %d, and it joins two of them", i+1, from[i], to[i], rooms)
			return false
		}
		m.pairs[m.doors] = pair{a, b, g[i]}
		m.doors++
	}
	return true
}

// alike refuses lists that are not of one length.
func alike(c *sheet.Calc, n int, what string, lists ...string) bool {
	for _, name := range lists {
		if k := len(c.Numbers(name)); k != n {
			c.Fail("%s has %d values and there are %d %s: give one for each", name, k, n, what)
			return false
		}
	}
	return true
}

func airHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "air-hour", Title: "The air that rooms come to in one hour",
		Inputs: append([]sheet.Input{
			worded("places", "living room, bedroom", "the rooms, then the windows with shutters"),
			several("free", "degC", "19 degC,17 degC", "of each at the hour's end with nothing open and nothing heated, from the network of walls"),
			several("answers", "", "0.004,0.0005,0.0005,0.004", "what a watt at each does to each by then, K: a row for every place"),
			several("conductance", "W/K", "12 W/K,0 W/K", "to outside through vents and fans; of a closed shutter what it takes away, below 0"),
			several("brings", "W", "60 W,0 W", "the same times the temperature outside, degC"),
			several("heated_to", "degC", "-1000 degC,-1000 degC", "of every room, where a machine without limit heats; -1000 degC: none does"),
			several("cooled_to", "degC", "1000 degC,1000 degC", "where one cools; 1000 degC: none does"),
			degC("outdoor", "5 degC", "of the air outside"),
		}, doorInputs()...),
		Sources: []string{"iso52016-1: balance of a zone's air, all openings at the temperatures of the hour's end (from memory)"},
		Do:      workAir,
	}
}

func workAir(c *sheet.Calc) {
	places, free := strings.Split(c.Text("places"), ", "), c.Numbers("free")
	r := &Rooms{rooms: len(c.Numbers("heated_to")), ports: len(free)}
	if r.ports > mostPorts || r.rooms > r.ports || r.rooms > MostRooms {
		c.Fail("%d rooms of %d places: at most %d of %d", r.rooms, r.ports, MostRooms, mostPorts)
		return
	}
	if !alike(c, r.ports, "places", "conductance", "brings") || !alike(c, r.rooms, "rooms", "cooled_to") || !alike(c, r.ports*r.ports, "pairs of places", "answers") {
		return
	}
	if len(places) != r.ports {
		c.Fail("%d places have names and %d a temperature: name each, with a comma and a space between", len(places), r.ports)
		return
	}
	var m meeting
	if !readDoors(c, &m, r.rooms) {
		return
	}
	busy := m.doors > 0
	for p := range r.ports {
		copy(r.answers[p][:], c.Numbers("answers")[p*r.ports:(p+1)*r.ports])
		m.free[p], m.at[p], m.g[p], m.gt[p] = free[p], free[p], c.Numbers("conductance")[p], c.Numbers("brings")[p]
		busy = busy || m.g[p] != 0
		if p < r.rooms {
			r.tables[p].heat[0], r.tables[p].cool[0] = c.Numbers("heated_to")[p], c.Numbers("cooled_to")[p]
			busy = busy || r.tables[p].heat[0] > -never || r.tables[p].cool[0] < never
		}
	}
	if busy {
		r.hold(&m, 0)
	}
	tellAirOf(c, r, &m, places)
}

// tellAirOf writes the working of a meeting.
func tellAirOf(c *sheet.Calc, r *Rooms, m *meeting, places []string) {
	var vented, between [MostRooms]float64
	for i := range r.rooms {
		vented[i] = m.g[i] * (m.at[i] - c.Number("outdoor"))
	}
	for _, p := range m.pairs[:m.doors] {
		flow := p.g * (m.at[p.a] - m.at[p.b])
		between[p.a] -= flow
		between[p.b] += flow
	}
	var air, heating, cooling []float64
	for p := range r.ports {
		c.Step(places[p], "T = free + sum of answers x heat, heat = brings - conductance T - doors (T - T beyond) + machine",
			fmt.Sprintf("%.6g + what %.6g W here and the heat of the others do", m.free[p], m.heat[p]), m.at[p], "degC")
		if p < r.rooms {
			air, heating, cooling = append(air, m.at[p]), append(heating, max(0, m.made[p])), append(cooling, max(0, -m.made[p]))
		}
	}
	c.ResultList("air_after", air, "degC")
	c.ResultList("heating", heating, "W")
	c.ResultList("cooling", cooling, "W")
	c.ResultList("vented", vented[:r.rooms], "W")
	c.ResultList("between", between[:r.rooms], "W")
}

func roomHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "room-hour", Title: "Heat of a room in one hour",
		Inputs: []sheet.Input{
			worded("ways", "back wall, roof, floor, south glass, leaks", "ways of heat out of the room, with a comma and a space between"),
			several("conductance", "W/K", "40 W/K,12 W/K,10 W/K,28 W/K,14 W/K", "from the last node on the room's side to what lies beyond"),
			several("near", "degC", "15 degC,19 degC,17 degC,17 degC,20 degC", "that node, mean of the hour, from the network of walls"),
			several("far", "degC", "14 degC,2 degC,13 degC,3 degC,5 degC", "beyond: the air outside with what sun and sky do to the face, the ground, or a neighbour's face"),
			several("shutters_keep", "W", "0 W,0 W,0 W,0 W,0 W", "what a closed shutter keeps in, of each way"),
			num("sun", "W", "800 W", "let in and taken up inside"),
			num("gains_air", "W", "120 W", "of people and things to the air"), num("gains_faces", "W", "120 W", "the same to the faces"),
			from(num("heating", "W", "0 W", "of a machine that holds a temperature"), 0, 1e9), from(num("cooling", "W", "0 W", "of one that cools"), 0, 1e9),
			from(num("flow", "m3/s", "0 m3/s", "of air from outside through vents and fans"), 0, 1e9), from(num("air_holds", "J/m3K", "1200 J/m3K", "the air, for a kelvin"), 0, 1e5),
			degC("air_after", "20 degC", "the room's air at the hour's end"), degC("outdoor", "5 degC", "of the air outside"),
			several("doors", "W/K", "", "of the air through each open door"), several("doors_air", "degC", "", "air behind it at the hour's end"),
			worded("stores", "air and things, back wall, roof, floor", "what holds heat"),
			several("held_before", "Wh", "300 Wh,18000 Wh,900 Wh,9000 Wh", "over 0 degC, before the hour"), several("held_after", "Wh", "310 Wh,18300 Wh,930 Wh,9110 Wh", "and after it"),
			degC("air", "19.8 degC", "of the air, mean of the hour"), degC("faces", "18.6 degC", "of the faces, mean of the hour"),
		},
		Sources: []string{"iso52016-1: balance of a zone (from memory)", "en16798-1: operative temperature, the mean of air and faces in still air"},
		Do:      workRoom,
	}
}

func workRoom(c *sheet.Calc) {
	ways, stores := strings.Split(c.Text("ways"), ", "), strings.Split(c.Text("stores"), ", ")
	if !alike(c, len(ways), "ways", "conductance", "near", "far", "shutters_keep") || !alike(c, len(stores), "stores", "held_before", "held_after") {
		return
	}
	g, near, far, keeps := c.Numbers("conductance"), c.Numbers("near"), c.Numbers("far"), c.Numbers("shutters_keep")
	through := make([]float64, len(ways))
	went := 0.0
	for k, name := range ways {
		through[k] = g[k] * (near[k] - far[k])
		numbers := fmt.Sprintf("%.5g x (%.5g - %.5g)", g[k], near[k], far[k])
		if keeps[k] != 0 {
			through[k] -= keeps[k]
			numbers += fmt.Sprintf(" - %.5g", keeps[k])
		}
		went += c.Step("out by "+name, "conductance (near - far) - what the shutter keeps", numbers, through[k], "W")
	}
	carries := c.Number("flow") * c.Number("air_holds")
	vented := c.Step("out by vents and fans", "flow x heat of air x (air after - outdoor)",
		fmt.Sprintf("%.5g x %.5g x (%.5g - %.5g)", c.Number("flow"), c.Number("air_holds"), c.Number("air_after"), c.Number("outdoor")), carries*(c.Number("air_after")-c.Number("outdoor")), "W")
	between := roomDoors(c)
	stored := 0.0
	before, after := c.Numbers("held_before"), c.Numbers("held_after")
	for k, name := range stores {
		stored += c.Step("taken up by "+name, "held after - held before", fmt.Sprintf("%.8g - %.8g", after[k], before[k]), after[k]-before[k], "Wh")
	}
	came := c.Number("sun") + c.Number("gains_air") + c.Number("gains_faces") + c.Number("heating") + between
	c.Step("came in", "sun + people and things + machine + doors", fmt.Sprintf("%.5g + %.5g + %.5g + %.5g + %.5g", c.Number("sun"), c.Number("gains_air"), c.Number("gains_faces"), c.Number("heating"), between), came, "W")
	went += vented + c.Number("cooling")
	left := c.Step("left over", "(came in - gone out) x 1 h - taken up: rounding, if nothing is wrong", fmt.Sprintf("%.8g - %.8g - %.8g", came, went, stored), came-went-stored, "Wh")
	felt := float64(comfort.Operative(quantity.Celsius(c.Number("air")), quantity.Celsius(c.Number("faces"))))
	c.Step("felt by a person in the middle", "(air + faces)/2", fmt.Sprintf("(%.5g + %.5g)/2", c.Number("air"), c.Number("faces")), felt, "degC")
	c.ResultList("through", through, "W")
	c.Result("vented", vented, "W")
	c.Result("between", between, "W")
	c.Result("stored", stored, "Wh")
	c.Result("left_over", left, "Wh")
	c.Result("operative", felt, "degC")
}

// roomDoors works what comes from other rooms.
func roomDoors(c *sheet.Calc) (between float64) {
	if !c.Given("doors") {
		return 0
	}
	g, air := c.Numbers("doors"), c.Numbers("doors_air")
	if len(g) != len(air) {
		c.Fail("%d doors have a conductance and %d an air behind them: give both for each", len(g), len(air))
		return 0
	}
	for k := range g {
		between -= g[k] * (c.Number("air_after") - air[k])
		c.Step(fmt.Sprintf("in by door %d", k+1), "conductance (air beyond - air after)", fmt.Sprintf("%.5g x (%.5g - %.5g)", g[k], air[k], c.Number("air_after")), g[k]*(air[k]-c.Number("air_after")), "W")
	}
	return between
}

func dampHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "damp-hour", Title: "Moisture and fresh air of rooms in one hour",
		Inputs: append([]sheet.Input{
			worded("rooms", "living room, bedroom", "with a comma and a space between"),
			several("volume", "m3", "100 m3,40 m3", "of each"), several("leaks", "m3/h", "40 m3/h,16 m3/h", "air from outside through gaps"),
			several("flow", "m3/s", "0 m3/s,0 m3/s", "through vents and fans"), from(num("air_holds", "J/m3K", "1200 J/m3K", "the air, for a kelvin"), 1, 1e5),
			{Name: "outdoor", Unit: "degC", Maybe: true, Meaning: "of the air outside; without it and the humidity moisture is not worked"},
			{Name: "humidity", Unit: "%", Maybe: true, Low: sheet.At(0), High: sheet.At(100), Meaning: "relative, of the air outside"},
			several("vapour_before", "kg/m3", "", "in the air of each room"), several("given_off", "kg/h", "", "by people in it"),
			several("face", "degC", "", "its coldest face"), several("settles", "m3/h", "", "air that touches that face"),
			several("air", "degC", "20 degC,17 degC", "of each at the hour's end"),
			several("carbon_before", "", "700,900", "carbon dioxide in each, ppm"), several("breathed_out", "L/h", "38 L/h,0 L/h", "of carbon dioxide"),
		}, doorInputs()...),
		Sources:  []string{"iso13788: balance of a room's vapour (from memory)", "astm-d6245: carbon dioxide of a mixed room", "ashrae-fundamentals: vapour crosses a film as heat does (Lewis)"},
		Cautions: append(vent.Cautions(vent.Stands{}), "Mould grows where faces stay damp for days, long before water runs down them: air out, keep faces warm, and dry what got wet."),
		Do:       workDamp,
	}
}

func workDamp(c *sheet.Calc) {
	rooms := strings.Split(c.Text("rooms"), ", ")
	r := &Rooms{rooms: len(rooms), carries: c.Number("air_holds")}
	if r.rooms > MostRooms {
		c.Fail("%d rooms: %d at most", r.rooms, MostRooms)
		return
	}
	damp := c.Given("outdoor") && c.Given("humidity")
	if !alike(c, r.rooms, "rooms", "volume", "leaks", "flow", "air", "carbon_before", "breathed_out") ||
		damp && !alike(c, r.rooms, "rooms", "vapour_before", "given_off", "face", "settles") {
		return
	}
	var s State
	var in In
	out := new(Out)
	if !readDoors(c, &out.meeting, r.rooms) {
		return
	}
	r.damp.tabulate()
	outside := math.NaN()
	if damp {
		outside = c.Step("vapour outside", "humidity x saturation over (R T)", fmt.Sprintf("%.5g percent at %.5g degC", c.Number("humidity"), c.Number("outdoor")),
			vapourOutside(quantity.Celsius(c.Number("outdoor")), c.Number("humidity")), "kg/m3")
	}
	for i := range r.rooms {
		r.volume[i], r.damp.leaks[i], out.Rooms[i].Flow = c.Numbers("volume")[i], c.Numbers("leaks")[i], c.Numbers("flow")[i]
		s.Carbon[i], in.Rooms[i].Carbon, s.Vapour[i] = c.Numbers("carbon_before")[i], c.Numbers("breathed_out")[i], math.NaN()
		if damp {
			s.Vapour[i], in.Rooms[i].Vapour = c.Numbers("vapour_before")[i], c.Numbers("given_off")[i]
			r.damp.settles[i], out.Rooms[i].Face = c.Numbers("settles")[i], quantity.Celsius(c.Numbers("face")[i])
		}
	}
	before := s
	r.exchange(&s, &in, out, outside)
	tellDampOf(c, r, &before, &in, out, rooms, damp, outside)
}

// tellDampOf writes the working of what was exchanged.
func tellDampOf(c *sheet.Calc, r *Rooms, before *State, in *In, out *Out, rooms []string, damp bool, outside float64) {
	var fresh, carbon, vapour, humidity, condensed []float64
	for i, name := range rooms {
		o := &out.Rooms[i]
		c.Step("fresh air of "+name, "leaks + flow x 3600", fmt.Sprintf("%.5g + %.5g x 3600", r.damp.leaks[i], o.Flow), o.Fresh, "m3/h")
		c.Step("carbon dioxide in "+name+", ppm", "(V C + fresh Co + 1000 breathed out + doors)/(V + fresh + doors), at the hour's end",
			fmt.Sprintf("V = %.5g, C = %.5g before, Co = %g, breathed out %.5g L", r.volume[i], before.Carbon[i], vent.OutsideCarbon, in.Rooms[i].Carbon), o.Carbon, "")
		fresh, carbon = append(fresh, o.Fresh), append(carbon, o.Carbon)
		if !damp {
			continue
		}
		c.Step("vapour in "+name, "(V v + fresh vo + given off + doors + settles x full)/(V + fresh + doors + settles); settles only where it is over what the face lets it hold",
			fmt.Sprintf("V = %.5g, v = %.5g before, vo = %.5g, given off %.5g kg, face at %.5g degC holds %.5g", r.volume[i], before.Vapour[i], outside, in.Rooms[i].Vapour, float64(o.Face), r.damp.holds(float64(o.Face))), o.Vapour, "kg/m3")
		c.Step("condensed on the coldest face of "+name, "settles x (v - full)", fmt.Sprintf("%.5g m3/h", r.damp.settles[i]), float64(o.Condensed), "kg")
		vapour, condensed = append(vapour, o.Vapour), append(condensed, float64(o.Condensed))
		humidity = append(humidity, HumidityOf(o.Vapour, quantity.Celsius(c.Numbers("air")[i])))
	}
	c.ResultList("fresh", fresh, "m3/h")
	c.ResultList("carbon_after", carbon, "")
	if damp {
		c.ResultList("vapour_after", vapour, "kg/m3")
		c.ResultList("humidity_after", humidity, "%")
		c.ResultList("condensed", condensed, "kg")
	}
}
