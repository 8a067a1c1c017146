"""From the JSON that `groat` prints to the flat keys of the reference.

This is the only place that knows groat's layout. It reads the exact amounts (`n/d` or `n`, as text) and never the
rounded ones. A category that costs nothing is not printed and stands as 0. Besides changing the names it does three sums, each where groat shows a figure in another unit than the
reference keeps it: prices per kilogram become prices per gram, batches left over are those made less those taken,
and a whole order's tax is the sum over its rates.

What is expected of the sections that tell how an order is costed and what it costs by number:

    ways       rows of a line's key: `way` ("alone", "made together with ...", "in a usual run"), cost and price each
    tiers      rows of a line's key: from, price
    taxes      rows of each rate, where there are several: rate, taxable, tax
    formulas   a row with nothing in `takes` is of what is kept, and is not made

Where one of them is not printed at all, its figures are missing; those of UNPRINTED groat says in words only.
"""

import re
from fractions import Fraction

# What the reference knows and no sheet has as an exact figure.
UNPRINTED = re.compile(r"tier/.*/most|free/.*|kept/.*/(ingredients|consumables|labour|energy)|item/units")

WAYS = {"alone": "alone", "made together": "made together", "in a usual run": "usual run"}

CATEGORIES = ["ingredients", "consumables", "packaging", "labour", "energy", "overhead", "delivery"]


def exact(figure):
    return Fraction(figure["exact"])


def flatten(document):
    """The exact figures of one document (`quote ... --for maker` or `cost`): a map from key to `n/d` or `n`.

    The keys are those of reference.order_figures and reference.menu_figures, such as `ingredient/NAME/cost`,
    `line/1/margin`, `total/tax`, `item/wanted`.
    """
    figures = order(document) if document["sheet"] == "quote" else item(document)
    return {key: str(value) for key, value in figures.items()}


def by_key(rows):
    return {row["key"]: row for row in rows if "key" in row}


def about(sections, of):
    """The one of several sections of a key that is of this."""
    found, = (section for section in sections if section["of"] == str(of))
    return found


