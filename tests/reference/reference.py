"""A second reading of the costing arithmetic, for people to check and for programs to be compared with.

It takes a folder of books as plain Python data (the shape of the YAML files, every scalar still the text that
stands in the file) and returns the flat figures of an order, or of a menu item, as exact fractions.
It was written from the specification alone and shares nothing with the C++ library. It is slow, literal and
free of floating point: where the specification says "for each formula", there is a loop over formulas.

    folder = {"shop": {...}, "ingredients": {name: {...}}, "supplies": {name: {...}},
              "prices": [{...}, ...], "formulas": [{...}, ...], "orders": [{...}, ...]}

`prices` stands in reading order (files by name, then documents as they follow). The parts below follow the
sections of the specification: A scalars, B books, C prices, D formulas, E demand and cost, F price, figures.
"""

import datetime
import re
from collections import namedtuple
from fractions import Fraction


class BookError(Exception):
    """The books ask for something that has no answer (a missing fact, a target out of reach)."""


# ------------------------------------------------------------------------------------------------ A scalars

VULGAR = {"½": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3),
          "⅛": Fraction(1, 8), "⅜": Fraction(3, 8), "⅝": Fraction(5, 8), "⅞": Fraction(7, 8)}
SIGNS = "".join(VULGAR)


def number(text):
    """`12`, `0.25`, `.50`, `1/3`, `2 1/4`, `2½`, each with an optional leading `-`."""
    text = text.strip()
    if text.startswith("-"):
        return -number(text[1:])
    if re.fullmatch(r"[0-9]+|[0-9]*\.[0-9]+", text):
        return Fraction(text)
    mixed = re.fullmatch(r"(?:([0-9]+) +)?([0-9]+)/([0-9]+)", text)
    if mixed:
        return Fraction(mixed[1] or 0) + Fraction(int(mixed[2]), int(mixed[3]))
    vulgar = re.fullmatch(rf"([0-9]*) *([{SIGNS}])", text)
    if vulgar:
        return Fraction(vulgar[1] or 0) + VULGAR[vulgar[2]]
    raise BookError(f"not a number: {text!r}")


def rate(text):
    """`2.9 %` -> 29/1000."""
    if not text.strip().endswith("%"):
        raise BookError(f"not a rate: {text!r}")
    return number(text.strip()[:-1]) / 100


def is_rate(text):
    return text.strip().endswith("%")


MINOR_DIGITS = {"USD": 2, "EUR": 2, "GBP": 2, "CAD": 2, "AUD": 2, "NZD": 2, "CHF": 2, "DKK": 2, "NOK": 2, "SEK": 2,
                "JPY": 0, "KRW": 0, "BHD": 3, "KWD": 3, "TND": 3}


def money(text, currency):
    """`13.80`, `13.80 EUR`, `EUR 13.80`; the code must be the book's."""
    words = text.split()
    for at in (0, -1):
        if re.fullmatch(r"[A-Z]{3}", words[at]):
            if words.pop(at) != currency:
                raise BookError(f"another currency: {text!r}")
            break
    return number(" ".join(words))


def date(text):
    return datetime.date.fromisoformat(text)


def days(text):
    """`14 days`, `1 day`, `14`."""
    return int(text.split()[0])


LB = Fraction("453.59237")                 # g
GALLON = Fraction("3785.411784")           # mL, 231 cubic inches
IMPERIAL_GALLON = Fraction("4546.09")      # mL
MILE = Fraction("1.609344")                # km

US = {"gallon": GALLON, "quart": GALLON / 4, "pint": GALLON / 8, "cup": GALLON / 16, "fl oz": GALLON / 128,
      "tbsp": GALLON / 256, "tsp": GALLON / 768}
LABEL = {"tsp": Fraction(5), "tbsp": Fraction(15), "fl oz": Fraction(30), "cup": Fraction(240)}
IMPERIAL = {"gallon": IMPERIAL_GALLON, "quart": IMPERIAL_GALLON / 4, "pint": IMPERIAL_GALLON / 8,
            "cup": IMPERIAL_GALLON / 16, "fl oz": IMPERIAL_GALLON / 160}

# What a bare cup, spoon or fluid ounce means under the shop's `measures`.
BARE = {
    "us": US,
    "label": {**LABEL, "pint": US["pint"], "quart": US["quart"], "gallon": US["gallon"]},
    "metric": {"tsp": Fraction(5), "tbsp": Fraction(15), "cup": Fraction(250)},
    "australian": {"tsp": Fraction(5), "tbsp": Fraction(20), "cup": Fraction(250)},
    "imperial": {**IMPERIAL, "tbsp": Fraction(15), "tsp": Fraction(5)},
}

UNITS = {  # name -> (kind, size in the kind's base unit): g, mL, each, s, kWh, kW, km
    "mg": ("mass", Fraction(1, 1000)), "g": ("mass", Fraction(1)), "kg": ("mass", Fraction(1000)),
    "oz": ("mass", LB / 16), "lb": ("mass", LB), "stick": ("mass", LB / 4),
    "ml": ("volume", Fraction(1)), "cl": ("volume", Fraction(10)), "dl": ("volume", Fraction(100)),
    "l": ("volume", Fraction(1000)),
    "each": ("count", Fraction(1)), "dozen": ("count", Fraction(12)), "gross": ("count", Fraction(144)),
    "baker's dozen": ("count", Fraction(13)),
    "s": ("time", Fraction(1)), "min": ("time", Fraction(60)), "h": ("time", Fraction(3600)),
    "day": ("time", Fraction(86400)),
    "kWh": ("energy", Fraction(1)), "W": ("power", Fraction(1, 1000)), "kW": ("power", Fraction(1)),
    "km": ("distance", Fraction(1)), "mi": ("distance", MILE),
}
SAME = {  # other ways to write a unit's name
    "gram": "g", "grams": "g", "kilogram": "kg", "kilograms": "kg", "ounce": "oz", "ounces": "oz",
    "pound": "lb", "pounds": "lb", "lbs": "lb", "pt": "pint", "qt": "quart", "gal": "gallon",
    "mL": "ml", "ML": "ml", "cL": "cl", "dL": "dl", "L": "l",
    "ea": "each", "piece": "each", "pieces": "each", "pc": "each", "pcs": "each", "doz": "dozen",
    "second": "s", "seconds": "s", "minute": "min", "minutes": "min", "hour": "h", "hours": "h", "days": "day",
    "mile": "mi", "miles": "mi",
}

