// Package remedies says what can be done about a finding, and answers the owner's
// questions about it.
//
// In goes a [Situation]: what the finding is, how it moves, what caused it, what
// drives over it, and what shortening is still to come. Out come the [Option]s
// from [Options]: leave and watch always, and every remedy of its kind with why or
// why not, quantity, life, disruption, when to do it and the cost at the
// user's own rates. A remedy that would do harm, such as one that locks a live
// crack, is refused with the reason. [Structural], [Worse] and [Matters] answer
// the questions in defined words; [Cautions] is what every report must carry.
//
// It leaves out prices of its own, products, and the design of a repair.
package remedies
