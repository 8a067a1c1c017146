#!/usr/bin/env python3
"""Looks through README.md, DEVELOPERS.md, the manual (cli/manual/*.md) and the library's pages (lib/*.md).

Every link leads to a file that exists, and to a heading in it where it names one. README.md begins with its
name and a paragraph, has fewer than 200 lines, and leads to every page. A page of the manual begins with a
heading and the question that it answers, fits a terminal of 80 columns (but for tables and what the command
prints), and is not called like a command: `groat help` explains commands first.

In DEVELOPERS.md each line that a diff adds stands in the file it names, each function of a walk in the header that its row names, and each decision's test has the
title that is told.

    pages_test.py ROOT           checks the pages below ROOT
    pages_test.py --self-test    shows that each kind of breach is found
"""
import pathlib
import re
import sys
import tempfile

CODE = re.compile(r"^```.*?^```$", re.M | re.S)
LINK = re.compile(r"!?\[[^\]]*\]\(([^)\s]+)\)")
LONGEST_README = 199
WIDEST = 80


def anchors_of(text):
    """The headings of a page as links name them: small letters, blanks as '-', no marks."""
    found = set()
    for line in CODE.sub("", text).split("\n"):
        if line.startswith("#"):
            words = line.lstrip("#").strip().lower()
            found.add(re.sub(r"[^\w\- ]", "", words).replace(" ", "-"))
    return found


def link_breaches(page, root, text):
    name = page.relative_to(root)
    for target in LINK.findall(CODE.sub("", text)):
        if re.match(r"[a-z]+:", target):
            continue
        place, _, anchor = target.partition("#")
        to = (page.parent / place).resolve() if place else page
        if not to.exists():
            yield f"{name}: a link leads to '{target}', which is not there"
        elif anchor and anchor not in anchors_of(to.read_text(encoding="utf-8")):
            yield f"{name}: a link leads to '{target}', but there is no such heading"


def opening(text):
    """The first line and the paragraph below it."""
    heading, _, rest = text.partition("\n")
    return heading, rest.lstrip("\n").partition("\n\n")[0]


def readme_breaches(root, text):
    lines = text.count("\n")
    if lines > LONGEST_README:
        yield f"README.md: {lines} lines; what is above {LONGEST_README} belongs into the manual"
    heading, paragraph = opening(text)
    if not heading.startswith("# ") or len(paragraph) < 100 or paragraph[0] in "#`|-":
        yield "README.md: it does not begin with a paragraph that says what this is for"
    targets = {target.partition("#")[0] for target in LINK.findall(text)}
    for page in [*manual_pages(root), *sorted((root / "lib").glob("*.md"))]:
        place = str(page.relative_to(root))
        if place not in targets:
            yield f"README.md: no link leads to {place}"


def manual_pages(root):
    return sorted((root / "cli" / "manual").glob("*.md"))


def manual_breaches(page, root, text):
    name = page.relative_to(root)
    heading, paragraph = opening(text)
    if not heading.startswith("# ") or not paragraph.endswith("?"):
        yield f"{name}: it does not begin with a heading and the question that it answers"
    printed = False
    for number, line in enumerate(text.split("\n"), 1):
        if line.startswith("```"):
            printed = line == "```console"
        if len(line) > WIDEST and not printed and not line.startswith("|"):
            yield f"{name}:{number}: wider than {WIDEST} columns"
    if not text.endswith("\n"):
        yield f"{name}: the last line does not end"
    if (root / "cli" / f"{page.stem}_command.cpp").exists():
        yield f"{name}: a command is called '{page.stem}' as well"


STEP = re.compile(r"^\| `(\w+)` \| `([\w/]+\.hpp)` \|", re.M)
PROOF = re.compile(r"^\| [^|`]+ \| `(tests/[\w/]+_test\.cpp)` \| ([^|]+) \|$", re.M)
DIFF = re.compile(r"^```diff\n(.*?)^```$", re.M | re.S)
TITLE = re.compile(r'TEST_CASE\(\s*((?:"(?:\\.|[^"\\])*"\s*)+)')


def titles_of(text):
    """Of each test its title, which may stand on several lines."""
    return {"".join(re.findall(r'"((?:\\.|[^"\\])*)"', parts)) for parts in TITLE.findall(text)}


def developer_breaches(root, text):
    for function, place in STEP.findall(text):
        header = root / "lib" / "groat" / place
        halves = [half for half in (header, header.with_suffix(".ipp")) if half.exists()]
        if not header.exists():
            yield f"DEVELOPERS.md: a walk goes through {place}, which is not there"
        elif not any(re.search(rf"\b{function}\(", half.read_text(encoding="utf-8")) for half in halves):
            yield f"DEVELOPERS.md: a walk calls {function}, which is not in {place}"
    for block in DIFF.findall(text):
        place = None
        for line in block.splitlines():
            if line.startswith(" ") and "/" in line and " " not in line[1:]:
                place = root / line[1:]
            elif line.startswith("+") and (place is None or not place.exists() or line[1:] not in place.read_text(encoding="utf-8").splitlines()):
                yield f"DEVELOPERS.md: '{line[1:].strip()}' is shown, and does not stand in {place and place.relative_to(root)}"
    for place, title in PROOF.findall(text):
        if not (root / place).exists():
            yield f"DEVELOPERS.md: a decision is proved by {place}, which is not there"
        elif title.strip() not in titles_of((root / place).read_text(encoding="utf-8")):
            yield f"DEVELOPERS.md: no test of {place} is called '{title.strip()}'"


