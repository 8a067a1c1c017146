#include <groat/base/source.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Sources;
using groat::Span;

TEST_CASE("every line of a file can be shown again") {
    Sources sources;
    auto const shop = sources.add("shop.yaml", "currency: EUR\n\ntax: 7 %");
    CHECK(shop == 1);
    CHECK(sources.name(shop) == "shop.yaml");
    CHECK(sources.text(shop) == "currency: EUR\n\ntax: 7 %");
    CHECK(sources.line(shop, 1) == "currency: EUR");
    CHECK(sources.line(shop, 2) == "");
    CHECK(sources.line(shop, 3) == "tax: 7 %"); // the last line needs no end
}

TEST_CASE("files keep apart, also two of one name") {
    Sources sources;
    auto const first = sources.add("a.yaml", "one\n");
    auto const second = sources.add("a.yaml", "two\n");
    CHECK(first != second);
    CHECK(sources.line(first, 1) == "one");
    CHECK(sources.line(second, 1) == "two");
}

TEST_CASE("a line that is not there is empty") {
    Sources sources;
    auto const file = sources.add("a.yaml", "one\n");
    CHECK(sources.line(file, 0) == "");
    CHECK(sources.line(file, 2) == ""); // behind the last line end
    CHECK(sources.line(file, 3) == "");
    CHECK(sources.line(0, 1) == "");
    CHECK(sources.line(99, 1) == "");
    CHECK(sources.name(0) == "");
    CHECK(sources.name(99) == "");
    CHECK(sources.text(99) == "");
    CHECK(sources.line(sources.add("empty.yaml", ""), 1) == "");
}

TEST_CASE("lines that end the way of Windows lose their carriage return") {
    Sources sources;
    auto const file = sources.add("a.yaml", "one\r\ntwo\r\n");
    CHECK(sources.line(file, 1) == "one");
    CHECK(sources.line(file, 2) == "two");
}

TEST_CASE("places sort by file, then line, then column") {
    CHECK(Span{1, 9, 9, 1} < Span{2, 1, 1, 1});
    CHECK(Span{1, 2, 9, 1} < Span{1, 3, 1, 1});
    CHECK(Span{1, 2, 3, 1} < Span{1, 2, 4, 1});
    CHECK(Span{1, 2, 3, 4} == Span{1, 2, 3, 4});
}

TEST_CASE("a thing that nobody wrote in a file has no known place") {
    CHECK(!Span{}.is_known());
    CHECK(Span{1, 0, 0, 0}.is_known()); // a file as a whole
}
