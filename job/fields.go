package job

import (
	"reflect"
	"strings"
)

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// fieldsOf returns the fields of a struct by their JSON names.
func fieldsOf(t reflect.Type) map[string]reflect.StructField {
	fields := map[string]reflect.StructField{}
	for i := range t.NumField() {
		if name := jsonName(t.Field(i)); name != "" {
			fields[name] = t.Field(i)
		}
	}
	return fields
}

func fieldNames(t reflect.Type) []string {
	var names []string
	for i := range t.NumField() {
		if name := jsonName(t.Field(i)); name != "" {
			names = append(names, name)
		}
	}
	return names
}

func jsonName(f reflect.StructField) string {
	if !f.IsExported() {
		return ""
	}
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	switch name {
	case "-":
		return ""
	case "":
		return f.Name
	}
	return name
}
