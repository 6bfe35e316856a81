// Package poursheet makes the sheets for the day of the pour.
//
// So far it makes one: the cut windows as an iCalendar file ([Calendar]), so that
// the saw crew's phone rings in time on any calendar. Windows go in, bytes come
// out; it works nothing out.
package poursheet
