#pragma once

#include <groat/cost/formulary.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/measure/costed_unit.hpp>
#include <groat/model/convert.hpp>

#include <algorithm>
#include <optional>
#include <tuple>

namespace groat {

namespace formulary_detail {

/// `M · Π(1 − λ)` for the losses of one stage.
inline Number rest_after(Formula const& formula, LossStage stage, Losses losses) {
    Number rest = 1;
    if (losses == Losses::none) return rest;
    for (NamedLoss const& loss : formula.losses)
        if (loss.stage == stage) rest *= loss.share.rest();
    return rest;
}

class Calculator {
public:
    Calculator(Book const& book, Formulary& formulary, std::size_t index, Losses losses)
        : book_(book),
          formulary_(formulary),
          formula_(book.formulas[index]),
          losses_(losses),
          known_(formulary.batches(losses)),
          problems_(formulary.problems[index]) {}

    Batch result() {
        is_sound_ = true;
        for (Line const& line : formula_.lines) batch_.lines.push_back(read(line));
        if (is_sound_) find_unweighed();
        if (is_sound_ && !formula_.percentage_base.empty()) fill_percentages();
        if (!is_sound_) return batch_;
        if (!batch_.unweighed)
            for (BatchLine const& line : batch_.lines) batch_.mass_in += *line.grams;
        if (std::none_of(batch_.lines.begin(), batch_.lines.end(),
                         [](BatchLine const& line) { return line.amount.is_positive(); })) {
            fail(formula_.origin,
                 {"empty-formula", fmt::format("nothing goes into '{}'", formula_.name),
                  "give it lines with amounts above 0"});
            return batch_;
        }
        Number const before = rest_after(formula_, LossStage::before_portioning, losses_);
        Number const after = rest_after(formula_, LossStage::after_portioning, losses_);
        batch_.survival = rest_after(formula_, LossStage::pieces, losses_);
        batch_.mass_out = batch_.mass_in * before * after;
        if (formula_.portion)
            portion_out(before, after);
        else if (formula_.makes_pieces()) {
            batch_.pieces = formula_.makes->amount;
            batch_.portion_grams = batch_.mass_in * before / batch_.pieces;
            batch_.piece_grams = batch_.mass_out / batch_.pieces;
        } else {
            check_made(formula_.makes, batch_.mass_out, "");
        }
        batch_.is_sound = is_sound_;
        return batch_;
    }

private:
    void fail(Span where, Flaw const& flaw) {
        is_sound_ = false;
        problems_.error(where, flaw);
    }

    /// Lines whose mass nobody knows do no harm where pieces are only counted.
    void find_unweighed() {
        bool const is_counted =
            formula_.makes_pieces() && !formula_.portion && formula_.percentage_base.empty();
        for (std::size_t i = 0; i < batch_.lines.size(); ++i) {
            BatchLine const& line = batch_.lines[i];
            if (line.grams || formula_.lines[i].is_percentage()) continue;
            Flaw const flaw = line.is_formula ? *known_[line.index].unweighed
                                              : missing_mass(book_.ingredients[line.index]);
            if (!is_counted)
                fail(formula_.lines[i].origin, flaw);
            else if (!batch_.unweighed)
                batch_.unweighed = flaw;
        }
    }

    BatchLine read(Line const& line) {
        BatchLine result;
        result.index = line.item.index;
        result.is_formula = line.of == Line::Of::formula;
        if (line.of == Line::Of::unknown) {
            is_sound_ = false; // `link` has said so
        } else if (line.is_percentage() && formula_.percentage_base.empty()) {
            fail(line.origin,
                 {"percentage-of-what",
                  fmt::format("'{}' is a percentage, but of what is not said", line.item.name),
                  "add 'percent of:' with the name of the base, such as the flour"});
        } else if (result.is_formula) {
            if (line.is_as_bought || line.yield)
                fail(line.origin,
                     {"yield-of-formula",
                      fmt::format("'{}' is made, not bought: it has no yield", line.item.name),
                      "state what is lost under 'losses' of its formula"});
            if (!known_[result.index].is_sound)
                is_sound_ = false;
            else if (!line.is_percentage())
                read_formula(line, std::get<Quantity>(line.amount), result);
        } else if (!line.is_percentage()) {
            read_ingredient(line, std::get<Quantity>(line.amount), result);
        }
        return result;
    }

    [[nodiscard]] Number yield_of(Line const& line, std::size_t ingredient) const {
        if (line.yield) return line.yield->value();
        if (auto const& purchase = formulary_.costs.purchases[ingredient])
            return purchase->yield.value();
        if (auto const& yield = book_.ingredients[ingredient].yield) return yield->value();
        return 1;
    }

