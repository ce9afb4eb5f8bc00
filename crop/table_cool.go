package crop

func tender(t Temperatures) Temperatures { t.Tender = true; return t }

func lettuce() Crop {
	return Crop{
		Name: "lettuce", Eats: Leaf,
		Stages: Stages{20, 30, 15, 10, days}, Kc: Kc{0.70, 1.00, 0.95, fao},
		Height: Figure{0.3, faoMind}, Roots: Range{0.3, 0.5, deep}, Depletion: Figure{0.30, deep},
		Salt: Tolerance{1.3, 13, maas}, Ky: practice(1.0),
		Air:   air(practice(4.5), coolTop, read(45), [2]float64{60, 65}, 75),
		Light: Range{12, 17, lit}, Maturity: Range{45, 80, usual}, Picks: practice(1),
		Sprouts: &Germination{[9]float64{98, 98, 98, 99, 99, 99, 12, 0, 0}, [9]float64{49, 15, 7, 4, 3, 2, 3, 0, 0}, sown},
		Soil:    sowingAt(35, 45),
		Seed: Seed{Keeps: Figure{6, keeps}, True: true, Mates: "it pollinates itself", Weight: practice(1.1), Distance: Range{0.25, 0.3, usual},
			From: mates},
		Yield: Range{1.0, 4.0, usual}, Usual: practice(2.0), Edible: Figure{0.95, food}, Energy: Figure{150, food},
		Nitrogen: Figure{2.2, food}, Residue: practice(0.2), Straw: practice(2.5),
	}
}

func spinach() Crop {
	return Crop{
		Name: "spinach", Eats: Leaf,
		Stages: Stages{20, 20, 20, 5, daysMind}, Kc: Kc{0.70, 1.00, 0.95, faoMind},
		Height: Figure{0.3, faoMind}, Roots: Range{0.3, 0.5, deep}, Depletion: Figure{0.20, deep},
		Salt: Tolerance{2.0, 7.6, maas}, Ky: practice(1.0),
		Air:   air(practice(3), coolTop, read(40), [2]float64{60, 65}, 75),
		Light: Range{12, 17, lit}, Maturity: Range{37, 50, usual}, Picks: practice(0.8),
		Sprouts: &Germination{[9]float64{83, 96, 91, 82, 52, 28, 32, 0, 0}, [9]float64{63, 23, 12, 7, 6, 5, 6, 0, 0}, sown},
		Soil:    sowingAt(35, 45),
		Seed: Seed{Keeps: Figure{3, keeps}, Mates: "wind carries its pollen, and its plants are mostly male or female: let several of each stand, of one variety",
			Weight: practice(10), Distance: Range{0.08, 0.25, usual}, From: mates},
		Yield: Range{0.5, 2.0, usual}, Usual: practice(1.0), Edible: Figure{0.72, food}, Energy: Figure{230, food},
		Nitrogen: Figure{4.6, food}, Residue: practice(0.2), Straw: practice(4),
	}
}

func carrot() Crop {
	return Crop{
		Name: "carrot", Eats: Root,
		Stages: Stages{20, 30, 30, 20, daysMind}, Kc: Kc{0.70, 1.05, 0.95, faoMind},
		Height: Figure{0.3, faoMind}, Roots: Range{0.5, 1.0, deepMind}, Depletion: Figure{0.35, deepMind},
		Salt: Tolerance{1.0, 14, maas}, Ky: practice(1.0),
		Air:   air(practice(4), coolTop, recalled(45), [2]float64{60, 65}, 75),
		Light: Range{12, 20, usual}, Maturity: Range{60, 85, usual}, Picks: practice(1),
		Sprouts: &Germination{[9]float64{0, 48, 93, 95, 96, 96, 95, 74, 0}, [9]float64{0, 51, 17, 10, 7, 6, 6, 9, 0}, sown},
		Soil:    sowingAt(35, 45),
		Seed: Seed{Keeps: Figure{3, keeps}, Biennial: true, Mates: "insects cross it with any other carrot, wild ones too",
			Weight: practice(1.2), Distance: Range{0.05, 0.3, usual}, From: mates},
		Yield: Range{1.5, 6.0, usual}, Usual: practice(3.5), Edible: Figure{0.89, food}, Energy: Figure{410, food},
		Nitrogen: Figure{1.5, food}, Residue: practice(0.4), Straw: practice(4),
	}
}

