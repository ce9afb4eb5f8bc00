package house

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"suffice/quantity"
)

// longest is the most letters a text may have; notes are for people, not for novels.
const longest = 300

// scalar reads one value as a person wrote it and holds it against its limits.
// It says what is wrong, or "".
func scalar(k *Key, text string, into reflect.Value) string {
	text = strings.TrimSpace(text)
	switch kind := k.Kind; kind {
	case Written:
		return into.Addr().Interface().(written).read(text)
	case YesNo:
		v, ok := yesNo[text]
		into.SetBool(v)
		if !ok {
			return fmt.Sprintf("%q is neither yes nor no: write yes or no", short(text))
		}
	case Count:
		return count(k, text, into)
	case Quantity, Number:
		return number(k, text, into)
	case Word:
		if !slices.Contains(k.Choices, text) {
			return fmt.Sprintf("%q is not known here: the nearest known is %q; it is one of %s",
				short(text), nearest(text, k.Choices), strings.Join(k.Choices, ", "))
		}
		into.SetString(text)
	case Text:
		if says := badText(text); says != "" {
			return says
		}
		into.SetString(text)
	default:
		panic(fmt.Sprintf("house: %s is no single value", kind))
	}
	return ""
}

var yesNo = map[string]bool{"yes": true, "no": false, "true": true, "false": false}

func badText(text string) string {
	switch n := len([]rune(text)); {
	case n == 0:
		return "is an empty text: write something, or leave the key out"
	case n > longest:
		return fmt.Sprintf("has %d letters: the most is %d", n, longest)
	case strings.ContainsFunc(text, func(c rune) bool { return c < ' ' || c == 0x7f }):
		return "runs over more than one line: keep it on one"
	}
	return ""
}

// What other readers of the language take for another number than the person meant:
// 012 for ten, 1_000 for a thousand, 0x10 for sixteen.
var (
	leadingZero = regexp.MustCompile(`^[+-]?0[0-9]`)
	underscored = regexp.MustCompile(`^[+-]?[0-9][0-9.]*_`)
	otherBase   = regexp.MustCompile(`^[+-]?0[xXoObB]`)
	plainNumber = regexp.MustCompile(`^[+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?$`)
)

// trap says how a number could be misread, or "".
func trap(text string) string {
	switch {
	case leadingZero.MatchString(text):
		return fmt.Sprintf("%q begins with 0 and could be misread: write the number without it", short(text))
	case underscored.MatchString(text):
		return fmt.Sprintf("%q has a mark between its digits: write the digits alone", short(text))
	case otherBase.MatchString(text):
		return fmt.Sprintf("%q is not a decimal number: write it in tens", short(text))
	}
	return ""
}

func count(k *Key, text string, into reflect.Value) string {
	if says := trap(text); says != "" {
		return says
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		return fmt.Sprintf("%q is not a whole number: write for example %s", short(text), orElse(k.Example, "2"))
	}
	into.SetInt(int64(n))
	return outside(k, float64(n), text)
}

func number(k *Key, text string, into reflect.Value) string {
	if says := trap(text); says != "" {
		return says
	}
	if k.Kind == Quantity && plainNumber.MatchString(text) {
		return fmt.Sprintf("%s has no unit: write it with one, for example %s", short(text), k.Example)
	}
	v, err := quantity.ReadIn(text, k.Unit)
	if err != nil {
		return fmt.Sprintf("%s; here for example %s", err, k.Example)
	}
	into.SetFloat(v)
	return outside(k, v, text)
}

// outside says which limit a value passes, or "".
func outside(k *Key, v float64, text string) string {
	if k.Least != "" && v < limit(k, k.Least) {
		return fmt.Sprintf("%s is too small: the least is %s", short(text), k.Least)
	}
	if k.Most != "" && v > limit(k, k.Most) {
		return fmt.Sprintf("%s is too large: the most is %s", short(text), k.Most)
	}
	return ""
}

func limit(k *Key, text string) float64 {
	v, err := quantity.ReadIn(text, k.Unit)
	if err != nil {
		panic(fmt.Sprintf("house: limit of %s: %v", k.Name, err))
	}
	return v
}

func orElse(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
