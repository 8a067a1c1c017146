"""A second reading of the costing arithmetic, for people to check and for programs to be compared with.

It takes a folder of books as plain Python data (the shape of the YAML files, every scalar still the text that
stands in the file) and returns the flat figures of an order, or of a menu item, as exact fractions.
It was written from the specification alone and shares nothing with the C++ library. It is slow, literal and
free of floating point: where the specification says "for each formula", there is a loop over formulas.

    folder = {"shop": {...}, "ingredients": {name: {...}}, "supplies": {name: {...}},
              "prices": [{...}, ...], "purchases": [{...}, ...], "formulas": [{...}, ...], "orders": [{...}, ...],
              "stock": {...}}

`prices` and `purchases` stand in reading order (files by name, then documents as they follow); `purchases` and
`stock` may be left out. The parts below follow the sections of the specification: A scalars, B books, C prices, D formulas,
E demand and cost, F price, G costing policies and quotes, H tiers, figures.
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
    """`620 g`, `2 3/4 cup`, `1 lb 4 oz`, `3`, `15 dozen`, `4 x 12 x 500 g`, `#60 scoop`, `2 x #60 scoop`."""
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
        self.purchases = folder.get("purchases", [])
        self.stock = folder.get("stock", {}).get("items", {})       # never asked for a cost
        self.formulas = {formula["formula"]: formula for formula in folder["formulas"]}
        self.orders = {order["order"]: order for order in folder["orders"]}
        self.currency = self.shop["currency"]
        self.measures = self.shop.get("measures", "us")
        self.coin = Fraction(1, 10 ** MINOR_DIGITS[self.currency])
        self.memory = {}       # what Worlds found out that does not depend on what is ordered

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

Offer = namedtuple("Offer", "supplier content cost ap_unit usable_unit stated_yield outlay")
# content n: g or each; cost k: of one pack, net and landed; ap_unit a = k / n; usable_unit = k / (n y); outlay: what one
# pack takes out of the till, net: with its deposit, without a share of the delivery, which is not paid by the pack

Purchase = namedtuple("Purchase", "date supplier content paid")


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


def facts_of(book, item):
    return book.ingredients[item] if item in book.ingredients else book.supplies[item]


def landing(book, supplier):
    """s: the supplier's delivery over a usual order of goods; nothing where such an order is delivered free."""
    for price_list in book.prices:
        terms = price_list.get("terms", {})
        if price_list["supplier"] == supplier and "usual order" in terms:
            usual = book.money(terms["usual order"])
            if "free delivery from" in terms and usual >= book.money(terms["free delivery from"]):
                return Fraction(0)
            return book.money(terms.get("delivery", "0")) / usual
    return Fraction(0)


def only_compared(book, price_list, entry):
    """Whether an offer is marked so, or its supplier."""
    return entry.get("only compared") == "yes" or any(
        other["supplier"] == price_list["supplier"] and other.get("terms", {}).get("only compared") == "yes"
        for other in book.prices)


def an_offer(book, item, supplier, content, price, freight, deposit, tax, stated_yield):
    """An offer of a pack; its amounts with the tax that is reclaimed, at this rate, still in them."""
    cost = price / (1 + tax) * (1 + landing(book, supplier)) + freight / (1 + tax)
    facts = facts_of(book, item)
    y = stated_yield or (rate(facts["yield"]) if "yield" in facts else Fraction(1))
    return Offer(supplier, content, cost, cost / content, cost / (content * y), stated_yield,
                 (price + freight + deposit) / (1 + tax))


def tax_included(document):
    return rate(document["tax included"]) if "tax included" in document else Fraction(0)


def money_in(book, entry, key):
    return book.money(entry[key]) if key in entry else Fraction(0)


def candidates(book, item, on):
    """For each supplier and pack content the newest offer not after the day, unless its `until` has passed.

    A purchase is an offer from its day on, at what was paid for a pack, unless it was a stopgap.
    """
    newest = {}      # (supplier, content) -> (rank, place in reading order, until, Offer)
    place = 0

    def see(rank, until, offer):
        key = (offer.supplier, offer.content)
        if rank[0] <= on and (key not in newest or rank > newest[key][0]):
            newest[key] = (rank, place, until, offer)

    for price_list in book.prices:
        for entry in price_list["offers"]:
            place += 1
            if entry["item"] != item or only_compared(book, price_list, entry):
                continue
            start = entry.get("from", price_list.get("from"))
            # of two prices of one day the later one
            see((date(start) if start else datetime.date.min, 0, 0, place),
                date(entry["until"]) if "until" in entry else datetime.date.max,
                an_offer(book, item, price_list["supplier"], pack_content(book, item, entry["pack"]),
                         book.money(entry["price"]), money_in(book, entry, "freight"), money_in(book, entry, "deposit"),
                         tax_included(price_list), rate(entry["yield"]) if "yield" in entry else None))
    for document in book.purchases:
        for entry in document["items"]:
            place += 1
            if entry["item"] != item or entry.get("stopgap") == "yes":
                continue
            packs, deposit = number(entry["packs"]), money_in(book, entry, "deposit")
            # of two purchases of one day the larger outlay, of equals the first; either goes before a list
            outlay = book.money(entry["paid"]) / (1 + tax_included(document))
            see((date(document["bought"]), 1, outlay, -place), datetime.date.max,
                an_offer(book, item, document["supplier"], pack_content(book, item, entry["pack"]),
                         (book.money(entry["paid"]) - deposit) / packs, Fraction(0), deposit / packs,
                         tax_included(document), None))
    standing = [(place, offer) for _, place, until, offer in newest.values() if until >= on]
    return [offer for place, offer in sorted(standing, key=lambda pair: pair[0])]


def last_purchase(book, item, on):
    """The newest one on or before the day; of one day the one that cost most, of these the first read."""
    last = None
    for document in book.purchases:
        for entry in document["items"]:
            if entry["item"] != item or entry.get("stopgap") == "yes" or date(document["bought"]) > on:
                continue
            found = Purchase(date(document["bought"]), document["supplier"], pack_content(book, item, entry["pack"]),
                             book.money(entry["paid"]) / (1 + tax_included(document)))
            if last is None or (found.date, found.paid) > (last.date, last.paid):
                last = found
    return last


def least(offers, measure):
    """The offer that measures least, the first of equals."""
    best = offers[0]
    for offer in offers[1:]:
        if measure(offer) < measure(best):
            best = offer
    return best


