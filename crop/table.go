package crop

// fao and its like are the places that groups of figures come from.
var (
	fao      = From{"fao56: table 12, edition of 1998", Quoted}
	faoMind  = From{"fao56: table 12, edition of 1998", Remembered}
	revised  = From{"fao56-2025: table 6.1", Quoted}
	days     = From{"fao56: table 11", Quoted}
	daysMind = From{"fao56: table 11", Remembered}
	deep     = From{"fao56: table 22", Quoted}
	deepMind = From{"fao56: table 22", Remembered}
	maas     = From{"maas-1990: table of herbaceous crops", Seen}
	doorenb  = From{"fao33: table 24", Remembered}
	knott    = From{"knott-1997: growing temperatures", Seen}
	knottOf  = From{"knott-1997: growing temperatures", Remembered}
	sown     = From{"harrington-1954: table", Seen}
	warmSoil = From{"texas-soil: least and realistic soil temperatures", Seen}
	keeps    = From{"knott-1997: seed life", Seen}
	mates    = From{"seed-saving-2025: selfing and crossing crops", Seen}
	food     = From{"usda-sr: raw, per 100 g", Remembered}
	bears    = From{"fao33: good commercial yield under irrigation", Remembered}
	usual    = From{"", Practice}
	lit      = From{"light-needs: leafy from 12, tomato 20 to 30 mol/m2d", Seen}
)

// c turns a temperature as Knott's handbook prints it, in °F.
func c(fahrenheit float64) float64 { return (fahrenheit - 32) / 1.8 }

func air(base, upper, least Figure, best [2]float64, most float64) Temperatures {
	return Temperatures{Base: base, Upper: upper, Least: c(least.Value), BestLow: c(best[0]), BestHigh: c(best[1]), Most: c(most), From: least.From}
}

func practice(v float64) Figure { return Figure{v, usual} }
func read(v float64) Figure     { return Figure{v, knott} }
func recalled(v float64) Figure { return Figure{v, knottOf} }

// upper is where more warmth stops helping: 32 degC seen for cucurbits, taken for the other warm crops as well.
var (
	warmTop = Figure{32, From{"degree-day-files: cucurbits", Quoted}}
	tenBase = Figure{10, From{"degree-day-files: tomato and cucurbits", Quoted}}
	top     = practice(32)
	coolTop = practice(30)
)

// All lists the crops.
func All() []Crop {
	return []Crop{
		tomato(), pepper(), cucumber(), zucchini(), winterSquash(), greenBean(),
		lettuce(), spinach(), carrot(), radish(), onion(), potato(),
	}
}

func tomato() Crop {
	return Crop{
		Name: "tomato", Eats: Fruit, Planted: true,
		Stages: Stages{30, 40, 45, 30, daysMind}, Kc: Kc{0.60, 1.15, 0.80, fao}, // end 0.70 to 0.90
		Height: Figure{0.6, faoMind}, Roots: Range{0.7, 1.5, deep}, Depletion: Figure{0.40, deep},
		Salt: Tolerance{2.5, 9.9, maas}, Ky: Figure{1.05, doorenb},
		Air:   tender(air(tenBase, top, read(65), [2]float64{70, 75}, 80)),
		Light: Range{20, 30, lit}, Maturity: Range{70, 90, From{"transplant-table: days and yield", Seen}}, Picks: practice(0.65),
		Sprouts: &Germination{[9]float64{0, 0, 82, 98, 98, 97, 83, 46, 0}, [9]float64{0, 0, 43, 14, 8, 6, 6, 9, 0}, sown},
		Soil:    sowingAt(50, 55),
		Seed: Seed{Keeps: Figure{4, keeps}, True: true, Mates: "it pollinates itself", Weight: practice(3), Distance: Range{0.5, 0.8, usual},
			From: mates},
		Yield: Range{2.0, 8.0, usual}, Usual: Figure{5.0, bears}, Edible: Figure{0.91, food}, Energy: Figure{180, From{"usda-sr: FDC 170457", Quoted}},
		Nitrogen: Figure{1.4, food}, Residue: practice(0.7), Straw: practice(3),
	}
}

