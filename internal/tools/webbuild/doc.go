// Command webbuild bundles the app in web/app into web/dist, which the server
// embeds. Run it from the root of the module:
//
//	go run ./internal/tools/webbuild
//
// In go the TypeScript sources and the packages kept under third_party/npm; out
// come app.js, app.css, index.html, the font and the licences of what is in the
// bundle. The same sources always give the same bytes, and a test fails when
// the bundle in web/dist is not what the sources give. It needs no Node, and
// does not check types.
//
// With -check it writes nothing and says whether web/dist is up to date; with
// -vendor it rewrites third_party/npm/MANIFEST.csv after a package was changed.
package main
