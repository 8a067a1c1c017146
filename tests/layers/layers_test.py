#!/usr/bin/env python3
"""Reads every #include line in lib/ and cli/ and fails on a breach of the layers.

An include may only point down or stay in its room: base < measure < paper (how anything is drawn, no
trade in it) < model < cost < price < plan, trial; cost < review; all of these < sheets. `solve` (the
integer programme behind buying) stands on base alone, `yaml` (syntax) on base and measure, `books` (what
reads them) on yaml and model; `desk` (what a verb does, without a screen) sees all of these and only `cli`
sees it; `cli` sees all. The umbrella groat.hpp sees all but `yaml`, `books` and `desk`, and
what groat::groat does not bring it does not reach. Each
outside library has its one place. The
client's quote (sheets/client_quote_sheet.hpp) reaches no header that knows a cost. A verb (cli/*_command.cpp) has at most 40 lines, a header of a room
(lib/groat/*/*.hpp) and a half at most 400; those that are still longer are listed here with their size, which may only
shrink. Headers carry no `using namespace`, no #define (but of GROAT_INLINE), no `double` or
`float` but in a deleted declaration, and no cycles.

The implementation half of a header (x.ipp beside x.hpp) counts as that header in all of this: what one includes, both do.
It includes its header first, and its header includes it last, unless GROAT_COMPILED is defined.

    layers_test.py ROOT          checks the tree at ROOT
    layers_test.py --self-test   shows on small invented trees that each kind of breach is found
"""
import pathlib
import re
import sys
import tempfile

SEES = {
    "base": set(),
    "measure": {"base"},
    "solve": {"base"},
    "paper": {"base", "measure"},
    "yaml": {"base", "measure"},
    "model": {"base", "measure", "paper"},
    "cost": {"base", "measure", "model"},
    "price": {"base", "measure", "model", "cost"},
    "plan": {"base", "measure", "model", "cost", "price", "solve"},
    "review": {"base", "measure", "model", "cost"},
    "trial": {"base", "measure", "model", "cost", "price"},
    "books": {"base", "measure", "paper", "model", "yaml"},
}
COMPUTING = set(SEES) - {"yaml", "books"}
SEES["sheets"] = COMPUTING | {"paper"}
SEES["umbrella"] = COMPUTING | {"sheets", "desk"}
SEES["desk"] = set(SEES) - {"umbrella"}
SEES["cli"] = set(SEES)
for room in SEES:
    SEES[room] = SEES[room] | {room}

# A library, and where it may be included.
ANYWHERE = re.compile(r"(boost|fmt|tl)/")
ONLY_IN = [
    (re.compile(r"yaml-cpp/"), "lib/groat/yaml/tree.hpp"),
    (re.compile(r"CLI/"), "cli/main.cpp"),
    (re.compile(r"nlohmann/"), "lib/groat/paper/json.hpp"),
]
# What the client's quote is made of: all that it may see of rooms in which costs are known.
OF_THE_CLIENT = "lib/groat/sheets/client_quote_sheet.hpp"
OPEN_TO_THE_CLIENT = {"base", "measure", "paper"}
TOLD_TO_THE_CLIENT = {OF_THE_CLIENT} | {f"lib/groat/{name}.hpp" for name in (
    "model/allergen", "model/keeping", "model/reference", "model/sender", "model/sheet_rule", "model/word_table", "model/words",
    "price/client_quote", "price/payable", "price/tax",
    "sheets/cautions", "sheets/figures", "sheets/letterhead", "sheets/payable_rows", "sheets/shape_quote", "sheets/shape_shared",
    "sheets/tier_words")}
