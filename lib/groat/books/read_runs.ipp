#pragma once

#include <groat/books/read_runs.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/read_common.hpp>
#include <groat/books/shape_orders.hpp>

#include <optional>
#include <string_view>
#include <utility>

namespace groat {

namespace read_runs_detail {

inline std::optional<Number> read_mass(Node const* node, std::string_view what,
                                       Reading const& reading) {
    auto const mass = read_quantity(node, {what, {Dimension::mass}, "2.08 kg"}, reading);
    if (!mass) return std::nullopt;
    return mass->amount;
}

inline void read_pieces(Node const& node, Run& run, Reading const& reading) {
    Fields<shapes::pieces> fields(node, reading.found);
    run.portioned = read_count(fields.at("portioned"), "what was portioned", reading);
    // None may be good: a tray that was forgotten is a run, too.
    Node const* const good = fields.at("good");
    auto const number =
        read_quantity(good, {"the number of good pieces", {Dimension::count}, "80", true}, reading);
    if (number && is_whole_count(*good, *number, "the number of good pieces", reading))
        run.good = number->amount.numerator();
    if (run.portioned && run.good && *run.good > *run.portioned)
        reading.found.add({Severity::error,
                           "more-good-than-made",
                           fmt::format("{} good pieces cannot come from {}", run.good->str(),
                                       run.portioned->str()),
                           fields.place_of("good"),
                           {{"so many were portioned", fields.place_of("portioned")}},
                           "count again: 'portioned' is what went onto the tray"});
    fields.close();
}

inline constexpr Wanted used_amount{
    "the amount used", {Dimension::mass, Dimension::volume, Dimension::count}, "330 g", true};

/// `330 g`, or with what was paid for it.
inline UsedFood read_used(Key const& key, Node const& node, Reading const& reading) {
    UsedFood used{{key.text, key.where}, {0, Dimension::mass, nullptr}};
    if (!node.is_mapping()) {
        assign(used.amount, read_quantity(&node, used_amount, reading));
        return used;
    }
    Fields<shapes::used> fields(node, reading.found);
    Node const* const amount = fields.at("amount");
    auto quantity = read_quantity(amount, used_amount, reading);
    used.paid = read_money(fields.at("paid"), reading);
    if (quantity && quantity->amount.is_zero() && used.paid && !used.paid->is_zero())
        reading.found.error(fields.place_of("paid"), "paid-for-nothing",
                            fmt::format("something was paid for no '{}' at all", key.text),
                            "'paid' is what the amount used has cost; take it out");
    assign(used.amount, std::move(quantity));
    fields.close();
    return used;
}

/// `55 min`, or with the wage that was paid.
inline WorkedTime read_worked(Key const& key, Node const& node, Reading const& reading) {
    WorkedTime worked{{key.text, key.where}, 0};
    auto const take = [&](Node const* value) {
        if (auto const quantity = read_quantity(
                value, {"the time worked", {Dimension::time}, "55 min", true}, reading))
            worked.minutes = quantity->amount / 60;
    };
    if (!node.is_mapping()) {
        take(&node);
        return worked;
    }
    Fields<shapes::worked> fields(node, reading.found);
    take(fields.at("time"));
    worked.paid = read_money_rate(fields.at("paid"), Dimension::time, reading);
    fields.close();
    return worked;
}

} // namespace read_runs_detail

GROAT_INLINE Run read_run(Node const& node, Reading const& reading) {
    namespace parts = read_runs_detail;
    Fields<shapes::run> fields(node, reading.found);
    Run run;
    Node const* const name = fields.at("run");
    run.origin = name != nullptr ? name->where : fields.where();
    assign(run.name, read_name(name, reading));
    run.formula = read_reference(fields.at("formula"), reading);
    run.date = read_date(fields.at("date"), reading);
    run.order = read_reference(fields.at("order"), reading);
    run.batches = read_positive(fields.at("batches"), "the number of batches", reading);
    run.in_grams = parts::read_mass(fields.at("in"), "what went in", reading);
    run.dough_grams = parts::read_mass(fields.at("dough"), "the dough", reading);
    if (Node const* const pieces = fields.at("pieces")) parts::read_pieces(*pieces, run, reading);
    run.out_grams = parts::read_mass(fields.at("out"), "what came out", reading);
    each_named(fields.at("used"), "a mapping of ingredients", reading,
               [&](Key const& key, Node const& each) {
                   run.used.push_back(parts::read_used(key, each, reading));
               });
    each_named(fields.at("worked"), "a mapping of roles", reading,
               [&](Key const& key, Node const& each) {
                   run.worked.push_back(parts::read_worked(key, each, reading));
               });
    fields.close();
    return run;
}

} // namespace groat
