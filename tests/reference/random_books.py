"""Random folders of books that hold no error, the same for the same seed.

A folder is kept as plain Python data (see reference.py) in which every scalar is the text of the file, and is
written out as YAML from there. Names and figures are invented.

    random_books.py --seed 7 --out DIR        write one folder
    random_books.py --coverage 500            count how many of 500 folders show each feature, and the share of each rule
"""

import argparse
import datetime
import pathlib
import random
import re
from collections import Counter
from decimal import Decimal
from fractions import Fraction

import reference
from reference import Book, World

SIGN_OF = {value: sign for sign, value in reference.VULGAR.items()}


# ------------------------------------------------------------------------------------------------ values as text

def decimal_text(value, places=None):
    """A fraction whose decimals end, as `0.25`; None if they do not end within four places."""
    value = Fraction(value)
    if (value * 10000).denominator != 1:
        return None
    text = f"{Decimal(value.numerator) / Decimal(value.denominator):f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    if places is not None:
        whole, _, rest = text.partition(".")
        text = whole + ("." + rest.ljust(places, "0") if places else "")
    return text


class Writer:
    """Draws values and writes them in the many ways people write them."""

    def __init__(self, rng, currency, measures):
        self.rng, self.currency, self.measures = rng, currency, measures
        self.digits = reference.MINOR_DIGITS[currency]
        self.scale = {"JPY": 130, "KWD": Fraction(1, 3)}.get(currency, 1)

    def chance(self, share):
        return self.rng.random() < share

    def number(self, value):
        """Decimal, fraction, mixed or vulgar, whichever can say the value exactly."""
        value = Fraction(value)
        whole, part = value.__floor__(), value - value.__floor__()
        ways = []
        if decimal_text(value) is not None:
            ways += [decimal_text(value)] * 2
        if part:
            ways.append(f"{whole} {part}" if whole else f"{part}")
            if part in SIGN_OF:
                ways.append(f"{whole or ''}{SIGN_OF[part]}")
                if whole:
                    ways.append(f"{whole} {SIGN_OF[part]}")
        elif self.chance(0.1):
            ways.append(f"{value * 2}/2" if self.chance(0.5) else f"{value}.0")
        return self.rng.choice(ways)

    def between(self, low, high, denominator=1):
        """A random multiple of 1/denominator from low to high."""
        return Fraction(self.rng.randint(int(low * denominator), int(high * denominator)), denominator)

    def rate(self, low, high):
        percent = self.between(low, high, self.rng.choice([1, 1, 2, 3, 4, 10]))
        return self.number(percent) + self.rng.choice([" %", " %", "%"])

    def money_of(self, value, code=True):
        text = decimal_text(value, self.digits)
        if code and self.chance(0.15):
            return f"{text} {self.currency}" if self.chance(0.5) else f"{self.currency} {text}"
        return text

    def coins(self, low, high):
        """An amount of whole minor units, about low to high in a currency like the dollar."""
        unit = 10 ** self.digits
        return Fraction(self.rng.randint(max(1, int(low * self.scale * unit)), max(1, int(high * self.scale * unit))), unit)

    def money(self, low, high, code=True):
        return self.money_of(self.coins(low, high), code)

    def money_finer(self, low, high):
        """Now and then finer than a coin."""
        if self.chance(0.2):
            return self.number(self.coins(low, high) + Fraction(self.rng.choice([1, 3, 7]), 8 * 10 ** self.digits))
        return self.money(low, high, code=False)

    def mass(self, grams, butter=False):
        """About so many grams."""
        rng, grams = self.rng, Fraction(grams)
        ways = ["g", "g", "g"]
        if grams < 8:
            ways += ["mg", "g2"]
        if grams >= 250:
            ways += ["kg", "kg", "x", "lb", "third"]
        if grams >= 480:
            ways += ["lb oz", "lb oz"]
        if 20 <= grams < 3000:
            ways += ["oz"]
        if butter and grams >= 60:
            ways += ["stick"] * 3
        way = rng.choice(ways)
        if way == "mg":
            return f"{max(100, round(grams * 1000 / 50) * 50)} mg"
        if way == "g2" or (way == "g" and grams < 8):
            return f"{decimal_text(max(Fraction(1, 10), Fraction(round(grams * 10), 10)))} {rng.choice(['g', 'gram', 'grams'])}"
        if way == "g":
            whole = round(grams)
            return self.number(whole + (Fraction(1, 2) if self.chance(0.15) else 0)) + rng.choice([" g", " g", " g", " grams"])
        if way == "kg":
            return f"{decimal_text(Fraction(round(grams / 5) * 5, 1000))} {rng.choice(['kg', 'kg', 'kilogram', 'kilograms'])}"
        if way == "third":
            return self.number(max(Fraction(1, 3), Fraction(round(grams * 3 / 1000), 3))) + " kg"
        if way == "lb":
            return self.number(max(Fraction(1, 4), Fraction(round(grams * 4 / reference.LB), 4))) + rng.choice([" lb", " lb", " lbs", " pounds"])
        if way == "lb oz":
            ounces = round(grams * 16 / reference.LB)
            pounds, rest = divmod(max(17, ounces), 16)
            if rest == 0:
                return f"{pounds} lb"
            return f"{pounds} lb {self.number(rest + rng.choice([0, 0, Fraction(1, 2)]))} oz"
        if way == "oz":
            return self.number(max(Fraction(1, 2), Fraction(round(grams * 32 / reference.LB), 2))) + rng.choice([" oz", " oz", " ounces"])
        if way == "stick":
            return self.number(max(Fraction(1, 2), Fraction(round(grams * 8 / reference.LB), 2))) + " stick"
        count = rng.randint(2, 12)
        each = max(5, round(grams / count / 5) * 5)
        return f"{count} x {each} g"

    def volume_units(self, bare_only=False):
        """Names that the shop's measures allow."""
        names = {"us": ["tsp", "tbsp", "fl oz", "cup", "pint", "quart", "gallon", "qt", "pt", "gal"],
                 "label": ["tsp", "tbsp", "fl oz", "cup", "pint", "quart"],
                 "metric": ["tsp", "tbsp", "cup"], "australian": ["tsp", "tbsp", "cup"],
                 "imperial": ["tsp", "tbsp", "fl oz", "cup", "pint", "quart", "gallon"]}[self.measures]
        names = names + ["mL", "L", "ml", "dL", "cL", "l"]
        if not bare_only:
            names += ["US cup", "US tbsp", "US tsp", "US fl oz", "US pint", "US quart", "imperial cup",
                      "imperial fl oz", "imperial pint", "label cup", "label tbsp", "label tsp"]
        return names

    def volume(self, ml, bare_only=False):
        """About so many millilitres."""
        rng, ml = self.rng, Fraction(ml)
        if not bare_only and ml < 250 and self.chance(0.12):
            times = rng.choice([1, 1, 2, 3])
            scoop = min([6, 8, 10, 12, 16, 20, 24, 30, 40, 60, 70, 100],
                        key=lambda n: abs(reference.US["quart"] * times / n - ml))
            return f"{times} x #{scoop} scoop" if times > 1 else f"#{scoop} scoop"
        sizes = [(name, reference.unit(name, self.measures).size) for name in self.volume_units(bare_only)]
        fitting = [(name, size) for name, size in sizes if Fraction(1, 4) <= ml / size <= 24 or
                   (name in ("mL", "ml") and ml >= 1)]
        name, size = rng.choice(fitting or [("mL", Fraction(1))])
        steps = 1 if name in ("mL", "ml") else rng.choice([2, 3, 4, 4, 8])
        count = max(Fraction(1, steps), Fraction(round(ml / size * steps), steps))
        text = f"{self.number(count)} {name}"
        if name == "cup" and count >= 1 and self.chance(0.3):
            text = f"{int(count)} cup {rng.randint(1, 4)} {rng.choice(['tbsp', 'tsp'])}"
        return text

    def count(self, pieces, whole=False):
        """About so many pieces."""
        rng, pieces = self.rng, max(1, round(pieces))
        ways = [f"{pieces}", f"{pieces}", f"{pieces} each", f"{pieces} ea", f"{pieces} pieces" if pieces > 1 else "1 piece",
                f"{pieces} pcs"]
        if pieces >= 6:
            half = self.number(max(Fraction(1, 2), Fraction(round(Fraction(pieces, 6)), 2)))
            ways += [f"{half} dozen", f"{half} doz"]
        if 11 <= pieces <= 16:
            ways.append("1 baker's dozen")
        if pieces >= 100 and whole:
            ways += [f"{max(1, pieces // 144)} gross", f"{max(2, pieces // 30)} x 30 each", f"{max(1, pieces // 12)} dozen"]
        if pieces < 10 and not whole and self.chance(0.2):
            return self.number(pieces + Fraction(1, 2))
        return rng.choice(ways)


# ------------------------------------------------------------------------------------------------ the folder

def make_folder(seed):
    """The folder of that seed."""
    return Maker(seed).folder()


def weighted(rng, pairs):
    return rng.choices([value for value, _ in pairs], [weight for _, weight in pairs])[0]


