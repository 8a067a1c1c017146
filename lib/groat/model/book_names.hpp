/// All that can be named in a book, and how a name is looked up in it: what it stands for, what is reported where it
/// stands for nothing or for two things, and the nearest name that was likely meant. `link` (link.hpp) stands on it.
#pragma once

#include <groat/base/name.hpp>
#include <groat/model/book.hpp>
#include <groat/model/suggest.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat::link_detail {

class BookNames {
protected:
    explicit BookNames(Book& book) : book_(book) {}

    /// Does something to a thing, which is in doubt where that finds an error.
    template <class Thing, class Do> void watch(Thing& thing, Do const& act) {
        std::size_t const errors = found_.errors_met();
        act(thing);
        if (found_.errors_met() > errors) thing.is_in_doubt = true;
    }
    template <class Things, class Do> void watch_each(Things& things, Do const& act) {
        for (auto& thing : things) watch(thing, act);
    }

    void twice(Span where, std::string const& what, Span first) {
        found_.add({Severity::error,
                    "given-twice",
                    fmt::format("{} is given twice", what),
                    where,
                    {{"first given here", first}},
                    "a name stands for one thing: rename or remove one"});
    }

    /// Reports each of `things` that is called as one before it; `words` says what it is called. Which of
    /// the two is meant is in doubt.
    template <class Things, class Words> void refuse_repeats(Things& things, Words const& words) {
        std::map<std::string, std::size_t> known;
        for (std::size_t i = 0; i < things.size(); ++i) {
            auto const [place, is_new] = known.emplace(words(things[i]), i);
            if (is_new) continue;
            auto& first = things[place->second];
            twice(things[i].origin, place->first, first.origin);
            if constexpr (requires { first.is_in_doubt; })
                first.is_in_doubt = things[i].is_in_doubt = true;
        }
    }

    void index_names() {
        book_.ingredient_index.clear();
        book_.formula_index.clear();
        struct Named {
            Span origin;
            bool* is_in_doubt;
        };
        std::map<std::string_view, Named> all;
        auto const enter = [&](auto& thing) {
            auto const [place, is_new] =
                all.emplace(thing.name, Named{thing.origin, &thing.is_in_doubt});
            if (is_new) return;
            twice(thing.origin, fmt::format("'{}'", thing.name), place->second.origin);
            thing.is_in_doubt = *place->second.is_in_doubt = true;
        };
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i) {
            enter(book_.ingredients[i]);
            book_.ingredient_index.emplace(book_.ingredients[i].name, i);
        }
        ingredient_names_ = names_of(book_.ingredients);
        formula_names_ = names_of(book_.formulas);
        all_names_ = ingredient_names_;
        all_names_.insert(all_names_.end(), formula_names_.begin(), formula_names_.end());
        for (Ingredient const& each : book_.ingredients)
            if (each.is_supply()) supply_names_.push_back(each.name);
        for (std::size_t i = 0; i < book_.formulas.size(); ++i) {
            enter(book_.formulas[i]);
            book_.formula_index.emplace(book_.formulas[i].name, i);
        }
    }

    /// Resolves `reference` among `things` by name; `what` and `where_to` word the complaint.
    template <class Things>
    void resolve(Reference& reference, Things const& things, Code code, std::string_view what,
                 std::string const& where_to) {
        reference.index = unresolved;
        if (!reference.is_given()) return;
        for (std::size_t i = 0; i < things.size(); ++i) {
            if (things[i].name == reference.name) {
                reference.index = i;
                return;
            }
        }
        found_.error(reference.origin, code,
                     fmt::format("no {} is called '{}'", what, reference.name),
                     suggest(reference.name, names_of(things), where_to));
    }

    [[nodiscard]] Suggest suggesting() {
        return [this](auto missed, auto const& names, std::string otherwise) {
            return suggest(missed, names, std::move(otherwise));
        };
    }

    /// As `did_you_mean`, while it is likely that a slip of the finger is behind it: to look for the nearest
    /// of thousands of names for thousands of misses would take minutes.
    std::string suggest(std::string_view missed, std::vector<std::string> const& names,
                        std::string otherwise) {
        if (suggestions_ == 0) return otherwise;
        --suggestions_;
        return did_you_mean(missed, names, std::move(otherwise));
    }

    void link_task(Task& task) {
        if (task.is_unattended) return;
        if (!task.role.is_given())
            found_.error(task.origin, "missing-role",
                         fmt::format("nobody is said to do '{}'", task.name),
                         "add 'by:' with a role, or 'unattended: yes'");
        else
            resolve(task.role, book_.shop.roles, "unknown-role", "role",
                    "add it to 'labour' in shop.yaml");
    }

    void link_fee(Reference& fee) {
        if (fee.name != "none")
            resolve(fee, book_.shop.fees, "unknown-fee", "fee",
                    "add it to 'fees' in shop.yaml, or write none");
    }

    /// Cash has no fee unless the shop names one.
    void link_paid_part(Reference& how) {
        bool const has_fee = std::any_of(book_.shop.fees.begin(), book_.shop.fees.end(),
                                         [&](Fee const& fee) { return fee.name == how.name; });
        if (has_fee || how.name != "cash") link_fee(how);
    }

    void link_tax(Reference& tax) {
        if (tax.name != "none")
            resolve(tax, book_.shop.tax.other_rates, "unknown-tax-rate", "tax rate",
                    "add it to 'other rates' of 'tax' in shop.yaml, or write none");
    }

    void link_delivery_tax(Reference& tax) {
        if (tax.name != "with the goods" && tax.name != "main") link_tax(tax);
    }

    Book& book_;
    Diagnostics found_;
    std::vector<std::string> ingredient_names_; ///< and supplies
    std::vector<std::string> supply_names_;
    std::vector<std::string> formula_names_;
    std::vector<std::string> all_names_;
    std::size_t suggestions_ = 100;
};

} // namespace groat::link_detail
