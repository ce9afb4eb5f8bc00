package garden

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// An Animal is one kind of small stock, per head.
type Animal struct {
	Name     string
	Water    float64 // L/d in mild weather
	Feed     float64 // kg/d as given
	Protein  float64 // g per kg of feed
	Eggs     float64 // a day, mean of the year
	Milk     float64 // L/d, mean of the year
	Honey    float64 // kg/d, mean of the year
	Manure   float64 // kg/d fresh
	Standing string  // how the figures are known
}

const (
	perProtein = 6.25  // g of protein for each g of nitrogen, all but milk
	perMilk    = 6.38  // the same in milk
	eggWeight  = 0.060 // kg with shell (common practice, no source)
	eggEaten   = 0.88  // share of an egg that is not shell (usda-sr, from memory)
	eggProtein = 126.0 // g/kg without shell (usda-sr, from memory)
	milkWeight = 1.03  // kg/L
	goatMilk   = 35.6  // g of protein per kg (usda-sr, from memory)

	mild, hot = 20.0, 35.0 // degC; at hot, animals drink about twice what they do when it is mild (common practice, no source)
)

// Hen is a layer of a mixed flock: 250 eggs a year.
func Hen() Animal {
	return Animal{Name: "hen", Water: 0.25, Feed: 0.115, Protein: 165, Eggs: 250 / daysPerYear, Manure: 0.12, Standing: "common practice, no source"}
}

// Goat is a doe that milks 280 days a year at 2.5 L.
func Goat() Animal {
	return Animal{Name: "goat", Water: 7, Feed: 2.2, Protein: 140, Milk: 2.5 * 280 / daysPerYear, Manure: 2, Standing: "common practice, no source"}
}

// Hive is a colony of bees with 15 kg of honey to spare, which it is fed back in part as 10 kg of sugar.
func Hive() Animal {
	return Animal{Name: "hive", Water: 0.3, Feed: 10 / daysPerYear, Honey: 15 / daysPerYear, Standing: "common practice, no source"}
}

// Stock is the animals of a house.
type Stock struct{ Hens, Goats, Hives int }

// Faults says what is wrong with the numbers.
func (s Stock) Faults() error {
	var faults []error
	for _, n := range []struct {
		of string
		is int
	}{{"hens", s.Hens}, {"goats", s.Goats}, {"hives", s.Hives}} {
		if n.is < 0 {
			faults = append(faults, fmt.Errorf("stock: %d %s: the least is 0", n.is, n.of))
		}
	}
	return errors.Join(faults...)
}

// A StockDay is what animals took and gave.
type StockDay struct {
	Water                    quantity.Litres
	Feed                     float64 // kg
	Eggs, Milk, Honey        float64 // pieces, L, kg
	Manure                   float64 // kg
	FeedN, ProductN, ManureN float64 // g of nitrogen
}

// Day gives a day of the animals at a mean temperature of the air.
//
// FeedN = ProductN + ManureN: grown animals keep their weight. Pasture, scraps they pick and young are left out.
func (s Stock) Day(air quantity.Celsius) StockDay {
	var d StockDay
	hens, goats, hives := Hen(), Goat(), Hive()
	hens.add(&d, s.Hens, float64(air))
	goats.add(&d, s.Goats, float64(air))
	hives.add(&d, s.Hives, float64(air))
	d.ManureN = d.FeedN - d.ProductN
	return d
}

func (a *Animal) add(d *StockDay, heads int, air float64) {
	n := float64(heads)
	d.Water += quantity.Litres(n * a.Water * thirst(air))
	d.Feed += n * a.Feed
	d.Eggs += n * a.Eggs
	d.Milk += n * a.Milk
	d.Honey += n * a.Honey
	d.Manure += n * a.Manure
	d.FeedN += n * a.Feed * a.Protein / perProtein
	d.ProductN += n * (a.Eggs*eggWeight*eggEaten*eggProtein/perProtein + a.Milk*milkWeight*goatMilk/perMilk)
}

// thirst gives how much more animals drink in heat: once when mild, twice when hot and above.
func thirst(air float64) float64 { return 1 + min(1, max(0, (air-mild)/(hot-mild))) }

// StockCautions are told with any animals.
func StockCautions() []string {
	return []string{
		"Fresh manure carries germs: compost it, and let four months pass between fresh manure and the harvest of what is eaten raw.",
		"Raw milk can make people ill: heat it. Wash hands after the henhouse; children under five should not handle hens.",
		"Keeping of hens, goats and bees is under local law; bee stings can kill those who are allergic.",
	}
}
