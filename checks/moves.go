package checks

import (
	"context"
	"math"
	"sort"

	"slabwright/source"
)

// MovedBy is the share by which a result must change to count as moved. Chosen by
// the project (5 %), not from a standard.
const MovedBy = 0.05

// Move is a check that changed.
type Move struct {
	Row   string  `json:"row"`   // ID of the row
	Check string  `json:"check"` // its words
	From  float64 `json:"from"`  // utilisation before
	To    float64 `json:"to"`    // and after
	Flips bool    `json:"flips"` // met became not met, or the other way round
}

// share is how much it moved.
func (m Move) share() float64 {
	if m.From == 0 {
		return math.Abs(m.To)
	}
	return math.Abs(m.To/m.From - 1)
}

// Compare lists the checks whose utilisation moved by more than [MovedBy] from one
// result to the next, those that flip first, then by how far they moved.
func Compare(before, after Result) []Move {
	var moves []Move
	for _, b := range before.Rows {
		a := after.Find(b.ID)
		if a == nil {
			continue
		}
		m := Move{Row: b.ID, Check: b.Check, From: b.Utilisation, To: a.Utilisation, Flips: a.Pass != b.Pass}
		if m.share() > MovedBy || m.Flips {
			moves = append(moves, m)
		}
	}
	sort.SliceStable(moves, func(i, j int) bool {
		if moves[i].Flips != moves[j].Flips {
			return moves[i].Flips
		}
		return moves[i].share() > moves[j].share()
	})
	return moves
}

// Assumption is one number the checks stand on, and what moves when it is wrong.
type Assumption struct {
	Key    string       `json:"key"`
	Symbol string       `json:"symbol"`
	What   string       `json:"what"`
	Value  float64      `json:"value"` // in Unit
	Unit   string       `json:"unit"`
	Known  source.Known `json:"known"`
	By     string       `json:"by,omitempty"`
	Note   string       `json:"note,omitempty"`
	Low    Trial        `json:"low"`
	High   Trial        `json:"high"`
}

// Trial is the checks with one number changed.
type Trial struct {
	Value float64 `json:"value"` // in the unit of the assumption
	Given bool    `json:"given"` // the range was given with the number, not taken from the table
	Moves []Move  `json:"moves"`
	Wrong string  `json:"wrong,omitempty"` // why the checks could not be made with it
}

// Assumptions tries every number of the input at both ends of its range and lists
// what moves: the range given with the number, or else that of given.csv.
func Assumptions(ctx context.Context, in Input) ([]Assumption, error) {
	in.Quick = true
	before, err := Run(ctx, in)
	if err != nil {
		return nil, err
	}
	var list []Assumption
	for i, g := range in.givens() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		low, high, given := g.ends()
		switch g.Key { // the long side stays the long one
		case "length":
			low = math.Max(low, in.Slab.Width.Value)
		case "width":
			high = math.Min(high, in.Slab.Length.Value)
		}
		scale := g.number("scale")
		list = append(list, Assumption{Key: g.Key, Symbol: g.text("symbol"), What: g.label(), Value: g.printed(), Unit: g.text("printed_unit"),
			Known: g.fact.Known, By: g.fact.By, Note: g.fact.Note,
			Low: try(ctx, in, i, low, scale, given, before), High: try(ctx, in, i, high, scale, given, before)})
	}
	return list, nil
}

// ends is the range a number is tried at, kept within what can be worked.
func (g given) ends() (low, high float64, ranged bool) {
	low, high = g.fact.Bounds()
	ranged = g.fact.Low != nil || g.fact.High != nil
	if !ranged {
		low, high = g.fact.Value*g.number("less"), g.fact.Value*g.number("more")
	}
	return math.Max(low, g.number("min")), math.Min(high, g.number("max")), ranged
}

func try(ctx context.Context, in Input, which int, value, scale float64, given bool, before Result) Trial {
	t := Trial{Value: value * scale, Given: given}
	changed := in.clone()
	list := changed.givens()
	if list[which].fact.Value == value {
		return t
	}
	list[which].fact.Value = value
	after, err := Run(ctx, changed)
	if err != nil {
		t.Wrong = err.Error()
		return t
	}
	t.Moves = Compare(before, after)
	return t
}

// Moved reports whether a number matters: something moved at one of its ends.
func (a Assumption) Moved() bool { return len(a.Low.Moves)+len(a.High.Moves) > 0 }
