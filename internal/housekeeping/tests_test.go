package housekeeping

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestEveryPackageHasTests holds that a package that does something is tested. One
// of types and names alone does nothing.
func TestEveryPackageHasTests(t *testing.T) {
	for _, p := range packages(t) {
		if len(p.TestGoFiles)+len(p.XTestGoFiles) > 0 {
			continue
		}
		if name := firstFunction(t, p); name != "" {
			t.Errorf("%s has no tests, though it has %s", p.rel(), name)
		}
	}
}

func firstFunction(t *testing.T, p goPackage) string {
	for _, name := range p.GoFiles {
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
		if err != nil {
			t.Errorf("%s: %v", p.rel(), err)
			continue
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Body != nil {
				return "func " + fn.Name.Name
			}
		}
	}
	return ""
}

// TestPublishedTablesAreProved holds that a package with published values compares
// them in its tests and shows them to the user: it has Checks, and the job's proof
// calls them.
func TestPublishedTablesAreProved(t *testing.T) {
	proof, err := os.ReadFile(filepath.Join("..", "..", "job", "prove.go"))
	if err != nil {
		t.Skip("the proof is not here: ", err)
	}
	tables := 0
	for _, p := range packages(t) {
		files, err := filepath.Glob(filepath.Join(p.Dir, "testdata", "published", "*.csv"))
		if err != nil {
			t.Fatal(err)
		}
		if len(files) == 0 {
			continue
		}
		tables += len(files)
		if _, err := os.Stat(filepath.Join(p.Dir, "checks.go")); err != nil {
			t.Errorf("%s has published tables and no checks.go", p.rel())
		}
		if !strings.Contains(string(proof), p.Name+".Checks") {
			t.Errorf("job/prove.go does not show the published rows of %s", p.rel())
		}
	}
	if tables < 10 {
		t.Errorf("only %d published tables found", tables)
	}
}
