package water

import (
	"fmt"
	"strings"
)

// A Pathogen is a group of germs for which barriers are credited.
type Pathogen int

// The groups of the guidelines.
const (
	Bacteria Pathogen = iota
	Viruses
	Protozoa
	Pathogens // how many groups there are
)

// String names the group.
func (p Pathogen) String() string { return [...]string{"bacteria", "viruses", "protozoa"}[p] }

// A Credit is a figure for each group, as powers of ten of what is held back or killed.
type Credit [Pathogens]float64

// A Barrier is a stage of treatment with what publications credit it with. Low is what it does when it is run
// badly or by the day's average water, High what it can do at its best: only Low is to be counted on.
type Barrier struct {
	Name      string
	Low, High Credit
	Powered   bool   // does nothing without power
	Stands    string // "key: place" of the figures, and whether they were seen
}

const (
	gdwqLarge = "who-gdwq-4: table 7.7, as transcribed"
	gdwqHouse = "who-gdwq-4: table 7.8, from memory"
	hijnen    = "hijnen-2006: review, as transcribed"
	microrisk = "microrisk: table 4.11, as transcribed"
)

// Barriers gives the stages known. A dash in a source, which is no figure, is no credit here.
func Barriers() []Barrier {
	return []Barrier{
		{"clarification", Credit{0.2, 0.1, 1}, Credit{2, 3.4, 2}, false, gdwqLarge},
		{"granular", Credit{0.2, 0, 0.4}, Credit{4.4, 3.5, 3.3}, false, gdwqLarge},
		{"precoat", Credit{0.2, 1, 3}, Credit{2.3, 1.7, 6.7}, false, gdwqLarge},
		{"slow-sand", Credit{2, 0.25, 0.3}, Credit{6, 4, 5}, false, gdwqLarge},
		{"roughing", Credit{0.2, 0, 0}, Credit{2.3, 0, 0}, false, gdwqLarge},
		{"storage", Credit{0.7, 0, 1.4}, Credit{2.2, 0, 2.3}, false, gdwqLarge},
		{"bank", Credit{2, 2.1, 1}, Credit{6, 8.3, 2}, false, gdwqLarge},
		{"wetland", Credit{0.5, 0, 0}, Credit{3, 0, 0}, false, "nrmmc-2006: subsurface wetland, as transcribed"},
		{"microfiltration", Credit{0, 0, 2.3}, Credit{4.3, 3.7, 6}, false, microrisk},
		{"ultrafiltration", Credit{5.5, 2.69, 5.3}, Credit{6, 5.14, 6.5}, false, microrisk},
		{"uv-20", Credit{4.6, 2, 2.4}, Credit{6, 3.1, 3}, true, hijnen},
		{"uv-40", Credit{4.6, 4.1, 2.5}, Credit{6, 5.9, 3}, true, hijnen},
		{"boiling", Credit{6, 6, 6}, Credit{9, 9, 9}, false, gdwqHouse},
		{"chlorine", Credit{3, 3, 3}, Credit{6, 6, 5}, false, gdwqHouse + "; not for Cryptosporidium"},
		{"ceramic", Credit{2, 1, 4}, Credit{6, 4, 6}, false, gdwqHouse},
		{"household-sand", Credit{1, 0.5, 2}, Credit{3, 2, 4}, false, gdwqHouse},
		{"solar", Credit{3, 2, 2}, Credit{5, 4, 4}, false, gdwqHouse},
		{"household-uv", Credit{3, 2, 3}, Credit{5, 5, 5}, true, gdwqHouse},
		{"fabric", Credit{1, 0, 0}, Credit{2, 0, 1}, false, gdwqHouse},
		{"settling", Credit{}, Credit{0.5, 0.5, 1}, false, gdwqHouse},
	}
}

// BarrierNamed gives the stage of that name; "slow sand filtration" is "slow-sand".
func BarrierNamed(name string) (Barrier, error) {
	plain := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), " ", "-")
	short := strings.TrimSuffix(strings.TrimSuffix(plain, "-filtration"), "-filter")
	all := Barriers()
	names := make([]string, len(all))
	for i, b := range all {
		if b.Name == plain || b.Name == short {
			return b, nil
		}
		names[i] = b.Name
	}
	return Barrier{}, fmt.Errorf("stage %q is not known: it is one of %s", name, strings.Join(names, ", "))
}

