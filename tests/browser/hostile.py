"""Books in which every text is written by somebody who means harm, in every form of every sheet.

    hostile.py GROAT_BINARY

Each harmful text stands in every field of the books that takes one: names of shop, roles, ovens, overheads, taxes, fees, suppliers, packs,
ingredients, formulas, tasks, ways of selling, menus, runs, tests; addresses, terms, notes; words of one's own. What the reader refuses is refused with exit
code 1 and a message that is harmless itself; what it takes comes out harmless: text and Markdown hold no control or direction
characters, a page has no element, attribute or address that a page of ours has not, a browser runs and fetches nothing, a CSV reads back
with no cell that a spreadsheet would calculate, and JSON is JSON. The shop's logo, too, is a picture that would run and fetch if it could.
"""

import csv
import html.parser
import io
import json
import pathlib
import subprocess
import sys
import tempfile
import unicodedata

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import webdriver  # noqa: E402

HARM = [
    "<script>document.title='owned'</script>", "\"><img src=http://127.0.0.1:9/x onerror=alert(1)>", "' onmouseover='alert(1)",
    "</title></style></table><iframe src=javascript:alert(1)>", "--><svg onload=alert(1)><!--", "&lt;b&gt;&amp;", "{{7*7}}${7*7}",
    "=HYPERLINK(\"http://127.0.0.1:9\")", "+1+cmd|' /C calc'!A0", "-2+3", "@SUM(A1:A9)", "a,\"b\";c",
    "| pipe | `code` **bold** [link](javascript:alert(1)) ![x](http://127.0.0.1:9/y) # <b>", "\\* \\_ \\\\", "%s %n {} {0} %%",
    "\x1b[31mred\x1b[0m", "\x07bell\x08", "\u202egnirts\u202c", "\u2066isolated\u2069", "two\nlines", "tab\there", "\ufeffmark", "\u200bnothing", "\u0085next",
    "\u2028line\u2029paragraph", "x" * 10_000, "Ȧ" * 190, "e\u0301" * 60, "漢字仮名" * 20, "👩‍👩‍👧‍👦🏳️‍🌈" * 6, "عربي مع 12.50", "\U000e0001tag",
]
# In a page of its own it runs and fetches; `self_test_in` makes sure of that.
LOGO = """<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="80" height="40" onload="document.title='owned'">
<script>document.title = 'owned'; try { top.document.title = 'owned'; fetch('http://127.0.0.1:9/script'); } catch (e) {}</script>
<style>@import url(http://127.0.0.1:9/style.css);</style>
<image href="http://127.0.0.1:9/picture.png" width="8" height="8"/><image xlink:href="http://127.0.0.1:9/old.png" width="8" height="8"/>
<foreignObject width="8" height="8"><iframe xmlns="http://www.w3.org/1999/xhtml" src="http://127.0.0.1:9/frame"></iframe></foreignObject>
<rect width="80" height="40"/></svg>
"""
FORMS = ["text", "html", "markdown", "csv", "json"]
TAGS = {"html", "head", "meta", "title", "style", "body", "header", "main", "section", "h1", "h2", "h3", "p", "dl", "dt", "dd", "div", "table", "thead",
        "tbody", "tr", "th", "td", "pre", "svg", "g", "rect", "line", "path", "circle", "polyline", "polygon", "text", "tspan", "desc", "img", "span", "footer", "figure",
        "figcaption", "caption", "br", "strong", "small", "address", "time", "colgroup", "col", "ul", "ol", "li", "hr", "marker", "defs", "use"}


# A name has 200 characters at most; texts may be long.
LONG = "<b>'\"&|`=" * 1000


