#!/usr/bin/env python3
"""Holds our reading of CSV against Python's csv module on random files.

    compare.py --read build/.../read_csv [--count 300] [--seed 1]

The files mix what is hard: quotation marks doubled, closed too early and never, line ends of both kinds within cells and
between rows, empty cells and lines, delimiters of one to three bytes. Python reads them in its strict mode; both must
give the same rows, and where Python refuses a file we must refuse it, behind the same rows. We alone refuse lines that end in CR.
"""
import argparse
import csv
import io
import json
import pathlib
import random
import subprocess
import sys
import tempfile

DELIMITERS = [",", ";", "\t", "|", " ", "§", "¦", "→"]
WORDS = ["plum", "12.50", "", " ", "=1+1", "-3", "@x", "Käse", "面粉", "0012", "a b", "#", "'", "’", "\u00a0"]


def random_file(chance, delimiter):
    """Rows of cells, most of them well written, some not."""
    sloppy = chance.random() < 0.4
    end = chance.choice(["\n", "\r\n"])
    text = ""
    for _ in range(chance.randint(0, 8)):
        cells = []
        for _ in range(chance.choice([0, 1, 1, 2, 3, 5])):
            pieces = [chance.choice(WORDS) for _ in range(chance.randint(0, 3))]
            kind = chance.random()
            if kind < 0.5:
                inner = [chance.choice([*pieces, "\n", "\r\n", delimiter, '""', "\r"]) for _ in range(chance.randint(0, 5))]
                cell = '"' + "".join(inner) + '"'
                if sloppy and chance.random() < 0.1:
                    cell = chance.choice([cell[:-1], cell + "x", cell + ' "', cell[:-1] + '"y"'])
            else:
                cell = "".join(pieces).replace(delimiter, "")
                if chance.random() < 0.2:
                    cell += '"' + chance.choice(WORDS).replace(delimiter, "")
                # what begins with a quotation mark by chance is a quoted cell to both
            cells.append(cell)
        text += delimiter.join(cells) + (end if chance.random() < 0.9 else "\n")
    if text and chance.random() < 0.3:
        text = text.rstrip("\r\n")
    return text


def read_by_python(text, delimiter):
    rows = []
    try:
        for row in csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True):
            rows.append(row)
    except csv.Error:
        return rows, True
    return rows, False


def main():
    parser = argparse.ArgumentParser(description="Compare our reading of CSV with Python's.")
    parser.add_argument("--read", required=True, type=pathlib.Path)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    csv.field_size_limit(1 << 30)
    read = options.read.resolve()
    chance = random.Random(options.seed)
    refused = cells = old_ends = 0
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "x.csv"
        for number in range(options.count):
            delimiter = chance.choice(DELIMITERS)
            text = random_file(chance, delimiter)
            path.write_bytes(text.encode())
            done = subprocess.run([str(read), str(path), delimiter], capture_output=True, timeout=20, check=False)
            if done.returncode not in (0, 1):
                print(f"file {number} ended with {done.returncode}: {text!r}")
                return 1
            ours = [json.loads(line) for line in done.stdout.decode().split("\n") if line], done.returncode == 1
            theirs = read_by_python(text, delimiter)
            if b"[bad-line-end]" in done.stderr:
                # Python takes a CR alone for a line end; we do not, so only what stands before it is alike.
                old_ends += 1
                theirs = theirs[0][:len(ours[0])], True
            if ours != theirs:
                print(f"file {number}, delimiter {delimiter!r}: {text!r}\n  ours   {ours}\n  Python {theirs}\n{done.stderr.decode()}")
                return 1
            refused += theirs[1] and b"[bad-line-end]" not in done.stderr
            cells += sum(len(row) for row in theirs[0])
    print(f"{options.count} files, {cells} cells, {refused} files refused by both, {old_ends} by us alone for a CR: all alike")
    return 0 if cells and refused and refused < options.count else 1


if __name__ == "__main__":
    sys.exit(main())
