package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
)

// FileName is the name of the file in the job's folder that holds the job.
const FileName = "job.json"

// ErrChanged is the error of [Job.Save] when the file was changed by someone else
// since it was read. Nothing is written then.
var ErrChanged = errors.New("job.json was changed by someone else since it was read")

// Load reads the job in a folder. Its error says all that is wrong at once, see
// [Decode]; a job that was read may still have problems, see [Job.Validate].
func Load(dir string) (*Job, error) {
	if filepath.Base(dir) == FileName {
		dir = filepath.Dir(dir)
	}
	name := filepath.Join(dir, FileName)
	data, err := os.ReadFile(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, &LoadError{File: name, Problems: []Problem{{Level: Error, Code: "no-job", Found: "there is no " + FileName + " in " + dir,
			Want: "the folder of a job", Mend: "Name the folder that holds job.json, or start one with slabwright new."}}}
	case err != nil:
		return nil, fmt.Errorf("read job: %w", err)
	}
	j, err := Decode(data)
	var load *LoadError
	if errors.As(err, &load) {
		load.File = name
	}
	if err != nil {
		return nil, err
	}
	j.dir = dir
	return j, nil
}

// Dir returns the folder the job was read from or saved to; empty for neither.
func (j *Job) Dir() string { return j.dir }

// Encode returns the bytes of job.json: the text the job was read from with what
// changed laid over it. Fields the program does not know, their order and the
// spelling of numbers stay.
func (j *Job) Encode() ([]byte, error) {
	if field, ok := firstNotFinite(j); ok {
		return nil, fmt.Errorf("write job: %s is not a number; leave it out where nobody knows it", field)
	}
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	if err := e.Encode(j); err != nil {
		return nil, fmt.Errorf("write job: %w", err)
	}
	fresh, _, bad := parseTree(text.Bytes())
	if bad != nil {
		panic("job: what was written is not JSON: " + bad.String())
	}
	unbind(fresh, reflect.TypeFor[Job]())
	if j.tree == nil {
		return append(written(fresh), '\n'), nil
	}
	kept := keep(j.tree, fresh, reflect.TypeFor[Job]())
	if kept == j.tree {
		return bytes.Clone(j.tree.src), nil
	}
	out := append(bytes.Clone(j.tree.src[:j.tree.start]), written(kept)...)
	return append(out, j.tree.src[j.tree.end:]...), nil
}

// Save writes the job into a folder, which is made when it is not there. The file
// is whole at every moment: the new text is written beside it, brought to disk and
// then takes its name. A job read from this folder is not written over a change
// someone else made since ([ErrChanged]), nor a new job over another.
func (j *Job) Save(dir string) error {
	data, err := j.Encode()
	if err != nil {
		return err
	}
	name := filepath.Join(dir, FileName)
	switch there, err := os.ReadFile(name); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return fmt.Errorf("save job: %w", err)
	case bytes.Equal(there, data):
		return j.saved(dir, data)
	case j.tree == nil || !bytes.Equal(there, j.tree.src):
		return fmt.Errorf("save job: %s: %w", name, ErrChanged)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("save job: %w", err)
	}
	if err := replaceFile(name, data); err != nil {
		return fmt.Errorf("save job: %w", err)
	}
	return j.saved(dir, data)
}

// saved makes the bytes on disk the ones the next change is laid over.
func (j *Job) saved(dir string, data []byte) error {
	tree, _, bad := parseTree(data)
	if bad != nil {
		panic("job: what was saved is not JSON: " + bad.String())
	}
	j.tree, j.dir = tree, dir
	return nil
}

// replaceFile writes a file whole or not at all: a temporary file in the same
// folder, flushed to disk, renamed over the old one, and the folder flushed.
func replaceFile(name string, data []byte) (err error) {
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(name); err == nil {
		mode = info.Mode().Perm()
	}
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+"-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(data); err != nil {
		return err
	}
	if err = f.Chmod(mode); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), name); err != nil {
		return err
	}
	if d, err := os.Open(filepath.Dir(name)); err == nil {
		d.Sync() // not every system can flush a folder; the rename itself is done
		d.Close()
	}
	return nil
}
