package web

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"
	"time"

	"slabwright/report"
)

// slowly answers first with a made-up slab titled "first", and with one titled "whole"
// when let go on.
func slowly(t *testing.T, progress *Progress, goOn chan bool) func(context.Context) (*report.Content, error) {
	titled := func(title string) *report.Content {
		c := fixture(t)
		c.Findings[0].Title = title
		return c
	}
	first, whole := titled("first"), titled("whole")
	return func(ctx context.Context) (*report.Content, error) {
		progress.Say("causes against replays, 1 of 40", 0.5)
		progress.First(first)
		select {
		case <-goOn:
			return whole, nil
		case <-ctx.Done():
			return nil, ctx.Err()
		}
	}
}

const lineSaid = `document.querySelector(".stage [role=status], .stage-none [role=status]").innerText.trim()`

// TestFirstAnswer holds that the first answer is shown at once, and the whole one after it
// without the reader's place being lost.
func TestFirstAnswer(t *testing.T) {
	for _, size := range [][2]int64{{1440, 900}, {390, 844}} {
		progress, goOn := &Progress{}, make(chan bool, 1)
		s := newScreen(t, Handler(slowly(t, progress, goOn), Options{Progress: progress}))
		s.start()
		s.size(size[0], size[1])
		s.open("finding/F1")
		s.wants("the first answer", "F1 · first")
		s.until(lineSaid + ` === "First answer; the slab is still being replayed."`)
		s.until(`document.querySelector(".stage").innerText.includes("1 of 40")`)
		s.axe("a first answer")
		s.fits("a first answer")
		eval[bool](s, `(f => { f.open = true; f.scrollIntoView(); window.kept = f; return true })([...document.querySelectorAll("details")].at(-1))`)
		eval[bool](s, `(p => { p.scrollTop = 400; window.scrollTo(0, 700); return true })(document.querySelector(".right"))`)
		was := eval[[]float64](s, `[document.querySelector(".right").scrollTop, location.hash.length]`)
		goOn <- true
		s.until(`document.querySelector("h1").innerText.includes("whole")`)
		s.until(lineSaid + ` === ""`)
		if now := eval[[]float64](s, `[document.querySelector(".right").scrollTop, location.hash.length]`); now[0] != was[0] || now[1] != was[1] {
			t.Errorf("the reader was at %v and is at %v", was, now)
		}
		if !eval[bool](s, `window.kept.isConnected && window.kept.open`) {
			t.Error("a fold that was open is not any more")
		}
		s.quiet()
	}
}

// TestStopAndGoOn stops the replays: the first answer stands; then has them done after all.
func TestStopAndGoOn(t *testing.T) {
	progress, goOn := &Progress{}, make(chan bool, 1)
	s := newScreen(t, Handler(slowly(t, progress, goOn), Options{Progress: progress}))
	s.start()
	s.size(390, 844)
	s.open("finding/F1")
	press := func(words string) {
		s.until(`[...document.querySelectorAll(".stage button")].some(b => b.innerText === "` + words + `")`)
		eval[bool](s, `document.querySelector(".stage button").click(), true`)
	}
	press("Stop")
	s.until(lineSaid + `.includes("was stopped")`)
	s.wants("the answer after the stop", "F1 · first")
	s.axe("a stopped answer")
	press("Replay after all")
	s.until(lineSaid + `.includes("still being replayed")`)
	goOn <- true
	s.until(`document.querySelector("h1").innerText.includes("whole")`)
	s.quiet()
}

// TestOutdatedRun holds that a run whose job has changed is ended, and that who waits for it
// gets the answer of the job as it is now.
func TestOutdatedRun(t *testing.T) {
	var stamp atomic.Value
	stamp.Store("one")
	runs, ended := atomic.Int32{}, make(chan bool, 1)
	w := &work{progress: &Progress{}, fresh: func() string { return stamp.Load().(string) }, fill: func(ctx context.Context) (*report.Content, error) {
		if runs.Add(1) == 1 {
			<-ctx.Done()
			ended <- true
			return nil, ctx.Err()
		}
		return &report.Content{Head: report.Head{Title: "two"}}, nil
	}}
	old := w.current()
	for runs.Load() == 0 {
		time.Sleep(time.Millisecond)
	}
	stamp.Store("two")
	r, err := w.get(t.Context())
	if err != nil || r.content.Head.Title != "two" {
		t.Fatalf("the answer is %v, %v", r, err)
	}
	select {
	case <-ended:
	case <-time.After(5 * time.Second):
		t.Fatal("the run of the old job goes on")
	}
	<-old.done
	if !errors.Is(old.err, errOutdated) {
		t.Errorf("the old run ends with %v", old.err)
	}
	if w.halt() || w.goOn() {
		t.Error("a whole answer can be stopped or gone on with")
	}
	if state, first := w.state(); state != "empty" || first {
		t.Errorf("state %q, first %v", state, first)
	}
}
