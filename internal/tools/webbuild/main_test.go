package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const root = "../../.."

// TestBundleIsFresh rebuilds the app in memory: what is committed in web/dist
// must be what the sources give.
func TestBundleIsFresh(t *testing.T) {
	files, err := Bundle(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"app.js", "app.css", "index.html", "LICENCES.txt"} {
		if len(files[name]) == 0 {
			t.Errorf("the bundle holds no %s", name)
		}
	}
	if err := Compare(root, files); err != nil {
		t.Error(err)
	}
}

// TestSameBytesTwice holds that two builds do not differ.
func TestSameBytesTwice(t *testing.T) {
	one, err := Bundle(root)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Bundle(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names(one) {
		if !bytes.Equal(one[name], two[name]) {
			t.Errorf("%s differs between two builds of the same sources", name)
		}
	}
}

// TestCompareNamesTheStaleFile holds that a changed bundle is noticed.
func TestCompareNamesTheStaleFile(t *testing.T) {
	files, err := Bundle(root)
	if err != nil {
		t.Fatal(err)
	}
	files["app.js"] = append([]byte("//"), files["app.js"]...)
	if err := Compare(root, files); err == nil || !strings.Contains(err.Error(), "web/dist/app.js") {
		t.Errorf("a changed app.js gave %v, want an error naming web/dist/app.js", err)
	}
}

// TestBundleNamesNoOtherHost holds that the app has no address but its own in it
// that a browser would load. The names of the SVG and maths languages are not loaded.
func TestBundleNamesNoOtherHost(t *testing.T) {
	files, err := Bundle(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"app.js", "app.css", "index.html"} {
		text := string(files[name])
		for _, known := range []string{"http://www.w3.org/2000/svg", "http://www.w3.org/1998/Math/MathML", "http://www.w3.org/1999/xhtml"} {
			text = strings.ReplaceAll(text, known, "")
		}
		if i := strings.Index(text, "://"); i >= 0 {
			t.Errorf("%s holds an address: %q", name, text[max(0, i-30):min(len(text), i+40)])
		}
	}
}

// TestManifest holds that third_party/npm is what its manifest says.
func TestManifest(t *testing.T) {
	want, err := manifest(root)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(root, "third_party", "npm", "MANIFEST.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Error("third_party/npm/MANIFEST.csv does not fit the files: run `go run ./internal/tools/webbuild -vendor` and read the difference")
	}
}
