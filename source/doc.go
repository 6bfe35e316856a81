// Package source says where every value came from: the published work a formula
// stands in, how a fact of the job is known, and whether a value printed in a
// published table is met by our own code.
//
// Three things go in and out. A [Citation] names a work of the table works.csv
// and a place in it. A [Fact] or [Choice] is one thing known of a job, with how it
// is known and its range. A [Result] is one published row compared with what we
// compute (see [Prove]).
//
// It leaves out every formula: those live with their subject.
package source
