package main

import (
	"fmt"
	"os"
	"path/filepath"

	"slabwright/report"
)

// writeOutputs writes the report as PDF and HTML and the plan as SVG.
func writeOutputs(c *report.Content, dir string) ([]string, error) {
	pdf, err := report.PDF(c)
	if err != nil {
		return nil, err
	}
	html, err := report.HTML(c)
	if err != nil {
		return nil, err
	}
	outputs := []struct {
		name string
		data []byte
	}{{"report.pdf", pdf}, {"report.html", html}, {"plan.svg", report.PlanSVG(c)}}
	var names []string
	for _, o := range outputs {
		path := filepath.Join(dir, o.name)
		if err := writeWhole(path, o.data); err != nil {
			return nil, err
		}
		names = append(names, path)
	}
	return names, nil
}

// writeWhole writes a file so that it is there whole or not at all.
func writeWhole(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("cannot make the folder for %s: %w", path, err)
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".part-*")
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	defer os.Remove(f.Name())
	_, err = f.Write(data)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return nil
}