func radish() Crop {
	return Crop{
		Name: "radish", Eats: Root,
		Stages: Stages{5, 10, 15, 5, daysMind}, Kc: Kc{0.70, 0.90, 0.85, faoMind},
		Height: Figure{0.3, faoMind}, Roots: Range{0.3, 0.5, deepMind}, Depletion: Figure{0.30, deepMind},
		Salt: Tolerance{1.2, 13, maas}, Ky: practice(1.0),
		Air:   air(practice(4.5), coolTop, recalled(40), [2]float64{60, 65}, 75),
		Light: Range{12, 17, usual}, Maturity: Range{22, 30, usual}, Picks: practice(1),
		Sprouts: &Germination{[9]float64{0, 42, 76, 97, 95, 97, 95, 0, 0}, [9]float64{0, 29, 11, 6, 4, 4, 3, 0, 0}, sown},
		Soil:    sowingAt(40, 0),
		Seed: Seed{Keeps: Figure{5, keeps}, Mates: "insects cross it with any other radish", Weight: practice(10), Distance: Range{0.05, 0.15, usual},
			From: mates},
		Yield: Range{0.8, 2.5, usual}, Usual: practice(1.5), Edible: Figure{0.9, food}, Energy: Figure{160, food},
		Nitrogen: Figure{1.1, food}, Residue: practice(0.5), Straw: practice(3.5),
	}
}

func onion() Crop {
	return Crop{
		Name: "onion", Eats: Bulb,
		Stages: Stages{15, 25, 70, 40, daysMind}, Kc: Kc{0.70, 1.05, 0.75, faoMind},
		Height: Figure{0.4, faoMind}, Roots: Range{0.3, 0.6, deepMind}, Depletion: Figure{0.30, deepMind},
		Salt: Tolerance{1.2, 16, maas}, Ky: Figure{1.10, doorenb},
		Air:   air(practice(4), coolTop, recalled(45), [2]float64{55, 75}, 85),
		Light: Range{12, 20, usual}, Maturity: Range{100, 150, usual}, Picks: practice(1),
		Sprouts: &Germination{[9]float64{90, 98, 98, 98, 99, 97, 91, 73, 2}, [9]float64{136, 31, 13, 7, 5, 4, 4, 13, 0}, sown},
		Seed: Seed{Keeps: Figure{1, keeps}, Biennial: true, Hybrids: true, Mates: "insects cross it with any other onion",
			Weight: practice(3.8), Distance: Range{0.1, 0.25, usual}, From: mates},
		Yield: Range{2.0, 6.0, usual}, Usual: Figure{4.0, bears}, Edible: Figure{0.9, food}, Energy: Figure{400, food},
		Nitrogen: Figure{1.8, food}, Residue: practice(0.15), Straw: practice(3),
	}
}

func potato() Crop {
	return Crop{
		Name: "potato", Eats: Root, Planted: true,
		Stages: Stages{25, 30, 45, 30, daysMind}, Kc: Kc{0.50, 1.15, 0.75, faoMind},
		Height: Figure{0.6, faoMind}, Roots: Range{0.4, 0.6, deepMind}, Depletion: Figure{0.35, deepMind},
		Salt: Tolerance{1.7, 12, maas}, Ky: Figure{1.10, doorenb},
		Air:   tender(air(practice(7), coolTop, recalled(45), [2]float64{60, 65}, 75)),
		Light: Range{15, 25, usual}, Maturity: Range{90, 130, usual}, Picks: practice(1),
		Seed:  Seed{Keeps: practice(1), True: true, Mates: "a tuber is the same plant", Weight: practice(50000), Distance: Range{0.3, 0.7, usual}, From: usual},
		Yield: Range{1.5, 4.5, usual}, Usual: Figure{3.0, bears}, Edible: practice(0.85), Energy: Figure{770, food},
		Nitrogen: Figure{3.3, food}, Residue: practice(0.3), Straw: practice(4),
	}
}
