package housekeeping

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// rows is the order of the packages: each imports only rows of a lower number. A
// new package is given its row here, on purpose.
var rows = map[string]int{
	"unit": 0, "source": 0, "working": 0,
	"plan": 1,
	"site": 2, "walk": 2, "photo": 2,
	"climate": 3, "concrete": 3, "ground": 3, "steel": 3,
	"earlyage":  4,
	"restraint": 5, "flexure": 5,
	"causes": 6, "layout": 6,
	"remedies": 7, "checks": 7,
	"report": 8, "poursheet": 8, "xlsx": 8,
	"job":   9,
	"store": 10, "web": 10,
	"cmd/slabwright": 11,
}

// groundFloor is the one package of row 0 the other two of row 0 stand on: a line
// of a working carries its citation, a conversion factor its published check.
const groundFloor = "source"

// allowed says which packages of others a package may import, beside the standard
// library, with the reason.
func allowed(pkg, path string) bool {
	under := func(prefixes ...string) bool {
		for _, p := range prefixes {
			if path == p || strings.HasPrefix(path, p+"/") {
				return true
			}
		}
		return false
	}
	row, product := rows[pkg]
	switch {
	case strings.HasPrefix(pkg, "internal/tools/"):
		return under("github.com/evanw/esbuild") // makes the app's bundle; never part of the product
	case pkg == "internal/draw" || pkg == "internal/page":
		return under("codeberg.org/go-pdf/fpdf") // ink on paper
	case !product || row <= 7:
		return under("gonum.org/v1/gonum", "github.com/peterstace/simplefeatures") // numbers and shapes
	case pkg == "xlsx":
		return under("github.com/xuri/excelize/v2") // the largest library of all: here and nowhere else
	case row == 8:
		return under("codeberg.org/go-pdf/fpdf", "github.com/arran4/golang-ical")
	case row == 9:
		return under("github.com/invopop/jsonschema") // the form of job.json
	case row == 11:
		return under("github.com/spf13/cobra") // flags
	}
	return false
}

// TestImportRows holds that imports flow one way.
func TestImportRows(t *testing.T) {
	for _, p := range packages(t) {
		pkg := p.rel()
		internal := strings.HasPrefix(pkg, "internal/")
		row, known := rows[pkg]
		if !known && !internal {
			t.Errorf("%s has no row; give it one in imports_test.go", pkg)
			continue
		}
		for _, path := range p.Imports {
			target, ours := strings.CutPrefix(path, module+"/")
			switch {
			case !ours:
				if first, _, _ := strings.Cut(path, "/"); strings.Contains(first, ".") && !allowed(pkg, path) {
					t.Errorf("%s may not import %s", pkg, path)
				}
			case strings.HasPrefix(pkg, "internal/tools/"): // commands of the workshop; no product imports them
			case internal:
				if !strings.HasPrefix(target, "internal/") || strings.HasPrefix(target, "internal/tools/") {
					t.Errorf("%s imports %s; internal packages know no concrete and import only internal ones", pkg, target)
				}
			case strings.HasPrefix(target, "internal/tools/"):
				t.Errorf("%s imports %s, which makes the product and is no part of it", pkg, target)
			case strings.HasPrefix(target, "internal/"):
				if row > 9 && row != 11 && row != 10 {
					t.Errorf("%s of row %d imports %s", pkg, row, target)
				}
			case row == 0 && target == groundFloor && pkg != groundFloor:
			default:
				if other, ok := rows[target]; !ok || other >= row {
					t.Errorf("%s of row %d imports %s of row %d; only rows above (lower numbers)", pkg, row, target, other)
				}
			}
		}
	}
}

// TestProductIsFreeOfTools holds that nothing that only builds or tests slabwright
// is linked into it.
func TestProductIsFreeOfTools(t *testing.T) {
	found := false
	for _, p := range packages(t) {
		if p.rel() != "cmd/slabwright" {
			continue
		}
		found = true
		for _, dep := range p.Deps {
			for _, tool := range []string{"github.com/evanw/esbuild", "github.com/chromedp", "pgregory.net/rapid", "github.com/google/go-cmp",
				"github.com/rogpeppe/go-internal", "github.com/santhosh-tekuri", "slabwright/internal/tools", "slabwright/internal/housekeeping"} {
				if strings.HasPrefix(dep, tool) {
					t.Errorf("the product contains %s", dep)
				}
			}
			if dep == "testing" {
				t.Error("the product contains package testing")
			}
		}
	}
	if !found {
		t.Skip("the command is not here")
	}
}

// TestRowsBuildForTheBrowser holds that the engine, rows 0 to 8, builds for a
// phone's browser: no files, no processes, no system calls that are not there.
func TestRowsBuildForTheBrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the standard library for wasm the first time")
	}
	args := []string{"build"}
	for _, p := range packages(t) {
		if row, ok := rows[p.rel()]; ok && row <= 8 {
			args = append(args, p.ImportPath)
		}
	}
	cmd := exec.Command("go", args...)
	cmd.Dir = filepath.Join("..", "..")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
