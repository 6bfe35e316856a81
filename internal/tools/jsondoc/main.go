// Command jsondoc writes docs/json.md: the field names of what --json prints, taken
// from the types and their comments, so that the page cannot drift from the code.
//
//	go run ./internal/tools/jsondoc
package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"strings"
)

// files hold the types in the order of the page.
var files = []string{
	"report/content.go", "report/replay.go", "report/weighing_prevented.go", "report/weighing_override.go", "report/weighing_shift.go", "plan/slab.go", "plan/panel.go", "walk/walk.go", "source/fact.go", "source/prove.go",
	"working/working.go", "source/cite.go", "job/status.go", "job/problem.go", "job/prove.go", "job/prove_cases.go", "causes/calibrate.go",
}

const head = `# What --json prints

Field names are stable: a name is never used for something else, and one that goes is named in CHANGES.md.
Times are UTC in RFC 3339; the site's zone is in head.zone. The suffix of a name is its unit (_m, _C, _MPa,
_kg_m3 ...); a share or a chance is 0-1. A point is [x, y] in metres. What nobody knows is absent or null,
never zero. This page is written by ` + "`go run ./internal/tools/jsondoc`" + `.

| command | prints |
|---|---|
| demo --json | dir, page_one (PageOne), files |
| new --json | dir, status (StatusReport) |
| status --json | StatusReport |
| causes --json | slab (SlabAnswer), findings (list of FindingSheet); with --if: Shift |
| window --json | list of PourDay |
| whatif --json | list of WhatIf |
| replay --json | Replay |
| report --out F.json | Content; with --json: file, bytes, data_hash |
| open --json | address |
| prove --json | Proof; with --calibration: Calibration |
| schema | JSON Schema of job.json |
`

func main() {
	page, err := Page(".")
	if err == nil {
		err = os.WriteFile(filepath.Join("docs", "json.md"), []byte(page), 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "jsondoc: "+err.Error())
		os.Exit(1)
	}
}

// Page returns the page for the sources below root.
func Page(root string) (string, error) {
	var b strings.Builder
	b.WriteString(head)
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, name), nil, parser.ParseComments)
		if err != nil {
			return "", err
		}
		for _, decl := range file.Decls {
			writeTypes(&b, decl)
		}
	}
	return b.String(), nil
}

func writeTypes(b *strings.Builder, decl ast.Decl) {
	gen, ok := decl.(*ast.GenDecl)
	if !ok || gen.Tok != token.TYPE {
		return
	}
	for _, spec := range gen.Specs {
		named := spec.(*ast.TypeSpec)
		body, ok := named.Type.(*ast.StructType)
		if !ok || !named.Name.IsExported() {
			continue
		}
		rows := fieldRows(body)
		if len(rows) == 0 {
			continue
		}
		fmt.Fprintf(b, "\n## %s\n%s\n\n| field | type | meaning |\n|---|---|---|\n", named.Name.Name, oneLine(gen.Doc.Text()))
		for _, row := range rows {
			b.WriteString(row)
		}
	}
}

func fieldRows(body *ast.StructType) []string {
	var rows []string
	for _, f := range body.Fields.List {
		if f.Tag == nil {
			continue
		}
		name, _, _ := strings.Cut(reflect.StructTag(strings.Trim(f.Tag.Value, "`")).Get("json"), ",")
		if name == "" || name == "-" {
			continue
		}
		rows = append(rows, fmt.Sprintf("| %s | %s | %s |\n", name, typeText(f.Type), oneLine(f.Comment.Text())))
	}
	return rows
}

func oneLine(text string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(text), " "), "|", "\\|")
}

// typeText writes a Go type as a reader of JSON sees it.
func typeText(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.StarExpr:
		return typeText(e.X)
	case *ast.ArrayType:
		return "list of " + typeText(e.Elt)
	case *ast.MapType:
		return "object of " + typeText(e.Value)
	case *ast.SelectorExpr:
		return plainName(e.Sel.Name)
	case *ast.Ident:
		return plainName(e.Name)
	}
	return "value"
}

func plainName(name string) string {
	switch name {
	case "string":
		return "text"
	case "float64", "int", "uint64":
		return "number"
	case "bool":
		return "true or false"
	case "Time":
		return "time"
	}
	return name
}
