// Package xlsx writes a calculation as a spreadsheet that calculates: each line of a
// working is a row whose answer is a formula on the numbers beside it, so that a
// changed number moves what follows.
//
// A checks.Calc goes in, the bytes of a workbook come out. Numbers are numbers with
// their unit in the head of the column or the cell beside them, heads stand still,
// there is one table a sheet, and text is stored as text, never run. It computes
// nothing itself: what cannot be written as a formula is a typed number and says so.
package xlsx
