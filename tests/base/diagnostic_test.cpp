#include <groat/base/diagnostic.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using groat::Diagnostic;
using groat::Diagnostics;
using groat::render;
using groat::Severity;
using groat::Sources;
using groat::Span;

namespace {

/// A diagnostic about a place in a file of one text, rendered.
std::string rendered(std::string_view text, Span where, std::string what = "this is wrong") {
    Sources sources;
    sources.add("a.yaml", std::string(text));
    return render(Diagnostic{Severity::error, "bad-name", std::move(what), where}, sources);
}

std::string blanks(std::size_t count) { return std::string(count, ' '); }

} // namespace

TEST_CASE(
    "a finding shows its place, its line, a caret under the very words, and the way to mend it") {
    Sources sources;
    auto const file = sources.add("prices/mill.yaml", "supplier: mill\n"
                                                      "valid_from: 2026-01-01\n"
                                                      "offers:\n"
                                                      "  - {item: plain flour, prise: 13.80}\n");
    // `  - {item: plain flour, ` is 24 characters long, so `prise` starts at column 25
    Diagnostic const finding{
        Severity::error,        "unknown-key", "unknown key 'prise'", Span{file, 4, 25, 5}, {},
        "did you mean 'price'?"};
    CHECK(render(finding, sources) ==
          "prices/mill.yaml:4:25: error: unknown key 'prise' [unknown-key]\n"
          "  4 |   - {item: plain flour, prise: 13.80}\n"
          "    |                         ^^^^^\n"
          "  help: did you mean 'price'?\n");
}

TEST_CASE("a warning names itself, and a note points to the other place") {
    Sources sources;
    auto const one = sources.add("one.yaml", "butter: 4.00\n");
    auto const two = sources.add("two.yaml", "\n\nbutter: 5.00\n");
    Diagnostic const finding{
        Severity::warning,
        "given-twice",
        "butter has two prices",
        Span{two, 3, 1, 6},
        {{"the other one", Span{one, 1, 9, 4}}, {"the later one wins", Span{}}}};
    CHECK(render(finding, sources) == "two.yaml:3:1: warning: butter has two prices [given-twice]\n"
                                      "  3 | butter: 5.00\n"
                                      "    | ^^^^^^\n"
                                      "  note: the other one (one.yaml:1:9)\n"
                                      "  note: the later one wins\n");
}

TEST_CASE("a finding without a line shows none") {
    Sources sources;
    auto const file = sources.add("a.yaml", "");
    CHECK(render(Diagnostic{Severity::error, {}, "there is no shop", Span{}}, sources) ==
          "groat: error: there is no shop\n");
    CHECK(render(Diagnostic{Severity::error, "empty-file", "the file is empty", Span{file}},
                 sources) == "a.yaml: error: the file is empty [empty-file]\n");
    CHECK(rendered("one\n", Span{1, 7, 1, 1}) == "a.yaml:7:1: error: this is wrong [bad-name]\n");
}

TEST_CASE("carets stand under wide and accented characters, and columns count characters") {
    // 小麦粉 are three characters of two columns each; the price is the sixth character
    CHECK(rendered("小麦粉: 12\n", Span{1, 1, 6, 2}) ==
          "a.yaml:1:6: error: this is wrong [bad-name]\n"
          "  1 | 小麦粉: 12\n"
          "    |         ^^\n");
    CHECK(rendered("小麦粉: 12\n", Span{1, 1, 2, 2}) ==
          "a.yaml:1:2: error: this is wrong [bad-name]\n"
          "  1 | 小麦粉: 12\n"
          "    |   ^^^^\n");
    CHECK(rendered("crème: 12\n", Span{1, 1, 8, 2}) ==
          "a.yaml:1:8: error: this is wrong [bad-name]\n"
          "  1 | crème: 12\n"
          "    |        ^^\n");
}

TEST_CASE("what is missing at the end of a line is pointed at behind it") {
    CHECK(rendered("price:\n", Span{1, 1, 8, 0}) == "a.yaml:1:8: error: this is wrong [bad-name]\n"
                                                    "  1 | price:\n"
                                                    "    |        ^\n");
}

TEST_CASE("the gutter grows with the line number") {
    std::string const text = std::string(99, '\n') + "egg: 0,30\n";
    CHECK(rendered(text, Span{1, 100, 6, 4}) == "a.yaml:100:6: error: this is wrong [bad-name]\n"
                                                "  100 | egg: 0,30\n"
                                                "      |      ^^^^\n");
}

TEST_CASE("a very long line is shown around the caret") {
    std::string const text = std::string(199, 'a') + "X" + std::string(300, 'b');
    // 96 characters are shown, 48 of them in front of the caret, an ellipsis for what is left off
    CHECK(rendered(text, Span{1, 1, 200, 1}) ==
          "a.yaml:1:200: error: this is wrong [bad-name]\n"
          "  1 | …" +
              std::string(48, 'a') + "X" + std::string(47, 'b') + "…\n    | " + blanks(49) + "^\n");
    CHECK(rendered(text, Span{1, 1, 1, 2}) == "a.yaml:1:1: error: this is wrong [bad-name]\n"
                                              "  1 | " +
                                                  std::string(96, 'a') + "…\n    | ^^\n");
}

