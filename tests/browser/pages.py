"""The pages in a real browser: headless Chromium opens each, prints it, and says what it found.

    pages.py GROAT_BINARY [--keep DIR]

For every sheet of the samples as HTML: no word on the console, nothing fetched, figures on the page those of `--as json`, one main
heading, heads of tables with a scope, every picture named, contrast as WCAG 2 asks (AA: 4.5 : 1, large text 3 : 1), no scrolling
sideways at 360 px and at 200 % zoom; and as PDF on A4 and Letter the same title and figures, heads of tables repeated on every page
they reach, pages numbered. `--keep` leaves the pages, pictures and PDFs for somebody to look at.
Exit code 77 when there is no browser.
"""

import argparse
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from decimal import Decimal

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import webdriver  # noqa: E402

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PAPERS = {"A4": (21.0, 29.7), "Letter": (21.59, 27.94)}

# The books, and the words after `groat`: every verb that draws a sheet from the samples, for everyone it is for.
SHEETS = [
    ("bakery", "quote 2026-041"), ("bakery", "quote 2026-042"), ("bakery", "quote 2026-043"),
    ("bakery", "quote 2026-041 --for maker"), ("bakery", "quote 2026-042 --for maker"),
    ("bakery", "cost 'rye-plum sandwich'"), ("bakery", "label 'rye-plum sandwich' --made 2026-12-09"),
    ("bakery", "label 'rye-plum sandwich' --for maker --allergens eu"),
    ("bakery", "compare butter 'plain flour'"), ("bakery", "compare --all --orders"), ("bakery", "buy 2026-041 2026-042"),
    ("bakery", "buy 2026-042 --from 'Tressel Brothers Wholesale'"), ("bakery", "make 2026-041 2026-042"), ("bakery", "yields"), ("bakery", "runs"), ("bakery", "runs --order 2026-041"),
    ("bakery", "menu 'winter counter'"), ("bakery", "menu 'winter counter' --reach 'margin 43 %' --move '10 %'"),
    ("bakery", "whatif 2026-041"), ("bakery", "whatif 2026-041 --change 'butter +20 %'"),
    ("bakery", "whatif 'rye-plum sandwich' --limit butter"), ("bakery", "whatif 'rye-plum sandwich' --between 2026-11-15 2026-12-15"),
    ("bakery", "convert '2 3/4 cup' 'plain flour' g"), ("bakery", "check"),
    ("backstube", "quote 2026-117"), ("backstube", "quote 2026-117 --for maker"), ("backstube", "label Nussschnecke"),
    ("backstube", "make 2026-117"), ("backstube", "buy 2026-117"), ("backstube", "words --language de"),
]