func pepper() Crop {
	return Crop{
		Name: "sweet pepper", Eats: Fruit, Planted: true,
		Stages: Stages{30, 35, 40, 20, daysMind}, Kc: Kc{0.60, 1.05, 0.90, fao},
		Height: Figure{0.7, faoMind}, Roots: Range{0.5, 1.0, deep}, Depletion: Figure{0.30, deep},
		Salt: Tolerance{1.5, 14, maas}, Ky: Figure{1.10, doorenb},
		Air:   tender(air(practice(10), top, read(65), [2]float64{70, 75}, 80)),
		Light: Range{20, 30, usual}, Maturity: Range{60, 90, From{"transplant-table: days and yield", Seen}}, Picks: practice(0.7),
		Sprouts: &Germination{[9]float64{0, 0, 1, 70, 96, 98, 95, 70, 0}, [9]float64{0, 0, 0, 25, 13, 8, 8, 9, 0}, sown},
		Seed: Seed{Keeps: Figure{2, keeps}, True: true, Hybrids: true, Mates: "it pollinates itself, though insects cross it with hot peppers nearby",
			Weight: practice(6.5), Distance: Range{0.45, 0.6, usual}, From: mates},
		Yield: Range{1.0, 3.5, usual}, Usual: Figure{2.0, bears}, Edible: Figure{0.82, food}, Energy: Figure{260, From{"usda-sr: FDC 170108, sweet red; other releases 310", Quoted}},
		Nitrogen: Figure{1.6, food}, Residue: practice(0.8), Straw: practice(4),
	}
}

func cucumber() Crop {
	return Crop{
		Name: "cucumber", Eats: Fruit,
		Stages: Stages{20, 30, 40, 15, days}, Kc: Kc{0.60, 1.00, 0.75, fao},
		Height: Figure{0.3, faoMind}, Roots: Range{0.7, 1.2, deep}, Depletion: Figure{0.50, deep},
		Salt: Tolerance{2.5, 13, maas}, Ky: practice(1.0),
		Air:   tender(air(tenBase, warmTop, read(60), [2]float64{65, 75}, 90)),
		Light: Range{20, 30, usual}, Maturity: Range{50, 70, From{"transplant-table: days and yield", Seen}}, Picks: practice(0.5),
		Sprouts: &Germination{[9]float64{0, 0, 0, 95, 99, 99, 99, 99, 49}, [9]float64{0, 0, 0, 13, 6, 4, 3, 3, 0}, sown},
		Soil:    sowingAt(60, 64),
		Seed: Seed{Keeps: Figure{5, keeps}, Insects: true, Hybrids: true, Mates: "insects cross it with any other cucumber; some kinds set without pollen",
			Weight: practice(25), Distance: Range{0.3, 1.2, usual}, From: mates},
		Yield: Range{1.2, 6.0, usual}, Usual: practice(2.5), Edible: Figure{0.97, food}, Energy: Figure{150, food},
		Nitrogen: Figure{1.0, food}, Residue: practice(0.6), Straw: practice(4),
	}
}

