// Package words finds the known word nearest to a mistyped one.
//
// Checked against: the distances between kitten and sitting (3) and between
// saturday and sunday (3), the worked examples of the usual textbooks on the
// edit distance of Levenshtein (1966).
package words

import "strings"

// Nearest gives the known word with the least edit distance, the first of equals;
// "" if none is known. Case does not count.
func Nearest(word string, known []string) string {
	best, least := "", -1
	for _, k := range known {
		if d := Distance(strings.ToLower(word), strings.ToLower(k)); least < 0 || d < least {
			best, least = k, d
		}
	}
	return best
}

// Distance counts the letters to add, drop or change that turn a into b.
func Distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, r := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j, s := range to {
			change := diagonal
			if r != s {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
