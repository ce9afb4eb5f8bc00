package reuse

// What every sheet of this package says where it fits.
var (
	greyCaution  = "Greywater carries germs: it touches no leaf, stem or root that is eaten raw; feed it below the surface, wash what grew there, and cook it where in doubt. Water from a toilet never goes to a bed with food."
	childCaution = "Children play with what is wet: cover gravel, trap and well so that nobody reaches the water, and lock the well's lid. Nobody enters a pit alone."
	rinseCaution = "A bed under a roof that is fed only from below gathers salt about its roots: rinse it from above with rainwater until it drains, monthly, and measure the soil's salinity yearly."
	stillCaution = "Greywater kept for more than a day turns foul, and drained water goes stale in days: pump a stale well out to the septic tank, rinse it, and wear gloves."
	localCaution = "Local code decides whether greywater may be used at all, where, and how it is marked; the drinking-water pipe needs an air gap to it. A licensed person signs."
)

// A Bedding is what a bed is for and what feeds it, for Warnings.
type Bedding struct {
	RawFood  bool // a leaf or root that is eaten raw grows in it
	Food     bool // anything to be eaten
	Sprayed  bool // the water reaches the surface or the plants above it
	Toilet   bool // water from a toilet feeds it
	Children bool // live in or visit the house
}

// Warnings gives what a bed's owner has to be told, the gravest first, and whether the bed must not be built so.
func Warnings(b Bedding) (say []string, refused bool) {
	if b.Toilet && b.Food {
		say, refused = append(say, "Water from a toilet feeds a bed with food: it must go to the septic tank."), true
	}
	if b.RawFood {
		say = append(say, "What grows here is eaten raw: keep greywater off its leaves and roots, or grow fruit on stems, ornamentals or what is cooked.")
	}
	if b.Sprayed {
		say = append(say, "Greywater reaches the surface or is sprayed: its droplets carry germs to lungs and leaves. Feed it into the gravel.")
	}
	if b.Children {
		say = append(say, childCaution)
	}
	return append(say, greyCaution, localCaution), refused
}
