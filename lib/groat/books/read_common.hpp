/// What stands in several of the books alike: targets and price points, tasks, supplies used up.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/costed_as.hpp>
#include <groat/model/effort.hpp>
#include <groat/model/policy.hpp>

#include <iterator>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// `price:`: one target, one price point, or both.
[[nodiscard]] PricePolicy read_price_policy(Node const* node, Reading const& reading);
/// `alone`, `made together` or `usual run`; empty where it is not said.
[[nodiscard]] std::optional<CostedAs> read_costed_as(Node const* node, Reading const& reading);

/// Whether there are oven loads and pieces that efforts can be counted by.
struct Countable {
    bool loads = true;
    bool pieces = true;
};

/// `labour:` and `order work:`: a list of tasks, of a shape that says what they may be counted by.
template <Shape const& shape>
[[nodiscard]] std::vector<Task> read_tasks(Node const* node, Countable countable,
                                           Reading const& reading);

/// `consumables:`: a list of supplies with amounts.
[[nodiscard]] std::vector<Consumption> read_consumables(Node const* node, Countable countable,
                                                        Reading const& reading);

/// `packing:`: a mapping of supplies to amounts, for each sale unit.
[[nodiscard]] std::vector<Consumption> read_packing(Node const* node, Reading const& reading);

/// What stands at a count, where it is in a unit that holds several: "4 dozen"; else empty.
[[nodiscard]] std::string counted_in(Node const* node, Reading const& reading);

/// Calls `read(key, value)` for each entry of a mapping by name.
template <class Read>
void each_named(Node const* node, std::string_view what, Reading const& reading, Read read) {
    if (node == nullptr) return;
    if (!node->is_mapping())
        return expected(what, *node, reading.found, "write a line 'name: ...' for each");
    for (std::size_t i = 0; i < node->items.size(); ++i)
        if (is_name(node->keys[i], reading)) read(node->keys[i], node->items[i]);
}

namespace read_common_detail {

/// What an effort is counted by: one of the words of `per`, the first where nothing is said.
Per read_driver(Node const* node, std::span<std::string_view const> words, Countable countable,
                Reading const& reading);

/// Whether a part of a batch takes that part of it: a question of what goes by the batch only.
inline bool read_scales(auto& fields, Per per, Reading const& reading) {
    bool const scales = read_yes_no(fields.at("scales"), reading).value_or(false);
    if (scales && per != Per::batch)
        reading.found.error(fields.place_of("scales"), "scales-by-what",
                            fmt::format("what goes by the {} does not scale with a part of a batch",
                                        per_words[static_cast<std::size_t>(per)]),
                            "write 'per: batch', or take 'scales' out");
    return scales;
}

} // namespace read_common_detail

template <Shape const& shape>
std::vector<Task> read_tasks(Node const* node, Countable countable, Reading const& reading) {
    std::vector<Task> tasks;
    for (Node const& each : read_list(node, "a list of tasks", reading)) {
        Fields<shape> fields(each, reading.found);
        Task task;
        task.origin = fields.where();
        assign(task.name, read_name(fields.at("task"), reading));
        Node const* const unattended = fields.at("unattended");
        auto const is_unattended = read_yes_no(unattended, reading);
        assign(task.is_unattended, is_unattended);
        bool const is_attended = unattended == nullptr || is_unattended == false;
        Node const* const by = is_attended ? fields.needed("by") : fields.at("by");
        task.role = read_reference(by, reading);
        // of what cannot be read, nobody is missed
        if (unattended != nullptr && !is_unattended) task.is_unattended = by == nullptr;
        assign(task.minutes, read_not_negative(fields.at("minutes"), "a task's minutes", reading));
        task.per = read_common_detail::read_driver(fields.at("per"), words_of<shape>("per"),
                                                   countable, reading);
        task.scales = read_common_detail::read_scales(fields, task.per, reading);
        fields.close();
        if (fields.is_mapping()) tasks.push_back(std::move(task));
    }
    return tasks;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_common.ipp>
#endif
