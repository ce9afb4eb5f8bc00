package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"suffice/internal/check/table"
	"suffice/internal/mutants"
)

const head = `<!-- Made from the tests by go run ./internal/check/gen. Do not edit: edit the tests, or docs/checks. -->

# Checks

What the numbers of suffice were held against. Every line is a test: it fails when our result lies farther from the
printed number than the column *allowed* says, which is half a unit of the last printed digit unless a reason is given.
The keys are explained in [SOURCES.md](SOURCES.md). The program shows the same rows: ` + "`suffice checks`" + `.

`

// page gives CHECKS.md.
func page(r reading, broken []mutants.Mutant, fragments []string) string {
	var b strings.Builder
	b.WriteString(head)
	packages := packagesOf(r)
	summary(&b, r, packages)
	for _, p := range packages {
		section(&b, r, p)
	}
	mutantTable(&b, broken)
	for _, f := range fragments {
		b.WriteString("\n" + f + "\n")
	}
	return b.String()
}

func packagesOf(r reading) []string {
	var names []string
	for _, row := range r.rows {
		names = append(names, row.Package)
	}
	for _, law := range r.laws {
		names = append(names, law.Package)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// summary says what the standings mean and counts the rows of each in every package.
func summary(b *strings.Builder, r reading, packages []string) {
	words := table.Standings()
	for _, w := range words {
		fmt.Fprintf(b, "- *%s*: %s\n", w, table.Meaning(w))
	}
	fmt.Fprintf(b, "- *law*: a balance, limit or symmetry that needs no book\n\n| package | %s | laws |\n|---|%s---:|\n",
		strings.Join(words, " | "), strings.Repeat("---:|", len(words)))
	for _, p := range append(packages, "") {
		name := p
		if p == "" {
			name = "**all**"
		}
		fmt.Fprintf(b, "| %s |", name)
		for _, w := range words {
			fmt.Fprintf(b, " %d |", count(r.rows, func(row table.Row) bool { return row.Standing == w && (p == "" || row.Package == p) }))
		}
		fmt.Fprintf(b, " %d |\n", count(r.laws, func(l Law) bool { return p == "" || l.Package == p }))
	}
}

func count[T any](all []T, is func(T) bool) int {
	n := 0
	for _, one := range all {
		if is(one) {
			n++
		}
	}
	return n
}

// section shows the rows and laws of one package.
func section(b *strings.Builder, r reading, pkg string) {
	fmt.Fprintf(b, "\n## %s\n\n", pkg)
	first := true
	for _, row := range r.rows {
		if row.Package != pkg {
			continue
		}
		if first {
			b.WriteString("| source | where | printed | unit | allowed | standing | reason |\n|---|---|---:|---|---:|---|---|\n")
			first = false
		}
		cells(b, row.Source, row.At, row.Printed, row.Unit, threeDigits(row.Allowed), row.Standing, row.Why)
	}
	first = true
	for _, law := range r.laws {
		if law.Package != pkg {
			continue
		}
		if first {
			b.WriteString("\nLaws:\n\n")
			first = false
		}
		fmt.Fprintf(b, "- %s", law.Name)
		if law.Says != "" {
			fmt.Fprintf(b, ": %s", law.Says)
		}
		b.WriteByte('\n')
	}
}

// threeDigits prints a bound without an exponent, unless it is very small.
func threeDigits(v float64) string {
	short := strconv.FormatFloat(v, 'g', 3, 64)
	if v < 1e-6 {
		return short
	}
	rounded, _ := strconv.ParseFloat(short, 64) // it was printed a line above
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// mutantTable lists the faults that are made on purpose and must be noticed.
func mutantTable(b *strings.Builder, broken []mutants.Mutant) {
	b.WriteString("\n## Faults made on purpose\n\nEach of these lines is broken in turn, and the tests named must fail.\n\n" +
		"| file | before | after | tests | what it would do |\n|---|---|---|---|---|\n")
	for _, m := range broken {
		cells(b, m.File, code(m.Before), code(m.After), strings.TrimPrefix(m.Test, "./"), m.Why)
	}
}

// code sets program text as such; several lines become one.
func code(text string) string { return "`" + strings.Join(strings.Fields(text), " ") + "`" }

// cells writes one row of a table.
func cells(b *strings.Builder, texts ...string) {
	for _, t := range texts {
		b.WriteString("| " + strings.NewReplacer("|", `\|`, "\n", " ").Replace(t) + " ")
	}
	b.WriteString("|\n")
}
