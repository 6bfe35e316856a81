// Package web serves one job to a browser on the same computer: the app, and
// the answers as JSON.
//
// In goes a function that works out a report.Content and, if there are any, functions that
// write the printed papers; out comes an http.Handler ([Handler]) or a running
// server on a loopback address ([Open]). While the answer is being worked out, a
// [Progress] tells the page what is being done.
//
// It only reads: nothing is changed through it, and it answers GET and HEAD alone.
// It answers only to loopback names, so that no page of another site can read
// a job through the browser, and it never calls another computer.
//
// The app in dist is made from app/src by internal/tools/webbuild.
package web
