package cli

import (
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"suffice/site/weather/files"
)

// TestFetchVerb fetches two years from a server on this machine that cuts them from a
// recorded file, and reads back what was written.
func TestFetchVerb(t *testing.T) {
	file, err := os.Open("../site/weather/files/testdata/power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	z, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	all, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	head, rows, _ := strings.Cut(string(all), "-END HEADER-\n")
	names, rows, _ := strings.Cut(rows, "\n")
	asked := 0
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		asked++
		year := r.URL.Query().Get("start")[:4]
		fmt.Fprint(w, strings.Replace(head, "01/01/1984 through 12/31/2020", "01/01/"+year+" through 12/31/"+year, 1), "-END HEADER-\n", names, "\n")
		for row := range strings.Lines(rows) {
			if strings.HasPrefix(row, year) {
				fmt.Fprint(w, row)
			}
		}
	}))
	defer server.Close()
	folder := t.TempDir()
	out := filepath.Join(folder, "crete.csv.gz")
	args := []string{"weather", "fetch", "--latitude=35.0309", "--longitude=24.8335", "--from=2019", "--to=2020",
		"--base=" + server.URL, "--cache=" + filepath.Join(folder, "years"), "--out=" + out}
	for _, want := range []string{"2 years fetched, 0 kept", "0 years fetched, 2 kept"} {
		var printed, said bytes.Buffer
		if status := Run(context.Background(), args, Streams{Out: &printed, Err: &said, Width: 80}); status != Suffices || !strings.Contains(said.String(), want) || printed.Len() != 0 {
			t.Fatalf("status %d: %s%s", status, said.String(), printed.String())
		}
	}
	r, err := files.Open(out, files.Options{})
	if err != nil || r.Steps != 365+366 || asked != 2 {
		t.Errorf("%v: %+v, %d questions", err, r, asked)
	}
}
