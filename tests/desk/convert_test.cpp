#include <groat/desk/convert.hpp>

#include "sheets.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Asked const plain{"340 g", "flour", "cup"};

template <class T> std::string refused(Result<T> const& result) {
    return result ? "given" : result.error().what;
}

/// The amount on a sheet, as shown.
std::string amount(Result<Sheet> const& sheet) {
    REQUIRE_MESSAGE(sheet.has_value(), sheet.error().what);
    return shown(section<Facts>(*sheet, "result")->facts.front().value);
}

} // namespace

TEST_CASE("an amount and a unit are needed, and between them what it is of") {
    std::vector<std::string> const three{"340 g", "flour", "cup"};
    auto const asked = desk::asked_in(three);
    REQUIRE(asked.has_value());
    CHECK(asked->amount == "340 g");
    CHECK(asked->item == "flour");
    CHECK(asked->unit == "cup");
    std::vector<std::string> const two{"350 F", "C"};
    CHECK(desk::asked_in(two)->item.empty());
    CHECK(!desk::asked_in({"350 F"}));
    CHECK(!desk::asked_in({"1", "cup", "flour", "g"}));
}

TEST_CASE("a temperature takes no books, and is of nothing") {
    CHECK(desk::is_about_temperature({"350 F", "", "C"}));
    CHECK(desk::is_about_temperature({"350", "", "C"}));
    CHECK(!desk::is_about_temperature(plain));
    CHECK(amount(desk::temperature_sheet({"350 F", "", "C"})) == "176.667"); // 250 * 5/9 + 37.778
    CHECK(refused(desk::temperature_sheet({"350 F", "flour", "C"})) ==
          "a temperature is the same for 'flour' as for anything else");
    CHECK(refused(desk::temperature_sheet({"350 F", "", "kg"})) ==
          "a temperature cannot become 'kg'");
    CHECK(refused(desk::temperature_sheet({"2 kg", "", "C"})) ==
          "'2 kg' is no temperature and cannot become °C");
}

TEST_CASE("books are needed for a thing, and for whose cup it is where nobody says it") {
    Asked const cup{"1 cup", "", "mL"};
    CHECK(amount(*desk::sheet_without_books({"350 F", "", "C"}, "", true)) == "176.667");
    CHECK(amount(*desk::sheet_without_books(cup, "metric", true)) == "250");
    CHECK(desk::sheet_without_books(cup, "", false).has_value());
    CHECK_FALSE(desk::sheet_without_books(cup, "", true));
    CHECK_FALSE(desk::sheet_without_books(plain, "metric", false));
}

TEST_CASE("an amount goes by what the books say of the thing") {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00").densities.push_back(density("125 g / cup"));
    formula(book, "bun", {{"flour", "50 g"}}).makes = quantity("1");
    link_well(book);
    auto const flour = desk::thing_called(book, "flour");
    REQUIRE(flour.has_value());
    CHECK(amount(desk::amount_sheet(plain, Measures::us, *flour, Sources())) == "2.72");
    CHECK(desk::thing_called(book, "bun")->name == "bun");
    CHECK(desk::thing_called(book, "")->name.empty());
    CHECK(refused(desk::thing_called(book, "flower")) ==
          "no ingredient or formula is called 'flower'");
}

TEST_CASE("a bare cup is that of the measures named") {
    CHECK(desk::measures_called("us") == Measures::us);
    CHECK(desk::measures_called("metric") == Measures::metric);
    Asked const cup{"1 cup", "", "mL"};
    CHECK(amount(desk::amount_sheet(cup, desk::measures_called("metric"), {}, Sources())) == "250");
    CHECK(!desk::amount_sheet({"much", "", "mL"}, Measures::us, {}, Sources()));
    CHECK(!desk::amount_sheet({"1 cup", "", "heap"}, Measures::us, {}, Sources()));
}
