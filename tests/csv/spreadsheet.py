"""Sheets as CSV, read back by Python's own csv and by a spreadsheet program.

    spreadsheet.py GROAT_BINARY

1. Python's csv reads every sheet of the sample books: each figure of `--as json` stands there as a plain number (RFC 4180, UTF-8 with its
   mark, no figure with a group mark, a sign or a unit in it).
2. LibreOffice opens the same files (told what its window finds out by itself: commas, quotation marks, UTF-8): every number is a number, every text the same
   text, and nothing has become a formula; also where names in the books begin with = + - @ or hold quotes, commas and line ends.
   Skipped where `soffice` is not installed.
"""

import csv
import io
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml
from collections import Counter
from decimal import Decimal

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "browser"))
import pages  # noqa: E402

OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")

HOSTILE = ["=1+1", "+1+1", "-1+1", "@SUM(A1)", "=HYPERLINK(\"x\")", "half, and \"half\"", "'quoted", "1/2 loaf", "3-4"]


def plain(text):
    """`12.5 g` and `1.234 kg` of the JSON are plain numbers in a CSV, by weight in the unit of the figure."""
    return Decimal(text) if NUMBER.fullmatch(text) else None


def rows_of(text):
    return list(csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=""), strict=True))


def check_figures(sheet, text, document):
    if not text.startswith("\ufeff"):
        yield "no mark of UTF-8"
    if re.search(r"(?<!\r)\n", re.sub(r'"(?:[^"]|"")*"', "", text)):
        yield "a line that does not end with CR LF"
    cells = Counter(Decimal(cell) for row in rows_of(text) for cell in row if NUMBER.fullmatch(cell))
    figures = Counter(plain(each) for each in pages.figures_of(document) if plain(each) is not None)
    if figures - cells:
        yield f"figures of the JSON are not there: {[str(each) for each in (figures - cells).elements()][:5]}"


def spreadsheet_cells(file):
    """The rows of a spreadsheet as (kind, value), without what is empty at their ends."""
    for row in xml.parse(file).iter(TABLE + "table-row"):
        cells = []
        for cell in row:
            kind = cell.get(OFFICE + "value-type")
            value = cell.get(OFFICE + "value")
            if cell.get(TABLE + "formula") is not None:
                kind = "formula"
            if kind == "date":
                value = cell.get(OFFICE + "date-value")
            if kind == "string":
                value = "\n".join(text_of(p) for p in cell.findall(TEXT + "p"))
            repeated = int(cell.get(TABLE + "number-columns-repeated", "1"))
            cells += [(kind, value)] * (repeated if kind else min(repeated, 100))
        while cells and cells[-1][0] is None:
            cells.pop()
        for _ in range(min(int(row.get(TABLE + "number-rows-repeated", "1")), 50)):
            yield cells


def text_of(paragraph):
    words = paragraph.text or ""
    for each in paragraph:
        if each.tag == TEXT + "s":
            words += " " * int(each.get(TEXT + "c", "1"))
        else:
            words += text_of(each)
        words += each.tail or ""
    return words


def check_cells(rows, cells):
    """What the spreadsheet made of the rows of the CSV."""
    cells = list(cells)
    while cells and not cells[-1]:
        cells.pop()
    if len(cells) != len(rows):
        yield f"{len(rows)} rows have become {len(cells)}"
    for number, (row, got) in enumerate(zip(rows, cells), 1):
        while row and row[-1] == "":
            row.pop()
        if len(row) != len(got):
            yield f"row {number}: {len(row)} cells have become {len(got)}"
        for cell, (kind, value) in zip(row, got):
            if cell == "":
                same = kind is None
            elif NUMBER.fullmatch(cell):
                same = kind in ("float", "percentage") and Decimal(value) == Decimal(cell)
            elif kind == "date":                       # 2026-11-25 is a day for a spreadsheet too, November 2026 its first
                same = value == cell or re.fullmatch(r"[A-Z][a-z]+ " + value[:4], cell)
            else:
                same = kind == "string" and value == cell
            if not same:
                yield f"row {number}: {cell!r} has become {kind} {value!r}"


def hostile_books(folder):
    """A shop in which names are what a spreadsheet might take for something else."""
    shutil.copytree(pages.ROOT / "tests" / "transcripts" / "plain", folder)
    order = "\n".join(f"  - {{item: biscuit, as: {json.dumps(name)}, count: 1, price: {{given: 5.00}}}}" for name in HOSTILE)
    ways = "\n".join(f"  {json.dumps(name)}: {{holds: {n}}}" for n, name in enumerate(HOSTILE, 2))
    tasks = "".join(f"\n  - {{task: {json.dumps(name)}, by: baker, minutes: 1}}" for name in HOSTILE)
    formula = folder / "formulas" / "biscuit.yaml"
    text = formula.read_text(encoding="utf-8")
    formula.write_text(text.replace("sold as:\n", f"sold as:\n{ways}\n", 1).replace("labour:", f"labour:{tasks}", 1), encoding="utf-8")
    (folder / "orders" / "hostile.yaml").write_text(
        f"order: hostile\nclient: \"=cmd|' /C calc'!A0\"\ndate: 2026-11-25\nnotes: \"-2+3\"\nlines:\n{order}\n", encoding="utf-8")


def main():
    groat = pathlib.Path(sys.argv[1]).resolve()
    wrong, compared = [], 0
    with tempfile.TemporaryDirectory() as directory:
        folder = pathlib.Path(directory)
        hostile_books(folder / "books")
        sheets = [*pages.SHEETS, (folder / "books", "quote hostile"), (folder / "books", "quote hostile --for maker"), (folder / "books", "make hostile")]
        texts = {}
        for number, sheet in enumerate(sheets, 1):
            text = pages.ask(groat, sheet, "csv")
            name = f"{number:02}"
            (folder / f"{name}.csv").write_bytes(text.encode("utf-8"))
            texts[name] = sheet, text
            document = json.loads(pages.ask(groat, sheet, "json"))
            compared += sum(1 for _ in pages.figures_of(document))
            wrong += [f"{sheet[1]}: {each}" for each in check_figures(sheet, text, document)]
        if shutil.which("soffice"):
            subprocess.run(["soffice", f"-env:UserInstallation=file://{directory}/profile", "--headless", "--infilter=CSV:44,34,76",
                            "--convert-to", "fods", "--outdir", directory, *(f"{directory}/{name}.csv" for name in texts)], check=True, timeout=300,
                           stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            for name, (sheet, text) in texts.items():
                wrong += [f"{sheet[1]}: spreadsheet: {each}" for each in
                          check_cells(rows_of(text), spreadsheet_cells(folder / f"{name}.fods"))]
        else:
            print("soffice is not installed: read by Python's csv only")
    for each in wrong:
        print(each)
    print(f"{compared} figures in {len(sheets)} sheets, {len(wrong)} wrong")
    return 1 if wrong or not compared else 0


if __name__ == "__main__":
    sys.exit(main())
