"""Run groat over random folders of books and compare every exact figure with the reference.

    compare.py GROAT_BINARY [--books N] [--seed S] [--keep DIR]

For each folder: `quote ORDER --for maker` of each order and `cost ITEM` of each item sold. Every key of the reference
must be there on groat's side with the same value. Ends with `N passed, M failed` (folders); the exit code is 1 if
a folder failed or if nothing was compared at all.
"""

import argparse
import json
import pathlib
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import groat_json
import random_books
import reference


class Failure(Exception):
    """What went wrong with a folder, in words."""


def exact(text):
    """The value of `n/d` or `n`. Anything else, a float above all, is refused."""
    if isinstance(text, bool) or not isinstance(text, (str, int)) or not re.fullmatch(r"-?[0-9]+(/[0-9]+)?", str(text)):
        raise Failure(f"not an exact figure: {text!r}")
    return Fraction(str(text))


def ask(binary, arguments, directory):
    """The document that groat prints."""
    command = [binary, *arguments, "--as", "json", "--books", str(directory)]
    try:
        done = subprocess.run(command, capture_output=True, timeout=120, check=False)
    except (OSError, subprocess.TimeoutExpired) as problem:
        raise Failure(f"{' '.join(command)}\n    {problem}") from None
    if done.returncode != 0:
        errors = done.stderr.decode("utf-8", "replace").strip() or done.stdout.decode("utf-8", "replace").strip()
        raise Failure(f"{' '.join(command)}\n    exit code {done.returncode}\n    " + "\n    ".join(errors.splitlines()[:12]))
    try:
        return json.loads(done.stdout)
    except ValueError as problem:
        raise Failure(f"{' '.join(command)}\n    not JSON: {problem}") from None


def differences(expected, printed):
    """One line of text for each figure that is missing or differs."""
    found = []
    for key, value in expected.items():
        if key not in printed:
            found.append(f"{key}\n    reference  {in_words(value)}\n    groat      (missing)")
            continue
        try:
            other = exact(printed[key])
        except Failure as problem:
            found.append(f"{key}\n    reference  {in_words(value)}\n    groat      {problem}")
            continue
        if other != value:
            found.append(f"{key}\n    reference  {in_words(value)}\n    groat      {in_words(other)}")
    return found


def in_words(value):
    """`7/3 (about 2.333333)`; the decimals are cut from integers, not through a float."""
    value = Fraction(value)
    millionths = abs(value.numerator) * 10 ** 6 // value.denominator
    about = f"{'-' if value < 0 else ''}{millionths // 10 ** 6}.{millionths % 10 ** 6:06}"
    return f"{value} (about {about})"


def questions(folder):
    """(what, arguments of groat, the reference's figures) for each document that is compared."""
    for order in folder["orders"]:
        name = order["order"]
        yield f"order {name}", ["quote", name, "--for", "maker"], printed_ones(reference.order_figures(folder, name))
    for item, on in random_books.menu_items(folder):
        yield f"item {item}", ["cost", item, "--on", on], printed_ones(reference.menu_figures(folder, item, on))


def printed_ones(figures):
    return {key: value for key, value in figures.items() if not groat_json.UNPRINTED.fullmatch(key)}


def compare_folder(binary, seed, directory):
    """(figures compared, differences found) of the folder of a seed; the first difference is told by the caller."""
    folder = random_books.make_folder(seed)
    random_books.write_folder(folder, seed, directory)
    compared, found = 0, []
    for what, arguments, figures in questions(folder):
        try:
            printed = groat_json.flatten(ask(binary, arguments, directory))
        except Failure as problem:
            found.append(f"{what}: {problem}")
            continue
        compared += sum(key in printed for key in figures)
        found += [f"{what}: {text}" for text in differences(figures, printed)]
    return compared, found


def main(arguments=None):
    parser = argparse.ArgumentParser(description="Compare groat's exact figures with the reference's over random books.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--books", type=int, default=100, metavar="N")
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="the first seed; the folders take S, S + 1, ...")
    parser.add_argument("--keep", metavar="DIR", help="leave the folders that failed there, by seed")
    options = parser.parse_args(arguments)

    passed = failed = figures = 0
    for seed in range(options.seed, options.seed + options.books):
        with tempfile.TemporaryDirectory() as directory:
            try:
                compared, found = compare_folder(options.binary, seed, directory)
            except NotImplementedError as problem:
                print(f"groat_json.flatten: {problem}")
                return 1
        figures += compared
        if not found:
            passed += 1
            continue
        failed += 1
        print(f"seed {seed}: {found[0]}")
        if len(found) > 1:
            print(f"    and {len(found) - 1} more in this folder")
        if options.keep:
            where = pathlib.Path(options.keep) / str(seed)
            random_books.write_folder(random_books.make_folder(seed), seed, where)
            print(f"    kept in {where}")
    print(f"{figures} figures compared")
    print(f"{passed} passed, {failed} failed")
    if figures == 0:
        print("nothing was compared")
    return 1 if failed or figures == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
