"""Run `groat make` over random folders of books and compare its production sheet with a second reading.

    production_compare.py GROAT_BINARY [--orders N] [--seed S]

The books are read by reference.py; what is made of them is calculated here anew, from the order down, by its own rules: which
formula comes before which, what of it is on the shelf already, how many of each, mixes, loads, the weight of every line,
minutes by role. Nothing of it looks at groat's code or output. Where a folder has several orders, all of them together are compared as well. Some ovens are told in
trays. Ends with `N passed, M failed` (plans); the exit code is 1 if one failed or nothing was compared.
"""

import argparse
import json
import random
import subprocess
import sys
import tempfile
from fractions import Fraction

import random_books
import reference
from reference import as_list, ceiling, is_rate, kept, number, rate

STEPS = {"exact": None, "half": Fraction(1, 2), "whole": Fraction(1), "quarter": Fraction(1, 4)}


class Plan:
    """Orders of a book made together on a day."""

    def __init__(self, book, on, orders):
        self.book = book
        self.needed = min(wanted_on(order) for order in orders)
        self.orders = len(orders)
        # Of reference.World only what one batch is: lines, pieces, finished weights. Demand is calculated here.
        self.batch = reference.World(book, on, [], process=True, rounding=True)
        self.taken = {}          # key of the shelf -> how much is taken there
        self.sales = []          # what is still to be packed
        self.pack_less(orders)
        self.order = self.bottom_up()
        self.wanted = {name: Fraction() for name in self.order}
        self.made = {}
        self.started = {}
        for sale in self.sales:
            self.wanted[sale.item] += sale.count * sale.holds
        for name in reversed(self.order):
            self.settle(name)
        self.order = [name for name in self.order if self.made[name]]

    def pack_less(self, orders):
        """The sales, less what stands packed on the shelf: to the orders by the day they are wanted, of one day as they come."""
        left = {}
        for order in sorted(orders, key=wanted_on):
            for entry, sale in zip(reference.item_lines(order), sales_of(self.book, order)):
                ways = self.book.formulas[sale.item].get("sold as", {})
                way = entry.get("as", next(iter(ways), None))
                count = sale.count
                for at, lot in enumerate(self.lots(sale.item)):
                    if way is not None and lot.get("as") == way and good_on(lot, wanted_on(order)):
                        there = left.setdefault((sale.item, at), number(lot["amount"]))
                        ready = min(there, count)
                        left[sale.item, at] -= ready
                        count -= ready
                        self.take(f"{sale.item}, {way}", ready)
                if count:
                    self.sales.append(sale._replace(count=count))

    def lots(self, name):
        """What is on the shelf of it, lot by lot."""
        return [lot if isinstance(lot, dict) else {"amount": lot} for lot in as_list(self.book.stock.get(name, []))]

    def take(self, key, amount):
        if amount:
            self.taken[key] = self.taken.get(key, Fraction()) + amount

    def parts(self, name):
        return [raw.item for raw in self.book.raw_lines(name) if self.book.is_formula(raw.item)]

    def bottom_up(self):
        """The formulas needed, each after those that it uses."""
        done = []

        def visit(name):
            if name in done:
                return
            for part in self.parts(name):
                visit(part)
            done.append(name)

        for sale in self.sales:
            visit(sale.item)
        return done

    def settle(self, name):
        """Pieces and batches of a formula all of whose users are settled, and what that asks of others."""
        formula = self.book.formulas[name]
        loose = sum((self.book.quantity(lot["amount"]).amount for lot in self.lots(name)
                     if "as" not in lot and good_on(lot, self.needed)), Fraction())
        from_shelf = min(self.wanted[name], loose)
        self.take(name, ceiling(from_shelf) if self.batch.is_pieces(name) else from_shelf)    # nobody takes half a piece
        self.wanted[name] -= from_shelf
        wanted = self.wanted[name]
        if self.batch.is_pieces(name):
            good = ceiling(wanted)
            self.started[name] = ceiling(good / kept(self.book.losses(name, "pieces")))
            exactly = self.started[name] / self.batch.pieces_per_batch(name)
        else:
            exactly = wanted / self.batch.mass_out(name)
        step = STEPS[formula.get("batches", "exact")]
        self.made[name] = exactly if step is None else ceiling(exactly / step) * step
        for line in self.batch.lines(name):
            if line.is_formula:
                self.wanted[line.item] += line.demand * self.made[name]

    def largest(self, name):
        return number(self.book.formulas[name].get("largest mix", "1"))

    def mixes(self, name):
        """Sizes of the mixes, the larger first; none where nothing is counted by the mix."""
        formula = self.book.formulas[name]
        if "largest mix" not in formula and all(task.get("per") != "mix" for task in formula.get("labour", [])):
            return []
        made, step = self.made[name], STEPS[formula.get("batches", "exact")]
        count = int(ceiling(made / self.largest(name)))
        if step is not None:
            sizes, rest = [], made
            for left in range(count, 0, -1):     # always the fairest share of what is left, in whole steps
                share = ceiling(rest / left / step) * step
                sizes.append(share)
                rest -= share
            if sizes[-1] > 0 and sizes[0] <= self.largest(name):
                return sizes
        return [made / count] * count

    def holds(self, name):
        oven = self.book.formulas[name]["oven"]
        if "trays" in oven:
            return int(oven["trays"]) * per_tray(oven)
        return self.book.quantity(oven["holds"]).amount

    def loads(self, name):
        if self.batch.is_pieces(name):
            return ceiling(self.started[name] / self.holds(name))
        return ceiling(self.made[name] * self.batch.mass_in(name) / self.holds(name))

    def times(self, name, per):
        return {"order": lambda: Fraction(1), "batch": lambda: ceiling(self.made[name]), "in proportion": lambda: self.made[name],
                "mix": lambda: ceiling(self.made[name] / self.largest(name)), "load": lambda: self.loads(name),
                "piece": lambda: self.started[name]}[per]()

    def minutes_by_role(self):
        minutes = {}

        def add(task, count):
            if task.get("unattended") not in ("yes", True):
                minutes[task["by"]] = minutes.get(task["by"], Fraction()) + number(task["minutes"]) * count

        for name in self.order:
            for task in self.book.formulas[name].get("labour", []):
                add(task, self.times(name, "in proportion" if task.get("scales") == "yes" else task.get("per", "batch")))
        for sale in self.sales:
            for task in sale.unit.get("labour", []):
                add(task, sale.count)
        for task in self.book.shop.get("order work", []):
            add(task, self.orders)
        return {role: value for role, value in minutes.items() if value}

    def base(self, name):
        """Grams of what is 100 % in a batch; 0 where nothing is."""
        names = as_list(self.book.formulas[name].get("percent of", []))
        return sum((line.mass for line in self.batch.lines(name) if line.item in names), Fraction())

    def figures(self):
        """A map from key to exact value."""
        flat = {}
        for name in self.order:
            key = f"formula/{name}"
            flat[f"{key}/wanted"] = self.wanted[name]
            flat[f"{key}/batches"] = self.made[name]
            if self.batch.is_pieces(name):
                flat[f"{key}/start"] = self.started[name]
            sizes = self.mixes(name)
            if sizes:
                flat[f"{key}/mixes"] = Fraction(len(sizes))
                if len(sizes) > 1:
                    for index, line in enumerate(self.batch.lines(name)):
                        flat[f"{key}/{index}/first mix"] = line.mass * sizes[0]
                        flat[f"{key}/{index}/last mix"] = line.mass * sizes[-1]
            base = self.base(name)
            for index, line in enumerate(self.batch.lines(name)):
                flat[f"{key}/{index}/all"] = line.mass * self.made[name]
                if base:
                    flat[f"{key}/{index}/percent"] = line.mass / base
            if "oven" in self.book.formulas[name]:
                flat[f"oven/{name}/loads"] = self.loads(name)
                flat[f"oven/{name}/minutes"] = self.loads(name) * number(self.book.formulas[name]["oven"]["minutes"])
        for role, minutes in self.minutes_by_role().items():
            flat[f"role/{role}"] = minutes
        for key, taken in self.taken.items():
            flat[f"shelf/{key}"] = taken
        usable, bought = {}, {}
        for name in self.order:
            for line in self.batch.lines(name):
                if not line.is_formula:
                    usable[line.item] = usable.get(line.item, Fraction()) + line.usable * self.made[name]
                    bought[line.item] = bought.get(line.item, Fraction()) + line.bought * self.made[name]
        for item in usable:
            flat[f"store/{item}/usable"] = usable[item]
            flat[f"store/{item}/bought"] = bought[item]
        return flat


