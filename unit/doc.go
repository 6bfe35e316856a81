// Package unit reads and writes quantities at the borders of the program: what a
// person types or reads. Inside, plain float64 in the unit named beside each type.
//
// In goes text in any unit of factors.csv ("6 mm", `3'-6 1/2"`, "4000 psi",
// "77F", "55 %", decimal comma, true minus, thin spaces); out comes a named type
// such as [Length] or an error that says what was found, what was expected and the
// likely mend. A bare number whose unit is not sure is refused, never guessed. The
// types write themselves back with Format in metric or US customary units, and
// [Clock] writes an instant as weekday, clock and hours since placing.
//
// Most need a Parse function ([ParseLength], [ParseStress], ...), Format, and
// [Convert]. It leaves out what a value means and whether it is sensible.
package unit
