package house

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
)

// A member is one key of a JSON object, and its value. Members keep their order, so that
// editors offer keys as this package declares them.
type member struct {
	name  string
	value any
}

type members []member

// MarshalJSON writes the members in their order.
func (m members) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, one := range m {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := json.Marshal(one.name)
		if err != nil {
			return nil, err
		}
		value, err := plainJSON(one.value)
		if err != nil {
			return nil, err
		}
		b.Write(name)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// plainJSON writes & and < as themselves: the schema goes to editors, not into a page.
func plainJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// Schema gives the house file as a JSON Schema (draft 2020-12), made from the same tags that
// the program reads by, for editors that complete and underline. It refuses nothing that
// Read takes. What two values say against each other, units of the wrong kind and limits of
// quantities are for Read alone.
func Schema() []byte {
	schema := append(members{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "house file"},
		{"description", fmt.Sprintf("A house that supplies itself, as suffice reads it, format %d. Quantities are written with their unit: 40 kL, 180 m2, 21 degC.", Newest)},
	}, groupSchema("", allKeys())...)
	text, err := plainJSON(schema)
	if err != nil {
		panic(fmt.Sprintf("house: schema: %v", err))
	}
	var b bytes.Buffer
	if err := json.Indent(&b, text, "", "  "); err != nil {
		panic(fmt.Sprintf("house: schema: %v", err))
	}
	b.WriteByte('\n')
	return b.Bytes()
}

// groupSchema describes the keys that stand directly under a path.
func groupSchema(path string, keys []Key) members {
	var properties members
	needed := []string{}
	for i := range keys {
		k := &keys[i]
		rest, inside := strings.CutPrefix(k.Path, path)
		if !inside || strings.ContainsAny(rest, ".[") {
			continue
		}
		properties = append(properties, member{k.Name, k.schema(keys)})
		if k.Needs {
			needed = append(needed, k.Name)
		}
	}
	out := members{{"type", "object"}, {"properties", properties}, {"additionalProperties", false}}
	if len(needed) > 0 {
		out = append(out, member{"required", needed})
	}
	return out
}

// schema describes one key with all that is inside it.
func (k *Key) schema(keys []Key) members {
	out := members{{"description", k.description()}}
	switch {
	case k.Kind == Group:
		out = append(out, groupSchema(k.Path+".", keys)...)
	case k.Of == Group:
		out = append(out, member{"type", "array"}, member{"maxItems", k.count()}, member{"items", groupSchema(k.Path+"[].", keys)})
	case k.Kind == List:
		out = append(out, member{"type", "array"}, member{"maxItems", k.count()}, member{"uniqueItems", true}, member{"items", k.valueSchema(k.Of)})
	default:
		out = append(out, k.valueSchema(k.Kind)...)
		if k.Default != "" {
			out = append(out, member{"default", k.plain(k.Default)})
		}
		if k.Example != "" {
			out = append(out, member{"examples", []any{k.plain(k.Example)}})
		}
	}
	return out
}

// description says in words what a schema cannot hold a value to.
func (k *Key) description() string {
	says := k.Says
	if k.Kind == Written {
		says += "; written as " + k.Form
	}
	if k.Kind != List && k.limits() != "" {
		says += "; " + k.limits()
	}
	if k.Default != "" {
		says += fmt.Sprintf("; left out: %s (%s)", k.Default, k.Source)
	}
	return says
}

// plain gives a text as the value that YAML makes of it.
func (k *Key) plain(text string) any {
	if n := json.Number(text); plainNumber.MatchString(text) && (k.Kind == Number || k.Kind == Count) {
		return n
	}
	return text
}

// valueSchema says how one value of a kind is written.
func (k *Key) valueSchema(kind Kind) members {
	switch kind {
	case Quantity:
		return pattern(aNumber + `[^0-9.,].*$`)
	case Number:
		return members{{"anyOf", []members{k.numeric("number"), pattern(aNumber + `\s*%?\s*$`)}}}
	case Count:
		return members{{"anyOf", []members{k.numeric("integer"), pattern(`^\s*[-+]?[0-9]+\s*$`)}}}
	case YesNo:
		return members{{"enum", []any{"yes", "no", true, false}}}
	case Word:
		return members{{"enum", k.Choices}}
	case Written:
		return pattern(k.pattern)
	case Text:
		return members{{"type", []string{"string", "number", "boolean"}}}
	}
	panic(fmt.Sprintf("house: %s is no single value", kind))
}

// aNumber begins whatever begins with a number: 40, -3.5, 1e3.
const aNumber = `^\s*[-+−]?[0-9.]+([eE][-+]?[0-9]+)?`

func pattern(p string) members { return members{{"type", "string"}, {"pattern", p}} }

// numeric is a number without a unit, within the limits of its key.
func (k *Key) numeric(kind string) members {
	out := members{{"type", kind}}
	if k.Least != "" {
		out = append(out, member{"minimum", limit(k, k.Least)})
	}
	if k.Most != "" {
		out = append(out, member{"maximum", limit(k, k.Most)})
	}
	return out
}