VERB = re.compile(r"cli/\w+_command\.cpp")
MOST_LINES_OF_A_VERB = 40
HEADER = re.compile(r"lib/groat/\w+/\w+\.[hi]pp")
DEFINES = re.compile(r"^[ \t]*#[ \t]*define\b", re.M)
OF_HALVES = "lib/groat/base/linkage.hpp"  # GROAT_INLINE
MOST_LINES_OF_A_HEADER = 400
# Headers that are still longer, with their lines: part them along what they hold. No entry may grow.
STILL_LONGER = {}
STANDARD = re.compile(r"[a-z_]+")  # <vector>, <cstddef>
SYSTEM = re.compile(r"(sys/)?[a-z_]+\.h")  # <unistd.h>

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*(?:<([^>\n]*)>|"([^"\n]*)"|(.*))', re.M)
NOT_CODE = re.compile(
    r'//[^\n]*|/\*.*?\*/|R"([^()\\ ]{0,16})\(.*?\)\1"|"(?:\\.|[^"\\\n])*"'
    r"|(?<![0-9A-Za-z_])'(?:\\.|[^'\\\n])*'",
    re.S,
)


def blanked(text, keep_strings):
    """The text with comments (and strings) made blank, every line still on its line."""

    def blank(match):
        found = match.group(0)
        if keep_strings and not found.startswith("/"):
            return found
        return re.sub(r"[^\n]", " ", found)

    return NOT_CODE.sub(blank, text)


def layer_of(place):
    """The layer of a file given relative to the root, or None where no layer is known."""
    parts = place.split("/")
    if parts[0] == "cli":
        return "cli"
    if parts == ["lib", "groat.hpp"] or parts == ["lib", "groat", "door.ipp"]:
        return "umbrella"
    if parts[:2] == ["lib", "groat"] and len(parts) >= 4 and parts[2] in SEES:
        return parts[2] if parts[2] not in ("cli", "umbrella") else None
    return None


def target_of(root, place, name, quoted):
    """Where an include of ours leads, relative to the root, or None when it is not ours."""
    if quoted:
        beside = (root / place).parent / name
        if beside.is_file() and beside.resolve().is_relative_to(root.resolve()):
            return beside.resolve().relative_to(root.resolve()).as_posix()
    if name == "groat.hpp" or name.startswith("groat/"):
        return "lib/" + name
    if name.startswith("cli/"):
        return name
    return None


def header_of(place):
    """The header that a half belongs to; any other file is its own."""
    if place == "lib/groat/door.ipp":
        return "lib/groat.hpp"
    return re.sub(r"\.ipp$", ".hpp", place)


def half_breaches(root, place, text):
    """What is wrong with how a header and its half name each other."""
    header = header_of(place)
    if place != header:
        if not (root / header).is_file():
            yield f"a half of no header: {header} is not there"
            return
        first = INCLUDE.search(text)
        if first is None or "lib/" + (first.group(1) or "") != header:
            yield "a half includes its own header first"
        return
    half = "lib/groat/door.ipp" if place == "lib/groat.hpp" else re.sub(r"\.hpp$", ".ipp", place)
    if not (place.startswith("lib/") and place.endswith(".hpp")):
        return
    last = f"\n#ifndef GROAT_COMPILED\n#include <{half.removeprefix('lib/')}>\n#endif\n"
    if (root / half).is_file() != text.endswith(last):
        yield "a header that has a half includes it last, unless GROAT_COMPILED is defined"


def outside_breach(place, name, quoted):
    if quoted:
        return f'no such file: "{name}"'
    for library, home in ONLY_IN:
        if library.match(name):
            return None if header_of(place) == home else f"<{name}> belongs in {home} alone"
    if ANYWHERE.match(name) or STANDARD.fullmatch(name):
        return None
    if SYSTEM.fullmatch(name):
        return None if place.startswith("cli/") else f"<{name}> is a system header: cli/ only"
    return f"<{name}> is not a library we stand on"


def length_breach(place, lines, still_longer):
    """What is wrong with the length of a header, or with what is listed of it."""
    listed = still_longer.get(place)
    if listed is None:
        if lines > MOST_LINES_OF_A_HEADER:
            return f"a header has at most {MOST_LINES_OF_A_HEADER} lines, this one {lines}: part it along what it holds"
    elif lines > listed:
        return f"is listed as longer, with {listed} lines, and has grown to {lines}: part it along what it holds"
    elif lines <= MOST_LINES_OF_A_HEADER:
        return f"has {lines} lines and is still listed as longer: take it off the list"
    elif lines < listed:
        return f"has shrunk to {lines} lines and is listed with {listed}: list the smaller size"
    return None


