#pragma once

#include <groat/model/run_links.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <optional>
#include <set>
#include <string_view>
#include <utility>

namespace groat {

namespace run_links_detail {

/// The names of all that goes into a formula and its parts and is not a formula itself.
inline std::set<std::string> foods_within(std::size_t root, std::vector<Formula> const& formulas) {
    std::set<std::string> names;
    std::set<std::size_t> seen{root};
    std::vector<std::size_t> open{root};
    while (!open.empty()) {
        Formula const& formula = formulas[open.back()];
        open.pop_back();
        for (Line const& line : formula.lines) {
            if (line.of != Line::Of::formula)
                names.insert(line.item.name);
            else if (seen.insert(line.item.index).second)
                open.push_back(line.item.index);
        }
    }
    return names;
}

class RunLinker {
public:
    RunLinker(RunNames const& names, Suggest const& suggest, Diagnostics& found)
        : names_(names), suggest_(suggest), found_(found) {}

    void link(Run& run) {
        auto const own_name = [](auto const& thing) -> std::string const& { return thing.name; };
        resolve(run.formula, names_.formulas, own_name, "unknown-formula", "formula",
                "a run makes a formula: write one for it");
        resolve(
            run.order, names_.orders,
            [](Order const& order) -> std::string const& { return order.id; }, "unknown-order",
            "order", "leave it out where none asked for it");
        for (WorkedTime& worked : run.worked)
            resolve(worked.role, names_.roles, own_name, "unknown-role", "role",
                    "add it to 'labour' in shop.yaml");
        if (!run.formula.is_resolved()) return;
        Formula const& formula = names_.formulas[run.formula.index];
        if (!formula.makes_pieces() && (run.dough_grams || run.portioned || run.good))
            found_.error(run.origin, "made-by-mass",
                         fmt::format("there are no pieces: '{}' is made by mass", formula.name),
                         "write what went in and what came out: 'in: 4.2 kg' and 'out: 2.7 kg'");
        link_foods(run);
    }

private:
    template <class Things, class NameOf>
    void resolve(Reference& reference, Things const& things, NameOf name_of, Code code,
                 std::string_view what, std::string otherwise) {
        reference.index = unresolved;
        if (!reference.is_given()) return;
        std::vector<std::string> names;
        for (std::size_t i = 0; i < things.size(); ++i) {
            names.push_back(name_of(things[i]));
            if (names.back() == reference.name) reference.index = i;
        }
        if (!reference.is_resolved())
            found_.error(reference.origin, code,
                         fmt::format("no {} is called '{}'", what, reference.name),
                         suggest_(reference.name, names, std::move(otherwise)));
    }

    void link_foods(Run& run) {
        std::set<std::string> const within = foods_within(run.formula.index, names_.formulas);
        for (UsedFood& used : run.used) {
            auto const food = names_.ingredients.find(used.item.name);
            used.item.index = food == names_.ingredients.end() ? unresolved : food->second;
            if (within.contains(used.item.name)) continue;
            found_.error(used.item.origin, "not-in-formula",
                         fmt::format("'{}' is not used by '{}' or its parts", used.item.name,
                                     run.formula.name),
                         suggest_(used.item.name, {within.begin(), within.end()},
                                  "only what goes into the formula is followed"));
        }
    }

    RunNames const& names_;
    Suggest const& suggest_;
    Diagnostics& found_;
};

} // namespace run_links_detail

GROAT_INLINE void link_runs(std::vector<Run>& runs, RunNames const& names, Suggest const& suggest,
                            Diagnostics& found) {
    run_links_detail::RunLinker linker(names, suggest, found);
    std::map<std::pair<std::string_view, std::optional<Date>>, Run*> known;
    for (Run& run : runs) {
        std::size_t const errors = found.errors_met();
        linker.link(run);
        if (found.errors_met() > errors) run.is_in_doubt = true;
        auto const [first, is_new] =
            known.emplace(std::pair{std::string_view(run.name), run.date}, &run);
        if (is_new) continue;
        found.add({Severity::error,
                   "given-twice",
                   fmt::format("the run '{}' of one day is given twice", run.name),
                   run.origin,
                   {{"first given here", first->second->origin}},
                   "a name stands for one thing: rename or remove one"});
        run.is_in_doubt = first->second->is_in_doubt = true;
    }
}

} // namespace groat
