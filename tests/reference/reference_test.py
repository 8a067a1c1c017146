"""The reference against figures that were worked by hand or printed by others (checks.md), and against its own laws.

A row of checks.md is named beside each check; `SEEN`, `MEM`, `DERIVED` as there. Run: python3 reference_test.py
"""

import contextlib
import copy
import io
import os
import pathlib
import stat
import sys
import tempfile
import unittest
from fractions import Fraction
from unittest import mock

import compare
import laws
import menu_compare
import mutants
import production_compare
import random_books
import reference
from reference import Book, BookError, World, number, quantity, rate, round_half_up, tax_on

F = Fraction
CENT = F(1, 100)


def a_folder(**parts):
    """The smallest books: one ingredient at 10.00 a kilogram, a formula of 1 kg that makes 10, one piece sold at cost."""
    folder = {
        "shop": {"shop": "Shop", "currency": "USD", "labour": {"baker": {"wage": "20.00 / h"}}, "price": {"markup": "0 %"}},
        "ingredients": {"flour": {}},
        "supplies": {},
        "prices": [{"supplier": "supplier 1", "offers": [{"item": "flour", "pack": "1 kg", "price": "10.00"}]}],
        "formulas": [{"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}}],
        "orders": [{"order": "1", "date": "2026-11-25", "lines": [{"item": "bun", "count": "1"}]}],
    }
    for key, value in parts.items():
        folder[key] = {**folder[key], **value} if key == "shop" else value
    return folder


def figures(folder, order="1"):
    return reference.order_figures(folder, order)


def offers(*entries, **price_list):
    return [{"supplier": "supplier 1", **price_list, "offers": list(entries)}]


def an_order(*lines, **facts):
    return [{"order": "1", "date": "2026-11-25", "lines": list(lines), **facts}]


class Scalars(unittest.TestCase):
    def test_numbers_as_people_write_them(self):
        for text, value in {"12": 12, "0.25": F(1, 4), ".50": F(1, 2), "1/3": F(1, 3), "2 1/4": F(9, 4), "2½": F(5, 2),
                            "½": F(1, 2), "2 ⅔": F(8, 3), "⅞": F(7, 8), "-1.5": F(-3, 2), "010": 10}.items():
            self.assertEqual(number(text), value, text)
        for text in ("", "1e3", "1,000", "1/2/3", "two", "1.", "1 2"):
            with self.assertRaises((BookError, ZeroDivisionError), msg=text):
                number(text)

    def test_a_rate_says_percent(self):
        self.assertEqual(rate("33 1/3 %"), F(1, 3))
        self.assertEqual(rate("2.9%"), F(29, 1000))
        with self.assertRaises(BookError):
            rate("0.4")

    def test_money_may_name_the_currency_of_the_book(self):
        self.assertEqual(reference.money("EUR 13.80", "EUR"), F(69, 5))
        self.assertEqual(reference.money("13.80 EUR", "EUR"), F(69, 5))
        with self.assertRaises(BookError):
            reference.money("13.80 USD", "EUR")

    def test_units_are_exact(self):
        # checks.md 1.1: NIST HB 44 App. C; UK Weights and Measures Act 1985 Sch. 1; GNU units 2.22
        table = {"1 lb": "453.59237", "1 oz": "28.349523125", "1 stick": "113.3980925", "1 US gallon": "3785.411784",
                 "1 US quart": "946.352946", "1 US pint": "473.176473", "1 US cup": "236.5882365",
                 "1 US fl oz": "29.5735295625", "1 US tbsp": "14.78676478125", "1 US tsp": "4.92892159375",
                 "1 imperial gallon": "4546.09", "1 imperial quart": "1136.5225", "1 imperial pint": "568.26125",
                 "1 imperial fl oz": "28.4130625", "1 imperial cup": "284.130625", "1 label cup": "240",
                 "1 dozen": "12", "1 gross": "144", "1 baker's dozen": "13"}
        for text, size in table.items():
            self.assertEqual(quantity(text, "us").amount, F(size), text)

    def test_a_bare_cup_follows_the_measures_of_the_shop(self):
        # checks.md 1.1, 21 CFR 101.9(b)(5)(viii): 240 mL, 15 mL, 5 mL, 30 mL
        for measures, cup, tbsp in (("us", "236.5882365", "14.78676478125"), ("label", "240", "15"), ("metric", "250", "15"),
                                    ("australian", "250", "20"), ("imperial", "284.130625", "15")):
            self.assertEqual(quantity("1 cup", measures).amount, F(cup), measures)
            self.assertEqual(quantity("1 tbsp", measures).amount, F(tbsp), measures)
        self.assertEqual(quantity("1 fl oz", "label").amount, 30)
        for measures in ("metric", "australian"):
            with self.assertRaises(BookError):
                quantity("1 pint", measures)

    def test_a_dishers_number_is_its_portions_per_us_quart(self):
        # checks.md 3.4: No. 8 = 4 fl oz = 1/2 cup, No. 16 = 1/4 cup, No. 60 = 3.2 tsp
        us = reference.US
        self.assertEqual(quantity("#8 scoop", "metric").amount, 4 * us["fl oz"])
        self.assertEqual(quantity("#16 scoop", "us").amount, us["cup"] / 4)
        self.assertEqual(quantity("2 x #60 scoop", "us").amount, F(64, 10) * us["tsp"])

    def test_quantities_as_people_write_them(self):
        for text, kind, amount in (("1 lb 4 oz", "mass", 20 * reference.LB / 16), ("4 x 12 x 500 g", "mass", 24000), ("3", "count", 3),
                                   ("3 each", "count", 3), ("15 dozen", "count", 180), ("2 3/4 cup", "volume", F(11, 4) * 250),
                                   ("2½ kg", "mass", 2500), ("0.75 L", "volume", 750), ("1 cup 2 tbsp", "volume", 280),
                                   ("2 x 1 lb 4 oz", "mass", 40 * reference.LB / 16), ("60½ g", "mass", F(121, 2)),
                                   ("1/2 dozen", "count", 6), ("3 US fl oz", "volume", 3 * reference.US["fl oz"])):
            self.assertEqual(quantity(text, "metric")[:2], (kind, amount), text)
        for text in ("1 lb 4 cup", "2 cups x", "1 furlong", "g", "2 ounce cup"):
            with self.assertRaises(BookError, msg=text):
                quantity(text, "us")

    def test_the_density_row_of_the_quantitys_own_unit_is_used(self):
        # checks.md 2, SR28 19335: sugar 1 tsp = 4.2 g, 1 cup = 200 g, not proportional
        book = Book(a_folder(ingredients={"sugar": {"density": ["200 g / cup", "4.2 g per tsp"]}}))
        for text, grams in (("3 tsp", F(63, 5)), ("1/2 cup", 100), ("1 tbsp", F(200, 16))):
            self.assertEqual(reference.ingredient_grams(book, "sugar", book.quantity(text)), grams, text)


class Prices(unittest.TestCase):
    def test_offer_in_force_and_cheapest_usable_unit(self):
        folder = a_folder(ingredients={"flour": {"yield": "50 %"}}, prices=[
            {"supplier": "supplier 1", "tax included": "25 %", "offers": [
                {"item": "flour", "pack": "12 x 500 g", "price": "60.00", "from": "2026-01-01"},
                {"item": "flour", "pack": "6 kg", "price": "61.00", "freight": "1.50", "from": "2026-05-01"},
                {"item": "flour", "pack": "6 kg", "price": "1.00", "from": "2026-11-26"},
                {"item": "flour", "pack": "2 kg", "price": "1.00", "from": "2026-01-01", "until": "2026-11-24"}]},
            {"supplier": "supplier 2", "offers": [
                {"item": "flour", "pack": "1 kg", "price": "9.00", "yield": "60 %"}]}])
        # supplier 1: (61.00 + 1.50) / 1.25 = 50.00 for 6 kg, 8.3333 a kg, 16.6667 usable; supplier 2: 9 / 0.6 = 15.00 usable
        best = reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25"))
        self.assertEqual((best.supplier, best.cost, best.usable_unit), ("supplier 2", 9, F(15, 1000)))
        folder["ingredients"]["flour"]["prefer"] = "supplier 1"
        best = reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25"))
        self.assertEqual((best.cost, best.ap_unit, best.usable_unit), (50, F(50, 6000), F(100, 6000)))

    def test_a_newest_offer_that_has_ended_hides_the_older_one(self):
        folder = a_folder(prices=offers({"item": "flour", "pack": "1 kg", "price": "1.00"},
                                        {"item": "flour", "pack": "1 kg", "price": "2.00", "from": "2026-01-01", "until": "2026-02-01"}))
        with self.assertRaises(BookError):
            figures(folder)

    def test_of_two_with_the_same_day_the_later_one_and_of_equals_the_first(self):
        folder = a_folder(prices=offers({"item": "flour", "pack": "1 kg", "price": "1.00"}, {"item": "flour", "pack": "1 kg", "price": "3.00"},
                                        {"item": "flour", "pack": "2 kg", "price": "6.00"}))
        best = reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25"))
        self.assertEqual((best.content, best.cost), (1000, 3))

    def test_w15_price_of_a_pound(self):
        # W15 VCC Learning Centre, SEEN: 20 lb flour 10.50 -> 0.525 a pound
        folder = a_folder(prices=offers({"item": "flour", "pack": "20 lb", "price": "10.50"}))
        self.assertEqual(figures(folder)["ingredient/flour/unit"] * reference.LB, F(21, 40))

    def test_w14_edible_portion_cost(self):
        # W14 VCC Learning Centre (inputs SEEN, exact value recomputed): 10 lb apples 5.60, yield 75 % -> 112/15 for 10 lb
        folder = a_folder(ingredients={"flour": {"yield": "75 %"}}, prices=offers({"item": "flour", "pack": "10 lb", "price": "5.60"}))
        best = reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25"))
        self.assertEqual(best.usable_unit * 10 * reference.LB, F(112, 15))


    def test_landed(self):
        # By hand: delivery 7.50 over a usual order of 120.00 is 1/16: 10.00 · 17/16 + 0.40 = 11.025; the deposit is outlay only
        terms = {"delivery": "7.50", "usual order": "120.00"}
        folder = a_folder(prices=offers({"item": "flour", "pack": "1 kg", "price": "10.00", "freight": "0.40", "deposit": "2.00"}, terms=terms))
        found = figures(folder)
        self.assertEqual((found["ingredient/flour/unit"] * 1000, found["ingredient/flour/outlay"]), (F("11.025"), F("12.4")))
        terms["free delivery from"] = "120.00"
        self.assertEqual(figures(folder)["ingredient/flour/unit"] * 1000, F("10.40"))
        terms["free delivery from"] = "120.01"
        self.assertEqual(figures(folder)["ingredient/flour/unit"] * 1000, F("11.025"))

    def test_which_offer_a_cost_goes_by(self):
        near = {"supplier": "near", "offers": [{"item": "flour", "pack": "1 kg", "price": "10.00", "from": "2026-01-01"},
                                               {"item": "flour", "pack": "5 kg", "price": "45.00"}]}
        far = {"supplier": "far", "offers": [{"item": "flour", "pack": "25 kg", "price": "200.00"}]}
        row = {"item": "flour", "pack": "1 kg", "packs": "2", "paid": "23.00", "deposit": "1.00"}
        bought = {"bought": "2026-03-01", "supplier": "near", "items": [row]}
        folder = a_folder(ingredients={"flour": {}}, prices=[near, far], purchases=[bought])

        def a_kilogram(on="2026-11-25"):
            return reference.choose_offer(Book(folder), "flour", reference.date(on)).ap_unit * 1000

        self.assertEqual(a_kilogram(), 11)                        # (23.00 - 1.00) / 2, and not 8.00 from far
        self.assertEqual(a_kilogram("2026-02-28"), 8)             # nothing bought yet: the cheapest
        near["offers"].append({"item": "flour", "pack": "1 kg", "price": "12.00", "from": "2026-06-01"})
        self.assertEqual((a_kilogram(), a_kilogram("2026-05-31")), (12, 11))       # the newest of list and purchase
        row["pack"] = "2 kg"                                      # that pack is an offer itself from then on
        self.assertEqual(a_kilogram(), F(11, 2))
        near["offers"].append({"item": "flour", "pack": "2 kg", "price": "30.00", "from": "2026-07-01", "until": "2026-08-01"})
        self.assertEqual(a_kilogram(), 12)                        # no more: 1 kg is the nearest pack of near's
        row["stopgap"] = "yes"
        self.assertEqual(a_kilogram(), 8)
        folder["ingredients"]["flour"]["prefer"] = "near"
        self.assertEqual(a_kilogram(), 9)
        del row["stopgap"], folder["ingredients"]["flour"]["prefer"]
        folder["purchases"] = []
        far["terms"] = {"delivery": "1.00", "only compared": "yes"}
        self.assertEqual(a_kilogram(), 9)
        near["offers"][1]["only compared"] = "yes"
        self.assertEqual(a_kilogram(), 12)
        folder["ingredients"]["flour"]["prefer"] = "far"          # only compared: never in a cost
        self.assertEqual(a_kilogram(), 12)

    def test_of_one_day_the_larger_purchase(self):
        rows = [{"item": "flour", "pack": "1 kg", "packs": "1", "paid": "9.00"}, {"item": "flour", "pack": "2 kg", "packs": "1", "paid": "21.00"}]
        folder = a_folder(purchases=[{"bought": "2026-03-01", "supplier": "supplier 1", "items": rows}])
        best = reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25"))
        self.assertEqual((best.content, best.cost), (2000, 21))
        folder["purchases"].append({"bought": "2026-03-02", "supplier": "supplier 1", "tax included": "20 %", "items": [
            {"item": "flour", "pack": "1 kg", "packs": "2", "paid": "19.20"}]})
        self.assertEqual(reference.choose_offer(Book(folder), "flour", reference.date("2026-11-25")).cost, 8)


class Formulas(unittest.TestCase):
    def test_w13_cost_of_a_trimmed_line(self):
        # W13 openwa.pressbooks.pub/bakeryandbusinessmath ch. 11, DERIVED: 3 oz peppers, 1.67 / lb, 71 % -> 501/1136
        folder = a_folder(ingredients={"peppers": {}}, prices=offers({"item": "peppers", "pack": "1 lb", "price": "1.67", "yield": "71 %"}),
                          formulas=[{"formula": "bun", "makes": "1", "lines": {"peppers": "3 oz"}}])
        self.assertEqual(figures(folder)["line/1/ingredients"], F(501, 1136))

    def test_w6_quantity_to_buy(self):
        # W6 same book, ch. 25, SEEN: 32 oz pears at 78 % -> 41.03 oz, exact 1600/39
        folder = a_folder(formulas=[{"formula": "bun", "makes": "1", "lines": {"flour": {"amount": "32 oz", "yield": "78 %"}}}])
        self.assertEqual(figures(folder)["ingredient/flour/bought"] / reference.LB * 16, F(1600, 39))

    def test_as_bought_counts_the_trim_the_other_way(self):
        # W5 same, SEEN: 5000 g strawberries at 87 % -> 4350 g
        folder = a_folder(formulas=[{"formula": "bun", "makes": "1", "lines": {"flour": {"amount": "5000 g as bought", "yield": "87 %"}}}])
        found = figures(folder)
        self.assertEqual((found["ingredient/flour/usable"], found["ingredient/flour/bought"]), (4350, 5000))
        self.assertEqual((found["loss/in the piece"], found["loss/trim"]), (F("43.50"), F("6.50")))

    def test_w67_bakers_percentages(self):
        # W67 "Baker's Math" worksheet, SEEN: 73 x 390 g at 100/67/2/1 -> flour 284700/17 g, the sum 28,470 g exactly
        names = ["flour", "water", "salt", "yeast"]
        folder = a_folder(ingredients={name: {} for name in names},
                          prices=offers(*[{"item": name, "pack": "1 kg", "price": "1.00"} for name in names]),
                          formulas=[{"formula": "bun", "percent of": "flour", "makes": "73", "portion": "390 g",
                                     "lines": {"flour": "100 %", "water": "67 %", "salt": "2 %", "yeast": "1 %"}}],
                          orders=an_order({"item": "bun", "count": "73"}))
        found = figures(folder)
        usable = {name: found[f"ingredient/{name}/usable"] for name in names}
        self.assertEqual(usable["flour"], F(284700, 17))
        self.assertEqual(usable["water"], F(284700, 17) * F(67, 100))
        self.assertEqual(sum(usable.values()), 28470)
        self.assertEqual(found["formula/bun/batches"], 1)

    def test_w68_percentages_of_a_base_by_amounts(self):
        # W68 "Baker's math" slides, SEEN: 100 / 1.75 / 2 / 0.375 / 58 of 40 lb flour -> salt 0.7 lb; here two flours are the base
        folder = a_folder(ingredients={name: {} for name in ("white", "dark", "salt")},
                          prices=offers(*[{"item": name, "pack": "1 kg", "price": "1.00"} for name in ("white", "dark", "salt")]),
                          formulas=[{"formula": "bun", "percent of": ["white", "dark"], "makes": "1",
                                     "lines": {"white": "30 lb", "dark": "10 lb", "salt": "1.75 %"}}])
        self.assertEqual(figures(folder)["ingredient/salt/usable"], reference.LB * F(7, 10))

    def test_w71_scaling_with_bake_loss(self):
        # W71, DERIVED identity: 400 g baked at 12 % loss -> 400/0.88 g of dough, not 448
        folder = a_folder(formulas=[{"formula": "bun", "lines": {"flour": "1 kg"}, "losses": {"baking": "12 %"},
                                     "sold as": {"loaf": {"holds": "400 g"}}}], orders=an_order({"item": "bun", "as": "loaf", "count": "1"}))
        self.assertEqual(figures(folder)["ingredient/flour/usable"], F(400) / F("0.88"))

    def test_pieces_by_weight_with_every_loss(self):
        # By hand: 1000 g, 10 % left in the bowl, 30 g each -> n = 30; 20 % baked off -> 24 g; 25 % broken
        formula = {"formula": "bun", "portion": "30 g", "lines": {"flour": "1 kg"}, "batches": "half", "largest mix": "2",
                   "losses": {"bowl": "10 %", "baking": "20 %", "breakage": "25 %"},
                   "oven": {"use": "deck", "minutes": "10", "holds": "36"}}
        folder = a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "70"}),
                          shop={"ovens": {"deck": {"power": "6 kW", "duty": "50 %", "preheat": "20 min"}}, "energy": {"electricity": "0.20 / kWh"}})
        world = World(Book(folder), reference.date("2026-11-25"), [], process=True, rounding=False)
        self.assertEqual((world.pieces_per_batch("bun"), world.finished_weight("bun")), (30, 24))
        found = figures(folder)
        # 70 good -> 70/0.75 = 93.33 -> 94 started -> 94/30 = 3.1333 -> 3 1/2 batches, 2 mixes, 94/36 -> 3 loads
        self.assertEqual([found[f"formula/bun/{key}"] for key in ("demand", "started", "batches", "mixes", "loads")], [70, 94, F(7, 2), 2, 3])
        self.assertEqual(found["formula/bun/leftover"], F(7, 2) - F(94, 30))
        self.assertEqual(found["line/1/ingredients"], 35)
        # 3 loads of 10 min at 6 kW · 50 % · 0.20 = 0.60 / h, and 20 min of preheat at full power, 1.20 / h
        self.assertEqual(found["line/1/energy"], F("0.30") + F("0.40"))
        # in the piece 70 · 30 g = 2.1 kg; with losses 2.1/(0.9 · 0.75); the rest is rounding up
        self.assertEqual((found["loss/in the piece"], found["loss/trim"]), (21, 0))
        self.assertEqual(found["loss/process"], F(21) / F("0.675") - 21)
        self.assertEqual(found["loss/rounding"], 35 - F(21) / F("0.675"))

    def test_a_yield_above_1_is_all_in_the_piece(self):
        # By hand: 500 g of cooked rice at 250 % is 200 g bought, 2.00; nothing is trimmed
        folder = a_folder(ingredients={"flour": {"yield": "250 %"}}, formulas=[{"formula": "bun", "makes": "1", "lines": {"flour": "500 g"}}])
        found = figures(folder)
        self.assertEqual((found["loss/in the piece"], found["loss/trim"], found["line/1/ingredients"]), (2, 0, 2))

    def test_what_is_done_per_batch_is_paid_for_each_started_one(self):
        # By hand: 15 of 10 a batch are 1 1/2 batches: 2 · 2.00 of labour and 2 liners; in proportion 3.00, and 1 1/2 liners are 2
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "labour": [{"by": "baker", "minutes": "6"}],
                   "consumables": [{"item": "liner", "amount": "4", "per": "batch"}]}
        folder = a_folder(formulas=[formula], supplies={"liner": {}}, orders=an_order({"item": "bun", "count": "15"}),
                          prices=offers({"item": "flour", "pack": "1 kg", "price": "10.00"}, {"item": "liner", "pack": "1", "price": "0.50"}))
        found = figures(folder)
        self.assertEqual((found["line/1/labour"], found["line/1/consumables"], found["line/1/ingredients"]), (4, 4, 15))
        formula["labour"][0]["scales"] = formula["consumables"][0]["scales"] = "yes"
        found = figures(folder)
        self.assertEqual((found["line/1/labour"], found["line/1/consumables"]), (3, 3))
        formula["labour"][0]["per"] = "load"
        with self.assertRaises(BookError):
            figures(folder)

    def test_whole_packs_are_shared_over_their_uses(self):
        folder = a_folder(ingredients={"flour": {"buy": "whole packs"}}, formulas=[
            {"formula": "bun", "makes": "1", "lines": {"flour": "300 g"}}, {"formula": "roll", "makes": "1", "lines": {"flour": "900 g"}}],
            orders=an_order({"item": "bun", "count": "1"}, {"item": "roll", "count": "1"}))
        found = figures(folder)
        self.assertEqual((found["line/1/ingredients"], found["line/2/ingredients"]), (5, 15))
        self.assertEqual((found["ingredient/flour/packs"], found["ingredient/flour/outlay"]), (2, 20))
        self.assertEqual(found["loss/rounding"], 8)

    def test_a_formula_in_two_formulas_is_shared_by_demand(self):
        # By hand: 2 shells in each of 3 sandwiches and 4 sold alone: D = 10, started 10, one batch of 10.00
        folder = a_folder(formulas=[{"formula": "pair", "makes": "1", "lines": {"bun": "2"}}, {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}}],
                          orders=an_order({"item": "pair", "count": "3"}, {"item": "bun", "count": "4"}))
        found = figures(folder)
        self.assertEqual((found["formula/bun/demand"], found["line/1/ingredients"], found["line/2/ingredients"]), (10, 6, 4))

    def test_a_mass_of_pieces_goes_through_their_finished_weight(self):
        # 1 kg makes 10, 20 % baked off: 80 g each; 120 g of them are 1 1/2 pieces
        folder = a_folder(formulas=[{"formula": "crumb", "makes": "1", "lines": {"bun": "120 g"}},
                                    {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "losses": {"baking": "20 %"}}],
                          orders=an_order({"item": "crumb", "count": "1"}))
        found = figures(folder)
        self.assertEqual((found["formula/bun/demand"], found["formula/bun/started"]), (F(3, 2), 2))
        # without losses a piece weighs 100 g: 1.2 pieces of 1.00
        self.assertEqual(found["loss/in the piece"], F(12, 10))


