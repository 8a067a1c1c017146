"""Run `groat menu` on random menus over random folders of books and compare every exact figure with figures of its own.

    menu_compare.py GROAT_BINARY [--menus N] [--seed S] [--keep DIR]

What an item costs comes from reference.py; what a menu makes of it is calculated here, from the definitions: prices for targets,
what each price earns, sums by category, the mix and its groups, break-even. Ends with `N passed, M failed` (menus); the exit
code is 1 if one failed or if nothing was compared at all.
"""

import argparse
import pathlib
import random
import sys
import tempfile
from fractions import Fraction

import random_books
import reference
from compare import Failure, ask, differences
from reference import CATEGORIES, Book, BookError, World, number, rate

MENU = "menu of the day"
GROUPS = {(True, True): "sells and earns", (True, False): "sells, earns little",
          (False, True): "earns, sells little", (False, False): "neither"}


# ------------------------------------------------------------------------------------------------ a random menu

def items_of(folder):
    """What a menu may offer: each formula that an order takes or that one of these uses, in each way it is sold."""
    book = Book(folder)
    reached = []
    open_ = [line["item"] for order in folder["orders"] for line in reference.item_lines(order)]
    while open_:
        name = open_.pop()
        if name in reached:
            continue
        reached.append(name)
        open_ += [raw.item for raw in book.raw_lines(name) if book.is_formula(raw.item)]
    return [(name, way) for name in reached for way in (book.formulas[name].get("sold as") or {None: None})]


def make_menu(maker, folder, rng):
    write, chance = maker.write, lambda share: rng.random() < share
    menu = {"menu": MENU}
    if chance(0.5):
        menu["prices"] = rng.choice(["with", "without"])
    if chance(0.4):
        menu["price"] = maker.target(point=chance(0.5), given=False)
    if chance(0.5):
        menu["paid by"] = rng.choice(maker.payments + ["none"])
        if len(maker.payments) > 1 and chance(0.7):
            share = rng.randint(1, 99)
            menu["paid by"] = {maker.payments[0]: f"{share} %", maker.payments[1]: f"{100 - share} %"}
    if chance(0.5):
        menu["items per payment"] = write.number(Fraction(rng.randint(2, 9), 2))
    names = [f"category {n + 1}" for n in range(rng.choice([0, 1, 1, 2, 3]))]
    if names:
        menu["categories"] = {}
        for name in names:
            menu["categories"][name] = {} if chance(0.4) else maker.target(point=chance(0.3), given=False)
    has_sales = chance(0.8)
    offered = items_of(folder)
    rng.shuffle(offered)
    menu["items"] = []
    for name, way in offered[: rng.randint(1, 14)]:
        first = next(iter(Book(folder).formulas[name].get("sold as", {})), None)
        item = {"item": name}
        if way is not None and (way != first or chance(0.6)):
            item["as"] = way
        if names and chance(0.85):
            item["category"] = rng.choice(names)
        if chance(0.85):
            item["price"] = write.money(0.5, 25)
        if chance(0.25):
            item["target"] = maker.target(point=chance(0.3), given=False)
        if chance(0.2):
            item["tax"] = rng.choice(maker.other_rates + ["none"])
        if has_sales:
            item["sold"] = str(0 if chance(0.1) else rng.randint(1, 900))
        menu["items"].append(item)
    if has_sales and chance(0.7):
        menu["fixed costs"] = {f"cost {n + 1}": write.money(50, 4000) for n in range(rng.randint(1, 3))}
        if chance(0.6):
            menu["wanted profit"] = write.money(50, 3000)
        if chance(0.5):
            menu["tax on profit"] = write.rate(5, 45)
    return menu


# ------------------------------------------------------------------------------------------------ its figures

PLACED_FROM = 4        # items of a category; of fewer none is placed

