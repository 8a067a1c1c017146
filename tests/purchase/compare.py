#!/usr/bin/env python3
"""Compares the purchase optimiser with glpsol, and on tiny problems with trying everything.

    compare.py SOLVER [--net] [--free] [--problems N] [--first SEED] [--seconds T] [--work STEPS] [--verbose]

SOLVER is solve_main.cpp, compiled. Every problem is made from its seed, in whole cents and whole contents;
the solver gets the figures divided by awkward numbers, so that its scaling is tried too. Its plan is checked
here, offer by offer, and its total against the optimum that glpsol proves (apt-get install glpk-utils).
glpsol calculates in floating point: its plan is rounded and checked here as well, and where it proves nothing in
time, or its rounded plan does not hold, the problem is dropped, counted, and another one taken, so that N are
compared. With --net some of what is left over is worth something, and the least outlay less that worth is compared.
Exits 1 on any difference.
"""
import argparse
import itertools
import random
import subprocess
import sys
import tempfile
import time
from fractions import Fraction
from pathlib import Path


class Offer:
    def __init__(self, supplier, item, content, tiers, most):
        self.supplier = supplier
        self.item = item
        self.content = content
        self.tiers = tiers  # (from packs, cost, counted), rising
        self.most = most  # or None

    def price(self, packs):
        """What so many packs cost and count."""
        if packs == 0:
            return 0, 0
        _, cost, counted = [tier for tier in self.tiers if tier[0] <= packs][-1]
        return packs * cost, packs * counted


