package material

import "slices"

// table is every row. The lists below stand by kind.
var table = slices.Concat(earths, grounds, masonry, concretes, timbers, fibres, insulations, coverings, metals, waters, reclaimed)

// Notes that many rows share.
const (
	damp    = "keep dry: damp insulation conducts more, wet insulation hardly insulates"
	density = "density is not printed: the one that din4108-4 gives earth of this conductivity"
	product = "only density times specific heat is printed; the density is a round one"
)

// earths: Sources: din4108-4 with the German rules for building with earth (remembered),
// and table 14.15 of berge (seen: conductivity and specific heat).
var earths = []Material{
	{Name: "rammed earth", Kind: "earth", Conductivity: 1.1, Density: 2000, Capacity: 1000, Source: "din4108-4: earth of 2000 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "earth 1800", Kind: "earth", Conductivity: 0.91, Density: 1800, Capacity: 1000, Source: "din4108-4: earth of 1800 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "adobe", Kind: "earth", Conductivity: 0.73, Density: 1600, Capacity: 1000, Source: "din4108-4: earth of 1600 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "cob", Kind: "earth", Conductivity: 0.73, Density: 1600, Capacity: 1000, Source: "din4108-4: earth of 1600 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "earth 1400", Kind: "earth", Conductivity: 0.59, Density: 1400, Capacity: 1000, Source: "din4108-4: earth of 1400 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "light earth 1200", Kind: "earth", Conductivity: 0.47, Density: 1200, Capacity: 1000, Source: "din4108-4: earth of 1200 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "light earth 1000", Kind: "earth", Conductivity: 0.35, Density: 1000, Capacity: 1000, Source: "din4108-4: earth of 1000 kg/m3", Standing: Remembered, Note: "air-dry"},
	{Name: "earth with 10 kg/m3 fibre", Kind: "earth", Conductivity: 0.96, Density: 1850, Capacity: 1000, Source: "berge: table 14.15", Standing: Seen, Note: density},
	{Name: "earth with 40 kg/m3 fibre", Kind: "earth", Conductivity: 0.615, Density: 1435, Capacity: 1000, Source: "berge: table 14.15", Standing: Seen, Note: density},
	{Name: "earth with 70 kg/m3 fibre", Kind: "earth", Conductivity: 0.42, Density: 1115, Capacity: 1050, Source: "berge: table 14.15", Standing: Seen, Note: density},
	{Name: "earth plaster", Kind: "earth", Conductivity: 0.91, Density: 1800, Capacity: 1000, Source: "din4108-4: earth of 1800 kg/m3", Standing: Assumed, Note: "taken as earth of its density"},
}

// grounds: Sources: iso13370 table 7 (conductivity and heat per volume, seen as a data file
// that equals it), EN 17522 after VDI 4640 (seen), farouki (seen, spans by moisture).
var grounds = []Material{
	{Name: "clay ground", Kind: "ground", Conductivity: 1.5, Density: 1800, Capacity: 3.0e6 / 1800, Source: "iso13370: table 7", Standing: Seen, Note: product},
	{Name: "sand ground", Kind: "ground", Conductivity: 2.0, Density: 2000, Capacity: 2.0e6 / 2000, Source: "iso13370: table 7", Standing: Seen, Note: product},
	{Name: "rock ground", Kind: "ground", Conductivity: 3.5, Density: 2800, Capacity: 2.0e6 / 2800, Source: "iso13370: table 7", Standing: Seen, Note: product},
	{Name: "dry clay", Kind: "ground", Conductivity: 0.5, Density: 1900, Capacity: 1.55e6 / 1900, Source: "en17522: clay and silt", Standing: Seen},
	{Name: "saturated clay", Kind: "ground", Conductivity: 1.8, Density: 2100, Capacity: 2.4e6 / 2100, Source: "en17522: clay and silt", Standing: Seen, Note: "below the water table"},
	{Name: "moist clay", Kind: "ground", Conductivity: 1.1, Least: 0.9, Most: 1.4, Density: 1600, Capacity: 1250, Source: "farouki: clay of 1600 kg/m3 dry, 5 to 20 % moist", Standing: Seen, Note: "conductivity amid the span; specific heat assumed for 10 % of water"},
	{Name: "dry sand", Kind: "ground", Conductivity: 0.4, Density: 2000, Capacity: 1.45e6 / 2000, Source: "en17522: sand", Standing: Seen},
	{Name: "moist sand", Kind: "ground", Conductivity: 1.4, Density: 2050, Capacity: 1.9e6 / 2050, Source: "en17522: sand", Standing: Seen, Note: "farouki gives 1.4 to 2.9 W/mK for quartz sand of 5 to 20 % moisture"},
	{Name: "saturated sand", Kind: "ground", Conductivity: 2.4, Density: 2100, Capacity: 2.5e6 / 2100, Source: "en17522: sand", Standing: Seen, Note: "below the water table"},
}

