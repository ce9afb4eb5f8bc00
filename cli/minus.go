package cli

import (
	"regexp"
	"slices"
	"strings"
)

var negative = regexp.MustCompile(`^-\.?[0-9]`)

// negatives lets a person write --longitude -122.2, and suffice set FILE PATH "-4 degC": the
// parser would take what begins with a minus for a flag. No flag of ours begins with a digit.
func negatives(args []string) []string {
	var out, last []string
	for i, word := range args {
		switch {
		case word == "--":
			return slices.Concat(out, args[i:])
		case !negative.MatchString(word):
			out = append(out, word)
		case i > 0 && strings.HasPrefix(args[i-1], "--") && !strings.Contains(args[i-1], "="):
			out[len(out)-1] += "=" + word
		default:
			last = append(last, word)
		}
	}
	if len(last) > 0 {
		out = append(append(out, "--"), last...)
	}
	return out
}
