package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"os/signal"
	"runtime/debug"
	"strconv"
	"syscall"
	"time"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/report"
	"columnbowl/build/serve"
)

const readUsage = `usage: columnbowl read [--content DIR] [--port N] [--engine FILE] [--checks DIR]

Shows the book in a browser on this machine while it is written. A page changes
by itself when the content changes; a mistake is shown over the pages, with its
place, and they stay as they were until it is mended. Ctrl+C ends it.

  --content DIR   the content folder (default: ./content, or else the book
                  inside this program, if it carries one)
  --port N        the port on this machine (default: 8817, or a free one if that
                  is taken; 0 means a free one)
  --engine FILE   an engine for the page that is built already, as for bind
  --checks DIR    the published values, as for bind

Nothing is written, and no other machine can reach the pages.

Exit status: 0 ended, 1 the pages cannot be shown, 2 bad usage.
`

// usualPort is where the pages are shown if nothing else is said: what a browser
// remembers of the book hangs on it.
const usualPort = 8817

// readArgs is a parsed command line of read.
type readArgs struct {
	content, engine, checks string
	port                    int // -1: the usual one, or a free one
}

func runRead(args []string, out, errOut io.Writer) int {
	a := readArgs{port: -1}
	flags := flag.NewFlagSet("read", flag.ContinueOnError)
	flags.StringVar(&a.content, "content", "", "")
	flags.StringVar(&a.engine, "engine", "", "")
	flags.StringVar(&a.checks, "checks", "", "")
	flags.IntVar(&a.port, "port", -1, "")
	if code, ok := optionsOnly(flags, args, readUsage, errOut); !ok {
		return code
	}
	src, err := openSource(a.content)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl read: %v\n", err)
		return 2
	}
	// Each edit makes a book anew; memory is cheaper than the author's time.
	debug.SetGCPercent(400)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := a.show(ctx, src, out); err != nil {
		fmt.Fprintf(errOut, "columnbowl read: %v\n", err)
		return 1
	}
	return 0
}

// show serves the book until ctx ends.
func (a *readArgs) show(ctx context.Context, src *source, out io.Writer) error {
	door, err := a.listen()
	if err != nil {
		return err
	}
	defer door.Close()
	server, err := a.server(src, out)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "Open http://%s/ in a browser. Ctrl+C ends it.\n", door.Addr())
	// What waits for changes would never end by itself.
	ctx, end := context.WithCancel(ctx)
	defer end()
	web := &http.Server{Handler: server, ReadHeaderTimeout: 10 * time.Second, BaseContext: func(net.Listener) context.Context { return ctx }}
	failed := make(chan error, 1)
	go func() { failed <- web.Serve(door) }()
	ran := make(chan error, 1)
	go func() { ran <- server.Run(ctx) }()
	select {
	case err = <-failed:
	case err = <-ran:
	}
	end()
	return errors.Join(err, web.Close())
}

// listen opens the port, on the loopback address alone.
func (a *readArgs) listen() (net.Listener, error) {
	want := max(a.port, 0)
	if a.port < 0 {
		want = usualPort
	}
	door, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(want)))
	if err == nil {
		return door, nil
	}
	if a.port < 0 {
		return net.Listen("tcp", "127.0.0.1:0")
	}
	return nil, fmt.Errorf("port %d cannot be used: %w. Name another one with --port, or none", a.port, err)
}

// server makes the server of a book.
func (a *readArgs) server(src *source, out io.Writer) (*serve.Server, error) {
	parts, err := partsOf()
	if err != nil {
		return nil, err
	}
	if err := withEngine(&parts, a.engine); err != nil {
		return nil, err
	}
	opts := serve.Options{Folder: src.name, Watched: src.disk, Parts: parts, Content: taking(src),
		Log: func(line string) { fmt.Fprintln(out, line) }}
	opts.Evidence = func(b *book.Book, _ book.Memory) (*bindery.Evidence, report.List, error) {
		var summary proof.Summary
		outcomes, apart, err := comparePublished(b, src, a.checks, &summary)
		if err != nil {
			return nil, nil, err
		}
		return evidence(b.Engine, outcomes), apart, nil
	}
	return serve.New(opts)
}

// taking takes the content of a source again and again.
func taking(src *source) func() (book.Memory, error) {
	if src.disk {
		return serve.NewFolder(src.name).Content
	}
	return func() (book.Memory, error) {
		files := book.Memory{}
		err := fs.WalkDir(src.files, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			files[name], err = fs.ReadFile(src.files, name)
			return err
		})
		return files, err
	}
}
