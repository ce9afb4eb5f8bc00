package house

import (
	"fmt"
	"strings"
)

// introduction stands above the tables of docs/house-file.md.
const introduction = `# The house file

One YAML file describes a house. This page is made from the same declarations that the
program reads files by (package house), so it cannot say anything else than the program does.

- **Units are written**: ` + "`40 kL`, `180 m2`, `12 kWh/d`, `21 degC`" + `. Any unit of the same kind
  will do. A bare number where a unit is needed is refused. Shares are ` + "`0.35` or `35 %`" + `.
- **Parts left out do not exist.** A file with a roof and a tank is a whole house; the program then
  speaks of water only. A value left out takes its default, or is said to be missing.
- **Nothing is passed over**: an unknown key, a key that stands twice, a value outside its limits and parts that
  contradict each other are refused, all at once, each as ` + "`FILE:LINE:COLUMN: where: what is wrong, and the remedy`" + `.
- Lists begin each entry with a dash, or stand in brackets. A text that has a comma inside braces or
  brackets, or a colon, stands in quotes. There is no need for YAML's tags, anchors and several documents.
- Azimuths count from north, east positive: 90 deg is east, 180 deg south, 270 deg west. Slopes count from level.
- The file is at most 1 MB, its lists and groups at most 32 deep.

` + "`suffice check --defaults FILE`" + ` lists every default that a file leans on, with its source.
` + "`suffice set FILE water.tanks[0].holds \"50 kL\"`" + ` changes one value and no other byte, lists counted from 0; ` + "`--undo`" + ` takes it back.

[house.schema.json](house.schema.json), which ` + "`suffice schema`" + ` prints, is the same as a JSON Schema (draft 2020-12): an editor that is
pointed to it offers the keys and underlines what is misspelt.

A default marked "this program's choice" or "common practice, no source" has no published source behind it.

`

// Document gives docs/house-file.md: every key with its unit, limits, default and meaning.
func Document() string {
	var b strings.Builder
	b.WriteString(introduction)
	keys := Keys()
	table(&b, "", "The top of the file", keys)
	for _, k := range keys {
		switch {
		case k.Kind == Group:
			table(&b, k.Path+".", k.Path, keys)
		case k.Of == Group:
			table(&b, k.Path+"[].", fmt.Sprintf("%s, a list of at most %s", k.Path, k.Most), keys)
		}
	}
	return b.String()
}

// table writes the keys that stand directly under a path.
func table(b *strings.Builder, path, title string, keys []Key) {
	fmt.Fprintf(b, "## %s\n\n| key | written | limits | when left out | meaning |\n|---|---|---|---|---|\n", title)
	for _, k := range keys {
		rest, inside := strings.CutPrefix(k.Path, path)
		if !inside || strings.ContainsAny(rest, ".[") {
			continue
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %s | %s |\n", k.Name, k.writing(), k.limits(), k.absence(), cell(k.Says))
	}
	b.WriteString("\n")
}

// writing says how the value is written.
func (k *Key) writing() string {
	switch k.Kind {
	case Word:
		return "`" + strings.Join(k.Choices, "`, `") + "`"
	case YesNo:
		return "`yes`, `no`"
	case Written:
		return cell(k.Form)
	case Group:
		return "a group"
	case List:
		if k.Of == Group {
			return "a list of groups"
		}
		if k.Of == Word {
			return "a list of `" + strings.Join(k.Choices, "`, `") + "`"
		}
		return "a list: `" + k.Example + "`"
	}
	return "`" + orElse(k.Example, k.Default) + "`"
}

func (k *Key) limits() string {
	switch {
	case k.Kind == List:
		return "at most " + k.Most
	case k.Least != "" && k.Most != "":
		return k.Least + " to " + k.Most
	case k.Least != "":
		return "at least " + k.Least
	}
	return ""
}

func (k *Key) absence() string {
	switch {
	case k.Default != "":
		return cell(fmt.Sprintf("%s (%s)", k.Default, k.Source))
	case k.Needs:
		return "**needed**"
	}
	return "-"
}

// cell keeps a text from ending its cell.
func cell(text string) string { return strings.ReplaceAll(text, "|", "\\|") }
