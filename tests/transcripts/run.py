"""Runs the command as a user would and compares everything it says with the transcripts kept here.

    run.py --groat build/groat [--accept] [NAME...]

Each *.txt file here holds cases:

    == what the case is about
    -- change FILE            the folder starts as a copy of plain/; OLD becomes NEW in FILE, once
    OLD
    => NEW                    (further lines of NEW follow as they are)
    -- write FILE             the file is what follows
    -- make FILE EXPRESSION   the file is what the Python expression gives (text or bytes), for what is too large to show
    -- remove FILE
    -- folder NAME            an empty folder
    -- groat WORDS            the command, run before the one that is looked at; it must do what it is told
    $ groat check             the command, run inside the folder; words are split as a shell does
    -- exit 1
    -- out                    standard output
    -- err                    standard error

It runs on 29 February 2040 (by `faketime`, where that is found): what a case prints must not depend on the day it is run on.
Beyond that every case must end by itself within 20 seconds, must not crash, and a `cost` or `quote` that fails must not have
printed anything of a sheet. The console blocks of README.md and of the manual are cases as well, and the books that they show.
`--accept` writes what was printed into the files: read the diff before you keep it.
"""

import argparse
import difflib
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
LIMIT = 20
ANOTHER_DAY = [shutil.which("faketime"), "2040-02-29 12:00:00"] if shutil.which("faketime") else []


def run(groat, command, folder):
    words = shlex.split(command)
    assert words[0] == "groat", command
    done = subprocess.run([*ANOTHER_DAY, str(groat), *words[1:]], cwd=folder, capture_output=True, timeout=LIMIT, check=False,
                          stdin=subprocess.DEVNULL)
    return done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")


class Case:
    def __init__(self, title):
        self.title = title
        self.steps = []      # (verb, words, lines)
        self.command = None
        self.exit = 0
        self.out = []
        self.err = []
        self.after = []      # (FILE, present or not) checked afterwards


def read_cases(path):
    cases, case, taking = [], None, None
    for line in path.read_bytes().decode("utf-8").split("\n"):
        if line.startswith("== "):
            case = Case(line[3:])
            cases.append(case)
            taking = None
        elif line.startswith("$ ") and case and case.command is None:
            case.command = line[2:]
            taking = None
        elif line.startswith("-- ") and case:
            verb, _, rest = line[3:].partition(" ")
            taking = None
            if verb == "exit":
                case.exit = int(rest)
            elif verb == "out":
                taking = case.out
            elif verb == "err":
                taking = case.err
            elif verb in ("absent", "present"):
                case.after.append((rest, verb == "present"))
            else:
                taking = []
                case.steps.append((verb, rest, taking))
        elif taking is not None:
            taking.append(line)
        elif line.strip() and case is None:
            raise SystemExit(f"{path.name}: text before the first case: {line}")
    for case in cases:
        for lines in [case.out, case.err] + [step[2] for step in case.steps]:
            while lines and lines[-1] == "":
                lines.pop()
    return cases


def write_cases(path, cases):
    text = ""
    for case in cases:
        text += f"== {case.title}\n"
        for verb, rest, lines in case.steps:
            text += f"-- {verb} {rest}\n" + "".join(line + "\n" for line in lines)
        text += f"$ {case.command}\n-- exit {case.exit}\n"
        for file, present in case.after:
            text += f"-- {'present' if present else 'absent'} {file}\n"
        for name, lines in [("out", case.out), ("err", case.err)]:
            if lines:
                text += f"-- {name}\n" + "".join(line + "\n" for line in lines)
        text += "\n"
    path.write_text(text.rstrip("\n") + "\n", encoding="utf-8")