class Problem:
    def __init__(self, demands, suppliers, offers, uses=None):
        self.demands = demands
        self.uses = uses or [(0, 0)] * len(demands)  # (useful, worth of one)
        self.suppliers = suppliers  # (delivery, minimum, goods from which delivery is free or None)
        self.offers = offers

    def check(self, packs):
        """The total of a plan, less what will be used of leftovers, or why it is none."""
        content = [0] * len(self.demands)
        counted = [0] * len(self.suppliers)
        used = set()
        total = 0
        for offer, count in zip(self.offers, packs):
            if count < 0 or (offer.most is not None and count > offer.most):
                return None, f"{count} packs where {offer.most} are the most"
            if count == 0:
                continue
            cost, counts = offer.price(count)
            total += cost
            counted[offer.supplier] += counts
            content[offer.item] += count * offer.content
            used.add(offer.supplier)
        for item, demand in enumerate(self.demands):
            if content[item] < demand:
                return None, f"item {item} has {content[item]} of {demand}"
            useful, worth = self.uses[item]
            total -= worth * min(useful, content[item] - demand)
        for s in used:
            free = self.suppliers[s][2]
            if free is None or counted[s] < free:
                total += self.suppliers[s][0]
            if counted[s] < self.suppliers[s][1]:
                return None, f"supplier {s} counts {counted[s]} of {self.suppliers[s][1]}"
        return total, None

    def cap(self, offer, spare=0):
        """More packs than these are of no use (spare: how many more to look at nevertheless)."""
        last = offer.tiers[-1]
        wanted = self.demands[offer.item] + self.uses[offer.item][0]
        most = max(last[0], -(-wanted // offer.content))
        minimum = max(self.suppliers[offer.supplier][1], self.suppliers[offer.supplier][2] or 0)
        if last[2] > 0:
            most = max(most, -(-minimum // last[2]))
        most += spare
        return most if offer.most is None else min(most, offer.most)


def make(rng, size, is_net=False, has_free=False):
    suppliers_most, items_most, offers_most = {
        "tiny": (2, 2, 2), "small": (3, 6, 4), "middle": (5, 15, 5), "large": (8, 40, 5)}[size]
    few = 1 if size in ("tiny", "small") else 2
    s_count = rng.randint(few, suppliers_most)
    i_count = rng.randint(few, items_most)
    has_breaks = rng.random() < 0.5
    has_limits = rng.random() < 0.4
    has_freight = rng.random() < 0.5
    has_fees = rng.random() < 0.8
    has_minimums = rng.random() < 0.8
    is_bulky = rng.random() < 0.3  # demands of many packs
    tax = rng.choice([100, 100, 107, 119])
    demands, offers = [], []
    spend = 0
    for i in range(i_count):
        base = rng.randint(50, 1500)  # cents for 10 units
        demand = rng.randint(1, 60 if is_bulky else 25) * rng.choice([1, 1, 5, 10])
        if size == "tiny":
            demand = rng.randint(0, 12)
        demands.append(demand if rng.random() > 0.05 else 0)
        spend += base * demand // 10
        is_scarce = rng.random() < 0.03
        for n in range(rng.randint(1, offers_most)):
            content = rng.choice([1, 2, 3, 5, 10, 12, 20, 25, 50])
            if size == "tiny":
                content = rng.choice([1, 2, 3, 5, 7])
            elif content * 60 < demand:
                content *= 10
            price = max(1, base * content * rng.randint(80, 125) // 1000)
            if rng.random() < 0.5:
                price = -(-price // 10) * 10
            freight = rng.randint(0, 1 + price // 10) if has_freight else 0
            tiers = [(1, price + freight, price * tax // 100)]
            if has_breaks and rng.random() < 0.4:
                packs = 1
                for _ in range(rng.randint(1, 2)):
                    packs += rng.randint(1, 6)
                    price = max(1, price * rng.randint(80, 103) // 100)
                    tiers.append((packs, price + freight, price * tax // 100))
            most = rng.randint(0, 10) if has_limits and rng.random() < 0.4 else None
            if n == 0 and not is_scarce:
                most = None
            offers.append(Offer(rng.randrange(s_count), i, content, tiers, most))
    suppliers = []
    for _ in range(s_count):
        fee = rng.choice([0, rng.randint(100, 3000)]) if has_fees else 0
        minimum = rng.randint(1, max(2, 2 * spend // s_count)) if has_minimums else 0
        if rng.random() < 0.3:
            minimum = 0
        if size == "tiny":
            fee, minimum = fee // 4, min(minimum, 2000)
        free = rng.randint(minimum, max(minimum, 1) * 2 + spend // s_count) if has_free and rng.random() < 0.6 else None
        if size == "tiny" and free is not None:
            free = min(free, 3000)
        suppliers.append((fee, minimum, free))
    rng.shuffle(offers)
    uses = None
    if is_net:
        uses = [(rng.randint(1, max(2, 2 * demand)) if rng.random() < 0.6 else 0,
                 rng.randint(0, 150)) for demand in demands]
    return Problem(demands, suppliers, offers, uses)


def as_input(problem, work, money, content):
    out = [str(work), str(len(problem.demands))]
    out += [str(Fraction(d) * content[i]) for i, d in enumerate(problem.demands)]
    out.append(str(len(problem.suppliers)))
    for fee, minimum, free in problem.suppliers:
        out += [str(fee * money), str(minimum * money), "-1" if free is None else str(free * money)]
    out.append(str(len(problem.offers)))
    for o in problem.offers:
        most = -1 if o.most is None else o.most
        out += [str(o.supplier), str(o.item), str(o.content * content[o.item])]
        out += [str(o.tiers[0][1] * money), str(o.tiers[0][2] * money), str(most)]
        out.append(str(len(o.tiers) - 1))
        for packs, cost, counted in o.tiers[1:]:
            out += [str(packs), str(cost * money), str(counted * money)]
    has_uses = any(useful for useful, _ in problem.uses)
    out.append(str(len(problem.uses) if has_uses else 0))
    for i, (useful, worth) in enumerate(problem.uses if has_uses else []):
        out += [str(useful * content[i]), str(worth * money / content[i])]
    return " ".join(out) + "\n"


def as_lp(problem):
    """CPLEX LP: x packs of an offer at a tier, z whether that tier is it, y whether a supplier is used."""
    goal, rows, bounds, general, binary = [], [], [], [], []
    cover = [[] for _ in problem.demands]
    counts = [[] for _ in problem.suppliers]
    for s, (fee, _, _) in enumerate(problem.suppliers):
        binary.append(f"y{s}")
        goal.append(f"{fee} y{s}")
    for o, offer in enumerate(problem.offers):
        cap = problem.cap(offer)
        chosen = []
        tiers = [tier for tier in offer.tiers if tier[0] <= cap]
        for t, (first, cost, counted) in enumerate(tiers):
            last = tiers[t + 1][0] - 1 if t + 1 < len(tiers) else cap
            x = f"x{o}_{t}"
            general.append(x)
            bounds.append(f"0 <= {x} <= {last}")
            goal.append(f"{cost} {x}")
            cover[offer.item].append(f"{offer.content} {x}")
            counts[offer.supplier].append(f"{counted} {x}")
            if len(tiers) == 1:
                rows.append(f"{x} - {last} y{offer.supplier} <= 0")
            else:
                z = f"z{o}_{t}"
                binary.append(z)
                chosen.append(z)
                rows.append(f"{x} - {last} {z} <= 0")
                rows.append(f"{x} - {first} {z} >= 0")
        if chosen:
            rows.append(" + ".join(chosen) + f" - y{offer.supplier} <= 0")
    for item, terms in enumerate(cover):
        if problem.demands[item] > 0:
            rows.append(" + ".join(terms) + f" >= {problem.demands[item]}")
        useful, worth = problem.uses[item]
        if useful > 0 and terms:
            goal.append(f"-{worth} g{item}")
            bounds.append(f"0 <= g{item} <= {useful}")
            rows.append(" + ".join(terms) + f" - g{item} >= {problem.demands[item]}")
    for s, terms in enumerate(counts):
        if problem.suppliers[s][1] > 0 and terms:
            rows.append(" + ".join(terms) + f" - {problem.suppliers[s][1]} y{s} >= 0")
    for s, (fee, _, free) in enumerate(problem.suppliers):
        if free is not None and fee > 0 and counts[s]:
            binary.append(f"f{s}")
            goal.append(f"-{fee} f{s}")
            rows.append(f"f{s} - y{s} <= 0")
            rows.append(" + ".join(counts[s]) + f" - {free} f{s} >= 0")
    lines = ["Minimize", " goal: " + "\n  + ".join(goal).replace("+ -", "- "), "Subject To"]
    lines += [f" r{n}: " + row.replace(" + ", "\n  + ") for n, row in enumerate(rows)]
    lines += ["Bounds"] + [" " + b for b in bounds]
    lines += ["General"] + [" " + g for g in general] + ["Binary"] + [" " + b for b in binary]
    return "\n".join(lines + ["End"]) + "\n"


def by_glpsol(problem, folder, seconds):
    """'none', ('plan', packs), ('some plan', packs) where it is not proven to be the best, or None."""
    if any(d > 0 and all(problem.cap(o) == 0 for o in problem.offers if o.item == i)
           for i, d in enumerate(problem.demands)):
        return "none"
    lp, answer = Path(folder) / "problem.lp", Path(folder) / "answer"
    lp.write_text(as_lp(problem))
    answer.unlink(missing_ok=True)
    subprocess.run(
        ["glpsol", "--lp", str(lp), "-w", str(answer), "--mipgap", "0", "--tmlim", str(seconds),
         "--cuts"],
        stdout=subprocess.DEVNULL, check=False)
    if not answer.exists():
        return None
    status = None
    values = []
    for line in answer.read_text().split("\n"):
        word = line.split()
        if word[:1] == ["s"]:
            status = word[4]
        elif word[:1] == ["j"]:
            values.append(float(word[2]))
    if status == "n":
        return "none"
    if status not in ("o", "f"):
        return None
    # Columns stand in the order in which the goal names them.
    names = [f"y{s}" for s in range(len(problem.suppliers))]
    for o, offer in enumerate(problem.offers):
        cap = problem.cap(offer)
        names += [f"x{o}_{t}" for t, tier in enumerate(offer.tiers) if tier[0] <= cap]
    packs = [0] * len(problem.offers)
    for name, value in zip(names, values):  # what follows are the g of leftovers and the f of free deliveries
        if name[0] == "x":
            packs[int(name[1:].split("_")[0])] += round(value)
    return ("plan" if status == "o" else "some plan"), packs


def by_trying(problem):
    """The least total, by trying every number of packs, some beyond what can be of use."""
    ranges = [range(problem.cap(o, spare=2) + 1) for o in problem.offers]
    size = 1
    for each in ranges:
        size *= len(each)
    if size > 300_000:
        return None
    totals = (problem.check(packs)[0] for packs in itertools.product(*ranges))
    return min((t for t in totals if t is not None), default="none")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("solver")
    parser.add_argument("--problems", type=int, default=500)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--seconds", type=int, default=10)
    parser.add_argument("--work", type=int, default=100_000_000)
    parser.add_argument("--sizes", default="tiny,small,small,middle,middle,large")
    parser.add_argument("--verbose", action="store_true")
    parser.add_argument("--free", action="store_true", help="with suppliers who deliver large orders free")
    parser.add_argument("--net", action="store_true", help="with worth of what is left over")
    parser.add_argument("--dump", action="store_true", help="only write the first problem's input")
    options = parser.parse_args()
    solver = None
    counts = dict.fromkeys(["compared", "equal", "none", "dropped", "open", "tried", "wrong"], 0)
    slowest = (0.0, None)
    ours, theirs = 0.0, 0.0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(options.first, options.first + 2 * options.problems):
            if counts["compared"] == options.problems:
                break
            rng = random.Random(seed)
            size = rng.choice(options.sizes.split(","))
            problem = make(rng, size, options.net, options.free)
            money = Fraction(1, rng.choice([100, 107, 11900]))
            content = [rng.choice([Fraction(1), Fraction(45359237, 100000), Fraction(1, 3)])
                       for _ in problem.demands]
            text = as_input(problem, options.work, money, content)
            if options.dump:
                sys.stdout.write(text)
                return 0
            if solver is None:
                solver = subprocess.Popen([options.solver], stdin=subprocess.PIPE,
                                          stdout=subprocess.PIPE, text=True)
            began = time.time()
            solver.stdin.write(text)
            solver.stdin.flush()
            answer = solver.stdout.readline().split()
            taken = time.time() - began
            ours += taken
            if taken > slowest[0]:
                slowest = (taken, seed)

            def wrong(what):
                counts["wrong"] += 1
                print(f"seed {seed} ({size}): {what}")

            if not answer:
                wrong("the solver died")
                solver = None
                continue
            total = None
            is_optimal = True
            if answer[0] == "ok":
                packs = [int(word) for word in answer[5:]]
                total, why = problem.check(packs)
                if why:
                    wrong(f"the plan does not hold: {why}")
                    continue
                if Fraction(answer[1]) != total * money:
                    wrong(f"the plan costs {total * money}, not {answer[1]}")
                bound = Fraction(answer[2]) / money
                is_optimal = bound == total
                if bound > total:
                    wrong(f"the bound {bound} is above the total {total}")
                counts["open"] += not is_optimal
            elif answer[1] == "purchase-too-hard":
                counts["open"] += 1
                is_optimal = False
            if size == "tiny":
                tried = by_trying(problem)
                if tried is not None:
                    counts["tried"] += 1
                    if (tried == "none") != (total is None) or (total is not None and tried != total):
                        wrong(f"trying everything gives {tried}, the solver {total}")
            began = time.time()
            other = by_glpsol(problem, folder, options.seconds)
            theirs += time.time() - began
            if options.verbose:
                print(f"seed {seed} {size} {answer[:3]} {taken:.2f} s, glpsol {time.time()-began:.2f} s"
                      f" {other if other in (None, 'none') else other[0]}", flush=True)
            if other is None:
                counts["dropped"] += 1
                continue
            if other == "none":
                counts["compared"] += 1
                counts["none"] += 1
                if total is None and is_optimal:
                    counts["equal"] += 1
                elif total is not None:
                    wrong(f"glpsol finds no plan, the solver {total}")
                continue
            other_total, why = problem.check(other[1])
            if why:
                counts["dropped"] += 1
                print(f"seed {seed}: glpsol's plan does not hold: {why}")
                continue
            if other[0] == "some plan":
                counts["dropped"] += 1
                if total is None and is_optimal:
                    wrong(f"glpsol finds {other_total}, the solver {answer}")
                elif total is not None and bound > other_total:
                    wrong(f"glpsol finds {other_total}, below the bound {bound}")
                continue
            counts["compared"] += 1
            if total is None:
                if is_optimal:
                    wrong(f"glpsol finds {other_total}, the solver {answer}")
            elif total == other_total:
                counts["equal"] += 1
            elif total < other_total:
                wrong(f"glpsol's {other_total} is not the least: {total}")
            elif is_optimal or bound > other_total:
                wrong(f"glpsol finds {other_total}, the solver {total} with bound {bound}")
    print(", ".join(f"{key} {value}" for key, value in counts.items()))
    print(f"solver {ours:.1f} s, slowest {slowest[0]:.2f} s (seed {slowest[1]}); glpsol {theirs:.1f} s")
    if counts["compared"] < options.problems and not options.dump:
        print(f"only {counts['compared']} of {options.problems} could be compared: glpsol needs more --seconds")
        return 1
    return 1 if counts["wrong"] else 0


if __name__ == "__main__":
    sys.exit(main())
