package web

import (
	"bytes"
	"compress/gzip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"

	"suffice/examples"
	"suffice/sheets"
)

// void lists the elements that HTML closes by itself.
var void = []string{"meta", "link", "input", "br", "hr", "img"}

// A tag is an element of a page as it was opened.
type tag struct {
	name  string
	attrs map[string]string
}

// read gives the elements of a page and everything that is wrong with how they stand in each other.
func read(page string) (tags []tag, faults []string) {
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.Entity = false, xml.HTMLEntity
	var open []string
	for {
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return tags, append(faults, err.Error())
		}
		switch token := token.(type) {
		case xml.StartElement:
			one := tag{token.Name.Local, map[string]string{}}
			for _, a := range token.Attr {
				if _, twice := one.attrs[a.Name.Local]; twice && a.Name.Space == "" {
					faults = append(faults, fmt.Sprintf("<%s> has %s twice", one.name, a.Name.Local))
				}
				one.attrs[a.Name.Local] = a.Value
			}
			tags = append(tags, one)
			if !slices.Contains(void, one.name) {
				open = append(open, one.name)
			}
		case xml.EndElement:
			last := len(open) - 1
			switch {
			case slices.Contains(void, token.Name.Local): // written <meta/>, which is read as both
			case last < 0 || open[last] != token.Name.Local:
				return tags, append(faults, fmt.Sprintf("</%s> closes %v", token.Name.Local, open))
			default:
				open = open[:last]
			}
		}
	}
	if len(open) > 0 {
		faults = append(faults, fmt.Sprintf("left open: %v", open))
	}
	return tags, faults
}

// hold holds a page to what every page must be; it gives the addresses that it leads to.
func hold(page string) (links, faults []string) {
	tags, faults := read(page)
	wrong := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	ids, labelled, count := map[string]bool{}, map[string]bool{}, map[string]int{}
	for _, t := range tags {
		count[t.name]++
		if id, has := t.attrs["id"]; has {
			if ids[id] {
				wrong("the id %q stands twice", id)
			}
			ids[id] = true
		}
		if t.name == "label" {
			labelled[t.attrs["for"]] = true
		}
	}
	level := 0
	for _, t := range tags {
		if _, has := t.attrs["style"]; has {
			wrong("<%s> has a style written into it", t.name)
		}
		if len(t.name) == 2 && t.name[0] == 'h' && t.name[1] >= '1' && t.name[1] <= '6' {
			if next := int(t.name[1] - '0'); next > level+1 {
				wrong("<%s> follows a heading of level %d", t.name, level)
			}
			level = int(t.name[1] - '0')
		}
		for name, value := range t.attrs {
			switch {
			case strings.HasPrefix(name, "on"):
				wrong("<%s> has a script written into it: %s", t.name, name)
			case slices.Contains([]string{"describedby", "labelledby", "aria-describedby", "aria-labelledby"}, name) || t.name == "label" && name == "for":
				if !ids[value] {
					wrong("%s of <%s> names %q, which is not there", name, t.name, value)
				}
			case (name == "href" || name == "src" || name == "action") && value != "data:," && !strings.HasPrefix(value, "#"):
				if !strings.HasPrefix(value, "/") || strings.HasPrefix(value, "//") {
					wrong("<%s> leads elsewhere: %s", t.name, value)
				}
				if name != "action" {
					links = append(links, value)
				}
			}
		}
		if (t.name == "input" && t.attrs["type"] != "hidden" || t.name == "select") && !labelled[t.attrs["id"]] {
			wrong("<%s name=%q> has no label", t.name, t.attrs["name"])
		}
	}
	for _, name := range []string{"h1", "main", "title", "header", "footer"} {
		if count[name] != 1 && name != "title" || count[name] == 0 {
			wrong("%d <%s>, want one", count[name], name)
		}
	}
	if count["style"] > 0 {
		wrong("a <style> is written into the page")
	}
	return links, faults
}

// forScript is what a page hands to its script, places and all.
var forScript = regexp.MustCompile(`data-(value|date)="[^"]*"`)

var missingKey = regexp.MustCompile(`\[[a-z_]+(\.[a-z0-9_]+)*\]|\{[a-z]+\}|%!`)

// Every page that a reader can come to from the first is whole, and so are its scripts and styles.
func TestEveryPageIsWhole(t *testing.T) {
	for name, text := range map[string][]byte{"demo.yaml": examples.Demo, "roof-and-tank.yaml": examples.RoofAndTank} {
		s, err := New(Options{Name: name, Text: text, Prove: prove})
		if err != nil {
			t.Fatal(err)
		}
		seen, asked, waiting := map[string]bool{"/": true}, map[string]int{}, []string{"/", "/nowhere"}
		for len(waiting) > 0 {
			path := waiting[0]
			waiting = waiting[1:]
			w := get(t, s, path)
			if want := map[bool]int{true: http.StatusNotFound, false: http.StatusOK}[path == "/nowhere"]; w.Code != want {
				t.Errorf("%s %s answers %d, want %d", name, path, w.Code, want)
			}
			if !strings.HasPrefix(w.Header().Get("Content-Type"), "text/html") {
				continue
			}
			links, faults := hold(w.Body.String())
			for _, f := range faults {
				t.Errorf("%s %s: %s", name, path, f)
			}
			if found := missingKey.FindString(forScript.ReplaceAllString(w.Body.String(), "")); found != "" {
				t.Errorf("%s %s shows %s", name, path, found)
			}
			for _, link := range links {
				kind, _, asks := strings.Cut(link, "?") // days and hours lead to each other for ever: six of a kind will do
				if asks && asked[kind] >= 6 {
					continue
				}
				if !seen[link] {
					asked[kind]++
					seen[link] = true
					waiting = append(waiting, link)
				}
			}
		}
		if len(seen) < 60 {
			t.Errorf("%s: only %d addresses were found", name, len(seen))
		}
	}
}

// A page without the data of its pictures is small enough for a slow line.
func TestPagesAreSmall(t *testing.T) {
	s := reading(t)
	for _, path := range []string{"/", "/year", "/water", "/power", "/warmth", "/garden", "/waste", "/hour", "/sheets", "/sheets/tank-steps", "/change?part=power"} {
		total := 0
		page := get(t, s, path).Body.String()
		for _, link := range append(regexp.MustCompile(`/static/[^"]+`).FindAllString(page, -1), path) {
			total += packed(t, get(t, s, link).Body.Bytes())
		}
		if total > 150<<10 {
			t.Errorf("%s and what it asks for have %d bytes compressed, want at most 150 kB", path, total)
		}
	}
}

func packed(t *testing.T, text []byte) int {
	t.Helper()
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	if _, err := z.Write(text); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}

// Every sheet answers by its form alone, and every figure's sheets are those of the table.
func TestEverySheetHasAForm(t *testing.T) {
	s := reading(t)
	for _, sh := range sheets.All() {
		page := get(t, s, "/sheets/"+sh.Name).Body.String()
		for _, in := range sh.Inputs {
			if !strings.Contains(page, ` name="`+in.Name+`"`) {
				t.Errorf("%s has no field for %s", sh.Name, in.Name)
			}
		}
		if strings.Contains(page, s.say.Say("sheet.unworked")) {
			t.Errorf("%s is not worked with its defaults", sh.Name)
		}
	}
}