def prepare(groat, case, folder):
    for verb, rest, lines in case.steps:
        if verb == "groat":
            code, _, err = run(groat, "groat " + rest, folder)
            if code != 0:
                raise SystemExit(f"{case.title}: 'groat {rest}' failed: {err}")
            continue
        name, _, more = rest.partition(" ")
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        if verb == "write":
            file.write_text("".join(line + "\n" for line in lines), encoding="utf-8")
        elif verb == "make":
            content = eval(more)  # our own test files
            file.write_bytes(content if isinstance(content, bytes) else content.encode())
        elif verb == "folder":
            file.mkdir()
        elif verb == "remove":
            shutil.rmtree(file) if file.is_dir() else file.unlink()
        elif verb == "change":
            at = next(i for i, line in enumerate(lines) if line.startswith("=> ") or line == "=>")
            old = "\n".join(lines[:at])
            new = "\n".join([lines[at][3:], *lines[at + 1:]])
            text = file.read_text(encoding="utf-8")
            if text.count(old) != 1:
                raise SystemExit(f"{case.title}: '{old}' stands {text.count(old)} times in {name}")
            file.write_text(text.replace(old, new), encoding="utf-8")
        else:
            raise SystemExit(f"{case.title}: no step is called '{verb}'")


def compare(what, expected, printed):
    if expected == printed:
        return []
    return [f"  {what} differs:", *("    " + line for line in difflib.unified_diff(expected, printed, "expected", "printed", "", "", 2, ""))]


def check_case(groat, case, accept):
    with tempfile.TemporaryDirectory() as directory:
        folder = pathlib.Path(directory) / "books"
        shutil.copytree(HERE / "plain", folder)
        prepare(groat, case, folder)
        try:
            code, out, err = run(groat, case.command, folder)
        except subprocess.TimeoutExpired:
            return [f"  did not end within {LIMIT} seconds"]
        except UnicodeDecodeError as problem:
            return [f"  printed what is not UTF-8: {problem}"]
        wrong = []
        for file, present in case.after:
            if (folder / file).exists() != present:
                wrong.append(f"  {file} should be {'there' if present else 'absent'}")
    if code < 0 or code >= 70:
        wrong.append(f"  crashed with exit code {code}")
    verb = shlex.split(case.command)[1:2]
    if code != 0 and verb in (["cost"], ["quote"], ["menu"]) and out:
        wrong.append("  failed, yet printed something to standard output")
    printed = [out.split("\n"), err.split("\n")]
    for lines in printed:
        while lines and lines[-1] == "":
            lines.pop()
    if accept:
        case.exit, case.out, case.err = code, *printed
        return wrong
    if code != case.exit:
        wrong.append(f"  exit code should be {case.exit}, but is {code}")
    return wrong + compare("standard output", case.out, printed[0]) + compare("standard error", case.err, printed[1])


CONSOLE = re.compile(r"^```console\n(.*?)^```$", re.M | re.S)
BOOKS = re.compile(r"^```yaml\n(.*?)^```$", re.M | re.S)
PAGES = [ROOT / "README.md", *sorted((ROOT / "cli" / "manual").glob("*.md")), *sorted((ROOT / "lib").glob("*.md"))]


def check_pages(groat, accept):
    """Each console block of README.md and of the manual: `$ groat ...` lines, each followed by all that it prints, or by its
    start and `...`. Those of a page run in a folder of their own that has the samples, one after another. Each block of books,
    put among the sample books. And `groat help` of each page."""
    passed, wrong = 0, []
    for path in PAGES:
        with tempfile.TemporaryDirectory() as directory:
            (pathlib.Path(directory) / "samples").symlink_to(ROOT / "samples")
            ok, failed = check_blocks(groat, accept, directory, path)
        books_ok, books_failed = check_books(groat, path)
        passed += ok + books_ok
        wrong += failed + books_failed
        if path.parent == ROOT / "cli" / "manual" and run(groat, f"groat help {path.stem}", ROOT) != (0, path.read_text(encoding="utf-8"), ""):
            wrong.append(f"{path.relative_to(ROOT)}: 'groat help {path.stem}' prints something else")
    return passed, wrong


