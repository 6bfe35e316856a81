// Package web serves one job to a browser on the same computer: the app, and
// the answers as JSON.
//
// In goes a function that works out a report.Content and, if there are any, functions that
// write the printed papers; out comes an http.Handler ([Handler]) or a running
// server on a loopback address ([Open]). While the answer is being worked out, a
// [Progress] tells the page what is being done.
//
// Everything is read with GET and HEAD; what carries something with it, such as a joint
// that was moved, is put to /api/ask by the page itself ([Ask]), which alone may. It answers only to loopback names, so that no page of another site can read
// a job through the browser, and it never calls another computer.
//
// The app in dist is made from app/src by internal/tools/webbuild.
package web