# What the page holds, as a program sees it: cells that stand alone, and what is wrong with it.
LOOK = r"""
const found = {wrong: [], figures: [], heads: []};
const say = (words) => found.wrong.push(words);
const all = (selector) => [...document.querySelectorAll(selector)];
if (all('h1').length !== 1) say(`${all('h1').length} main headings`);
let level = 1;
for (const h of all('h1,h2,h3,h4')) { const now = +h.tagName[1]; if (now > level + 1) say('a heading leaves a level out'); level = now; }
if (!document.documentElement.lang) say('no language');
if (!document.title) say('no title');
for (const th of all('th')) if (!['row', 'col'].includes(th.getAttribute('scope'))) say('a head without a scope');
for (const image of all('img')) if (!image.alt || !image.complete || image.naturalWidth === 0) say('a picture without words, or that does not show');
const ids = all('[id]').map(e => e.id);
if (new Set(ids).size !== ids.length) say('an id stands twice');
for (const svg of all('svg')) {
  const label = svg.getAttribute('aria-label') || (svg.querySelector(':scope > title') || {}).textContent || svg.getAttribute('aria-labelledby');
  if (svg.getAttribute('aria-hidden') !== 'true' && (svg.getAttribute('role') !== 'img' || !label)) say('a drawing without words');
}
if (all('script,iframe,object,embed,form,link').length) say('something that a sheet has no need of');
for (const box of all('*')) { const s = getComputedStyle(box);
  if (/auto|scroll/.test(s.overflowX) && box.scrollWidth > box.clientWidth + 1 && box.tabIndex < 0) say('what scrolls cannot be reached by keys'); }
const light = (rgb) => { const c = rgb.map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
  return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2]; };
const colour = (text) => text.match(/[\d.]+/g).map(Number);
const behind = (e) => { for (; e; e = e.parentElement) { const c = colour(getComputedStyle(e).backgroundColor); if (c.length < 4 || c[3] === 1) return c.slice(0, 3); }
  return [255, 255, 255]; };
const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
for (let n; (n = texts.nextNode());) {
  const e = n.parentElement;
  if (!n.textContent.trim() || e.closest('style,title,desc')) continue;
  const s = getComputedStyle(e), drawn = e instanceof SVGElement;
  const [a, b] = [light(colour(drawn ? s.fill : s.color).slice(0, 3)), light(behind(e))].sort((x, y) => y - x);
  const px = parseFloat(s.fontSize), large = px >= 24 || (px >= 18.66 && +s.fontWeight >= 700);
  if ((a + 0.05) / (b + 0.05) < (large ? 3 : 4.5)) say(`too little contrast: ${n.textContent.trim().slice(0, 40)}`);
  if (!drawn && px < 11) say(`too small: ${px}px: ${n.textContent.trim().slice(0, 40)}`);
}
for (const cell of all('tbody td, dd')) if (!cell.querySelector('svg')) found.figures.push(cell.textContent.trim());
for (const table of all('table')) { const head = [...table.querySelectorAll('thead th')].map(e => e.textContent.trim()).filter(Boolean);
  if (head.length) found.heads.push(head); }
found.title = document.querySelector('h1').textContent;
return found;
"""

WIDE = r"""
const most = document.documentElement.clientWidth;
if (document.documentElement.scrollWidth <= most) return [];
return [...document.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > most + 1 && !e.closest('.wide'))
  .map(e => e.tagName + ' ' + e.textContent.trim().slice(0, 40)).slice(0, 3).concat(['the page is ' + document.documentElement.scrollWidth + ' px wide']);
"""


def ask(groat, sheet, form):
    books, words = sheet
    command = f"{groat} {words} --books {ROOT / 'samples' / books} --as {form}" + ("" if "--on" in words else " --on 2026-11-25")
    done = subprocess.run(["sh", "-c", command], capture_output=True, timeout=60, check=False)
    if done.returncode != 0:
        raise SystemExit(f"{command}: exit {done.returncode}\n{done.stderr.decode()}")
    return done.stdout.decode("utf-8")


def words_of(value):
    if isinstance(value, str):
        yield value
    elif isinstance(value, (dict, list)):
        for each in value.values() if isinstance(value, dict) else value:
            yield from words_of(each)


def as_printed(figure):
    """A figure as paper has it: a share of one is a percentage there."""
    text = figure["rounded"]
    if figure["unit"] != "share" or not re.fullmatch(r"[+-]?[0-9]+(\.[0-9]+)?", text):
        return text
    sign = "+" if text.startswith("+") else ""
    return sign + format(Decimal(text).scaleb(2), "f")


FOR_PROGRAMS = {"reach"}  # what a sentence says on paper: "a margin of 40 %"


def figures_of(value):
    if isinstance(value, dict):
        if set(value) == {"rounded", "exact", "unit"}:
            yield as_printed(value)
        else:
            for key, each in value.items():
                if key not in FOR_PROGRAMS:
                    yield from figures_of(each)
    elif isinstance(value, list):
        for each in value:
            yield from figures_of(each)


# How the samples write the amount 1234.56: with these marks, and this sign.
MARKS = {"backstube": (".", ",", " €")}


def plain(text, books):
    """What a cell shows, without the marks and the sign of its shop."""
    group, point, sign = MARKS.get(books, ("", ".", ""))
    text = text.replace("\u00a0", " ")
    shape = rf"-?[0-9]{{1,3}}({re.escape(group)}[0-9]{{3}})*({re.escape(point)}[0-9]+)?( kg| g| %| min| h| kWh)?({sign})?( each)?"
    if sign and re.fullmatch(shape, text):
        text = text.replace(group, "").replace(point, ".").replace(sign, "")
    return text


