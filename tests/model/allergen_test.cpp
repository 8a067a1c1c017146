#include <groat/model/allergen.hpp>

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string_view>

using namespace groat;

TEST_CASE("United States law names nine allergens") {
    // 21 USC 321(qq)(1): FALCPA 2004 and, since 2023, sesame by the FASTER Act 2021
    std::set<std::string_view> named;
    for (Allergen const& each : allergens)
        if (!each.us.empty()) named.insert(each.us);
    CHECK(named == std::set<std::string_view>{"milk", "egg", "fish", "Crustacean shellfish",
                                              "tree nuts", "wheat", "peanuts", "soybeans",
                                              "sesame"});
}

TEST_CASE("European law names fourteen allergens, and all of the books but pine nuts are of them") {
    // Regulation (EU) 1169/2011, Annex II
    std::set<std::string_view> named;
    for (Allergen const& each : allergens) {
        CHECK_MESSAGE(each.eu.empty() == (each.name == "pine nut"), std::string(each.name));
        if (!each.eu.empty()) named.insert(each.eu);
    }
    CHECK(named.size() == 14);
}

TEST_CASE("a kind counts as what it is a kind of, in both bodies of law") {
    for (Allergen const& each : allergens) {
        if (each.kind_of.empty()) {
            CHECK(&broader(each) == &each);
            continue;
        }
        REQUIRE_MESSAGE(find_allergen(each.kind_of) != nullptr, std::string(each.name));
        CHECK(broader(each).us == each.us);
        CHECK(broader(each).eu == each.eu);
        CHECK(broader(each).kind_of.empty());
    }
    CHECK(broader(*find_allergen("spelt")).name == "wheat");
    CHECK(broader(*find_allergen("cod")).name == "fish");
    CHECK(broader(*find_allergen("shrimp")).name == "crustaceans");
    CHECK(broader(*find_allergen("oyster")).us.empty()); // molluscs are none of the nine
}

TEST_CASE("tree nuts are those that FDA lists since January 2025") {
    // FDA's list of January 2025, from memory: pine nuts are among them, coconut no longer
    CHECK(find_allergen("pine nut")->us == "tree nuts");
    CHECK(find_allergen("coconut") == nullptr);
}

TEST_CASE("a cookie's allergens count as law says: wheat is a cereal with gluten, almond a nut") {
    // wheat flour: US wheat, EU gluten cereals; almond: tree nuts, nuts; soy lecithin: soybeans
    CHECK(find_allergen("wheat")->us == "wheat");
    CHECK(find_allergen("wheat")->eu == "cereals containing gluten");
    CHECK(find_allergen("almond")->us == "tree nuts");
    CHECK(find_allergen("almond")->eu == "nuts");
    CHECK(find_allergen("soy")->us == "soybeans");
    // the US list has no cereal but wheat
    for (std::string_view const cereal : {"rye", "barley", "oats"}) {
        CHECK(find_allergen(cereal)->us.empty());
        CHECK(find_allergen(cereal)->eu == "cereals containing gluten");
    }
}

TEST_CASE("the eight nuts of Annex II are all known by name") {
    // Annex II no. 8: almond, hazelnut, walnut, cashew, pecan, Brazil nut, pistachio, macadamia
    for (std::string_view const nut : {"almond", "hazelnut", "walnut", "cashew", "pecan",
                                       "brazil nut", "pistachio", "macadamia"}) {
        REQUIRE(find_allergen(nut) != nullptr);
        CHECK(find_allergen(nut)->eu == "nuts");
    }
}

TEST_CASE("a name that is no allergen stands for none") {
    CHECK(find_allergen("gluten") == nullptr);
    CHECK(find_allergen("Milk") == nullptr);
    CHECK(find_allergen("") == nullptr);
}

TEST_CASE("every name is found once, and a set keeps the order of the table") {
    std::vector<std::string> names = allergen_names();
    CHECK(names.size() == std::size(allergens));
    for (std::string const& name : names) CHECK(find_allergen(name)->name == name);
    std::sort(names.begin(), names.end());
    CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());

    AllergenSet const set{find_allergen("sesame"), find_allergen("milk"), find_allergen("wheat")};
    std::vector<std::string_view> order;
    for (Allergen const* each : set) order.push_back(each->name);
    CHECK(order == std::vector<std::string_view>{"milk", "wheat", "sesame"});
}
