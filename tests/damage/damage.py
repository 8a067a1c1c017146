"""That no figure is made of anything damaged. Takes the sample bakery, damages it in one place, and asks for sheets: each must
be refused, or be the same to the last byte as that of the sound books. Where the damage is no error (a line less is another
book), there is nothing to hold a sheet against, and it is passed over.

    damage.py GROAT [--every N] [--from K] [--books FOLDER]

Every N-th damage is tried, from the K-th on. Each line of each file is taken out, misspelt, written twice, cut off within, and
has a `---` put before it; and each file is cut off after it. That the test can find something is shown at the end: enough sheets
must have been refused, and enough given in spite of an error.
"""

import argparse
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
TOLD = re.compile(r"^groat: \d+ errors?, in nothing that is used here$", re.M)
SHEETS = ["quote 2026-041 --for maker", "quote 2026-042", "quote 2026-043 --for maker", "cost 'lemon tart'", "cost 'milk roll' --as json",
          "label 'rye-plum sandwich' --in 'box of 12' --for maker", "make 2026-041 2026-043", "buy 2026-041 --on 2026-11-25",
          "menu 'winter counter'", "compare butter plum 'box for 12'", "yields lemon", "runs 'rye shell'", "runs --order 2026-041",
          "whatif 2026-041 --scenario 'a dear winter'", "whatif 'apple cake' --between 2026-11-10 2026-12-31",
          "convert '1 cup' 'rye flour' g"]


def words_of(groat, sheet):
    words = re.findall(r"'[^']*'|\S+", sheet)
    words = [word.strip("'") for word in words]
    if "--on" not in words and words[0] not in ("quote", "make", "convert"):
        words += ["--on", "2026-11-25"]
    return [str(groat), *words]


def run(groat, sheet, books):
    done = subprocess.run([*words_of(groat, sheet), "--books", str(books)], capture_output=True, timeout=60, check=False,
                          stdin=subprocess.DEVNULL)
    return done.returncode, done.stdout, done.stderr.decode("utf-8", "replace")


def misspelt(line):
    """One letter of the first word another."""
    return re.sub(r"[a-z](?=[a-z])", lambda match: "q" if match.group() != "q" else "k", line, count=1)


def damages_of(lines):
    """Names and texts of a file damaged in each way at each line."""
    for i, line in enumerate(lines):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        for name, changed in [("taken out", []), ("misspelt", [misspelt(line)]), ("twice", [line, line]),
                              ("cut off within", [line[:len(line) * 2 // 3]]), ("--- before", ["---", line]),
                              ("value misspelt", [re.sub(r"(\d)", r"\1x", line, count=1)]), ("no value", [re.sub(r":.*", ":", line, count=1)])]:
            if changed != [line]:
                yield f"line {i + 1} {name}", lines[:i] + changed + lines[i + 1:]
        yield f"cut off after line {i + 1}", lines[:i + 1] + ["'"]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("groat", type=pathlib.Path)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--from", type=int, default=0, dest="first")
    parser.add_argument("--books", type=pathlib.Path, default=ROOT / "samples" / "bakery")
    options = parser.parse_args()
    groat = options.groat.resolve()
    tried = refused = given = wrong = 0
    with tempfile.TemporaryDirectory() as directory:
        books = pathlib.Path(directory) / "books"
        shutil.copytree(options.books, books)
        sound = {}
        for sheet in SHEETS:
            code, sound[sheet], err = run(groat, sheet, books)
            if code != 0:
                raise SystemExit(f"'{sheet}' fails without damage: {err}")
        files = sorted(path for path in books.rglob("*.yaml") if path.parent.name != "import")
        number = 0
        for file in files:
            text = file.read_text(encoding="utf-8")
            for what, lines in damages_of(text.split("\n")):
                number += 1
                if number <= options.first or (number - options.first) % options.every != 0:
                    continue
                file.write_text("\n".join(lines), encoding="utf-8")
                tried += 1
                for sheet in SHEETS:
                    code, out, err = run(groat, sheet, books)
                    at = f"{file.relative_to(books)}: {what}: {sheet}"
                    if code >= 70 or code < 0:
                        wrong += 1
                        print(f"{at}: crashed with exit code {code}\n{err}")
                    elif code != 0:
                        refused += 1
                        if out:
                            wrong += 1
                            print(f"{at}: refused, yet something was printed")
                    elif TOLD.search(err):
                        given += 1
                        if out != sound[sheet]:
                            wrong += 1
                            print(f"{at}: another sheet than that of the sound books\n{err}")
            file.write_text(text, encoding="utf-8")
    print(f"{tried} damages: {refused} sheets refused, {given} given in spite of an error, {wrong} of them wrong")
    if refused < tried or given < tried:
        raise SystemExit("too few of them: this test has lost its point")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