def choose_offer(book, item, on):
    """The offer that a cost goes by: the preferred supplier's, else of the one last bought from, else the cheapest."""
    standing = candidates(book, item, on)
    if not standing:
        raise BookError(f"no offer of {item} in force on {on}")
    preferred = [offer for offer in standing if offer.supplier == facts_of(book, item).get("prefer")]
    if preferred:
        return least(preferred, lambda offer: offer.usable_unit)
    last = last_purchase(book, item, on)
    theirs = [offer for offer in standing if last is not None and offer.supplier == last.supplier]
    if theirs:
        return least(theirs, lambda offer: abs(offer.content - last.content))
    return least(standing, lambda offer: offer.usable_unit)


def buys_whole_packs(book, item):
    return facts_of(book, item).get("buy", "as used") == "whole packs"


# ------------------------------------------------------------------------------------------------ D formulas

CATEGORIES = ["ingredients", "consumables", "packaging", "labour", "energy", "overhead", "delivery"]
PARTS = CATEGORIES + ["variable overhead"]      # the overhead that is said to vary is kept apart
PASSED_ON = ["ingredients", "consumables", "labour", "energy", "labour minutes", "oven minutes"]
# Beside these a cost carries how much of each item is in it: ("usable", item), ("bought", item) and ("spent", item).

# A line of one batch. For an ingredient `usable` (U) and `bought` (A) in grams; for a formula `demand` in its
# own unit (pieces or grams). `mass` is what the line adds to M_in.
Line = namedtuple("Line", "item is_formula usable bought demand mass")

Sale = namedtuple("Sale", "item unit count holds")   # unit: the entry of `sold as`, or {} for a bare piece


