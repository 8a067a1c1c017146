"""Nothing of the maker's money is on a sheet that leaves the house, in any form of it.

    secrecy.py GROAT_BINARY [--books N] [--seed S]

Two proofs over random folders of books (tests/reference/random_books.py):

1. Prices are agreed, so that they hang on no cost. Then everything that is the maker's alone is changed: suppliers' names and
   prices, wages, tariffs, overhead, fees, losses, minutes, targets. The client's quote and labels must stay the same to the
   last byte, as text, HTML, Markdown, CSV and JSON, while the maker's worksheet must not.
2. Prices are solved from costs. Then every figure of the worksheet that has three digits or more, rounded or exact, and that is not
   on the client's own sheet, and every supplier's name, must not stand anywhere in the client's file. An order to a supplier holds
   nothing of the worksheet but what that supplier is paid, no other supplier's name and no client's.

Ends with `N passed, M failed` (folders).
"""

import argparse
import copy
import json
import pathlib
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

sys.path[:0] = [str(pathlib.Path(__file__).resolve().parent.parent / room) for room in ("reference", "browser")]
import pages  # noqa: E402
import random_books  # noqa: E402
import reference  # noqa: E402

FORMS = ["text", "html", "markdown", "csv", "json"]


class Failure(Exception):
    """What went wrong with a folder, in words."""


def ask(binary, directory, *words):
    done = subprocess.run([binary, *words, "--books", str(directory)], capture_output=True, timeout=120, check=False)
    if done.returncode != 0:
        raise Failure(f"{' '.join(words)}: exit {done.returncode}\n{done.stderr.decode('utf-8', 'replace')[:1500]}")
    return done.stdout


# --- the first proof: what a client gets does not hang on what the maker pays

def agreed(folder):
    """The folder with every price agreed, and nothing charged at cost."""
    folder = copy.deepcopy(folder)
    for number, order in enumerate(folder["orders"]):
        for at, line in enumerate(reference.item_lines(order)):
            line["price"] = {"given": random_books.decimal_text(Fraction(731 + 97 * at + 13 * number), reference.MINOR_DIGITS[
                folder["shop"]["currency"]])}
        order.pop("discount", None)     # may be an amount that is more than there is to pay now
        if order.get("delivery", {}).get("charge") == "at cost":
            order["delivery"]["charge"] = "in price"
    return folder


def scaled(text, factor):
    """The first number of `12.50 / h` times so much, as a whole number."""
    found = re.search(r"[0-9]+(\.[0-9]+)?", text)
    more = Fraction(found.group()) * factor
    return text[:found.start()] + f"{more.numerator * 100 // more.denominator // 100 + 1}" + text[found.end():]


def plain_money(text):
    """Whether there is nothing but one plain number to change."""
    return re.fullmatch(r"[A-Z ]*[0-9]+(\.[0-9]+)?[A-Z ]*( ?/ ?[a-zA-Z]+)?", text) is not None


def other_maker(folder, yields=True):
    """The same goods for the same prices, made by somebody who pays otherwise for everything, and loses more in trimming. A
    label says what is in the bowl: of what is written `as bought` that does hang on the yield."""
    folder = copy.deepcopy(folder)
    shop = folder["shop"]
    for role in shop["labour"].values():
        if plain_money(role["wage"]):
            role["wage"] = scaled(role["wage"], 3)
        role["on-cost"] = "17 %"
    for name, rate in shop.get("energy", {}).items():
        if plain_money(rate):
            shop["energy"][name] = scaled(rate, 7)
    shop["overhead"] = [{"name": "hidden overhead", "rate": "9 per order"}]
    shop["order work"] = [{"task": "hidden task", "by": next(iter(shop["labour"])), "minutes": "77"}]
    for fee in shop.get("fees", {}).values():
        fee["share"] = "6.5 %"
    shop["price"] = {"margin": "61 %"}
    for facts in [*folder["ingredients"].values(), *folder["supplies"].values()]:
        if "yield" in facts and yields:
            facts["yield"] = "51 %"
        if "prefer" in facts:
            facts["prefer"] = "Hidden " + facts["prefer"]
    for prices in folder["prices"]:
        prices["supplier"] = "Hidden " + prices["supplier"]
        for offer in prices["offers"]:
            if isinstance(offer.get("price"), str) and plain_money(offer["price"]):
                offer["price"] = scaled(offer["price"], 5)
    for purchase in folder["purchases"]:
        purchase["supplier"] = "Hidden " + purchase["supplier"]
        for bought in purchase["items"]:
            if plain_money(bought["paid"]):
                bought["paid"] = scaled(bought["paid"], 5)
    for order in folder["orders"]:
        for line in order["lines"]:
            if "text" in line:
                line["cost"] = "77"
    return folder


def proof_of_independence(binary, folder, seed, directory):
    ours, theirs = pathlib.Path(directory) / "ours", pathlib.Path(directory) / "theirs"
    one = agreed(folder)
    random_books.write_folder(one, seed, ours)
    same_yields = pathlib.Path(directory) / "same yields"
    random_books.write_folder(other_maker(one), seed, theirs)
    random_books.write_folder(other_maker(one, yields=False), seed, same_yields)
    for order in one["orders"]:
        name = order["order"]
        if ask(binary, ours, "quote", name, "--for", "maker") == ask(binary, theirs, "quote", name, "--for", "maker"):
            raise Failure("the maker's worksheet is the same as well: nothing was tried")
        for form in FORMS:
            if ask(binary, ours, "quote", name, "--as", form) != ask(binary, theirs, "quote", name, "--as", form):
                raise Failure(f"order {name}, {form}: the client's sheet hangs on what is the maker's")
        for line in reference.item_lines(order):
            words = ["label", line["item"], "--on", order["date"]] + (["--in", line["as"]] if "as" in line else [])
            if "as" not in line:
                continue
            for form in ["text", "html", "json"]:
                if ask(binary, ours, *words, "--as", form) != ask(binary, same_yields, *words, "--as", form):
                    raise Failure(f"label of {line['item']}, {form}: it hangs on what is the maker's")


