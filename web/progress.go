package web

import (
	"sync"

	"slabwright/report"
)

// Progress is what is being worked out, step by step. Hand its Say to the
// function that fills the content; it may be called from several goroutines.
type Progress struct {
	mu    sync.Mutex
	steps []Step
	share float64
	first func(*report.Content)
}

// Step is one thing worked out or being worked out.
type Step struct {
	Text string `json:"text"`
	Done bool   `json:"done"`
}

// Say ends the step before and begins the next, such as "Replaying strip 2"; done
// is the share of the whole that is behind, 0 to 1. It has the shape of
// job.Progress.
func (p *Progress) Say(what string, done float64) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.share = max(0, min(1, done))
	if n := len(p.steps); n > 0 {
		if p.steps[n-1].Text == what {
			return
		}
		p.steps[n-1].Done = true
	}
	p.steps = append(p.steps, Step{Text: what})
}

// Steps returns what was said so far, and the share of the whole that is behind.
func (p *Progress) Steps() ([]Step, float64) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]Step{}, p.steps...), p.share
}

// First hands over an answer that stands while the rest is worked out. It is shown at
// once, and kept when the rest is stopped; it must not be changed afterwards.
func (p *Progress) First(c *report.Content) {
	p.mu.Lock()
	first := p.first
	p.mu.Unlock()
	if first != nil {
		first(c)
	}
}

func (p *Progress) begin(first func(*report.Content)) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.steps, p.share, p.first = nil, 0, first
}

func (p *Progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.share = 1
	for i := range p.steps {
		p.steps[i].Done = true
	}
}
