package cli

import (
	"bufio"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"suffice/examples"
)

// The pages are there as soon as their address is told, and end without a fault when asked to.
func TestOpenServesUntilItIsAskedToEnd(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(path, examples.RoofAndTank, 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out, told := io.Pipe()
	status := make(chan int, 1)
	go func() { status <- Run(ctx, []string{"open", path}, Streams{Out: told, Err: io.Discard, Width: 80}) }()
	address, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	address = strings.TrimSpace(address)
	if !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Errorf("the address is %q, want one of this machine alone", address)
	}
	answer, err := http.Get(address + "water")
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(answer.Body)
	if err != nil || answer.StatusCode != http.StatusOK || !strings.Contains(string(page), "Rain from a roof is not drinking water") {
		t.Errorf("the page of water answers %d, %v, without its caution", answer.StatusCode, err)
	}
	if err := answer.Body.Close(); err != nil {
		t.Error(err)
	}
	stop()
	if got := <-status; got != Suffices {
		t.Errorf("it ends with %d, want %d", got, Suffices)
	}
	if again, err := http.Get(address); err == nil {
		_ = again.Body.Close()
		t.Error("it still answers after it has ended")
	}
}

func TestOtherMachinesAreKeptOut(t *testing.T) {
	for address, says := range map[string]string{
		"0.0.0.0:8080": "needs a password", "192.168.1.4:80": "needs a password", ":8080": "needs a password", "[::]:80": "needs a password",
		"house.example:80": "needs a password", "8080": "write HOST:PORT", "127.0.0.1:port": "is no port", "127.0.0.1:70000": "is no port",
	} {
		if err := loopbackOnly(address); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want a sentence with %q", address, err, says)
		}
	}
	for _, address := range []string{"127.0.0.1:0", "localhost:8080", "[::1]:0", "127.1.2.3:80"} {
		if err := loopbackOnly(address); err != nil {
			t.Errorf("%s is refused: %v", address, err)
		}
	}
}
