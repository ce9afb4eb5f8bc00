package material

// timbers: Sources: iso10456 table 3 (remembered); table 14.15 of berge (seen: conductivity
// and specific heat across the grain).
var timbers = []Material{
	{Name: "timber", Kind: "timber", Conductivity: 0.13, Density: 500, Capacity: 1600, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "timber 450", Kind: "timber", Conductivity: 0.12, Density: 450, Capacity: 1600, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "timber 700", Kind: "timber", Conductivity: 0.18, Density: 700, Capacity: 1600, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "pine across the grain", Kind: "timber", Conductivity: 0.12, Density: 500, Capacity: 2600, Source: "berge: table 14.15", Standing: Seen, Note: "specific heat of wood as it stands, with its water; density assumed"},
	{Name: "oak across the grain", Kind: "timber", Conductivity: 0.165, Density: 700, Capacity: 2600, Source: "berge: table 14.15", Standing: Seen, Note: "specific heat of wood as it stands, with its water; density assumed"},
	{Name: "plywood", Kind: "timber", Conductivity: 0.13, Density: 500, Capacity: 1600, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "strand board", Kind: "timber", Conductivity: 0.13, Density: 650, Capacity: 1700, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "particle board", Kind: "timber", Conductivity: 0.14, Density: 600, Capacity: 1700, Source: "iso10456: table 3", Standing: Remembered},
}

// fibres grow: Sources: a Lithuanian review of straw (seen), iso10456 (remembered).
var fibres = []Material{
	{Name: "straw bale", Kind: "fibre", Conductivity: 0.063, Least: 0.054, Most: 0.072, Density: 110, Capacity: 2000, Source: "straw-review: in use, 70 to 150 kg/m3", Standing: Seen, Note: "amid the span for straw in use; specific heat is common practice, no source; straw rots above about 20 % moisture"},
	{Name: "dry straw bale", Kind: "fibre", Conductivity: 0.0525, Least: 0.045, Most: 0.06, Density: 110, Capacity: 2000, Source: "straw-review: dry, 70 to 150 kg/m3", Standing: Seen, Note: "amid the span for dry straw; a wall in use is damper"},
	{Name: "cork board", Kind: "fibre", Conductivity: 0.045, Density: 120, Capacity: 1560, Wetting: 6, Source: "iso10456: table 4, expanded cork", Standing: Remembered, Note: "conductivity is common practice, no source: 0.040 to 0.050 W/mK; take the maker's declared value"},
	{Name: "cork tile", Kind: "fibre", Conductivity: 0.065, Density: 450, Capacity: 1500, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "wood fibre board", Kind: "fibre", Conductivity: 0.045, Density: 160, Capacity: 2000, Wetting: 1.4, Source: "iso10456: table 4", Standing: Remembered, Note: "conductivity is common practice, no source; take the maker's declared value"},
	{Name: "cellulose", Kind: "fibre", Conductivity: 0.040, Density: 50, Capacity: 1600, Source: "iso10456: table 4, loose fill", Standing: Remembered, Note: "conductivity is common practice, no source; " + damp},
	{Name: "sheep wool", Kind: "fibre", Conductivity: 0.040, Density: 20, Capacity: 1700, Source: "common practice, no source", Standing: Assumed, Note: damp},
}

// insulations: Sources: iso10456 (remembered), the wall layers of bestest-1995 (seen).
// Conductivities of insulation are declared by the maker; these are usual ones.
var insulations = []Material{
	{Name: "mineral wool", Kind: "insulation", Conductivity: 0.038, Least: 0.032, Most: 0.044, Density: 30, Capacity: 1030, Wetting: 4, Source: "iso10456: table 4", Standing: Remembered, Note: "conductivity is common practice, no source; " + damp},
	{Name: "fibreglass", Kind: "insulation", Conductivity: 0.04, Density: 12, Capacity: 840, Source: "bestest-1995: light wall", Standing: Seen, Note: damp},
	{Name: "expanded polystyrene", Kind: "insulation", Conductivity: 0.038, Least: 0.036, Most: 0.040, Density: 20, Capacity: 1450, Wetting: 4, Source: "iso10456: tables 3 and 4", Standing: Remembered, Note: damp},
	{Name: "extruded polystyrene", Kind: "insulation", Conductivity: 0.033, Least: 0.030, Most: 0.035, Density: 35, Capacity: 1450, Wetting: 2.5, Source: "iso10456: tables 3 and 4", Standing: Remembered, Note: "the one of these foams that may lie in damp ground"},
	{Name: "polyurethane foam", Kind: "insulation", Conductivity: 0.025, Density: 35, Capacity: 1400, Wetting: 6, Source: "iso10456: table 4", Standing: Remembered, Note: "conductivity aged, common practice, no source"},
	{Name: "cellular glass", Kind: "insulation", Conductivity: 0.045, Density: 120, Capacity: 1000, Source: "iso10456: table 4", Standing: Remembered, Note: "takes up no water; conductivity is common practice, no source"},
	{Name: "foam glass gravel", Kind: "insulation", Conductivity: 0.08, Density: 150, Capacity: 1000, Source: "common practice, no source", Standing: Assumed, Note: "dry and drained; wet it conducts more"},
	{Name: "loose perlite", Kind: "insulation", Conductivity: 0.05, Density: 90, Capacity: 900, Source: "common practice, no source", Standing: Assumed, Note: damp},
}