# --- the second proof: no figure of the worksheet stands in the client's file

def figures(value):
    """(rounded, exact) of every figure of a document."""
    if isinstance(value, dict):
        if set(value) == {"rounded", "exact", "unit"}:
            yield value["rounded"], value["exact"]
            if value["unit"] == "share":
                yield pages.as_printed(value), value["exact"]
        else:
            for each in value.values():
                yield from figures(each)
    elif isinstance(value, list):
        for each in value:
            yield from figures(each)


def telling(text):
    """Figures of few digits stand everywhere: in counts, days and the numbers of streets."""
    return len(re.sub(r"[^0-9]", "", text).strip("0")) >= 3


def tokens(text):
    return set(re.findall(r"[0-9]+(?:[./][0-9]+)*", text))


def readable(text, form):
    """Without what is the same on every page, and without the places of what is drawn."""
    if form != "html":
        return text
    text = re.sub(r"<style>.*?</style>", "", text, flags=re.S)
    text = re.sub(r'src="data:[^"]*"', "", text)
    return re.sub(r'\b(?:x|y|x1|x2|y1|y2|cx|cy|r|dx|dy|d|points|width|height|viewBox|transform)="[^"]*"', "", text)


def told(secrets, names, text, form):
    """What the text tells of the maker's."""
    text = readable(text, form)
    return sorted(secrets & tokens(text)) + sorted(name for name in names if name in text)


def proof_of_silence(binary, folder, seed, directory):
    books = pathlib.Path(directory) / "books"
    random_books.write_folder(folder, seed, books)
    names = {prices["supplier"] for prices in folder["prices"]}
    tried = 0
    for order in folder["orders"]:
        name = order["order"]
        client = {form: ask(binary, books, "quote", name, "--as", form).decode() for form in FORMS}
        worksheet = json.loads(ask(binary, books, "quote", name, "--for", "maker", "--as", "json"))
        open_figures = {each.lstrip("-") for figure in figures(json.loads(client["json"])) for each in figure}
        open_figures |= tokens(client["text"])       # taxes, dates and the client's words
        secrets = {each.lstrip("-") for figure in figures(worksheet) for each in figure if telling(each)}
        secrets = {each for each in secrets if re.fullmatch(r"[0-9]+(?:[./][0-9]+)*", each)} - open_figures
        tried += len(secrets)
        for form, text in client.items():
            found = told(secrets, names, text, form)
            if found:
                raise Failure(f"order {name}, {form}: the client's sheet tells {', '.join(found[:5])}")
            if secrets:                               # the check must see what it looks for
                some = sorted(secrets)[seed % len(secrets)]
                for hidden in (f"<!-- {some} -->", f'<p title="{some}">', f";{some}\n"):
                    if not told(secrets, names, text + hidden, form):
                        raise Failure(f"{some} was put into {form} and not seen")
        if seed % 10 == 0:                             # buying takes longest
            tried += suppliers_orders(binary, books, order, names, worksheet)
    return tried


def suppliers_orders(binary, books, order, names, worksheet):
    """How many secrets were looked for in the orders to suppliers."""
    words = ["--on", order["date"], "--as"]
    bought = json.loads(ask(binary, books, "buy", order["order"], *words, "json"))
    tried = 0
    wages = {each.lstrip("-") for row in worksheet["labour"] for figure in figures(row) for each in figure if telling(each)}
    for basket in bought["baskets"]:
        supplier = basket["of"]
        own = ask(binary, books, "buy", order["order"], "--from", supplier, *words, "json").decode()
        secrets = {each for each in wages if re.fullmatch(r"[0-9]+(?:[./][0-9]+)*", each)} - tokens(own)
        others = {name for name in names if name not in supplier} | ({order["client"]} if "client" in order else set())
        tried += len(secrets)
        for form in FORMS:
            text = ask(binary, books, "buy", order["order"], "--from", supplier, *words, form).decode()
            found = told(secrets, others, text, form)
            if found:
                raise Failure(f"order to {supplier}, {form}: it tells {', '.join(found[:5])}")
    return tried


def main():
    parser = argparse.ArgumentParser(description="The client's sheets hold nothing of the maker's money.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--books", type=int, default=40, metavar="N")
    parser.add_argument("--seed", type=int, default=1, metavar="S")
    options = parser.parse_args()
    passed = failed = secrets = 0
    for seed in range(options.seed, options.seed + options.books):
        folder = random_books.make_folder(seed)
        with tempfile.TemporaryDirectory() as directory:
            try:
                proof_of_independence(options.binary, folder, seed, directory)
                secrets += proof_of_silence(options.binary, folder, seed, directory)
                passed += 1
            except Failure as problem:
                failed += 1
                print(f"seed {seed}: {problem}")
    print(f"{secrets} figures of worksheets looked for")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not secrets else 0


if __name__ == "__main__":
    sys.exit(main())