TEST_CASE("a hostile file cannot write to the terminal through a finding") {
    std::string const shown =
        rendered("a\x1B[2Jb\n", Span{1, 1, 1, 1}, "no such item 'a\x1B[2J\xE2\x80\xAE'");
    CHECK(shown == "a.yaml:1:1: error: no such item 'a\uFFFD[2J\uFFFD' [bad-name]\n"
                   "  1 | a\uFFFD[2Jb\n"
                   "    | ^\n");
    Sources sources;
    sources.add("a\nb\x07.yaml", "x\n");
    CHECK(render(Diagnostic{Severity::error, {}, "wrong", Span{1}}, sources) ==
          "a b\uFFFD.yaml: error: wrong\n");
}

TEST_CASE("findings are shown in the order of their places, those without a place last") {
    Sources sources;
    sources.add("a.yaml", "one\ntwo\n");
    sources.add("b.yaml", "three\n");
    Diagnostics findings;
    findings.error(Span{}, "unreadable", "nowhere");
    findings.warn(Span{2, 1, 1, 1}, "not-read", "third");
    findings.error(Span{1, 2, 1, 1}, "bad-name", "second");
    findings.error(Span{1, 1, 2, 1}, "bad-date", "first", "write one");
    CHECK(render(findings, sources) == "a.yaml:1:2: error: first [bad-date]\n"
                                       "  1 | one\n"
                                       "    |  ^\n"
                                       "  help: write one\n"
                                       "\n"
                                       "a.yaml:2:1: error: second [bad-name]\n"
                                       "  2 | two\n"
                                       "    | ^\n"
                                       "\n"
                                       "b.yaml:1:1: warning: third [not-read]\n"
                                       "  1 | three\n"
                                       "    | ^\n"
                                       "\n"
                                       "groat: error: nowhere [unreadable]\n");
}

TEST_CASE("two findings of one place stay in the order in which they were found") {
    Diagnostics findings;
    findings.error(Span{1, 1, 1, 1}, "bad-name", "found first");
    findings.error(Span{1, 1, 1, 1}, "bad-date", "found second");
    CHECK(findings.sorted().front().what == "found first");
}

TEST_CASE("the same finding is kept once, and warnings are not counted as errors") {
    Diagnostics findings;
    CHECK(findings.empty());
    findings.error(Span{1, 1, 1, 1}, "no-price", "butter has no price");
    findings.error(Span{1, 1, 1, 1}, "no-price", "butter has no price");
    findings.warn(Span{1, 1, 1, 1}, "stale-price", "butter's price is old");
    CHECK(findings.errors() == 1);
    CHECK(findings.warnings() == 1);
    CHECK(findings.has_errors());

    Diagnostics all;
    all.warn(Span{1, 1, 1, 1}, "stale-price", "butter's price is old");
    CHECK(!all.has_errors());
    all.add(findings);
    CHECK(all.errors() == 1);
    CHECK(all.warnings() == 1);
}

TEST_CASE("an error that is found again is not kept, but it is met") {
    Diagnostics findings;
    findings.error(Span{1, 1, 1, 1}, "no-price", "butter has no price");
    CHECK(findings.errors_met() == 1);
    findings.error(Span{1, 1, 1, 1}, "no-price", "butter has no price");
    findings.warn(Span{1, 1, 1, 1}, "stale-price", "butter's price is old");
    CHECK(findings.errors_met() == 2);
    CHECK(findings.errors() == 1);
    Diagnostics all = findings;
    all.add(findings);
    CHECK(all.errors() == 1);
    CHECK(all.errors_met() == 3);
}

TEST_CASE("a flaw found while reading becomes an error at the place that was read") {
    Diagnostics findings;
    findings.error(Span{1, 4, 9, 2},
                   groat::Flaw{"bad-number", "'12a' is not a number", "write 12", 2, 1});
    Diagnostic const finding = findings.sorted().front();
    CHECK(finding.code == "bad-number");
    CHECK(finding.what == "'12a' is not a number");
    CHECK(finding.help == "write 12");
    CHECK(finding.where == Span{1, 4, 9, 2});
    CHECK(finding.severity == Severity::error);
}

TEST_CASE("errors that follow from another are taken back, and have been met; warnings stay") {
    Diagnostics findings;
    findings.error(Span{1, 1, 1, 1}, "unknown-key", "unknown key 'prise'");
    findings.error(Span{1, 1, 8, 1}, "bad-money", "'x' is not an amount of money");
    findings.warn(Span{1, 1, 8, 1}, "stale-price", "butter's price is old");
    findings.take_back(1, [](Diagnostic const&) { return true; });
    CHECK(findings.errors() == 1);
    CHECK(findings.errors_met() == 2);
    CHECK(findings.warnings() == 1);
    CHECK(findings.sorted().front().code == "unknown-key");
}
