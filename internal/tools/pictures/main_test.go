package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// The committed pictures are what the program draws now.
func TestPicturesAreFresh(t *testing.T) {
	pictures, err := Pictures()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range pictures {
		got, err := os.ReadFile(filepath.Join("..", "..", "..", "docs", "pictures", name))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("docs/pictures/%s is stale (%v); run: go run ./internal/tools/pictures", name, err)
		}
	}
}