def books(words, folder, texts=None):
    """A folder of JSON, which is YAML as well; `texts` stand where any length may, if that is to be another than in names."""
    def put(name, *documents):
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text("\n---\n".join(json.dumps(each) for each in documents) + "\n", encoding="utf-8")

    def h(number):
        return f"{words} {number}"

    def t(number):
        return f"{texts or words} {number}"

    put("shop.yaml", {
        "shop": h(1), "address": [t(2), t(3)], "contact": t(4), "currency": "USD", "labour": {h(5): {"wage": "20.00 / h"}},
        "ovens": {h(6): {"power": "3 kW", "preheat": "10 min", "fuel": h(7)}}, "energy": {h(7): "0.16 / kWh"},
        "overhead": [{"name": h(8), "rate": "1.00 per order"}], "order work": [{"task": h(9), "by": h(5), "minutes": 5}],
        "fees": {h(10): {"share": "2 %"}}, "paid by": h(10), "tax": {"name": h(11), "rate": "6 %", "other rates": {h(12): "3 %"}},
        "price": {"margin": "30 %"}, "valid": "14 days", "terms": [t(13), t(14)], "standard run": 24, "sheets": {"logo": "logo.svg"}})
    (folder / "logo.svg").write_text(LOGO, encoding="utf-8")
    put("ingredients.yaml", {h(20): {"allergens": ["wheat"], "label": h(21), "yield": "90 %"}, h(22): {"each": "50 g", "allergens": ["egg"]}})
    put("supplies.yaml", {h(23): {}})
    put("prices/p.yaml", {"supplier": h(24), "from": "2026-01-01", "offers": [
        {"item": h(20), "pack": "1 kg", "price": "2.00", "code": h(25)}, {"item": h(20), "pack": "5 kg", "price": "8.00", "code": h(25)},
        {"item": h(22), "pack": "30", "price": "9.00"}, {"item": h(23), "pack": "100", "price": "30.00"}]})
    put("formulas/f.yaml", {
        "formula": h(30), "label": h(31), "lines": [{"item": h(20), "amount": "500 g"}, {"item": h(22), "amount": "2"}], "portion": "20 g",
        "oven": {"use": h(6), "minutes": 12, "holds": 24}, "labour": [{"task": h(32), "by": h(5), "minutes": 12}],
        "keep": {"at": "cold", "for": "4 days"}, "sold as": {h(33): {"holds": 6, "packing": {h(23): 1}}}, "tax": h(12)})
    put("orders/o.yaml", {"order": "O-1", "client": h(40), "date": "2026-11-25", "due": "2026-12-01", "notes": t(42), "quantity breaks": [1, 10, 25],
                          "lines": [{"item": h(30), "as": h(33), "count": 2}, {"item": h(30), "count": 5}]},
        {"order": "O-2", "client": h(43), "date": "2026-11-25", "quantity breaks": [1, 10, 25], "lines": [{"item": h(30), "as": h(33), "count": 2}]})
    put("menus/m.yaml", {"menu": h(50), "period": h(51), "prices": "with", "categories": {h(52): {}}, "items": [
        {"item": h(30), "as": h(33), "category": h(52), "price": 9, "sold": 20, "name": h(53)}]})
    put("runs/r.yaml", {"run": h(60), "formula": h(30), "date": "2026-11-20", "order": "O-1", "batches": 1, "pieces": {"portioned": 30, "good": 28}})
    put("yields.yaml", {"test": h(61), "item": h(20), "date": "2026-11-20", "supplier": h(24), "as purchased": "1 kg", "trim": {h(62): "50 g"}, "price": "2.00"})
    put("stock.yaml", {"stock": "2026-11-24", "items": {h(20): "100 g"}})
    if not set("{}") & set(words):  # a brace is a place to fill there, and refused where it is none
        put("words.yaml", {"language": "en", "words": {
            "total": h(70), "quote": h(71) + " {order}", "please note": h(72), "count": h(73), "ingredients": h(74), "keep cold": h(75),
            "egg": h(76), "december": h(77), "tax added": h(78) + " {tax} {rate}", "order to": h(79) + " {supplier}"}})
    put("scenarios.yaml", {"scenario": h(63), "changes": [f"{h(20)} +10 %"]})

    # verb, what it is about, options
    return [("check", [], []), ("cost", [h(30)], []), ("quote", ["O-1"], []), ("quote", ["O-1"], ["--for", "maker"]), ("quote", ["O-2"], []),
            ("quote", ["O-2"], ["--for", "maker"]), ("quote", ["O-2"], ["--for", "maker", "--with", "packs"]),
            ("label", [h(30)], ["--for", "maker", "--made", "2026-11-30"]), ("make", ["O-1"], []), ("buy", ["O-1"], []),
            ("buy", ["O-1"], [f"--from={h(24)}"]), ("compare", [], ["--all", "--orders"]), ("yields", [], []), ("runs", [], []),
            ("runs", [], ["--order", "O-1"]), ("menu", [h(50)], []), ("whatif", ["O-1"], []), ("whatif", [h(30)], [f"--change={h(20)} +20 %"]),
            ("convert", ["1", h(22), "g"], [])]


def harmful(text, allowed="\n"):
    """Characters that move a cursor, turn the direction of what follows, or cannot be seen."""
    return sorted({f"U+{ord(c):04X}" for c in text if c not in allowed and (
        unicodedata.category(c) in ("Cc", "Zl", "Zp") or c in "\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufeff\u200b")})


class Page(html.parser.HTMLParser):
    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.wrong = []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        if tag not in TAGS:
            self.wrong.append(f"an element <{tag}>")
        for name, value in attributes:
            value = value or ""
            if name.startswith("on") or (name in ("src", "href", "xlink:href", "action") and not value.startswith(("data:image/", "#"))):
                self.wrong.append(f"an attribute {name}={value[:30]}")

    def handle_comment(self, data):
        self.wrong.append(f"a comment {data[:30]}")


def look(form, text):
    """What is wrong with a sheet in a form."""
    if form == "json":
        try:
            json.loads(text)
        except ValueError as problem:
            yield f"no JSON: {problem}"
    elif form == "csv":
        rows = list(csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=""), strict=True))
        for row in rows:
            for cell in row:
                if cell and cell[0] in "=+-@\t\r" and not cell.lstrip("-").replace(".", "", 1).isdigit():
                    yield f"a cell that calculates: {cell[:40]}"
                if harmful(cell):
                    yield f"harmful characters {harmful(cell)}"
    else:
        if harmful(text):
            yield f"harmful characters {harmful(text)}"
        if form == "html":
            yield from Page(text).wrong
        if form == "markdown" and ("<" in text.replace("\\<", "").replace("&lt;", "") or "](" in text.replace("\\]", "").replace("\\(", "")):
            yield "markup that is not escaped"