KEPT = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "batches": "whole", "leftover": "kept",
        "labour": [{"by": "baker", "minutes": "6"}, {"by": "baker", "minutes": "60", "per": "order"}]}


class Kept(unittest.TestCase):
    def cost(self, formula, count, item="bun", *others, **sold):
        folder = a_folder(formulas=[{**formula, **sold}, *others], orders=an_order({"item": item, "count": str(count)}))
        return figures(folder)["line/1/cost"]

    def test_one_batch_where_nothing_else_is_said(self):
        # By hand: 10.00 of flour and 2.00 of labour give 10: 1.20 each, however many are taken; each order that
        # takes of it pays what is done per order once: 20.00
        self.assertEqual([self.cost(KEPT, count) for count in (1, 10, 15)], [F("21.20"), 32, 38])

    def test_its_standard_run(self):
        # By hand: 25 good, a fifth broken: ceil(25 / 0.8) = 32 begun, 3.2 batches, so 4; all of it portioned: 40 begun, 32 good;
        # flour 40.00, 4 batches of 2.00: 48.00 over 32; and 20.00 of the order
        formula = {**KEPT, "standard run": "25", "losses": {"breakage": "20 %"}}
        self.assertEqual(self.cost(formula, 7), 7 * F("1.50") + 20)

    def test_not_the_run_of_the_shop(self):
        folder = a_folder(formulas=[copy.deepcopy(KEPT)], orders=an_order({"item": "bun", "count": "1"}), shop={"standard run": "100"})
        folder["formulas"][0]["labour"][0]["per"] = "mix"
        folder["formulas"][0]["largest mix"] = "2"
        # By hand: the full mix is 2 batches: 20.00 and once 2.00 over 20; and 20.00 of the order
        self.assertEqual(figures(folder)["line/1/cost"], F("21.10"))

    def test_a_filling_by_the_pot(self):
        # By hand: 1 kg boils down to 800 g; a full pot is 2 batches: 20.00, once 30 min at 20.00 / h: 30.00 for 1600 g
        pot = {"formula": "filling", "lines": {"flour": "1 kg"}, "losses": {"baking": "20 %"}, "leftover": "kept", "largest mix": "2",
               "labour": [{"by": "baker", "minutes": "30", "per": "mix"}]}
        pie = {"formula": "pie", "makes": "1", "lines": {"filling": "160 g"}}
        self.assertEqual(self.cost(pot, 1, "pie", pie), 3)
        self.assertEqual(self.cost(pot, 100, "pie", pie), 300)
        # two pots an hour at 12.00 per labour hour: 30 min of 6.00 over ten pies
        folder = a_folder(formulas=[pot, pie], orders=an_order({"item": "pie", "count": "1"}), shop={"overhead": [{"name": "rent", "rate": "12.00 per labour hour"}]})
        self.assertEqual(figures(folder)["line/1/overhead"], F("0.60"))

    def test_what_goes_into_it_is_made_for_its_run(self):
        # By hand: a run of 10 takes 10 half crumbs: 5 whole ones of a batch of 4, so 1 1/4, in whole batches 2, at 1.00
        crumb = {"formula": "crumb", "makes": "4", "lines": {"flour": "100 g"}, "batches": "whole"}
        formula = {"formula": "bun", "makes": "10", "lines": {"crumb": "5"}, "leftover": "kept"}
        self.assertEqual(self.cost(formula, 3, "bun", crumb), 3 * F("0.20"))


