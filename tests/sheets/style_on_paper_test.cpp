// The style of a sheet in every form: for people as declared, for programs plain.
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>

#include "sheets.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Style styled(std::string_view example, std::string_view dates = "31.12.2026") {
    Style const style = parse_money_style(example, currency("EUR"), {}).value();
    return parse_date_style(dates, "December", style).value();
}

Sheet a_sheet(Style style) {
    Sheet sheet{"quote", "client", {"Price 1.50 Bakery"}, "Quote 2026-041"};
    sheet.style = std::move(style);
    sheet.language = "de-AT";
    Figure const amount{"-1234.50", number("-1234.5"), "EUR"};
    sheet.sections.emplace_back(Facts{"facts",
                                      "",
                                      {{"amount", "Alone", amount},
                                       {"mass", "Mass", Figure{"1.25 kg", 1250, "g"}},
                                       {"energy", "Energy", Figure{"7.20", number("7.2"), "kWh"}},
                                       {"share", "Share", Figure{"12.5", number("1/8"), "%"}},
                                       {"day", "Day", Day{day("2026-11-05")}},
                                       {"words", "Words", std::string("1.5 of it")}}});
    sheet.sections.emplace_back(
        Table{"table",
              "",
              {{"item", "", true}, {"amount", "Amount"}, {"since", "Since"}},
              {{"1", {std::string("Box 1.5"), amount, Day{day("2026-11-05"), true}}}},
              {}});
    return sheet;
}

} // namespace

TEST_CASE("people see figures and days in the style of the sheet, and words as they are") {
    Sheet const sheet = a_sheet(styled("1.234,56 €"));
    for (std::string const& text : {to_text(sheet), to_html(sheet), to_markdown(sheet)}) {
        CAPTURE(text);
        std::string const figures = text.substr(text.find("Alone"));
        CHECK(says(figures, "-1.234,50\u00A0€"));
        CHECK_FALSE(says(figures, "EUR")); // the sign is enough
        CHECK(says(figures, "1,25 kg"));
        CHECK(says(figures, "7,20 kWh"));
        CHECK(says(figures, "12,5 %"));
        CHECK(says(figures, "05.11.2026"));
        CHECK(says(figures, "1.5 of it"));
        CHECK(says(figures, "Box 1.5"));
        CHECK(says(text, "Price 1.50 Bakery"));
    }
}

TEST_CASE("without a sign the code of the currency stands beside an amount alone") {
    Sheet const sheet = a_sheet(styled("1234,56"));
    for (std::string const& text : {to_text(sheet), to_html(sheet), to_markdown(sheet)})
        CHECK(says(text, "-1234,50 EUR"));
}

TEST_CASE("programs and spreadsheets see plain figures and days, whatever the style") {
    Sheet const plain = a_sheet({});
    for (Style const& style : {styled("1.234,56 €"), styled("$1,234.56", "12/31/2026")}) {
        CHECK(to_json(a_sheet(style)) == to_json(plain));
        CHECK(to_csv(a_sheet(style)) == to_csv(plain));
    }
    CHECK(says(to_json(plain), "\"-1234.50\""));
    CHECK(says(to_csv(plain), "2026-11-05"));
}

TEST_CASE("a page says which language it is in") {
    CHECK(says(to_html(a_sheet({})), "<html lang=\"de-AT\">"));
    CHECK(says(to_html(Sheet{}), "<html lang=\"en\">"));
}

TEST_CASE("a sign makes no markup") {
    Style style;
    style.before_money = "<b>&|";
    Sheet const sheet = a_sheet(style);
    CHECK(says(to_html(sheet), "-&lt;b&gt;&amp;|1234.50"));
    CHECK(says(to_markdown(sheet), "-&lt;b\\>&amp;\\|1234.50"));
}

TEST_CASE("a table that is too wide with the sign goes without, and the next has it again") {
    Sheet sheet = a_sheet(styled("1.234,56 Taler"));
    Table wide{"wide", "", {}, {{"1", {}}}, {}};
    for (int i = 0; i < 7; ++i) {
        wide.columns.push_back({"column", "", false});
        wide.rows[0].cells.emplace_back(Figure{"1234.50", number("1234.5"), "EUR"});
    }
    sheet.sections.insert(sheet.sections.begin(), wide);
    std::string const text = to_text(sheet);
    CHECK(says(text, "1.234,50    1.234,50"));
    CHECK(says(text, "-1.234,50\u00A0Taler"));
}
