// Package dxf reads and writes drawings in the open exchange form of group codes
// and values (DXF).
//
// In goes a file, text or binary, of any release; out comes a [Drawing]: every line
// in plan with its layer, curves as chords to a stated tolerance, blocks taken
// apart, words, units, and a list of what was left out and why. What cannot be read
// ends in an [Error] that says the line of the file and the group code. [Join] makes
// closed outlines of loose lines. Out goes a [Writer]: lines, circles and words on
// named layers in release 12 (AC1009), which every reader knows.
//
// It leaves out what is no line in plan: hatches, solids, meshes, pictures,
// dimensions and paper space. It knows nothing of what a layer means.
//
// The group codes are from memory of the published DXF reference; that they are
// right is held by an independent reader in the tests (ezdxf), which reads the same
// files and finds the same lengths, and reads what we write without complaint.
//
// The functions most people need are [Read], [Join] and [New].
package dxf