class Costs(unittest.TestCase):
    def test_w54_labour_cost(self):
        # W54 Controlling Costs in Foodservice p. 25, SEEN: cook 10 min at 10.00, server 3 at 3.50, washer 1 at 8.00; 20 % -> 1.975, 0.395;
        # 0.175 -> 0.18 half up, which a double cannot do
        workers = {"cook": "10.00 / h", "server": "3.50 / h", "washer": "8.00 / h"}
        tasks = [{"by": "cook", "minutes": "10"}, {"by": "server", "minutes": "3"}, {"by": "washer", "minutes": "1"}]
        formula = {"formula": "bun", "makes": "1", "lines": {"flour": "65 g"}, "labour": tasks}
        folder = a_folder(formulas=[formula], shop={"labour": {name: {"wage": wage, "on-cost": "20 %"} for name, wage in workers.items()}})
        self.assertEqual(figures(folder)["line/1/labour"], F("1.975") * F("1.2"))
        self.assertEqual(round_half_up(F("0.175"), CENT), F("0.18"))

    def test_w55_prime_cost_pricing(self):
        # W55 same p. 26, SEEN: food 3.75, wages 2.00, on-cost 20 % -> 6.15; prime cost 50 % -> price 12.30
        formula = {"formula": "bun", "makes": "1", "lines": {"flour": "375 g"}, "labour": [{"by": "baker", "minutes": "6"}]}
        folder = a_folder(formulas=[formula], shop={"labour": {"baker": {"wage": "20.00 / h", "on-cost": "20 %"}}, "price": {"given": "12.30"}})
        found = figures(folder)
        self.assertEqual((found["line/1/cost"], found["line/1/prime cost"]), (F("6.15"), F(1, 2)))

    def test_w49_energy(self):
        # W49 OpenStax College Physics 2e m42714, SEEN: 60 W for 1000 h at 0.12 / kWh -> 7.20
        formula = {"formula": "bun", "makes": "1", "lines": {"flour": "1 g"}, "oven": {"use": "lamp", "minutes": "60000", "holds": "1"}}
        folder = a_folder(formulas=[formula], shop={"ovens": {"lamp": {"power": "60 W"}}, "energy": {"electricity": "0.12 / kWh"}})
        self.assertEqual(figures(folder)["line/1/energy"], F("7.20"))

    def test_w42_overhead_by_the_labour_hour(self):
        # W42 OpenStax Managerial Accounting m68135, SEEN: 2.00 / h; 350k h over 140k units -> 5 each; 3.50 + 10 + 5 = 18.50
        formula = {"formula": "bun", "makes": "1", "lines": {"flour": "350 g"}, "labour": [{"by": "baker", "minutes": "150"}]}
        folder = a_folder(formulas=[formula], shop={"labour": {"baker": {"wage": "4.00 / h"}}, "overhead": [{"name": "all", "rate": "2.00 per labour hour"}]})
        found = figures(folder)
        self.assertEqual((found["line/1/overhead"], found["line/1/cost"]), (5, F("18.50")))

    def test_supplies_are_rounded_up_for_each_entry(self):
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "consumables": [{"item": "bag", "amount": "1/4", "per": "piece"}],
                   "sold as": {"box": {"holds": "2", "packing": {"bag": "1/2", "box": "1"}}}}
        folder = a_folder(supplies={"bag": {"buy": "whole packs"}, "box": {}}, formulas=[formula], orders=an_order({"item": "bun", "as": "box", "count": "3"}),
                          prices=offers({"item": "flour", "pack": "1 kg", "price": "10.00"}, {"item": "bag", "pack": "10", "price": "2.00"},
                                        {"item": "box", "pack": "4", "price": "1.00"}))
        found = figures(folder)
        # bags: 6 pieces / 4 -> 2, 3 boxes / 2 -> 2: one pack of 2.00, 1.00 to each use; boxes 3 at 0.25
        self.assertEqual((found["supply/bag/used"], found["line/1/consumables"], found["line/1/packaging"]), (4, 1, F("1.75")))

    def test_the_pool_is_shared_by_direct_cost(self):
        folder = a_folder(orders=an_order({"item": "bun", "count": "1"}, {"item": "bun", "count": "3"}, delivery={"distance": "10 km"}),
                          shop={"order work": [{"task": "invoice", "by": "baker", "minutes": "12"}], "delivery": {"flat": "5.00", "rate": "0.30 / km"},
                                "overhead": [{"name": "a", "rate": "1.00 per order"}, {"name": "b", "rate": "10 % of prime cost"}, {"name": "c", "rate": "6.00 per labour hour"}]})
        found = figures(folder)
        # labour 4.00, delivery 8.00; overhead 1.00 + 10 % of 4.00 + 0.2 h · 6.00 = 2.60, and 10 % of the ingredients on the line
        self.assertEqual([found[f"line/1/{key}"] for key in ("labour", "delivery", "overhead")], [1, 2, F("0.65") + F("0.1")])
        self.assertEqual(found["total/cost"], F("4") + 4 + 8 + F("2.60") + F("0.4"))