    void read_ingredient(Line const& line, Quantity const& quantity, BatchLine& result) {
        Ingredient const& ingredient = book_.ingredients[result.index];
        auto const amount = amount_in(quantity, ingredient);
        if (!amount) return fail(line.origin, amount.error());
        set_ingredient(line, *amount, result);
        Number const yield = yield_of(line, result.index);
        if (quantity.is(Dimension::count) && !line.is_as_bought && yield != 1)
            problems_.add(
                {Severity::warning,
                 "counted-usable",
                 fmt::format("{} of '{}' is counted as {} ready to use, which takes {} to buy",
                             decimal_at_most(quantity.amount, 3), ingredient.name,
                             amount_text(*amount, ingredient.costed_by()),
                             amount_text(*amount / yield, ingredient.costed_by())),
                 line.origin,
                 {},
                 fmt::format("write '{} as bought' if so many are bought, or a weight in grams if "
                             "so much goes in",
                             decimal_at_most(quantity.amount, 3))});
    }

    void set_ingredient(Line const& line, Number const& amount, BatchLine& result) {
        Number const yield = yield_of(line, result.index);
        result.amount = line.is_as_bought ? amount * yield : amount;
        result.bought = line.is_as_bought ? amount : amount / yield;
        result.is_bought_so = line.is_as_bought || line.yield;
        if (book_.ingredients[result.index].costed_by() == Dimension::mass)
            result.grams = result.amount;
    }

    void read_formula(Line const& line, Quantity const& quantity, BatchLine& result) {
        Formula const& used = book_.formulas[result.index];
        Batch const& batch = known_[result.index];
        if (used.makes_pieces() && quantity.is(Dimension::count)) {
            result.amount = quantity.amount;
            if (!batch.unweighed) result.grams = quantity.amount * batch.piece_grams;
            return;
        }
        auto const grams = grams_of(quantity, used);
        if (!grams) return fail(line.origin, grams.error());
        set_formula(line, *grams, result);
    }

    void set_formula(Line const& line, Number const& grams, BatchLine& result) {
        Batch const& batch = known_[result.index];
        if (batch.unweighed) return fail(line.origin, *batch.unweighed);
        bool const by_piece = book_.formulas[result.index].makes_pieces();
        result.grams = grams;
        result.amount = by_piece ? grams / batch.piece_grams : grams;
    }