def run(groat, folder, command, form="text"):
    verb, about, options = command
    return subprocess.run([groat, verb, *options, "--books", str(folder), "--on", "2026-11-25", "--as", form, *(["--"] if about else []), *about],
                          capture_output=True, timeout=60, check=False)


def self_test():
    """What is looked for must be found."""
    bad = [("html", "<p onclick='x'>"), ("html", "<b>"), ("html", "<!-- x -->"), ("html", "<img src='http://x'>"), ("html", "a\u202eb"),
           ("text", "\x1b[31m"), ("text", "a\u2028b"), ("markdown", "a <b>"), ("markdown", "[a](b)"), ("csv", '"=1+1"\r\n'), ("csv", "x,@a\r\n"),
           ("json", "{")]
    return [f"self-test: {form} {text!r} was taken for harmless" for form, text in bad if not list(look(form, text))]


def self_test_in(browser, folder):
    """What the logo does where nothing holds it: the browser must show that it ran and what it asked for."""
    page = pathlib.Path(folder) / "free.html"
    page.write_text("<!DOCTYPE html><title>free</title>" + LOGO, encoding="utf-8")
    browser.open(page)
    wrong = [] if browser.run("return document.title") == "owned" else ["self-test: the logo runs nothing even where it may"]
    asked = browser.requests()
    return wrong + [f"self-test: the logo does not fetch {each} even where it may; only {asked}" for each in ("script", "style.css", "picture.png", "frame")
                    if f"http://127.0.0.1:9/{each}" not in asked]


def main():
    groat = pathlib.Path(sys.argv[1]).resolve()
    has_browser = not webdriver.missing()
    taken = refused = sheets = 0
    wrong, pages, charts, logos, has_long = self_test(), [], 0, 0, False
    with tempfile.TemporaryDirectory() as directory:
        for number, (words, texts) in enumerate([*((each, each) for each in HARM), ("plain", LONG)]):
            folder = pathlib.Path(directory) / str(number)
            commands = books(words, folder, texts)
            checked = run(groat, folder, commands[0])
            errors = checked.stdout.decode("utf-8", "strict") + checked.stderr.decode("utf-8", "strict")
            if harmful(errors):
                wrong.append(f"{words[:30]!r}: check says harmful characters {harmful(errors)}")
            if checked.returncode == 1 and ": error: " in errors:
                refused += 1
                if len(errors) > 200_000:
                    wrong.append(f"{words[:30]!r}: refused with {len(errors)} characters")
                continue
            taken += 1
            has_long = has_long or texts == LONG
            for command in commands:
                for form in FORMS:
                    done = run(groat, folder, command, form)
                    if done.returncode != 0:
                        wrong.append(f"{words[:30]!r}: {command[0]} --as {form}: exit {done.returncode}: {done.stderr.decode()[:300]}")
                        break
                    sheets += 1
                    text = done.stdout.decode("utf-8", "strict")
                    if harmful(done.stderr.decode("utf-8", "strict")):
                        wrong.append(f"{words[:30]!r}: {command[0]}: harmful warnings")
                    wrong += sorted({f"{words[:30]!r}: {command[0]} --as {form}: {each}" for each in look(form, text)})
                    if form == "html":
                        charts += text.count('<svg class="chart')
                        if ("<header>" in text) != ('<img src="data:image/svg+xml;base64,' in text):
                            wrong.append(f"{words[:30]!r}: {command[0]}: the logo is not where the name of the shop is")
                        logos += "<header>" in text
                        pages.append((pathlib.Path(directory) / f"{number}-{len(pages)}.html", f"{words[:30]!r}: {command[0]}"))
                        pages[-1][0].write_text(text, encoding="utf-8")
        if has_browser:
            with webdriver.Browser() as browser:
                wrong += self_test_in(browser, directory)
                for page, name in pages:
                    browser.open(page)
                    title = browser.run("return document.title")     # an alert would make this fail
                    if title == "owned":
                        wrong.append(f"{name}: a script ran")
                    wrong += [f"{name}: {each}" for each in browser.faults(page)]
        else:
            print("no browser is installed: pages were parsed, and not opened")
    if not has_long:
        wrong.append("texts of 10 kB were refused")
    for each in wrong[:40]:
        print(each)
    print(f"{taken} texts taken and {refused} refused, {sheets} sheets, {len(pages)} pages{' opened' if has_browser else ''} "
          f"with {charts} charts and {logos} logos, {len(wrong)} wrong")
    return 1 if wrong or taken < 10 or not refused or charts < 4 * taken or logos < 10 * taken else 0


if __name__ == "__main__":
    sys.exit(main())