def priced(price, minutes="0", **facts):
    """One unit of 3.00 of ingredients and so many minutes at 20.00 / h."""
    formula = {"formula": "bun", "makes": "1", "lines": {"flour": "300 g"}, "labour": [{"by": "baker", "minutes": minutes}]}
    return a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "1", "price": price}, **facts.pop("order", {})), shop=facts)


class PriceOfAUnit(unittest.TestCase):
    def test_w10_food_cost_share(self):
        # W10 bakeryandbusinessmath ch. 11, SEEN: 173.89 for 200, food cost 25 % -> 0.86945 each, 3.4778
        folder = a_folder(prices=offers({"item": "flour", "pack": "1 kg", "price": "173.89"}),
                          formulas=[{"formula": "bun", "makes": "200", "lines": {"flour": "1 kg"}, "price": {"food cost": "25 %"}}])
        found = figures(folder)
        self.assertEqual((found["line/1/ingredients"], found["line/1/wanted"]), (F("0.86945"), F("3.4778")))
        self.assertEqual((found["line/1/price"], round_half_up(found["line/1/wanted"], CENT)), (F("3.48"), F("3.48")))

    def test_w57_w58_w59_food_cost_prices(self):
        # W57 Controlling Costs p. 36, DERIVED: 4.00 / 45 % = 8.888889; W58 "FSM2025 Supplement", SEEN: 36.00/24 / 35 % = 4.2857; W59 SEEN: 1.60/40 %
        for cost, share, price in (("4.00", "45 %", F(80, 9)), ("1.50", "35 %", F(30, 7)), ("1.60", "40 %", 4)):
            self.assertEqual(reference.net_price("food cost", rate(share), 0, F(cost), 0, 0, 0, 0, 0), price)

    def test_w2_w3_markup(self):
        # W2 bakeryandbusinessmath ch. 13, SEEN: 0.35 + 30 % = 0.455 -> 0.46; W3, DERIVED: 0.39 + 50 % = 0.585 -> 0.59 half up
        for cost, markup, price, rounded in (("0.35", "30 %", "0.455", "0.46"), ("0.39", "50 %", "0.585", "0.59"),
                                             ("0.97", "45 %", "1.4065", "1.41"), ("62.00", "15 %", "71.30", "71.30"), ("480", "75 %", "840", "840")):
            wanted = reference.net_price("markup", rate(markup), F(cost), 0, 0, 0, 0, 0, 0)
            self.assertEqual((wanted, round_half_up(wanted, CENT)), (F(price), F(rounded)))

    def test_margin_and_markup_table(self):
        # checks.md 6.1, DERIVED
        table = {"10 %": F(1, 9), "16 2/3 %": F(1, 5), "20 %": F(1, 4), "25 %": F(1, 3), "30 %": F(3, 7), "33 1/3 %": F(1, 2), "37.5 %": F(3, 5),
                 "40 %": F(2, 3), "50 %": 1, "60 %": F(3, 2), "66 2/3 %": 2, "75 %": 3, "80 %": 4}
        for margin, markup in table.items():
            by_margin = reference.net_price("margin", rate(margin), F(7), 0, 0, 0, 0, 0, 0)
            self.assertEqual(by_margin, reference.net_price("markup", markup, F(7), 0, 0, 0, 0, 0, 0), margin)
            self.assertEqual(by_margin, 7 * (1 + markup))

    def test_w21_realised_margin_and_markup(self):
        # W21 OpenStax Contemporary Mathematics, SEEN: 5.20 sold at 9.90 -> 90.38 % markup (and 47.4747 % margin)
        found = figures(priced({"given": "9.90"}, minutes="6.6"))
        self.assertEqual((found["line/1/cost"], found["line/1/markup"], found["line/1/margin"]), (F("5.20"), F(47, 52), F(47, 99)))

    def test_fee_gross_up(self):
        # checks.md 6.2, DERIVED: net 34.44, 2.9 %, 0.30 -> 35.777549 -> 35.78; here 3.00 of cost and a contribution of 31.44
        folder = priced({"contribution": "31.44"}, fees={"card": {"share": "2.9 %", "fixed": "0.30"}}, **{"paid by": "card"})
        found = figures(folder)
        self.assertEqual(found["line/1/wanted"], F("34.74") / F("0.971"))
        self.assertEqual((found["line/1/price"], found["total/total"]), (F("35.78"), F("35.78")))
        self.assertEqual(found["total/fee"], F("1.33762"))

    def test_the_fee_is_a_cost(self):
        # By hand: 3.00 and 0.30, 2.9 %: at a markup of 50 %, P = 1.5 · 3.30 / (1 - 1.5 · 0.029), a margin of a third
        folder = priced({"markup": "50 %"}, fees={"card": {"share": "2.9 %", "fixed": "0.30"}}, **{"paid by": "card"})
        wanted = figures(folder)["line/1/wanted"]
        self.assertEqual(wanted, F("4.95") / F("0.9565"))
        self.assertEqual((wanted - 3 - F("0.30") - F("0.029") * wanted) / wanted, F(1, 3))

    def test_a_deposit_and_the_rest_are_two_payments(self):
        for deposit, fee in (("0 %", "0.30"), ("1 %", "0.60"), ("99 %", "0.60"), ("100 %", "0.30")):
            folder = priced({"markup": "0 %"}, fees={"card": {"fixed": "0.30"}}, order={"deposit": deposit}, **{"paid by": "card"})
            found = figures(folder)
            self.assertEqual((found["line/1/fixed fee"], found["total/fee"], found["line/1/wanted"]), (F(fee), F(fee), 3 + F(fee)), deposit)

    def test_prime_cost_target(self):
        # W55 the other way round: food 3.00 and 6 minutes, 2.00; at 40 % 12.50
        self.assertEqual(figures(priced({"prime cost": "40 %"}, minutes="6"))["line/1/wanted"], F("12.50"))

    def test_a_discount_in_the_price(self):
        # By hand: 3.00 / 0.8 = 3.75; less 20 % it is 3.00 again, and the margin after it 0
        found = figures(priced({"markup": "0 %"}, order={"discount": {"share": "20 %", "in the price": "yes"}}))
        self.assertEqual([found[key] for key in ("line/1/wanted", "line/1/price", "total/discount", "total/total", "line/1/margin after discount")],
                         [F("3.75"), F("3.75"), F("0.75"), 3, 0])
        found = figures(priced({"given": "3.75"}, order={"discount": {"share": "4 %"}}))
        self.assertEqual((found["total/total"], found["line/1/margin after discount"]), (F("3.60"), F(1, 6)))

    def test_overhead_that_varies(self):
        # By hand: 1.00 of it varies, 2.00 does not: contribution 10.00 - 3.00 - 1.00
        rates = [{"name": "gas", "rate": "1.00 per piece", "variable": "yes"}, {"name": "rent", "rate": "2.00 per piece"}]
        found = figures(priced({"given": "10.00"}, overhead=rates))
        self.assertEqual((found["line/1/overhead"], found["line/1/contribution"]), (3, 6))

    def test_w37_the_same_algebra(self):
        # W37 OpenStax m68116, SEEN: 24,000 after 40 % -> 40,000
        self.assertEqual(reference.net_price("contribution", F(24000), 0, 0, 0, 0, 0, F("0.4"), 0), 40000)

    def test_a_solved_price_returns_its_target_exactly(self):
        phi, tax, fixed, cost, ingredients, labour, variable = F("0.029"), F("0.19"), F("0.35"), F("11.17"), F("3.10"), F("4.25"), F("9.40")
        for target, value in (("margin", F("0.4")), ("markup", F("0.8")), ("contribution", F("2.5"))):
            price = reference.net_price(target, value, cost, ingredients, labour, variable, fixed, phi, tax)
            fee = phi * price * (1 + tax) + fixed
            realised = {"margin": (price - cost - fee) / price, "markup": (price - cost - fee) / (cost + fee), "contribution": price - fee - variable}
            self.assertEqual(realised[target], value)

    def test_a_target_out_of_reach(self):
        with self.assertRaises(BookError):
            reference.net_price("margin", F("0.97"), F(1), 0, 0, 0, 0, F("0.03"), 0)

    def test_price_points(self):
        point, cent = reference.at_price_point, CENT
        self.assertEqual(point({}, F("3.4701"), cent), F("3.48"))
        self.assertEqual(point({"to": F("0.25")}, F("3.50"), cent), F("3.50"))
        self.assertEqual(point({"to": F("0.25"), "toward": "nearest"}, F("3.62"), cent), F("3.50"))
        self.assertEqual(point({"to": F("0.25"), "toward": "nearest"}, F("3.625"), cent), F("3.75"))
        endings = {"endings": [F("0.50"), F("0.99")]}
        for price, shown in (("3.10", "3.50"), ("3.50", "3.50"), ("3.51", "3.99"), ("3.995", "4.50")):
            self.assertEqual(point(endings, F(price), cent), F(shown))

    def test_target_and_price_point_are_taken_from_the_first_level_that_has_one(self):
        folder = priced({"to": "1.00"})
        folder["shop"]["price"] = {"markup": "10 %", "endings": [".99"]}
        self.assertEqual(figures(folder)["line/1/price"], 4)      # 3.30 to the whole unit: the shop's target, the line's point


