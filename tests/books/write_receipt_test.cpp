#include "reading.hpp"

#include <groat/books/read_receipts.hpp>
#include <groat/books/write_receipt.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Receipt;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Receipt receipt(std::string const& text) { return read_receipt(node(text), reading); }
};

} // namespace

TEST_CASE("a receipt is written as people write it, and reads back the same") {
    std::string const text =
        "bought: 2026-11-20\n"
        "supplier: \"Dock: Cash & Carry\"\n"
        "tax included: 7 %\n"
        "items:\n"
        "  - {item: butter, pack: 1 lb, packs: 6, paid: 25.14}\n"
        "  - {item: \"salt, fine\", pack: 1000 g, packs: 1, paid: 1/3, deposit: 0.25, "
        "stopgap: yes}\n";
    Reader desk;
    Receipt const receipt = desk.receipt(text);
    CHECK(desk.said().empty());
    CHECK(groat::write_receipt(receipt) == text);
    CHECK(groat::write_receipt(receipt, "by hand") == "# by hand\n\n" + text);
}

TEST_CASE("two rates of tax are written with each item, and no items as none") {
    std::string const text =
        "bought: 2026-11-20\n"
        "supplier: s\n"
        "items:\n"
        "  - {item: a, pack: 1 lb, packs: 1, paid: 1.07, tax included: 7 %}\n"
        "  - {item: b, pack: 1 lb, packs: 1, paid: 1.19, tax included: 19 %}\n";
    Reader desk;
    CHECK(groat::write_receipt(desk.receipt(text)) == text);
    CHECK(groat::write_receipt(desk.receipt("bought: 2026-11-20\nsupplier: s\nitems: []\n")) ==
          "bought: 2026-11-20\nsupplier: s\nitems: []\n");
    CHECK(desk.said().empty());
}
