"""The reference against figures that were worked by hand or printed by others (checks.md), and against its own laws.

A row of checks.md is named beside each check; `SEEN`, `MEM`, `DERIVED` as there. Run: python3 reference_test.py
"""

import contextlib
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
                                   ("3 each", "count", 3), ("15 dozen", "count", 180), ("2 1/4 cup", "volume", F(9, 4) * 250),
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
        # 3 loads of 10 min and 20 min of preheat at 6 kW · 50 % · 0.20 = 0.60 / h
        self.assertEqual(found["line/1/energy"], F(1, 2))
        # in the piece 70 · 30 g = 2.1 kg; with losses 2.1/(0.9 · 0.75); the rest is rounding up
        self.assertEqual((found["loss/in the piece"], found["loss/trim"]), (21, 0))
        self.assertEqual(found["loss/process"], F(21) / F("0.675") - 21)
        self.assertEqual(found["loss/rounding"], 35 - F(21) / F("0.675"))

    def test_a_kept_leftover_is_credited(self):
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "batches": "whole", "leftover": "kept"}
        folder = a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "15"}))
        found = figures(folder)
        self.assertEqual((found["formula/bun/batches"], found["formula/bun/leftover"], found["line/1/ingredients"]), (2, F(1, 2), 15))
        self.assertEqual(found["ingredient/flour/cost"], 20)

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
            self.assertEqual(reference.net_price("food cost", rate(share), 0, F(cost), 0, 0, 0, 0), price)

    def test_w2_w3_markup(self):
        # W2 bakeryandbusinessmath ch. 13, SEEN: 0.35 + 30 % = 0.455 -> 0.46; W3, DERIVED: 0.39 + 50 % = 0.585 -> 0.59 half up
        for cost, markup, price, rounded in (("0.35", "30 %", "0.455", "0.46"), ("0.39", "50 %", "0.585", "0.59"),
                                             ("0.97", "45 %", "1.4065", "1.41"), ("62.00", "15 %", "71.30", "71.30"), ("480", "75 %", "840", "840")):
            wanted = reference.net_price("markup", rate(markup), F(cost), 0, 0, 0, 0, 0)
            self.assertEqual((wanted, round_half_up(wanted, CENT)), (F(price), F(rounded)))

    def test_margin_and_markup_table(self):
        # checks.md 6.1, DERIVED
        table = {"10 %": F(1, 9), "16 2/3 %": F(1, 5), "20 %": F(1, 4), "25 %": F(1, 3), "30 %": F(3, 7), "33 1/3 %": F(1, 2), "37.5 %": F(3, 5),
                 "40 %": F(2, 3), "50 %": 1, "60 %": F(3, 2), "66 2/3 %": 2, "75 %": 3, "80 %": 4}
        for margin, markup in table.items():
            by_margin = reference.net_price("margin", rate(margin), F(7), 0, 0, 0, 0, 0)
            self.assertEqual(by_margin, reference.net_price("markup", markup, F(7), 0, 0, 0, 0, 0), margin)
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

    def test_w37_the_same_algebra(self):
        # W37 OpenStax m68116, SEEN: 24,000 after 40 % -> 40,000
        self.assertEqual(reference.net_price("contribution", F(24000), 0, 0, 0, 0, F("0.4"), 0), 40000)

    def test_a_solved_price_returns_its_target_exactly(self):
        phi, tax, fixed, cost, ingredients, variable = F("0.029"), F("0.19"), F("0.35"), F("11.17"), F("3.10"), F("9.40")
        for target, value in (("margin", F("0.4")), ("markup", F("0.8")), ("contribution", F("2.5"))):
            price = reference.net_price(target, value, cost, ingredients, variable, fixed, phi, tax)
            fee = phi * price * (1 + tax) + fixed
            realised = {"margin": (price - cost - fee) / price, "markup": (price - cost - fee) / cost, "contribution": price - fee - variable}
            self.assertEqual(realised[target], value)

    def test_a_target_out_of_reach(self):
        with self.assertRaises(BookError):
            reference.net_price("margin", F("0.97"), F(1), 0, 0, 0, F("0.03"), 0)

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

    def test_the_lines_of_a_quote_in_their_order(self):
        # W32 OpenStax, SEEN (75.80 less 25 % = 56.85); the rest by hand: minimum to 100.00, rush 10 %, discount 25 %
        folder = a_folder(orders=an_order({"item": "bun", "count": "1", "price": {"given": "75.80"}}, discount="25 %"))
        self.assertEqual(figures(folder)["total/total"], F("56.85"))
        folder["shop"].update({"minimum order": "100.00", "rush": {"within": "3 days", "surcharge": "10 %"}, "deposit": "30 %"})
        folder["orders"][0].update({"due": "2026-11-28", "delivery": {"charge": "7.00"}})
        found = figures(folder)
        self.assertEqual([found[f"total/{key}"] for key in ("subtotal", "minimum", "rush", "discount", "delivery", "total", "deposit", "balance")],
                         [F("75.80"), F("24.20"), 10, F("27.50"), 7, F("89.50"), F("26.85"), F("62.65")])

    def test_delivery_at_cost_grossed_up(self):
        # By hand: 9.70 / (1 - 3 % · 1) = 10.00; with a contained tax of 25 %: 9.70 / (1 - 0.0375) · 1.25 = 12.597 -> 12.60
        folder = a_folder(orders=an_order({"item": "bun", "count": "1"}, delivery={"charge": "at cost"}),
                          shop={"delivery": {"flat": "9.70"}, "fees": {"card": {"share": "3 %"}}, "paid by": "card"})
        self.assertEqual(figures(folder)["total/delivery"], 10)
        folder["shop"]["tax"] = {"rate": "25 %", "prices": "with"}
        self.assertEqual(figures(folder)["total/delivery"], F("12.60"))

    def test_quantity_breaks_cost_the_order_anew(self):
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "labour": [{"by": "baker", "minutes": "6", "per": "order"}]}
        folder = a_folder(formulas=[formula], orders=an_order({"item": "bun", "count": "1"}, **{"quantity breaks": ["1", "4"]}))
        found = figures(folder)
        self.assertEqual([found[f"break/1/{q}/cost"] for q in ("1", "4")], [3, F("1.50")])

    def test_menu_costing_spreads_the_set_up_over_the_standard_run(self):
        formula = {"formula": "bun", "makes": "10", "lines": {"flour": "1 kg"}, "standard run": "15", "losses": {"breakage": "20 %"}, "batches": "whole",
                   "labour": [{"by": "baker", "minutes": "6", "per": "order"}], "sold as": {"box": {"holds": "2"}}}
        found = reference.menu_figures(a_folder(formulas=[formula]), "bun", "2026-11-25")
        # 15 pieces = 7.5 boxes; 15/0.8 started, 18.75 of flour: 2.50 a box; 2.00 of labour over 7.5 boxes
        self.assertEqual((found["item/ingredients"], found["item/labour"], found["item/wanted"]), (F("2.50"), F(4, 15), F("2.50") + F(4, 15)))
        self.assertEqual((found["loss/in the piece"], found["loss/process"]), (2, F("0.50")))


