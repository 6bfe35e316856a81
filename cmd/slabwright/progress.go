package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
)

// progress writes one changing line to a terminal, and nothing to a pipe.
type progress struct {
	mu    sync.Mutex
	out   io.Writer
	live  bool
	width int
	last  time.Time
}

func newProgress(quiet bool) *progress {
	return &progress{out: os.Stderr, live: !quiet && isTerminal(os.Stderr) && os.Getenv("TERM") != "dumb"}
}

// isTerminal reports whether a file is a terminal rather than a pipe, a file or the
// null device.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}

// Step says what is being worked out and how much of the whole is done, 0-1.
func (p *progress) Step(what string, done float64) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if !p.live || (time.Since(p.last) < 50*time.Millisecond && done < 1) {
		return
	}
	p.last = time.Now()
	line := fmt.Sprintf("%3.0f %%  %s", 100*done, what)
	fmt.Fprintf(p.out, "\r%s%s", line, strings.Repeat(" ", max(0, p.width-len(line))))
	p.width = len(line)
}

// Done wipes the line.
func (p *progress) Done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.live && p.width > 0 {
		fmt.Fprintf(p.out, "\r%s\r", strings.Repeat(" ", p.width))
		p.width = 0
	}
}