def order(document):
    flat = {}
    purchases = by_key(document["purchases"])
    for row in document["ingredients"]:
        if row["row"] != "line" or row["key"].startswith("kept "):
            continue
        name = f"ingredient/{row['key']}"
        flat[f"{name}/usable"] = exact(row["usable"])
        flat[f"{name}/bought"] = exact(row["bought"])
        flat[f"{name}/unit"] = exact(row["unit_cost"]) / 1000
        flat[f"{name}/cost"] = exact(row["cost"])
        flat[f"{name}/packs"] = exact(purchases[row["key"]]["packs"])
        flat[f"{name}/outlay"] = exact(purchases[row["key"]]["outlay"])
    for row in document["supplies"]:
        if row["row"] != "line":
            continue
        name = f"supply/{row['key']}"
        flat[f"{name}/used"] = exact(row["used"])
        flat[f"{name}/cost"] = exact(row["cost"])
        flat[f"{name}/packs"] = exact(purchases[row["key"]]["packs"])
        flat[f"{name}/outlay"] = exact(purchases[row["key"]]["outlay"])
    for row in document["formulas"]:
        if row["takes"] is None:
            flat[f"kept/{row['key']}/demand"] = exact(row["demand"])
            continue
        name = f"formula/{row['key']}"
        flat[f"{name}/demand"] = exact(row["demand"])
        if row["started"] is not None:
            flat[f"{name}/started"] = exact(row["started"])
        flat[f"{name}/batches"] = exact(row["made"])
        if row["mixes"] is not None:
            flat[f"{name}/mixes"] = exact(row["mixes"])
        if row["loads"] is not None:
            flat[f"{name}/loads"] = exact(row["loads"])
        flat[f"{name}/leftover"] = exact(row["made"]) - exact(row["takes"])
    for row in document["formula_costs"]:
        for category in ["ingredients", "consumables", "labour", "energy"]:
            flat[f"formula/{row['key']}/{category}"] = exact(row[category])
    losses(document, flat, 1)
    numbers = [int(section["of"]) for section in document["line_costs"]]
    for number in numbers:
        line(document, flat, number)
    totals = by_key(document["totals"])
    amounts = {key: exact(row["amount"]) for key, row in totals.items()}
    flat["total/subtotal"] = amounts.get("subtotal", sum(exact(row["amount"]) for row in document["lines"] if row["row"] == "line"))
    for key in ["minimum", "rush", "delivery"]:
        flat[f"total/{key}"] = amounts.get(key, Fraction())
    flat["total/discount"] = -amounts.get("discount", Fraction())
    flat["total/tax"] = sum((exact(row["amount"]) for row in document["totals"] if row["key"] == "tax"), Fraction())
    flat["total/total"] = amounts["total"]
    flat["total/net"] = flat["total/total"] - flat["total/tax"]
    flat["total/deposit"] = amounts.get("deposit", Fraction())
    flat["total/balance"] = amounts.get("balance", flat["total/total"])
    for key, row in by_key(document["result"]).items():
        flat[f"total/{key}"] = -exact(row["amount"]) if key in ("fee", "cost") else exact(row["amount"])
    for row in document.get("taxes", []):
        if row["row"] == "line":
            flat[f"tax/{exact(row['rate'])}/taxable"] = exact(row["taxable"])
            flat[f"tax/{exact(row['rate'])}/tax"] = exact(row["tax"])
    for row in document.get("ways", []):
        way, = (ours for theirs, ours in WAYS.items() if row["way"].startswith(theirs))
        flat[f"policy/{way}/{row['key']}/cost"] = exact(row["cost"])
        flat[f"policy/{way}/{row['key']}/price"] = exact(row["price"])
    for row in document.get("tiers", []):
        name = f"tier/{row['key']}/{row['from']['exact']}"
        for member in ("to", "price", "worst", "cost", "margin", "last"):
            if row[member] is not None:
                flat[f"{name}/{member}"] = exact(row[member])
    for row in document.get("after_discount", []):
        if row["row"] == "line" and row["after"]:
            flat[f"line/{row['key']}/margin after discount"] = exact(row["after"])
    return flat


def losses(document, flat, units):
    parts = by_key(document["yield_loss"])
    for ours, theirs in [("in_the_piece", "in the piece"), ("trim", "trim"), ("process", "process"), ("rounding", "rounding")]:
        flat[f"loss/{theirs}"] = exact(parts[ours]["cost"]) / units


def line(document, flat, number):
    name = f"line/{number}"
    facts = about(document["line_prices"], number)["facts"]
    costs = by_key(about(document["line_costs"], number)["rows"])
    for category in CATEGORIES + ["cost"]:
        flat[f"{name}/{category}"] = exact(costs[category]["all"]) if category in costs else Fraction()
    for ours, theirs in [("fixed_fee", "fixed fee"), ("wanted", "wanted"), ("price", "price"), ("amount", "amount"),
                         ("margin", "margin"), ("markup", "markup"), ("food_cost", "food cost"),
                         ("prime_cost", "prime cost"), ("contribution", "contribution"),
                         ("margin_after_discount", "margin after discount")]:
        if ours in facts:
            flat[f"{name}/{theirs}"] = exact(facts[ours])


def item(document):
    flat = {}
    costs = by_key(document["costs"])
    each = "unit" if "unit" in costs["cost"] else "piece"
    for category in CATEGORIES + ["cost"]:
        flat[f"item/{category}"] = exact(costs[category][each]) if category in costs else Fraction()
    units = exact(costs["cost"]["all"]) / exact(costs["cost"][each]) if exact(costs["cost"]["all"]) else Fraction(1)
    losses(document, flat, units)
    flat["item/units"] = units
    if "wanted" in document["item"]:
        flat["item/wanted"] = exact(document["item"]["wanted"])
    return flat
