package job

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

//go:embed demodata demonext
var demoFiles embed.FS

// Ids of the worked examples; a folder that holds another job is never written over.
const (
	DemoID     = "demo-apron"
	NextDemoID = "demo-replacement"
)

// DemoFS returns the files of the worked example: an invented lorry apron with a
// wash-down pit, placed in three strips on one warm windy autumn day.
func DemoFS() fs.FS { return demoOf("demodata") }

// NextDemoFS returns the files of the second worked example: the slab that replaces
// the first, with the joints of the old one drawn in it.
func NextDemoFS() fs.FS { return demoOf("demonext") }

func demoOf(folder string) fs.FS {
	sub, err := fs.Sub(demoFiles, folder)
	if err != nil {
		panic("job: " + err.Error())
	}
	return sub
}

// WriteDemo writes the worked example to a folder. The folder may be absent,
// empty, or hold the example already; any other job in it is an error and stays
// as it is.
func WriteDemo(dir string) error { return writeExample(DemoFS(), DemoID, dir) }

// WriteNextDemo writes the second worked example to a folder, as [WriteDemo] does.
func WriteNextDemo(dir string) error { return writeExample(NextDemoFS(), NextDemoID, dir) }

func writeExample(files fs.FS, id, dir string) error {
	if err := free(dir, id); err != nil {
		return err
	}
	return fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		target := filepath.Join(dir, filepath.FromSlash(name))
		if entry.IsDir() {
			return os.MkdirAll(target, 0o755)
		}
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		if old, err := os.ReadFile(target); err == nil && bytes.Equal(old, data) {
			return nil
		}
		return os.WriteFile(target, data, 0o644)
	})
}

// free reports an error when the folder holds a job that is not the example.
func free(dir, id string) error {
	entries, err := os.ReadDir(dir)
	if os.IsNotExist(err) || len(entries) == 0 {
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s cannot be used for the example: %w", dir, err)
	}
	data, err := os.ReadFile(filepath.Join(dir, "job.json"))
	if err != nil {
		return fmt.Errorf("%s is not empty and holds no example job; choose another folder with --dir", dir)
	}
	var head struct {
		ID string `json:"id"`
	}
	if json.Unmarshal(data, &head) != nil || head.ID != id {
		return fmt.Errorf("%s holds another job; choose another folder with --dir", dir)
	}
	return nil
}
