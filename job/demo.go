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

//go:embed demodata
var demoFiles embed.FS

// DemoID is the id of the worked example; a folder that holds another job is
// never written over.
const DemoID = "demo-apron"

// DemoFS returns the files of the worked example: an invented lorry apron with a
// wash-down pit, placed in three strips on one warm windy autumn day.
func DemoFS() fs.FS {
	sub, err := fs.Sub(demoFiles, "demodata")
	if err != nil {
		panic("job: " + err.Error())
	}
	return sub
}

// WriteDemo writes the worked example to a folder. The folder may be absent,
// empty, or hold the example already; any other job in it is an error and stays
// as it is.
func WriteDemo(dir string) error {
	if err := free(dir); err != nil {
		return err
	}
	files := DemoFS()
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
func free(dir string) error {
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
	if json.Unmarshal(data, &head) != nil || head.ID != DemoID {
		return fmt.Errorf("%s holds another job; choose another folder with --dir", dir)
	}
	return nil
}
