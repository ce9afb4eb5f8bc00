package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"mime"
	"net/http"
	"path"
	"strings"

	"suffice/draw/canvas"
)

//go:embed static
var static embed.FS

// assets are the files that pages ask for. Each is served under a name that carries its
// checksum, so that a browser may keep it for ever and never shows an old one.
type assets struct {
	Look, Quick, Record, Chart string // addresses: style, script of forms and pictures, script of the record, its chart
	files                      map[string][]byte
}

func newAssets() (*assets, error) {
	a := &assets{files: make(map[string][]byte)}
	var err error
	read := func(name string) []byte {
		text, fault := static.ReadFile("static/" + name)
		if err == nil {
			err = fault
		}
		return text
	}
	a.Look = a.add("look.css", []byte(canvas.Colours()+canvas.Rules()+string(read("uplot-1.6.32.css"))+string(read("look.css"))))
	a.Quick = a.add("quick.js", []byte(string(read("quick.js"))+"\n// walk lets the arrow keys go through the pictures that are there now.\nfunction walk() {\n"+canvas.Script+"}\nwalk();\n"))
	a.Record = a.add("record.js", read("record.js"))
	a.Chart = a.add("chart.js", read("uplot-1.6.32.min.js"))
	if err != nil {
		return nil, fmt.Errorf("a file of the pages is missing: %w", err)
	}
	return a, nil
}

// add takes a file in and gives its address: look.css becomes /static/look-1a2b3c4d5e6f.css.
func (a *assets) add(name string, text []byte) string {
	sum := sha256.Sum256(text)
	kind := path.Ext(name)
	full := strings.TrimSuffix(name, kind) + "-" + hex.EncodeToString(sum[:6]) + kind
	a.files[full] = text
	return "/static/" + full
}

func (a *assets) serve(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	text, known := a.files[name]
	if !known {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", mime.TypeByExtension(path.Ext(name)))
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	_, _ = w.Write(text) // a reader that has gone is no fault
}
