#include "sheets.hpp"

#include <groat/paper/json.hpp>

using namespace groat;
using namespace groat::test;

namespace {

using Json = nlohmann::ordered_json;

Sheet some_sheet() {
    Sheet sheet{"quote", "client", {"Bakery of the Test"}, "Quote 2026-041"};
    sheet.sections.emplace_back(
        Facts{"order",
              "",
              {{"client", "For", std::string("Reading Circle")},
               {"margin", "Margin", Cell()},
               {"total", "Total", Figure{"31.50", number("63/2"), "USD"}}}});
    sheet.sections.emplace_back(
        Table{"lines",
              "Lines",
              {{"item", "", true}, {"share", "Share"}},
              {{"1", {std::string("Bun"), Figure{"33.3", number("1/3"), "%"}}},
               {"", {std::string("Total"), {}}, Row::Kind::total}}});
    sheet.sections.emplace_back(Remarks{"terms", "Terms", {"Paid on ordering."}});
    return sheet;
}

} // namespace

TEST_CASE("a program is told what sheet it is, for whom, and from whom") {
    Json const json = Json::parse(to_json(some_sheet()));
    CHECK(json["schema"] == "urn:groat:sheet:2");
    CHECK(json["sheet"] == "quote");
    CHECK(json["for"] == "client");
    CHECK(json["title"] == "Quote 2026-041");
    CHECK(json["letterhead"] == Json{"Bakery of the Test"});
}

TEST_CASE("each figure stands twice: rounded as on paper, and exact in lowest terms") {
    Json const json = Json::parse(to_json(some_sheet()));
    CHECK(json["order"]["total"] == Json{{"rounded", "31.50"}, {"exact", "63/2"}, {"unit", "USD"}});
}

TEST_CASE("a share is one of one for programs, whatever paper prints as a percentage") {
    Json const json = Json::parse(to_json(some_sheet()));
    CHECK(json["lines"][0]["share"] ==
          Json{{"rounded", "0.333"}, {"exact", "1/3"}, {"unit", "share"}});
    using json_detail::of_one;
    CHECK(of_one("40.0") == "0.400");
    CHECK(of_one("6") == "0.06");
    CHECK(of_one("-0.5") == "-0.005");
    CHECK(of_one("+12.25") == "+0.1225");
    CHECK(of_one("230") == "2.30");
    CHECK(of_one("100 %") == "100 %"); // no plain number
}

TEST_CASE("programs are told by themselves of what stands in a sentence on paper") {
    Sheet sheet = some_sheet();
    auto& table = std::get<Table>(sheet.sections[1]);
    table.rows[0].told = {{"formula", std::string("bun")},
                          {"allergens", std::vector<std::string>{"egg", "milk"}}};
    std::get<Facts>(sheet.sections[0]).told = {{"paid_by", std::string("card")}};
    Json const json = Json::parse(to_json(sheet));
    CHECK(json["lines"][0]["formula"] == "bun");
    CHECK(json["lines"][0]["allergens"] == Json{"egg", "milk"});
    CHECK(json["order"]["paid_by"] == "card");
}

TEST_CASE("what is not there is null, not left out") {
    Json const json = Json::parse(to_json(some_sheet()));
    CHECK(json["order"]["margin"].is_null());
    CHECK(json["lines"][1]["share"].is_null());
}

TEST_CASE("rows keep their order, their kind and, where they have one, their key") {
    Json const json = Json::parse(to_json(some_sheet()));
    REQUIRE(json["lines"].size() == 2);
    CHECK(json["lines"][0]["row"] == "line");
    CHECK(json["lines"][0]["key"] == "1");
    CHECK(json["lines"][1]["row"] == "total");
    CHECK(!json["lines"][1].contains("key"));
    CHECK(json["terms"] == Json{"Paid on ordering."});
}

TEST_CASE("names may hold anything and come out whole") {
    Sheet sheet = some_sheet();
    std::string const name = "crème \"brûlée\" \\ 月餅\n\t\x1b";
    std::get<Table>(sheet.sections[1]).rows[0].cells[0] = name;
    std::string const text = to_json(sheet);
    CHECK(Json::parse(text)["lines"][0]["item"] == name);
    CHECK(text.find('\x1b') == std::string::npos);
    CHECK(text.back() == '\n');
}

TEST_CASE("bytes that are no text are replaced, not thrown at the caller") {
    Sheet sheet = some_sheet();
    sheet.letterhead[0] = "Bakery \xff";
    CHECK(Json::parse(to_json(sheet))["letterhead"][0] == "Bakery \uFFFD");
}

TEST_CASE("sections that say what they are of stand together, in order") {
    Sheet sheet = some_sheet();
    sheet.sections.emplace_back(
        Table{"offers", "", {{"item", "", true}}, {{"1", {std::string("a")}}}, {}, "flour"});
    sheet.sections.emplace_back(Facts{"range", "", {{"n", "", std::string("1")}}, "flour"});
    sheet.sections.emplace_back(Remarks{"news", "", {"Dearer."}, "flour"});
    sheet.sections.emplace_back(Table{"offers", "", {{"item", "", true}}, {}, {}, "rows"});
    Json const json = Json::parse(to_json(sheet));
    REQUIRE(json["offers"].size() == 2);
    CHECK(json["offers"][0]["of"] == "flour");
    CHECK(json["offers"][0]["rows"][0]["item"] == "a");
    CHECK(json["offers"][1] == Json{{"of", "rows"}, {"rows", Json::array()}});
    CHECK(json["range"] == Json::array({Json{{"of", "flour"}, {"facts", Json{{"n", "1"}}}}}));
    CHECK(json["news"] ==
          Json::array({Json{{"of", "flour"}, {"lines", Json::array({"Dearer."})}}}));
}

TEST_CASE("two things in one place are a defect that nobody can miss") {
    auto const refused = [](Section first, Section second) {
        Sheet sheet = some_sheet();
        sheet.sections.push_back(std::move(first));
        sheet.sections.push_back(std::move(second));
        CHECK_THROWS_AS((void)to_json(sheet), std::logic_error);
    };
    Remarks const plain{"news", "", {"a"}};
    Remarks const of{"news", "", {"a"}, "flour"};
    refused(plain, plain);
    refused(plain, of);
    refused(of, plain);
    refused(of, Facts{"news", "", {}, "flour"});
    refused(plain, Remarks{"sheet", "", {"a"}});
    refused(plain, Facts{"twice", "", {{"n", "", {}}, {"n", "", {}}}});
    refused(plain, Table{"twice", "", {{"n", ""}, {"n", ""}}, {{"1", {Cell(), Cell()}}}, {}});
    refused(plain, Table{"twice", "", {{"row", ""}}, {{"1", {Cell()}}}, {}});
}

TEST_CASE("a chart is for the eye: no program is told of it") {
    Sheet sheet = some_sheet();
    std::string const before = to_json(sheet);
    sheet.sections.emplace_back(Chart{"seen", "Seen", {}, {}, {{"Price", {{1, 2, "2.00"}}}}});
    CHECK(to_json(sheet) == before);
}

TEST_CASE("a table without rows is an empty list") {
    Table const table{"lines", "Lines", {{"item", "Item", true}}, {}, {}};
    auto const document = nlohmann::json::parse(to_json({"x", "maker", {}, "Title", {table}}));
    CHECK(document.at("lines") == nlohmann::json::array());
}