class Item:
    """An item of a menu costed by itself at its standard run, all per sale unit."""

    def __init__(self, book, menu, entry, on):
        formula = book.formulas[entry["item"]]
        ways = formula.get("sold as", {})
        unit = ways[entry["as"]] if "as" in entry else next(iter(ways.values()), {})
        world = World(book, on, [])
        holds = book.quantity(unit["holds"]).amount if unit else Fraction(1 if world.is_pieces(entry["item"]) else 1000)
        units = reference.units_of_standard_run(book, on, entry["item"], holds)
        part = reference.cost_of_standard_run(book, on, entry["item"], unit, holds)
        # What is done at the counter for every payment; where nothing is said there is one for a standard run.
        together = number(menu["items per payment"]) if "items per payment" in menu else units
        for kind, amount in world.done_for_all(book.shop.get("counter work", []), 1 / together).items():
            part[kind] += amount
        self.cost = reference.by_category(part)
        self.variable = reference.variable_cost(book, part)
        self.labour, self.oven = part["labour minutes"], part["oven minutes"]

        contained = menu["prices"] == "with" if "prices" in menu else reference.tax_contained(book)
        tax = reference.tax_of_item(book, {"tax": entry["tax"]} if "tax" in entry else {}, entry["item"])
        share, fixed = reference.fee_of(book, {"paid by": menu["paid by"]} if "paid by" in menu else {})
        fixed = fixed / together
        category = menu.get("categories", {}).get(entry.get("category"), {})
        (target, value), point = reference.price_wish(
            book, [entry.get("target", {}), category, menu.get("price", {}), unit.get("price", {}),
                   formula.get("price", {}), book.shop["price"]])
        self.wanted = None
        shown = value
        if target != "given":
            self.wanted = reference.net_price(target, value, sum(self.cost.values()), self.cost["ingredients"],
                                              self.cost["labour"], self.variable, fixed, share, tax)
            shown = reference.at_price_point(point, self.wanted * (1 + tax if contained else 1), book.coin)
        self.shown = shown
        self.now = book.money(entry["price"]) if "price" in entry else None
        price = shown if self.now is None else self.now
        self.net = price / (1 + tax) if contained else price
        self.fee = share * self.net * (1 + tax) + fixed
        self.profit = self.net - sum(self.cost.values()) - self.fee
        self.contribution = self.net - self.variable - self.fee
        self.category = entry.get("category")
        self.sold = Fraction(entry["sold"]) if "sold" in entry else None
        self.weight = Fraction(1) if self.sold is None else self.sold


def shares(prefix, net, profit, ingredients, prime):
    if net == 0:
        return {}
    return {f"{prefix}/margin": profit / net, f"{prefix}/food_cost": ingredients / net, f"{prefix}/prime_cost": prime / net}


def sums(prefix, items):
    """The figures of a row of the totals."""
    def of(value):
        return sum((value(item) * item.weight for item in items), Fraction(0))
    figures = {f"{prefix}/units": of(lambda item: 1), f"{prefix}/sales": of(lambda item: item.net),
               f"{prefix}/contribution": of(lambda item: item.contribution), f"{prefix}/profit": of(lambda item: item.profit)}
    figures.update(shares(prefix, figures[f"{prefix}/sales"], figures[f"{prefix}/profit"],
                          of(lambda item: item.cost["ingredients"]),
                          of(lambda item: item.cost["ingredients"] + item.cost["labour"])))
    for name in CATEGORIES:
        figures[f"{prefix}/{name}"] = of(lambda item, name=name: item.cost[name])
    figures[f"{prefix}/cost"] = of(lambda item: sum(item.cost.values()))
    return figures


