package garden

import "suffice/crop"

// A Chore is something to do for a crop.
type Chore struct {
	When, What string
	Caution    string // "" where nothing can go wrong for a person
}

const poisonCaution = "Brews of tobacco are poison: nicotine goes through the skin and a mouthful can kill. Make none, keep none, and never spray one on food. What is sold for the purpose is under law; follow its label."

// Chores lists what a crop asks for, in the order of its season.
func Chores(c *crop.Crop, indoors bool) []Chore {
	list := []Chore{startChore(c)}
	if c.Sprouts != nil && !c.Planted {
		list = append(list, Chore{When: "when the second pair of leaves is out",
			What: "thin to the distance it wants, cutting at the soil so as not to tear the neighbour's roots"})
	}
	list = append(list, pollination(c, indoors)...)
	list = append(list, pests(indoors)...)
	if c.Sprouts != nil {
		list = append(list, keeping(c))
	}
	return list
}

func startChore(c *crop.Crop) Chore {
	switch {
	case c.Sprouts == nil:
		return Chore{When: "six weeks before planting", What: "lay tubers in the light to sprout, plant them whole",
			Caution: "Green tubers and shoots are poisonous: do not eat them."}
	case c.Planted:
		return Chore{When: "six to eight weeks before setting out", What: "sow in trays in the warm, harden the seedlings for a week before they go out"}
	}
	return Chore{When: "on its day", What: "sow in damp soil, two or three times its own thickness deep",
		Caution: "Bought seed may be coated with poison: wash the hands, do not eat what is left over."}
}

func pollination(c *crop.Crop, indoors bool) []Chore {
	switch {
	case !indoors:
		return nil
	case c.Seed.Insects:
		return []Chore{{When: "each morning of flowering", What: "no insects come: pick a fresh male flower and paint its pollen on the stigma of the female ones, which have a small fruit behind them"}}
	case c.Eats == crop.Fruit:
		return []Chore{{When: "each noon of flowering", What: "no wind comes: shake or tap the trusses so that pollen falls"}}
	}
	return nil
}

func pests(indoors bool) []Chore {
	list := []Chore{
		{When: "twice a week", What: "look under leaves; pick off caterpillars, snails and leaves that are ill"},
		{When: "when lice or mites are seen", What: "hose them off; then plain soft soap, 10 to 20 mL in a litre of water, on the undersides in the evening; rinse next day",
			Caution: poisonCaution},
	}
	if indoors {
		return append(list, Chore{When: "when whitefly are seen", What: "hang yellow sticky cards; let ladybirds, lacewings or parasitic wasps loose; open the vents"})
	}
	return append(list, Chore{When: "before they are seen", What: "a net against moths and birds; a board to lift at noon for the snails under it; beds moved each year by family"})
}

func keeping(c *crop.Crop) Chore {
	says := "seed to keep? " + c.BreedsTrue()
	if c.Seed.Insects {
		says += "; for true seed bag a female and a male flower the evening before they open, paint, bag again and tag the stem"
	}
	return Chore{When: "at the end", What: says, Caution: "Squash and cucumber from crossed seed can be bitter: spit out and throw away what tastes bitter, it is poisonous."}
}
