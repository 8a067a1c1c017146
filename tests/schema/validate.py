"""Hold every sheet that `groat --as json` prints against lib/schema/sheet.schema.json.

    validate.py GROAT_BINARY [--books N]

Asks every verb in every mode of the samples, and most of them of N random folders of books, and validates each document with
python3-jsonschema, which knows nothing of groat. Besides:

- each figure whose `rounded` is a plain number is the rounding of its `exact`, within a unit of its last place;
- each definition of a sheet in the schema is visited, and each member that it allows stands on some sheet, save those in RARE;
- the schema refuses what is wrong: valid documents of each sheet with something dropped, added, or of another shape.

Ends with `N sheets ..., M failed`; the exit code is 1 if one failed, and 77 (skipped) without python3-jsonschema.
"""

import argparse
import collections
import copy
import itertools
import json
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

try:
    import jsonschema
    from jsonschema import Draft202012Validator
except ImportError:
    print("python3-jsonschema is not there: skipped")
    sys.exit(77)

SOURCE = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(SOURCE / "tests" / "reference"))
import menu_compare  # noqa: E402
import production_compare  # noqa: E402
import random_books  # noqa: E402

# Members that no folder here shows: `sheet definition/section/member`.
RARE = {"buy_sheet/purchase/bound"}  # only where the search for the cheapest gives up

SECTION_WORDS = ("facts", "rows", "lines")


# ------------------------------------------------------------------------------------------------ what is asked

class Asker:
    """Runs groat on one folder of books."""

    def __init__(self, binary, books):
        self.binary, self.books = binary, books

    def __call__(self, *words, may_refuse=False):
        """What groat answers, as a list of (what was asked, document): one, or none where it may refuse and does."""
        command = [self.binary, *words, "--as", "json", "--books", str(self.books)]
        done = subprocess.run(command, capture_output=True, timeout=120, check=False)
        what = f"{self.books}: {' '.join(words)}"
        if done.returncode == 0 or (done.returncode == 1 and done.stdout):  # `check` tells of errors on a sheet
            return [(what, json.loads(done.stdout))]
        if may_refuse and done.returncode in (1, 2):
            return []
        raise AssertionError(f"{what}\n    exit code {done.returncode}: {done.stderr.decode('utf-8', 'replace')[:600]}")


    def folder(self, *words):
        """The same of `sheets`, which writes a folder of files."""
        with tempfile.TemporaryDirectory() as directory:
            out = pathlib.Path(directory) / "sheets"
            command = [self.binary, "sheets", *words, "--as", "json", "--books", str(self.books), "--out", str(out)]
            done = subprocess.run(command, capture_output=True, timeout=120, check=False)
            files = sorted(out.rglob("*.json"))
            if done.returncode != 0 or not files:
                raise AssertionError(f"{command}\n    exit code {done.returncode}: {done.stderr.decode('utf-8', 'replace')[:600]}")
            return [(f"{' '.join(words)}: {file.relative_to(out)}", json.loads(file.read_text(encoding="utf-8"))) for file in files]


def named(folder, kind):
    """The formulas, orders or menus of a folder of books, in its own words."""
    found = []
    for path in sorted(pathlib.Path(folder).glob(f"{kind}s/*.yaml")):
        found += re.findall(rf"^{kind}: *(.+?) *(?:#.*)?$", path.read_text(encoding="utf-8"), re.M)
    return found


def baskets(document):
    return [basket["of"] for basket in document.get("baskets", [])]


def of_an_order(ask, order, *on):
    yield from ask("quote", order, *on)
    yield from ask("quote", order, "--for", "maker", *on)
    yield from ask("quote", order, "--for", "maker", "--with", "packs", *on)
    yield from ask("make", order, *on)
    bought = ask("buy", order, *on)
    yield from bought
    for supplier in [supplier for _, document in bought for supplier in baskets(document)]:
        yield from ask("buy", order, "--from", supplier, *on)
    yield from ask("whatif", order, *on)


def of_an_item(ask, item, *on):
    yield from ask("cost", item, *on)
    for words in (["--made", "2026-12-01"], ["--for", "maker", "--made", "2026-12-01"], ["--for", "maker", "--grouped", "--allergens", "eu"]):
        yield from ask("label", item, *words, *on, may_refuse=True)  # of what has no way to be sold


