package main

import (
	"crypto/sha256"
	"encoding/csv"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
)

// kept are the packages under third_party/npm: what they are and why they are here.
var kept = []struct{ folder, version, licence, use string }{
	{"@preact/signals", "2.11.4", "MIT", "in the bundle"},
	{"@preact/signals-core", "1.14.5", "MIT", "in the bundle"},
	{"axe-core", "4.14.1", "MPL-2.0", "tests only, unmodified"},
	{"preact", "11.2.0", "MIT", "in the bundle"},
	{"source-sans", "3.52.0", "OFL-1.1", "font in the bundle, unmodified"},
}

// manifest returns the text of MANIFEST.csv: every file under third_party/npm
// with its package, version, licence and SHA-256.
func manifest(root string) (string, error) {
	npm := filepath.Join(root, "third_party", "npm")
	rows := [][]string{{"package", "version", "licence", "use", "file", "sha256"}}
	for _, k := range kept {
		folder := filepath.Join(npm, filepath.FromSlash(k.folder))
		var found []string
		err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() {
				found = append(found, path)
			}
			return err
		})
		if err != nil {
			return "", err
		}
		sort.Strings(found)
		for _, path := range found {
			data, err := os.ReadFile(path)
			if err != nil {
				return "", err
			}
			name, err := filepath.Rel(npm, path)
			if err != nil {
				return "", err
			}
			rows = append(rows, []string{k.folder, k.version, k.licence, k.use, filepath.ToSlash(name), fmt.Sprintf("%x", sha256.Sum256(data))})
		}
	}
	var out strings.Builder
	w := csv.NewWriter(&out)
	if err := w.WriteAll(rows); err != nil {
		return "", err
	}
	return out.String(), nil
}

func writeManifest(root string) error {
	text, err := manifest(root)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(root, "third_party", "npm", "MANIFEST.csv"), []byte(text), 0o644)
}
