#pragma once

#include <groat/sheets/work_sections.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/pricing.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/measure_words.hpp>
#include <groat/sheets/shape_make.hpp>

#include <string>
#include <utility>
#include <vector>

namespace groat {

GROAT_INLINE Cell scale_weight(Number const& grams) {
    return Figure{decimal_at_most(grams, grams >= 100 ? 0 : grams >= 10 ? 1 : 2), grams, "g"};
}

GROAT_INLINE Cell scale_amount(Number const& amount, Dimension dimension) {
    if (dimension == Dimension::mass) return scale_weight(amount);
    if (dimension == Dimension::volume) return Figures::amount_of(amount, dimension);
    return Figure{decimal_at_most(amount, 2) + (amount == 1 ? " piece" : " pieces"), amount,
                  "each"};
}

namespace work_sections_detail {

inline std::string mix_words(Work const& work, Figures const& figures) {
    auto const batches = [&](MixSize const& size) {
        return fmt::format("{} {}", figures.number(size.batches, 3),
                           size.batches == 1 ? "batch" : "batches");
    };
    MixSize const& first = work.mixes.front();
    if (work.run.mixes == 1) return batches(first) + " at once";
    std::string const words =
        fmt::format("{} × {}", figures.number(Number(first.count)), batches(first));
    if (work.mixes.size() == 1) return words;
    return fmt::format("{}, then {} × {}", words, figures.number(Number(work.mixes[1].count)),
                       batches(work.mixes[1]));
}

/// "deck, 2 loads of 10 minutes: 80 and then 23, 20 to a tray"
inline std::string oven_words(Work const& work, Formula const& formula, Figures const& figures) {
    OvenUse const& use = *formula.oven;
    Number const loads = *work.run.loads;
    auto const amount = [&](Number const& number) {
        return formula.makes_pieces() ? figures.number(number, 1) : figures.mass(number);
    };
    Number const last =
        (formula.makes_pieces() ? work.run.started : work.mass_in) - (loads - 1) * use.holds.amount;
    std::string words =
        fmt::format("{}, {} {} of {} minutes: ", use.oven.name, figures.number(loads),
                    loads == 1 ? "load" : "loads", figures.number(use.minutes, 1));
    if (loads > 1) {
        words += amount(use.holds.amount);
        if (last != use.holds.amount)
            words += fmt::format("{}, the last {}", loads > 2 ? " each" : "", amount(last));
        else
            words += " each";
    } else {
        words += amount(last);
    }
    if (use.trays)
        words += fmt::format("; {} to a tray", amount(use.holds.amount / Number(*use.trays)));
    return words;
}

/// A stretch of the work that is weighed at once.
struct Weighing {
    std::string key;
    std::string title;
    Number batches;
    bool is_in_hand; ///< so that counts and measures are wanted beside it
};

inline std::vector<Weighing> weighings(Work const& work, Formula const& formula,
                                       Figures const& figures) {
    std::vector<Weighing> columns;
    bool const is_mixed = !work.mixes.empty() && work.run.mixes > 1;
    if (is_mixed) {
        MixSize const& first = work.mixes.front();
        bool const is_even = work.mixes.size() == 1;
        auto const title = [&](Integer const& count, std::string_view one) {
            return count == 1 ? std::string(one)
                              : fmt::format("Each of {}", figures.number(Number(count)));
        };
        columns.push_back({"mix", title(first.count, "First mix") + (is_even ? " mixes" : ""),
                           first.batches, true});
        if (!is_even)
            columns.push_back(
                {"last_mix", title(work.mixes[1].count, "Last mix"), work.mixes[1].batches, true});
    }
    bool const is_put_together = work.mixes.empty() && formula.makes_pieces() && !formula.portion &&
                                 formula.makes->amount == 1;
    if (is_put_together && work.run.made != 1) columns.push_back({"piece", "A piece", 1, true});
    columns.push_back({"all", columns.empty() ? "Weigh" : "All", work.run.made, !is_mixed});
    return columns;
}

/// A line on the scale, or counted or by volume where no mass of it is known.
inline Cell weighed(BatchLine const& line, Number const& batches, Book const& book) {
    if (line.grams) return scale_weight(*line.grams * batches);
    return scale_amount(line.amount * batches, line.is_formula
                                                   ? Dimension::count
                                                   : book.ingredients[line.index].costed_by());
}

/// How a line is counted or measured, for so many batches.
inline std::string hand_words(BatchLine const& line, Number const& batches, Book const& book,
                              Figures const& figures) {
    if (line.is_formula) {
        if (!book.formulas[line.index].makes_pieces() || !line.grams) return {};
        Number const pieces = line.amount * batches;
        return whole_words(pieces, figures) + (pieces > 1 ? " pieces" : " piece");
    }
    Ingredient const& ingredient = book.ingredients[line.index];
    std::string words;
    auto const add = [&](std::string const& more) { words += (words.empty() ? "" : ", ") + more; };
    if (ingredient.grams_each)
        add(whole_words(line.bought * batches / *ingredient.grams_each, figures));
    else if (book.shop.measures_by_cup)
        if (auto const kitchen = ingredient.costed_by() == Dimension::volume
                                     ? kitchen_measures(book.shop.measures)
                                     : kitchen_measures(ingredient.densities, book.shop.measures))
            if (auto const nearest = nearest_measure(line.amount * batches, *kitchen))
                add(measure_words(*nearest, figures));
    if (line.bought != line.amount)
        add("from " + figures.words_of(line.bought * batches, ingredient.costed_by()));
    return words;
}

inline Cell percent(Number const& share) {
    return Figure{decimal_at_most(share * 100, 2), share, "%"};
}

inline std::string const& name_of(BatchLine const& line, Book const& book) {
    return line.is_formula ? book.formulas[line.index].name : book.ingredients[line.index].name;
}

} // namespace work_sections_detail

GROAT_INLINE Facts work_facts(Work const& work, std::size_t number, Book const& book) {
    Figures const figures(book.shop);
    Formula const& formula = book.formulas[work.run.formula];
    FactsOf<sheet_shapes::make::making> facts(
        fmt::format("{}. {}", number, in_sentence(formula.name)), formula.name);
    if (!work.mixes.empty())
        facts.add("mixes", "Mix", work_sections_detail::mix_words(work, figures));
    if (formula.makes_pieces()) {
        Number const good = ceiling(work.run.to_make());
        std::string words = figures.number(work.run.started, 1);
        if (work.run.started != good)
            words += fmt::format(", for {} good ones", figures.number(good));
        facts.add("pieces", formula.portion ? "Portion" : "Pieces", std::move(words));
        if (formula.portion)
            facts.add("scale", "Scale each at", Figures::grams(work.portion_grams));
        if (work.is_weighed)
            facts.add("finished", "A piece when done", Figures::grams(work.piece_grams));
    } else {
        facts.add("gives", "Gives", Figures::grams(work.mass_out));
    }
    if (formula.oven && work.run.loads)
        facts.add("oven", "Oven", work_sections_detail::oven_words(work, formula, figures));
    if (!work.leftover().is_zero())
        facts.add("left", "Left over",
                  (formula.makes_pieces() ? figures.number(work.leftover(), 1) + " pieces' worth"
                                          : figures.mass(work.leftover())) +
                      (formula.keeps_leftover ? ", to keep" : ""));
    if (std::string words = keeping_words(formula.keeping); !words.empty())
        facts.add("keep", "Then", in_sentence(std::move(words)));
    return facts;
}

GROAT_INLINE Table work_lines(Work const& work, Book const& book) {
    Figures const figures(book.shop);
    Formula const& formula = book.formulas[work.run.formula];
    Table table = table_of<sheet_shapes::make::weighing>("", {{"line"}});
    table.of = formula.name;
    std::vector<std::vector<Cell>> rows;
    for (WorkLine const& line : work.lines)
        rows.push_back({in_sentence(work_sections_detail::name_of(line.batch, book))});
    std::vector<Cell> total{std::string("Total")};
    for (auto const& column : work_sections_detail::weighings(work, formula, figures)) {
        using Weighed = MemberOf<sheet_shapes::make::weighing>;
        add_column<sheet_shapes::make::weighing>(
            table, {Weighed::named(column.key), column.title + ", g"});
        std::vector<std::string> words;
        bool has_words = false;
        bool has_measures = false;
        Number sum;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            BatchLine const& line = work.lines[i].batch;
            rows[i].push_back(work_sections_detail::weighed(line, column.batches, book));
            sum += line.grams.value_or(0) * column.batches;
            words.push_back(column.is_in_hand ? work_sections_detail::hand_words(
                                                    line, column.batches, book, figures)
                                              : std::string());
            has_words = has_words || !words.back().empty();
            has_measures =
                has_measures || (has_words && book.shop.measures_by_cup && !line.is_formula);
        }
        total.push_back(work.is_weighed ? scale_weight(sum) : Cell());
        if (!has_words) continue;
        add_column<sheet_shapes::make::weighing>(
            table, {Weighed::named(column.key + "_in_hand"), has_measures ? "Measure" : "Count"});
        for (std::size_t i = 0; i < rows.size(); ++i) rows[i].emplace_back(words[i]);
        total.emplace_back();
    }
    if (!work.lines.empty() && work.lines.front().percent) {
        add_column<sheet_shapes::make::weighing>(table, {"percent", "Baker's %"});
        Number sum;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            rows[i].push_back(work_sections_detail::percent(*work.lines[i].percent));
            sum += *work.lines[i].percent;
        }
        total.push_back(work_sections_detail::percent(sum));
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
        table.rows.push_back(
            {work_sections_detail::name_of(work.lines[i].batch, book), std::move(rows[i])});
    if (work.lines.size() > 1) table.rows.push_back({"total", std::move(total), Row::Kind::total});
    return table;
}

} // namespace groat
