// Package working holds calculations line by line, so that a checker with a
// pocket calculator can redo each figure: symbol, formula, numbers put in, value,
// unit, source, and an independent check beside it.
//
// A [Line] is built by [Line.With] and friends; its Numbers are always made from
// its Formula and its Inputs by [Substitute], so the two cannot drift apart.
// Lines make a [Sheet], sheets make a [Book], and a figure anywhere in a report
// names its sheet by ID.
//
// It computes nothing itself.
package working
