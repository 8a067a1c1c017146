"""Laws of costing that hold in every folder of books, whatever the figures are.

    laws.py GROAT_BINARY [--books N] [--seed S] [--law NAME]

A law asks for the figures of orders and items, of the books as they are or changed, and says where they break it. Whom
it asks is one of two: the reference, as reference_test.py and mutants.py do, or the command, as this script does. Laws
that change the books write the changed ones out anew. Ends with `N checks, M broken`; the exit code is 1 if one was
broken or if a law had nothing to check at all.
"""

import argparse
import copy
import sys
import tempfile
from fractions import Fraction

import compare
import groat_json
import random_books
import reference
from reference import CATEGORIES, Book, is_rate, rate


# ------------------------------------------------------------------------------------------------ who is asked

class Reference:
    """The reference, or a changed copy of it."""

    knows_caps = True

    def __init__(self, module=reference):
        self.module = module

    def order(self, folder, name):
        return self.module.order_figures(folder, name)

    def item(self, folder, item, on):
        return self.module.menu_figures(folder, item, on)


class Command:
    """groat."""

    knows_caps = False         # groat says in words what is the most that is asked, see groat_json.UNPRINTED

    def __init__(self, binary):
        self.binary = binary

    def figures(self, folder, arguments):
        with tempfile.TemporaryDirectory() as directory:
            random_books.write_folder(folder, 1, directory)
            printed = groat_json.flatten(compare.ask(self.binary, arguments, directory))
        return {key: compare.exact(value) for key, value in printed.items()}

    def order(self, folder, name):
        return self.figures(folder, ["quote", name, "--for", "maker"])

    def item(self, folder, item, on):
        return self.figures(folder, ["cost", item, "--on", on])


class Checks:
    """What was checked, and what did not hold."""

    def __init__(self):
        self.made, self.broken = 0, []

    def hold(self, claim, text):
        self.made += 1
        if not claim:
            self.broken.append(text)

    def equal(self, one, other, text):
        self.hold(one == other, f"{text}: {one} and {other}")


# ------------------------------------------------------------------------------------------------ books, changed

def without_orders_own(folder, whole_packs=False):
    """The books without what belongs to orders: order work, what is done, used or paid for each order, whole packs."""
    changed = copy.deepcopy(folder)
    changed.pop("stock", None)       # it may name ways of selling that a law changes
    shop = changed["shop"]
    for key in ("order work", "minimum order", "rush", "costed as"):
        shop.pop(key, None)
    shop["overhead"] = [entry for entry in shop.get("overhead", []) if not entry["rate"].endswith("per order")]
    if not shop["overhead"]:
        del shop["overhead"]
    for formula in changed["formulas"]:
        for key in ("labour", "consumables"):
            if key in formula:
                formula[key] = [entry for entry in formula[key] if entry.get("per") != "order"]
                if not formula[key]:
                    del formula[key]
    if not whole_packs:
        for facts in list(changed["ingredients"].values()) + list(changed["supplies"].values()):
            facts.pop("buy", None)
    for order in changed["orders"]:
        for key in ("delivery", "discount", "rush", "quantity breaks", "made with", "costed as"):
            order.pop(key, None)
        order["lines"] = reference.item_lines(order)
        for line in order["lines"]:
            line.pop("costed as", None)
    return changed


def with_orders(folder, *orders):
    return {**folder, "orders": list(orders)}


def without_breaks(folder):
    changed = copy.deepcopy(folder)
    for order in changed["orders"]:
        order.pop("quantity breaks", None)
    return changed


def items_of(folder, most=2):
    return random_books.menu_items(folder)[:most]


def lines_of(figures):
    at = 1
    while f"line/{at}/cost" in figures:
        yield at
        at += 1


def costs(figures):
    """The costs of an order's lines, by category."""
    return {name: sum(figures[f"line/{at}/{name}"] for at in lines_of(figures)) for name in CATEGORIES}


# ------------------------------------------------------------------------------------------------ the laws