Unit = namedtuple("Unit", "kind size name")
Quantity = namedtuple("Quantity", "kind amount first_unit")   # amount in base units


def unit(name, measures):
    name = SAME.get(name, name)
    if name in UNITS:
        return Unit(*UNITS[name], name)
    for prefix, table in (("US ", US), ("imperial ", IMPERIAL), ("label ", LABEL), ("", BARE[measures])):
        if name.startswith(prefix):
            bare = SAME.get(name[len(prefix):], name[len(prefix):])
            if bare in table:
                return Unit("volume", table[bare], prefix + bare)
    raise BookError(f"unknown unit {name!r} under measures {measures!r}")


NUMBER = rf"(?:[0-9]+ +[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]* *[{SIGNS}]|[0-9]*\.[0-9]+|[0-9]+)"


def quantity(text, measures):
    """`620 g`, `2 1/4 cup`, `1 lb 4 oz`, `3`, `15 dozen`, `4 x 12 x 500 g`, `#60 scoop`, `2 x #60 scoop`."""
    *factors, last = text.strip().split(" x ")
    times = Fraction(1)
    for factor in factors:
        times *= number(factor)
    scoop = re.fullmatch(r"#([0-9]+) scoop", last.strip())
    if scoop:
        return Quantity("volume", times * US["quart"] / int(scoop[1]), "scoop")
    if re.fullmatch(NUMBER, last.strip()):
        return Quantity("count", times * number(last), "each")
    terms = re.findall(rf"({NUMBER}) *([^0-9{SIGNS}]+)", last)
    if not terms or "".join(a + b for a, b in terms).replace(" ", "") != last.replace(" ", ""):
        raise BookError(f"not a quantity: {text!r}")
    units = [unit(name.strip(), measures) for _, name in terms]
    if len({u.kind for u in units}) != 1:
        raise BookError(f"a sum of two kinds: {text!r}")
    amount = sum(number(n) * u.size for (n, _), u in zip(terms, units))
    return Quantity(units[0].kind, times * amount, units[0].name)


Density = namedtuple("Density", "grams_per_ml unit")


def density(text, measures):
    """`125 g / cup`, `125 g per cup`."""
    mass, volume = re.split(r" per | */ *(?=[A-Za-z])", text.strip(), maxsplit=1)
    volume_unit = unit(volume.strip(), measures)
    return Density(quantity(mass, measures).amount / volume_unit.size, volume_unit.name)


def money_rate(text, currency, measures):
    """`21.00 / h` -> money per base unit of the kind (per second, per kWh, per km)."""
    amount, per = text.rsplit("/", 1)
    return money(amount, currency) / unit(per.strip(), measures).size


def as_list(value):
    return value if isinstance(value, list) else [value]


# ------------------------------------------------------------------------------------------------ B books

RawLine = namedtuple("RawLine", "item amount as_bought line_yield")   # amount is text: a quantity or a percentage

LOSS_TIME = {"mixing": "before portioning", "bowl": "before portioning", "bag": "before portioning",
             "sifting": "before portioning", "baking": "after portioning", "cooling": "after portioning",
             "drying": "after portioning", "breakage": "pieces", "rejects": "pieces"}


class Book:
    """The folder's data by name. Nothing is computed here, only found."""

    def __init__(self, folder):
        self.shop = folder["shop"]
        self.ingredients = folder["ingredients"]
        self.supplies = folder["supplies"]
        self.prices = folder["prices"]
        self.formulas = {formula["formula"]: formula for formula in folder["formulas"]}
        self.orders = {order["order"]: order for order in folder["orders"]}
        self.currency = self.shop["currency"]
        self.measures = self.shop.get("measures", "us")
        self.coin = Fraction(1, 10 ** MINOR_DIGITS[self.currency])

    def money(self, text):
        return money(text, self.currency)

    def money_rate(self, text):
        return money_rate(text, self.currency, self.measures)

    def quantity(self, text):
        return quantity(text, self.measures)

    def raw_lines(self, name):
        """The lines of a formula as they stand: a map name -> amount, or a list of maps."""
        lines = self.formulas[name]["lines"]
        if isinstance(lines, dict):
            entries = [(item, entry) for item, entry in lines.items()]
        else:
            entries = [(entry["item"], entry) for entry in lines]
        raw = []
        for item, entry in entries:
            entry = entry if isinstance(entry, dict) else {"amount": entry}
            amount, as_bought = entry["amount"], entry.get("as bought", "no") == "yes"
            if amount.endswith(" as bought"):
                amount, as_bought = amount[: -len(" as bought")], True
            raw.append(RawLine(item, amount, as_bought, rate(entry["yield"]) if "yield" in entry else None))
        return raw

    def losses(self, name, when):
        """The shares lost at that time, in the order written."""
        found = []
        for loss, entry in self.formulas[name].get("losses", {}).items():
            if isinstance(entry, dict):
                time, share = entry["when"], rate(entry["share"])
            else:
                time, share = LOSS_TIME[loss], rate(entry)
            if time == when:
                found.append(share)
        return found

    def is_formula(self, name):
        return name in self.formulas


def kept(shares):
    """Π(1 − share)"""
    product = Fraction(1)
    for share in shares:
        product *= 1 - share
    return product


# ------------------------------------------------------------------------------------------------ C prices

Offer = namedtuple("Offer", "supplier content cost ap_unit usable_unit stated_yield")
# content n: g or each; cost k: net, of one pack; ap_unit a = k / n; usable_unit = k / (n y)


def grams_through_facts(densities, each, amount, measures, what):
    """A quantity as grams: a mass as it is, a volume through a density row, a count through the unit weight."""
    if amount.kind == "mass":
        return amount.amount
    if amount.kind == "count":
        if each is None:
            raise BookError(f"{what} has no unit weight")
        return amount.amount * quantity(each, measures).amount
    rows = [density(row, measures) for row in as_list(densities)] if densities is not None else []
    if amount.kind != "volume" or not rows:
        raise BookError(f"{what} has no density")
    for row in rows:
        if row.unit == amount.first_unit:
            return amount.amount * row.grams_per_ml
    return amount.amount * rows[0].grams_per_ml


