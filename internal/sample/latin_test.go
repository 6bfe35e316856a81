package sample

import (
	"math"
	"testing"
)

func TestLatinFillsEverySliceOnce(t *testing.T) {
	const count = 40
	points := Latin(count, 5, 7)
	for d := range 5 {
		seen := make([]int, count)
		for _, p := range points {
			seen[int(p[d]*count)]++
		}
		for slice, n := range seen {
			if n != 1 {
				t.Fatalf("dimension %d slice %d holds %d points", d, slice, n)
			}
		}
	}
	again := Latin(count, 5, 7)
	for i := range points {
		for d := range points[i] {
			if points[i][d] != again[i][d] {
				t.Fatal("the same seed gave other points")
			}
		}
	}
	if Latin(count, 5, 8)[0][0] == points[0][0] {
		t.Error("another seed gave the same point")
	}
}

// Mean and spread of the triangle against their closed forms, by the mid-point rule.
func TestTriangular(t *testing.T) {
	const low, mode, high, n = 2.0, 3.0, 7.0, 20000
	var mean, square float64
	for i := range n {
		v := Triangular((float64(i)+0.5)/n, low, mode, high)
		mean += v / n
		square += v * v / n
	}
	if want := (low + mode + high) / 3; math.Abs(mean-want) > 1e-3 {
		t.Errorf("mean %.4f, want %.4f", mean, want)
	}
	want := (low*low + mode*mode + high*high - low*mode - low*high - mode*high) / 18
	if got := square - mean*mean; math.Abs(got-want) > 1e-3*want {
		t.Errorf("variance %.4f, want %.4f", got, want)
	}
	if Triangular(0.3, 4, 4, 4) != 4 {
		t.Error("a triangle without width must give its value")
	}
}