def an_item_costs_what_an_order_of_its_run_costs(asks, folder, checks):
    """To the last digit and by category, without what belongs to orders."""
    bare, book = without_orders_own(folder), Book(folder)
    for item, on in items_of(folder):
        way = next(iter(book.formulas[item].get("sold as", {})), None)
        holds = book.quantity(book.formulas[item]["sold as"][way]["holds"]).amount if way else Fraction(1)
        units = reference.units_of_standard_run(book, reference.date(on), item, holds)
        order = {"order": "run", "date": on, "lines": [{"item": item, **({"as": way} if way else {}), "count": str(units)}]}
        found = asks.item(folder, item, on)
        run = asks.order(with_orders(bare, order), "run")
        for name in CATEGORIES + ["cost"]:
            checks.equal(found[f"item/{name}"], run[f"line/1/{name}"] / units, f"{item}, {name} of a run of {units}")


def what_is_kept_is_linear(asks, folder, checks):
    """cost(a) + cost(b) = cost(a + b) of what is kept, in every category."""
    bare = without_orders_own(folder)
    book = Book(folder)
    on = folder["orders"][0]["date"]
    for name in [name for name, formula in book.formulas.items() if formula.get("leftover") == "kept"][:2]:
        formula = next(each for each in bare["formulas"] if each["formula"] == name)
        holds = "1" if reference.World(book, None, []).is_pieces(name) else "100 g"
        formula["sold as"] = {"bit": {"holds": holds}}
        orders = [{"order": str(count), "date": on, "lines": [{"item": name, "as": "bit", "count": str(count)}]} for count in (3, 4, 7)]
        three, four, seven = (costs(asks.order(with_orders(bare, *orders), order["order"])) for order in orders)
        for kind in CATEGORIES:
            checks.equal(three[kind] + four[kind], seven[kind], f"{name}, {kind} of 3 and 4 and of 7")


def made_together_costs_no_more_and_adds_up(asks, folder, checks):
    """No order, and no category of it, is dearer than alone, and what all pay is what all cost."""
    if len(folder["orders"]) < 2:
        return
    books = without_orders_own(folder, whole_packs=True)
    for formula, as_it_was in zip(books["formulas"], folder["formulas"]):
        formula.update({key: as_it_was[key] for key in ("labour", "consumables") if key in as_it_was})
    newest = max(order["date"] for order in books["orders"])
    names = [order["order"] for order in books["orders"]]
    for order in books["orders"]:
        order["date"] = newest
        order.pop("due", None)
    alone = [{**order, "costed as": "alone"} for order in books["orders"]]
    together = [{**order, "costed as": "made together"} for order in books["orders"]]
    together[0]["made with"] = names[1:]
    merged = {"order": "all", "date": newest, "lines": [line for order in books["orders"] for line in order["lines"]]}
    paid = {name: Fraction(0) for name in CATEGORIES}
    for name in names:
        one = costs(asks.order(with_orders(books, *alone), name))
        shared = costs(asks.order(with_orders(books, *together), name))
        for kind in CATEGORIES:
            checks.hold(shared[kind] <= one[kind], f"{name}, {kind}: {shared[kind]} together, {one[kind]} alone")
            paid[kind] += shared[kind]
    whole = costs(asks.order(with_orders(books, merged), "all"))
    # A supply by whole packs may be both: its packs are shared as a whole.
    for kinds in (["ingredients"], ["consumables", "packaging"], ["labour"], ["energy"], ["overhead"]):
        checks.equal(sum(paid[kind] for kind in kinds), sum(whole[kind] for kind in kinds), f"{' and '.join(kinds)} of all")