class Laws(unittest.TestCase):
    """What must hold in every folder."""

    def test_the_parts_add_up_to_the_whole(self):
        for seed in range(1, 61):
            folder = random_books.make_folder(seed)
            for order in folder["orders"]:
                with self.subTest(seed=seed, order=order["order"]):
                    self.parts_add_up(figures(folder, order["order"]), Book(folder), order)

    def parts_add_up(self, found, book, order):
        lines = range(1, len(order["lines"]) + 1)
        for at in lines:
            self.assertEqual(sum(found[f"line/{at}/{name}"] for name in reference.CATEGORIES), found[f"line/{at}/cost"])
        losses = sum(found[f"loss/{kind}"] for kind in ("in the piece", "trim", "process", "rounding"))
        self.assertEqual(losses, sum(found[f"line/{at}/ingredients"] for at in lines))
        self.assertEqual(sum(found[f"line/{at}/fixed fee"] for at in lines), reference.fee_of(book, order)[1])
        self.assertEqual(found["total/net"] + found["total/tax"], found["total/total"])
        self.assertEqual(found["total/deposit"] + found["total/balance"], found["total/total"])
        if not any(formula.get("leftover") == "kept" for formula in book.formulas.values()):
            self.assertEqual(sum(value for key, value in found.items() if key.startswith("ingredient/") and key.endswith("/cost")),
                             sum(found[f"line/{at}/ingredients"] for at in lines))
        supplies = sum(value for key, value in found.items() if key.startswith("supply/") and key.endswith("/cost"))
        self.assertEqual(supplies, sum(found[f"line/{at}/{name}"] for at in lines for name in ("consumables", "packaging")))
        for at in lines:     # money that is paid is whole coins
            self.assertEqual((found[f"line/{at}/amount"] / book.coin).denominator, 1)
        for kind in ("subtotal", "minimum", "rush", "discount", "delivery", "tax", "total", "deposit"):
            self.assertEqual((F(found[f"total/{kind}"]) / book.coin).denominator, 1, kind)

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
        self.assertEqual(random_books.scalar("2 1/4 cup", rng, True), "2 1/4 cup")


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
