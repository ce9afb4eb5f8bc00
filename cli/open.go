package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"net/netip"
	"os"
	"os/exec"
	"runtime"
	"time"

	"suffice/examples"
	"suffice/house"
	"suffice/report"
	"suffice/web"
)

type openVerb struct {
	File string `arg:"" optional:"" help:"The house file; else house.yaml here, else the built-in demo."`
	serveFlags
	weatherFlags
}

// serveFlags say where pages are served.
type serveFlags struct {
	Address string `name:"address" default:"127.0.0.1:0" placeholder:"HOST:PORT" help:"Where to listen, on this machine only; port 0 takes a free one."`
	Browser bool   `name:"browser" help:"Also open the pages in the browser."`
}

func (v *openVerb) Help() string {
	return `The pages are served to this machine alone, until you press Ctrl-C. Serving a local
network needs a password, which cannot be set yet, so other addresses are refused.

Examples:
  suffice open                                  the house of this folder, or the demo
  suffice open house.yaml --browser
  suffice open house.yaml --address 127.0.0.1:8080`
}

func (v *openVerb) Run(ctx context.Context, s Streams) error {
	if err := loopbackOnly(v.Address); err != nil {
		return err
	}
	path, err := chosen(v.File, s)
	if err != nil {
		return err
	}
	o := web.Options{Path: path, Name: path, Prove: v.proved}
	if path == "" {
		o.Name, o.Text = "demo.yaml", examples.Demo
	} else if o.Text, _, err = house.ReadText(path); err != nil {
		return err
	}
	return v.serve(ctx, o, s)
}

// chosen gives the path of the house file as openHouse chooses it, "" for the demo.
func chosen(path string, s Streams) (string, error) {
	if path != "" {
		return path, nil
	}
	if _, err := os.Stat(ownHouse); !errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(s.Err, "suffice: taking %s of this folder\n", ownHouse)
		return ownHouse, nil
	}
	fmt.Fprintf(s.Err, "suffice: no file is named and there is no %s here: taking the built-in demo house\n", ownHouse)
	return "", nil
}

// proved lives a house through its weather, or that of the flags.
func (f *weatherFlags) proved(file *house.File) (*report.Proof, error) {
	run, sky, err := f.prepare(file)
	if err != nil {
		return nil, err
	}
	p, err := report.Prove(run)
	if err != nil {
		return nil, ownFault{err}
	}
	p.Weather = sky
	return p, nil
}

// loopbackOnly refuses an address that others on a network could reach.
func loopbackOnly(address string) error {
	host, port, err := net.SplitHostPort(address)
	if err != nil {
		return fmt.Errorf("--address %q: write HOST:PORT, for example 127.0.0.1:8080", address)
	}
	if _, err := net.LookupPort("tcp", port); err != nil {
		return fmt.Errorf("--address %q: %q is no port: write a number from 0 to 65535", address, port)
	}
	if ip, err := netip.ParseAddr(host); host == "localhost" || err == nil && ip.IsLoopback() {
		return nil
	}
	return fmt.Errorf("--address %s: other machines could reach that, which needs a password, and none can be set yet: write 127.0.0.1:%s, [::1]:%s or localhost:%s", address, port, port, port)
}

// serve answers until the context ends, then lets answers that have begun end.
func (f *serveFlags) serve(ctx context.Context, o web.Options, s Streams) error {
	site, err := web.New(o)
	if err != nil {
		return err
	}
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp", f.Address)
	if err != nil {
		return fmt.Errorf("--address %s: %w: take another port, or 0 for a free one", f.Address, err)
	}
	server := &http.Server{
		Handler: site, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 30 * time.Second, WriteTimeout: time.Minute,
		IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 64 << 10,
	}
	address := "http://" + listener.Addr().String() + "/"
	fmt.Fprintf(s.Out, "%s\n", address)
	fmt.Fprintln(s.Err, "suffice: the pages are at this address, for this machine alone; Ctrl-C ends")
	if f.Browser {
		if err := browse(ctx, address); err != nil {
			fmt.Fprintf(s.Err, "suffice: no browser could be opened (%v): open the address yourself\n", err)
		}
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return ownFault{err}
	case <-ctx.Done():
	}
	patience, stop := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
	defer stop()
	if err := server.Shutdown(patience); err != nil {
		return errors.Join(err, server.Close())
	}
	return nil
}

// browse asks the system to show an address.
func browse(ctx context.Context, address string) error {
	words := []string{"xdg-open"}
	switch runtime.GOOS {
	case "windows":
		words = []string{"rundll32", "url.dll,FileProtocolHandler"}
	case "darwin":
		words = []string{"open"}
	}
	return exec.CommandContext(ctx, words[0], append(words[1:], address)...).Start() //nolint:gosec // the words stand above, the address is that of the listener
}