def tiers_are_safe_and_reached(asks, folder, checks):
    """No count of a tier needs more than its price, one needs just that; what is asked never falls with the count."""
    for order in folder["orders"]:
        if "quantity breaks" not in order:
            continue
        found = asks.order(folder, order["order"])
        own = reference.counts_of(order)
        changed = without_breaks(folder)
        its_copy = next(each for each in changed["orders"] if each["order"] == order["order"])
        its_lines = reference.item_lines(its_copy)
        for at, count in enumerate(own):
            if f"line/{at + 1}/wanted" not in found:      # a price that is given is one tier
                continue
            starts = sorted({reference.number(text) for text in order["quantity breaks"]} | {count})
            ends = [start - 1 for start in starts[1:]] + [4 * starts[-1]]
            price = {}
            for start, end in zip(starts, ends):
                tier = found[f"tier/{at + 1}/{start}/price"]
                needed = []
                for n in range(int(start), int(end) + 1):
                    its_lines[at]["count"] = str(n)
                    needed.append(asks.order(changed, order["order"])[f"line/{at + 1}/price"])
                    price[n] = tier
                its_lines[at]["count"] = str(count)
                what = f"{order['order']}, line {at + 1}, from {start}"
                checks.hold(max(needed) <= tier, f"{what}: {max(needed)} is needed, {tier} is the price")
                checks.hold(max(needed) >= tier, f"{what}: no count needs {tier}, at most {max(needed)}")
            if not asks.knows_caps:
                continue
            asked = {n: found.get(f"tier/{at + 1}/{n}/most", n * price[n]) for n in price}
            for n in sorted(price)[:-1]:
                checks.hold(asked[n] <= asked[n + 1], f"{order['order']}, line {at + 1}: {asked[n]} for {n}, {asked[n + 1]} for one more")
            for n in price:
                checks.hold(any(asked[n] == m * price[m] for m in price if m >= n),
                            f"{order['order']}, line {at + 1}: {asked[n]} for {n} is no price of as many or more")
        return         # one order of a folder is enough


def a_solved_price_returns_its_target(asks, folder, checks):
    """Before it is rounded, and less the discount that is in it."""
    book = Book(folder)
    for order in folder["orders"]:
        found = asks.order(without_breaks(folder), order["order"])
        share, _ = reference.fees_of_order(book, order)
        sales = reference.sales_of(book, order, reference.counts_of(order))
        for at, (entry, sale) in enumerate(zip(reference.item_lines(order), sales), start=1):
            if f"line/{at}/wanted" not in found:
                continue
            (target, value), _ = reference.price_wish(book, [
                entry.get("price", {}), sale.unit.get("price", {}), book.formulas[sale.item].get("price", {}), book.shop["price"]])
            net = found[f"line/{at}/wanted"] * (1 - reference.discount_in_price(order))
            fee = found[f"line/{at}/fixed fee"] / sale.count + share * net * (1 + reference.tax_of_item(book, order, sale.item))
            unit = {name: found[f"line/{at}/{name}"] / sale.count for name in CATEGORIES + ["cost"]}
            if target == "contribution" and (net == 0 or any("variable" in each for each in book.shop.get("overhead", []))):
                continue       # which part of the overhead varies is no figure of a sheet
            variable = sum(unit[name] for name in book.shop.get("variable", [name for name in CATEGORIES if name != "overhead"]))
            reached = {"margin": lambda: (net - unit["cost"] - fee) / net,
                       "markup": lambda: (net - unit["cost"] - fee) / (unit["cost"] + fee),
                       "food cost": lambda: unit["ingredients"] / net,
                       "prime cost": lambda: (unit["ingredients"] + unit["labour"]) / net,
                       "contribution": lambda: net - fee - variable}[target]()
            checks.equal(reached, value, f"{order['order']}, line {at}, {target}")


def margin_is_markup_over_one_and_markup(asks, folder, checks):
    """m = k / (1 + k), of what is shown, since the payment fee is a cost."""
    for order in folder["orders"]:
        found = asks.order(without_breaks(folder), order["order"])
        for at in lines_of(found):
            if f"line/{at}/markup" in found and f"line/{at}/margin" in found:
                margin, markup = found[f"line/{at}/margin"], found[f"line/{at}/markup"]
                checks.equal(margin * (1 + markup), markup, f"{order['order']}, line {at}")


