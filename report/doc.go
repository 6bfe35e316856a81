// Package report makes what is handed over: page one in plain words, the body, one
// sheet per finding, the pour day, the drawings and the workings, as PDF and as
// HTML. The PDF is for handing over and checking: causes that weigh little stand in a
// line, and how causes were weighed is one matrix a finding. The HTML is complete, with
// the long parts folded.
//
// A [Content] goes in; bytes come out. It computes nothing: every figure in the
// content names the sheet of its working. The two functions most people need are
// PDF and HTML.
package report