def of_the_bakery(ask):
    on = ("--on", "2026-12-01")
    yield from ask("check", *on)
    for order in named(ask.books, "order"):
        yield from of_an_order(ask, order, *on)
    yield from ask.folder("2026-041", "--made", "2026-12-09", *on)
    everything = named(ask.books, "order")
    yield from ask("make", *everything, *on)
    yield from ask("buy", *everything, *on)
    for item in named(ask.books, "formula"):
        yield from of_an_item(ask, item, *on)
    yield from ask("compare", "--all", "--orders", *on)
    yield from ask("compare", "butter", "box for 12", "--on", "2026-12-12")
    yield from ask("compare", "plum", "--amount", "20 kg", *on)
    yield from ask("yields", *on)
    yield from ask("runs", *on)
    yield from ask("runs", "--order", "2026-041")
    yield from ask("menu", "winter counter", *on)
    yield from ask("menu", "winter counter", "--mix", "all", *on)
    yield from ask("menu", "winter counter", "--reach", "margin 43 %", "--move", "10 %", *on)
    yield from ask("menu", "winter counter", "--reach", "margin 41 %", "--move", "10 %", "--at-most", "20",
                   "--leave", "coffee, cup", "--below-first", *on)
    yield from ask("menu", "winter counter", "--reach", "margin 1 %", "--move", "10 %", *on)
    yield from ask("whatif", "2026-041", "--change", "butter +20 %", "--change", "wage of baker 24.00")
    yield from ask("whatif", "winter counter", "--scenario", "a dear winter", *on)
    yield from ask("whatif", "rye-plum sandwich", "--change", "onion +20 %", *on)
    yield from ask("whatif", "winter counter", "--limit", "butter", *on)
    yield from ask("whatif", "rye-plum sandwich", "--limit", "butter", *on)
    yield from ask("whatif", "rye-plum sandwich", "--between", "2026-11-15", "2026-12-15")
    yield from of_the_import(ask)
    for words in (("2 3/4 cup", "plain flour", "g"), ("340 g", "plain flour", "cup"), ("350 F", "C"), ("3", "large egg", "g"),
                  ("1 cup", "mL"), ("1 lb", "g"), ("1 tbsp", "butter", "tsp"), ("175 C", "F")):
        yield from ask("convert", *words)


def of_the_starter(ask):
    on = ("--on", "2026-12-01")
    yield from ask("check", *on)
    for order in named(ask.books, "order"):
        yield from of_an_order(ask, order, *on)
    for item in named(ask.books, "formula"):
        yield from of_an_item(ask, item, *on)


def of_the_backstube(ask):
    """Books whose sheets are in German, with figures and dates in the style of the shop."""
    yield from of_the_starter(ask)
    yield from ask("words")
    yield from ask("words", "--language", "de")


def of_changed_books(binary):
    """What the samples do not show: a full shelf, packed goods, a yield that no test gave, a new thing on a price list."""
    with tempfile.TemporaryDirectory() as directory:
        books = pathlib.Path(directory) / "books"
        shutil.copytree(SOURCE / "samples" / "bakery", books)
        ask = Asker(binary, books)
        (_, made), = ask("make", "2026-041")
        shelf = [f"  {row['key']}: 999 kg\n" for row in made["store"]] + [f"  {row['key']}: 9999\n" for row in made["supplies"]]
        (books / "stock.yaml").write_text("stock: 2026-11-24\nitems:\n" + "".join(shelf), encoding="utf-8")
        rewrite(books / "ingredients.yaml", r"(?m)^(lemon: .*yield): 45 %", r"\1: 99 %")
        rewrite(books / "import" / "tressel.yaml", r"ignore: \[X-9000, ", "  X-9000: {item: water, pack: 1 gal}\nignore: [")
        yield from ask("buy", "2026-041", "--on", "2026-12-01")
        # Own goods: some, and all that is ordered.
        for count, shells in ((1, "rye shell: 30"), (4, "plum butter: 100 g")):
            (books / "stock.yaml").write_text("stock: 2026-11-24\nitems:\n"
                f"  rye-plum sandwich: {{as: box of 12, amount: {count}}}\n  {shells}\n", encoding="utf-8")
            yield from ask("make", "2026-041")
            yield from ask("buy", "2026-041", "2026-042", "--on", "2026-12-01")
        yield from ask("yields", "lemon", "--on", "2026-12-01")
        with (books / "shop.yaml").open("a", encoding="utf-8") as shop:
            shop.write("accept: {loss-not-as-seen: 'a new oven'}\n")
        yield from ask("check", "--on", "2026-12-01")
        yield from of_the_import(ask)