def the_parts_add_up(asks, folder, checks):
    """Categories to costs, kinds of loss to ingredients, lines to totals, to the last digit."""
    book = Book(folder)
    for order in folder["orders"]:
        found = asks.order(without_breaks(folder), order["order"])
        what, lines = order["order"], list(lines_of(found))
        for at in lines:
            checks.equal(sum(found[f"line/{at}/{name}"] for name in CATEGORIES), found[f"line/{at}/cost"], f"{what}, cost of line {at}")
        checks.equal(sum(found[f"loss/{kind}"] for kind in ("in the piece", "trim", "process", "rounding")),
                     sum(found[f"line/{at}/ingredients"] for at in lines), f"{what}, kinds of loss")
        for kind, names in (("ingredient", ["ingredients"]), ("supply", ["consumables", "packaging"])):
            items = [value for key, value in found.items() if key.startswith(f"{kind}/") and key.endswith("/cost")]
            checks.equal(sum(items), sum(found[f"line/{at}/{name}"] for at in lines for name in names), f"{what}, {kind} by {kind}")
        checks.equal(sum(found[f"line/{at}/fixed fee"] for at in lines), reference.fees_of_order(book, order)[1], f"{what}, fixed fee")
        free = [reference.number(entry["count"]) * book.money(entry["price"]) for entry in order["lines"] if reference.is_free(entry)]
        checks.equal(sum(found[f"line/{at}/amount"] for at in lines) + sum(free), found["total/subtotal"], f"{what}, subtotal")
        steps = (found["total/subtotal"] - found["total/discount"] + found["total/minimum"] + found["total/rush"]
                 + found["total/delivery"] + (0 if reference.tax_contained(book) else found["total/tax"]))
        checks.equal(steps, found["total/total"], f"{what}, steps to the total")
        for at in lines:
            checks.equal((found[f"line/{at}/amount"] / book.coin).denominator, 1, f"{what}, line {at} in whole coins")
        checks.equal(found["total/deposit"] + found["total/balance"], found["total/total"], f"{what}, payments")
        checks.equal(found["total/revenue"], found["total/total"] - found["total/tax"], f"{what}, revenue")
        checks.equal(found["total/revenue"] - found["total/fee"] - found["total/cost"], found["total/profit"], f"{what}, profit")
        for kind in ("subtotal", "minimum", "rush", "discount", "delivery", "tax", "total", "deposit"):
            checks.equal((found[f"total/{kind}"] / book.coin).denominator, 1, f"{what}, {kind} in whole coins")


def the_taxable_amounts_add_up(asks, folder, checks):
    """Those of all classes to what is paid without tax, and each is taxed at its own rate to a coin a line."""
    book = Book(folder)
    for order in folder["orders"]:
        found = asks.order(without_breaks(folder), order["order"])
        # Where there is one class only, there is nothing to add up.
        classes = {key.split("/", 1)[1].rsplit("/", 1)[0] for key in found if key.startswith("tax/")}
        if not classes:
            continue
        checks.equal(sum(found[f"tax/{tax}/taxable"] for tax in classes), found["total/net"], f"{order['order']}, taxable amounts")
        checks.equal(sum(found[f"tax/{tax}/tax"] for tax in classes), found["total/tax"], f"{order['order']}, tax")
        for tax in classes:
            off = abs(found[f"tax/{tax}/taxable"] * Fraction(tax) - found[f"tax/{tax}/tax"])
            checks.hold(off <= (len(order["lines"]) + 2) * book.coin, f"{order['order']}, tax at {tax}: {off} off")


def same_costs(asks, folder, changed, checks, what):
    """Neither an order nor an item costs anything else by that change of the books."""
    for order in folder["orders"][:1]:
        before, after = (asks.order(without_breaks(books), order["order"]) for books in (folder, changed))
        for at in lines_of(before):
            checks.equal(before[f"line/{at}/cost"], after[f"line/{at}/cost"], f"{order['order']}, line {at}, {what}")
    for item, on in items_of(folder, 1):
        before, after = (asks.item(books, item, on) for books in (folder, changed))
        checks.equal(before["item/cost"], after["item/cost"], f"{item}, {what}")