// coverings and sheets: Sources: iso10456 table 3 (remembered), cibse-a table 3.36 (seen).
var coverings = []Material{
	{Name: "linoleum", Kind: "covering", Conductivity: 0.17, Density: 1200, Capacity: 1400, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "carpet", Kind: "covering", Conductivity: 0.06, Density: 200, Capacity: 1300, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "asphalt", Kind: "covering", Conductivity: 1.2, Density: 2100, Capacity: 920, Source: "cibse-a: table 3.36, poured", Standing: Seen},
	{Name: "bitumen", Kind: "covering", Conductivity: 0.85, Density: 2400, Capacity: 1000, Source: "cibse-a: table 3.36, flooring", Standing: Seen},
	{Name: "bitumen sheet", Kind: "covering", Conductivity: 0.23, Density: 1100, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "rubber sheet", Kind: "covering", Conductivity: 0.25, Density: 1150, Capacity: 1000, Source: "iso10456: table 3, EPDM", Standing: Remembered},
	{Name: "polyethylene sheet", Kind: "covering", Conductivity: 0.33, Density: 920, Capacity: 2200, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "polycarbonate", Kind: "covering", Conductivity: 0.20, Density: 1200, Capacity: 1200, Source: "iso10456: table 3", Standing: Remembered},
}

// metals: Source: cibse-a table 3.36 (seen).
var metals = []Material{
	{Name: "steel", Kind: "metal", Conductivity: 45, Density: 7800, Capacity: 480, Source: "cibse-a: table 3.36", Standing: Seen},
	{Name: "aluminium", Kind: "metal", Conductivity: 230, Density: 2700, Capacity: 880, Source: "cibse-a: table 3.36", Standing: Seen},
	{Name: "copper", Kind: "metal", Conductivity: 384, Density: 8900, Capacity: 390, Source: "cibse-a: table 3.36", Standing: Seen, Note: "the table prints a density of 8600; copper has about 8900"},
}

// waters: Source: iso10456 table 3 (remembered).
var waters = []Material{
	{Name: "water", Kind: "water", Conductivity: 0.60, Density: 1000, Capacity: 4190, Source: "iso10456: table 3, 10 degC", Standing: Remembered, Note: "still water; in a barrel it turns over and evens its temperature far faster"},
	{Name: "ice", Kind: "water", Conductivity: 2.2, Density: 900, Capacity: 2000, Source: "iso10456: table 3, 0 degC", Standing: Remembered},
	{Name: "settled snow", Kind: "water", Conductivity: 0.23, Density: 300, Capacity: 2000, Source: "iso10456: table 3, 70 to 100 mm", Standing: Remembered, Note: "fresh snow 0.05 W/mK, trodden snow 0.6 W/mK"},
}

// reclaimed is used stuff. Nobody's number exists for these: each is taken over from the
// material it is, or assumed.
var reclaimed = []Material{
	{Name: "reclaimed brick", Kind: "reclaimed", Conductivity: 0.77, Density: 1700, Capacity: 1000, Source: "cibse-a: table 3.1, outer brick", Standing: Assumed, Note: "taken as new brick; old bricks differ from 0.4 to 1.1 W/mK with their density"},
	{Name: "reclaimed timber", Kind: "reclaimed", Conductivity: 0.13, Density: 500, Capacity: 1600, Source: "iso10456: table 3, timber", Standing: Assumed, Note: "taken as new timber"},
	{Name: "reclaimed stone", Kind: "reclaimed", Conductivity: 2.3, Density: 2600, Capacity: 1000, Source: "iso10456: table 3, sedimentary stone", Standing: Assumed, Note: "taken as sandstone; with mortar or earth in the joints it conducts less"},
	{Name: "rubble concrete", Kind: "reclaimed", Conductivity: 1.35, Density: 2000, Capacity: 1000, Source: "iso10456: table 3, concrete of 2000 kg/m3", Standing: Assumed, Note: "broken slabs laid in mortar; loose rubble conducts less"},
	{Name: "earth in tyres", Kind: "reclaimed", Conductivity: 0.91, Density: 1800, Capacity: 1000, Source: "din4108-4: earth of 1800 kg/m3", Standing: Assumed, Note: "taken as the rammed earth inside; the rubber is left out, some 2 cm on each face"},
	{Name: "earth in bags", Kind: "reclaimed", Conductivity: 0.91, Density: 1800, Capacity: 1000, Source: "din4108-4: earth of 1800 kg/m3", Standing: Assumed, Note: "taken as the rammed earth inside"},
	{Name: "bottles in mortar", Kind: "reclaimed", Conductivity: 0.8, Density: 1300, Capacity: 900, Source: "common practice, no source", Standing: Assumed, Note: "glass and mortar around still air: try it from 0.5 to 1.0 W/mK"},
}