def of_counted_books(binary):
    """Food that is bought and used by the piece and by volume, of which nothing says what it weighs."""
    with tempfile.TemporaryDirectory() as directory:
        books = pathlib.Path(directory) / "books"
        shutil.copytree(SOURCE / "tests" / "transcripts" / "plain", books)
        for name, text in (
                ("prices/counted.yaml", "supplier: Sweets by the Piece\noffers:\n  - {item: bought shell, pack: 100, price: 35.00}\n"
                                        "  - {item: vanilla, pack: 8 fl oz, price: 19.20}\n"),
                ("formulas/sandwich.yaml", "formula: sandwich\nmakes: 24\nlines: {bought shell: 48, vanilla: 1 tsp, butter: 240 g}\n"
                                           "sold as: {box of 6: {holds: 6, packing: {box: 1}}}\n"),
                ("orders/8.yaml", "order: B-8\ndate: 2026-03-02\nlines: [{item: sandwich, as: box of 6, count: 40}]\n")):
            (books / name).write_text(text, encoding="utf-8")
        with (books / "ingredients.yaml").open("a", encoding="utf-8") as ingredients:
            ingredients.write("bought shell: {allergens: [egg]}\nvanilla: {}\n")
        ask = Asker(binary, books)
        yield from of_an_order(ask, "B-8", "--on", "2026-03-02")
        yield from ask("cost", "sandwich", "--on", "2026-03-02")
        yield from ask("compare", "vanilla", "bought shell", "--on", "2026-03-02")


def rewrite(path, pattern, words):
    text, count = re.subn(pattern, words, path.read_text(encoding="utf-8"))
    assert count == 1, f"{path}: {pattern} is there {count} times"
    path.write_text(text, encoding="utf-8")


def of_the_import(ask):
    place = ask.books / "import"
    yield from ask("import", str(place / "tressel-december.csv"), "--map", str(place / "tressel.yaml"), "--on", "2026-12-07")


def of_a_random_folder(ask, seed):
    maker = random_books.Maker(seed)
    folder = maker.folder()
    menu = menu_compare.make_menu(maker, folder, random.Random(f"menu {seed}"))
    production_compare.put_trays(folder, seed)
    random_books.write_folder(folder, seed, ask.books)
    place = ask.books / "menus" / "day.yaml"
    place.parent.mkdir()
    place.write_text(random_books.document(menu, random.Random(f"menu yaml {seed}")), encoding="utf-8")
    day = folder["orders"][0]["date"]
    on = ("--on", day)
    yield from ask("check", *on)
    for order in folder["orders"]:
        yield from of_an_order(ask, order["order"], "--on", order["date"])
    if len(folder["orders"]) > 1:
        yield from ask("make", *(order["order"] for order in folder["orders"]), *on)
    for item, _ in random_books.menu_items(folder):
        yield from of_an_item(ask, item, *on)
    yield from ask("menu", menu_compare.MENU, *on, may_refuse=True)  # a target may be out of reach


def documents(binary, books):
    """(what was asked, document) of everything."""
    yield from of_the_bakery(Asker(binary, SOURCE / "samples" / "bakery"))
    yield from of_the_starter(Asker(binary, SOURCE / "samples" / "starter"))
    yield from of_the_backstube(Asker(binary, SOURCE / "samples" / "backstube"))
    yield from of_changed_books(binary)
    yield from of_counted_books(binary)
    for seed in range(1, books + 1):
        with tempfile.TemporaryDirectory() as directory:
            yield from of_a_random_folder(Asker(binary, pathlib.Path(directory)), seed)


# ------------------------------------------------------------------------------------------------ the schema's own shape