def a_deposit_is_no_cost(asks, folder, checks):
    changed = copy.deepcopy(folder)
    for price_list in changed["prices"]:
        for offer in price_list["offers"]:
            offer["deposit"] = "5"
    same_costs(asks, folder, changed, checks, "with deposits on all packs")


def what_is_only_compared_is_no_cost(asks, folder, checks):
    changed = copy.deepcopy(folder)
    for price_list in list(changed["prices"]):
        changed["prices"].append({"supplier": "a bulk house", "terms": {"minimum": "1", "delivery": "1", "only compared": "yes"}, "offers": [
            {"item": offer["item"], "pack": offer["pack"], "price": "1"} for offer in price_list["offers"]]})
    del changed["prices"][len(folder["prices"]) + 1:]
    same_costs(asks, folder, changed, checks, "with a bulk house to compare with")


def stock_is_in_no_cost(asks, folder, checks):
    changed = copy.deepcopy(folder)
    book = Book(folder)
    world = reference.World(book, None, [])
    items = {name: "5" if world.is_pieces(name) else "70 g" for name in book.formulas}
    changed["stock"] = {"stock": folder["orders"][0]["date"], "items": items}
    same_costs(asks, folder, changed, checks, "with some of everything on the shelf")


def what_is_done_for_orders_is_in_no_item(asks, folder, checks):
    changed = copy.deepcopy(folder)
    worker = next(iter(changed["shop"]["labour"]))
    changed["shop"]["order work"] = changed["shop"].get("order work", []) + [{"task": "invoice", "by": worker, "minutes": "600"}]
    changed["shop"]["overhead"] = changed["shop"].get("overhead", []) + [{"name": "a call", "rate": "9 per order"}]
    for formula in changed["formulas"]:
        formula["labour"] = formula.get("labour", []) + [{"task": "prepare", "by": worker, "minutes": "60", "per": "order"}]
    for item, on in items_of(folder):
        before, after = (asks.item(books, item, on) for books in (folder, changed))
        for name in CATEGORIES:
            checks.equal(before[f"item/{name}"], after[f"item/{name}"], f"{item}, {name}, with more to do for each order")


LAWS = [an_item_costs_what_an_order_of_its_run_costs, what_is_kept_is_linear, made_together_costs_no_more_and_adds_up,
        tiers_are_safe_and_reached, a_solved_price_returns_its_target, margin_is_markup_over_one_and_markup, the_parts_add_up,
        the_taxable_amounts_add_up, a_deposit_is_no_cost, what_is_only_compared_is_no_cost, stock_is_in_no_cost,
        what_is_done_for_orders_is_in_no_item]


def main(arguments=None):
    parser = argparse.ArgumentParser(description="Hold groat's figures against laws over random books.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--books", type=int, default=30, metavar="N")
    parser.add_argument("--seed", type=int, default=1, metavar="S")
    parser.add_argument("--law", metavar="NAME", help="only laws whose name holds this")
    options = parser.parse_args(arguments)

    asks, made, broken, idle = Command(options.binary), 0, 0, 0
    laws = [law for law in LAWS if not options.law or options.law in law.__name__]
    folders = [random_books.make_folder(seed) for seed in range(options.seed, options.seed + options.books)]
    for law in laws:
        checks = Checks()
        for seed, folder in enumerate(folders, start=options.seed):
            try:
                before = len(checks.broken)
                law(asks, folder, checks)
            except (compare.Failure, KeyError) as problem:
                checks.broken.append(f"{type(problem).__name__}: {problem}")
            if len(checks.broken) > before:
                print(f"{law.__name__}, seed {seed}: {checks.broken[before]}")
        print(f"{checks.made:7} checks, {len(checks.broken)} broken  {law.__name__.replace('_', ' ')}")
        made, broken, idle = made + checks.made, broken + len(checks.broken), idle + (checks.made == 0)
    print(f"{made} checks, {broken} broken")
    return 1 if broken or idle or not laws else 0


if __name__ == "__main__":
    sys.exit(main())
