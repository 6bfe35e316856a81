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

// run is one working-out; what is not guarded by mu is read only after done is closed.
type run struct {
	done    chan struct{}
	content *report.Content
	json    []byte
	err     error
	stop    context.CancelFunc
	stopped bool // told to stop: the first answer stands

	came  chan struct{} // closed when the first answer is there
	first *answer       // read only after came is closed
}

// answer is a content with the JSON made of it at once, so that it cannot change.
type answer struct {
	content *report.Content
	json    []byte
}

func (r *run) ended() bool { return closed(r.done) }

func closed(c chan struct{}) bool {
	select {
	case <-c:
		return true
	default:
		return false
	}
}

// errOutdated ends a run whose job has changed meanwhile.
var errOutdated = errors.New("the job changed while it was worked out")

// get waits for the whole answer, starting to work it out if nobody has or if the job
// has changed since. It stops waiting, but not working, when ctx ends.
func (w *work) get(ctx context.Context) (*run, error) {
	for {
		r := w.current()
		select {
		case <-r.done:
			if errors.Is(r.err, errOutdated) {
				continue
			}
			return r, r.err
		case <-ctx.Done():
			return nil, ctx.Err()
		}
	}
}

// soonest waits for the first answer, or for the whole one where there is no first;
// whole tells which it is.
func (w *work) soonest(ctx context.Context) (json []byte, whole bool, err error) {
	r := w.current()
	select {
	case <-r.came:
		if !r.ended() {
			return r.first.json, false, nil
		}
	case <-r.done:
	case <-ctx.Done():
		return nil, false, ctx.Err()
	}
	if r, err = w.get(ctx); err != nil {
		return nil, false, err
	}
	return r.json, !r.stopped, nil
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
		w.run.stop()
	}
	ctx, stop := context.WithCancel(context.Background())
	w.stamp = stamp
	w.run = &run{done: make(chan struct{}), came: make(chan struct{}), stop: stop}
	w.progress.begin(w.run.take)
	go w.fillRun(ctx, w.run)
	return w.run
}

// take keeps the first answer of a run.
func (r *run) take(c *report.Content) {
	data, err := json.Marshal(c)
	if err != nil || r.first != nil {
		return // the whole answer will tell what is wrong
	}
	r.first = &answer{c, data}
	close(r.came)
}

// halt ends the replays: the first answer stands. Before there is one nothing is stopped.
func (w *work) halt() bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.run == nil || w.run.ended() || !closed(w.run.came) {
		return false
	}
	w.run.stopped = true
	w.run.stop()
	return true
}

// goOn works out the whole after all, where it was stopped.
func (w *work) goOn() bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.run == nil || !w.run.ended() || !w.run.stopped {
		return false
	}
	w.run = nil
	return true
}

func (w *work) fillRun(ctx context.Context, r *run) {
	defer close(r.done)
	defer w.ending(r)
	defer func() {
		if p := recover(); p != nil {
			r.err = fmt.Errorf("the program met a mistake of its own: %v. The job is unharmed; please report this text", p)
		}
	}()
	c, err := w.fill(ctx)
	if err == nil && c == nil {
		err = errors.New("no answer was worked out")
	}
	if ctx.Err() != nil && err != nil {
		w.halted(r)
		return
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
	w.mu.Lock()
	defer w.mu.Unlock()
	r.stopped = false // it was there before it could be stopped
	r.content, r.json = c, data
}

// ending ends the progress told, unless a later run tells its own by now.
func (w *work) ending(r *run) {
	r.stop()
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.run == r {
		w.progress.end()
	}
}

// halted gives a run that was ended early its first answer, or says that it is outdated.
func (w *work) halted(r *run) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if !r.stopped || !closed(r.came) {
		r.err = errOutdated
		return
	}
	r.content, r.json = r.first.content, r.first.json
}

// state says how the work stands without starting it, and whether a first answer is there.
func (w *work) state() (state string, first bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.stateOfRun(), w.run != nil && closed(w.run.came)
}

func (w *work) stateOfRun() string {
	switch {
	case w.run == nil || !w.run.ended():
		return "working"
	case w.run.stopped:
		return "stopped"
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