class Totals(unittest.TestCase):
    def test_vat_contained_in_a_price(self):
        # checks.md 6.3, HMRC VAT Notice 700 fractions (MEM) and worked values SEEN
        for gross, tax, part in (("60.00", "20 %", "10.00"), ("24.00", "20 %", "4.00"), ("80.00", "5 %", "3.81"), ("105", "5 %", "5"),
                                 ("117.50", "17.5 %", "17.50"), ("24.00", "17.5 %", "3.57"), ("115", "15 %", "15")):
            self.assertEqual(tax_on(F(gross), rate(tax), True, CENT), F(part))
        # W30 OpenStax, SEEN: 467.64 with 8.25 % in it -> 35.64
        self.assertEqual(tax_on(F("467.64"), rate("8.25 %"), True, CENT), F("35.64"))

    def test_sales_tax(self):
        # W27 (the printed total is wrong, the tax right), W28, W31 OpenStax, SEEN
        for net, tax, part in (("428.99", "8.25 %", "35.39"), ("34.88", "8.25 %", "2.88"), ("499.00", "8.81 %", "43.96")):
            self.assertEqual(tax_on(F(net), rate(tax), False, CENT), F(part))

    def test_en_16931_example_2(self):
        # checks.md 6.4, ubl-tc434-example2.xml, SEEN: 1460.50 at 25 % -> 365.125 -> 365.13; 1.00 at 15 % -> 0.15; -25.00 at 0 %; in all 365.28
        taxes = [tax_on(F(base), rate(tax), False, CENT) for base, tax in (("1460.50", "25 %"), ("1.00", "15 %"), ("-25.00", "0 %"))]
        self.assertEqual(taxes, [F("365.13"), F("0.15"), 0])
        self.assertEqual(F("1436.50") + sum(taxes), F("1801.78"))

    def test_en_16931_example_4(self):
        # ubl-tc434-example4.xml, SEEN: 1000 x 1.00 and 100 x 5.00 at 25 %, 500 x 5.00 at 12 % -> 4000 + 375 + 300 = 4675
        formulas = [{"formula": name, "makes": "1", "lines": {"flour": "1 g"}, **tax} for name, tax in (("a", {}), ("b", {}), ("c", {"tax": "reduced"}))]
        folder = a_folder(formulas=formulas, shop={"tax": {"rate": "25 %", "other rates": {"reduced": "12 %"}}},
                          orders=an_order({"item": "a", "count": "1000", "price": {"given": "1.00"}}, {"item": "b", "count": "100", "price": {"given": "5.00"}},
                                          {"item": "c", "count": "500", "price": {"given": "5.00"}}))
        found = figures(folder)
        self.assertEqual([found[f"total/{key}"] for key in ("subtotal", "tax", "total", "net")], [4000, 675, 4675, 4000])
        # example5, SEEN: an allowance of 150 and a charge of 150 change nothing; half prepaid leaves 2337.50
        folder["orders"][0].update({"rush": "150.00", "discount": "150.00", "deposit": "50 %"})
        found = figures(folder)
        self.assertEqual((found["total/total"], found["total/balance"]), (4675, F("2337.50")))

    def test_en_16931_example_8_and_discount_price(self):
        # ubl-tc434-example8.xml, SEEN: 908.91 at 21 % -> 190.87; sample-discount-price.xml, SEEN: 100 x 0.1212 = 12.12, 3.03
        self.assertEqual(tax_on(F("908.91"), rate("21 %"), False, CENT), F("190.87"))
        self.assertEqual(tax_on(F("12.12"), rate("25 %"), False, CENT), F("3.03"))

    def test_tax_per_line_and_per_document(self):
        # By hand: three lines of 0.10 at 5 %: 0.005 each -> 0.01 each, 0.03; per document 0.015 -> 0.02
        lines = [{"item": "bun", "count": "1", "price": {"given": "0.10"}}] * 3
        for rounded, tax in (("per line", "0.03"), ("per document", "0.02")):
            folder = a_folder(orders=an_order(*lines), shop={"tax": {"rate": "5 %", "rounded": rounded}})
            self.assertEqual(figures(folder)["total/tax"], F(tax))

    def test_canadian_cash_rounding(self):
        # checks.md 6.5, Canada Budget 2012, SEEN: 1.83 + 2.86, 5 % -> 4.92, in cash 4.90
        folder = a_folder(orders=an_order({"item": "bun", "count": "1", "price": {"given": "1.83"}}, {"item": "bun", "count": "1", "price": {"given": "2.86"}}),
                          shop={"currency": "CAD", "tax": {"rate": "5 %"}})
        total = figures(folder)["total/total"]
        self.assertEqual((total, reference.cash_total(total, F("0.05"))), (F("4.92"), F("4.90")))
        # OPC Quebec and CTV (CRA guideline), SEEN; Danish 50 øre, DERIVED
        for total, step, cash in (("5.98", "0.05", "6.00"), ("5.97", "0.05", "5.95"), ("1.01", "0.05", "1.00"), ("1.02", "0.05", "1.00"), ("1.03", "0.05", "1.05"),
                                  ("1.07", "0.05", "1.05"), ("1.08", "0.05", "1.10"), ("772.72", "0.05", "772.70"), ("12.24", "0.50", "12.00"),
                                  ("12.25", "0.50", "12.50"), ("12.74", "0.50", "12.50"), ("12.75", "0.50", "13.00")):
            self.assertEqual(reference.cash_total(F(total), F(step)), F(cash), total)

    def test_w46_largest_remainder(self):
        # W46 OpenStax m68085, DERIVED: 40,000 over 42,000 and 4,000 gal; over 104,500 and 50,500
        self.assertEqual(reference.apportion(F(40000), [42000, 4000], CENT), [F("36521.74"), F("3478.26")])
        self.assertEqual(reference.apportion(F(40000), [104500, 50500], CENT), [F("26967.74"), F("13032.26")])
        self.assertEqual(reference.apportion(F("0.03"), [1, 1], CENT), [F("0.02"), F("0.01")])
        self.assertEqual(reference.apportion(F("-0.03"), [1, 1], CENT), [F("-0.02"), F("-0.01")])
        self.assertEqual(reference.apportion(F("5"), [0, 0], CENT), [5, 0])

    def test_the_steps_of_a_quote_in_their_order(self):
        # W32 OpenStax, SEEN (75.80 less 25 % = 56.85); the rest by hand. Below the minimum before any discount: topped up
        # to 100.00, no discount; rush 10 % of the goods, 7.58
        folder = a_folder(orders=an_order({"item": "bun", "count": "1", "price": {"given": "75.80"}}, discount="25 %"))
        self.assertEqual(figures(folder)["total/total"], F("56.85"))
        folder["shop"].update({"minimum order": "100.00", "rush": {"within": "3 days", "surcharge": "10 %"}, "deposit": "30 %"})
        folder["orders"][0].update({"due": "2026-11-28", "delivery": {"charge": "7.00"}})
        keys = ("subtotal", "discount", "minimum", "rush", "delivery", "total", "deposit", "balance")
        found = figures(folder)
        self.assertEqual([found[f"total/{key}"] for key in keys],
                         [F("75.80"), 0, F("24.20"), F("7.58"), 7, F("114.58"), F("34.37"), F("80.21")])
        # 120.00: 25 % would be 30.00, which goes below the minimum; 20.00 does not
        folder["orders"][0]["lines"][0]["price"] = {"given": "120.00"}
        found = figures(folder)
        self.assertEqual([found[f"total/{key}"] for key in keys], [120, 20, 0, 12, 7, 119, F("35.70"), F("83.30")])

    def test_t12_tax_on_delivery(self):
        # T12 California tax annotation 557.0111, SEEN: goods 15.00 of which 5.00 taxable, delivery 3.50: 1.17 of it is taxable;
        # of exempt food only, none
        formulas = [{"formula": "dish", "makes": "1", "lines": {"flour": "1 g"}}, {"formula": "loaf", "makes": "1", "lines": {"flour": "1 g"}, "tax": "food"}]
        folder = a_folder(formulas=formulas, shop={"tax": {"rate": "10 %", "other rates": {"food": "0 %"}}},
                          orders=an_order({"item": "loaf", "count": "1", "price": {"given": "10.00"}}, {"item": "dish", "count": "1", "price": {"given": "5.00"}},
                                          delivery={"charge": "3.50"}))
        found = figures(folder)
        self.assertEqual((found["tax/1/10/taxable"], found["tax/0/taxable"], found["tax/1/10/tax"]), (F("6.17"), F("12.33"), F("0.62")))
        del folder["orders"][0]["lines"][1]
        self.assertEqual(figures(folder)["total/tax"], 0)

    def test_something_returned_has_no_part_of_the_delivery(self):
        # By hand: 12.00 at 10 %, 8.00 at 5 % and 10.00 of these 8.00 returned: the delivery goes 12 : 8, and 1.00 for all
        formulas = [{"formula": name, "makes": "1", "lines": {"flour": "1 g"}, **tax} for name, tax in (("a", {}), ("b", {"tax": "reduced"}))]
        folder = a_folder(formulas=formulas, shop={"tax": {"rate": "10 %", "other rates": {"reduced": "5 %"}}},
                          orders=an_order({"item": "a", "count": "1", "price": {"given": "12.00"}}, {"item": "b", "count": "1", "price": {"given": "8.00"}},
                                          {"text": "returned", "count": "2", "price": "-2.50", "tax": "reduced"},
                                          {"text": "hire", "count": "1", "price": "1.00", "cost": "0.40"}, delivery={"charge": "2.10"}))
        found = figures(folder)
        # weights 13.00 : 8.00 of 2.10
        self.assertEqual((found["tax/1/10/taxable"], found["tax/1/20/taxable"]), (F("14.30"), F("3.80")))
        self.assertEqual((found["total/subtotal"], found["total/revenue"], found["total/cost"]), (16, F("18.10"), F("0.02") + F("0.40")))

    def test_both_ways_and_the_drivers_time(self):
        # By hand: 5.00 + 2 · 10 km · 0.30 + 40 min at 20.00 / h
        folder = a_folder(orders=an_order({"item": "bun", "count": "1"}, delivery={"distance": "10 km", "both ways": "yes", "time": "40 min"}),
                          shop={"delivery": {"flat": "5.00", "rate": "0.30 / km", "driver": "baker"}})
        self.assertEqual(figures(folder)["line/1/delivery"], 11 + F(40, 3))

    def test_delivery_at_cost_grossed_up(self):
        # By hand: 9.70 / (1 - 3 % · 1) = 10.00; with a contained tax of 25 %: 9.70 / (1 - 0.0375) · 1.25 = 12.597 -> 12.60
        folder = a_folder(orders=an_order({"item": "bun", "count": "1"}, delivery={"charge": "at cost"}),
                          shop={"delivery": {"flat": "9.70"}, "fees": {"card": {"share": "3 %"}}, "paid by": "card"})
        self.assertEqual(figures(folder)["total/delivery"], 10)
        folder["shop"]["tax"] = {"rate": "25 %", "prices": "with"}
        self.assertEqual(figures(folder)["total/delivery"], F("12.60"))

    def test_delivery_at_cost_over_two_classes(self):
        # By hand: prices with tax, 10 % and 25 % in the proportion 1 : 1: of 1 charged 1/2.2 + 1/2.5 is left: 9.41 / 0.8545.. = 11.0117 -> 11.02
        formulas = [{"formula": name, "makes": "1", "lines": {"flour": "1 g"}, **tax} for name, tax in (("a", {}), ("b", {"tax": "high"}))]
        folder = a_folder(formulas=formulas, shop={"delivery": {"flat": "9.41"}, "tax": {"rate": "10 %", "prices": "with", "other rates": {"high": "25 %"}}},
                          orders=an_order(*[{"item": name, "count": "1", "price": {"given": "5.00"}} for name in "ab"], delivery={"charge": "at cost"}))
        self.assertEqual(figures(folder)["total/delivery"], F("11.02"))