def ceiling(value):
    return Fraction(-((-value.numerator) // value.denominator))


def floor(value):
    return Fraction(value.numerator // value.denominator)


STEPS = {"exact": None, "half": Fraction(1, 2), "whole": Fraction(1), "quarter": Fraction(1, 4)}


def in_steps(book, name, batches):
    """Rounded up to the formula's batch step."""
    step = STEPS[book.formulas[name].get("batches", "exact")]
    return batches if step is None else ceiling(batches / step) * step


def once(method):
    """Remember what a method of a World answered: the same question is never worked out twice."""
    def remembered(self, *question):
        key = (method.__name__, question)
        if key not in self.memory:
            self.memory[key] = method(self, *question)
        return self.memory[key]
    remembered.__name__ = method.__name__
    return remembered


def once_for_all(method):
    """The same for what depends on the day and the losses alone, not on what is sold."""
    def remembered(self, *question):
        key = (method.__name__, self.on, self.process, question)
        if key not in self.book.memory:
            self.book.memory[key] = method(self, *question)
        return self.book.memory[key]
    remembered.__name__ = method.__name__
    return remembered


class World:
    """Some sales in one of the three worlds: 0 process off, rounding off; 1 process on, rounding off; 2 both on.

    run: a kept formula, when the world is that formula's own run, and nothing is sold.
    of_order: whether there is an order, with what is done and bought for each order; not so for a standard run.
    factors: by how much each pooled entry is cheaper where orders are made together, see `pooled`.
    """

    def __init__(self, book, on, sales, process=True, rounding=True, run=None, of_order=True, factors=None):
        self.book, self.on, self.sales = book, on, sales
        self.process, self.rounding = process, rounding
        self.run, self.of_order, self.factors = run, of_order, factors or {}
        self.memory = {}

    def is_kept(self, name):
        """Kept, so it goes in at its unit cost. The exact worlds make everything, and its own run makes it."""
        return self.rounding and name != self.run and self.book.formulas[name].get("leftover") == "kept"

    # --- D: one batch of a formula

    @once_for_all
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

    @once_for_all
    def line_yield(self, raw):
        """The line's, else the chosen offer's, else the ingredient's, else 1."""
        if raw.line_yield is not None:
            return raw.line_yield
        if self.offer(raw.item).stated_yield is not None:
            return self.offer(raw.item).stated_yield
        facts = self.book.ingredients[raw.item]
        return rate(facts["yield"]) if "yield" in facts else Fraction(1)

    @once_for_all
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

    @once_for_all
    def lines(self, name):
        return [self.line(name, raw) for raw in self.book.raw_lines(name)]

    @once_for_all
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

    @once_for_all
    def mass_in(self, name):
        """M_in of a batch."""
        return sum(line.mass for line in self.lines(name))

    @once_for_all
    def mass_out(self, name):
        """M_out of a batch of a formula by mass."""
        return (self.mass_in(name) * kept(self.losses(name, "before portioning"))
                * kept(self.losses(name, "after portioning")))

    @once_for_all
    def pieces_per_batch(self, name):
        """n: by the scaling weight, else as stated."""
        if self.portion(name) is not None:
            return self.mass_in(name) * kept(self.losses(name, "before portioning")) / self.portion(name)
        return self.stated_makes(name).amount

    @once_for_all
    def finished_weight(self, name):
        if self.portion(name) is not None:
            return self.portion(name) * kept(self.losses(name, "after portioning"))
        return self.mass_out(name) / self.pieces_per_batch(name)

    # --- E: from the order down

    def up(self, value):
        return ceiling(value) if self.rounding else value

    @once
    def reached(self):
        """What is sold and all that it is made of, as far as it is made here: kept ones are reached, not passed."""
        reached = set()

        def reach(name):
            reached.add(name)
            for raw in self.book.raw_lines(name):
                if self.book.is_formula(raw.item) and not self.is_kept(name):
                    reach(raw.item)

        for sale in self.sales:
            reach(sale.item)
        if self.run is not None:
            reach(self.run)
        return [name for name in self.book.formulas if name in reached]

    @once
    def used_formulas(self):
        """Those that are made here, in the book's order."""
        return [name for name in self.reached() if not self.is_kept(name)]

    def kept_formulas(self):
        """Those that go in as they are kept."""
        return [name for name in self.reached() if self.is_kept(name)]

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

    def survival(self, name):
        """1 - ρ"""
        return kept(self.losses(name, "pieces"))

    @once
    def started(self, name):
        """S: pieces begun, so that enough good ones are left. In its own run all of the dough is portioned."""
        if name == self.run:
            return max(Fraction(1), floor(self.pieces_per_batch(name) * self.batches(name)))
        good = self.up(self.demand(name))
        return self.up(good / self.survival(name))

    @once
    def batches_needed(self, name):
        """b, before the batch policy."""
        if name == self.run:
            return self.batches_of_own_run(name)
        if self.is_pieces(name):
            return self.started(name) / self.pieces_per_batch(name)
        return self.demand(name) / self.mass_out(name)

    def batches_of_own_run(self, name):
        """Of the formula's standard run; else a full mix where the largest is stated, else one batch."""
        formula = self.book.formulas[name]
        if "standard run" not in formula:
            b = number(formula.get("largest mix", "1"))
            if self.is_pieces(name) and floor(self.pieces_per_batch(name) * in_steps(self.book, name, b)) < 1:
                return 1 / self.pieces_per_batch(name)     # what is less than a piece makes none
            return b
        run = self.book.quantity(formula["standard run"]).amount
        if self.is_pieces(name):
            return ceiling(ceiling(run) / self.survival(name)) / self.pieces_per_batch(name)
        return run / self.mass_out(name)

    def good_of_own_run(self, name):
        """Good pieces or grams that the run gives."""
        if self.is_pieces(name):
            return self.started(name) * self.survival(name)
        return self.mass_out(name) * self.batches(name)

    @once
    def batches(self, name):
        """b′"""
        b = self.batches_needed(name)
        return in_steps(self.book, name, b) if self.rounding else b

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

    def driver(self, name, entry, per):
        """How often something that is done per order, batch, mix, load or piece is done for this formula."""
        if per == "order":
            return Fraction(1) if self.of_order else Fraction(0)
        if entry.get("scales") == "yes" and per != "batch":
            raise BookError("only what is done per batch can scale")
        if per == "batch":
            return self.batches(name) if entry.get("scales") == "yes" else self.up(self.batches(name))
        if per == "mix":
            return self.mixes(name)
        if per == "load":
            return self.loads(name)
        if per == "piece" and self.is_pieces(name):
            return self.started(name)
        raise BookError(f"per {per!r}")

    def task_driver(self, name, task):
        return self.driver(name, task, task.get("per", "batch"))

    def is_done_here(self, name, entry):
        """What is kept was made another day; what an order takes of it brings just what is done for every order."""
        return not self.is_kept(name) or entry.get("per", "batch") == "order"

    # --- E: what is bought

    @once
    def ingredient_uses(self):
        """Every ingredient line of the order: (formula, item, usable grams, bought grams)."""
        return [(name, line.item, line.usable * self.batches(name), line.bought * self.batches(name))
                for name in self.used_formulas() for line in self.lines(name) if not line.is_formula]

    @once
    def supply_uses(self):
        """Every consumable and every packing: (where, item, units, pooled entry); where is a formula or a sale's index."""
        uses = []
        for name in self.reached():
            for at, entry in enumerate(self.book.formulas[name].get("consumables", [])):
                if not self.is_done_here(name, entry):
                    continue
                units = number(entry["amount"]) * self.driver(name, entry, entry["per"])
                uses.append((name, entry["item"], self.up(units), ("consumable", name, at)))
        for index, sale in enumerate(self.sales):
            for item, amount in sale.unit.get("packing", {}).items():
                uses.append((index, item, self.up(number(amount) * sale.count), None))
        return uses

    @once
    def bought(self, item):
        """ΣA in grams of an ingredient, or the units of a supply."""
        if item in self.book.ingredients:
            return sum(bought for _, used, _, bought in self.ingredient_uses() if used == item)
        return sum(units for _, used, units, _ in self.supply_uses() if used == item)

    def packs(self, item):
        return ceiling(self.bought(item) / self.offer(item).content)

    def outlay(self, item):
        """What is paid for the packs, with what comes back when they are returned."""
        return self.packs(item) * self.offer(item).outlay

    def in_whole_packs(self, item):
        return self.rounding and self.of_order and buys_whole_packs(self.book, item)

    def cost_of_use(self, item, amount, entry=None):
        """What one use of an item costs: as used, or its share of the whole packs."""
        if self.in_whole_packs(item):
            packs = self.packs(item) * self.offer(item).cost * self.factor(("packs", item))
            return packs * amount / self.bought(item) if self.bought(item) else Fraction(0)
        return amount * self.offer(item).ap_unit * self.factor(entry)

    # --- E: what orders share that are made together

    def factor(self, entry):
        return self.factors.get(entry, Fraction(1))

    def pooled(self):
        """How much there is of each entry that is shared where orders are made together."""
        amounts = {}
        for name in self.reached():
            formula = self.book.formulas[name]
            for at, task in enumerate(formula.get("labour", [])):
                if self.is_done_here(name, task):
                    amounts["task", name, at] = self.task_driver(name, task)
            if self.is_kept(name):
                continue
            amounts["ingredients", name] = self.batches(name)
            if "oven" in formula:
                amounts["loads", name] = self.loads(name)
                amounts["preheat", formula["oven"]["use"]] = Fraction(1)
        for _, _, units, entry in self.supply_uses():
            if entry is not None:
                amounts[entry] = units
        for item in {use[1] for use in self.ingredient_uses() + self.supply_uses()}:
            if self.in_whole_packs(item):
                amounts["packs", item] = self.packs(item)
        return amounts

    # --- E: what a formula costs, and what it passes on

    def wage_per_minute(self, who):
        entry = self.book.shop["labour"][who]
        on_cost = rate(entry["on-cost"]) if "on-cost" in entry else Fraction(0)
        return self.book.money_rate(entry["wage"]) * 60 * (1 + on_cost)

    def minutes_of(self, task):
        return Fraction(0) if task.get("unattended", "no") == "yes" else number(task["minutes"])

    def baking_minutes(self, name):
        return self.loads(name) * number(self.book.formulas[name]["oven"]["minutes"])

    def oven_cost_per_minute(self, oven, duty):
        entry = self.book.shop["ovens"][oven]
        tariff = self.book.money_rate(self.book.shop["energy"][entry.get("fuel", "electricity")])
        return self.book.quantity(entry["power"]).amount * duty * tariff / 60

    def duty(self, oven):
        entry = self.book.shop["ovens"][oven]
        return rate(entry["duty"]) if "duty" in entry else Fraction(1)

    def preheat_minutes(self, name):
        """The formula's share of the one preheat of its oven."""
        oven = self.book.formulas[name]["oven"]["use"]
        all_minutes = sum(self.baking_minutes(other) for other in self.used_formulas()
                          if self.book.formulas[other].get("oven", {}).get("use") == oven)
        text = self.book.shop["ovens"][oven].get("preheat")
        preheat = self.book.quantity(text).amount / 60 if text else Fraction(0)
        return preheat * self.baking_minutes(name) / all_minutes

    @once
    def own(self, name):
        """The formula's own costs over all that is made, without those of the formulas it uses."""
        formula = self.book.formulas[name]
        cost = {kind: Fraction(0) for kind in PASSED_ON}
        for where, item, usable, bought in self.ingredient_uses():
            if where == name:
                shared, spent = self.factor(("ingredients", name)), self.cost_of_use(item, bought, ("ingredients", name))
                cost["ingredients"] += spent
                add_to(cost, {("usable", item): usable * shared, ("bought", item): bought * shared, ("spent", item): spent})
        for where, item, units, entry in self.supply_uses():
            if where == name:
                spent = self.cost_of_use(item, units, entry)
                cost["consumables"] += spent
                add_to(cost, {("bought", item): units * self.factor(entry), ("spent", item): spent})
        for at, task in enumerate(formula.get("labour", [])):
            if not self.is_done_here(name, task):
                continue
            minutes = self.minutes_of(task) * self.task_driver(name, task) * self.factor(("task", name, at))
            if minutes:
                cost["labour minutes"] += minutes
                cost["labour"] += minutes * self.wage_per_minute(task["by"])
        if "oven" in formula and not self.is_kept(name):
            oven = formula["oven"]["use"]
            baking = self.baking_minutes(name) * self.factor(("loads", name))
            preheat = self.preheat_minutes(name) * self.factor(("preheat", oven))
            cost["oven minutes"] = baking + preheat
            cost["energy"] = (baking * self.oven_cost_per_minute(oven, self.duty(oven))
                              + preheat * self.oven_cost_per_minute(oven, Fraction(1)))
        return cost

    @once_for_all
    def kept_unit(self, name):
        """What a good piece or gram of a kept formula costs: its own run over the good that the run gives."""
        run = World(self.book, self.on, [], run=name, of_order=False)
        return {kind: amount / run.good_of_own_run(name) for kind, amount in run.passes_on(name).items()}

    @once
    def of_formula(self, name, amount, shared=Fraction(1)):
        """What so many pieces or grams of it cost here: at its unit cost if kept, else that share of what is made.

        `shared`: the part of what is kept that this order pays, where orders are made together.
        """
        if self.is_kept(name):
            cost = scaled(self.own(name), amount / self.demand(name))     # what is done for the order
            add_to(cost, scaled(self.kept_unit(name), amount * shared))
            return cost
        return {kind: amount / self.demand(name) * cost for kind, cost in self.passes_on(name).items()}

    @once
    def passes_on(self, name):
        """The formula's own costs, and of each formula used the share that went in here."""
        cost = dict(self.own(name))
        for line in self.lines(name):
            if line.is_formula:
                # What is kept goes in as an ingredient does.
                shared = self.factor(("ingredients", name)) if self.is_kept(line.item) else 1
                add_to(cost, self.of_formula(line.item, line.demand * self.batches(name), shared))
        return cost

    # --- E: what a line of the order costs

    @once
    def direct(self, index):
        """The direct cost of a sale by part, with its minutes."""
        sale = self.sales[index]
        part = dict(self.of_formula(sale.item, sale.count * sale.holds))
        for task in sale.unit.get("labour", []):
            minutes = self.minutes_of(task) * sale.count
            if minutes:
                part["labour minutes"] += minutes
                part["labour"] += minutes * self.wage_per_minute(task["by"])
        part["packaging"] = Fraction(0)
        for where, item, units, _ in self.supply_uses():
            if where == index:
                spent = self.cost_of_use(item, units)
                add_to(part, {"packaging": spent, ("bought", item): units, ("spent", item): spent})
        part.update(overhead_of(self.book, {
            "labour hour": part["labour minutes"] / 60, "oven hour": part["oven minutes"] / 60,
            "piece": sale.count * sale.holds if self.is_pieces(sale.item) else sale.count,
            "ingredients": part["ingredients"], "prime cost": part["ingredients"] + part["labour"]}))
        part["delivery"] = Fraction(0)
        return part

    def done_for_all(self, tasks, times):
        """Tasks that belong to no formula, done so many times, with the overhead that they bring."""
        labour = minutes = Fraction(0)
        for task in tasks:
            taken = self.minutes_of(task) * times
            if taken:
                minutes += taken
                labour += taken * self.wage_per_minute(task["by"])
        return {"labour": labour, "labour minutes": minutes,
                **overhead_of(self.book, {"labour hour": minutes / 60, "prime cost": labour})}

    def pool(self, delivery):
        """The costs of the order as a whole. `delivery` is nothing where it is charged apart."""
        cost = self.done_for_all(self.book.shop.get("order work", []), Fraction(1))
        del cost["labour minutes"]
        for kind, amount in overhead_of(self.book, {"order": Fraction(1)}).items():
            cost[kind] += amount
        return {**cost, "delivery": delivery}


def overhead_rates(book):
    """`6.40 per labour hour` -> ("labour hour", 6.40, varies); `3 % of prime cost` -> ("prime cost", 3/100, varies)."""
    found = []
    for entry in book.shop.get("overhead", []):
        varies = entry.get("variable") == "yes"
        if " per " in entry["rate"]:
            amount, kind = entry["rate"].split(" per ")
            found.append((kind, book.money(amount), varies))
        else:
            amount, kind = entry["rate"].split(" of ")
            found.append((kind, rate(amount), varies))
    return found


def overhead_of(book, drivers):
    """Rate × driver, apart what is said to vary."""
    cost = {"overhead": Fraction(0), "variable overhead": Fraction(0)}
    for kind, amount, varies in overhead_rates(book):
        cost["variable overhead" if varies else "overhead"] += amount * drivers.get(kind, Fraction(0))
    return cost


def sum_of(part):
    """The cost of all parts; its minutes are no cost."""
    return sum(part[name] for name in PARTS)


def by_category(part):
    """The parts as the sheets show them: one overhead."""
    return {name: part[name] + (part["variable overhead"] if name == "overhead" else 0) for name in CATEGORIES}


def add_to(part, more):
    for kind, amount in more.items():
        part[kind] = part.get(kind, 0) + amount


def scaled(part, by):
    return {kind: amount * by for kind, amount in part.items()}


def shared_out(directs, pool):
    """The direct costs of lines, each with its share of the pool by what it costs."""
    costs = [dict(part) for part in directs]
    for part, share in zip(costs, shares_of([sum_of(part) for part in directs])):
        for kind, amount in pool.items():
            part[kind] += amount * share
    return costs


# --- E: standard runs of what is sold

def units_of_standard_run(book, on, item, holds):
    """N: whole sale units of the run that is stated; where none is, those that a full mix, else a batch, gives."""
    world = World(book, on, [])
    formula = book.formulas[item]
    run = formula.get("standard run", book.shop.get("standard run") if world.is_pieces(item) else None)
    if run is not None:
        return ceiling(book.quantity(run).amount / holds)
    batches = number(formula.get("largest mix", "1"))
    gives = (floor(world.pieces_per_batch(item) * batches * world.survival(item)) if world.is_pieces(item)
             else world.mass_out(item) * batches)
    return max(Fraction(1), floor(gives / holds))


def cost_of_standard_run(book, on, item, unit, holds):
    """The parts of one sale unit: an order of just the run, without what belongs to orders, over its units."""
    units = units_of_standard_run(book, on, item, holds)
    run = World(book, on, [Sale(item, unit, units, holds)], of_order=False)
    return scaled(run.direct(0), 1 / units)


def shares_of(weights):
    """Shares in proportion to the weights; equal ones if all weigh nothing."""
    if not any(weights):
        return [Fraction(1, len(weights)) for _ in weights]
    return [Fraction(weight) / sum(weights) for weight in weights]


def ingredient_losses(world0, world1, final_ingredients):
    """The ingredient cost as in the piece + trim + process loss + rounding up."""
    # Where the yield is above 1, all that was bought is in the piece.
    in_piece = sum(min(usable, bought) * world0.offer(item).ap_unit
                   for _, item, usable, bought in world0.ingredient_uses())
    bought0 = sum(bought * world0.offer(item).ap_unit for _, item, _, bought in world0.ingredient_uses())
    bought1 = sum(bought * world1.offer(item).ap_unit for _, item, _, bought in world1.ingredient_uses())
    return {"in the piece": in_piece, "trim": bought0 - in_piece, "process": bought1 - bought0,
            "rounding": final_ingredients - bought1}


# ------------------------------------------------------------------------------------------------ F price

TARGETS = ["margin", "markup", "food cost", "prime cost", "contribution", "given"]


def net_price(target, value, cost, ingredients, labour, variable, fixed_fee, fee_share, tax):
    """The wanted net price of a unit: the table of costing.md section 6."""
    after_fee = 1 - fee_share * (1 + tax)
    if target == "margin":
        return divide(cost + fixed_fee, after_fee - value)
    if target == "markup":
        return divide((1 + value) * (cost + fixed_fee), 1 - (1 + value) * fee_share * (1 + tax))
    if target == "food cost":
        return divide(ingredients, value)
    if target == "prime cost":
        return divide(ingredients + labour, value)
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
    """φ and F of how the order is paid; of several ways each has its share of both."""
    paid_by = order.get("paid by", book.shop.get("paid by", "none"))
    ways = {way: rate(text) for way, text in paid_by.items()} if isinstance(paid_by, dict) else {paid_by: Fraction(1)}
    share = fixed = Fraction(0)
    for way, part in ways.items():
        fee = {} if way == "none" else book.shop["fees"][way]
        share += part * (rate(fee["share"]) if "share" in fee else 0)
        fixed += part * money_in(book, fee, "fixed")
    return share, fixed


def deposit_rate(book, order):
    text = order.get("deposit", book.shop.get("deposit"))
    return rate(text) if text else Fraction(0)


def fees_of_order(book, order):
    """φ, and F as often as the order is paid: a deposit and the rest are two payments."""
    share, fixed = fee_of(book, order)
    return share, fixed * (2 if 0 < deposit_rate(book, order) < 1 else 1)


def tax_named(book, name):
    return Fraction(0) if name == "none" else rate(book.shop["tax"]["other rates"][name])


def standard_tax(book, order):
    """The order's own tax if it names one, else the shop's rate."""
    if "tax" in order:
        return tax_named(book, order["tax"])
    tax = book.shop.get("tax", {})
    return rate(tax["rate"]) if "rate" in tax else Fraction(0)


def tax_of_item(book, order, item):
    if "tax" not in order and "tax" in book.formulas[item]:
        return tax_named(book, book.formulas[item]["tax"])
    return standard_tax(book, order)


def tax_contained(book):
    return book.shop.get("tax", {}).get("prices", "without") == "with"


def variable_cost(book, part):
    """What the shop says is variable: all but overhead, if it says nothing; and any overhead that is said to vary."""
    named = book.shop.get("variable", [name for name in CATEGORIES if name != "overhead"])
    return sum(part[name] for name in named) + part["variable overhead"]


def price_unit(book, wish, point, unit_cost, unit_fixed_fee, fee_share, tax, discount=Fraction(0)):
    """(wanted net price, shown price) of one sale unit, its cost given by part; a given price wants none.

    discount: a share that is in the price, so that the price less it meets the target.
    """
    target, value = wish
    factor = 1 + tax if tax_contained(book) else Fraction(1)     # from the net side to the shown side
    if target == "given":
        return None, value
    wanted = net_price(target, value, sum_of(unit_cost), unit_cost["ingredients"], unit_cost["labour"],
                       variable_cost(book, unit_cost), unit_fixed_fee, fee_share, tax)
    wanted = divide(wanted, 1 - discount)
    return wanted, at_price_point(point, wanted * factor, book.coin)


def realised(book, unit_cost, unit_fixed_fee, fee_share, tax, net):
    """What a net price really earns, per unit."""
    cost = sum_of(unit_cost)
    fee = fee_share * net * (1 + tax) + unit_fixed_fee
    figures = {"contribution": net - fee - variable_cost(book, unit_cost)}
    if net != 0:
        figures["margin"] = (net - cost - fee) / net
        figures["food cost"] = unit_cost["ingredients"] / net
        figures["prime cost"] = (unit_cost["ingredients"] + unit_cost["labour"]) / net
    if cost + fee != 0:
        figures["markup"] = (net - cost - fee) / (cost + fee)
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


# ------------------------------------------------------------------------------------------------ G policies, quotes

POLICIES = ["alone", "made together", "usual run"]


def is_free(entry):
    """A line of the order that is no item: hire, staff, something returned."""
    return "text" in entry


def item_lines(order):
    return [entry for entry in order["lines"] if not is_free(entry)]


def counts_of(order):
    return [number(entry["count"]) for entry in item_lines(order)]


def sales_of(book, order, counts):
    """What is sold, line by line; a line that does not say how is sold in the first way there is, else by the piece."""
    sales = []
    for entry, count in zip(item_lines(order), counts):
        ways = book.formulas[entry["item"]].get("sold as", {})
        unit_entry = ways[entry["as"]] if "as" in entry else next(iter(ways.values()), {})
        holds = book.quantity(unit_entry["holds"]).amount if unit_entry else Fraction(1)
        sales.append(Sale(entry["item"], unit_entry, count, holds))
    return sales


def made_set(book, order):
    """The orders made together with this one, itself among them: what one of them names holds for all."""
    names = {order["order"]}
    while True:
        more = {other for name in names for other in book.orders[name].get("made with", [])}
        more |= {name for name, other in book.orders.items() if names & set(other.get("made with", []))}
        if more <= names:
            return [book.orders[name] for name in book.orders if name in names]
        names |= more


def day_of(book, order):
    """The day whose prices hold: of orders made together the newest."""
    return max(date(other["date"]) for other in made_set(book, order))


def shared_factors(book, order, counts):
    """For each pooled entry what all pay together over what they would pay alone, the one order with these counts."""
    orders, on = made_set(book, order), day_of(book, order)
    if len(orders) == 1:
        return {}
    sales = [sales_of(book, other, counts if other is order else counts_of(other)) for other in orders]
    together = World(book, on, [sale for part in sales for sale in part]).pooled()
    alone = [World(book, on, part).pooled() for part in sales]
    sums = {entry: sum(part.get(entry, 0) for part in alone) for entry in together}
    return {entry: amount / sums[entry] for entry, amount in together.items() if sums[entry]}


def policy_of(book, order, entry):
    """How a line is costed: the nearest word counts; with no word it is made together with whatever is made with it."""
    for level in (entry, order, book.shop):
        if "costed as" in level:
            return level["costed as"]
    return "made together"


def direct_costs(book, order, counts, policy=None):
    """The direct cost of each line by its policy, or all by one."""
    on, sales = day_of(book, order), sales_of(book, order, counts)
    alone = World(book, on, sales)
    together = None
    directs = []
    for index, (entry, sale) in enumerate(zip(item_lines(order), sales)):
        which = policy or policy_of(book, order, entry)
        if which == "usual run":
            directs.append(scaled(cost_of_standard_run(book, on, sale.item, sale.unit, sale.holds), sale.count))
        elif which == "made together":
            if together is None:
                together = World(book, on, sales, factors=shared_factors(book, order, counts))
            directs.append(together.direct(index))
        else:
            directs.append(alone.direct(index))
    return directs


def delivery_cost(book, order):
    """flat + rate · the way there, or there and back + the driver's time, if the order is delivered at all."""
    if "delivery" not in order:
        return Fraction(0)
    shop, said = book.shop.get("delivery", {}), order["delivery"]
    cost = money_in(book, shop, "flat")
    if "rate" in shop and "distance" in said:
        ways = 2 if said.get("both ways") == "yes" else 1
        cost += book.money_rate(shop["rate"]) * book.quantity(said["distance"]).amount * ways
    if "time" in said:
        wage = World(book, None, []).wage_per_minute(shop["driver"])
        cost += wage * book.quantity(said["time"]).amount / 60
    return cost


def delivery_charge(order):
    return order.get("delivery", {}).get("charge", "in price")


def discount_in_price(order):
    discount = order.get("discount")
    return rate(discount["share"]) if isinstance(discount, dict) and discount.get("in the price") == "yes" else Fraction(0)


def priced_lines(book, order, counts, policy=None):
    """Cost and price of each line that is an item."""
    directs = direct_costs(book, order, counts, policy)
    in_price = delivery_cost(book, order) if delivery_charge(order) == "in price" else Fraction(0)
    costs = shared_out(directs, World(book, None, []).pool(in_price))
    fee_share, fixed_fee = fees_of_order(book, order)
    fixed_fees = [fixed_fee * share for share in shares_of([sum_of(part) for part in costs])]
    lines = []
    for entry, sale, part, line_fee in zip(item_lines(order), sales_of(book, order, counts), costs, fixed_fees):
        tax = tax_of_item(book, order, sale.item)
        levels = [entry.get("price", {}), sale.unit.get("price", {}),
                  book.formulas[sale.item].get("price", {}), book.shop.get("price", {})]
        wish, point = price_wish(book, levels)
        unit_cost = scaled(part, 1 / sale.count)
        wanted, shown = price_unit(book, wish, point, unit_cost, line_fee / sale.count, fee_share, tax,
                                   discount_in_price(order))
        net = shown / (1 + tax) if tax_contained(book) else shown
        line = {**by_category(part), "cost": sum_of(part), "fixed fee": line_fee, "price": shown,
                "amount": shown * sale.count, "tax rate": tax, "count": sale.count, "part": part, "net": net}
        if wanted is not None:
            line["wanted"] = wanted
        line.update(realised(book, unit_cost, line_fee / sale.count, fee_share, tax, net))
        lines.append(line)
    return lines


def free_lines(book, order):
    """Amount, cost and tax of each line that is no item."""
    lines = []
    for entry in order["lines"]:
        if is_free(entry):
            count = number(entry["count"])
            tax = tax_named(book, entry["tax"]) if "tax" in entry else standard_tax(book, order)
            lines.append({"amount": book.money(entry["price"]) * count, "cost": money_in(book, entry, "cost") * count,
                          "tax rate": tax})
    return lines


# What a quote comes to. `lines` holds a map for each line of the order that is an item.
Quote = namedtuple("Quote", "lines free totals classes world0 world1 world2")


def quote(book, order, counts):
    """The whole order, costed and priced, with these counts of its lines."""
    on, sales = day_of(book, order), sales_of(book, order, counts)
    lines, free = priced_lines(book, order, counts), free_lines(book, order)
    totals, classes = total_up(book, order, lines, free)
    fee_share, _ = fees_of_order(book, order)
    if totals["discount"]:
        left = 1 - totals["discount"] / totals["subtotal"]
        for line in lines:
            after = realised(book, scaled(line["part"], 1 / line["count"]), line["fixed fee"] / line["count"], fee_share,
                             line["tax rate"], line["net"] * left)
            if "margin" in after:
                line["margin after discount"] = after["margin"]
    return Quote(lines, free, totals, classes, World(book, on, sales, process=False, rounding=False),
                 World(book, on, sales, process=True, rounding=False), World(book, on, sales))


def total_up(book, order, lines, free):
    """The lines of the quote below the items, its tax by classes, and what the order earns."""
    coin, contained, main_tax = book.coin, tax_contained(book), standard_tax(book, order)
    fee_share, fixed_fee = fees_of_order(book, order)
    goods = sum((line["amount"] for line in lines + free), Fraction(0))

    least_order = money_in(book, book.shop, "minimum order")
    discount = Fraction(0)
    if "discount" in order:
        said = order["discount"]["share"] if isinstance(order["discount"], dict) else order["discount"]
        discount = round_half_up(rate(said) * goods, coin) if is_rate(said) else book.money(said)
        if discount > goods:
            raise BookError("the discount is more than there is to pay")
        discount = max(Fraction(0), min(discount, goods - least_order))
    minimum = max(Fraction(0), least_order - goods)

    rush = Fraction(0)
    if "rush" in order:
        if order["rush"] == "none":
            rush = Fraction(0)
        elif is_rate(order["rush"]):
            rush = round_half_up(rate(order["rush"]) * goods, coin)
        else:
            rush = book.money(order["rush"])
    elif "rush" in book.shop and "due" in order:
        if (date(order["due"]) - date(order["date"])).days <= days(book.shop["rush"]["within"]):
            rush = round_half_up(rate(book.shop["rush"]["surcharge"]) * goods, coin)

    # Tax, by classes of one rate, in the order of their first appearance. What is no line follows the classes by
    # the amounts of their lines, those above 0; where there are none it is taxed at the main rate.
    class_rates = []
    for line in lines + free:
        if line["tax rate"] not in class_rates:
            class_rates.append(line["tax rate"])
    weights = [sum((max(line["amount"], Fraction(0)) for line in lines + free if line["tax rate"] == tax), Fraction(0))
               for tax in class_rates]
    if not any(weights):
        class_rates = [tax for tax in class_rates if tax != main_tax] + [main_tax]
        weights = [Fraction(0) for _ in class_rates[:-1]] + [Fraction(1)]
    bases = [sum((line["amount"] for line in lines + free if line["tax rate"] == tax), Fraction(0)) for tax in class_rates]

    delivery, charge = delivery_cost(book, order), delivery_charge(order)
    delivery_line = Fraction(0)
    if charge == "at cost":      # what of 1 charged is left after tax, and what of it the fee takes
        shares = list(zip(shares_of(weights), class_rates))
        left = sum(share / (1 + tax) for share, tax in shares) if contained else Fraction(1)
        paid = Fraction(1) if contained else sum(share * (1 + tax) for share, tax in shares)
        delivery_line = round_up(divide(delivery, left - fee_share * paid), coin)
    elif charge != "in price":
        delivery_line = book.money(charge)

    shown = goods - discount + minimum + rush + delivery_line
    adjustments = apportion(minimum + rush - discount, weights, coin)
    deliveries = apportion(delivery_line, weights, coin)
    class_bases = [sum(parts) for parts in zip(bases, adjustments, deliveries)]
    if book.shop.get("tax", {}).get("rounded", "per document") == "per document":
        taxes = [tax_on(base, tax, contained, coin) for base, tax in zip(class_bases, class_rates)]
    else:
        taxes = [sum((tax_on(line["amount"], tax, contained, coin) for line in lines + free if line["tax rate"] == tax),
                     tax_on(adjustment, tax, contained, coin) + tax_on(part, tax, contained, coin))
                 for tax, adjustment, part in zip(class_rates, adjustments, deliveries)]
    classes = {tax: {"taxable": base - (amount if contained else 0), "tax": amount}
               for tax, base, amount in zip(class_rates, class_bases, taxes)}
    tax_total = sum(taxes)

    total = shown if contained else shown + tax_total
    deposit = round_half_up(deposit_rate(book, order) * total, coin)
    revenue = total - tax_total
    fee = fee_share * total + fixed_fee if total != 0 else Fraction(0)
    cost = sum((line["cost"] for line in lines + free), delivery if charge != "in price" else Fraction(0))
    profit = revenue - fee - cost
    totals = {"subtotal": goods, "discount": discount, "minimum": minimum, "rush": rush, "delivery": delivery_line,
              "tax": tax_total, "net": revenue, "total": total, "deposit": deposit, "balance": total - deposit,
              "revenue": revenue, "fee": fee, "cost": cost, "profit": profit}
    if revenue != 0:
        totals["margin"] = profit / revenue
    return totals, classes


# ------------------------------------------------------------------------------------------------ H tiers

def tiers(book, order, at):
    """(price of each tier by its start, what is the most that is asked for each count) of a line of the order.

    Found by pricing the whole order at every count: there is no thought here of where a maximum may lie.
    """
    own = counts_of(order)
    starts = sorted({number(text) for text in order["quantity breaks"]} | {own[at]})
    last = 4 * starts[-1]
    price = {}
    for start, after in zip(starts, starts[1:] + [last + 1]):
        needed = [needed_at(book, order, at, count) for count in whole_numbers(start, after)]
        price.update({count: max(needed) for count in whole_numbers(start, after)})
    asked = {count: min(more * price[more] for more in whole_numbers(count, last + 1)) for count in price}
    return {start: price[start] for start in starts}, asked, price


def whole_numbers(first, after):
    return [Fraction(n) for n in range(int(first), int(after))]


def needed_at(book, order, at, count):
    """The price of the line at this count, other lines as ordered."""
    counts = counts_of(order)
    return priced_lines(book, order, counts[:at] + [count] + counts[at + 1:])[at]["price"]


# ------------------------------------------------------------------------------------------------ figures

LINE_FIGURES = CATEGORIES + ["cost", "fixed fee", "wanted", "price", "amount", "margin", "markup", "food cost",
                             "prime cost", "contribution", "margin after discount"]


def order_figures(folder, order_id):
    """The flat figures of an order: key -> Fraction. A figure that does not exist has no key."""
    book = Book(folder)
    order = book.orders[order_id]
    result = quote(book, order, counts_of(order))
    figures = amounts_of_items(book, order, result)
    if is_costed_as_made(book, order):
        figures.update(making_figures(book, result.world2))
    for kind, amount in ingredient_losses(result.world0, result.world1,
                                          sum(line["ingredients"] for line in result.lines)).items():
        figures[f"loss/{kind}"] = amount
    for at, line in enumerate(result.lines, start=1):
        for kind in LINE_FIGURES:
            if kind in line:
                figures[f"line/{at}/{kind}"] = line[kind]
    for at, line in enumerate(result.free, start=1):
        figures[f"free/{at}/amount"] = line["amount"]
    classes = {tax: amounts for tax, amounts in result.classes.items() if amounts["taxable"] or amounts["tax"]}
    if len(classes) > 1:
        for tax, amounts in classes.items():
            figures[f"tax/{tax}/taxable"] = amounts["taxable"]
            figures[f"tax/{tax}/tax"] = amounts["tax"]
    for kind, amount in result.totals.items():
        figures[f"total/{kind}"] = amount
    for policy in POLICIES:
        if policy == "made together" and len(made_set(book, order)) == 1:
            continue
        for at, line in enumerate(priced_lines(book, order, counts_of(order), policy), start=1):
            figures[f"policy/{policy}/{at}/cost"] = line["cost"] / line["count"]
            figures[f"policy/{policy}/{at}/price"] = line["price"]
    if "quantity breaks" in order:
        for at in range(len(result.lines)):
            prices, asked, price = tiers(book, order, at)
            if "wanted" not in result.lines[at]:      # a price that is given is one tier
                prices = {min(prices): prices[min(prices)]}
            for start, amount in prices.items():
                figures[f"tier/{at + 1}/{start}/price"] = amount
            for count, amount in asked.items():
                if amount < count * price[count]:
                    figures[f"tier/{at + 1}/{count}/most"] = amount
    return figures


def amounts_of_items(book, order, result):
    """What is in the order's cost of each ingredient and supply: its share of what is made together, of a run, of what is kept."""
    figures = {}
    for item in list(book.ingredients) + list(book.supplies):
        amounts = {kind: sum((line["part"].get((kind, item), 0) for line in result.lines), Fraction(0))
                   for kind in ("usable", "bought", "spent")}
        if amounts["bought"] and item in book.ingredients:
            figures[f"ingredient/{item}/usable"] = amounts["usable"]
            figures[f"ingredient/{item}/bought"] = amounts["bought"]
            figures[f"ingredient/{item}/unit"] = choose_offer(book, item, day_of(book, order)).ap_unit
            figures[f"ingredient/{item}/cost"] = amounts["spent"]
        elif amounts["bought"]:
            figures[f"supply/{item}/used"] = amounts["bought"]
            figures[f"supply/{item}/cost"] = amounts["spent"]
    return figures


def is_costed_as_made(book, order):
    """Whether the whole order is costed alone, so that what is made and bought for it is what it costs."""
    policies = {policy_of(book, order, entry) for entry in item_lines(order)}
    return policies == {"alone"} or (policies <= {"alone", "made together"} and len(made_set(book, order)) == 1)


def making_figures(book, world):
    """What is made and bought for the order, and what each formula costs."""
    figures = {}
    if not world.kept_formulas():
        for item in list(book.ingredients) + list(book.supplies):
            if world.bought(item):
                name = f"{'ingredient' if item in book.ingredients else 'supply'}/{item}"
                figures[f"{name}/outlay"] = world.outlay(item)
                figures[f"{name}/packs"] = world.packs(item)
    for name in world.used_formulas():
        formula = book.formulas[name]
        figures[f"formula/{name}/demand"] = world.demand(name)
        if world.is_pieces(name):
            figures[f"formula/{name}/started"] = world.started(name)
        figures[f"formula/{name}/batches"] = world.batches(name)
        if "largest mix" in formula or any(task.get("per") == "mix" for task in formula.get("labour", [])):
            figures[f"formula/{name}/mixes"] = world.mixes(name)
        if "oven" in formula:
            figures[f"formula/{name}/loads"] = world.loads(name)
        figures[f"formula/{name}/leftover"] = world.batches(name) - world.batches_needed(name)
        for kind in ("ingredients", "consumables", "labour", "energy"):
            figures[f"formula/{name}/{kind}"] = world.passes_on(name)[kind]
    for name in world.kept_formulas():
        figures[f"kept/{name}/demand"] = world.demand(name)
        for kind in ("ingredients", "consumables", "labour", "energy"):
            figures[f"kept/{name}/{kind}"] = world.of_formula(name, world.demand(name))[kind]
    return figures


def menu_figures(folder, item, on):
    """The flat figures of an item at its standard run, per sale unit, in the first way that it is sold."""
    book, on = Book(folder), date(on)
    formula = book.formulas[item]
    unit_entry = next(iter(formula.get("sold as", {}).values()), {})
    holds = book.quantity(unit_entry["holds"]).amount if unit_entry else Fraction(1)
    units = units_of_standard_run(book, on, item, holds)
    unit_cost = cost_of_standard_run(book, on, item, unit_entry, holds)
    fee_share, fixed_fee = fee_of(book, {})
    wish, point = price_wish(book, [unit_entry.get("price", {}), formula.get("price", {}), book.shop.get("price", {})])
    wanted, _ = price_unit(book, wish, point, unit_cost, fixed_fee / units, fee_share, tax_of_item(book, {}, item))

    figures = {f"item/{name}": amount for name, amount in by_category(unit_cost).items()}
    figures["item/cost"] = sum_of(unit_cost)
    figures["item/units"] = units
    if wanted is not None:
        figures["item/wanted"] = wanted
    sales = [Sale(item, unit_entry, units, holds)]
    losses = ingredient_losses(World(book, on, sales, process=False, rounding=False),
                               World(book, on, sales, process=True, rounding=False), unit_cost["ingredients"] * units)
    for kind, amount in losses.items():
        figures[f"loss/{kind}"] = amount / units
    return figures


def flat(figures):
    """As text: `n/d` in lowest terms, or `n`."""
    return {key: str(Fraction(value)) for key, value in figures.items()}
