package web

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"

	"suffice/draw"
	"suffice/draw/section"
)

//go:embed text/en.json
var englishText []byte

// A catalogue is everything the pages say, by key. A sentence has places for what is put in,
// such as {days}; a counted one has the forms "one" and "other".
type catalogue struct {
	sentences map[string]sentence
	draws     draw.Sentences // what pictures say
	sections  draw.Sentences // what the section of the house says
}

type sentence struct{ One, Other string }

// UnmarshalJSON reads a plain sentence or one with forms.
func (s *sentence) UnmarshalJSON(text []byte) error {
	if len(text) > 0 && text[0] == '"' {
		return json.Unmarshal(text, &s.Other)
	}
	var forms struct{ One, Other *string }
	if err := json.Unmarshal(text, &forms); err != nil {
		return err
	}
	if forms.One == nil || forms.Other == nil {
		return fmt.Errorf("%s: a counted sentence has the forms one and other", text)
	}
	s.One, s.Other = *forms.One, *forms.Other
	return nil
}

func english() (*catalogue, error) {
	c := &catalogue{}
	if err := json.Unmarshal(englishText, &c.sentences); err != nil {
		return nil, fmt.Errorf("text/en.json cannot be read: %w", err)
	}
	var err error
	if c.draws, err = draw.English(); err != nil {
		return nil, err
	}
	c.sections, err = section.English()
	return c, err
}

// Say gives a sentence with what is put in, written as pairs of place and value. A key that the
// catalogue lacks is given in brackets, so that it is seen.
func (c *catalogue) Say(key string, pairs ...any) string {
	s, known := c.sentences[key]
	if !known {
		return "[" + key + "]"
	}
	return fill(s.Other, pairs)
}

// Count gives the form of a sentence that fits a number, which stands in the place {n}.
func (c *catalogue) Count(key string, n int, pairs ...any) string {
	s, known := c.sentences[key]
	if !known {
		return "[" + key + "]"
	}
	text := s.Other
	if n == 1 && s.One != "" {
		text = s.One
	}
	return fill(text, append([]any{"n", grouped(float64(n))}, pairs...))
}

func fill(text string, pairs []any) string {
	for i := 0; i+1 < len(pairs); i += 2 {
		text = strings.ReplaceAll(text, fmt.Sprintf("{%v}", pairs[i]), fmt.Sprint(pairs[i+1]))
	}
	return text
}
