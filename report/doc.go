// Package report makes what is handed over: page one in plain words, the body, one
// sheet per finding, the pour day, the drawings and the workings, as PDF and as
// HTML.
//
// A [Content] goes in; bytes come out. It computes nothing: every figure in the
// content names the sheet of its working. The two functions most people need are
// PDF and HTML.
package report
