package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
)

func main() {
	check := flag.Bool("check", false, "write nothing, say whether web/dist is up to date")
	vendor := flag.Bool("vendor", false, "rewrite third_party/npm/MANIFEST.csv")
	root := flag.String("root", ".", "root of the module")
	flag.Parse()
	if err := run(*root, *check, *vendor); err != nil {
		fmt.Fprintln(os.Stderr, "webbuild:", err)
		os.Exit(1)
	}
}

func run(root string, check, vendor bool) error {
	if vendor {
		return writeManifest(root)
	}
	files, err := Bundle(root)
	if err != nil {
		return err
	}
	if check {
		return Compare(root, files)
	}
	dist := filepath.Join(root, "web", "dist")
	if err := os.RemoveAll(dist); err != nil {
		return err
	}
	if err := os.MkdirAll(dist, 0o755); err != nil {
		return err
	}
	for _, name := range names(files) {
		if err := os.WriteFile(filepath.Join(dist, name), files[name], 0o644); err != nil {
			return err
		}
		fmt.Printf("web/dist/%s %d kB\n", name, (len(files[name])+512)/1024)
	}
	return nil
}

// Compare returns an error naming the first file of web/dist that is not what
// the sources give.
func Compare(root string, files map[string][]byte) error {
	dist := filepath.Join(root, "web", "dist")
	entries, err := os.ReadDir(dist)
	if err != nil {
		return fmt.Errorf("web/dist cannot be read (%w): run `go run ./internal/tools/webbuild`", err)
	}
	for _, e := range entries {
		if _, made := files[e.Name()]; !made {
			return fmt.Errorf("web/dist/%s is not made from the sources: run `go run ./internal/tools/webbuild`", e.Name())
		}
	}
	for _, name := range names(files) {
		kept, err := os.ReadFile(filepath.Join(dist, name))
		if err != nil || !bytes.Equal(kept, files[name]) {
			return fmt.Errorf("web/dist/%s differs from what the sources give: run `go run ./internal/tools/webbuild`", name)
		}
	}
	return nil
}

func names(files map[string][]byte) []string {
	out := make([]string, 0, len(files))
	for name := range files {
		out = append(out, name)
	}
	sort.Strings(out)
	return out
}