func zucchini() Crop {
	return Crop{
		Name: "zucchini", Eats: Fruit,
		Stages: Stages{25, 35, 25, 15, days}, Kc: Kc{0.50, 0.95, 0.75, fao}, Revised: &Kc{0.50, 1.00, 0.70, revised},
		Height: Figure{0.3, faoMind}, Roots: Range{0.6, 1.0, deep}, Depletion: Figure{0.50, deep},
		Salt: Tolerance{4.7, 9.4, maas}, Ky: practice(1.0),
		Air:   tender(air(tenBase, warmTop, read(50), [2]float64{65, 75}, 90)),
		Light: Range{20, 30, usual}, Maturity: Range{50, 60, From{"transplant-table: days and yield", Seen}}, Picks: practice(0.5),
		Sprouts: squashSprouts(),
		Soil:    sowingAt(60, 70),
		Seed: Seed{Keeps: Figure{4, keeps}, Insects: true, Mates: "insects cross it with every squash of its species, acorn squash among them",
			Weight: practice(130), Distance: Range{0.8, 1.0, usual}, From: mates},
		Yield: Range{1.5, 6.0, usual}, Usual: practice(3.0), Edible: Figure{0.95, food}, Energy: Figure{170, food},
		Nitrogen: Figure{1.9, food}, Residue: practice(0.8), Straw: practice(4),
	}
}

// squashSprouts stands between two sources: Harrington's table as seen has no squash, so the cucumber, its nearest
// kin there, lends its row; the extension tables give 60 °F as least for both.
func squashSprouts() *Germination {
	g := *cucumber().Sprouts
	g.From = From{"harrington-1954: table, the cucumber's row, as its kin", Worked}
	return &g
}

func winterSquash() Crop {
	return Crop{
		Name: "winter squash", Eats: Fruit,
		Stages: Stages{20, 30, 30, 20, days}, Kc: Kc{0.50, 1.00, 0.80, fao}, Revised: &Kc{0.50, 0.95, 0.70, revised},
		Height: Figure{0.4, faoMind}, Roots: Range{1.0, 1.5, deep}, Depletion: Figure{0.35, deep},
		Salt: Tolerance{3.2, 16, From{"maas-1990: table of herbaceous crops, scallop squash", Seen}}, Ky: practice(1.0),
		Air:   tender(air(tenBase, warmTop, read(50), [2]float64{65, 75}, 90)),
		Light: Range{20, 30, usual}, Maturity: Range{75, 100, From{"transplant-table: days and yield", Seen}}, Picks: practice(1),
		Sprouts: squashSprouts(),
		Soil:    sowingAt(60, 75),
		Seed: Seed{Keeps: Figure{4, keeps}, Insects: true, Mates: "insects cross it with every squash of its species",
			Weight: practice(200), Distance: Range{1.0, 1.5, usual}, From: mates},
		Yield: Range{1.0, 4.0, usual}, Usual: practice(2.0), Edible: Figure{0.71, food}, Energy: Figure{340, food},
		Nitrogen: Figure{1.5, food}, Residue: practice(0.8), Straw: practice(4),
	}
}

func greenBean() Crop {
	return Crop{
		Name: "green bean", Eats: Pod,
		Stages: Stages{20, 30, 30, 10, daysMind}, Kc: Kc{0.50, 1.05, 0.90, faoMind}, Revised: &Kc{0.50, 1.05, 0.95, revised},
		Height: Figure{0.4, faoMind}, Roots: Range{0.5, 0.7, deep}, Depletion: Figure{0.45, deep},
		Salt: Tolerance{1.0, 19, maas}, Ky: Figure{1.15, doorenb},
		Air:   tender(air(practice(10), top, read(50), [2]float64{60, 70}, 80)),
		Light: Range{15, 25, usual}, Maturity: Range{48, 60, usual}, Picks: practice(0.65),
		Sprouts: &Germination{[9]float64{0, 0, 1, 97, 90, 97, 47, 39, 0}, [9]float64{0, 0, 0, 16, 11, 8, 6, 6, 0}, sown},
		Soil:    sowingAt(0, 72),
		Seed: Seed{Keeps: Figure{3, keeps}, True: true, Mates: "it pollinates itself",
			Weight: practice(300), Distance: Range{0.1, 0.5, usual}, From: mates},
		Yield: Range{0.6, 2.0, usual}, Usual: practice(1.2), Edible: Figure{0.88, food}, Energy: Figure{310, food},
		Nitrogen: Figure{2.9, food}, Residue: practice(1.2), Straw: practice(4),
	}
}