class Tiers(unittest.TestCase):
    def test_tiers_are_the_most_that_any_count_needs(self):
        # By hand: whole batches of 10 at 10.00: one costs 10.00, 4 each 2.50, 7 each 1.43, 11 each 20.00 / 11 -> 1.82, 16 each 1.25.
        # From 1 (to 3) 10.00; from 4 (to 6) 2.50; from 7 (to 28) 1.82, for the 11. 2 or 3 cost no more than 4: 10.00; 5 and 6
        # cost 12.50 and 15.00 but no more than 7: 12.74, so 6 does.
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "batches": "whole"}
        folder = a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "4"}, **{"quantity breaks": ["1", "7"]}))
        found = figures(folder)
        tiers = {key: value for key, value in found.items() if key.startswith("tier/")}
        self.assertEqual(tiers, {"tier/1/1/price": 10, "tier/1/4/price": F("2.50"), "tier/1/7/price": F("1.82"),
                                 "tier/1/2/most": 10, "tier/1/3/most": 10, "tier/1/6/most": F("12.74")})
        self.assertEqual(found["line/1/price"], F("2.50"))


class StandardRuns(unittest.TestCase):
    FORMULA = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "standard run": "15", "losses": {"breakage": "20 %"}, "batches": "whole",
               "labour": [{"by": "baker", "minutes": "6"}, {"by": "baker", "minutes": "60", "per": "order"}], "sold as": {"box": {"holds": "2"}}}

    def test_a_run_is_costed_as_it_would_be_made(self):
        found = reference.menu_figures(a_folder(formulas=[self.FORMULA]), "bun", "2026-11-25")
        # 15 pieces are 8 boxes, so 16; 16 / 0.8 = 20 begun, 2 batches: 20.00 of flour, 4.00 of labour; nothing that is done per order
        self.assertEqual((found["item/ingredients"], found["item/labour"], found["item/wanted"]), (F("2.50"), F("0.50"), 3))
        self.assertEqual((found["loss/in the piece"], found["loss/process"], found["loss/rounding"]), (2, F("0.50"), 0))

    def test_where_no_run_is_stated_it_is_a_full_mix_or_a_batch(self):
        formula = {key: value for key, value in self.FORMULA.items() if key != "standard run"}
        # a batch gives 8 good ones, 4 boxes: 10.00 and 2.00 over 4; the full mix of 3 gives 24, 12 boxes
        found = reference.menu_figures(a_folder(formulas=[formula]), "bun", "2026-11-25")
        self.assertEqual((found["item/units"], found["item/cost"]), (4, 3))
        self.assertEqual(reference.menu_figures(a_folder(formulas=[{**formula, "largest mix": "3"}]), "bun", "2026-11-25")["item/units"], 12)
        found = reference.menu_figures(a_folder(formulas=[formula], shop={"standard run": "5"}), "bun", "2026-11-25")
        # 3 boxes, 6 pieces, ceil(6 / 0.8) = 8 begun, still a whole batch: 12.00 over 3
        self.assertEqual((found["item/units"], found["item/cost"]), (3, 4))

    def test_counter_work_is_in_a_menu_only(self):
        folder = a_folder(formulas=[self.FORMULA], shop={
            "counter work": [{"task": "take the money", "by": "baker", "minutes": "3"}], "order work": [{"task": "talk", "by": "baker", "minutes": "60"}],
            "overhead": [{"name": "rent", "rate": "10.00 per labour hour"}]})
        on, entry = reference.date("2026-11-25"), {"item": "bun", "price": "5.00"}
        self.assertEqual(reference.menu_figures(folder, "bun", "2026-11-25")["item/labour"], F("0.50"))
        # 3 minutes are 1.00, over 2 items of a payment 0.50; where nothing is said over the 8 of a run
        item = menu_compare.Item(Book(folder), {"items per payment": "2"}, entry, on)
        self.assertEqual((item.cost["labour"], item.labour), (1, F("1.5") + F("1.5")))
        self.assertEqual(item.cost["overhead"], F("0.5"))
        self.assertEqual(menu_compare.Item(Book(folder), {}, entry, on).cost["labour"], F("0.50") + F(1, 8))

    def test_a_menu_paid_in_several_ways(self):
        folder = a_folder(shop={"fees": {"card": {"share": "2 %", "fixed": "0.50"}, "cash": {"share": "1 %"}}})
        self.assertEqual(reference.fee_of(Book(folder), {"paid by": {"card": "60 %", "cash": "40 %"}}), (F("0.016"), F("0.30")))


