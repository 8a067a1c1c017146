#pragma once

#include <groat/model/yield_links.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

namespace yield_links_detail {

class YieldLinker {
public:
    YieldLinker(Book& book, Suggest const& suggest, Diagnostics& found)
        : book_(book), suggest_(suggest), found_(found), names_(names_of(book.ingredients)) {}

    void run() {
        for (YieldTest& test : book_.yield_tests) watch(test, [&] { link_test(test); });
        are_all_placed_ =
            std::all_of(book_.yield_tests.begin(), book_.yield_tests.end(),
                        [](YieldTest const& test) { return test.item.is_resolved(); });
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i) {
            Ingredient& each = book_.ingredients[i];
            watch(each, [&] { cite(each.yield, each.yield_source, i, std::nullopt); });
        }
        for (Offer& offer : book_.offers)
            if (offer.item.is_resolved())
                watch(offer, [&] {
                    cite(offer.yield, offer.yield_source, offer.item.index, offer.supplier);
                });
    }

private:
    template <class Thing, class Do> void watch(Thing& thing, Do const& act) {
        std::size_t const errors = found_.errors_met();
        act();
        if (found_.errors_met() > errors) thing.is_in_doubt = true;
    }

    template <class Things>
    void resolve(Reference& reference, Things const& things, Code code, std::string_view what,
                 std::string otherwise) {
        reference.index = unresolved;
        if (!reference.is_given()) return;
        auto const place = std::find_if(things.begin(), things.end(), [&](auto const& each) {
            return each.name == reference.name;
        });
        if (place == things.end())
            return missed(reference, code, what, names_of(things), std::move(otherwise));
        reference.index = static_cast<std::size_t>(place - things.begin());
    }

    void missed(Reference const& reference, Code code, std::string_view what,
                std::vector<std::string> const& names, std::string otherwise) {
        found_.error(reference.origin, code,
                     fmt::format("no {} is called '{}'", what, reference.name),
                     suggest_(reference.name, names, std::move(otherwise)));
    }

    void link_test(YieldTest& test) {
        resolve(test.supplier, book_.suppliers, "unknown-supplier", "supplier",
                "suppliers are named in the price lists and on receipts");
        test.item.index = unresolved;
        if (!test.item.is_given()) return;
        auto const place = book_.ingredient_index.find(test.item.name);
        if (place == book_.ingredient_index.end())
            return missed(test.item, "unknown-ingredient", "ingredient or supply", names_,
                          "add it to ingredients.yaml");
        Ingredient const& item = book_.ingredients[place->second];
        if (item.is_supply())
            return found_.error(test.item.origin, "supply-as-food",
                                fmt::format("'{}' is a supply and has no yield", item.name),
                                "what is trimmed is food, and stands in ingredients.yaml");
        test.item.index = place->second;
        weigh(test, item, found_);
    }

    void cite(std::optional<Yield>& yield, YieldSource& source, std::size_t ingredient,
              std::optional<std::size_t> supplier) {
        if (!source.is_cited()) return;
        resolve(source.test, book_.yield_tests, "unknown-yield-test", "yield test",
                "add it to yields.yaml");
        if (source.test.is_given() && !source.test.is_resolved()) return;
        auto const cited = cited_yield(source, book_.yield_tests, book_.ingredients[ingredient],
                                       ingredient, supplier);
        if (cited)
            yield = *cited;
        else if (cited.error().code != Code("unknown-yield") || are_all_placed_)
            found_.error(source.test.is_given() ? source.test.origin : source.origin,
                         cited.error());
    }

    Book& book_;
    Suggest const& suggest_;
    Diagnostics& found_;
    std::vector<std::string> names_; ///< of ingredients and supplies
    bool are_all_placed_ =
        true; ///< each test is one of something: a misspelt item is the error, where not
};

} // namespace yield_links_detail

GROAT_INLINE void link_yields(Book& book, Suggest const& suggest, Diagnostics& found) {
    yield_links_detail::YieldLinker(book, suggest, found).run();
}

} // namespace groat