def wanted_on(order):
    return reference.date(order.get("due", order["date"]))


def good_on(lot, day):
    return "good until" not in lot or reference.date(lot["good until"]) >= day


def millimetres(text):
    amount, unit = text.rsplit(" ", 1)
    return number(amount) * {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction("25.4")}[unit]


def per_tray(oven):
    """Pieces on a tray, counted one by one."""
    if "per tray" in oven:
        return int(oven["per tray"])
    sides, unit = oven["tray"].rsplit(" ", 1)
    first, second = (millimetres(f"{side} {unit}") for side in sides.split(" x "))
    spread, gap = millimetres(oven["spread"]), millimetres(oven.get("gap", "0 mm"))

    def placed(width, length):
        pieces, row = 0, 0
        pitch = spread + gap
        while True:
            if oven.get("layout", "square") == "square":
                fits = row * pitch + spread <= length
            else:                                          # row * pitch * sqrt(3) / 2 + spread <= length
                fits = length >= spread and 3 * (row * pitch) ** 2 <= (2 * (length - spread)) ** 2
            if not fits:
                return pieces
            at = pitch / 2 if oven.get("layout") == "staggered" and row % 2 else Fraction()
            while at + spread <= width:
                pieces, at = pieces + 1, at + pitch
            row += 1

    return max(placed(first, second), placed(second, first))


