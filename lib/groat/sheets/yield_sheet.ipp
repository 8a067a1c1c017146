#pragma once

#include <groat/sheets/yield_sheet.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_review.hpp>

#include <numeric>
#include <span>
#include <string>
#include <tuple>
#include <utility>

namespace groat {

namespace yield_sheet_detail {

/// Money per gram as money per kilogram or pound.
inline Number kilogram() { return 1000; }
inline Number pound() { return find_unit("lb", Measures::us)->factor; }

inline bool is_in_pounds(Book const& book) { return book.shop.measures == Measures::us; }

inline Cell factor(Number const& value) { return Figure{decimal(value, 3), value, "each"}; }

/// The difference of two percentages.
inline Cell points(Number const& difference) {
    return Figure{decimal(difference * 100, 1), difference * 100, "points"};
}

/// The unit of a column of masses, by its largest.
struct MassUnit {
    Number grams;
    std::string word;
    unsigned places;
};
inline MassUnit mass_unit(Number const& largest) {
    return largest >= 1000 ? MassUnit{1000, "kg", 3} : MassUnit{1, "g", 1};
}

inline Cell mass(Number const& grams, MassUnit const& unit) {
    return Figure{decimal(grams / unit.grams, unit.places), grams / unit.grams, unit.word};
}

/// A whole from the usable part and the others, as cells, the whole last. The usable part and the whole are
/// rounded each by itself, as they are where they stand alone; the others, so that all adds up as printed.
inline std::vector<Cell> whole_in_parts(std::vector<Number> parts, std::string const& unit,
                                        unsigned places) {
    Number const step = decimal_step(places);
    Number const whole = std::accumulate(parts.begin(), parts.end(), Number());
    Number const printed_whole = round_to(whole, step, Tie::half_even);
    std::vector<Number> printed{round_to(parts.front(), step, Tie::half_even)};
    if (parts.size() > 1) {
        auto const others =
            round_to_total(std::span(parts).subspan(1), step, printed_whole - printed.front());
        printed.insert(printed.end(), others.begin(), others.end());
    }
    parts.push_back(whole);
    printed.push_back(printed_whole);
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < parts.size(); ++i)
        cells.emplace_back(Figure{decimal(printed[i], places), parts[i], unit});
    return cells;
}

inline Table tests(YieldReview const& review, Book const& book) {
    std::string const& name = book.ingredients[review.ingredient].name;
    Number largest;
    bool has_supplier = false;
    for (TestedYield const& each : review.tests) {
        YieldTest const& test = book.yield_tests[each.test];
        largest = std::max(largest, test.bought_grams);
        has_supplier = has_supplier || test.supplier.is_given();
    }
    MassUnit const unit = mass_unit(largest);
    Table table = table_of<sheet_shapes::yields::tests>(in_sentence(name),
                                                        {{"test", "Test"}, {"date", "Date"}});
    table.of = name;
    if (has_supplier) add_column<sheet_shapes::yields::tests>(table, {"supplier", "From"});
    add_column<sheet_shapes::yields::tests>(table,
                                            {"bought", fmt::format("Bought, {}", unit.word)});
    add_column<sheet_shapes::yields::tests>(table,
                                            {"usable", fmt::format("Usable, {}", unit.word)});
    add_column<sheet_shapes::yields::tests>(table, {"yield", "Yield"});
    add_column<sheet_shapes::yields::tests>(table, {"factor", "Yield factor"});
    for (TestedYield const& each : review.tests) {
        YieldTest const& test = book.yield_tests[each.test];
        std::vector<Cell> cells{test.name, test.date ? Figures::short_day(*test.date) : Cell()};
        if (has_supplier) cells.emplace_back(test.supplier.name);
        cells.push_back(mass(test.bought_grams, unit));
        cells.push_back(mass(test.usable_grams(), unit));
        cells.push_back(Figures::percent(each.yield.value()));
        cells.push_back(factor(each.yield_factor()));
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    if (review.tests.size() == 1) {
        table.remark = "One test is little to go by: weigh another lot.";
        return table;
    }
    std::vector<Cell> together(table.columns.size());
    together.front() = std::string("All tests");
    together[together.size() - 2] = Figures::percent(review.range.pooled.value());
    together.back() = factor(1 / review.range.pooled.value());
    table.rows.push_back({"total", std::move(together), Row::Kind::total});
    return table;
}

inline Facts range(YieldReview const& review, Book const& book) {
    YieldRange const& range = review.range;
    return {"range",
            "",
            {{"tests", "Tests", Figures::count(Number(range.tests))},
             {"mean", "Mean of the yields", Figures::percent(range.mean)},
             {"lowest", "Lowest", Figures::percent(range.lowest)},
             {"highest", "Highest", Figures::percent(range.highest)},
             {"spread", "Spread", points(range.spread())},
             {"deviation", "Away from the mean, on average", points(range.deviation)}},
            book.ingredients[review.ingredient].name};
}

/// Where every gram of a test went that states its trim.
inline Table parts(TestedYield const& tested, Book const& book, Figures const& figures) {
    YieldTest const& test = book.yield_tests[tested.test];
    bool const has_worth = !tested.by_product.is_zero();
    std::vector<std::string> words{"Usable"};
    std::vector<Number> grams{test.usable_grams()};
    std::vector<Money> worth{Money()};
    for (TrimPart const& part : test.trim) {
        words.push_back(in_sentence(part.name));
        grams.push_back(part.grams);
        worth.push_back(part.value());
    }
    if (Number const rest = test.unexplained_grams(); !rest.is_zero()) {
        words.emplace_back("Unaccounted for");
        grams.push_back(rest);
        worth.emplace_back();
    }
    words.emplace_back("Bought");
    MassUnit const unit = mass_unit(test.bought_grams);
    std::vector<Number> sizes;
    std::vector<Number> shares;
    for (Number const& each : grams) {
        sizes.push_back(each / unit.grams);
        shares.push_back(each / test.bought_grams * 100);
    }
    Table table = table_of<sheet_shapes::yields::parts>(
        fmt::format("Where it went: {}", test.name),
        {{"part"}, {"mass", fmt::format("Mass, {}", unit.word)}, {"share", "Of what was bought"}});
    table.of = test.name;
    if (has_worth) add_column<sheet_shapes::yields::parts>(table, {"worth", "Worth if used"});
    std::vector<Cell> const mass_cells = whole_in_parts(std::move(sizes), unit.word, unit.places);
    std::vector<Cell> const worth_cells = figures.column(worth);
    std::vector<Cell> share_cells = whole_in_parts(std::move(shares), "%", 1);
    for (std::size_t i = 0; i < words.size(); ++i) {
        std::get<Figure>(share_cells[i]).exact /= 100; // exact percentages are shares
        table.rows.push_back({words[i], {words[i], mass_cells[i], share_cells[i]}});
        if (!has_worth) continue;
        bool const is_blank = i < worth.size() && worth[i].is_zero();
        table.rows.back().cells.push_back(is_blank ? Cell() : worth_cells[i]);
    }
    table.rows.back().kind = Row::Kind::total;
    return table;
}

inline Table costs(YieldReview const& review, Book const& book, Figures const& figures) {
    std::string const& name = book.ingredients[review.ingredient].name;
    bool has_by_product = false;
    for (TestedYield const& each : review.tests)
        has_by_product = has_by_product || (each.usable_cost && !each.by_product.is_zero());
    Table table = table_of<sheet_shapes::yields::costs>(
        fmt::format("What it cost: {}", name),
        {{"test", "Test"}, {"paid", "Paid"}, {"bought_kg", "AP price per kg"}});
    table.of = name;
    if (has_by_product)
        add_column<sheet_shapes::yields::costs>(table, {"by_product", "By-product"});
    add_column<sheet_shapes::yields::costs>(table, {"usable_kg", "Usable cost per kg"});
    if (is_in_pounds(book))
        add_column<sheet_shapes::yields::costs>(table, {"usable_lb", "Usable cost per lb"});
    add_column<sheet_shapes::yields::costs>(table, {"cost_factor", "Cost factor"});
    for (TestedYield const& each : review.tests) {
        if (!each.usable_cost) continue;
        YieldTest const& test = book.yield_tests[each.test];
        std::vector<Cell> cells{test.name, figures.money(*test.price),
                                figures.money(*each.unit_cost * kilogram())};
        if (has_by_product)
            cells.push_back(each.by_product.is_zero() ? Cell() : figures.money(-each.by_product));
        cells.push_back(figures.money(*each.usable_cost * kilogram()));
        if (is_in_pounds(book)) cells.push_back(figures.money(*each.usable_cost * pound()));
        auto const cost_factor = each.cost_factor();
        cells.push_back(cost_factor ? factor(*cost_factor) : Cell());
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    table.remark = "AP: as purchased. Cost factor: the cost of a usable unit over the AP price.";
    if (!has_by_product) return table;
    table.remark +=
        book.ingredients[review.ingredient].uses_by_products
            ? " What the by-product is worth comes off, here and in every cost, as the books say "
              "that it is used."
            : " What the by-product is worth comes off here, and in no cost or quote: it is saved "
              "only when it is used. Where it is, write 'by-products: used' at the ingredient.";
    return table;
}

/// Who says it, and on what ground.
inline std::string source_words(YieldInBooks const& books, Book const& book) {
    if (!books.is_said) return "nobody";
    std::string const who = books.is_own ? "the offer" : "the ingredient";
    switch (books.source.kind) {
    case YieldSource::Kind::stated: return who;
    case YieldSource::Kind::one_test:
        return fmt::format("{}, by '{}'", who, book.yield_tests[books.source.test.index].name);
    case YieldSource::Kind::all_tests: return who + ", by all tests";
    }
    return who;
}

inline Table in_books(YieldReview const& review, Book const& book, Figures const& figures) {
    std::string const& name = book.ingredients[review.ingredient].name;
    Table table = table_of<sheet_shapes::yields::books>(fmt::format("In the books: {}", name),
                                                        {{"offer"},
                                                         {"said_by", "Said by"},
                                                         {"yield", "Yield"},
                                                         {"tested", "Tested"},
                                                         {"points", "Points apart"},
                                                         {"usable_kg", "Usable cost per kg"},
                                                         {"tested_kg", "Tested price per kg"},
                                                         {"dearer_kg", "Dearer per kg"}});
    table.of = name;
    bool has_mark = false;
    for (YieldInBooks const& each : review.books) {
        bool const is_marked = each.is_bought_by && review.books.size() > 1;
        has_mark = has_mark || is_marked;
        auto const per_kilogram = [&](std::optional<Money> const& cost) {
            return cost ? figures.money(*cost * kilogram()) : Cell();
        };
        auto const difference = each.difference();
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {(each.offer ? offer_words(book.offers[*each.offer], book)
                          : std::string("no offer in force")) +
                  (is_marked ? " *" : ""),
              source_words(each, book), Figures::percent(each.yield.value()),
              each.tested ? Figures::percent(each.tested->pooled.value()) : Cell(),
              difference ? points(*difference) : Cell(), per_kilogram(each.usable_cost),
              per_kilogram(each.usable_tested), per_kilogram(each.dearer())}});
    }
    if (has_mark) table.remark = "* costs go by this offer";
    return table;
}

/// What it means where the books lie outside the tests.
inline Remarks remarks(YieldReview const& review, Book const& book, Figures const& figures) {
    Remarks result =
        remarks_of<sheet_shapes::yields::remarks>("", {}, book.ingredients[review.ingredient].name);
    for (YieldInBooks const& each : review.books) {
        if (!each.is_outside_tests()) continue;
        bool const is_above = each.yield.value() > each.tested->highest;
        std::string words = fmt::format(
            "The books say {}, and {} of {} tests gave {}", figures.share(each.yield.value()),
            is_above ? "none" : "every one", each.tested->tests, is_above ? "as much" : "more");
        if (auto const dearer = each.dearer()) {
            words += fmt::format(": as tested, a usable kilogram from {} costs {} {}",
                                 offer_words(book.offers[*each.offer], book),
                                 figures.full_amount((is_above ? *dearer : -*dearer) * kilogram()),
                                 is_above ? "more" : "less");
        }
        result.lines.push_back(words + ".");
    }
    return result;
}

} // namespace yield_sheet_detail

GROAT_INLINE Sheet yield_sheet(std::vector<YieldReview> const& reviews, Book const& book,
                               Date date) {
    Figures const figures(book.shop);
    Sheet sheet =
        sheet_for(book.shop, "yields", "maker",
                  fmt::format("Yield tests, with the offers in force on {}", figures.date(date)));
    for (YieldReview const& review : reviews) {
        sheet.sections.emplace_back(yield_sheet_detail::tests(review, book));
        if (review.tests.size() > 1)
            sheet.sections.emplace_back(yield_sheet_detail::range(review, book));
        for (TestedYield const& each : review.tests)
            if (!book.yield_tests[each.test].trim.empty())
                sheet.sections.emplace_back(yield_sheet_detail::parts(each, book, figures));
        Table costs = yield_sheet_detail::costs(review, book, figures);
        if (!costs.rows.empty()) sheet.sections.emplace_back(std::move(costs));
        sheet.sections.emplace_back(yield_sheet_detail::in_books(review, book, figures));
        Remarks remarks = yield_sheet_detail::remarks(review, book, figures);
        if (!remarks.lines.empty()) sheet.sections.emplace_back(std::move(remarks));
    }
    return sheet;
}

} // namespace groat