def cycles_in(graph):
    found, state, path = [], {}, []

    def visit(node):
        state[node] = "open"
        path.append(node)
        for onward in sorted(graph.get(node, ())):
            if state.get(onward) == "open":
                found.append(path[path.index(onward) :] + [onward])
            elif onward not in state:
                visit(onward)
        path.pop()
        state[node] = "done"

    for node in sorted(graph):
        if node not in state:
            visit(node)
    return found


def reached_from(start, graph):
    """Every header that one includes, itself among them."""
    reached, onward = set(), [start] if start in graph else []
    while onward:
        place = onward.pop()
        if place not in reached:
            reached.add(place)
            onward += graph.get(place, ())
    return reached


def breaches_in(root, still_longer=STILL_LONGER):
    """All breaches as 'file:line: sentence', and how many files were read."""
    breaches, graph = [], {}
    files = sorted(
        path
        for top in ("lib", "cli")
        for path in (root / top).rglob("*")
        if path.suffix in (".hpp", ".cpp", ".h", ".ipp", ".inl")
    )
    for path in files:
        place = path.relative_to(root).as_posix()
        text = path.read_text(encoding="utf-8")
        code = blanked(text, keep_strings=False)

        def breach(offset, sentence):
            breaches.append(f"{place}:{text.count(chr(10), 0, offset) + 1}: {sentence}")

        layer = layer_of(place)
        if layer is None:
            breach(0, "lies in no layer")
            continue
        if place.startswith("lib/") and path.suffix not in (".hpp", ".ipp"):
            breach(0, "lib/ holds headers and their halves alone")
        for sentence in half_breaches(root, place, text):
            breach(0, sentence)

        of = header_of(place)
        graph.setdefault(of, set())
        for match in INCLUDE.finditer(blanked(text, keep_strings=True)):
            angled, quote, other = match.groups()
            if other is not None:
                breach(match.start(), "an include that names no file")
                continue
            name, quoted = (quote, True) if angled is None else (angled, False)
            target = target_of(root, place, name, quoted)
            if target is None:
                sentence = outside_breach(place, name, quoted)
                if sentence:
                    breach(match.start(), sentence)
                continue
            seen = layer_of(target)
            if not (root / target).is_file():
                breach(match.start(), f"no such header: {name}")
            elif seen not in SEES[layer]:
                breach(match.start(), f"{layer} must not see {seen} ({name})")
            elif target.endswith(".ipp") and header_of(target) != place:
                breach(match.start(), "a half is included by its own header alone")
            elif target == place or header_of(target) != of:
                graph[of].add(header_of(target))

        for match in re.finditer(r"\b(double|float)\b", code):
            end = re.search(r"[;{}]|\Z", code[match.end() :])
            declaration = code[match.start() : match.end() + end.start()]
            if not re.search(r"=\s*delete\b", declaration):
                breach(match.start(), f"'{match.group(1)}' outside a deleted declaration")
        if VERB.fullmatch(place) and text.count("\n") > MOST_LINES_OF_A_VERB:
            breach(0, f"a verb is options and printing, at most {MOST_LINES_OF_A_VERB} lines: the rest belongs in desk/")
        if HEADER.fullmatch(place):
            sentence = length_breach(place, text.count("\n"), still_longer)
            if sentence:
                breach(0, sentence)
        if path.suffix in (".hpp", ".ipp"):
            for match in re.finditer(r"\busing\s+namespace\b", code):
                breach(match.start(), "'using namespace' in a header")
            for match in DEFINES.finditer(code) if place != OF_HALVES else ():
                breach(match.start(), "#define in a header")

    reached = reached_from("lib/groat.hpp", graph)
    for _, home in ONLY_IN:
        if home in reached:
            breaches.append(f"lib/groat.hpp:1: reaches {home}, and with it more than groat::groat brings")
    for place in sorted(reached_from(OF_THE_CLIENT, graph)):
        if layer_of(place) not in OPEN_TO_THE_CLIENT and place not in TOLD_TO_THE_CLIENT:
            breaches.append(f"{OF_THE_CLIENT}:1: the client's sheet reaches {place}, which may know a cost")
    for place in sorted(set(still_longer) - set(graph)):
        breaches.append(f"{place}:1: is listed as longer and is not there")
    for cycle in cycles_in(graph):
        breaches.append(f"{cycle[0]}:1: include cycle: " + " -> ".join(cycle))
    return breaches, len(files)


