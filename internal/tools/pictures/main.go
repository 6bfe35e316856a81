// Command pictures draws the pictures of the README from the worked example.
//
//	go run ./internal/tools/pictures
package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"slabwright/job"
	"slabwright/report"
)

func main() {
	if err := write(filepath.Join("docs", "pictures")); err != nil {
		fmt.Fprintln(os.Stderr, "pictures: "+err.Error())
		os.Exit(1)
	}
}

func write(dir string) error {
	pictures, err := Pictures()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for name, data := range pictures {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Pictures returns every picture by its file name.
func Pictures() (map[string][]byte, error) {
	data, err := fs.ReadFile(job.DemoFS(), "job.json")
	if err != nil {
		return nil, err
	}
	j, err := job.Decode(data)
	if err != nil {
		return nil, err
	}
	c, err := job.Diagnose(context.Background(), j, job.DemoFS(), nil)
	if err != nil {
		return nil, err
	}
	pour := &c.Pours[1]
	return map[string][]byte{
		"plan.svg":   report.PlanSVG(c),
		"drying.svg": report.DryingChart(c, pour).SVG(),
		"share.svg":  report.ShareChart(c, pour).SVG(),
	}, nil
}
