#!/usr/bin/env python3
"""Holds the table of findings (lib/groat/base/codes_of_*.hpp) against the tests and the source.

Each code is raised by a test: it stands in brackets in a transcript, as it is printed, or as a word of its own in a text
that a unit test compares with. What is told on the command line has no code in front of a user: of these the sentence
stands in a transcript. The severity of the table is one that is printed. And no behaviour hangs on the spelling of a code: nothing in lib/ and cli/ compares one with a text.

    codes_test.py ROOT          checks the tree at ROOT
    codes_test.py --self-test   shows that each kind of breach is found
"""
import pathlib
import re
import sys

# Of a command line: told without their codes.
TOLD = {
    "bad-aim": "is nothing a menu can reach",
    "bad-count": "is no number of prices",
    "unknown-item": "nothing on this menu is called",
    "words": "an amount and a unit are needed",
}
# Limits that keep a search from going on for ever. No books are known that meet them.
LIMITS = {"purchase-too-hard", "tier-too-wide"}
# Tests of the findings themselves raise what they like.
OWN = {"codes_test.cpp", "diagnostic_test.cpp", "judgement_test.cpp"}
BY_SPELLING = re.compile(
    r'\bcode(?:\(\))?(?:\.text\(\))?\s*(?:==|!=)\s*"|\bcode(?:\(\))?\.text\(\)\s*(?:==|!=)'
    r"|\bcode(?:\(\))?(?:\.text\(\))?\.(?:starts_with|ends_with|find|substr|compare)\("
)


def codes_in(text):
    """The codes of a table, each the first text of a row."""
    return re.findall(r'^    \{"([a-z0-9-]+)",', text, re.M)


def words_in(test):
    """The words that look like codes in the texts of a unit test."""
    words = set()
    for text in re.findall(r'"((?:[^"\\\n]|\\.)*)"', test):
        words.update(re.findall(r"(?<![a-z0-9-])[a-z0-9]+(?:-[a-z0-9]+)+(?![a-z0-9-])", text))
        if re.fullmatch("[a-z]+", text):
            words.add(text)
    return words


def unraised(codes, transcripts, tests):
    printed = set(re.findall(r"\[([a-z0-9-]+)\]$", transcripts, re.M))
    compared = set().union(*map(words_in, tests)) if tests else set()
    return [
        code
        for code in codes
        if code not in printed
        and not ("-" in code and code in compared)
        and code not in LIMITS
        and not (code in TOLD and TOLD[code] in transcripts)
    ]


def misjudged(severities, transcripts):
    """The codes that are printed, and never with the severity that the table gives them."""
    printed = {}
    for severity, code in re.findall(r": (error|warning): .*\[([a-z0-9-]+)\]$", transcripts, re.M):
        printed.setdefault(code, set()).add(severity)
    return [code for code, severity in severities if severity not in printed.get(code, {severity})]


def spellings(sources):
    """Where a code is compared with a text: 'file:line'."""
    return [
        f"{place}:{text.count(chr(10), 0, match.start()) + 1}"
        for place, text in sources
        for match in BY_SPELLING.finditer(text)
    ]


def check(root):
    tables = sorted((root / "lib/groat/base").glob("codes_of_*.hpp"))
    table = "".join(path.read_text(encoding="utf-8") for path in tables)
    codes = codes_in(table)
    transcripts = "".join(path.read_text(encoding="utf-8") for path in (root / "tests/transcripts").glob("*.txt"))
    tests = [
        path.read_text(encoding="utf-8") for path in (root / "tests").glob("*/*_test.cpp") if path.name not in OWN
    ]
    sources = [
        (path.relative_to(root).as_posix(), path.read_text(encoding="utf-8"))
        for top in ("lib", "cli")
        for path in sorted((root / top).rglob("*.[hci]pp"))
        if path.name != "codes.hpp"
    ]
    wrong = [f"{code} is raised by no test" for code in unraised(codes, transcripts, tests)]
    severities = re.findall(r'^    \{"([a-z0-9-]+)",\s*Severity::(\w+)', table, re.M)
    wrong += [f"{code} has another severity in the transcripts" for code in misjudged(severities, transcripts)]
    wrong += [f"{code} stands twice in the table" for code in sorted({c for c in codes if codes.count(c) > 1})]
    wrong += [f"{place}: a code is compared with a text" for place in spellings(sources)]
    wrong += [f"{code} is named here, and is no code" for code in sorted({*TOLD, *LIMITS}) if code not in codes]
    if len(codes) < 150:
        wrong.append(f"only {len(codes)} codes were found in the table")
    print("\n".join(wrong) if wrong else f"{len(codes)} codes, each raised by a test")
    return 1 if wrong else 0


def self_test():
    table = '    {"bad-one", Severity::error, "Why.", "Mend."},\n    {"tag",\n     Severity::error, "W", "M"},\n'
    assert codes_in(table) == ["bad-one", "tag"]
    codes = ["bad-one", "tag", "bad-aim"]
    assert unraised(codes, "", []) == codes
    told = f"x: error: no [bad-one]\ny: error: a tag [tag]\ngroat: 'x' {TOLD['bad-aim']}\n"
    assert unraised(codes, told, []) == []
    assert unraised(["bad-one"], "", ['CHECK(marks("x") == "3:4+1 bad-one not-bad");']) == []
    assert unraised(["bad-one"], "[bad-one] is spoken of\n", ['CHECK(code == "bad-one-more");']) == ["bad-one"]
    assert unraised(["tag"], "", ['CHECK(name == "tag");']) == ["tag"]  # a word may be anything
    assert misjudged([("bad-one", "error"), ("c", "error")], "x: error: no [bad-one]\n") == []
    assert misjudged([("bad-one", "error")], "x: warning: no [bad-one]\n") == ["bad-one"]
    for bad in ('flaw.code == "x"', 'error().code != "x"', 'code.text() == word', 'code.starts_with("unknown-")'):
        assert spellings([("a.hpp", "\n" + bad)]) == ["a.hpp:2"], bad
    for good in ('flaw.code == Code("x")', "each.code == diagnostic.code", "code.text()", "offer.code.size()"):
        assert spellings([("a.hpp", good)]) == [], good
    print("each kind of breach is found")
    return 0


if __name__ == "__main__":
    sys.exit(self_test() if sys.argv[1] == "--self-test" else check(pathlib.Path(sys.argv[1])))