# The self-test ---------------------------------------------------------------------------------------

SOUND = {
    "lib/groat.hpp": "#include <groat/price/price.hpp>\n",
    "lib/groat/base/number.hpp": (
        "// a double in a comment; using namespace std; #include <groat/paper/text.hpp>\n"
        "#pragma once\n#include <boost/rational.hpp>\n#include <string>\n"
        "struct Number { Number(double) = delete; Number(long double,\n    float) = delete; };\n"
        "inline char const* word = \"a float \\\" #define\"; inline char quote = '\"';\n"
        "inline int big = 1'000'000; /* float */\n"
        'inline char const* raw = R"(double " trouble)";\n'
    ),
    "lib/groat/measure/money.hpp": '#include "../base/number.hpp"\n#include <fmt/format.h>\n',
    "lib/groat/model/book.hpp": "#include <groat/measure/money.hpp>\n#include <tl/expected.hpp>\n",
    "lib/groat/cost/engine.hpp": "#include <groat/model/book.hpp>\n",
    "lib/groat/price/price.hpp": "#include <groat/cost/engine.hpp>\n",
    "lib/groat/paper/json.hpp": "#include <nlohmann/json.hpp>\n#include <groat/measure/money.hpp>\n",
    "lib/groat/base/long.hpp": "\n" * 410,
    "lib/groat/base/full.hpp": "\n" * 400,
    "lib/groat/base/half.hpp": "#pragma once\n\n#ifndef GROAT_COMPILED\n#include <groat/base/half.ipp>\n#endif\n",
    "lib/groat/base/half.ipp": "#include <groat/base/half.hpp>\n",
    "lib/groat/solve/search.hpp": "#include <groat/base/number.hpp>\n",
    "lib/groat/plan/buying.hpp": "#include <groat/price/price.hpp>\n#include <groat/solve/search.hpp>\n",
    "lib/groat/sheets/quote.hpp": "#include <groat/paper/json.hpp>\n#include <groat/plan/buying.hpp>\n",
    "lib/groat/yaml/tree.hpp": "#include <yaml-cpp/yaml.h>\n#include <groat/measure/money.hpp>\n",
    "lib/groat/books/load.hpp": "#include <groat/yaml/tree.hpp>\n#include <groat/model/book.hpp>\n",
    "lib/groat/desk/check.hpp": "#include <groat/books/load.hpp>\n#include <groat/sheets/quote.hpp>\n",
    "cli/commands.hpp": "#include <groat/paper/json.hpp>\n#include <groat/desk/check.hpp>\n",
    "cli/main.cpp": (
        '#include "commands.hpp"\n#include <CLI/CLI.hpp>\n#include <groat.hpp>\n'
        "#include <groat/yaml/tree.hpp>\n#include <unistd.h>\nusing namespace std;\n#define A 1\n"
    ),
}