class Policies(unittest.TestCase):
    """Two orders of buns: 4 and 14. A batch is 10 buns: 10.00 of flour, 6 minutes at 20.00 / h; an oven of 4 kW at a duty of
    50 %, 0.30 / kWh, 15 minutes for a load of 20, 30 minutes of preheating; a usual run is 60.

                         flour and hands           loads                    preheat               the 4 buns
        4 alone          1 batch   12.00           1 · 2 kW · 1/4 h  0.15   4 kW · 1/2 h  0.60    12.75
        14 alone         2 batches 24.00           1                 0.15                 0.60
        18 together      2 batches 24.00           1                 0.15                 0.60
        4 of these       24 · 12 / (12 + 24)       0.15 · 1/2               0.60 · 1/2            8.00 + 0.375
        60               6 batches 72.00           3                 0.45                 0.60
        4 of these       4.80                      4 · 1.05 / 60                                  4.80 + 0.07
    """

    def folder(self, **order):
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "batches": "whole", "standard run": "60",
                   "labour": [{"by": "baker", "minutes": "6"}], "oven": {"use": "deck", "minutes": "15", "holds": "20"}}
        return a_folder(formulas=[formula], orders=[
            {"order": "1", "date": "2026-11-25", "lines": [{"item": "bun", "count": "4"}], **order},
            {"order": "2", "date": "2026-11-26", "lines": [{"item": "bun", "count": "14"}]}],
            shop={"ovens": {"deck": {"power": "4 kW", "duty": "50 %", "preheat": "30 min"}}, "energy": {"electricity": "0.30 / kWh"}})

    def test_alone_together_and_of_a_usual_run(self):
        found = figures(self.folder(**{"made with": ["2"]}))
        self.assertEqual([4 * found[f"policy/{policy}/1/cost"] for policy in reference.POLICIES], [F("12.75"), F("8.375"), F("4.87")])
        # each at the price that covers it, up to the cent
        self.assertEqual([found[f"policy/{policy}/1/price"] for policy in reference.POLICIES], [F("3.19"), F("2.10"), F("1.22")])
        self.assertEqual(found["line/1/cost"], F("8.375"))
        # what is said in one order holds for both: 16.00 + 0.075 + 0.30
        self.assertEqual(figures(self.folder(**{"made with": ["2"]}), "2")["line/1/cost"], F("16.375"))

    def test_the_nearest_word_counts(self):
        folder = self.folder(**{"made with": ["2"]})
        for where, policy, cost in ((folder["shop"], "alone", "12.75"), (folder["orders"][0], "usual run", "4.87"),
                                    (folder["orders"][0]["lines"][0], "made together", "8.375")):
            where["costed as"] = policy
            self.assertEqual(figures(folder)["line/1/cost"], F(cost))

    def test_with_nobody_made_together_is_alone(self):
        found = figures(self.folder())
        self.assertEqual((found["line/1/cost"], "policy/made together/1/cost" in found), (F("12.75"), False))

    def test_all_at_the_prices_of_the_newest_day(self):
        folder = self.folder(**{"made with": ["2"]})
        folder["prices"].append({"supplier": "supplier 1", "from": "2026-11-26", "offers": [{"item": "flour", "pack": "1 kg", "price": "20.00"}]})
        found = figures(folder)
        self.assertEqual((4 * found["policy/alone/1/cost"], found["line/1/cost"]), (F("22.75"), F("44") / 3 + F("0.375")))
        self.assertEqual(figures(self.folder())["line/1/cost"], F("12.75"))

    def test_what_is_kept_is_shared_with_the_batches_that_take_it(self):
        # By hand: a batch of 10 pies takes 500 g of filling, kept at 10.00 a kilogram: 4 pies alone 5.00, 6 as well, together
        # 5.00 for the one batch, 2.50 each. Sold by itself, 100 g are 1.00, together with anything
        filling = {"formula": "filling", "lines": {"flour": "1 kg"}, "leftover": "kept", "sold as": {"jar": {"holds": "100 g"}}}
        pie = {"formula": "pie", "makes": "10", "lines": {"filling": "500 g"}, "batches": "whole"}
        folder = a_folder(formulas=[filling, pie], orders=[
            {"order": "1", "date": "2026-11-25", "lines": [{"item": "pie", "count": "4"}, {"item": "filling", "as": "jar", "count": "1"}], "made with": ["2"]},
            {"order": "2", "date": "2026-11-25", "lines": [{"item": "pie", "count": "6"}]}])
        found = figures(folder)
        self.assertEqual((found["line/1/cost"], found["line/2/cost"], 4 * found["policy/alone/1/cost"]), (F("2.50"), 1, 5))

    def test_a_set_is_closed(self):
        folder = self.folder(**{"made with": ["2"]})
        folder["orders"].append({"order": "3", "date": "2026-11-20", "made with": ["2"], "lines": [{"item": "bun", "count": "1"}]})
        folder["orders"].append({"order": "4", "date": "2026-12-20", "lines": [{"item": "bun", "count": "1"}]})
        book = Book(folder)
        self.assertEqual([order["order"] for order in reference.made_set(book, book.orders["3"])], ["1", "2", "3"])

    def test_a_line_without_a_way_is_sold_in_the_first(self):
        folder = self.folder()
        folder["formulas"][0]["sold as"] = {"pair": {"holds": "2"}, "single": {"holds": "1"}}
        self.assertEqual(figures(folder)["formula/bun/demand"], 8)

    def test_what_is_in_a_cost_of_each_item(self):
        # By hand: alone 1 kg; 12 of 36 parts of 2 kg; a fifteenth of 6 kg; and it is what it costs
        for policy, grams in (("alone", 1000), ("made together", F(2000, 3)), ("usual run", 400)):
            found = figures(self.folder(**{"made with": ["2"], "costed as": policy}))
            self.assertEqual((found["ingredient/flour/bought"], found["ingredient/flour/cost"]), (grams, grams * F(1, 100)), policy)