    /// Baker's percentages: lines without a quantity are shares of the base's usable mass.
    void fill_percentages() {
        Number base_share;
        Number base_grams;
        std::size_t shares_in_base = 0;
        std::size_t lines_in_base = 0;
        for (Reference const& base : formula_.percentage_base) {
            if (!base.is_resolved()) {
                is_sound_ = false;
                return;
            }
            for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
                Line const& line = formula_.lines[i];
                if (line.item.name != base.name) continue; // a name may stand twice
                ++lines_in_base;
                if (line.is_percentage()) {
                    base_share += std::get<Number>(line.amount);
                    ++shares_in_base;
                } else {
                    base_grams += *batch_.lines[i].grams;
                }
            }
        }
        if (shares_in_base == 0 && formula_.total_grams)
            return fail(
                formula_.origin,
                {"total-of-what",
                 fmt::format("'{}' has a total, but its base is weighed already", formula_.name),
                 "leave 'total' out, or give the base percentages"});
        if (shares_in_base > 0) {
            if (shares_in_base != lines_in_base)
                return fail(formula_.percentage_base.front().origin,
                            {"mixed-base", "the base has percentages and quantities",
                             "give all lines of the base a percentage, or all a quantity"});
            if (base_share != 1)
                return fail(formula_.percentage_base.front().origin,
                            {"base-not-whole",
                             fmt::format("the percentages of the base add up to {} %",
                                         decimal_at_most(base_share * 100, 4)),
                             "they have to add up to 100 %"});
            auto const total = wanted_total();
            if (!total)
                return fail(formula_.origin,
                            {"missing-total",
                             fmt::format("'{}' has percentages but no mass to scale them to",
                                         formula_.name),
                             "add 'total: 5 kg', or a portion and how many pieces it makes"});
            Number sum;
            Number fixed;
            for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
                if (formula_.lines[i].is_percentage())
                    sum += std::get<Number>(formula_.lines[i].amount);
                else
                    fixed += *batch_.lines[i].grams;
            }
            if (*total <= fixed)
                return fail(
                    formula_.origin,
                    {"total-too-small",
                     fmt::format("the total of {} is used up by the lines with quantities ({})",
                                 mass_text(*total), mass_text(fixed)),
                     "raise 'total', or give those lines percentages"});
            base_grams = (*total - fixed) / sum;
        }
        for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
            Line const& line = formula_.lines[i];
            if (!line.is_percentage()) continue;
            Number const grams = std::get<Number>(line.amount) * base_grams;
            BatchLine& result = batch_.lines[i];
            if (result.is_formula)
                set_formula(line, grams, result);
            else if (Ingredient const& food = book_.ingredients[result.index];
                     food.costed_by() == Dimension::mass)
                set_ingredient(line, grams, result);
            else
                fail(line.origin, missing_mass(food));
        }
    }

    [[nodiscard]] std::optional<Number> wanted_total() {
        if (formula_.total_grams) return formula_.total_grams;
        if (!formula_.portion || !formula_.makes || !formula_.makes->is(Dimension::count))
            return std::nullopt;
        auto const portion = portion_grams();
        if (!portion) return std::nullopt;
        return formula_.makes->amount * *portion /
               rest_after(formula_, LossStage::before_portioning, Losses::all);
    }

    [[nodiscard]] std::optional<Number> portion_grams() {
        auto const grams = grams_of(*formula_.portion, formula_);
        if (grams) return *grams;
        fail(formula_.origin, grams.error());
        return std::nullopt;
    }

    void portion_out(Number const& before, Number const& after) {
        auto const portion = portion_grams();
        if (!portion) return;
        batch_.portion_grams = *portion;
        batch_.pieces = batch_.mass_in * before / *portion;
        batch_.piece_grams = *portion * after;
        check_made(formula_.makes, batch_.pieces, " pieces");
    }

    /// A stated outcome that is more than 5 % off the calculated one is worth a word; the calculated one rules.
    void check_made(std::optional<Quantity> const& stated, Number const& calculated,
                    std::string_view noun) {
        if (!stated || losses_ == Losses::none || formula_.percentage_base.size() > 0) return;
        Number const off = calculated - stated->amount;
        if ((off.is_negative() ? -off : off) * 20 <= stated->amount) return;
        auto const show = [&](Number const& amount) {
            return noun.empty() ? mass_text(amount) : decimal_at_most(amount, 1);
        };
        problems_.warn(formula_.origin, "made-differs",
                       fmt::format("'{}' says it makes {}{}, but its lines and losses make {}",
                                   formula_.name, show(stated->amount), noun, show(calculated)),
                       "the latter is used: check the lines, the portion and the losses");
    }

    Book const& book_;
    Formulary& formulary_;
    Formula const& formula_;
    Losses losses_;
    std::vector<Batch> const& known_;
    Diagnostics& problems_;
    Batch batch_;
    bool is_sound_ = false;
};

/// What the ways of selling a formula must have in common with how it is made.
inline void check_sale_units(Formula const& formula, Diagnostics& problems) {
    for (SaleUnit const& unit : formula.sold_as)
        if (unit.holds.is(Dimension::count) != formula.makes_pieces())
            problems.error(unit.origin, "wrong-dimension",
                           fmt::format("'{}' holds a {}, but '{}' is made {}", unit.name,
                                       to_text(unit.holds.dimension), formula.name,
                                       formula.makes_pieces() ? "in pieces" : "by mass"),
                           formula.makes_pieces() ? "write how many pieces it holds, as 'holds: 12'"
                                                  : "write how much it holds, as 'holds: 250 g'");
}

/// What is paid by the mix needs to know how much of it there is.
inline void check_mixes(Formula const& formula, Diagnostics& problems) {
    if (formula.largest_mix) return;
    auto const paid =
        std::find_if(formula.labour.begin(), formula.labour.end(),
                     [](Task const& task) { return task.per == Per::mix && !task.is_unattended; });
    if (paid == formula.labour.end()) return;
    problems.warn(
        paid->origin, "mix-not-stated",
        fmt::format("'{}' is paid by the mix, and how many batches of '{}' are mixed at "
                    "once is not said: each is taken for a mix of its own",
                    paid->name, formula.name),
        "add 'largest mix: 2' to the formula if two batches go in at once, 1 if it is one");
}

} // namespace formulary_detail

GROAT_INLINE Formulary formulary_of(Book const& book, Date date) {
    Formulary formulary{unit_costs(book, date), formula_order(book), {}, {}, {}};
    std::size_t const count = book.formulas.size();
    formulary.with_losses.resize(count);
    formulary.without_losses.resize(count);
    formulary.problems.resize(count);
    for (std::size_t const index : formulary.order.sequence) {
        using formulary_detail::Calculator;
        formulary.with_losses[index] = Calculator(book, formulary, index, Losses::all).result();
        formulary.without_losses[index] = Calculator(book, formulary, index, Losses::none).result();
        formulary_detail::check_sale_units(book.formulas[index], formulary.problems[index]);
        formulary_detail::check_mixes(book.formulas[index], formulary.problems[index]);
    }
    return formulary;
}

} // namespace groat
