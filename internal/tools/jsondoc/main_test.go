package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The committed page is what the types say now.
func TestPageIsFresh(t *testing.T) {
	root := filepath.Join("..", "..", "..")
	want, err := Page(root)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(root, "docs", "json.md"))
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Error("docs/json.md is stale; run: go run ./internal/tools/jsondoc")
	}
	for _, name := range []string{"| page_one |", "| chance_cracked_before |", "## FindingSheet", "| thickness_m |", "| rows_failed |"} {
		if !strings.Contains(want, name) {
			t.Errorf("the page lacks %q", name)
		}
	}
}
