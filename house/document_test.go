package house

import (
	"flag"
	"os"
	"reflect"
	"strings"
	"testing"

	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

var update = flag.Bool("update", false, "write docs/house-file.md anew")

func TestDocumentIsFresh(t *testing.T) {
	const path = "../docs/house-file.md"
	want := Document()
	if *update {
		if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("%s is stale: run  go test ./house -run Fresh -update", path)
	}
}

// Every key says what it means, can be written from its example, and its default is sourced
// and within its limits.
func TestKeysAreWholeAndConsistent(t *testing.T) {
	for _, k := range Keys() {
		if k.Says == "" {
			t.Errorf("%s does not say what it means", k.Path)
		}
		if (k.Default == "") != (k.Source == "") {
			t.Errorf("%s: default %q from %q: neither stands without the other", k.Path, k.Default, k.Source)
		}
		if k.Needs && k.Default != "" {
			t.Errorf("%s is needed and has a default", k.Path)
		}
		if k.Kind == Group || k.Kind == List || k.Kind == YesNo && k.Example == "" {
			continue
		}
		if k.Kind != Count && k.Kind != Word && k.Default == "" && k.Example == "" {
			t.Errorf("%s has no example", k.Path)
		}
		for _, text := range []string{k.Example, k.Default} {
			if text == "" {
				continue
			}
			if says := scalar(&k, text, fieldOf(k.Path)); says != "" {
				t.Errorf("%s: %q of the tag is refused: %s", k.Path, text, says)
			}
		}
	}
}

// fieldOf gives a fresh field of the type that a path stands for.
func fieldOf(path string) reflect.Value {
	at := reflect.TypeFor[File]()
	for part := range strings.SplitSeq(path, ".") {
		name, isList := strings.CutSuffix(part, "[]")
		for _, k := range keysOf(at) {
			if k.Name == name {
				at = bare(at.Field(k.index).Type)
				break
			}
		}
		if isList {
			at = at.Elem()
		}
	}
	return reflect.New(at).Elem()
}

// Limits and defaults that repeat those of a part are the same.
func TestTagsAgreeWithTheParts(t *testing.T) {
	tag := make(map[string]Key)
	for _, k := range Keys() {
		tag[k.Path] = k
	}
	for path, most := range map[string]int{"people.uses": people.MostUses, "people.visitors": people.MostDates, "people.away": people.MostDates,
		"water.roofs": water.MostRoofs, "water.tanks": water.MostTanks, "water.treatment": water.MostStages, "power.loads": power.MostLoads} {
		if k := tag[path]; k.count() != most {
			t.Errorf("%s: at most %s by the tag, %d by the part", path, k.Most, most)
		}
	}
	for path, value := range map[string]float64{
		"water.roofs[].wetting": float64(water.UsualWetting), "power.arrays[].noct": float64(power.UsualNOCT), "power.arrays[].power_coefficient": power.UsualCoefficient,
		"power.arrays[].soiling": power.UsualSoiling, "power.arrays[].mismatch": power.UsualMismatch, "power.arrays[].wiring": power.UsualWiring,
		"power.arrays[].ageing": power.UsualAgeing, "power.could_above": power.UsualCouldAbove, "power.generator.charger": power.UsualCharger,
	} {
		k := tag[path]
		if v, err := quantity.ReadIn(k.Default, k.Unit); err != nil || v != value {
			t.Errorf("%s: default %s by the tag, %g by the part (%v)", path, k.Default, value, err)
		}
	}
	if k := tag["power.loads[].waits"]; limit(&k, k.Most) != power.MostWait {
		t.Errorf("a load waits at most %s by the tag, %d days by the part", k.Most, power.MostWait)
	}
	for _, word := range tag["water.roofs[].surface"].Choices {
		if surface(word).Usual <= 0 {
			t.Errorf("surface %s has no coefficient", word)
		}
	}
	for _, kind := range tag["power.battery.kind"].Choices {
		if _, ok := power.ChemistryNamed(kind); !ok || floors[kind] == 0 {
			t.Errorf("battery kind %s is not known to the part, or has no usual floor", kind)
		}
	}
}

func TestNoKeyIsDeclaredTwice(t *testing.T) {
	seen := make(map[string]bool)
	for _, k := range Keys() {
		if seen[k.Path] {
			t.Errorf("%s is declared twice", k.Path)
		}
		seen[k.Path] = true
	}
}
