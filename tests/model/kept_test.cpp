#include "books.hpp"

#include <groat/model/kept.hpp>

#include <memory>

using namespace groat;
using namespace groat::test;

TEST_CASE("what is kept is a copy that lives as long as any copy of its keeper") {
    auto given = std::make_unique<Order>();
    given->id = "2027-008";
    auto keeper = std::make_unique<Kept>();
    Order const* const kept = keeper->copy_of(*given);
    Kept const other = *keeper;
    given.reset();
    keeper.reset();
    CHECK(kept->id == "2027-008");
}

TEST_CASE("of several things each is kept, in their order") {
    Order first;
    first.id = "2027-001";
    Order second;
    second.id = "2027-002";
    Kept keeper;
    auto const copies = keeper.copies_of(std::vector<Order const*>{&first, &second});
    REQUIRE(copies.size() == 2);
    CHECK(copies[0] != &first);
    CHECK(copies[0]->id == "2027-001");
    CHECK(copies[1]->id == "2027-002");
}