def check_blocks(groat, accept, folder, path):
    text = path.read_text(encoding="utf-8")
    passed, wrong = 0, []

    def renew(block):
        nonlocal passed
        renewed = ""
        for part in re.split(r"^(?=\$ )", block.group(1), flags=re.M):
            if not part.strip():
                continue
            first, _, rest = part.partition("\n")
            if not first.startswith("$ groat"):
                wrong.append(f"{path.relative_to(ROOT)}: not a call of groat: {first}")
                renewed += part
                continue
            code, out, err = run(groat, first[2:], folder)
            printed = (err + out).rstrip("\n") + "\n"
            expected = rest.rstrip("\n") + "\n"
            if ("\n" + expected).endswith("\n...\n"):
                start = expected[:-4]
                same = printed.startswith(start)
                shown = "".join(line + "\n" for line in printed.split("\n")[:start.count("\n")]) + "...\n"
            else:
                same, shown = printed == expected, printed
            renewed += first + "\n" + (shown if accept else rest)
            if same:
                passed += 1
            else:
                wrong.append(f"{path.relative_to(ROOT)}: {first}\n" + "\n".join(
                    compare(f"output (exit code {code})", expected.split("\n"), shown.split("\n"))))
        return f"```console\n{renewed}```"

    renewed = CONSOLE.sub(renew, text)
    if accept:
        path.write_text(renewed, encoding="utf-8")
        wrong = []
    return passed, wrong


# The kind of file that a block of books belongs to, by its first key.
KINDS = {"test": "yields", "supplier": "prices", "bought": "purchases", "order": "orders", "menu": "menus", "run": "runs",
         "formula": "formulas", "shop": "shop", "sheets": "shop", "stock": "stock", "scenario": "scenarios", "language": "words"}
ERROR_AT = re.compile(r"^(\S+?):\d+:\d+: error: .*", re.M)


def check_books(groat, path):
    """Puts each block of YAML among the books of samples/bakery, as a file of its kind: none of it may be an error, but for a
    name that the bakery has as well."""
    passed, wrong = 0, []
    for block in BOOKS.finditer(path.read_text(encoding="utf-8")):
        text = block.group(1)
        with tempfile.TemporaryDirectory() as directory:
            books = pathlib.Path(directory) / "books"
            shutil.copytree(ROOT / "samples" / "bakery", books)
            if "\ncolumns:" in text:
                code, said = import_by(groat, text, books)
            else:
                code, said = check_as_file(groat, text, books)
        if code in (0, 1) and not said:
            passed += 1
        else:
            wrong.append(f"{path.relative_to(ROOT)}: the books that begin with '{text.splitlines()[0]}' (exit code {code})\n"
                         + "".join(f"  {each}\n" for each in said))
    return passed, wrong


def check_as_file(groat, text, books):
    first = text.partition(":")[0]
    kind = KINDS.get(first, "ingredients")
    file = books / kind / "manual.yaml"
    if kind in ("shop", "stock", "scenarios", "words"):
        file = books / f"{kind}.yaml"
    file.parent.mkdir(exist_ok=True)
    if first == "sheets":
        text = re.sub(r"^sheets:.*\n(?: .*\n)*", "", file.read_text(encoding="utf-8"), flags=re.M) + text
    file.write_text(text, encoding="utf-8")
    code, out, err = run(groat, "groat check --on 2026-11-25", books)
    name = str(file.relative_to(books))
    return code, [each.group(0) for each in ERROR_AT.finditer(out + err) if each.group(1) == name and "twice" not in each.group(0)]


def import_by(groat, text, books):
    (books / "map.yaml").write_text(text, encoding="utf-8")
    (books / "list.csv").write_text("Item,Description,Pack,Price\nF-1050,Plain flour,50 lb,31.40\nP-9900,Pallet,1,9.00\n")
    code, _, err = run(groat, "groat import list.csv --map map.yaml --on 2026-12-01", books)
    return code, err.splitlines() if code else []


def main():
    parser = argparse.ArgumentParser(description="Compare what groat says with the transcripts.")
    parser.add_argument("--groat", required=True, type=pathlib.Path)
    parser.add_argument("--accept", action="store_true")
    parser.add_argument("names", nargs="*", help="only the files of these names")
    options = parser.parse_args()
    groat = options.groat.resolve()
    passed = failed = 0
    for path in sorted(HERE.glob("*.txt")):
        if options.names and path.stem not in options.names:
            continue
        cases = read_cases(path)
        for case in cases:
            wrong = check_case(groat, case, options.accept)
            if wrong:
                failed += 1
                print(f"{path.name}: {case.title}\n" + "\n".join(wrong))
            else:
                passed += 1
        if options.accept:
            write_cases(path, cases)
    if not options.names:
        ok, wrong = check_pages(groat, options.accept)
        passed += ok
        failed += len(wrong)
        for each in wrong:
            print(each)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or passed == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