def number_of(text):
    """The plain number that a cell shows, with its unit; None for words."""
    text = text.replace("\u00a0", " ")
    found = re.fullmatch(r"(-?[0-9]+(?:\.[0-9]+)?(?: kg| g)?)(?: (?:%|[A-Z]{3}|min|h|[a-zA-Z°/]+))?", text)
    return found.group(1) if found else None


def numbers(texts):
    return Counter(number for number in map(number_of, texts) if number is not None)


def pdf_pages(pdf, folder):
    file = pathlib.Path(folder) / "print.pdf"
    file.write_bytes(pdf)
    text = subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, check=True).stdout.decode("utf-8")
    return text.split("\f")[:-1]


def check_paper(found, pages, paper):
    wrong = []
    whole = " ".join(" ".join(pages).split())
    if " ".join(found["title"].split()) not in whole:
        wrong.append(f"{paper}: the title is not there")
    squeezed = re.sub(r"\s", "", whole)
    lost = [each for each in found["figures"] if each and re.sub(r"\s", "", each) not in squeezed and number_of(each)]
    if lost:
        wrong.append(f"{paper}: figures are not there: {lost[:3]}")
    for number, page in enumerate(pages, 1):
        if not re.search(rf"\b{number} ?/ ?{len(pages)}\b", page):
            wrong.append(f"{paper}: page {number} of {len(pages)} has no number")
            break
        if len(page.split()) < 6:
            wrong.append(f"{paper}: page {number} is all but empty")
    return wrong


def examine(browser, page, document, folder, books="", keep=True):
    """(figures compared, what is wrong) of a page beside the JSON of the same sheet, from the books of that sample."""
    wrong = []
    browser.resize(1280, 900)
    browser.open(page)
    found = browser.run(LOOK)
    wrong += sorted(set(found["wrong"]))
    wrong += browser.faults(page)
    expected = Counter(each for each in figures_of(document) if number_of(each))
    shown = numbers(plain(each, books) for each in found["figures"])
    if expected - shown:
        wrong.append(f"figures of the JSON are not on the page: {list((expected - shown).elements())[:5]}")
    strange = shown - expected - numbers(plain(each, books) for each in words_of(document))
    if strange:
        wrong.append(f"figures on the page are not in the JSON: {list(strange.elements())[:5]}")
    if keep:
        browser.picture(page.with_suffix(".png"))
    for width, what in [(360, "a phone"), (640, "200 % zoom on 1280 px")]:
        browser.resize(width, 780)
        for each in browser.run(WIDE):
            wrong.append(f"scrolls sideways at {width} px ({what}): {each}")
        if width == 360 and keep:
            browser.picture(page.with_suffix(".phone.png"))
    browser.resize(1280, 900)
    for paper, size in PAPERS.items():
        pdf = browser.printed(*size)
        if keep:
            page.with_suffix(f".{paper}.pdf").write_bytes(pdf)
        wrong += check_paper(found, pdf_pages(pdf, folder), paper)
    return sum(expected.values()), wrong


SPOILT = [
    ("<main>", "<main><h1>Another</h1>", "main headings"),
    ("<main>", "<main><h4>Too deep</h4>", "leaves a level out"),
    ("<main>", '<main><p style="color:#999">pale</p>', "too little contrast"),
    ("<main>", '<main><p style="width:50rem">wide</p>', "scrolls sideways at 360"),
    ("<main>", '<main><img src="data:image/png;base64,AAAA">', "a picture without words"),
    ("<main>", '<main><svg viewBox="0 0 1 1"></svg>', "a drawing without words"),
    ("<main>", '<main><p id="a"></p><p id="a"></p>', "an id stands twice"),
    ("<main>", '<main><iframe></iframe>', "no need of"),
    ("img-src data:", "img-src *", None),
    ("<main>", '<main><img alt="seen" src="http://127.0.0.1:9/x.png">', "said on the console"),
    (' scope="col"', "", "without a scope"),
    (' lang="en"', "", "no language"),
    (">70.50<", ">70.51<", "figures of the JSON are not on the page: ['70.50'"),
    (">70.50<", ">70.51<", "figures on the page are not in the JSON: ['70.51'"),
    ("counter(pages)", "''", "has no number"),
]


