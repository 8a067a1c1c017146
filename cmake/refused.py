#!/usr/bin/env python3
"""What must not compile: every case of every tests/refused/*.cpp, each with the words of its error.

A file compiles as CASE 0 and holds cases numbered from 1, so that each fails for its own reason:

    #if CASE == 1
    // refused: could not convert
    groat::Money price = 3;
    #endif

The comment stands in its case or on the line above its #if. Where compilers word it differently, a case
has several such comments, and the error must hold one of them.

    refused.py --work DIR [--jobs N] [--externals FILE] FILE... -- COMPILER FLAGS...
    refused.py --self-test --work DIR -- COMPILER FLAGS...

`--externals` names a header to precompile and put before every file: it saves time and nothing else.
"""
import argparse
import concurrent.futures
import os
import pathlib
import re
import subprocess
import sys

CASE = re.compile(r"\s*#\s*(?:if|elif)\s+CASE\s*==\s*(\d+)")
REFUSED = re.compile(r"//\s*refused:\s*(.*\S)")
PLAIN = {**os.environ, "LC_ALL": "C", "LANGUAGE": ""}  # errors in English, with plain quotes


def cases_in(text):
    """The cases of a file: number -> words, one of which its error must hold."""
    cases, current, pending = {}, None, []
    for line in text.splitlines():
        start, words = CASE.match(line), REFUSED.search(line)
        if start:
            current = int(start.group(1))
            if current in cases:
                raise ValueError(f"CASE {current} stands twice")
            cases[current] = pending + ([words.group(1)] if words else [])
            pending = []
            continue
        if pending and current is not None:
            cases[current] += pending  # they were not just above the next #if
        pending = []
        if words and line.lstrip().startswith("//"):
            pending = [words.group(1)]
        elif words and current is not None:
            cases[current].append(words.group(1))
        elif re.match(r"\s*#\s*(else|endif)\b", line):
            current = None
    for number, expected in cases.items():
        if not expected:
            raise ValueError(f"CASE {number} has no '// refused:' comment")
    if sorted(cases) != list(range(1, len(cases) + 1)):
        raise ValueError(f"the cases are not numbered 1, 2, 3 ...: {sorted(cases)}")
    return cases


def compiled(command, source, case):
    run = subprocess.run(
        [*command, f"-DCASE={case}", "-fsyntax-only", str(source)],
        capture_output=True, text=True, encoding="utf-8", errors="replace", env=PLAIN,
    )
    return run.returncode == 0, run.stderr


def failure_of(command, source, case, expected):
    """What is wrong with one case, or None when it is refused (or, for CASE 0, compiles) as it should."""
    accepted, errors = compiled(command, source, case)
    shown = "".join(f"    {line}\n" for line in errors.splitlines()[:30])
    if case == 0:
        return None if accepted else f"{source}: CASE 0 must compile\n{shown}"
    if accepted:
        return f"{source}: CASE {case} compiles, and must not"
    if not any(words in errors for words in expected):
        return f"{source}: CASE {case} is refused without the words {expected}\n{shown}"
    return None


def precompiled(command, externals, work):
    """The command with the externals precompiled and put first."""
    header = work / externals.name
    if header.resolve() != externals.resolve():
        header.write_text(externals.read_text(encoding="utf-8"), encoding="utf-8")
    built = subprocess.run(
        [*command, "-x", "c++-header", str(header), "-o", f"{header}.gch"],
        capture_output=True, text=True, env=PLAIN,
    )
    if built.returncode != 0:
        print(f"{header} was not precompiled, going on without:\n{built.stderr}")
        return command
    return [*command, "-include", str(header)]


def failures_in(command, sources, jobs):
    """All failures, and how many cases were tried."""
    failures, tries = [], []
    for source in sources:
        try:
            cases = cases_in(source.read_text(encoding="utf-8"))
        except ValueError as error:
            failures.append(f"{source}: {error}")
            continue
        if not cases:
            failures.append(f"{source}: no case")
        tries += [(source, case, expected) for case, expected in {0: [], **cases}.items()]
    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        found = pool.map(lambda one: failure_of(command, *one), tries)
        failures += [failure for failure in found if failure]
    return failures, len(tries) - len(sources)


SELF_TEST = {
    "good.cpp": "#if CASE == 1\n// refused: clang's words\n// refused: error\nint a = b;\n#endif\n"
    "// refused: error\n#if CASE == 2\nint a = b; // refused: words of another\n#endif\n",
    "compiles.cpp": "#if CASE == 1 // refused: error\nint a;\n#endif\n",
    "other_words.cpp": "#if CASE == 1\n// refused: no such words\nint a = b;\n#endif\n",
    "broken.cpp": "int a = b;\n#if CASE == 1\n// refused: error\nint c = d;\n#endif\n",
    "no_words.cpp": "#if CASE == 1\nint a = b;\n#endif\n",
    "no_case.cpp": "int a;\n",
    "gap.cpp": "#if CASE == 2\n// refused: error\nint a = b;\n#endif\n",
}
SELF_TEST_FINDS = {
    "good.cpp": None,
    "compiles.cpp": "CASE 1 compiles, and must not",
    "other_words.cpp": "CASE 1 is refused without the words",
    "broken.cpp": "CASE 0 must compile",
    "no_words.cpp": "CASE 1 has no '// refused:' comment",
    "no_case.cpp": "no case",
    "gap.cpp": "not numbered",
}


def self_test(command, work):
    wrong = 0
    for name, text in SELF_TEST.items():
        source = work / name
        source.write_text(text, encoding="utf-8")
        failures, _ = failures_in(command, [source], 2)
        expected = SELF_TEST_FINDS[name]
        if bool(failures) != bool(expected) or (expected and expected not in failures[0]):
            print(f"{name}: expected {expected}, found {failures}")
            wrong = 1
    print("the check of refusals does not check" if wrong else "the check of refusals checks")
    return wrong


def main():
    words = sys.argv[1:]
    if "--" not in words:
        sys.exit(__doc__)
    command = words[words.index("--") + 1 :]
    parser = argparse.ArgumentParser()
    parser.add_argument("--work", type=pathlib.Path, required=True)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--externals", type=pathlib.Path)
    parser.add_argument("--self-test", action="store_true")
    parser.add_argument("sources", nargs="*", type=pathlib.Path)
    asked = parser.parse_args(words[: words.index("--")])
    asked.work.mkdir(parents=True, exist_ok=True)
    if asked.self_test:
        return self_test(command, asked.work)
    if asked.externals:
        command = precompiled(command, asked.externals, asked.work)
    failures, count = failures_in(command, asked.sources, asked.jobs)
    print("\n".join(failures) or f"{count} cases in {len(asked.sources)} files are refused as they should be")
    return 1 if failures or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
