package mesh

import "fmt"

// Code says which rule an input broke.
type Code string

const (
	NotFinite     Code = "not-finite"
	BadOption     Code = "bad-option"
	TooFewPoints  Code = "too-few-points"
	ZeroArea      Code = "zero-area"
	SelfCrossing  Code = "self-crossing"
	RingsCross    Code = "rings-cross"
	OutsideHole   Code = "hole-outside"
	RingsOverlap  Code = "rings-overlap"
	OutsideLine   Code = "line-outside"
	OutsidePoint  Code = "point-outside"
	SmallGap      Code = "small-gap"
	TooManyNeeded Code = "too-many-triangles"
	Tangled       Code = "tangled"
)

// Error is an input that cannot be meshed: what, where, and what would mend it.
type Error struct {
	Code Code
	At   Point
	What string // a sentence without the place
	Mend string
	// Whole is set when it concerns the whole input and At means nothing.
	Whole bool
}

func (e *Error) Error() string {
	if e.Whole {
		return e.What + ". " + e.Mend
	}
	return fmt.Sprintf("%s near x %.6g, y %.6g. %s", e.What, e.At[0], e.At[1], e.Mend)
}

func refuse(code Code, at Point, mend, what string, values ...any) *Error {
	return &Error{Code: code, At: at, What: fmt.Sprintf(what, values...), Mend: mend}
}

func refuseWhole(code Code, mend, what string, values ...any) *Error {
	return &Error{Code: code, What: fmt.Sprintf(what, values...), Mend: mend, Whole: true}
}