def put_trays(folder, seed):
    """Tells some ovens in trays: the books get them before either side reads them."""
    rng = random.Random(f"trays {seed}")
    book = reference.Book(folder)
    for formula in folder["formulas"]:
        oven = formula.get("oven")
        if not oven or book.quantity(oven["holds"]).kind != "count" or rng.random() < 0.5:
            continue
        del oven["holds"]
        oven["trays"] = str(rng.randint(1, 6))
        if rng.random() < 0.3:
            oven["per tray"] = str(rng.randint(4, 30))
            continue
        oven["tray"] = rng.choice(["40 x 60 cm", "18 x 26 in", "13 x 18 in", "32.5 x 53 cm", "400 x 600 mm"])
        oven["spread"] = rng.choice(["7 cm", "3 in", "65 mm", "2 1/2 in", "9.5 cm"])
        if rng.random() < 0.8:
            oven["gap"] = rng.choice(["2 cm", "1/2 in", "15 mm", "0 cm"])
        if rng.random() < 0.8:
            oven["layout"] = rng.choice(["square", "staggered", "staggered"])


def printed_figures(document):
    flat = {}

    def put(key, figure):
        if figure is not None:
            flat[key] = Fraction(figure["exact"])

    weighing = {section["of"]: section["rows"] for section in document.get("weighing", [])}
    for row in document.get("works", []):
        key = f"formula/{row['key']}"
        for name in ("wanted", "batches", "start", "mixes"):
            put(f"{key}/{name}", row[name])
        for index, line in enumerate(weighing[row["key"]]):
            if line["row"] == "total":
                continue
            put(f"{key}/{index}/all", line["all"])
            put(f"{key}/{index}/percent", line.get("percent"))
            if "mix" in line:
                put(f"{key}/{index}/first mix", line["mix"])
                put(f"{key}/{index}/last mix", line.get("last_mix", line["mix"]))
    for row in document.get("ovens", []):
        if row["row"] == "line" and row["loads"] is not None:
            put(f"oven/{row['key']}/loads", row["loads"])
            put(f"oven/{row['key']}/minutes", row["minutes"])
    for row in document.get("hours", []):
        if row["row"] == "line":
            put(f"role/{row['key']}", row["minutes"])
    for row in document.get("from_stock", []):
        put(f"shelf/{row['key']}", row["taken"])
    for row in document.get("store", []):
        put(f"store/{row['key']}/usable", row["usable"])
        put(f"store/{row['key']}/bought", row["bought"])
    return flat


def sales_of(book, order):
    return reference.sales_of(book, order, reference.counts_of(order))


def compare(binary, folder, directory, orders):
    """(figures compared, first difference or None) of some orders made together."""
    book = reference.Book(folder)
    on = max(reference.date(order["date"]) for order in orders)
    expected = Plan(book, on, orders).figures()
    command = [binary, "make", *(order["order"] for order in orders), "--on", str(on), "--as", "json", "--books", directory]
    done = subprocess.run(command, capture_output=True, timeout=120, check=False)
    if done.returncode != 0:
        return 0, f"exit code {done.returncode}: {done.stderr.decode('utf-8', 'replace')[:400]}"
    document = json.loads(done.stdout)
    made = [row["key"] for row in document.get("works", [])]
    for place, name in enumerate(made):
        for raw in book.raw_lines(name):
            if raw.item in made and raw.item not in made[:place]:
                return 0, f"{name} is made before {raw.item}, which goes into it"
    printed = printed_figures(document)
    for key in sorted({*expected, *printed}):
        if expected.get(key) != printed.get(key):
            return 0, f"{key}: expected {expected.get(key)}, groat has {printed.get(key)}"
    return len(expected), None


def main():
    parser = argparse.ArgumentParser(description="Compare groat's production sheets with a second reading.")
    parser.add_argument("binary", metavar="GROAT_BINARY")
    parser.add_argument("--orders", type=int, default=200, metavar="N", help="orders to compare, at least")
    parser.add_argument("--seed", type=int, default=1, metavar="S")
    options = parser.parse_args()
    passed = failed = figures = seed = together = trays = 0
    while passed + failed - together < options.orders:
        folder = random_books.make_folder(options.seed + seed)
        put_trays(folder, options.seed + seed)
        trays += sum("trays" in formula.get("oven", {}) for formula in folder["formulas"])
        with tempfile.TemporaryDirectory() as directory:
            random_books.write_folder(folder, options.seed + seed, directory)
            plans = [[order] for order in folder["orders"]]
            if len(plans) > 1:
                plans.append(folder["orders"])
                together += 1
            for orders in plans:
                count, difference = compare(options.binary, folder, directory, orders)
                figures += count
                if difference is None:
                    passed += 1
                else:
                    failed += 1
                    print(f"seed {options.seed + seed}, {' and '.join(order['order'] for order in orders)}: {difference}")
        seed += 1
    print(f"{figures} figures compared, {together} plans of several orders, {trays} ovens told in trays")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or figures == 0 or together == 0 or trays == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
