package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"

	"slabwright/report"
)

// work is the answer being worked out, once for everybody who asks. A failed run
// is not kept, so that asking again reads the mended job.
type work struct {
	fill     func(context.Context) (*report.Content, error)
	fresh    func() string
	progress *Progress

	mu    sync.Mutex
	stamp string
	run   *run
}

// run is one working-out; its fields are read only after done is closed.
type run struct {
	done    chan struct{}
	content *report.Content
	json    []byte
	err     error
}

func (r *run) ended() bool {
	select {
	case <-r.done:
		return true
	default:
		return false
	}
}

// get waits for the answer, starting to work it out if nobody has or if the job
// has changed since. It stops waiting, but not working, when ctx ends.
func (w *work) get(ctx context.Context) (*run, error) {
	r := w.current()
	select {
	case <-r.done:
		return r, r.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

func (w *work) current() *run {
	w.mu.Lock()
	defer w.mu.Unlock()
	stamp := ""
	if w.fresh != nil {
		stamp = w.fresh()
	}
	if w.run != nil {
		failed := w.run.ended() && w.run.err != nil
		if !failed && stamp == w.stamp {
			return w.run
		}
	}
	w.stamp = stamp
	w.run = &run{done: make(chan struct{})}
	w.progress.begin()
	go w.fillRun(w.run)
	return w.run
}

func (w *work) fillRun(r *run) {
	defer close(r.done)
	defer w.progress.end()
	defer func() {
		if p := recover(); p != nil {
			r.err = fmt.Errorf("the program met a mistake of its own: %v. The job is unharmed; please report this text", p)
		}
	}()
	c, err := w.fill(context.Background())
	if err == nil && c == nil {
		err = errors.New("no answer was worked out")
	}
	if err != nil {
		r.err = err
		return
	}
	data, err := json.Marshal(c)
	if err != nil {
		r.err = fmt.Errorf("the answer holds a number that cannot be written: %w", err)
		return
	}
	r.content, r.json = c, data
}

// state says how the work stands without starting it.
func (w *work) state() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch {
	case w.run == nil || !w.run.ended():
		return "working"
	case w.run.err != nil:
		return "wrong"
	case len(w.run.content.Plan.Slab.Outline) == 0:
		return "empty"
	}
	return "ready"
}

// problems lists the messages of an error that holds several, one each; a message of
// several lines is taken line by line.
func problems(err error) []string {
	var many interface{ Unwrap() []error }
	if errors.As(err, &many) && len(many.Unwrap()) > 0 {
		var out []string
		for _, e := range many.Unwrap() {
			out = append(out, problems(e)...)
		}
		return out
	}
	var out []string
	for _, line := range strings.Split(err.Error(), "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}