class Maker:
    def __init__(self, seed):
        self.rng = random.Random(seed)
        self.currency = weighted(self.rng, [("USD", 4), ("EUR", 3), ("GBP", 2), ("CAD", 2), ("JPY", 1), ("KWD", 1)])
        self.measures = weighted(self.rng, [("us", 5), ("label", 2), ("metric", 2), ("australian", 2), ("imperial", 2)])
        self.write = Writer(self.rng, self.currency, self.measures)
        self.chance = self.write.chance
        self.decorated = self.chance(0.25)
        self.day = datetime.date(2026, self.rng.randint(2, 12), self.rng.randint(1, 28))
        self.butter = set()          # ingredients written in sticks
        self.several_rows = set()    # ingredients with several density rows: only bare units are used for them

    def name(self, kind, number):
        plain = f"{kind} {number}"
        if not self.decorated or self.chance(0.6):
            return plain
        return self.rng.choice([f"{plain}, fine", f"{plain} (dry)", f"maker's {plain}", f"{plain} no. 2", f"{plain} – é",
                                f"{plain} & co", f"half-{plain}", f"{plain}: plain"])

    def folder(self):
        rng = self.rng
        self.data = {"shop": self.shop(), "ingredients": {}, "supplies": {}, "prices": [], "purchases": [], "formulas": [],
                     "orders": []}
        self.suppliers = [self.name("supplier", n + 1) for n in range(rng.randint(1, 4))]
        for n in range(rng.randint(5, 25)):
            name = self.name("ingredient", n + 1)
            self.data["ingredients"][name] = self.ingredient(name)
        for n in range(rng.randint(3, 7)):
            self.data["supplies"][self.name("supply", n + 1)] = {"buy": "whole packs"} if self.chance(0.3) else {}
        self.order_days = [self.day + datetime.timedelta(days=rng.randint(0, 20)) for _ in range(weighted(rng, [(1, 2), (2, 4), (3, 4)]))]
        self.price_lists()
        self.formulas()
        self.orders()
        self.stock()
        return self.data

    # --- shop

    def shop(self):
        rng, write = self.rng, self.write
        shop = {"shop": "Shop of the books"}
        if self.chance(0.3):
            shop["address"] = rng.choice(["1 First Street", ["1 First Street", "Second Town"]])
        if self.chance(0.2):
            shop["contact"] = "by the door"
        shop["currency"] = self.currency
        if self.measures != "us" or self.chance(0.5):
            shop["measures"] = self.measures
        self.workers = ["baker", "second hand", "packer"][: rng.randint(1, 3)]
        shop["labour"] = {}
        for worker in self.workers:
            shop["labour"][worker] = {"wage": write.money_finer(12, 40) + " / h"}
            if self.chance(0.6):
                shop["labour"][worker]["on-cost"] = write.rate(2, 35)
        self.ovens = ["deck", "small oven"][: weighted(rng, [(0, 1), (1, 4), (2, 3)])]
        if self.ovens:
            shop["ovens"], shop["energy"] = {}, {}
            for oven in self.ovens:
                entry = {"power": rng.choice([write.number(write.between(1, 12, 2)) + " kW", f"{rng.randint(8, 40)}00 W"])}
                if self.chance(0.6):
                    entry["duty"] = write.rate(20, 90)
                if self.chance(0.6):
                    entry["preheat"] = rng.choice([f"{rng.randint(5, 45)} min", "1/2 h", "1 h", f"{rng.randint(5, 30)} minutes", "600 s", "0.25 hour"])
                fuel = weighted(rng, [("electricity", 3), ("gas", 1)])
                if fuel != "electricity" or self.chance(0.3):
                    entry["fuel"] = fuel
                shop["energy"].setdefault(fuel, write.money_finer(0.05, 0.45) + " / kWh")
                shop["ovens"][oven] = entry
        overhead = []
        for n in range(weighted(rng, [(0, 2), (1, 3), (2, 3), (3, 2)])):
            driver = rng.choice(["labour hour", "oven hour", "order", "piece", "ingredients", "prime cost"])
            if driver in ("ingredients", "prime cost"):
                text = f"{write.rate(1, 12)} of {driver}"
            elif driver == "piece":
                text = f"{write.money_finer(0.02, 0.15)} per piece"
            else:
                text = f"{write.money_finer(1, 12)} per {driver}"
            overhead.append({"name": f"overhead {n + 1}", "rate": text})
            if self.chance(0.25):
                overhead[-1]["variable"] = "yes"
        if overhead:
            shop["overhead"] = overhead
        if self.chance(0.6):
            shop["order work"] = [self.task(rng.randint(3, 25)) for _ in range(rng.randint(1, 2))]
        if self.chance(0.4):
            shop["counter work"] = [self.task(rng.choice([Fraction(1, 2), 1, 2, 5])) for _ in range(rng.randint(1, 2))]
        if self.chance(0.25):
            shop["costed as"] = rng.choice(["alone"] + reference.POLICIES)
        if self.chance(0.65):
            shop["delivery"] = {"driver": rng.choice(self.workers)} if self.chance(0.6) else {}
            way = rng.choice(["flat", "rate", "both"])
            if way != "rate":
                shop["delivery"]["flat"] = write.money(2, 12)
            if way != "flat":
                shop["delivery"]["rate"] = write.money_finer(0.2, 1.2) + weighted(rng, [(" / km", 3), (" / mi", 1)])
        self.payments = []
        if self.chance(0.75):
            shop["fees"] = {}
            for way in ["card", "web shop"][: rng.randint(1, 2)]:
                fee = {}
                if self.chance(0.9):
                    fee["share"] = write.rate(0.5, 4)
                if self.chance(0.7) or not fee:
                    fee["fixed"] = write.money(0.1, 0.5)
                shop["fees"][way] = fee
                self.payments.append(way)
            if self.chance(0.7):
                shop["paid by"] = rng.choice(self.payments)
        self.other_rates = []
        if self.chance(0.8):
            tax = {"name": "tax", "rate": rng.choice(["0 %", write.rate(1, 25), write.rate(1, 25), "8 1/4 %", "20 %"])}
            if self.chance(0.6):
                tax["prices"] = rng.choice(["with", "with", "without"])
            if self.chance(0.6):
                tax["rounded"] = rng.choice(["per document", "per line", "per line"])
            if self.chance(0.75):
                self.other_rates = ["reduced", "zero"][: rng.randint(1, 2)]
                tax["other rates"] = {name: "0 %" if name == "zero" else write.rate(1, 12) for name in self.other_rates}
            shop["tax"] = tax
        shop["price"] = self.target(point=self.chance(0.6), given=False)
        if self.chance(0.5):
            shop["minimum order"] = rng.choice([write.money(10, 150), write.money(100, 900)])
        if self.chance(0.4):
            shop["rush"] = {"within": rng.choice(["3 days", "1 day", "5", "10 days"]), "surcharge": write.rate(5, 30)}
        if self.chance(0.4):
            shop["deposit"] = write.rate(10, 60)
        if self.chance(0.5):
            shop["valid"] = "14 days"
        if self.chance(0.4):
            shop["stale after"] = "60 days"
        if self.chance(0.25):
            shop["cash rounding"] = write.money_of({0: Fraction(10), 2: Fraction(1, 20), 3: Fraction(1, 200)}[write.digits])
        if self.chance(0.5):
            shop["standard run"] = str(rng.choice([12, 24, 60, 100, 250]))
        if self.chance(0.25):
            shop["variable"] = sorted(rng.sample(reference.CATEGORIES, rng.randint(3, 7)), key=reference.CATEGORIES.index)
        if self.chance(0.3):
            shop["terms"] = ["Collect before noon.", "Keep boxes closed: they are fragile."]
        # How sheets are written must move no figure. Drawn apart, so that all else stays as it was.
        aside = random.Random(f"sheets {shop}")
        if aside.random() < 0.4:
            examples = {0: ["¥1,235", "1.234"], 2: ["1.234,56 €", "$1,234.56", "1234,56"], 3: ["1,234.560 KD", "1 234,560"]}
            shop["sheets"] = {"language": aside.choice(["en", "de"]), "money": aside.choice(examples[write.digits]),
                              "dates": aside.choice(["31.12.2026", "12/31/26", "2026-12-31"])}
        return shop

    def task(self, minutes, per=None, scales=False):
        """A task of about so many minutes; `scales` if it may be one that is done in proportion."""
        if minutes < 2:
            minutes = Fraction(round(minutes * 20), 20) or Fraction(1, 20)
        else:
            minutes = Fraction(round(minutes * 2), 2)
        entry = {"task": self.rng.choice(["mix", "scoop", "fill", "pack", "clean", "weigh"]),
                 "by": self.rng.choice(self.workers), "minutes": self.write.number(minutes)}
        if per:
            entry["per"] = per
        if per in (None, "batch") and scales and self.chance(0.35):
            entry["scales"] = "yes"
        if self.chance(0.12):
            entry["unattended"] = "yes"
        return entry

    def target(self, point, given=True):
        """A `price:` of one target, now and then with a price point."""
        write, rng = self.write, self.rng
        kind = weighted(rng, [("margin", 4), ("markup", 3), ("food cost", 2), ("prime cost", 1), ("contribution", 2),
                              ("given", 2 if given else 0)])
        price = {"margin": lambda: write.rate(15, 55), "markup": lambda: write.rate(20, 250),
                 "food cost": lambda: write.rate(18, 45), "prime cost": lambda: write.rate(45, 75), "contribution": lambda: write.money(0.2, 6),
                 "given": lambda: write.money(0.5, 60)}[kind]()
        price = {kind: price}
        if point:
            price.update(self.point())
        return price

    def point(self):
        rng, write = self.rng, self.write
        if write.digits and self.chance(0.35):
            endings = rng.choice([[".50", ".99"], ["0.95"], [".00", ".50"], [".25", ".75", ".99"], ["0.49", "0.99"], ["0.90"]])
            return {"endings": endings}
        steps = {0: [1, 5, 10, 50], 2: [Fraction(1, 100), Fraction(1, 20), Fraction(1, 4), Fraction(1, 2), 1],
                 3: [Fraction(1, 1000), Fraction(1, 200), Fraction(1, 4), Fraction(1, 20)]}[write.digits]
        point = {"to": write.money_of(Fraction(rng.choice(steps)))}
        if self.chance(0.6):
            point["toward"] = rng.choice(["up", "nearest"])
        return point

    # --- ingredients and prices

    def ingredient(self, name):
        rng, write = self.rng, self.write
        facts = {}
        if self.chance(0.55):
            per_ml = Fraction(rng.randint(35, 145), 100)
            unit = rng.choice(write.volume_units())
            size = reference.unit(unit, self.measures).size
            way = rng.choice([" / ", " / ", " per "])
            facts["density"] = f"{max(1, round(per_ml * size)) if size > 3 else decimal_text(per_ml)} g{way}{unit}"
            if self.chance(0.3):                 # rows that do not agree with one another, as in the tables
                rows = []
                for unit in rng.sample(["cup", "tbsp", "tsp"], rng.randint(2, 3)):
                    grams = per_ml * reference.unit(unit, self.measures).size * rng.choice([Fraction(9, 10), 1, Fraction(11, 10)])
                    rows.append(f"{decimal_text(max(Fraction(1, 10), Fraction(round(grams * 10), 10)))} g / {unit}")
                facts["density"] = rows
                self.several_rows.add(name)
            elif self.chance(0.1):
                facts["density"] = [facts["density"]]
        if self.chance(0.35):
            facts["each"] = rng.choice([f"{rng.randint(3, 250)} g", f"{rng.randint(3, 250)} g", "2 oz", "1/2 lb"])
        if self.chance(0.3):
            facts["yield"] = rng.choice([write.rate(35, 98), write.rate(35, 98), write.rate(110, 260)])
        if self.chance(0.2):
            facts["buy"] = rng.choice(["whole packs", "whole packs", "as used"])
        if self.chance(0.2):
            facts["allergens"] = rng.sample(["wheat", "milk", "egg"], rng.randint(1, 2))
        if self.chance(0.2):
            facts["label"] = "label of " + name
        if self.chance(0.15):
            facts["keep"] = rng.choice(["cool", "cold", "room", "frozen"])
        if self.chance(0.15):
            facts["shelf life"] = rng.choice(["90 days", "14 days"])
        if self.chance(0.2) or not facts:
            self.butter.add(name)
        return facts

    def pack(self, item):
        """A pack of an item, in one of the ways its facts allow."""
        rng, write = self.rng, self.write
        if item in self.data["supplies"]:
            return write.count(rng.choice([1, 10, 24, 25, 50, 100, 144, 250, 500]), whole=True)
        facts = self.data["ingredients"][item]
        ways = ["mass", "mass"]
        if "density" in facts:
            ways.append("volume")
        if "each" in facts:
            ways += ["count", "count"]
        way = rng.choice(ways)
        if way == "count":
            return write.count(rng.choice([1, 6, 12, 24, 30, 60, 144, 180]), whole=True)
        if way == "volume":
            if item in self.several_rows:
                return write.volume(rng.choice([250, 500, 1000, 2500]), bare_only=True)
            return rng.choice([write.volume(rng.choice([250, 500, 1000, 5000])), "6 x 1 L", "12 x 500 mL", "1 US gallon"])
        return rng.choice([write.mass(rng.choice([250, 500, 1000, 2500, 5000, 12500])), "25 lb", "12 x 500 g", "36 x 1 lb",
                           "4 x 12 x 250 g", "1 kg", "5 kg", "2 x 1 lb 4 oz", "6 kg"])

    def offer(self, item, pack, **fixed):
        """An offer at a sensible price for its content."""
        rng, write = self.rng, self.write
        content = reference.pack_content(Book(self.data), item, pack)
        if item in self.data["supplies"]:
            per_unit = Fraction(rng.randint(3, 60), 100)
        else:
            per_unit = Fraction(rng.randint(8, 150), 10000)       # per gram
        if item not in self.level:
            self.level[item] = per_unit                            # what the item costs about, at everybody's
        price = self.level[item] * content * rng.randint(70, 140) / 100
        unit = 10 ** write.digits
        price = max(Fraction(1, unit), Fraction(round(price * write.scale * unit), unit))
        entry = {"item": item, "pack": pack, "price": write.money_of(price)}
        if self.chance(0.03):
            entry["price"] = write.number(price + Fraction(1, 3 * unit))
        if self.chance(0.45):
            entry["from"] = str(self.day + datetime.timedelta(days=rng.choice([rng.randint(-200, 0), rng.randint(0, 15)])))
        if self.chance(0.12):
            entry["until"] = str(self.day + datetime.timedelta(days=rng.randint(-40, 90)))
        if self.chance(0.2):
            entry["code"] = f"C-{rng.randint(1, 999)}"
        if self.chance(0.15):
            entry["freight"] = write.money(0.2, 3)
        if self.chance(0.1):
            entry["deposit"] = write.money(0.1, 2)
        if self.chance(0.12) and item in self.data["ingredients"]:
            entry["yield"] = write.rate(40, 99)
        if self.chance(0.08):
            entry["breaks"] = {f"{rng.randint(2, 9)} packs": write.money_of(max(Fraction(1, unit), Fraction(round(price * 9 / 10 * unit), unit)))}
        if self.chance(0.06):
            entry["only compared"] = "yes"
        entry.update(fixed)
        return entry

    def supplier_terms(self, compared):
        """What a supplier asks besides the goods."""
        rng, write = self.rng, self.write
        terms = {"minimum": write.money(20, 90), "delivery": write.money(3, 12)}
        if self.chance(0.7):
            usual = write.coins(60, 300)
            terms["usual order"] = write.money_of(usual)
            if self.chance(0.3):
                terms["free delivery from"] = write.money_of(rng.choice([usual, 2 * usual, write.coins(20, 60)]))
        if compared and self.chance(0.25):
            terms["only compared"] = "yes"
        return terms

    def is_compared(self, price_list):
        return reference.only_compared(Book(self.data), price_list, {})

    def purchases(self):
        """What was bought of those who offer it: their packs, now and then one that is on no list."""
        rng, write = self.rng, self.write
        unit, book = 10 ** write.digits, Book(self.data)
        for price_list in self.data["prices"]:
            offers = [entry for entry in price_list["offers"] if self.may_be_bought(book, price_list, entry)]
            for _ in range(rng.randint(1, 2)):
                if not offers or self.is_compared(price_list):
                    continue
                document = {"bought": str(self.day + datetime.timedelta(days=rng.choice([rng.randint(-60, 0), rng.randint(0, 15)]))),
                            "supplier": price_list["supplier"]}
                if "tax included" in price_list:
                    document["tax included"] = price_list["tax included"]
                document["items"] = []
                for offer in rng.sample(offers, min(len(offers), rng.randint(1, 8))):
                    packs = rng.choice([1, 1, 2, 3, 5])
                    price = reference.money(offer["price"], self.currency)
                    paid = max(Fraction(1), Fraction(round(price * packs * rng.randint(80, 130) / 100 * unit))) / unit
                    entry = {"item": offer["item"], "pack": offer["pack"], "packs": str(packs)}
                    if self.chance(0.15):
                        entry["pack"] = "3" if offer["item"] in self.data["supplies"] else "2.2 kg"
                    if self.chance(0.2):
                        deposit = write.coins(0.1, 2)
                        entry["deposit"], paid = write.money_of(deposit), paid + deposit
                    entry["paid"] = write.money_of(paid)
                    if self.chance(0.1):
                        entry["stopgap"] = "yes"
                    document["items"].append(entry)
                self.data["purchases"].append(document)

    @staticmethod
    def may_be_bought(book, price_list, entry):
        """Only what is not just compared, and has no yield of its own with this supplier."""
        return not any(other["item"] == entry["item"] and ("yield" in other or other.get("only compared") == "yes")
                       for each in book.prices if each["supplier"] == price_list["supplier"] for other in each["offers"])

    def price_lists(self):
        rng, write = self.rng, self.write
        self.level = {}
        for supplier in self.suppliers:
            price_list = {"supplier": supplier}
            if self.chance(0.3):
                price_list["currency"] = self.currency
            if self.chance(0.3):
                price_list["tax included"] = write.rate(1, 20)
            if self.chance(0.5):
                price_list["from"] = str(self.day + datetime.timedelta(days=rng.randint(-300, 5)))
            if self.chance(0.6):
                price_list["terms"] = self.supplier_terms(compared=supplier != self.suppliers[0])
            price_list["offers"] = []
            self.data["prices"].append(price_list)
        if self.chance(0.15):                    # a second list of the first supplier, read last
            self.data["prices"].append({"supplier": self.suppliers[0], "offers": []})
        items = list(self.data["ingredients"]) + list(self.data["supplies"])
        chosen_from = [price_list for price_list in self.data["prices"] if not self.is_compared(price_list)]
        for item in items:
            for price_list in rng.sample(self.data["prices"], rng.randint(1, len(self.data["prices"]))):
                for _ in range(weighted(rng, [(1, 5), (2, 3), (3, 1)])):
                    entry = self.offer(item, self.pack(item))
                    price_list["offers"].append(entry)
                    if self.chance(0.35):        # the same pack at another day's price, now and then written otherwise
                        again = self.offer(item, {"12 x 500 g": "6 kg", "6 kg": "12 x 500 g"}.get(entry["pack"], entry["pack"]))
                        if self.chance(0.25) and "from" in entry:
                            again["from"] = entry["from"]
                        price_list["offers"].append(again)
            if self.chance(0.08):                # two packs that cost the same per unit, to the last digit
                cost, price_list = write.coins(1, 5), rng.choice(chosen_from)
                if item in self.data["ingredients"]:
                    pair = [("0.7 kg", cost), ("1.4 kg", 2 * cost)]
                else:
                    pair = [("7", cost), ("14", 2 * cost)]
                for pack, price in rng.sample(pair, 2):
                    price_list["offers"].append({"item": item, "pack": pack, "price": write.money_of(price / 100 if item in self.data["supplies"] and write.digits == 2 else price), "from": "2026-01-02"})
        for price_list in self.data["prices"]:
            if self.chance(0.5):
                rng.shuffle(price_list["offers"])
        for item in items:
            self.make_sure_of_offer(item)
        if self.chance(0.5):
            self.purchases()
        for item in items:
            self.maybe_prefer(item)
        self.data["prices"] = [price_list for price_list in self.data["prices"] if price_list["offers"]]

    def in_force(self, item):
        """Those suppliers who have a standing offer on every day that matters."""
        book = Book(self.data)
        always = None
        for day in self.order_days:
            suppliers = {offer.supplier for offer in reference.candidates(book, item, day)}
            always = suppliers if always is None else always & suppliers
        return [supplier for supplier in self.suppliers if supplier in always]

    def make_sure_of_offer(self, item):
        book = Book(self.data)
        for day in self.order_days:
            if not reference.candidates(book, item, day):
                entry = self.offer(item, self.rng.choice(["777 g", "3.3 kg"]) if item in self.data["ingredients"] else "77")
                entry.pop("until", None)
                entry["from"] = "2025-06-01"
                entry.pop("only compared", None)
                self.rng.choice([each for each in self.data["prices"] if not self.is_compared(each)])["offers"].append(entry)

    def maybe_prefer(self, item):
        standing = self.in_force(item)
        if standing and self.chance(0.15):
            facts = self.data["ingredients"] if item in self.data["ingredients"] else self.data["supplies"]
            facts[item]["prefer"] = self.rng.choice(standing)

    # --- formulas

    def world(self):
        return World(Book(self.data), self.order_days[0], [], process=True, rounding=False)

    def ingredient_amount(self, item, grams):
        """A quantity of about so many usable grams, in a way the ingredient's facts allow."""
        rng, write = self.rng, self.write
        facts = self.data["ingredients"][item]
        ways = ["mass", "mass"]
        if "density" in facts:
            ways += ["volume"] * 3
        if "each" in facts:
            ways += ["count"] * 2
        way = rng.choice(ways)
        if way == "count":
            each = reference.quantity(facts["each"], self.measures).amount
            if grams / each >= Fraction(1, 2):
                return write.count(grams / each)
            way = "mass"
        if way == "volume":
            rows = [reference.density(row, self.measures) for row in reference.as_list(facts["density"])]
            return write.volume(grams / rows[0].grams_per_ml, bare_only=item in self.several_rows)
        return write.mass(grams, item in self.butter)

    def ingredient_entry(self, item, grams):
        """The amount with what may stand beside it."""
        entry = self.ingredient_amount(item, grams)
        if self.chance(0.12):
            entry = {"amount": entry, "as bought": "yes"} if self.chance(0.3) else entry + " as bought"
        if self.chance(0.12):
            entry = dict(entry) if isinstance(entry, dict) else {"amount": entry}
            entry["yield"] = self.write.rate(40, 99)
        return entry

    def formulas(self):
        rng = self.rng
        count = rng.randint(2, 10)
        names = [self.name("formula", n + 1) for n in range(count)]
        self.depth = {}
        for at, name in enumerate(names):
            self.formula(name, names[:at])
        if self.chance(0.5):
            rng.shuffle(self.data["formulas"])       # a formula may stand before those it uses

    def formula(self, name, before):
        """One formula more. It is added to the data as it grows, so that the reference can weigh it."""
        rng, write = self.rng, self.write
        shallow = [other for other in before if self.depth[other] < 6]
        kind = weighted(rng, [("portion", 4), ("makes", 3), ("mass", 3), ("percent", 3), ("assembled", 3 if shallow else 0)])
        formula = {"formula": name}
        self.data["formulas"].append(formula)
        if self.chance(0.5) and kind != "assembled":
            formula["density"] = rng.choice([f"{decimal_text(Fraction(rng.randint(40, 130), 100))} g / mL", f"{rng.randint(100, 260)} g / cup",
                                             f"{rng.randint(500, 1200)} g per L"])
        formula["losses"] = self.losses(pieces=kind != "mass")
        if not formula["losses"]:
            del formula["losses"]
        subs = []
        if kind == "percent":
            subs = self.percent_lines(formula, shallow)
        else:
            subs = self.plain_lines(formula, kind, shallow)
        self.depth[name] = 1 + max([self.depth[sub] for sub in subs], default=0)
        world = self.world()
        if kind == "portion":
            self.portion(formula, world.mass_in(name))
            if self.chance(0.3):
                n = self.world().pieces_per_batch(name)
                formula["makes"] = str(max(1, round(n * rng.choice([1, 1, Fraction(9, 10)]))))
        elif kind == "makes":
            formula["makes"] = write.count(max(1, world.mass_in(name) / rng.randint(15, 150)), whole=True)
        elif kind == "assembled":
            formula["makes"] = str(weighted(rng, [(1, 5), (2, 1), (6, 1)]))
        elif kind == "mass" and self.chance(0.3):
            formula["makes"] = write.mass(world.mass_out(name) * rng.choice([1, 1, Fraction(11, 10)]))
        self.work(formula)
        for key in rng.sample(sorted(set(formula) - {"formula"}), len(set(formula) - {"formula"})):
            formula[key] = formula.pop(key)          # keys in any order

    def losses(self, pieces):
        rng, write = self.rng, self.write
        losses = {}
        names = rng.sample(["mixing", "bowl", "bag", "sifting", "baking", "cooling", "drying", "breakage", "rejects", "tasting"],
                           weighted(rng, [(0, 2), (1, 3), (2, 3), (3, 2), (4, 1)]))
        for name in names:
            if name in ("breakage", "rejects") and not pieces:
                continue
            losses[name] = write.rate(0, 12)
            if name == "tasting":
                when = rng.choice(["before portioning", "after portioning"] + (["pieces"] if pieces else []))
                losses[name] = {"share": write.rate(0, 5), "when": when}
        return losses

    def sub_entry(self, sub, grams):
        """An amount of another formula of about so many grams, by count, mass or volume."""
        rng, write = self.rng, self.write
        world = self.world()
        formula = self.formula_of(sub)
        if world.is_pieces(sub):
            weight = world.finished_weight(sub)
            ways = ["count"] * 3 + ["mass"] + (["volume"] if "density" in formula else [])
            way = rng.choice(ways)
            if way == "count":
                return write.count(max(1, grams / weight))
        else:
            way = rng.choice(["mass"] * 2 + (["volume"] if "density" in formula else []))
        if way == "volume":
            return write.volume(grams / reference.density(formula["density"], self.measures).grams_per_ml)
        return write.mass(grams)

    def formula_of(self, name):
        return next(formula for formula in self.data["formulas"] if formula["formula"] == name)

    def some_of(self, names, count):
        """Some of these formulas, rather the later ones, so that the graph grows deep."""
        late = names[-3:]
        return self.rng.sample(late if self.chance(0.6) else names, min(len(late), count))

    def plain_lines(self, formula, kind, shallow):
        rng = self.rng
        entries, subs = [], []
        if kind == "assembled":
            for sub in self.some_of(shallow, rng.randint(1, 3)):
                entries.append((sub, self.sub_entry(sub, rng.randint(12, 90))))
                subs.append(sub)
            if self.chance(0.4):
                item = rng.choice(list(self.data["ingredients"]))
                entries.append((item, self.ingredient_entry(item, rng.randint(3, 30))))
        else:
            batch = rng.randint(500, 5000)
            items = rng.sample(list(self.data["ingredients"]), rng.randint(2, 5))
            for item in items:
                entries.append((item, self.ingredient_entry(item, Fraction(batch * rng.randint(2, 60), 100))))
            rest = [item for item in self.data["ingredients"] if item not in items]
            if rest and self.chance(0.4):        # a pinch of something
                item = rng.choice(rest)
                entries.append((item, self.ingredient_entry(item, Fraction(rng.randint(5, 75), 10))))
            if shallow and self.chance(0.55):
                for sub in self.some_of(shallow, rng.randint(1, 2)):
                    entries.append((sub, self.sub_entry(sub, Fraction(batch * rng.randint(5, 30), 100))))
                    subs.append(sub)
            rng.shuffle(entries)
        self.set_lines(formula, entries, twice=kind != "assembled")
        return subs

    def set_lines(self, formula, entries, twice):
        """As a map, or as a list, where a name may stand twice."""
        as_list = self.chance(0.25)
        if not as_list:
            formula["lines"] = dict(entries)
            return
        formula["lines"] = []
        if twice and self.chance(0.6):
            item, entry = next(pair for pair in entries if pair[0] in self.data["ingredients"])
            entries.append((item, self.ingredient_entry(item, self.rng.randint(10, 120))))
        for item, entry in entries:
            formula["lines"].append({"item": item, **(entry if isinstance(entry, dict) else {"amount": entry})})

    def percent_lines(self, formula, shallow):
        """Baker's percentages: a base by amounts or by percents, the rest by percents of it."""
        rng, write = self.rng, self.write
        items = rng.sample(list(self.data["ingredients"]), rng.randint(3, 5))
        base = items[: rng.randint(1, 2)]
        by_percents = self.chance(0.65)
        entries, subs = [], []
        if by_percents:
            if len(base) == 1:
                shares = [Fraction(100)]
            else:
                first = write.between(20, 90, rng.choice([1, 2, 3]))
                shares = [first, 100 - first]
            for item, share in zip(base, shares):
                entries.append((item, write.number(share) + " %"))
        else:
            for item in base:
                entries.append((item, self.ingredient_amount(item, rng.randint(300, 2500))))
        for item in items[len(base):]:
            entry = write.rate(1, 80)
            if self.chance(0.15):
                entry = {"amount": entry, "yield": write.rate(50, 99)}
            entries.append((item, entry))
        if shallow and self.chance(0.3):
            sub = rng.choice(shallow)
            entries.append((sub, write.rate(10, 60)))
            subs.append(sub)
        if not by_percents and self.chance(0.3):      # an amount beside the percentages
            item = next((item for item in self.data["ingredients"] if item not in items), None)
            if item:
                entries.append((item, self.ingredient_entry(item, rng.randint(10, 60))))
        formula["percent of"] = base[0] if len(base) == 1 and self.chance(0.7) else base
        formula["lines"] = dict(entries) if self.chance(0.75) else [
            {"item": item, **(entry if isinstance(entry, dict) else {"amount": entry})} for item, entry in entries]
        if by_percents:
            way = rng.choice(["total", "total and portion", "makes"])
            if way != "makes":
                formula["total"] = write.mass(rng.randint(600, 9000))
            if way != "total":
                self.portion(formula, None)
            if way == "makes":
                formula["makes"] = str(rng.randint(10, 90))
        elif self.chance(0.6):
            self.portion(formula, None)
        pieces = "portion" in formula
        if not pieces and "losses" in formula:
            for loss in [loss for loss, entry in formula["losses"].items()
                         if loss in ("breakage", "rejects") or (isinstance(entry, dict) and entry["when"] == "pieces")]:
                del formula["losses"][loss]
            if not formula["losses"]:
                del formula["losses"]
        return subs

    def portion(self, formula, batch):
        """A scaling weight that makes 5 to 200 pieces of a batch."""
        rng, write = self.rng, self.write
        grams = Fraction(rng.randint(10, 120)) if batch is None else max(Fraction(8), batch / rng.randint(8, 120))
        if "density" in formula and self.chance(0.7):
            formula["portion"] = write.volume(grams / reference.density(formula["density"], self.measures).grams_per_ml)
        else:
            formula["portion"] = write.mass(grams)

    def work(self, formula):
        """Ovens, labour, consumables, batches, what is sold."""
        rng, write = self.rng, self.write
        name = formula["formula"]
        world = self.world()
        pieces = world.is_pieces(name)
        if self.ovens and self.chance(0.55):
            holds = str(rng.choice([6, 12, 20, 36, 48])) if pieces else write.mass(world.mass_in(name) * rng.choice([Fraction(1, 2), 1, 2]))
            formula["oven"] = {"use": rng.choice(self.ovens), "minutes": write.number(write.between(6, 55, rng.choice([1, 1, 2]))), "holds": holds}
        if self.chance(0.8):
            formula["labour"] = []
            for _ in range(rng.randint(1, 3)):
                per = rng.choice([None, "order", "batch", "mix"] + (["piece"] if pieces else []) + (["load"] * 2 if "oven" in formula else []))
                minutes = {"piece": lambda: Fraction(rng.randint(2, 60), 60), "load": lambda: rng.randint(1, 6)}.get(per, lambda: rng.randint(3, 30))()
                formula["labour"].append(self.task(minutes, per, scales=True))
        if self.chance(0.4):
            formula["consumables"] = []
            for _ in range(rng.randint(1, 2)):
                per = rng.choice(["order", "batch"] + (["piece"] if pieces else []) + (["load"] * 2 if "oven" in formula else []))
                amount = rng.choice([1, 1, 2, 3, Fraction(1, 2), Fraction(1, 3), Fraction(3, 2)]) if per != "piece" else rng.choice([1, 1, Fraction(1, 4), Fraction(1, 12)])
                formula["consumables"].append({"item": rng.choice(list(self.data["supplies"])), "amount": write.number(amount), "per": per})
                if per == "batch" and self.chance(0.35):
                    formula["consumables"][-1]["scales"] = "yes"
        if self.chance(0.6):
            formula["batches"] = rng.choice(["exact", "half", "whole", "quarter", "whole"])
            if self.chance(0.5):
                formula["leftover"] = rng.choice(["kept", "kept", "charged"])
        if self.chance(0.4):
            formula["largest mix"] = write.number(rng.choice([1, 2, 3, 4, Fraction(3, 2), Fraction(1, 2)]))
        if self.chance(0.2):
            formula["keep"] = {"at": rng.choice(["room", "cool", "cold", "frozen"]), "for": "4 days"}
        if self.chance(0.35) and pieces:
            formula["standard run"] = str(rng.choice([12, 48, 96, 100, 240]))
        elif self.chance(0.25) and not pieces:
            formula["standard run"] = write.mass(world.mass_out(name) * rng.choice([Fraction(1, 2), 1, Fraction(3, 2), 3]))
        if self.chance(0.3):
            formula["price"] = self.target(point=self.chance(0.4))
            if self.chance(0.15):
                formula["price"] = self.point()
        if self.other_rates and self.chance(0.5):
            formula["tax"] = rng.choice(self.other_rates)
        if self.chance(0.2):
            formula["label"] = "label of " + name
        if self.chance(0.7) or not pieces:
            formula["sold as"] = {}
            for n in range(rng.randint(1, 3)):
                if pieces:
                    holds = rng.choice([1, 2, 4, 6, 12, 24])
                    unit_name, holds = f"box {n + 1} of {holds}", str(holds)
                else:
                    unit_name, holds = f"jar {n + 1}", write.mass(rng.choice([120, 250, 340, 500, 1000]))
                unit = {"holds": holds}
                if self.chance(0.8):
                    unit["packing"] = {item: write.number(rng.choice([1, 1, 1, 2, Fraction(1, 2), Fraction(1, 3)]))
                                       for item in rng.sample(list(self.data["supplies"]), rng.randint(1, 3))}
                if self.chance(0.5):
                    unit["labour"] = [self.task(Fraction(rng.randint(1, 16), 4), rng.choice([None, "sale unit"])) for _ in range(rng.randint(1, 2))]
                if self.chance(0.3):
                    unit["price"] = self.target(point=self.chance(0.4))
                formula["sold as"][unit_name] = unit

    # --- orders

    def orders(self):
        for at, day in enumerate(self.order_days):
            self.data["orders"].append(self.order(f"2026-{at + 1:03}", day))

    def order(self, order_id, day):
        rng, write = self.rng, self.write
        order = {"order": order_id}
        if self.chance(0.7):
            order["client"] = f"Client {rng.randint(1, 9)}"
        order["date"] = str(day)
        if self.chance(0.6):
            order["due"] = str(day + datetime.timedelta(days=rng.choice([0, 1, 2, 3, 4, 5, 9, 10, 11, 20, 40])))
        if self.chance(0.2):
            order["valid"] = "7 days"
        if self.payments and self.chance(0.35):
            order["paid by"] = rng.choice(self.payments + ["none"])
        if self.chance(0.25):
            order["costed as"] = rng.choice(["alone"] + reference.POLICIES)
        if self.data["orders"] and self.chance(0.3):
            order["made with"] = [rng.choice(self.data["orders"])["order"]]
        world = self.world()
        tiers = self.chance(0.3)
        order["lines"] = []
        for _ in range(rng.randint(1, 2 if tiers else 4)):
            formula = rng.choice(self.data["formulas"][-5:] + self.data["formulas"])
            line = {"item": formula["formula"]}
            units = formula.get("sold as", {})
            if units and (self.chance(0.85) or not world.is_pieces(formula["formula"])):
                line["as"] = rng.choice(list(units))
            line["count"] = str(rng.choice([1, 1, 2, 3, 4, 5, 8, 12] + ([] if tiers else [20, 40])))
            if self.chance(0.3):
                line["price"] = self.target(point=self.chance(0.5))
            elif self.chance(0.1):
                line["price"] = self.point()
            if self.chance(0.12):
                line["costed as"] = rng.choice(["alone"] + reference.POLICIES)
            order["lines"].append(line)
        if tiers:
            order["quantity breaks"] = rng.choice([["1", "4", "10"], ["2", "9"], ["3", "7", "8"], ["6"]])
        if self.chance(0.65):
            order["delivery"] = self.delivery()
        if self.chance(0.35):
            order["rush"] = rng.choice([write.rate(5, 25), write.money(2, 15), "none"])
        if self.chance(0.5):
            order["discount"] = rng.choice([write.rate(1, 15), write.rate(1, 15), write.money(0.2, 2),
                                            {"share": write.rate(1, 15)}, {"share": write.rate(1, 15), "in the price": "yes"},
                                            {"share": write.rate(1, 15), "in the price": "yes"}])
        if self.chance(0.25):
            order["deposit"] = rng.choice([write.rate(20, 70), write.rate(20, 70), "100 %", "0 %"])
        if "tax" in self.data["shop"] and self.chance(0.12):
            order["tax"] = rng.choice(["none"] + self.other_rates)
        if self.chance(0.3):
            order["lines"] += self.free_lines("tax" not in order)
        if self.chance(0.2):
            order["notes"] = "Leave it at the gate."
        self.mend(order)
        return order

    def delivery(self):
        """How an order gets there, and who pays for it."""
        rng, write = self.rng, self.write
        shop = self.data["shop"].get("delivery", {})
        delivery = {}
        if "rate" in shop or self.chance(0.3):
            delivery["distance"] = write.number(write.between(1, 40, rng.choice([1, 2]))) + rng.choice([" km", " km", " mi", " miles"])
            if self.chance(0.4):
                delivery["both ways"] = rng.choice(["yes", "yes", "no"])
        if "driver" in shop and self.chance(0.6):
            delivery["time"] = rng.choice([f"{rng.randint(5, 90)} min", "1/2 h", "1 h"])
        charge = rng.choice([None, "in price", "at cost", write.money(2, 15), write.money(2, 15)])
        if charge is not None or not delivery:
            delivery["charge"] = charge or "in price"
        return delivery

    def free_lines(self, taxed):
        """Hire, staff, something returned."""
        rng, write = self.rng, self.write
        lines = []
        for text in rng.sample(["hire of a stand", "an hour of serving", "returned: cake boards"], rng.randint(1, 2)):
            line = {"text": text, "count": str(rng.randint(1, 4))}
            if text.startswith("returned"):
                line["price"] = "-" + write.money(0.2, 1.5, code=False)
            else:
                line["price"] = write.money(3, 40)
                if self.chance(0.6):
                    line["cost"] = write.money(1, 30)
            if taxed and self.other_rates and self.chance(0.5):
                line["tax"] = rng.choice(self.other_rates)
            lines.append(line)
        return lines

    def mend(self, order):
        """Takes out of an order what it cannot have: goods below nothing, a discount of more than there is to pay."""
        self.data["orders"].append(order)
        try:
            if reference.quote(Book(self.data), order, reference.counts_of(order)).totals["subtotal"] <= 0:
                raise reference.BookError("nothing to pay")
        except reference.BookError:
            order.pop("discount", None)
            order["lines"] = [line for line in order["lines"] if not line.get("price", "") or not str(line["price"]).startswith("-")]
        finally:
            self.data["orders"].remove(order)

    # --- what is on the shelf

    def day_near(self):
        return str(self.day + datetime.timedelta(days=self.rng.randint(0, 30)))

    def stock(self):
        """A count of the shelf: bought goods, and own ones that orders use."""
        rng, write = self.rng, self.write
        if not self.chance(0.5):
            return
        items = {}
        for item in rng.sample(list(self.data["ingredients"]), 3):
            items[item] = write.mass(rng.choice([100, 600, 4000]))
        book = Book(self.data)
        world = self.world()
        reached = World(book, self.order_days[0], [sale for order in self.data["orders"]
                                                   for sale in reference.sales_of(book, order, reference.counts_of(order))],
                        rounding=False).reached()
        for name in rng.sample(reached, min(len(reached), rng.randint(1, 3))):
            amount = str(rng.choice([2, 5, 12, 40])) if world.is_pieces(name) else write.mass(rng.choice([40, 150, 900]))
            items[name] = amount
            if self.chance(0.5):
                items[name] = {"amount": amount, "good until": self.day_near()}
            ways = list(self.formula_of(name).get("sold as", {}))
            if ways and self.chance(0.5):
                packed = {"as": rng.choice(ways), "amount": str(rng.randint(1, 6)), "good until": self.day_near()}
                items[name] = [items[name] if isinstance(items[name], dict) else {"amount": amount}, packed]
        self.data["stock"] = {"stock": str(self.day), "items": items}