def ingredient_grams(book, item, amount):
    facts = book.ingredients[item]
    return grams_through_facts(facts.get("density"), facts.get("each"), amount, book.measures, item)


def pack_content(book, item, text):
    amount = book.quantity(text)
    if item in book.ingredients:
        return ingredient_grams(book, item, amount)
    if amount.kind != "count":
        raise BookError(f"{item} is counted")
    return amount.amount


def candidates(book, item, on):
    """For each supplier and pack content the newest offer not after the day, unless its `until` has passed."""
    facts = book.ingredients[item] if item in book.ingredients else book.supplies[item]
    newest = {}      # (supplier, content) -> (from, place in reading order, until, Offer)
    place = 0
    for price_list in book.prices:
        tax = rate(price_list["tax included"]) if "tax included" in price_list else Fraction(0)
        for entry in price_list["offers"]:
            place += 1
            if entry["item"] != item:
                continue
            start = entry.get("from", price_list.get("from"))
            start = date(start) if start else datetime.date.min
            if start > on:
                continue
            content = pack_content(book, item, entry["pack"])
            paid = sum(book.money(entry[part]) for part in ("price", "freight", "deposit") if part in entry)
            cost = paid / (1 + tax)
            stated = rate(entry["yield"]) if "yield" in entry else None
            y = stated or (rate(facts["yield"]) if "yield" in facts else Fraction(1))
            until = date(entry["until"]) if "until" in entry else datetime.date.max
            offer = Offer(price_list["supplier"], content, cost, cost / content, cost / (content * y), stated)
            key = (price_list["supplier"], content)
            if key not in newest or start >= newest[key][0]:     # of two with the same day the later one
                newest[key] = (start, place, until, offer)
    standing = [(place, offer) for start, place, until, offer in newest.values() if until >= on]
    return [offer for place, offer in sorted(standing, key=lambda pair: pair[0])]


def choose_offer(book, item, on):
    """The preferred supplier's, else everybody's: the least cost of a usable unit, the first of equals."""
    facts = book.ingredients[item] if item in book.ingredients else book.supplies[item]
    standing = candidates(book, item, on)
    if "prefer" in facts:
        standing = [offer for offer in standing if offer.supplier == facts["prefer"]]
    if not standing:
        raise BookError(f"no offer of {item} in force on {on}")
    best = standing[0]
    for offer in standing[1:]:
        if offer.usable_unit < best.usable_unit:
            best = offer
    return best


def buys_whole_packs(book, item):
    facts = book.ingredients[item] if item in book.ingredients else book.supplies[item]
    return facts.get("buy", "as used") == "whole packs"


# ------------------------------------------------------------------------------------------------ D formulas

# A line of one batch. For an ingredient `usable` (U) and `bought` (A) in grams; for a formula `demand` in its
# own unit (pieces or grams). `mass` is what the line adds to M_in.
Line = namedtuple("Line", "item is_formula usable bought demand mass")

Sale = namedtuple("Sale", "item unit count holds")   # unit: the entry of `sold as`, or {} for a bare piece


