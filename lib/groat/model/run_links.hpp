/// What the names in runs stand for. Part of `link` (link.hpp), which knows all that can be named.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/model/formula.hpp>
#include <groat/model/order.hpp>
#include <groat/model/run.hpp>
#include <groat/model/shop.hpp>
#include <groat/model/suggest.hpp>

#include <map>
#include <string>
#include <vector>

namespace groat {

/// The things that runs may name; formulas have been linked.
struct RunNames {
    std::vector<Formula> const& formulas;
    std::vector<Order> const& orders;
    std::vector<Role> const& roles;
    std::map<std::string, std::size_t, std::less<>> const& ingredients;
};

/// Resolves the names in all runs, and reports those that stand for nothing, ingredients that do not go into
/// the formula or its parts, pieces of what is made by mass, and a run that stands twice.
void link_runs(std::vector<Run>& runs, RunNames const& names, Suggest const& suggest,
               Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/run_links.ipp>
#endif