// spoken are words by which people call stages, each with the barrier of least credit that is called so.
var spoken = []struct{ word, barrier string }{
	{"slow sand", "slow-sand"}, {"sand", "household-sand"}, {"ultraviolet", "household-uv"}, {"uv", "household-uv"}, {"ceramic", "ceramic"},
	{"ultrafilt", "ultrafiltration"}, {"microfilt", "microfiltration"}, {"boil", "boiling"}, {"chlorin", "chlorine"}, {"cloth", "fabric"},
	{"settling", "settling"}, {"wetland", "wetland"},
}

// BarrierIn gives the barrier that a stage's name in plain words speaks of, "ultraviolet lamp" or "slow sand filter"; false for a
// word that names none, such as a sediment filter or charcoal: they are credited with nothing.
func BarrierIn(name string) (Barrier, bool) {
	if b, err := BarrierNamed(name); err == nil {
		return b, true
	}
	plain := strings.ToLower(name)
	for _, s := range spoken {
		if whole(plain, s.word) {
			b, err := BarrierNamed(s.barrier)
			return b, err == nil
		}
	}
	return Barrier{}, false
}

// whole reports whether a word begins somewhere in a text, not in the middle of another.
func whole(text, word string) bool {
	at := strings.Index(text, word)
	return at == 0 || at > 0 && strings.ContainsRune(" -_(/", rune(text[at-1]))
}

// A Train is what barriers in a row are credited with together. Logs add where each stage meets what the one
// before let through; germs that escape one stage for a reason may escape the next for the same.
type Train struct {
	Low, High Credit
	Powerless Credit   // Low without the stages that need power
	Governing Pathogen // the group with the lowest Low; of equals the first
}

// InRow adds barriers up.
func InRow(stages []Barrier) Train {
	var t Train
	for _, b := range stages {
		for p := range Pathogens {
			t.Low[p] += b.Low[p]
			t.High[p] += b.High[p]
			if !b.Powered {
				t.Powerless[p] += b.Low[p]
			}
		}
	}
	for p := range Pathogens {
		if t.Low[p] < t.Low[t.Governing] {
			t.Governing = p
		}
	}
	return t
}

// The targets of who-household-2011, from memory.
var (
	highlyProtective = Credit{4, 5, 4}
	protective       = Credit{2, 3, 2}
)

// Reaches gives the words of who-household-2011 for what the credits reach in every group. It speaks of credits
// from publications, never of the water in the glass.
func (c Credit) Reaches() string {
	switch {
	case c.atLeast(highlyProtective):
		return "credits of the highly protective class"
	case c.atLeast(protective):
		return "credits of the protective class"
	}
	return "below the protective class"
}

func (c Credit) atLeast(d Credit) bool {
	for p := range Pathogens {
		if c[p] < d[p] {
			return false
		}
	}
	return true
}

// A Cartridge is a filter that is thrown away.
type Cartridge struct {
	Litres float64 // that its maker rates it for; 0: not rated
	Dirt   float64 // g that it holds before it clogs; 0: not rated
}

// Lasts gives the days until the first of both is used up, and whether dirt decides, for litres a day of water with
// so many mg/L of dirt. Rated for neither, it lasts until its pressure says otherwise: false.
func (k Cartridge) Lasts(perDay, dirt float64) (days float64, byDirt, rated bool) {
	if k.Litres > 0 {
		days, rated = k.Litres/perDay, true
	}
	if k.Dirt > 0 && dirt > 0 {
		if d := 1000 * k.Dirt / (perDay * dirt); !rated || d < days {
			return d, true, true
		}
	}
	return days, false, rated
}

// Turnover gives the days that litres last, which is also the mean age of a mixed store that is fed as it is drawn.
func Turnover(held, perDay float64) float64 { return held / perDay }

// Dose gives mL of hypochlorite of a strength in % (weight by volume) that bring litres to mg/L of free chlorine.
func Dose(litres, milligrams, strength float64) float64 {
	return litres * milligrams / (10 * strength) // 1 % is 10 mg/mL
}