def ceiling(value):
    return Fraction(-((-value.numerator) // value.denominator))


def once(method):
    """Remember what a method of a World answered: the same question is never worked out twice."""
    def remembered(self, *question):
        key = (method.__name__, question)
        if key not in self.memory:
            self.memory[key] = method(self, *question)
        return self.memory[key]
    remembered.__name__ = method.__name__
    return remembered


class World:
    """One order in one of the three worlds: 0 process off, rounding off; 1 process on, rounding off; 2 both on."""

    def __init__(self, book, on, sales, process, rounding):
        self.book, self.on, self.sales = book, on, sales
        self.process, self.rounding = process, rounding
        self.memory = {}

    # --- D: one batch of a formula

    @once
    def offer(self, item):
        return choose_offer(self.book, item, self.on)

    def losses(self, name, when):
        return self.book.losses(name, when) if self.process else []

    def formula_grams(self, name, amount):
        """A mass, or a volume through the formula's own density."""
        return grams_through_facts(self.book.formulas[name].get("density"), None, amount, self.book.measures, name)

    def portion(self, name):
        """The scaling weight w in grams, or None."""
        text = self.book.formulas[name].get("portion")
        return None if text is None else self.formula_grams(name, self.book.quantity(text))

    def stated_makes(self, name):
        text = self.book.formulas[name].get("makes")
        return None if text is None else self.book.quantity(text)

    def is_pieces(self, name):
        makes = self.stated_makes(name)
        return self.portion(name) is not None or (makes is not None and makes.kind == "count")

    @once
    def line_yield(self, raw):
        """The line's, else the chosen offer's, else the ingredient's, else 1."""
        if raw.line_yield is not None:
            return raw.line_yield
        if self.offer(raw.item).stated_yield is not None:
            return self.offer(raw.item).stated_yield
        facts = self.book.ingredients[raw.item]
        return rate(facts["yield"]) if "yield" in facts else Fraction(1)

    @once
    def line(self, name, raw):
        if self.book.is_formula(raw.item):
            if is_rate(raw.amount):
                grams = rate(raw.amount) * self.base_mass(name)
                demand = grams / self.finished_weight(raw.item) if self.is_pieces(raw.item) else grams
                return Line(raw.item, True, None, None, demand, grams)
            amount = self.book.quantity(raw.amount)
            if not self.is_pieces(raw.item):
                grams = self.formula_grams(raw.item, amount)
                return Line(raw.item, True, None, None, grams, grams)
            if amount.kind == "count":
                pieces = amount.amount
            else:
                pieces = self.formula_grams(raw.item, amount) / self.finished_weight(raw.item)
            return Line(raw.item, True, None, None, pieces, pieces * self.finished_weight(raw.item))
        y = self.line_yield(raw)
        if is_rate(raw.amount):
            usable = rate(raw.amount) * self.base_mass(name)
            return Line(raw.item, False, usable, usable / y, None, usable)
        grams = ingredient_grams(self.book, raw.item, self.book.quantity(raw.amount))
        if raw.as_bought:
            return Line(raw.item, False, grams * y, grams, None, grams * y)
        return Line(raw.item, False, grams, grams / y, None, grams)

    @once
    def lines(self, name):
        return [self.line(name, raw) for raw in self.book.raw_lines(name)]

    @once
    def base_mass(self, name):
        """Baker's percentages: the mass that is 100 %."""
        formula = self.book.formulas[name]
        base = as_list(formula["percent of"])
        raw_lines = self.book.raw_lines(name)
        base_lines = [raw for raw in raw_lines if raw.item in base]
        if not any(is_rate(raw.amount) for raw in base_lines):
            return sum(self.line(name, raw).mass for raw in base_lines)
        if sum(rate(raw.amount) for raw in base_lines) != 1:
            raise BookError(f"the base of {name} is not 100 %")
        if "total" in formula:
            total = self.book.quantity(formula["total"]).amount
        else:
            # The wanted total keeps the true losses in every world.
            total = (self.stated_makes(name).amount * self.portion(name)
                     / kept(self.book.losses(name, "before portioning")))
        return total / sum(rate(raw.amount) for raw in raw_lines if is_rate(raw.amount))

    @once
    def mass_in(self, name):
        """M_in of a batch."""
        return sum(line.mass for line in self.lines(name))

    @once
    def mass_out(self, name):
        """M_out of a batch of a formula by mass."""
        return (self.mass_in(name) * kept(self.losses(name, "before portioning"))
                * kept(self.losses(name, "after portioning")))

    @once
    def pieces_per_batch(self, name):
        """n: by the scaling weight, else as stated."""
        if self.portion(name) is not None:
            return self.mass_in(name) * kept(self.losses(name, "before portioning")) / self.portion(name)
        return self.stated_makes(name).amount

    @once
    def finished_weight(self, name):
        if self.portion(name) is not None:
            return self.portion(name) * kept(self.losses(name, "after portioning"))
        return self.mass_out(name) / self.pieces_per_batch(name)

    # --- E: from the order down

    def up(self, value):
        return ceiling(value) if self.rounding else value

    @once
    def used_formulas(self):
        """What is sold and all that it is made of, in the book's order."""
        reached = set()

        def reach(name):
            reached.add(name)
            for raw in self.book.raw_lines(name):
                if self.book.is_formula(raw.item):
                    reach(raw.item)

        for sale in self.sales:
            reach(sale.item)
        return [name for name in self.book.formulas if name in reached]

    @once
    def demand(self, name):
        """D: what is sold of it, and what each batch of each formula that uses it needs."""
        wanted = Fraction(0)
        for sale in self.sales:
            if sale.item == name:
                wanted += sale.count * sale.holds
        for user in self.used_formulas():
            for line in self.lines(user):
                if line.item == name:
                    wanted += line.demand * self.batches(user)
        return wanted

    @once
    def started(self, name):
        """S: pieces begun, so that enough good ones are left."""
        good = self.up(self.demand(name))
        return self.up(good / kept(self.losses(name, "pieces")))

    @once
    def batches_needed(self, name):
        """b, before the batch policy."""
        if self.is_pieces(name):
            return self.started(name) / self.pieces_per_batch(name)
        return self.demand(name) / self.mass_out(name)

    @once
    def batches(self, name):
        """b′"""
        b = self.batches_needed(name)
        step = {"exact": None, "half": Fraction(1, 2), "whole": Fraction(1), "quarter": Fraction(1, 4)}[
            self.book.formulas[name].get("batches", "exact")]
        return b if step is None or not self.rounding else ceiling(b / step) * step

    @once
    def mixes(self, name):
        largest = number(self.book.formulas[name].get("largest mix", "1"))
        return self.up(self.batches(name) / largest)

    @once
    def loads(self, name):
        holds = self.book.quantity(self.book.formulas[name]["oven"]["holds"]).amount
        if self.is_pieces(name):
            return self.up(self.started(name) / holds)
        return self.up(self.batches(name) * self.mass_in(name) / holds)

    def driver(self, name, per):
        """How often something that is done per order, batch, mix, load or piece is done for this formula."""
        if per == "order":
            return Fraction(1)
        if per == "batch":
            return self.batches(name)
        if per == "mix":
            return self.mixes(name)
        if per == "load":
            return self.loads(name)
        if per == "piece" and self.is_pieces(name):
            return self.started(name)
        raise BookError(f"per {per!r}")

    # --- E: what is bought

    @once
    def ingredient_uses(self):
        """Every ingredient line of the order: (formula, item, usable grams, bought grams)."""
        return [(name, line.item, line.usable * self.batches(name), line.bought * self.batches(name))
                for name in self.used_formulas() for line in self.lines(name) if not line.is_formula]

    @once
    def supply_uses(self):
        """Every consumable and every packing: (where, item, units); where is a formula or a sale's index."""
        uses = []
        for name in self.used_formulas():
            for entry in self.book.formulas[name].get("consumables", []):
                units = number(entry["amount"]) * self.driver(name, entry["per"])
                uses.append((name, entry["item"], self.up(units)))
        for index, sale in enumerate(self.sales):
            for item, amount in sale.unit.get("packing", {}).items():
                uses.append((index, item, self.up(number(amount) * sale.count)))
        return uses

    @once
    def bought(self, item):
        """ΣA in grams of an ingredient, or the units of a supply."""
        if item in self.book.ingredients:
            return sum(bought for _, used, _, bought in self.ingredient_uses() if used == item)
        return sum(units for _, used, units in self.supply_uses() if used == item)

    def packs(self, item):
        return ceiling(self.bought(item) / self.offer(item).content)

    def outlay(self, item):
        return self.packs(item) * self.offer(item).cost

    def cost_of_use(self, item, amount):
        """What one use of an item costs: as used, or its share of the whole packs."""
        if self.rounding and buys_whole_packs(self.book, item):
            return self.outlay(item) * amount / self.bought(item) if self.bought(item) else Fraction(0)
        return amount * self.offer(item).ap_unit

    def cost_of_item(self, item):
        return self.cost_of_use(item, self.bought(item))

    # --- E: what a formula costs, and what it passes on

    def wage_per_minute(self, who):
        entry = self.book.shop["labour"][who]
        on_cost = rate(entry["on-cost"]) if "on-cost" in entry else Fraction(0)
        return self.book.money_rate(entry["wage"]) * 60 * (1 + on_cost)

    def minutes_of(self, task):
        return Fraction(0) if task.get("unattended", "no") == "yes" else number(task["minutes"])

    def baking_minutes(self, name):
        return self.loads(name) * number(self.book.formulas[name]["oven"]["minutes"])

    def oven_cost_per_minute(self, oven):
        entry = self.book.shop["ovens"][oven]
        duty = rate(entry["duty"]) if "duty" in entry else Fraction(1)
        tariff = self.book.money_rate(self.book.shop["energy"][entry.get("fuel", "electricity")])
        return self.book.quantity(entry["power"]).amount * duty * tariff / 60

    @once
    def oven_minutes(self, name):
        """Loads × minutes, and the formula's share of the one preheat of its oven."""
        if "oven" not in self.book.formulas[name]:
            return Fraction(0)
        oven = self.book.formulas[name]["oven"]["use"]
        all_minutes = sum(self.baking_minutes(other) for other in self.used_formulas()
                          if self.book.formulas[other].get("oven", {}).get("use") == oven)
        preheat_text = self.book.shop["ovens"][oven].get("preheat")
        preheat = self.book.quantity(preheat_text).amount / 60 if preheat_text else Fraction(0)
        return self.baking_minutes(name) + preheat * self.baking_minutes(name) / all_minutes

    @once
    def own(self, name):
        """The formula's own costs over the whole order, without those of the formulas it uses."""
        formula = self.book.formulas[name]
        cost = {"ingredients": Fraction(0), "consumables": Fraction(0), "labour": Fraction(0),
                "energy": Fraction(0), "labour minutes": Fraction(0), "oven minutes": self.oven_minutes(name)}
        for where, item, _, bought in self.ingredient_uses():
            if where == name:
                cost["ingredients"] += self.cost_of_use(item, bought)
        for where, item, units in self.supply_uses():
            if where == name:
                cost["consumables"] += self.cost_of_use(item, units)
        for task in formula.get("labour", []):
            minutes = self.minutes_of(task) * self.driver(name, task.get("per", "batch"))
            if minutes:
                cost["labour minutes"] += minutes
                cost["labour"] += minutes * self.wage_per_minute(task["by"])
        if "oven" in formula:
            cost["energy"] = self.oven_minutes(name) * self.oven_cost_per_minute(formula["oven"]["use"])
        return cost

    @once
    def passes_on(self, name):
        """The formula's own costs, and of each formula used the share of its demand that went in here."""
        cost = dict(self.own(name))
        for line in self.lines(name):
            if line.is_formula:
                share = line.demand * self.batches(name) / self.demand(line.item)
                for kind, amount in self.passes_on(line.item).items():
                    cost[kind] += share * amount
        if self.rounding and self.book.formulas[name].get("leftover", "charged") == "kept":
            cost["ingredients"] *= self.batches_needed(name) / self.batches(name)
        return cost

    # --- E: what a line of the order costs

    @once
    def direct(self, index):
        """The direct cost of a line of the order, by category."""
        sale = self.sales[index]
        share = sale.count * sale.holds / self.demand(sale.item)
        part = {kind: share * amount for kind, amount in self.passes_on(sale.item).items()}
        for task in sale.unit.get("labour", []):
            minutes = self.minutes_of(task) * sale.count
            if minutes:
                part["labour minutes"] += minutes
                part["labour"] += minutes * self.wage_per_minute(task["by"])
        packaging = sum((self.cost_of_use(item, units) for where, item, units in self.supply_uses()
                         if where == index), Fraction(0))
        pieces = sale.count * sale.holds if self.is_pieces(sale.item) else sale.count
        overhead = Fraction(0)
        for kind, amount in overhead_rates(self.book):
            if kind == "labour hour":
                overhead += amount * part["labour minutes"] / 60
            elif kind == "oven hour":
                overhead += amount * part["oven minutes"] / 60
            elif kind == "piece":
                overhead += amount * pieces
            elif kind == "ingredients":
                overhead += amount * part["ingredients"]
            elif kind == "prime cost":
                overhead += amount * (part["ingredients"] + part["labour"])
        return {"ingredients": part["ingredients"], "consumables": part["consumables"], "packaging": packaging,
                "labour": part["labour"], "energy": part["energy"], "overhead": overhead, "delivery": Fraction(0)}

    def pool(self, delivery):
        """The costs of the order as a whole. `delivery` is nothing where it is charged apart."""
        labour = minutes = overhead = Fraction(0)
        for task in self.book.shop.get("order work", []):
            taken = self.minutes_of(task)
            if taken:
                minutes += taken
                labour += taken * self.wage_per_minute(task["by"])
        for kind, amount in overhead_rates(self.book):
            if kind == "labour hour":
                overhead += amount * minutes / 60
            elif kind == "order":
                overhead += amount
            elif kind == "prime cost":
                overhead += amount * labour
        return {"labour": labour, "overhead": overhead, "delivery": delivery}

    def line_costs(self, delivery):
        """C by category for each line of the order: direct, and its share of the pool."""
        direct = [self.direct(index) for index in range(len(self.sales))]
        sums = [sum(cost.values()) for cost in direct]
        costs = [dict(cost) for cost in direct]
        for category, amount in self.pool(delivery).items():
            for cost, share in zip(costs, shares_of(sums)):
                cost[category] += amount * share
        return costs


def overhead_rates(book):
    """`6.40 per labour hour` -> ("labour hour", 6.40); `3 % of prime cost` -> ("prime cost", 3/100)."""
    found = []
    for entry in book.shop.get("overhead", []):
        if " per " in entry["rate"]:
            amount, kind = entry["rate"].split(" per ")
            found.append((kind, book.money(amount)))
        else:
            amount, kind = entry["rate"].split(" of ")
            found.append((kind, rate(amount)))
    return found


def shares_of(weights):
    """Shares in proportion to the weights; equal ones if all weigh nothing."""
    if not any(weights):
        return [Fraction(1, len(weights)) for _ in weights]
    return [Fraction(weight) / sum(weights) for weight in weights]


def ingredient_losses(world0, world1, final_ingredients):
    """The ingredient cost as in the piece + trim + process loss + rounding up."""
    in_piece = sum(usable * world0.offer(item).ap_unit for _, item, usable, _ in world0.ingredient_uses())
    bought0 = sum(bought * world0.offer(item).ap_unit for _, item, _, bought in world0.ingredient_uses())
    bought1 = sum(bought * world1.offer(item).ap_unit for _, item, _, bought in world1.ingredient_uses())
    return {"in the piece": in_piece, "trim": bought0 - in_piece, "process": bought1 - bought0,
            "rounding": final_ingredients - bought1}


# ------------------------------------------------------------------------------------------------ F price

CATEGORIES = ["ingredients", "consumables", "packaging", "labour", "energy", "overhead", "delivery"]
TARGETS = ["margin", "markup", "food cost", "contribution", "given"]


def net_price(target, value, cost, ingredients, variable, fixed_fee, fee_share, tax):
    """The wanted net price of a unit: the table of costing.md section 6."""
    after_fee = 1 - fee_share * (1 + tax)
    if target == "margin":
        return divide(cost + fixed_fee, after_fee - value)
    if target == "markup":
        return divide((1 + value) * cost + fixed_fee, after_fee)
    if target == "food cost":
        return divide(ingredients, value)
    if target == "contribution":
        return divide(variable + fixed_fee + value, after_fee)
    raise BookError(f"target {target!r}")


def divide(above, below):
    if below <= 0:
        raise BookError("that target is out of reach at any price")
    return above / below


def round_half_up(value, step):
    """To a whole multiple of the step; a half goes away from zero."""
    if value < 0:
        return -round_half_up(-value, step)
    return (value / step + Fraction(1, 2)).__floor__() * step


def round_up(value, step):
    return ceiling(value / step) * step


def at_price_point(point, price, coin):
    """To a step (up, or to the nearest), or the least price from there on that has an allowed ending."""
    if "endings" in point:
        whole = price.__floor__()
        return min(whole + more + ending for more in (0, 1) for ending in point["endings"]
                   if whole + more + ending >= price)
    step = point.get("to", coin)
    if point.get("toward", "up") == "nearest":
        return round_half_up(price, step)
    return round_up(price, step)


def price_wish(book, levels):
    """The target from the first level that has one, the price point from the first that has one."""
    wish, point = None, {}
    for level in levels:
        found = [name for name in TARGETS if name in level]
        if wish is None and found:
            text = level[found[0]]
            wish = (found[0], book.money(text) if found[0] in ("contribution", "given") else rate(text))
    for level in levels:
        if any(key in level for key in ("to", "endings", "toward")):
            if "endings" in level:
                point["endings"] = [number(text) for text in level["endings"]]
            if "to" in level:
                point["to"] = book.money(level["to"])
            if "toward" in level:
                point["toward"] = level["toward"]
            break
    if wish is None:
        raise BookError("no price target")
    return wish, point


def fee_of(book, order):
    """φ and F of how the order is paid."""
    paid_by = order.get("paid by", book.shop.get("paid by", "none"))
    if paid_by == "none":
        return Fraction(0), Fraction(0)
    fee = book.shop["fees"][paid_by]
    return (rate(fee["share"]) if "share" in fee else Fraction(0),
            book.money(fee["fixed"]) if "fixed" in fee else Fraction(0))


def standard_tax(book, order):
    """The order's own tax if it names one, else the shop's rate."""
    tax = book.shop.get("tax", {})
    if "tax" in order:
        return Fraction(0) if order["tax"] == "none" else rate(tax["other rates"][order["tax"]])
    return rate(tax["rate"]) if "rate" in tax else Fraction(0)


def tax_of_item(book, order, item):
    if "tax" not in order and "tax" in book.formulas[item]:
        return rate(book.shop["tax"]["other rates"][book.formulas[item]["tax"]])
    return standard_tax(book, order)


def tax_contained(book):
    return book.shop.get("tax", {}).get("prices", "without") == "with"


def variable_categories(book):
    return book.shop.get("variable", [name for name in CATEGORIES if name != "overhead"])


def price_unit(book, wish, point, unit_cost, unit_fixed_fee, fee_share, tax):
    """(wanted net price, shown price) of one sale unit, its cost given by category; a given price wants none."""
    target, value = wish
    factor = 1 + tax if tax_contained(book) else Fraction(1)     # from the net side to the shown side
    if target == "given":
        return None, value
    wanted = net_price(target, value, sum(unit_cost.values()), unit_cost["ingredients"],
                       sum(unit_cost[name] for name in variable_categories(book)), unit_fixed_fee, fee_share, tax)
    return wanted, at_price_point(point, wanted * factor, book.coin)


def realised(book, unit_cost, unit_fixed_fee, fee_share, tax, shown):
    """What the shown price really earns, per unit."""
    net = shown / (1 + tax) if tax_contained(book) else shown
    cost = sum(unit_cost.values())
    fee = fee_share * net * (1 + tax) + unit_fixed_fee
    figures = {"contribution": net - fee - sum(unit_cost[name] for name in variable_categories(book))}
    if net != 0:
        figures["margin"] = (net - cost - fee) / net
        figures["food cost"] = unit_cost["ingredients"] / net
        figures["prime cost"] = (unit_cost["ingredients"] + unit_cost["labour"]) / net
    if cost != 0:
        figures["markup"] = (net - cost - fee) / cost
    return figures


def apportion(total, weights, coin):
    """A sum of coins over weights by largest remainder; of equal remainders the first. A deduction likewise."""
    if total < 0:
        return [-part for part in apportion(-total, weights, coin)]
    if not any(weights):
        return [total] + [Fraction(0) for _ in weights[1:]]
    exact = [total / coin * share for share in shares_of(weights)]
    parts = [Fraction(value.__floor__()) for value in exact]
    left_over = int(total / coin - sum(parts))
    by_remainder = sorted(range(len(weights)), key=lambda at: parts[at] - exact[at])   # stable: first of equals
    for at in by_remainder[:left_over]:
        parts[at] += 1
    return [part * coin for part in parts]


def tax_on(base, tax, contained, coin):
    """The tax on a base, or contained in it, in coins."""
    return round_half_up(base * tax / (1 + tax) if contained else base * tax, coin)


def cash_total(total, step):
    return round_half_up(total, step)


# What a quote comes to. `lines` holds a map for each line of the order.
Quote = namedtuple("Quote", "lines totals world0 world1 world2 final_ingredients")


def sales_of(book, order, counts):
    sales = []
    for entry, count in zip(order["lines"], counts):
        unit_entry = book.formulas[entry["item"]]["sold as"][entry["as"]] if "as" in entry else {}
        holds = book.quantity(unit_entry["holds"]).amount if "as" in entry else Fraction(1)
        sales.append(Sale(entry["item"], unit_entry, count, holds))
    return sales


def delivery_cost(book, order):
    """flat + rate · distance, if the order is delivered at all."""
    if "delivery" not in order:
        return Fraction(0)
    shop = book.shop.get("delivery", {})
    flat = book.money(shop["flat"]) if "flat" in shop else Fraction(0)
    by_distance = Fraction(0)
    if "rate" in shop and "distance" in order["delivery"]:
        by_distance = book.money_rate(shop["rate"]) * book.quantity(order["delivery"]["distance"]).amount
    return flat + by_distance


def quote(book, order, counts):
    """The whole order, costed and priced, with these counts of its lines."""
    on = date(order["date"])
    sales = sales_of(book, order, counts)
    world0 = World(book, on, sales, process=False, rounding=False)
    world1 = World(book, on, sales, process=True, rounding=False)
    world2 = World(book, on, sales, process=True, rounding=True)

    charge = order.get("delivery", {}).get("charge", "in price")
    delivery = delivery_cost(book, order)
    costs = world2.line_costs(delivery if charge == "in price" else Fraction(0))
    cost_sums = [sum(cost.values()) for cost in costs]
    fee_share, fixed_fee = fee_of(book, order)
    fixed_fees = [fixed_fee * share for share in shares_of(cost_sums)]

    lines = []
    for entry, sale, cost, line_fee in zip(order["lines"], sales, costs, fixed_fees):
        tax = tax_of_item(book, order, sale.item)
        levels = [entry.get("price", {}), sale.unit.get("price", {}),
                  book.formulas[sale.item].get("price", {}), book.shop.get("price", {})]
        wish, point = price_wish(book, levels)
        unit_cost = {name: amount / sale.count for name, amount in cost.items()}
        wanted, shown = price_unit(book, wish, point, unit_cost, line_fee / sale.count, fee_share, tax)
        line = {**cost, "cost": sum(cost.values()), "fixed fee": line_fee, "price": shown,
                "amount": shown * sale.count, "tax rate": tax, "count": sale.count}
        if wanted is not None:
            line["wanted"] = wanted
        line.update(realised(book, unit_cost, line_fee / sale.count, fee_share, tax, shown))
        lines.append(line)

    totals = total_up(book, order, lines, charge, delivery, fee_share, fixed_fee)
    return Quote(lines, totals, world0, world1, world2, sum(cost["ingredients"] for cost in costs))


def total_up(book, order, lines, charge, delivery, fee_share, fixed_fee):
    """The lines of the quote below the items, its tax, and what the order earns."""
    coin, contained, tax_std = book.coin, tax_contained(book), standard_tax(book, order)
    subtotal = sum(line["amount"] for line in lines)

    least = book.money(book.shop["minimum order"]) if "minimum order" in book.shop else Fraction(0)
    minimum = max(Fraction(0), least - subtotal)

    rush = Fraction(0)
    if "rush" in order:
        if order["rush"] == "none":
            rush = Fraction(0)
        elif is_rate(order["rush"]):
            rush = round_half_up(rate(order["rush"]) * (subtotal + minimum), coin)
        else:
            rush = book.money(order["rush"])
    elif "rush" in book.shop and "due" in order:
        if (date(order["due"]) - date(order["date"])).days <= days(book.shop["rush"]["within"]):
            rush = round_half_up(rate(book.shop["rush"]["surcharge"]) * (subtotal + minimum), coin)

    discount = Fraction(0)
    if "discount" in order:
        if is_rate(order["discount"]):
            discount = round_half_up(rate(order["discount"]) * (subtotal + minimum + rush), coin)
        else:
            discount = book.money(order["discount"])
        if discount > subtotal + minimum + rush:
            raise BookError("the discount is more than there is to pay")

    delivery_line = Fraction(0)
    if charge == "at cost":
        net = divide(delivery, 1 - fee_share * (1 + tax_std))
        delivery_line = round_up(net * (1 + tax_std) if contained else net, coin)
    elif charge != "in price":
        delivery_line = book.money(charge)

    shown = subtotal + minimum + rush - discount + delivery_line

    # Tax, by classes of one rate, in the order of their first appearance.
    class_rates = []
    for line in lines:
        if line["tax rate"] not in class_rates:
            class_rates.append(line["tax rate"])
    bases = [sum(line["amount"] for line in lines if line["tax rate"] == tax) for tax in class_rates]
    adjustments = apportion(minimum + rush - discount, bases, coin)
    if tax_std not in class_rates:                       # the delivery's class, if no line opened it
        class_rates.append(tax_std)
        bases.append(Fraction(0))
        adjustments.append(Fraction(0))
    deliveries = [delivery_line if tax == tax_std else Fraction(0) for tax in class_rates]
    class_bases = [sum(parts) for parts in zip(bases, adjustments, deliveries)]
    if book.shop.get("tax", {}).get("rounded", "per document") == "per document":
        tax_total = sum(tax_on(base, tax, contained, coin) for base, tax in zip(class_bases, class_rates))
    else:
        tax_total = (sum(tax_on(line["amount"], line["tax rate"], contained, coin) for line in lines)
                     + sum(tax_on(part, tax, contained, coin) for part, tax in zip(adjustments, class_rates))
                     + tax_on(delivery_line, tax_std, contained, coin))

    total = shown if contained else shown + tax_total
    net_total = shown - tax_total if contained else shown
    deposit_rate = order.get("deposit", book.shop.get("deposit"))
    deposit = round_half_up(rate(deposit_rate) * total, coin) if deposit_rate else Fraction(0)

    revenue = sum(base / (1 + tax) for base, tax in zip(class_bases, class_rates)) if contained else shown
    fee = fee_share * total + fixed_fee if total != 0 else Fraction(0)
    cost = sum(line["cost"] for line in lines) + (delivery if charge != "in price" else 0)
    profit = revenue - fee - cost
    totals = {"subtotal": subtotal, "minimum": minimum, "rush": rush, "discount": discount,
              "delivery": delivery_line, "tax": tax_total, "net": net_total, "total": total, "deposit": deposit,
              "balance": total - deposit, "revenue": revenue, "fee": fee, "cost": cost, "profit": profit}
    if revenue != 0:
        totals["margin"] = profit / revenue
    return totals


# ------------------------------------------------------------------------------------------------ figures

LINE_FIGURES = CATEGORIES + ["cost", "fixed fee", "wanted", "price", "amount", "margin", "markup", "food cost",
                             "prime cost", "contribution"]


def order_figures(folder, order_id):
    """The flat figures of an order: key -> Fraction. A figure that does not exist has no key."""
    book = Book(folder)
    order = book.orders[order_id]
    counts = [number(entry["count"]) for entry in order["lines"]]
    result = quote(book, order, counts)
    world = result.world2
    figures = {}

    for item in book.ingredients:
        uses = [use for use in world.ingredient_uses() if use[1] == item]
        if uses:
            figures[f"ingredient/{item}/usable"] = sum(usable for _, _, usable, _ in uses)
            figures[f"ingredient/{item}/bought"] = world.bought(item)
            figures[f"ingredient/{item}/unit"] = world.offer(item).ap_unit
            figures[f"ingredient/{item}/cost"] = world.cost_of_item(item)
            figures[f"ingredient/{item}/outlay"] = world.outlay(item)
            figures[f"ingredient/{item}/packs"] = world.packs(item)
    for item in book.supplies:
        if any(used == item for _, used, _ in world.supply_uses()):
            figures[f"supply/{item}/used"] = world.bought(item)
            figures[f"supply/{item}/cost"] = world.cost_of_item(item)
            figures[f"supply/{item}/outlay"] = world.outlay(item)
            figures[f"supply/{item}/packs"] = world.packs(item)
    for name in world.used_formulas():
        figures[f"formula/{name}/demand"] = world.demand(name)
        if world.is_pieces(name):
            figures[f"formula/{name}/started"] = world.started(name)
        figures[f"formula/{name}/batches"] = world.batches(name)
        formula = book.formulas[name]
        if "largest mix" in formula or any(task.get("per") == "mix" for task in formula.get("labour", [])):
            figures[f"formula/{name}/mixes"] = world.mixes(name)
        if "oven" in book.formulas[name]:
            figures[f"formula/{name}/loads"] = world.loads(name)
        figures[f"formula/{name}/leftover"] = world.batches(name) - world.batches_needed(name)
        for kind in ("ingredients", "consumables", "labour", "energy"):
            figures[f"formula/{name}/{kind}"] = world.passes_on(name)[kind]
    for kind, amount in ingredient_losses(result.world0, result.world1, result.final_ingredients).items():
        figures[f"loss/{kind}"] = amount
    for at, line in enumerate(result.lines, start=1):
        for kind in LINE_FIGURES:
            if kind in line:
                figures[f"line/{at}/{kind}"] = line[kind]
    for kind, amount in result.totals.items():
        figures[f"total/{kind}"] = amount
    for text in order.get("quantity breaks", []):
        for at in range(len(counts)):
            anew = quote(book, order, counts[:at] + [number(text)] + counts[at + 1:]).lines[at]
            figures[f"break/{at + 1}/{text}/price"] = anew["price"]
            figures[f"break/{at + 1}/{text}/cost"] = anew["cost"] / anew["count"]
    return figures


def menu_figures(folder, item, on):
    """The flat figures of an item at its standard run, nothing rounded up, per sale unit."""
    book = Book(folder)
    formula = book.formulas[item]
    units = list(formula.get("sold as", {}).values())
    unit_entry = units[0] if units else {}
    holds = book.quantity(unit_entry["holds"]).amount if units else Fraction(1)
    run = holds                                           # one sale unit
    if World(book, date(on), [], process=True, rounding=False).is_pieces(item):
        run_text = formula.get("standard run", book.shop.get("standard run"))
        run = number(run_text) if run_text else holds
    elif "standard run" in formula:                       # by mass its run is a mass; the shop's is in pieces
        run = book.quantity(formula["standard run"]).amount
    count = run / holds

    sales = [Sale(item, unit_entry, count, holds)]
    world0 = World(book, date(on), sales, process=False, rounding=False)
    world1 = World(book, date(on), sales, process=True, rounding=False)
    unit_cost = {name: amount / count for name, amount in world1.line_costs(Fraction(0))[0].items()}
    fee_share, fixed_fee = fee_of(book, {})
    wish, point = price_wish(book, [unit_entry.get("price", {}), formula.get("price", {}), book.shop.get("price", {})])
    wanted, _ = price_unit(book, wish, point, unit_cost, fixed_fee / count, fee_share, tax_of_item(book, {}, item))

    figures = {f"item/{name}": unit_cost[name] for name in CATEGORIES}
    figures["item/cost"] = sum(unit_cost.values())
    if wanted is not None:
        figures["item/wanted"] = wanted
    losses = ingredient_losses(world0, world1, unit_cost["ingredients"] * count)
    for kind in ("in the piece", "trim", "process"):
        figures[f"loss/{kind}"] = losses[kind] / count
    return figures


def flat(figures):
    """As text: `n/d` in lowest terms, or `n`."""
    return {key: str(Fraction(value)) for key, value in figures.items()}
