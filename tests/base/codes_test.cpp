#include <groat/base/codes.hpp>

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

using groat::Code;
using groat::CodeEntry;
using groat::Severity;

TEST_CASE("a code of the table is what it is spelt, and one that is not in it is none") {
    Code const code = "unknown-key";
    CHECK(code == *Code::find("unknown-key"));
    CHECK_FALSE(code == *Code::find("missing-key"));
    CHECK(code.text() == "unknown-key");
    CHECK(std::string(code) == "unknown-key");
    CHECK(code.entry().severity == Severity::error);
    CHECK(Code("stale-price").entry().severity == Severity::warning);
    CHECK_FALSE(Code::find("unknown-kee"));
    CHECK_FALSE(Code::find(""));
    CHECK_FALSE(Code::find("zzz"));
}

TEST_CASE("no code is empty, and differs from all others") {
    Code const none;
    CHECK(none.empty());
    CHECK(none.text().empty());
    CHECK(none == Code());
    CHECK_FALSE(none == Code("unknown-key"));
    CHECK_FALSE(Code("unknown-key").empty());
}

TEST_CASE("every code is found, stands once, and is said in two short sentences") {
    std::vector<std::string> const codes = Code::all();
    CHECK(codes.size() > 150);
    CHECK(std::adjacent_find(codes.begin(), codes.end()) == codes.end());
    for (std::string const& each : codes) {
        CAPTURE(each);
        auto const code = Code::find(each);
        REQUIRE(code);
        CodeEntry const& entry = code->entry();
        CHECK(entry.code == each);
        for (std::string_view const sentence : {entry.why, entry.mend}) {
            CAPTURE(sentence);
            REQUIRE(sentence.size() > 2);
            CHECK(sentence.size() <= 100);
            CHECK((sentence.front() >= 'A' && sentence.front() <= 'Z'));
            CHECK(sentence.back() == '.');
        }
    }
}