# What is put into the sound tree, and the breach that must be found: the only one.
BREACHES = [
    ("lib/groat/base/x.hpp", "\n#include <groat/measure/money.hpp>", "x.hpp:2: base must not see measure"),
    ("lib/groat/base/x.hpp", '#include "../model/book.hpp"', "base must not see model"),
    ("lib/groat/measure/x.hpp", "#include <groat/model/book.hpp>", "measure must not see model"),
    ("lib/groat/model/x.hpp", "#include <groat/cost/engine.hpp>", "model must not see cost"),
    ("lib/groat/cost/x.hpp", "#include <groat/price/price.hpp>", "cost must not see price"),
    ("lib/groat/price/x.hpp", "#include <groat/paper/json.hpp>", "price must not see paper"),
    ("lib/groat/price/x.hpp", " # include <groat/yaml/tree.hpp>", "price must not see yaml"),
    ("lib/groat/paper/x.hpp", "#include <groat/yaml/tree.hpp>", "paper must not see yaml"),
    ("lib/groat/yaml/x.hpp", "#include <groat/paper/json.hpp>", "yaml must not see paper"),
    ("lib/groat/yaml/x.hpp", "#include <groat/cost/engine.hpp>", "yaml must not see cost"),
    ("lib/groat/yaml/x.hpp", "#include <groat/model/book.hpp>", "yaml must not see model"),
    ("lib/groat/paper/x.hpp", "#include <groat/model/book.hpp>", "paper must not see model"),
    ("lib/groat/paper/x.hpp", "#include <groat/price/price.hpp>", "paper must not see price"),
    ("lib/groat/solve/x.hpp", "#include <groat/measure/money.hpp>", "solve must not see measure"),
    ("lib/groat/price/x.hpp", "#include <groat/plan/buying.hpp>", "price must not see plan"),
    ("lib/groat/review/x.hpp", "#include <groat/price/price.hpp>", "review must not see price"),
    ("lib/groat/sheets/x.hpp", "#include <groat/books/load.hpp>", "sheets must not see books"),
    ("lib/groat/books/x.hpp", "#include <groat/cost/engine.hpp>", "books must not see cost"),
    ("lib/groat/sheets/x.hpp", "#include <groat/desk/check.hpp>", "sheets must not see desk"),
    ("lib/groat/books/x.hpp", "#include <groat/desk/check.hpp>", "books must not see desk"),
    ("lib/groat/desk/x.hpp", "#include <groat.hpp>", "desk must not see umbrella"),
    ("lib/groat/desk/x.hpp", '#include "../../../cli/commands.hpp"', "desk must not see cli"),
    ("lib/groat/base/x.hpp", "#include <groat.hpp>", "base must not see umbrella"),
    ("lib/groat.hpp", "#include <groat/paper/json.hpp>", "reaches lib/groat/paper/json.hpp"),
    ("lib/groat/price/x.hpp", '#include "../../../cli/commands.hpp"', "price must not see cli"),
    ("lib/groat/cost/x.hpp", "#include <groat/base/none.hpp>", "no such header: groat/base/none.hpp"),
    ("lib/groat/cost/x.hpp", '#include "none.hpp"', 'no such file: "none.hpp"'),
    ("lib/groat/cost/x.hpp", "#include HEADER", "an include that names no file"),
    ("lib/groat/util/x.hpp", "", "lies in no layer"),
    ("lib/groat/x.hpp", "", "lies in no layer"),
    ("lib/groat/base/x.cpp", "", "lib/ holds headers and their halves alone"),
    ("lib/groat/base/x.ipp", "", "a half of no header"),
    ("lib/groat/base/half.ipp", "#include <groat/measure/money.hpp>\n", "base must not see measure"),
    ("lib/groat/base/half.hpp", "\n", "a header that has a half includes it last"),
    ("lib/groat/base/half.ipp", "\n" * 400, "a header has at most 400 lines"),
    ("lib/groat/base/half.ipp", "#define A 1\n", "#define in a header"),
    ("lib/groat/base/x.hpp", "#include <groat/base/half.ipp>", "a half is included by its own header alone"),
    ("lib/groat/yaml/x.hpp", "#include <yaml-cpp/node.h>", "belongs in lib/groat/yaml/tree.hpp alone"),
    ("cli/x.cpp", "#include <yaml-cpp/yaml.h>", "belongs in lib/groat/yaml/tree.hpp alone"),
    ("cli/x.cpp", "#include <CLI/CLI.hpp>", "belongs in cli/main.cpp alone"),
    ("lib/groat/paper/x.hpp", "#include <nlohmann/json.hpp>", "belongs in lib/groat/paper/json.hpp alone"),
    ("lib/groat/base/x.hpp", "#include <unistd.h>", "is a system header"),
    ("lib/groat/base/x.hpp", "#include <absl/strings.h>", "is not a library we stand on"),
    ("lib/groat/base/x.hpp", "using  namespace std;", "'using namespace' in a header"),
    ("cli/x.hpp", "void f() { using namespace std; }", "'using namespace' in a header"),
    ("lib/groat/base/x.hpp", "#define GROAT 1", "#define in a header"),
    ("lib/groat/base/x.hpp", "/* a */\n/*\n*/ double x;", "x.hpp:3: 'double' outside a deleted declaration"),
    ("cli/x.cpp", "int f(float);", "'float' outside a deleted declaration"),
    ("cli/x.cpp", "int f(float) { return 1; } int g() = delete;", "'float' outside a deleted"),
    ("cli/x_command.cpp", "\n" * 41, "a verb is options and printing, at most 40 lines"),
    ("lib/groat/base/x.hpp", "\n" * 401, "a header has at most 400 lines, this one 401"),
    ("lib/groat/base/long.hpp", "\n", "is listed as longer, with 410 lines, and has grown to 411"),
    ("lib/groat/base/x.hpp", '#include "x.hpp"', "include cycle: lib/groat/base/x.hpp -> lib/groat/base/x.hpp"),
]
YAML_IN_UMBRELLA = {
    "lib/groat/yaml/x.hpp": "#pragma once",
    "lib/groat.hpp": "#include <groat/yaml/x.hpp>",
}
COST_FOR_THE_CLIENT = {
    "lib/groat/sheets/client_quote_sheet.hpp": "#include <groat/sheets/cautions.hpp>",
    "lib/groat/sheets/cautions.hpp": "#include <groat/model/book.hpp>",
}
STILL_LONGER_IN_SOUND = {"lib/groat/base/long.hpp": 410}
SHRUNK = {"lib/groat/base/long.hpp": "\n" * 409}
SHRUNK_ENOUGH = {"lib/groat/base/long.hpp": "\n" * 400}
CYCLE = {
    "lib/groat/base/x.hpp": "#include <groat/base/y.hpp>",
    "lib/groat/base/y.hpp": '#include "z.hpp"',
    "lib/groat/base/z.hpp": "#include <groat/base/x.hpp>",
}


