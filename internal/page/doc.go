// Package page sets text, tables and drawings on pages: one column with a margin
// column for notes, repeated table heads, figures kept with their captions, page
// x of y, bookmarks and inner links, in embedded letters.
//
// [Build] takes a function that writes the document and calls it as often as it
// takes for page numbers named in the text to come true. The bytes depend on
// nothing but what is written: no clock, no machine.
//
// It knows nothing of what the pages are about. PDF only; no tagged structure, so
// give readers who need one another form as well.
package page
