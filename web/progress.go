package web

import "sync"

// Progress is what is being worked out, step by step. Hand its Say to the
// function that fills the content; it may be called from several goroutines.
type Progress struct {
	mu    sync.Mutex
	steps []Step
}

// Step is one thing worked out or being worked out.
type Step struct {
	Text string `json:"text"`
	Done bool   `json:"done"`
}

// Say ends the step before and begins the next, such as "Replaying strip 2".
func (p *Progress) Say(step string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for i := range p.steps {
		p.steps[i].Done = true
	}
	p.steps = append(p.steps, Step{Text: step})
}

// Steps returns what was said so far.
func (p *Progress) Steps() []Step {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]Step{}, p.steps...)
}

func (p *Progress) begin() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.steps = nil
}

func (p *Progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for i := range p.steps {
		p.steps[i].Done = true
	}
}
