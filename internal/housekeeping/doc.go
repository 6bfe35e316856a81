// Package housekeeping holds no code of the product, only tests of the house: that
// imports flow one way, that every package says what it is for and has tests, that
// words with a meaning in court or in advertising stay out of what people read, and
// that nothing of one machine is written into a file.
package housekeeping
