package sparse

import "testing"

// Every size has one class, whose blocks are little larger, and a block goes back to
// where it came from.
func TestClassOf(t *testing.T) {
	for n := 1; n < 5000; n++ {
		class, size := classOf(n)
		if size < n || class < 0 || class >= classes {
			t.Fatalf("%d numbers: class %d of size %d", n, class, size)
		}
		if again, same := classOf(size); again != class || same != size {
			t.Fatalf("a block of %d goes back to class %d, came from %d", size, again, class)
		}
		if float64(size) > 1.25*float64(n)+8 {
			t.Fatalf("%d numbers get %d", n, size)
		}
	}
}

func TestTakeAndGive(t *testing.T) {
	var w worker
	block := w.take(1000)
	for i := range block {
		block[i] = 1
	}
	w.give(block)
	again := w.take(990)
	if &again[0] != &block[0] {
		t.Error("a block given back was not used again")
	}
	if largest(again) != 0 {
		t.Error("a block used again was not cleared")
	}
}