class Schema:
    def __init__(self, path):
        self.whole = json.loads(path.read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(self.whole)
        self.validator = Draft202012Validator(self.whole)
        self.sheets = {(each["properties"]["sheet"]["const"], each["properties"]["for"]["const"]): name
                       for name, each in self.whole["$defs"].items() if name.endswith("_sheet")}

    def resolved(self, schema):
        """With what it refers to in its place."""
        while "$ref" in schema:
            schema = {**self.whole["$defs"][schema["$ref"].rpartition("/")[2]], **{key: value for key, value in schema.items() if key != "$ref"}}
        return schema

    def members(self, name):
        """Each member that a sheet may have: `section` and `section/member`."""
        found = set()
        for key, section in self.whole["$defs"][name]["properties"].items():
            if section is True or key in ("schema", "sheet", "for", "title", "letterhead"):
                continue
            found.add(key)
            found |= {f"{key}/{member}" for member in self.section_members(section)}
        return found

    def section_members(self, section):
        section = self.resolved(section)
        if "items" in section:
            return self.section_members(section["items"])
        inner = [word for word in SECTION_WORDS if "of" in section.get("properties", {}) and word in section["properties"]]
        if inner:
            return self.section_members(section["properties"][inner[0]])
        return set(section.get("properties", {}))


def seen_members(document):
    """As Schema.members, of one document."""
    def inside(section):
        if isinstance(section, list):
            return set().union(*(inside(each) for each in section))
        if not isinstance(section, dict):
            return set()
        word = [word for word in SECTION_WORDS if set(section) == {"of", word}]
        if word:
            return inside(section[word[0]])
        return set(section)

    found = set()
    for key, section in document.items():
        if key not in ("schema", "sheet", "for", "title", "letterhead"):
            found.add(key)
            found |= {f"{key}/{member}" for member in inside(section)}
    return found


# ------------------------------------------------------------------------------------------------ figures

def is_figure(value):
    return isinstance(value, dict) and set(value) == {"rounded", "exact", "unit"}


def figures(value, path=()):
    """(place, figure) of each figure."""
    if is_figure(value):
        yield path, value
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from figures(each, (*path, key))
    elif isinstance(value, list):
        for index, each in enumerate(value):
            yield from figures(each, (*path, index))


def misrounded(path, figure):
    """What is wrong with a figure's rounding, or nothing. Columns that must add up may be off by a unit."""
    text = figure["rounded"]
    if not re.fullmatch(r"[+-]?[0-9]+(\.[0-9]+)?", text):
        return None
    exact = Fraction(figure["exact"])
    unit = Fraction(1, 10 ** len(text.partition(".")[2]))
    # units to sell are rounded up in all, and then divided into whole ones
    unit *= 2 if path[0] == "break_even_items" else 1
    return None if abs(Fraction(text) - exact) <= unit else f"{text} is not the rounding of {figure['exact']} {figure['unit']}"


# ------------------------------------------------------------------------------------------------ what must be refused

def small(value):
    """A document with the first and last of each list alone, which is as valid and sooner validated."""
    if isinstance(value, dict):
        return {key: small(each) for key, each in value.items()}
    return [small(each) for each in value[:1] + value[1:][-1:]] if isinstance(value, list) else value


def at(document, path):
    for key in path:
        document = document[key]
    return document


def changed(document, path, change):
    """A copy with what stands at a place changed by a function of its parent and key."""
    copied = copy.deepcopy(document)
    change(at(copied, path[:-1]), path[-1])
    return copied


def put(value):
    return lambda parent, key: parent.__setitem__(key, value)


def drop(parent, key):
    del parent[key]


def objects(value, path=()):
    """(place, object) of each object, figures among them."""
    if isinstance(value, dict):
        yield path, value
        for key, each in value.items():
            yield from objects(each, (*path, key))
    elif isinstance(value, list):
        for index, each in enumerate(value):
            yield from objects(each, (*path, index))


def wrong_shapes(section):
    """What a section is not."""
    if isinstance(section, dict):
        return [[section], "words", None]
    if section and isinstance(section[0], dict) and "of" in section[0]:
        return [section[0], next(section[0][word] for word in SECTION_WORDS if word in section[0]), {}, None]
    if section and isinstance(section[0], dict):
        return [section[0], ["words"], [[]], [{"of": "a", "rows": section}], None]
    return ["words", {"0": "words"}, [1], None]


def mutations(document, required):
    """(what is wrong, the document) of a valid document. `required` tells whether a place must be there."""
    exacts = itertools.cycle(("1.5", "1/0", "1e3", "", 2, " 1", "+1", "1/-2"))
    yield "an unknown kind", {**document, "sheet": "no such sheet"}
    yield "for somebody else", {**document, "for": "nobody"}
    yield "another schema", {**document, "schema": "urn:groat:sheet:0"}
    yield "no letterhead in lines", {**document, "letterhead": "Shop"}
    for path, each in objects(document):
        where = "/".join(str(key) for key in path) or "the top"
        yield f"an unknown member at {where}", changed({"": document}, ("", *path, "surprise"), put("surprise"))[""]
        for key in each:
            if required((*path, key)):
                yield f"no {key} at {where}", changed(document, (*path, key), drop)
    for key, section in document.items():
        if isinstance(section, (dict, list)) and key != "letterhead":
            for wrong in wrong_shapes(section):
                yield f"another shape of {key}: {json.dumps(wrong)[:40]}", changed(document, (key,), put(wrong))
    for path, _ in figures(document):
        where = "/".join(str(key) for key in path)
        yield f"a number for the figure at {where}", changed(document, path, put(31.5))
        wrong = next(exacts)
        yield f"exactly {wrong!r} at {where}", changed(document, (*path, "exact"), put(wrong))


def always_required(schema, document):
    """Whether the schema says of a place in a document that it must be there."""
    def ask(path):
        found = schema.whole["$defs"][schema.sheets[document["sheet"], document["for"]]]
        value = document
        for key in path[:-1]:
            found = schema.resolved(found)
            if isinstance(value, list):
                found = found["items"]
            else:
                found = found["properties"][key]
            value = value[key]
            found = schema.resolved(found if found is not True else {})
            if "anyOf" in found and isinstance(value, dict):
                found = schema.resolved(next(each for each in found["anyOf"] if "$ref" in each))
            if found == {}:
                return False
        return path[-1] in schema.resolved(found).get("required", ())
    return ask


def what_is_not_refused(schema, document):
    """(how many wrong documents were tried, those that the schema takes)."""
    document = small(document)
    wrong = next(schema.validator.iter_errors(document), None)
    if wrong is not None:
        return 0, [f"its first rows alone are not valid: {wrong.message}"]
    tried, taken = 0, []
    for what, mutated in mutations(document, always_required(schema, document)):
        tried += 1
        if schema.validator.is_valid(mutated):
            taken.append(what)
    return tried, taken


# ------------------------------------------------------------------------------------------------ all of it

def told(what, error):
    """The innermost cause of a refusal."""
    best = jsonschema.exceptions.best_match([error])
    return f"{what}\n    at {'/'.join(str(key) for key in best.absolute_path)}: {best.message[:300]}"


def main(arguments=None):
    parser = argparse.ArgumentParser(description="Hold groat's JSON against its schema.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--books", type=int, default=40, metavar="N", help="random folders of books")
    options = parser.parse_args(arguments)

    schema = Schema(SOURCE / "lib" / "schema" / "sheet.schema.json")
    failures, checked, rounded = [], 0, 0
    first, seen = {}, collections.defaultdict(set)
    for what, document in documents(options.binary, options.books):
        checked += 1
        errors = list(schema.validator.iter_errors(document))
        failures += [told(what, error) for error in errors]
        name = schema.sheets.get((document.get("sheet"), document.get("for")))
        if name is None or errors:
            continue
        first.setdefault(name, document)
        seen[name] |= seen_members(document)
        for path, figure in figures(document):
            rounded += 1
            if wrong := misrounded(path, figure):
                failures.append(f"{what}\n    at {'/'.join(str(key) for key in path)}: {wrong}")

    for name in sorted(schema.sheets.values()):
        if name not in first:
            failures.append(f"{name} was never visited")
            continue
        unseen = {f"{name}/{member}" for member in schema.members(name) - seen[name]}
        failures += [f"{each} stands on no sheet" for each in sorted(unseen - RARE)]
    tried = 0
    for name, document in first.items():
        count, taken = what_is_not_refused(schema, document)
        tried += count
        failures += [f"{name}: the schema takes a document with {each}" for each in taken]
        if count < 20:
            failures.append(f"{name}: only {count} wrong documents were tried")

    for failure in failures[:40]:
        print(failure)
    if len(failures) > 40:
        print(f"... and {len(failures) - 40} more")
    print(f"{checked} sheets of {len(first)} kinds, {rounded} figures, {tried} wrong documents refused, {len(failures)} failed")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