def menu_figures(folder, menu, on):
    """(figures, words): exact figures and group words by flat keys."""
    book = Book(folder)
    items = [Item(book, menu, entry, reference.date(on)) for entry in menu["items"]]
    figures, words = {}, {}
    for n, item in enumerate(items, start=1):
        figures.update({f"item/{n}/{name}": item.cost[name] for name in CATEGORIES})
        figures.update({f"item/{n}/cost": sum(item.cost.values()), f"item/{n}/net_price": item.net,
                        f"item/{n}/profit": item.profit, f"item/{n}/contribution": item.contribution,
                        f"item/{n}/shown": item.shown})
        figures.update(shares(f"item/{n}", item.net, item.profit, item.cost["ingredients"],
                              item.cost["ingredients"] + item.cost["labour"]))
        if item.wanted is not None:
            figures[f"item/{n}/wanted"] = item.wanted
        if item.now is not None:
            figures.update({f"item/{n}/now": item.now, f"item/{n}/gap": item.now - item.shown})
    for name in list(menu.get("categories", {})) + [None]:
        inside = [item for item, entry in zip(items, menu["items"]) if entry.get("category") == name]
        if inside:
            figures.update(sums(f"sum/{name or 'in no category'}", inside))
    figures.update(sums("sum/total", items))
    units = sum(item.weight for item in items)
    if items[0].sold is None or units == 0:
        return figures, words

    total = sum(item.contribution * item.sold for item in items)
    mean = total / units
    for kind in ("labour", "oven"):
        minutes = sum(getattr(item, kind) * item.sold for item in items)
        if minutes:
            figures[f"mix/per_{kind}_hour"] = total / minutes * 60
    for n, item in enumerate(items, start=1):
        for kind in ("labour", "oven"):
            if getattr(item, kind):
                figures[f"mix/{n}/per_{kind}_hour"] = item.contribution / getattr(item, kind) * 60
        if item.category is None and "categories" in menu:
            continue           # of no category: there is nothing to judge it within
        plane = [other for other in items if other.category == item.category]
        sold = sum(other.sold for other in plane)
        if sold:
            figures[f"mix/{n}/share"] = item.sold / sold
        words[f"mix/{n}/group"] = ""       # listed, not placed
        if len(plane) >= PLACED_FROM and sold:
            popular, earning = Fraction(7, 10) / len(plane), sum(other.contribution * other.sold for other in plane) / sold
            place = f"plane/{item.category}" if item.category is not None else "plane"
            figures.update({f"{place}/popularity_line": popular, f"{place}/contribution_line": earning})
            words[f"mix/{n}/group"] = GROUPS[item.sold / sold >= popular,
                                               item.contribution >= earning and item.contribution >= 0]
    if "fixed costs" not in menu:
        return figures, words

    fixed = sum(book.money(text) for text in menu["fixed costs"].values())
    sales = sum(item.net * item.sold for item in items)
    tax = rate(menu["tax on profit"]) if "tax on profit" in menu else Fraction(0)
    figures["even/profit"] = total - fixed
    if tax and total > fixed:
        figures["even/profit_after_tax"] = (total - fixed) * (1 - tax)
    figures["even/overhead"] = sum((sum(item.cost.values()) - item.variable) * item.sold for item in items)
    if mean > 0:
        wanted = book.money(menu["wanted profit"]) / (1 - tax) if "wanted profit" in menu else Fraction(0)
        for key, aim in (("even", Fraction(0)), ("wanted", wanted)):
            if key == "wanted" and not wanted:
                continue
            figures[f"even/{key}_units"] = (fixed + aim) / mean
            figures[f"even/{key}_sales"] = (fixed + aim) / mean * sales / units
            for n, item in enumerate(items, start=1):
                figures[f"even/{n}/{key}"] = (fixed + aim) * item.sold / total
    return figures, words


# ------------------------------------------------------------------------------------------------ what groat prints

