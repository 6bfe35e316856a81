"""Reads a drawing with ezdxf and prints what it finds as JSON.

The independent reader of the tests: `python3 readback.py CHORD FILE...`, where
CHORD is how far a chord may lie from its curve in drawing units. One line a file.
"""
import json
import sys

from ezdxf import recover


def flat(entity):
    """Yields lines and texts of an entity, insertions taken apart."""
    if entity.dxftype() == "INSERT":
        for one in entity.multi_insert() if entity.mcount > 1 else [entity]:
            for part in one.virtual_entities():
                if part.dxf.layer == "0":
                    part.dxf.layer = entity.dxf.layer
                yield from flat(part)
    else:
        yield entity


def points(entity, chord):
    """Yields runs of points of an entity."""
    kind = entity.dxftype()
    if kind == "LINE":
        yield [entity.dxf.start, entity.dxf.end]
    elif kind in ("LWPOLYLINE", "POLYLINE"):
        for part in entity.virtual_entities():
            yield from points(part, chord)
    else:
        yield list(entity.flattening(chord))


def read(name, chord):
    doc, found = recover.readfile(name)
    audit = doc.audit()
    lengths, lines, texts = {}, {}, []
    for e in (part for entity in doc.modelspace() for part in flat(entity)):
        kind = e.dxftype()
        if kind in ("TEXT", "MTEXT"):
            words = e.plain_text() if kind == "TEXT" else e.text
            texts.append({"layer": e.dxf.layer, "words": words})
        if kind not in ("LINE", "LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE"):
            continue
        length = 0.0
        for run in points(e, chord):
            length += sum(((b.x - a.x) ** 2 + (b.y - a.y) ** 2) ** 0.5 for a, b in zip(run, run[1:]))
        lengths[e.dxf.layer] = lengths.get(e.dxf.layer, 0.0) + length
        lines[e.dxf.layer] = lines.get(e.dxf.layer, 0) + 1
    return {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "complaints": [e.message for e in list(found.errors) + list(audit.errors)],
        "linetypes": {layer.dxf.name: layer.dxf.linetype for layer in doc.layers},
        "lengths": lengths,
        "lines": lines,
        "texts": texts,
    }


for file in sys.argv[2:]:
    print(json.dumps(read(file, float(sys.argv[1]))))