def breaches_in(root):
    breaches, pages = [], 0
    for page in [root / "README.md", root / "DEVELOPERS.md", *manual_pages(root), *sorted((root / "lib").glob("*.md"))]:
        text = page.read_text(encoding="utf-8")
        pages += 1
        breaches += link_breaches(page, root, text)
        if page.name == "README.md":
            breaches += readme_breaches(root, text)
        if page.name == "DEVELOPERS.md":
            breaches += developer_breaches(root, text)
        if page.parent == root / "cli" / "manual":
            breaches += manual_breaches(page, root, text)
    return breaches, pages


SOUND = {
    "README.md": "# shop\n\n" + "It sells bread. " * 10 + "\n\nSee [loaves](cli/manual/loaves.md#white-bread), [more](DEVELOPERS.md).\n",
    "DEVELOPERS.md": "# For developers\n\n```\n[no](link.md)\n```\n\n| `bake` | `oven.hpp` | it bakes |\n| risen | `tests/oven_test.cpp` | it rises |\n\n```diff\n lib/groat/oven.hpp\n+int heat;\n```\n",
    "lib/groat/oven.hpp": "int heat;\n",
    "lib/groat/oven.ipp": "void bake() {}\n",
    "tests/oven_test.cpp": 'TEST_CASE(\n    "it "\n    "rises") {}\n',
    "cli/manual/loaves.md": "# Loaves\n\nWhich bread,\nand how much?\n\n## White bread\n\n```console\n" + "wide " * 30 + "\n```\n",
    "cli/bake_command.cpp": "",
}
BREACHES = [
    ("DEVELOPERS.md", "[gone](gone.md)\n", "which is not there"),
    ("DEVELOPERS.md", "[gone](README.md#gone)\n", "there is no such heading"),
    ("DEVELOPERS.md", "| `boil` | `oven.hpp` | it boils |\n", "which is not in oven.hpp"),
    ("DEVELOPERS.md", "| `heat` | `oven.hpp` | it heats |\n", "which is not in oven.hpp"),
    ("DEVELOPERS.md", "| `boil` | `pot.hpp` | it boils |\n", "pot.hpp, which is not there"),
    ("DEVELOPERS.md", "| sunk | `tests/oven_test.cpp` | it sinks |\n", "no test of tests/oven_test.cpp is called"),
    ("DEVELOPERS.md", "| sunk | `tests/pot_test.cpp` | it sinks |\n", "is proved by tests/pot_test.cpp"),
    ("DEVELOPERS.md", "```diff\n lib/groat/oven.hpp\n+int cold;\n```\n", "'int cold;' is shown, and does not stand in lib/groat/oven.hpp"),
    ("DEVELOPERS.md", "```diff\n lib/groat/pot.hpp\n+int heat;\n```\n", "does not stand in lib/groat/pot.hpp"),
    ("README.md", "\n" * 200, "belongs into the manual"),
    ("cli/manual/loaves.md", "wide " * 30 + "\n", "wider than 80 columns"),
    ("cli/manual/loaves.md", "end", "the last line does not end"),
]
REPLACED = [
    ({"README.md": "# shop\n\n## What\n\n[loaves](cli/manual/loaves.md)\n"}, "does not begin with a paragraph"),
    ({"README.md": SOUND["README.md"].replace("cli/manual/loaves.md#white-bread", "DEVELOPERS.md")}, "no link leads to"),
    ({"cli/manual/loaves.md": "# Loaves\n\nAll of bread.\n\n## White bread\n"}, "the question that it answers"),
    ({"cli/loaves_command.cpp": ""}, "a command is called 'loaves' as well"),
]


def found_in(tree):
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder).resolve()
        for place, text in tree.items():
            (root / place).parent.mkdir(parents=True, exist_ok=True)
            (root / place).write_text(text, encoding="utf-8")
        return breaches_in(root)[0]


def self_test():
    failures = []
    if found_in(SOUND):
        failures.append(f"sound pages are refused: {found_in(SOUND)}")
    cases = [({place: SOUND[place] + text}, expected) for place, text, expected in BREACHES]
    cases += [(tree, expected) for tree, expected in REPLACED]
    for changed, expected in cases:
        found = found_in({**SOUND, **changed})
        if len(found) != 1 or expected not in found[0]:
            failures.append(f"{changed}: expected one breach '{expected}', found {found}")
    print("\n".join(failures) or f"{len(cases)} kinds of breach are found, sound pages are not refused")
    return 1 if failures else 0


def main(arguments):
    if arguments == ["--self-test"]:
        return self_test()
    if len(arguments) != 1:
        print(__doc__)
        return 2
    breaches, count = breaches_in(pathlib.Path(arguments[0]).resolve())
    print("\n".join(breaches) or f"{count} pages are as they should be")
    return 1 if breaches else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
