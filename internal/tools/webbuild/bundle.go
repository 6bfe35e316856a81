package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/evanw/esbuild/pkg/api"
)

// licences are the texts that go with the bundle, in the order they are printed.
var licences = []struct{ name, file string }{
	{"preact 11.2.0", "preact/LICENSE"},
	{"@preact/signals 2.11.4", "@preact/signals/LICENSE"},
	{"@preact/signals-core 1.14.5", "@preact/signals-core/LICENSE"},
	{"Source Sans 3.052 (the font, unchanged)", "source-sans/LICENSE.md"},
}

// Bundle returns the files of web/dist by name, made from the sources under root.
func Bundle(root string) (map[string][]byte, error) {
	root, err := filepath.Abs(root)
	if err != nil {
		return nil, err
	}
	app := filepath.Join(root, "web", "app")
	built := api.Build(api.BuildOptions{
		AbsWorkingDir:       root,
		EntryPointsAdvanced: []api.EntryPoint{{InputPath: filepath.Join(app, "src", "main.tsx"), OutputPath: "app"}},
		Outdir:              filepath.Join(root, "web", "dist"),
		NodePaths:           []string{filepath.Join(root, "third_party", "npm")},
		Bundle:              true,
		MinifySyntax:        true,
		MinifyWhitespace:    true,
		MinifyIdentifiers:   true,
		Format:              api.FormatESModule,
		Target:              api.ES2020,
		JSX:                 api.JSXAutomatic,
		JSXImportSource:     "preact",
		Charset:             api.CharsetUTF8,
		LegalComments:       api.LegalCommentsNone,
		Loader:              map[string]api.Loader{".woff2": api.LoaderFile},
		AssetNames:          "[name]",
		LogLevel:            api.LogLevelSilent,
		TsconfigRaw:         `{"compilerOptions":{"strict":true}}`,
	})
	if len(built.Errors) > 0 {
		return nil, buildErrors(built.Errors)
	}
	files := map[string][]byte{}
	for _, f := range built.OutputFiles {
		files[filepath.Base(f.Path)] = f.Contents
	}
	page, err := os.ReadFile(filepath.Join(app, "index.html"))
	if err != nil {
		return nil, err
	}
	files["index.html"] = page
	files["LICENCES.txt"], err = licenceText(filepath.Join(root, "third_party", "npm"))
	return files, err
}

func buildErrors(messages []api.Message) error {
	var all []error
	for _, m := range messages {
		place := ""
		if m.Location != nil {
			place = fmt.Sprintf("%s:%d:%d: ", m.Location.File, m.Location.Line, m.Location.Column)
		}
		all = append(all, fmt.Errorf("%s%s", place, m.Text))
	}
	return errors.Join(all...)
}

func licenceText(npm string) ([]byte, error) {
	var out bytes.Buffer
	out.WriteString("The app contains these works of others.\n")
	for _, l := range licences {
		text, err := os.ReadFile(filepath.Join(npm, filepath.FromSlash(l.file)))
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&out, "\n---- %s ----\n\n%s\n", l.name, bytes.TrimSpace(text))
	}
	return out.Bytes(), nil
}
