#!/usr/bin/python3
"""Reads DXF files with a library that knows nothing of ours and audits them: no error, no fix."""

import sys

import ezdxf

for path in sys.argv[1:]:
    document = ezdxf.readfile(path)
    if document.dxfversion != "AC1009":
        sys.exit(f"{path}: not release 12 but {document.dxfversion}")
    auditor = document.audit()
    for problem in auditor.errors + auditor.fixes:
        sys.exit(f"{path}: {problem.code} {problem.message}")
    layers = {entity.dxf.layer for entity in document.modelspace()}
    if not layers <= {"OUTLINE", "CUT_OUT", "HOLE", "HOLE_TAP", "HOLE_MATCH", "FOLD", "WORDS"}:
        sys.exit(f"{path}: layers {sorted(layers)}")
print(f"{len(sys.argv) - 1} files, no error, no fix")
