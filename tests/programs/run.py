#!/usr/bin/env python3
"""A program of samples/programs/ against the output that is kept beside it, from the top of the project.

    run.py PROGRAM OUTPUT            fails with the difference
    run.py --accept PROGRAM OUTPUT   writes it: read the diff
"""
import difflib
import pathlib
import subprocess
import sys

arguments = sys.argv[1:]
accepts = arguments[:1] == ["--accept"]
program, kept = arguments[accepts:]
run = subprocess.run([program], capture_output=True, text=True, encoding="utf-8", timeout=300)
if run.returncode != 0 or run.stderr:
    sys.exit(f"{program} ended with {run.returncode}:\n{run.stderr}")
if accepts:
    pathlib.Path(kept).write_text(run.stdout, encoding="utf-8")
    sys.exit(0)
expected = pathlib.Path(kept).read_text(encoding="utf-8")
difference = difflib.unified_diff(expected.splitlines(), run.stdout.splitlines(), kept, program, lineterm="")
sys.exit(0 if run.stdout == expected else "\n".join(difference))
