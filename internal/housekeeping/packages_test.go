package housekeeping

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"path/filepath"
	"sort"
	"strings"
	"sync"
	"testing"
)

const module = "slabwright"

// goPackage is what the go command says of one package.
type goPackage struct {
	ImportPath   string
	Dir          string
	Name         string
	Doc          string
	Imports      []string
	Deps         []string
	GoFiles      []string
	TestGoFiles  []string
	XTestGoFiles []string
	Standard     bool
}

// rel is the path within the module: "internal/march"; "." for the root.
func (p goPackage) rel() string {
	if p.ImportPath == module {
		return "."
	}
	return strings.TrimPrefix(p.ImportPath, module+"/")
}

var listed = sync.OnceValues(func() ([]goPackage, error) {
	cmd := exec.Command("go", "list", "-e", "-json=ImportPath,Dir,Name,Doc,Imports,Deps,GoFiles,TestGoFiles,XTestGoFiles,Standard", "./...")
	cmd.Dir = filepath.Join("..", "..")
	out, err := cmd.Output()
	if err != nil {
		return nil, err
	}
	var all []goPackage
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p goPackage
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		if len(p.GoFiles) > 0 {
			all = append(all, p)
		}
	}
	sort.Slice(all, func(a, b int) bool { return all[a].ImportPath < all[b].ImportPath })
	return all, nil
})

// packages lists every package of the module.
func packages(t *testing.T) []goPackage {
	t.Helper()
	all, err := listed()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 15 {
		t.Fatalf("go list found only %d packages", len(all))
	}
	return all
}

// TestPackageComments holds that each package says what goes in, what comes out
// and what it leaves out, in more than a line.
func TestPackageComments(t *testing.T) {
	for _, p := range packages(t) {
		want := "Package " + p.Name + " "
		if p.Name == "main" {
			want = "Command "
		}
		doc := strings.TrimSpace(p.Doc)
		switch {
		case doc == "":
			t.Errorf("%s has no package comment; write one in doc.go", p.rel())
		case !strings.HasPrefix(doc, want) && !strings.HasPrefix(doc, "Slabwright") && p.Name != "main":
			t.Errorf("%s: the package comment begins %.40q, want %q", p.rel(), doc, want)
		}
	}
}
