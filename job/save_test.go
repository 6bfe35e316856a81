package job

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// TestMain lets the test program stand in for a slabwright that saves without end,
// to be killed by the test below.
func TestMain(m *testing.M) {
	if dir := os.Getenv("SLABWRIGHT_TEST_SAVE"); dir != "" {
		saveWithoutEnd(dir)
	}
	os.Exit(m.Run())
}

func saveWithoutEnd(dir string) {
	j, err := Load(dir)
	for n := 0; err == nil; n++ {
		j.Title = fmt.Sprintf("Yard %0*d", 1+n%5000, n) // long and short by turns
		err = j.Save(dir)
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

// However a save is broken off, the file is the whole old job or the whole new one.
func TestKilledWhileSaving(t *testing.T) {
	if testing.Short() {
		t.Skip("starts and kills twenty programs")
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	j := sound()
	if err := j.Save(dir); err != nil {
		t.Fatal(err)
	}
	changed := 0
	for round := range 20 {
		cmd := exec.Command(self)
		cmd.Env = append(os.Environ(), "SLABWRIGHT_TEST_SAVE="+dir)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(20+7*round) * time.Millisecond)
		cmd.Process.Kill()
		cmd.Wait()
		got, err := Load(dir)
		if err != nil {
			t.Fatalf("round %d: %v", round, err)
		}
		if len(got.Slabs) != 1 || len(got.Pours[0].Trucks) != 1 {
			t.Fatalf("round %d: records lost", round)
		}
		if got.Title != j.Title {
			changed++
		}
	}
	if changed == 0 {
		t.Error("no round came as far as saving; the test saw nothing")
	}
}

// A save that cannot be made leaves what was there and nothing beside it.
func TestFailedSaveLeavesTheOldFile(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, FileName), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := sound().Save(dir); err == nil {
		t.Error("a job was saved over a folder")
	}
	if err := replaceFile(filepath.Join(dir, FileName), []byte("x")); err == nil {
		t.Error("a file took the place of a folder")
	}
	names, err := os.ReadDir(dir)
	if err != nil || len(names) != 1 || !names[0].IsDir() {
		t.Errorf("left behind: %v %v", names, err)
	}
	other := t.TempDir()
	if err := decoded(t, handWritten).Save(other); err != nil {
		t.Fatal(err)
	}
	if err := sound().Save(other); !errors.Is(err, ErrChanged) {
		t.Errorf("a new job over another: %v", err)
	}
	if got, err := Load(other); err != nil || got.ID != "yard" || got.Place.Altitude == nil {
		t.Errorf("the old job: %v %v", got, err)
	}
}
