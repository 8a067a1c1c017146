/// A sheet whose every text comes from somebody who means harm, for the tests of all renderers.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>

namespace groat::test {

inline std::string const hostile =
    "<script>alert(1)</script> \"quoted\" 'single' & | * _ ` \x1B[31mred \u202Eright to left\nnext line";

/// Every text of it is `words`, alone or with something harmless before it.
inline Sheet sheet_of(std::string const& words) {
    Sheet sheet{"quote", "client", {words}, words, {}};
    sheet.sections.emplace_back(
        Facts{"facts",
              words,
              {{"key", words, words}, {"money", "Money", Figure{"1.50", Number(3) / 2, "USD"}}}});
    Table table{"table",
                words,
                {{"item", words, true}, {"amount", words}},
                {{"1", {words, Figure{"35.2", Number(352) / 1000, "%"}}},
                 {"total", {words, Figure{"1.234 kg", Number(1234), "g"}}, Row::Kind::total}},
                words};
    sheet.sections.emplace_back(std::move(table));
    sheet.sections.emplace_back(Remarks{"remarks", words, {words}});
    Chart chart{"chart",
                words,
                {words, {{0, words}, {1, words}}, ChartLine{Number(1) / 2, words, words}},
                {words, {{0, words}, {1, words}}, ChartLine{Number(1) / 2, words, words}},
                {{words, {{0, 1, words}, {1, 0, words}}, true}, {words, {{1, 1, words}}}}};
    chart.corners = {words, words, words, words};
    chart.said = chart.remark = words;
    sheet.sections.emplace_back(std::move(chart));
    return sheet;
}

} // namespace groat::test