// masonry: Sources: iso10456 table 3 (remembered); cibse-a and a published solid wall (bricks);
// gypsum and plasters as iso10456.
var masonry = []Material{
	{Name: "outer brick", Kind: "masonry", Conductivity: 0.77, Density: 1700, Capacity: 1000, Wetting: 10, Source: "cibse-a: table 3.1", Standing: Remembered, Note: "exposed to rain"},
	{Name: "inner brick", Kind: "masonry", Conductivity: 0.56, Density: 1700, Capacity: 1000, Wetting: 10, Source: "cibse-a: table 3.1", Standing: Remembered, Note: "protected from rain"},
	{Name: "hard limestone", Kind: "masonry", Conductivity: 1.7, Density: 2200, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "soft limestone", Kind: "masonry", Conductivity: 1.1, Density: 1800, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "sandstone", Kind: "masonry", Conductivity: 2.3, Density: 2600, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "granite", Kind: "masonry", Conductivity: 2.8, Density: 2600, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "basalt", Kind: "masonry", Conductivity: 3.5, Density: 2850, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "slate", Kind: "masonry", Conductivity: 2.2, Density: 2400, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "clay tile", Kind: "masonry", Conductivity: 1.0, Density: 2000, Capacity: 800, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "ceramic tile", Kind: "masonry", Conductivity: 1.3, Density: 2300, Capacity: 840, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "cement plaster", Kind: "masonry", Conductivity: 1.0, Density: 1800, Capacity: 1000, Wetting: 4, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "lime plaster", Kind: "masonry", Conductivity: 0.8, Density: 1600, Capacity: 1000, Wetting: 4, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "gypsum plaster", Kind: "masonry", Conductivity: 0.57, Density: 1300, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "plasterboard", Kind: "masonry", Conductivity: 0.25, Density: 900, Capacity: 1000, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "glass", Kind: "masonry", Conductivity: 1.05, Density: 2500, Capacity: 840, Source: "cibse-a: table 3.36, soda-lime glass", Standing: Seen, Note: "iso10456 has 1.00 W/mK and 750 J/kgK"},
}

// concretes: Sources: iso10456 table 3 (remembered); one concrete measured at three
// moistures, from a data file of an IEA annex (seen).
var concretes = []Material{
	{Name: "concrete", Kind: "concrete", Conductivity: 2.0, Density: 2400, Capacity: 1000, Wetting: 4, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "concrete 2000", Kind: "concrete", Conductivity: 1.35, Density: 2000, Capacity: 1000, Wetting: 4, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "concrete 1800", Kind: "concrete", Conductivity: 1.15, Density: 1800, Capacity: 1000, Wetting: 4, Source: "iso10456: table 3", Standing: Remembered},
	{Name: "reinforced concrete", Kind: "concrete", Conductivity: 2.3, Density: 2300, Capacity: 1000, Source: "iso10456: table 3, 1 % steel", Standing: Remembered},
	{Name: "reinforced concrete 2 %", Kind: "concrete", Conductivity: 2.5, Density: 2400, Capacity: 1000, Source: "iso10456: table 3, 2 % steel", Standing: Remembered},
	{Name: "dry concrete as measured", Kind: "concrete", Conductivity: 1.16, Density: 2200, Capacity: 840, Source: "iea-moisture-annex: measured concrete", Standing: Seen, Note: "shows what water does: the same concrete at 2 and 6 % follows"},
	{Name: "concrete with 2 % water as measured", Kind: "concrete", Conductivity: 2.24, Density: 2200, Capacity: 890, Source: "iea-moisture-annex: measured concrete", Standing: Seen, Note: "specific heat between the printed ends of 840 and 940"},
	{Name: "concrete with 6 % water as measured", Kind: "concrete", Conductivity: 2.78, Density: 2200, Capacity: 940, Source: "iea-moisture-annex: measured concrete", Standing: Seen},
}