def self_test(browser, groat, folder):
    """Each fault put into a good page must be found."""
    page = pathlib.Path(folder) / "spoilt.html"
    sheet = SHEETS[0]
    text, document = ask(groat, sheet, "html"), json.loads(ask(groat, sheet, "json"))
    wrong = []
    for old, new, complaint in SPOILT:
        if old not in text:
            wrong.append(f"self-test: '{old}' is not on the page")
            continue
        if complaint is None:                     # stays: the next fault needs it
            text = text.replace(old, new)
            continue
        page.write_text(text.replace(old, new), encoding="utf-8")
        found = examine(browser, page, document, folder, keep=False)[1]
        if not any(complaint in each for each in found):
            wrong.append(f"self-test: '{new or 'nothing'}' for '{old}' was not found out; only {found}")
    return wrong


def check_long_table(browser, groat, folder):
    """An order of 120 lines: its head stands on every page that has lines, and no line is broken over two."""
    books = pathlib.Path(folder) / "books"
    shutil.copytree(ROOT / "samples" / "bakery", books)
    lines = "".join(f"  - {{item: rye-plum sandwich, as: box of 12, count: {n}, price: {{given: {100 + n}.25}}}}\n" for n in range(1, 121))
    (books / "orders" / "long.yaml").write_text(f"order: long\nclient: A long table\ndate: 2026-11-25\nlines:\n{lines}", encoding="utf-8")
    page = pathlib.Path(folder) / "long.html"
    page.write_text(ask(groat, (books, "quote long"), "html"), encoding="utf-8")
    browser.open(page)
    wrong = []
    for paper, size in PAPERS.items():
        pages = pdf_pages(browser.printed(*size), folder)
        rows = [re.findall(r"sandwich, box of 12 +([0-9]+) +([0-9.,]+) +([0-9.,]+)$", each, re.M) for each in pages]
        if [int(count) for each in rows for count, _, _ in each] != list(range(1, 121)):
            wrong.append(f"{paper}: not every line of a long order stands whole on the paper")
        if sum(bool(each) for each in rows) < 3:
            wrong.append(f"{paper}: a long order takes less than three pages")
        if any(each and "Price each" not in text for each, text in zip(rows, pages)):
            wrong.append(f"{paper}: a page of a long table has no head")
    return wrong


def main():
    parser = argparse.ArgumentParser(description="The pages in a real browser.")
    parser.add_argument("groat", type=pathlib.Path)
    parser.add_argument("--keep", metavar="DIR")
    options = parser.parse_args()
    if webdriver.missing():
        print(f"not installed: {', '.join(webdriver.missing())}")
        return 77
    groat = options.groat.resolve()
    figures, results = 0, []
    with tempfile.TemporaryDirectory() as temporary, webdriver.Browser() as browser:
        folder = pathlib.Path(options.keep or temporary)
        folder.mkdir(parents=True, exist_ok=True)
        for number, sheet in enumerate(SHEETS, 1):
            page = folder / f"{number:02}-{sheet[1].split()[0]}.html"
            page.write_text(ask(groat, sheet, "html"), encoding="utf-8")
            count, wrong = examine(browser, page, json.loads(ask(groat, sheet, "json")), temporary, sheet[0])
            figures += count
            results.append([f"{sheet[0]}: {sheet[1]}: {each}" for each in wrong])
        results.append(check_long_table(browser, groat, temporary))
        results.append(self_test(browser, groat, temporary))
    for wrong in results:
        print("".join(each + "\n" for each in wrong), end="")
    failed = sum(bool(wrong) for wrong in results)
    print(f"{figures} figures compared")
    print(f"{len(results) - failed} passed, {failed} failed")
    return 1 if failed or not figures else 0


if __name__ == "__main__":
    sys.exit(main())