class Shelf(unittest.TestCase):
    def test_what_is_there_is_taken_first(self):
        # By hand: 3 boxes of 4; one is packed, one more too late for the order; 3 buns are loose: 8 - 3 = 5 buns are still made
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "batches": "half", "labour": [{"by": "baker", "minutes": "6"}],
                   "sold as": {"box": {"holds": "4", "labour": [{"by": "baker", "minutes": "2"}]}}}
        folder = a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "3"}, due="2026-12-01"))
        folder["stock"] = {"stock": "2026-11-24", "items": {"bun": [
            "3", {"as": "box", "amount": "1", "good until": "2026-12-01"}, {"as": "box", "amount": "1", "good until": "2026-11-30"},
            {"amount": "50", "good until": "2026-11-30"}]}}
        found = production_compare.Plan(Book(folder), reference.date("2026-11-25"), folder["orders"]).figures()
        self.assertEqual([found[key] for key in ("shelf/bun, box", "shelf/bun", "formula/bun/wanted", "formula/bun/batches")], [1, 3, 5, F(1, 2)])
        # a started batch, and two boxes to pack
        self.assertEqual(found["role/baker"], 6 + 2 * 2)
        # 20 loose ones do: nothing is made, the boxes are packed
        folder["stock"]["items"]["bun"] = "20"
        found = production_compare.Plan(Book(folder), reference.date("2026-11-25"), folder["orders"]).figures()
        self.assertEqual(found, {"role/baker": 6, "shelf/bun": 12})


class Laws(unittest.TestCase):
    """What must hold in every folder, and is noticed where it does not."""

    @classmethod
    def setUpClass(cls):
        cls.folders = [random_books.make_folder(seed) for seed in range(1, 31)]

    def test_the_laws_hold(self):
        for law in laws.LAWS:
            with self.subTest(law=law.__name__):
                checks = laws.Checks()
                for folder in self.folders[: 6 if law is laws.tiers_are_safe_and_reached else 20]:
                    law(laws.Reference(), folder, checks)
                self.assertEqual(checks.broken, [])
                self.assertGreater(checks.made, 20)

    def test_each_law_has_a_mutant_that_breaks_it(self):
        """That it does break it, mutants.py shows."""
        self.assertEqual(mutants.unwatched(), [])
        for _, line, in_its_place in mutants.MUTANTS:
            mutants.mutant(line, in_its_place)

    def test_each_rule_is_met_in_a_tenth_of_the_books(self):
        met = [rule for folder in self.folders for rule in random_books.rules_met(folder)]
        few = {rule: met.count(rule) for rule in random_books.RULES if 10 * met.count(rule) < len(self.folders)}
        self.assertEqual(few, {})
        with contextlib.redirect_stdout(io.StringIO()) as said, mock.patch("sys.argv", ["random_books.py", "--coverage", "2"]):
            random_books.main()
        self.assertRegex(said.getvalue(), r"\n +[0-9]+ %  kept\n")

    def test_a_folder_is_the_same_for_its_seed_and_holds_no_float(self):
        for seed in (1, 2, 3):
            folder = random_books.make_folder(seed)
            self.assertEqual(folder, random_books.make_folder(seed))
            self.assertEqual(random_books.yaml_files(folder, seed), random_books.yaml_files(folder, seed))
            self.assertTrue(all(isinstance(text, str) for text in random_books.texts(folder)))
            self.assertTrue(all(isinstance(value, (int, F)) for value in figures(folder, "2026-001").values()))

    def test_yaml_quotes_what_yaml_would_misread(self):
        rng = mock.Mock(random=lambda: 0.5)
        self.assertEqual(random_books.scalar("#60 scoop", rng, False), '"#60 scoop"')
        self.assertEqual(random_books.scalar("2 x #60 scoop", rng, False), '"2 x #60 scoop"')
        self.assertEqual(random_books.scalar("a, b", rng, True), '"a, b"')
        self.assertEqual(random_books.scalar("a, b", rng, False), "a, b")
        self.assertEqual(random_books.scalar("formula 2: plain", rng, False), '"formula 2: plain"')
        self.assertEqual(random_books.scalar("2 3/4 cup", rng, True), "2 3/4 cup")


FAKE = """#!{python}
import sys
sys.dont_write_bytecode = True
sys.path.insert(0, {here!r})
import json, random_books, reference
folder = random_books.make_folder({seed})
what, name = sys.argv[1], sys.argv[2]
if what == "quote":
    figures = reference.order_figures(folder, name)
else:
    figures = reference.menu_figures(folder, name, sys.argv[sys.argv.index("--on") + 1])
figures = reference.flat(figures)
{change}
print(json.dumps(figures))
"""


class LawsOfTheCommand(unittest.TestCase):
    """laws.py must fail where the command does, or where there is nothing to check."""

    def test_a_program_that_fails(self):
        with contextlib.redirect_stdout(io.StringIO()) as said:
            self.assertEqual(laws.main(["/bin/false", "--books", "1", "--law", "deposit"]), 1)
        self.assertIn("exit code 1", said.getvalue())

    def test_no_books_and_no_law(self):
        with contextlib.redirect_stdout(io.StringIO()):
            self.assertEqual(laws.main(["/bin/false", "--books", "0"]), 1)
            self.assertEqual(laws.main(["/bin/false", "--books", "1", "--law", "no such law"]), 1)


class Comparison(unittest.TestCase):
    """compare.py must notice what it is there for. A stand-in prints the reference's own figures, changed or not."""

    def run_with(self, change, flatten=dict):
        with tempfile.TemporaryDirectory() as directory:
            fake = pathlib.Path(directory) / "fake"
            fake.write_text(FAKE.format(python=sys.executable, here=str(pathlib.Path(__file__).resolve().parent), seed=5, change=change))
            os.chmod(fake, stat.S_IRWXU)
            said = io.StringIO()
            with mock.patch("compare.groat_json.flatten", flatten), contextlib.redirect_stdout(said):
                code = compare.main([str(fake), "--books", "1", "--seed", "5"])
        return code, said.getvalue()

    def test_equal_figures_pass(self):
        code, said = self.run_with("")
        self.assertEqual(code, 0, said)
        self.assertRegex(said, r"[1-9][0-9]* figures compared\n1 passed, 0 failed\n")

    def test_a_changed_figure_fails_and_is_shown(self):
        code, said = self.run_with("figures['total/tax'] = '1/3'")
        self.assertEqual(code, 1)
        self.assertIn("seed 5: order 2026-001: total/tax", said)
        self.assertIn("groat      1/3 (about 0.333333)", said)
        self.assertIn("0 passed, 1 failed", said)

    def test_a_missing_figure_fails(self):
        code, said = self.run_with("figures.pop('item/wanted', None)")
        self.assertEqual(code, 1)
        self.assertIn("item/wanted", said)
        self.assertIn("(missing)", said)

    def test_a_float_fails(self):
        code, said = self.run_with("figures['total/total'] = 0.5")
        self.assertEqual(code, 1)
        self.assertIn("not an exact figure: 0.5", said)

    def test_nothing_compared_fails(self):
        self.assertEqual(self.run_with("", flatten=lambda document: {})[0], 1)
        with contextlib.redirect_stdout(io.StringIO()):
            self.assertEqual(compare.main(["/nowhere/groat", "--books", "0"]), 1)

    def test_a_program_that_fails_or_prints_no_json_fails(self):
        code, said = self.run_with("sys.exit('books: error: no such thing')")
        self.assertEqual(code, 1)
        self.assertIn("no such thing", said)
        self.assertEqual(self.run_with("print('hello')")[0], 1)


if __name__ == "__main__":
    unittest.main()
