"""Each law of laws.py fails when its rule is broken: the reference is changed by one line, and the law must notice.

    mutants.py [--books N] [--seed S]

A mutant is the reference's own text with one line in place of another. The law is asked over random books until it is
broken; one that is not within N books is a law that proves nothing. Ends with `N noticed, M not`; the exit code is 1 if
one was not.
"""

import argparse
import pathlib
import sys
import types

import laws
import random_books

SOURCE = pathlib.Path(__file__).resolve().parent / "reference.py"

# (law, the line as it stands, the line in its place); white space before a line stays as it is.
MUTANTS = [
    # The run costed without rounding up to whole pieces, batches and loads.
    (laws.an_item_costs_what_an_order_of_its_run_costs,
     "run = World(book, on, [Sale(item, unit, units, holds)], of_order=False)",
     "run = World(book, on, [Sale(item, unit, units, holds)], of_order=False, rounding=False)"),
    # One sale unit in place of the run.
    (laws.an_item_costs_what_an_order_of_its_run_costs,
     "return ceiling(book.quantity(run).amount / holds)",
     "return book.quantity(run).amount / holds"),
    # What is kept made anew for each order.
    (laws.what_is_kept_is_linear,
     'return self.rounding and name != self.run and self.book.formulas[name].get("leftover") == "kept"',
     "return False"),
    # Each order pays what it would alone: too much in all.
    (laws.made_together_costs_no_more_and_adds_up,
     "return {entry: amount / sums[entry] for entry, amount in together.items() if sums[entry]}",
     "return {}"),
    # A task shared by heads, not by what each would pay: dearer for the small order.
    (laws.made_together_costs_no_more_and_adds_up,
     'minutes = self.minutes_of(task) * self.task_driver(name, task) * self.factor(("task", name, at))',
     'minutes = self.minutes_of(task) * (self.task_driver(name, task) + 1 - self.factor(("task", name, at)))'),
    # The price at the tier's start, as if more could never need more.
    (laws.tiers_are_safe_and_reached,
     "price.update({count: max(needed) for count in whole_numbers(start, after)})",
     "price.update({count: needed[0] for count in whole_numbers(start, after)})"),
    # A coin more than any count needs.
    (laws.tiers_are_safe_and_reached,
     "price.update({count: max(needed) for count in whole_numbers(start, after)})",
     "price.update({count: max(needed) + book.coin for count in whole_numbers(start, after)})"),
    # More is asked for fewer.
    (laws.tiers_are_safe_and_reached,
     "asked = {count: min(more * price[more] for more in whole_numbers(count, last + 1)) for count in price}",
     "asked = {count: count * price[count] for count in price}"),
    # The payment fee beside the cost, not in it.
    (laws.a_solved_price_returns_its_target,
     "return divide((1 + value) * (cost + fixed_fee), 1 - (1 + value) * fee_share * (1 + tax))",
     "return divide((1 + value) * cost + fixed_fee, after_fee)"),
    # A discount in the price that is not solved for.
    (laws.a_solved_price_returns_its_target,
     "wanted = divide(wanted, 1 - discount)",
     "wanted = divide(wanted, 1)"),
    (laws.margin_is_markup_over_one_and_markup,
     'figures["markup"] = (net - cost - fee) / (cost + fee)',
     'figures["markup"] = (net - cost - fee) / (cost + 0)'),
    # Rounding up counted together with the process losses, which stand beside it.
    (laws.the_parts_add_up,
     '"rounding": final_ingredients - bought1}',
     '"rounding": final_ingredients - bought0}'),
    # An overhead that is in the cost and in no category.
    (laws.the_parts_add_up,
     'return {name: part[name] + (part["variable overhead"] if name == "overhead" else 0) for name in CATEGORIES}',
     "return {name: part[name] for name in CATEGORIES}"),
    # Revenue as the sum of exact bases, not as the total less the tax that is printed.
    (laws.the_parts_add_up,
     "revenue = total - tax_total",
     "revenue = sum(base / (1 + tax) for base, tax in zip(class_bases, class_rates)) if contained else shown"),
    # The delivery taxed in every class as a whole.
    (laws.the_taxable_amounts_add_up,
     "deliveries = apportion(delivery_line, weights, coin)",
     "deliveries = [delivery_line for _ in weights]"),
    (laws.a_deposit_is_no_cost,
     "cost = price / (1 + tax) * (1 + landing(book, supplier)) + freight / (1 + tax)",
     "cost = (price + deposit) / (1 + tax) * (1 + landing(book, supplier)) + freight / (1 + tax)"),
    (laws.what_is_only_compared_is_no_cost,
     'if entry["item"] != item or only_compared(book, price_list, entry):',
     'if entry["item"] != item:'),
    (laws.stock_is_in_no_cost,
     "wanted += line.demand * self.batches(user)",
     "wanted += line.demand * self.batches(user) / (2 if name in self.book.stock else 1)"),
    # Order work in what an item costs.
    (laws.what_is_done_for_orders_is_in_no_item,
     "return scaled(run.direct(0), 1 / units)",
     "return scaled(shared_out([run.direct(0)], run.pool(Fraction(0)))[0], 1 / units)"),
    # What a formula needs once for each order, in a run that is for no order.
    (laws.what_is_done_for_orders_is_in_no_item,
     "return Fraction(1) if self.of_order else Fraction(0)",
     "return Fraction(1)"),
]


def mutant(line, in_its_place):
    """The reference as a module, that one line changed."""
    text = SOURCE.read_text(encoding="utf-8")
    if text.count(line) != 1:
        raise ValueError(f"stands {text.count(line)} times in the reference, not once: {line}")
    module = types.ModuleType("mutant")
    exec(compile(text.replace(line, in_its_place), "mutant of reference.py", "exec"), module.__dict__)
    return module


def noticed(law, module, folders):
    """(how many books it took, what is broken), or nothing."""
    for at, folder in enumerate(folders, start=1):
        checks = laws.Checks()
        law(laws.Reference(module), folder, checks)
        if checks.broken:
            return at, checks.broken[0]
    return None


def unwatched():
    """The laws that no mutant breaks."""
    return [law.__name__ for law in laws.LAWS if law not in [entry[0] for entry in MUTANTS]]


def main(arguments=None):
    parser = argparse.ArgumentParser(description="Break each rule of the reference by a line; its law must notice.")
    parser.add_argument("--books", type=int, default=40, metavar="N")
    parser.add_argument("--seed", type=int, default=1, metavar="S")
    options = parser.parse_args(arguments)

    folders = [random_books.make_folder(seed) for seed in range(options.seed, options.seed + options.books)]
    missed = [f"no mutant for {name}" for name in unwatched()]
    for law, line, in_its_place in MUTANTS:
        found = noticed(law, mutant(line, in_its_place), folders)
        said = f"{law.__name__.replace('_', ' ')}\n    - {line}\n    + {in_its_place}"
        if found is None:
            missed.append(said)
            print(f"NOT NOTICED: {said}")
        else:
            print(f"{said}\n    after {found[0]} books: {found[1]}")
    print(f"{len(MUTANTS) - len([each for each in missed if not each.startswith('no mutant')])} noticed, {len(missed)} not")
    for each in missed:
        print(each)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