def found_in(tree):
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for place, text in tree.items():
            (root / place).parent.mkdir(parents=True, exist_ok=True)
            (root / place).write_text(text, encoding="utf-8")
        return breaches_in(root, STILL_LONGER_IN_SOUND)[0]


def self_test():
    failures = []
    if found_in(SOUND):
        failures.append(f"a sound tree is refused: {found_in(SOUND)}")
    cases = [({place: SOUND.get(place, "") + text}, expected) for place, text, expected in BREACHES]
    cases.append((YAML_IN_UMBRELLA, "umbrella must not see yaml"))
    cases.append((COST_FOR_THE_CLIENT, "the client's sheet reaches lib/groat/model/book.hpp"))
    cases.append((SHRUNK, "has shrunk to 409 lines and is listed with 410"))
    cases.append((SHRUNK_ENOUGH, "has 400 lines and is still listed as longer"))
    cases.append((CYCLE, "include cycle: lib/groat/base/x.hpp -> lib/groat/base/y.hpp -> lib/groat/base/z.hpp"))
    without = found_in({place: text for place, text in SOUND.items() if place != "lib/groat/base/long.hpp"})
    if without != ["lib/groat/base/long.hpp:1: is listed as longer and is not there"]:
        failures.append(f"a listed header that is not there: found {without}")
    for added, expected in cases:
        found = found_in({**SOUND, **added})
        if len(found) != 1 or expected not in found[0]:
            failures.append(f"{added}: expected one breach '{expected}', found {found}")
    print("\n".join(failures) or f"{len(cases)} kinds of breach are found, a sound tree is not refused")
    return 1 if failures else 0


def main(arguments):
    if arguments == ["--self-test"]:
        return self_test()
    if len(arguments) != 1:
        print(__doc__)
        return 2
    breaches, count = breaches_in(pathlib.Path(arguments[0]))
    if count == 0:
        breaches.append(f"{arguments[0]}: no source files in lib/ or cli/")
    print("\n".join(breaches) or f"{count} files keep to their layers")
    return 1 if breaches else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
