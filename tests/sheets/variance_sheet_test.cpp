#include "runs.hpp"
#include "sheets.hpp"

#include <groat/paper/text.hpp>
#include <groat/sheets/variance_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Sheet variance_sheet(Book& book) {
    link_well(book);
    Costing const costing(linked(book), today);
    auto const variance =
        calculated([&](Diagnostics& found) { return order_variance(costing, 0, found); });
    return order_variance_sheet(variance, costing);
}

/// One shell of 1 kg of flour at 2.00, and ten minutes at 18.00 an hour.
Book one_shell() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "salt", "1 kg", "1.00");
    role(book, "baker", "18.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}, {"salt", "10 g"}});
    shell.makes = quantity("1");
    shell.labour = {task("bake", "baker", "10")};
    wants(order(book, "7"), "shell", 1);
    a_run(book, "Monday", "shell", "7").good = 1;
    return book;
}

/// What a reader adds up: a printed figure as a number.
Number read(std::string const& printed) { return number(printed); }

} // namespace

TEST_CASE("the sheet says in words which way each difference goes") {
    Book book = one_shell();
    book.runs[0].used.push_back({named("flour"), quantity("900 g"), money("2.25")});
    book.runs[0].worked.push_back({named("baker"), 10, rate("18.00", "h")});
    Sheet const sheet = variance_sheet(book);
    Table const& parts = table(sheet, "difference");
    // 2.00 + 0.01 + 3.00; 900 g at 2.50 instead of 2.00, and 100 g less
    CHECK(shown(parts, "standard", "cost") == "5.01");
    CHECK(shown(parts, "price", "cost") == "0.45");
    CHECK(shown(parts, "price", "judged") == "unfavourable: dearer than costed");
    CHECK(shown(parts, "usage", "cost") == "-0.20");
    CHECK(shown(parts, "usage", "judged") == "favourable: less than allowed");
    CHECK(shown(parts, "rate", "judged") == "as costed");
    CHECK(shown(parts, "actual", "cost") == "5.26");
    CHECK(shown(table(sheet, "ingredients"), "flour", "price") == "2.50");
    CHECK(says(table(sheet, "ingredients").remark, "salt"));
    CHECK(find_row(table(sheet, "ingredients"), "salt") == nullptr);
}

TEST_CASE("what was not used at all has no price that was paid") {
    Book book = one_shell();
    book.runs[0].used.push_back({named("salt"), quantity("0 g"), {}});
    Table const salt = table(variance_sheet(book), "ingredients");
    CHECK(shown(salt, "salt", "price").empty());
    CHECK(shown(salt, "salt", "by_quantity") == "-0.01");
}

TEST_CASE("printed, the sheet adds up down and across") {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        Book book = random_book(seed);
        link_well(book);
        Draw draw(seed);
        (void)random_runs(book, draw);
        Sheet const sheet = variance_sheet(book);
        Table const& parts = table(sheet, "difference");
        Number sum;
        for (std::string_view part : {"standard", "price", "usage", "rate", "time"})
            sum += read(shown(parts, part, "cost"));
        CHECK(sum == read(shown(parts, "actual", "cost")));
        for (std::string_view things : {"ingredients", "labour"}) {
            Table const& all = table(sheet, things);
            Number by_price;
            Number by_quantity;
            for (Row const& row : all.rows) {
                Number const price = read(shown(all, row.key, "by_price"));
                Number const quantity = read(shown(all, row.key, "by_quantity"));
                CHECK(price + quantity == read(shown(all, row.key, "difference")));
                if (row.kind == Row::Kind::total) continue;
                by_price += price;
                by_quantity += quantity;
            }
            if (all.rows.empty()) continue;
            bool const is_food = things == "ingredients";
            CHECK(by_price == read(shown(parts, is_food ? "price" : "rate", "cost")));
            CHECK(by_quantity == read(shown(parts, is_food ? "usage" : "time", "cost")));
        }
        CHECK_FALSE(to_text(sheet).empty());
    }
}