def menu_items(folder):
    """The items whose menu cost is compared, and the day it is asked for."""
    on = folder["orders"][0]["date"]
    items = []
    for order in folder["orders"]:
        for line in reference.item_lines(order):
            if (line["item"], on) not in items:
                items.append((line["item"], on))
    return items


# ------------------------------------------------------------------------------------------------ YAML

def scalar(text, rng, flow):
    """Plain where that is safe, else quoted; now and then quoted for no reason."""
    must = (text == "" or text != text.strip() or text[0] in "#&*!|>%@`\"'[]{},?:-~=<" or ": " in text or " #" in text
            or text.endswith(":") or (flow and re.search(r"[,\[\]{}]", text)))
    if not must and rng.random() > 0.04:
        return text
    if "'" in text or rng.random() < 0.6:
        return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
    return f"'{text}'"


def flow_yaml(value, rng):
    if isinstance(value, dict):
        return "{" + ", ".join(f"{scalar(key, rng, True)}: {flow_yaml(entry, rng)}" for key, entry in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(flow_yaml(entry, rng) for entry in value) + "]"
    return scalar(value, rng, True)


def block_yaml(value, rng, indent=0, depth=0):
    """The lines of a map or a list in block style; inner ones now and then in flow style."""
    space, lines = " " * indent, []
    entries = value.items() if isinstance(value, dict) else [(None, entry) for entry in value]
    for key, entry in entries:
        head = space + ("-" if key is None else scalar(key, rng, False) + ":")
        if depth == 0 and rng.random() < 0.03:
            lines.append(space + "# a remark: [not data]")
        if not isinstance(entry, (dict, list)):
            lines.append(f"{head} {scalar(entry, rng, False)}")
        elif not entry or (depth > 0 and rng.random() < 0.7) or rng.random() < 0.2:
            lines.append(f"{head} {flow_yaml(entry, rng)}")
        elif key is None:                          # the item's first line stands behind the dash
            inner = block_yaml(entry, rng, indent + 2, depth + 1)
            lines.append(head + " " + inner[0][indent + 2:])
            lines += inner[1:]
        else:
            lines.append(head)
            lines += block_yaml(entry, rng, indent + 2, depth + 1)
    return lines


def document(value, rng):
    text = "\n".join(block_yaml(value, rng)) + "\n"
    return text + (" # a last remark\n" if rng.random() < 0.05 else "")


def spread(documents, names, rng):
    """The documents, in order, over one or more files."""
    files, at = [], 0
    for name in names:
        take = len(documents) - at if name == names[-1] else rng.randint(0, len(documents) - at)
        if take:
            files.append((name, documents[at:at + take]))
        at += take
    return files


def with_yield_tests(folder, seed):
    """The folder with some of its yields cited rather than stated, and the yield tests that give just these: whoever
    calculates with the stated ones must come to the same figures."""
    rng = random.Random(f"yields {seed}")
    ingredients = {name: dict(facts) for name, facts in folder["ingredients"].items()}
    prices = [{**each, "offers": [dict(offer) for offer in each["offers"]]} for each in folder["prices"]]
    places = [(name, facts, None) for name, facts in ingredients.items() if "yield" in facts]
    places += [(offer["item"], offer, each["supplier"]) for each in prices for offer in each["offers"] if "yield" in offer]
    chosen = [place for place in places if rng.random() < 0.3]
    tests = []

    def test(item, supplier, bought, usable):
        entry = {"test": f"test {len(tests) + 1}", "item": item, "date": "2026-11-12", "as purchased": f"{bought} g"}
        if usable < bought and rng.random() < 0.5:
            entry["trim"] = {"peel": f"{(bought - usable) / 3} g", "pips": {"mass": f"{(bought - usable) * 2 / 3} g", "worth": "2.00 / kg"}}
        if "trim" not in entry or rng.random() < 0.5:
            entry["usable"] = f"{usable} g"
        if supplier and rng.random() < 0.5:
            entry["supplier"] = supplier
        tests.append(entry)
        return entry["test"]

    for item, place, supplier in chosen:
        share, bought = reference.rate(place["yield"]), Fraction(rng.randint(200, 20000))
        if sum(other == item for other, _, _ in chosen) > 1 or rng.random() < 0.4:
            place["yield"] = {"test": test(item, supplier, bought, share * bought)}
            continue
        more = Fraction(rng.randint(200, 20000))           # two tests that differ, and together give the share
        shift = share * min(bought, more) / 20
        if share < 1:
            shift = min(shift, (1 - share) * min(bought, more))
        test(item, supplier, bought, share * bought + shift)
        test(item, supplier, more, share * more - shift)
        place["yield"] = "tested"
    rng.shuffle(tests)
    return {**folder, "ingredients": ingredients, "prices": prices}, tests


def yaml_files(folder, seed):
    """path -> text. The reading order of the files is the order of the data."""
    rng = random.Random(f"yaml {seed}")
    folder, tests = with_yield_tests(folder, seed)
    files = {"shop.yaml": document(folder["shop"], rng)}

    for kind in ("ingredients", "supplies"):
        entries = list(folder[kind].items())
        cut = rng.choice([0, 0, len(entries) // 2, len(entries)])
        if entries[cut:]:
            files[f"{kind}.yaml"] = document(dict(entries[cut:]), rng)
        if entries[:cut]:
            half = rng.choice([len(entries[:cut]), cut // 2])
            for name, part in (("a", entries[:half]), ("b", entries[half:cut])):
                if part:
                    files[f"{kind}/{name}.yaml"] = document(dict(part), rng)
    for at, price_list in enumerate(folder["prices"]):
        files[f"prices/{at + 1:02}.yaml"] = document(price_list, rng)
    if len(folder["prices"]) > 1 and rng.random() < 0.3:           # all lists in one file
        for at in range(len(folder["prices"])):
            del files[f"prices/{at + 1:02}.yaml"]
        files["prices/all.yaml"] = "---\n".join(document(price_list, rng) for price_list in folder["prices"])
    for name, documents in spread(folder["formulas"], [f"{n:02}" for n in range(1, rng.randint(1, 4) + 1)], rng):
        files[f"formulas/{name}.yaml"] = "---\n".join(document(formula, rng) for formula in documents)
    for name, documents in spread(folder["orders"], ["a", "b"][: rng.randint(1, 2)], rng):
        files[f"orders/{name}.yaml"] = "---\n".join(document(order, rng) for order in documents)
    for at, purchase in enumerate(folder.get("purchases", [])):
        files[f"purchases/{at + 1:02}.yaml"] = document(purchase, rng)
    if "stock" in folder:
        files["stock.yaml"] = document(folder["stock"], rng)
    if tests:
        name = "yields.yaml" if seed % 2 else "yields/tests.yaml"
        files[name] = "---\n".join(document(test, rng) for test in tests)
    return files


def write_folder(folder, seed, where):
    for path, text in yaml_files(folder, seed).items():
        target = pathlib.Path(where) / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")


# ------------------------------------------------------------------------------------------------ coverage

def texts(value):
    """Every scalar of the data."""
    if isinstance(value, dict):
        for entry in value.values():
            yield from texts(entry)
    elif isinstance(value, list):
        for entry in value:
            yield from texts(entry)
    else:
        yield value


# What the specification asks of books. Each is met in at least a tenth of them: a test sees to it.
RULES = ["kept", "kept at a standard run of its own", "steps", "loads", "whole packs", "two dates", "purchases",
         "deposits on packs", "landed delivery", "only compared", "stock of own goods", "discounts", "discounts in the price",
         "discounts cut at the minimum", "sets made together", "usual run", "alone", "scales", "counter work", "tiers",
         "tiers where more costs less", "free lines", "tax classes with delivery", "two payments", "both ways", "driver's time",
         "overhead that varies", "yields above 1", "prime cost target", "preheating with a duty", "largest mix"]


def rules_met(folder):
    """Which of the rules move a figure of an order of the folder, or of its menu."""
    book, found = Book(folder), set()

    def show(name, claim=True):
        assert name in RULES, name
        if claim:
            found.add(name)

    show("counter work", "counter work" in book.shop)
    chosen = {}                # what a day's costs go by, to see what moves between the dates
    for order in folder["orders"]:
        on, counts = reference.day_of(book, order), reference.counts_of(order)
        result = reference.quote(book, order, counts)
        world, totals = result.world2, result.totals
        exact = result.world1.reached()
        bought = [item for item in list(book.ingredients) + list(book.supplies) if world.bought(item)]
        for item in bought:
            offer, last = reference.choose_offer(book, item, on), reference.last_purchase(book, item, on)
            show("two dates", chosen.setdefault(item, offer) != offer)
            show("purchases", last is not None and offer.supplier == last.supplier)
            show("deposits on packs", any(entry["item"] == item and "deposit" in entry for price_list, entry in all_offers(folder)
                                               if price_list["supplier"] == offer.supplier))
            show("landed delivery", reference.landing(book, offer.supplier) > 0)
            show("whole packs", world.in_whole_packs(item))
            show("only compared", any(entry["item"] == item and reference.only_compared(book, price_list, entry)
                                      for price_list, entry in all_offers(folder)))
            show("yields above 1", reference.rate(reference.facts_of(book, item).get("yield", "100 %")) > 1)
        for name in world.kept_formulas():
            show("kept")
            show("kept at a standard run of its own", "standard run" in book.formulas[name])
        for name in world.used_formulas():
            formula = book.formulas[name]
            show("steps", world.batches(name) > world.batches_needed(name))
            show("scales", any(entry.get("scales") == "yes" and world.batches(name).denominator > 1
                               for entry in formula.get("labour", []) + formula.get("consumables", [])))
            show("largest mix", "largest mix" in formula)
            if "oven" in formula:
                oven = book.shop["ovens"][formula["oven"]["use"]]
                show("loads", world.loads(name) > 1)
                show("preheating with a duty", "duty" in oven and "preheat" in oven)
        show("stock of own goods", any(name in folder.get("stock", {}).get("items", {}) for name in exact))
        in_price = reference.discount_in_price(order) > 0
        show("discounts", totals["discount"] > 0 and not in_price)
        show("discounts in the price", totals["discount"] > 0 and in_price)
        show("discounts cut at the minimum", "discount" in order and totals["discount"] == max(
            0, totals["subtotal"] - reference.money_in(book, book.shop, "minimum order")))
        together = len(reference.made_set(book, order)) > 1
        for entry in reference.item_lines(order):
            policy = reference.policy_of(book, order, entry)
            show("usual run", policy == "usual run")
            show("alone", policy == "alone" and together)
            show("sets made together", policy == "made together" and together)
        show("free lines", bool(result.free))
        show("tax classes with delivery", len(result.classes) > 1 and totals["delivery"] > 0)
        show("two payments", 0 < reference.deposit_rate(book, order) < 1 and reference.fee_of(book, order)[1] > 0)
        show("both ways", order.get("delivery", {}).get("both ways") == "yes")
        show("driver's time", "time" in order.get("delivery", {}))
        show("overhead that varies", any(line["part"]["variable overhead"] for line in result.lines))
        for entry, sale in zip(reference.item_lines(order), world.sales):
            levels = [entry.get("price", {}), sale.unit.get("price", {}), book.formulas[sale.item].get("price", {}), book.shop["price"]]
            show("prime cost target", reference.price_wish(book, levels)[0][0] == "prime cost")
        if "quantity breaks" in order:
            show("tiers")
            for at in range(len(counts)):
                _, asked, price = reference.tiers(book, order, at)
                show("tiers where more costs less", any(asked[count] < count * price[count] for count in asked))
    return found


def features(folder):
    """The names of what the folder shows, in its text and in its figures."""
    found = set()

    def show(name, claim=True):
        if claim:
            found.add(name)

    book, shop = Book(folder), folder["shop"]
    show(f"shop: currency {book.currency}")
    show(f"shop: measures {book.measures}")
    for key in ("overhead", "order work", "counter work", "costed as", "delivery", "fees", "paid by", "tax", "minimum order", "rush", "deposit",
                "cash rounding", "standard run", "variable", "sheets"):
        show(f"shop: {key}", key in shop)
    for kind, _, _ in reference.overhead_rates(book):
        show(f"overhead: {kind}")
    show("tax: contained", reference.tax_contained(book))
    show("tax: per line", shop.get("tax", {}).get("rounded") == "per line")
    show("tax: contained and per line", reference.tax_contained(book) and shop["tax"].get("rounded") == "per line")
    for oven in shop.get("ovens", {}).values():
        show("oven: gas", oven.get("fuel") == "gas")
        show("oven: preheat", "preheat" in oven)

    everything = list(texts(folder))
    for name, pattern in {"text: mixed fraction": r"^\d+ \d+/\d+ ", "text: vulgar sign": rf"[{reference.SIGNS}]",
                          "text: lb and oz": r"\d lb .* oz$", "text: scoop": r"#\d+ scoop", "text: times scoop": r"x #\d+ scoop",
                          "text: dozen": r" doz", "text: baker's dozen": r"baker's dozen", "text: gross": r"gross",
                          "text: stick": r" stick$", "text: pack chain": r"\d x \d+ x \d", "text: cup and spoon": r"cup \d+ t",
                          "text: cup": r"\d cup$", "text: US or imperial or label": r"\b(US|imperial|label) (cup|tsp|tbsp|fl oz|pint|quart)$",
                          "text: currency code": r"^[A-Z]{3} \d|\d [A-Z]{3}$", "text: mg": r"\d mg$", "text: third of a kilogram": r"/3 kg$",
                          "text: mile": r" mi(les)?$", "text: volume in mL or L": r"\d (m|d|c)?[lL]$"}.items():
        show(name, any(re.search(pattern, text) for text in everything))

    for facts in folder["ingredients"].values():
        show("ingredient: density rows", isinstance(facts.get("density"), list) and len(facts["density"]) > 1)
        show("ingredient: each", "each" in facts)
        show("ingredient: prefer", "prefer" in facts)
    for price_list in folder["prices"]:
        show("prices: tax included", "tax included" in price_list)
        show("prices: from of the list", "from" in price_list)
        for offer in price_list["offers"]:
            for key in ("until", "freight", "yield", "breaks"):
                show(f"offer: {key}", key in offer)
    show("prices: two lists of one supplier", len({entry["supplier"] for entry in folder["prices"]}) < len(folder["prices"]))

    for order in folder["orders"]:
        figures = reference.order_figures(folder, order["order"])
        result = reference.quote(book, order, reference.counts_of(order))
        world, on = result.world2, reference.day_of(book, order)
        for item in list(book.ingredients) + list(book.supplies):
            standing = reference.candidates(book, item, on)
            best = reference.choose_offer(book, item, on)
            show("choice: several candidates", len(standing) > 1)
            show("choice: preferred is not the cheapest", best.usable_unit > min(offer.usable_unit for offer in standing))
            show("choice: a tie", sum(offer.usable_unit == best.usable_unit for offer in standing) > 1)
            show("choice: usable and bought cost disagree", best.ap_unit > min(offer.ap_unit for offer in standing) and
                 best.usable_unit == min(offer.usable_unit for offer in standing))
            everybody = [entry for entry in all_offers(folder) if entry[1]["item"] == item]
            show("choice: an until has passed", any("until" in entry and reference.date(entry["until"]) < on for _, entry in everybody))
            show("choice: a later price is not yet in force", any(
                reference.date(entry.get("from", price_list.get("from", "2000-01-01"))) > on for price_list, entry in everybody))
            keys = [(price_list["supplier"], reference.pack_content(book, item, entry["pack"])) for price_list, entry in everybody]
            show("choice: two prices of one pack", len(set(keys)) < len(keys))
            spelled = {(key, entry["pack"]) for key, (_, entry) in zip(keys, everybody)}
            show("choice: one pack spelled two ways", len({key for key, _ in spelled}) < len(spelled))
        for name in world.used_formulas():
            formula = book.formulas[name]
            pieces = world.is_pieces(name)
            show("formula: by pieces" if pieces else "formula: by mass")
            show("formula: portion by volume", "portion" in formula and book.quantity(formula["portion"]).kind == "volume")
            show("formula: portion and makes", "portion" in formula and "makes" in formula)
            show("formula: makes a stated count", pieces and "portion" not in formula)
            show("formula: makes a stated mass", not pieces and "makes" in formula)
            show("formula: percents", "percent of" in formula)
            show("formula: percents with total", "percent of" in formula and "total" in formula)
            show("formula: percents from portion and makes", "percent of" in formula and "total" not in formula and
                 "makes" in formula and "portion" in formula)
            show("formula: percents of a base by amounts", "percent of" in formula and "total" not in formula and "makes" not in formula)
            show("formula: percents of several", "percent of" in formula and len(reference.as_list(formula["percent of"])) > 1)
            show("formula: lines as list", isinstance(formula["lines"], list))
            raw_lines = book.raw_lines(name)
            show("formula: a name twice", len({raw.item for raw in raw_lines}) < len(raw_lines))
            for raw in raw_lines:
                show("line: as bought", raw.as_bought)
                show("line: own yield", raw.line_yield is not None)
                show("line: own yield and as bought", raw.line_yield is not None and raw.as_bought)
                if book.is_formula(raw.item):
                    if reference.is_rate(raw.amount):
                        show("line: formula by percent")
                    else:
                        what = "pieces" if world.is_pieces(raw.item) else "mass"
                        show(f"line: formula of {what} by {book.quantity(raw.amount).kind}")
                elif not reference.is_rate(raw.amount):
                    show(f"line: ingredient by {book.quantity(raw.amount).kind}")
            users = {user for user in world.used_formulas() for raw in book.raw_lines(user) if raw.item == name}
            show("graph: used by several", len(users) > 1)
            show("graph: used and sold", bool(users) and any(sale.item == name for sale in world.sales))
            for when in ("before portioning", "after portioning", "pieces"):
                show(f"loss: {when}", bool(book.losses(name, when)))
            show("loss: several in one place", len(book.losses(name, "before portioning")) > 1)
            show("loss: of its own name", any(isinstance(entry, dict) for entry in formula.get("losses", {}).values()))
            if "oven" in formula:
                show(f"oven: by {'pieces' if pieces else 'mass'}")
                sharers = [other for other in world.used_formulas() if book.formulas[other].get("oven", {}).get("use") == formula["oven"]["use"]]
                show("oven: shared by formulas", len(sharers) > 1)
            for task in formula.get("labour", []):
                show(f"labour: per {task.get('per', 'batch (default)')}")
                show("labour: unattended", task.get("unattended") == "yes")
            for entry in formula.get("consumables", []):
                show(f"consumable: per {entry['per']}")
            show(f"batches: {formula.get('batches', 'exact (default)')}")
            show("batches: largest mix", "largest mix" in formula)
            show("batches: left over and charged", world.batches(name) > world.batches_needed(name))
        for name in world.kept_formulas():
            users = {user for user in world.used_formulas() for raw in book.raw_lines(user) if raw.item == name}
            show("kept: sold", any(sale.item == name for sale in world.sales))
            show("kept: used", bool(users))
            show("kept: by pieces" if world.is_pieces(name) else "kept: by mass")
            show("kept: of kept ones", any(book.formulas[raw.item].get("leftover") == "kept" for raw in book.raw_lines(name)
                                           if book.is_formula(raw.item)))
            show("kept: of ones that are not", any(book.formulas[raw.item].get("leftover") != "kept" for raw in book.raw_lines(name)
                                                   if book.is_formula(raw.item)))
        depth = max(deep(book, name) for name in world.reached())
        show(f"graph: {depth} deep")
        for item in world.book.ingredients:
            if any(use[1] == item for use in world.ingredient_uses()):
                show("bought: whole packs of an ingredient", reference.buys_whole_packs(book, item))
                show("bought: whole packs shared by lines", reference.buys_whole_packs(book, item) and
                     len([use for use in world.ingredient_uses() if use[1] == item]) > 1)
        for item in world.book.supplies:
            where = [use[0] for use in world.supply_uses() if use[1] == item]
            show("bought: whole packs of a supply", bool(where) and reference.buys_whole_packs(book, item))
            show("bought: whole packs over packing and consumables", reference.buys_whole_packs(book, item) and
                 len({type(place) for place in where}) > 1)
        for sale, entry, line in zip(world.sales, reference.item_lines(order), result.lines):
            pieces = world.is_pieces(sale.item)
            show("sold: no way named, so the first", "as" not in entry and bool(sale.unit))
            show("sold: bare pieces" if not sale.unit else f"sold: box of pieces" if pieces else "sold: jar by mass")
            show("sold: labour of the sale unit", "labour" in sale.unit)
            levels = [entry.get("price", {}), sale.unit.get("price", {}), book.formulas[sale.item].get("price", {}), shop["price"]]
            (target, _), point = reference.price_wish(book, levels)
            show(f"target: {target}")
            at = next(n for n, level in enumerate(levels) if any(name in level for name in reference.TARGETS))
            show("target: of the " + ["order line", "sale unit", "formula", "shop"][at])
            point_at = [n for n, level in enumerate(levels) if any(key in level for key in ("to", "endings", "toward"))]
            show("point: of another level than the target", bool(point_at) and point_at[0] != at and target != "given")
            show("point: endings" if "endings" in point else "point: " + point.get("toward", "up (default)") if "to" in point else "point: none")
            show("price: at a loss", line.get("margin", 0) < 0)
        show("order: several lines of one item", len({sale.item for sale in world.sales}) < len(world.sales))
        show("order: several tax classes", len({line["tax rate"] for line in result.lines}) > 1)
        show("order: tax of its own", "tax" in order)
        show("order: paid by", "paid by" in order)
        show("order: a fee is paid", result.totals["fee"] > 0)
        show("order: delivery " + (order["delivery"].get("charge", "in price (default)") if not re.search(r"\d", order["delivery"].get("charge", "")) else "for money")
             if "delivery" in order else "order: no delivery")
        for key in ("minimum", "rush", "discount", "deposit", "delivery"):
            show(f"order: {key} is due", result.totals[key] > 0)
        show("order: rush by the shop's rule", result.totals["rush"] > 0 and "rush" not in order)
        show("order: rush none", order.get("rush") == "none")
        adjustment = result.totals["minimum"] + result.totals["rush"] - result.totals["discount"]
        show("order: adjustment over several classes", adjustment != 0 and len({line["tax rate"] for line in result.lines}) > 1)
        show("order: negative adjustment", adjustment < 0)
        for key in ("trim", "process", "rounding"):
            show(f"loss figure: {key} > 0", figures[f"loss/{key}"] > 0)
            show(f"loss figure: {key} < 0", figures[f"loss/{key}"] < 0)
        show("order: loses money", result.totals["profit"] < 0)
    found |= {f"rule: {name}" for name in rules_met(folder)}
    for item, _ in menu_items(folder):
        formula = book.formulas[item]
        pieces = World(book, None, [], True, False).is_pieces(item)
        show("menu: by pieces" if pieces else "menu: by mass")
        show("menu: standard run of the formula" if "standard run" in formula else
             "menu: standard run of the shop" if "standard run" in shop and pieces else
             "menu: a full mix" if "largest mix" in formula else "menu: a batch")
    return found


def all_offers(folder):
    return [(price_list, entry) for price_list in folder["prices"] for entry in price_list["offers"]]


def deep(book, name):
    return 1 + max([deep(book, raw.item) for raw in book.raw_lines(name) if book.is_formula(raw.item)], default=0)


def main():
    parser = argparse.ArgumentParser(description="Write random folders of books, or count what they cover.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--out", metavar="DIR", help="write the folder of the seed there")
    parser.add_argument("--coverage", type=int, metavar="N", help="count features over N folders from the seed on")
    options = parser.parse_args()
    if options.coverage:
        count = Counter()
        for seed in range(options.seed, options.seed + options.coverage):
            count.update(features(make_folder(seed)))
        for name in sorted(count):
            print(f"{count[name]:6}  {name}")
        print(f"\nThe share of {options.coverage} folders that meet each rule:")
        for name in RULES:
            print(f"{100 * count[f'rule: {name}'] // options.coverage:5} %  {name}")
    if options.out:
        write_folder(make_folder(options.seed), options.seed, options.out)


if __name__ == "__main__":
    main()