def flatten(document):
    """The exact figures and the group words of a menu sheet, under the keys of `menu_figures`."""
    figures, words = {}, {}

    def put(key, figure):
        if isinstance(figure, dict):
            figures[key] = figure["exact"]

    for row in document["prices"]:
        put(f"item/{row['key']}/now", row["price"])
        put(f"item/{row['key']}/shown", row["wanted"])
        put(f"item/{row['key']}/gap", row["gap"])
    for row in document["earned"]:
        for name in ("net_price", "profit", "contribution", "margin", "food_cost", "prime_cost"):
            put(f"item/{row['key']}/{name}", row[name])
    for row in document["costs"]:
        for name in CATEGORIES:
            figures[f"item/{row['key']}/{name}"] = "0"
        for name in CATEGORIES + ["cost"]:
            put(f"item/{row['key']}/{name}", row.get(name))
    for row in document.get("targets", []):
        put(f"item/{row['key']}/wanted", row["wanted"])
    for row in document["totals"]:
        for name in ("units", "sales", "contribution", "profit", "margin", "food_cost", "prime_cost"):
            put(f"sum/{row['key']}/{name}", row[name])
    for row in document["cost_totals"]:
        for name in CATEGORIES:
            figures[f"sum/{row['key']}/{name}"] = "0"
        for name in CATEGORIES + ["cost"]:
            put(f"sum/{row['key']}/{name}", row.get(name))
    for name, figure in document.get("lines", {}).items():          # one plane: no categories
        put(f"plane/{name}", figure)
    for row in document.get("mix_lines", []):
        for name in ("popularity_line", "contribution_line"):
            put(f"plane/{row['key']}/{name}", row[name])
    for kind in ("labour", "oven"):
        put(f"mix/per_{kind}_hour", document["menu"].get(f"per_{kind}_hour"))
    for row in document.get("mix", []):
        put(f"mix/{row['key']}/share", row["share"])
        put(f"mix/{row['key']}/per_labour_hour", row["per_labour_hour"])
        put(f"mix/{row['key']}/per_oven_hour", row["per_oven_hour"])
        words[f"mix/{row['key']}/group"] = row["group"]
    for name, figure in document.get("break_even", {}).items():
        put(f"even/{name}", figure)
    for row in document.get("break_even_items", []):
        put(f"even/{row['key']}/even", row["even"])
        put(f"even/{row['key']}/wanted", row.get("wanted"))
    return figures, words


def compare_menu(binary, seed, directory):
    """(figures compared, differences found), or nothing where the menu cannot be: a target out of reach."""
    maker = random_books.Maker(seed)
    folder = maker.folder()
    menu = make_menu(maker, folder, random.Random(f"menu {seed}"))
    random_books.write_folder(folder, seed, directory)
    place = pathlib.Path(directory) / "menus" / "day.yaml"
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text(random_books.document(menu, random.Random(f"menu yaml {seed}")), encoding="utf-8")
    on = folder["orders"][0]["date"]
    try:
        figures, words = menu_figures(folder, menu, on)
    except BookError:
        return None
    try:
        printed, printed_words = flatten(ask(binary, ["menu", MENU, "--on", on], directory))
    except Failure as problem:
        return 0, [str(problem)]
    found = differences(figures, printed)
    found += [f"{key}\n    reference  {word}\n    groat      {printed_words.get(key)}"
              for key, word in words.items() if printed_words.get(key) != word]
    return sum(key in printed for key in figures) + len(words), found


def main(arguments=None):
    parser = argparse.ArgumentParser(description="Compare the figures of random menus with figures of its own.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--menus", type=int, default=200, metavar="N")
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="the first seed; further ones follow")
    parser.add_argument("--keep", metavar="DIR", help="write the folders there, by seed, and leave them")
    options = parser.parse_args(arguments)

    passed = failed = figures = left_out = 0
    seed = options.seed - 1
    while passed + failed < options.menus and left_out < options.menus:
        seed += 1
        with tempfile.TemporaryDirectory() as temporary:
            directory = pathlib.Path(options.keep) / str(seed) if options.keep else temporary
            result = compare_menu(options.binary, seed, directory)
        if result is None:
            left_out += 1
            continue
        compared, found = result
        figures += compared
        if not found:
            passed += 1
            continue
        failed += 1
        print(f"seed {seed}: {found[0]}")
        if len(found) > 1:
            print(f"    and {len(found) - 1} more on this menu")
    print(f"{figures} figures compared, {left_out} menus left out since a target is out of reach")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or passed < options.menus or figures == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
