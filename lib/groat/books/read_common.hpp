/// What stands in several of the books alike: targets and price points, tasks, supplies used up.
#pragma once

#include <groat/books/bind.hpp>
#include <groat/books/read_value.hpp>
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
bool read_value(PricePolicy& policy, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Contribution& contribution, Node const& node, KeyShape const& key,
                Reading const& reading);
bool read_value(GivenPrice& price, Node const& node, KeyShape const& key, Reading const& reading);
/// What a sale unit takes of a supply.
bool read_value(Consumption& use, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr std::string_view ways_to_a_price[] = {"up", "nearest"};
inline constexpr std::string_view sides_of_tax[] = {"without", "with"};

inline constexpr KeyShape price_keys[] = {
    {"margin",
     may,
     to_one<&PricePolicy::target, Margin>(a_percentage),
     "40 %",
     "The part of the net price that is left when all costs are paid.",
     {one_of_these("targets")}},
    {"markup",
     may,
     to_one<&PricePolicy::target, Markup>(a_percentage),
     "65 %",
     "What is added to the costs, as a part of them.",
     {one_of_these("targets")}},
    {"food cost",
     may,
     to_one<&PricePolicy::target, FoodCostShare>(a_percentage),
     "28 %",
     "The part of the net price that the ingredients may take.",
     {one_of_these("targets")}},
    {"prime cost",
     may,
     to_one<&PricePolicy::target, PrimeCostShare>(a_percentage),
     "60 %",
     "The part of the net price that ingredients and labour may take.",
     {one_of_these("targets")}},
    {"contribution",
     may,
     to_one<&PricePolicy::target, Contribution>(some_money),
     "2.40",
     "The money that is to be left of the net price when the variable costs are paid.",
     {one_of_these("targets")}},
    {"given",
     may,
     to_one<&PricePolicy::target, GivenPrice>(some_coins),
     "5.50",
     "The price itself, where it is set and not solved for.",
     {one_of_these("targets")}},
    {"to", may, to<&PricePoint::step>(a_step_of_money), "0.50", "The step that prices go to."},
    {"endings",
     may,
     list_of(some_money),
     "[.50, .95]",
     "What prices end in, in place of a step.",
     {without("to")}},
    {"toward", may, to<&PricePoint::to_nearest>(one_of(ways_to_a_price)), "nearest",
     "Whether a price goes up to the next step, or to the nearest."},
};
inline constexpr Synonym price_synonyms[] = {
    {"profit", "margin"}, {"profit margin", "margin"}, {"price", "given"},
    {"round to", "to"},   {"rounding", "to"},          {"step", "to"},
};
inline constexpr Shape price{"price", "this price", price_keys, price_synonyms};
/// The price itself may stand for `{given: 5.50}`.
inline constexpr Value a_price = some_money | mapping(price);

inline constexpr std::string_view formula_drivers[] = {per_words[1], per_words[0], per_words[2],
                                                       per_words[3], per_words[4]};
inline constexpr std::string_view order_drivers[] = {per_words[0]};
inline constexpr std::string_view sale_unit_drivers[] = {per_words[5]};
inline constexpr std::string_view consumable_drivers[] = {per_words[1], per_words[0], per_words[3],
                                                          per_words[4]};

/// The keys of a task, which is counted by one of `drivers`.
struct TaskKeys {
    KeyShape keys[6];

    constexpr explicit TaskKeys(std::span<std::string_view const> drivers)
        : keys{{"task", must, to<&Task::name>(a_name), "mix", "What is done."},
               {"unattended", may, yes_or_no, "yes",
                "Whether nobody stands by; it then takes time and costs no labour."},
               {"by",
                may,
                to<&Task::role>(a_name),
                "baker",
                "The role that does it, as shop.yaml calls it.",
                {unless("unattended")}},
               {"minutes", must, to<&Task::minutes>(some_minutes), "14",
                "How many minutes it takes."},
               {"per", may, one_of(drivers), drivers.front(),
                "What the minutes are for; the first of these where nothing is said."},
               {"scales", may, to<&Task::scales>(yes_or_no), "yes",
                "Whether a part of a batch takes that part of it; only with 'per: batch'."}} {}
};
inline constexpr Synonym task_synonyms[] = {
    {"name", "task"},
    {"step", "task"},
    {"role", "by"},
    {"who", "by"},
    {"time", "minutes", "write the minutes alone, as 'minutes: 14'"},
    {"duration", "minutes", "write the minutes alone, as 'minutes: 14'"},
};
inline constexpr TaskKeys formula_task_keys(formula_drivers);
inline constexpr TaskKeys order_task_keys(order_drivers);
inline constexpr TaskKeys sale_unit_task_keys(sale_unit_drivers);
inline constexpr Shape formula_task{"task of a formula", "this task", formula_task_keys.keys,
                                    task_synonyms};
inline constexpr Shape order_task{"task of an order", "this task", order_task_keys.keys,
                                  task_synonyms};
inline constexpr Shape sale_unit_task{"task of a sale unit", "this task", sale_unit_task_keys.keys,
                                      task_synonyms};
inline constexpr Value a_formula_task = mapping(formula_task);
inline constexpr Value an_order_task = mapping(order_task);
inline constexpr Value a_sale_unit_task = mapping(sale_unit_task);

inline constexpr KeyShape consumable_keys[] = {
    {"item", must, to<&Consumption::supply>(a_name), "tray liner",
     "The supply, as supplies.yaml calls it."},
    {"amount", must, to<&Consumption::amount>(a_count), "1", "How many are used up."},
    {"per", may, one_of(consumable_drivers), "batch",
     "What the amount is for; a batch where nothing is said."},
    {"scales", may, to<&Consumption::scales>(yes_or_no), "yes",
     "Whether a part of a batch takes that part of it; only with 'per: batch'."},
};
inline constexpr Synonym consumable_synonyms[] = {
    {"supply", "item"}, {"name", "item"}, {"count", "amount"}, {"quantity", "amount"}};
inline constexpr Shape consumable{"consumable", "this entry", consumable_keys, consumable_synonyms};
inline constexpr Value a_consumable = mapping(consumable);

inline constexpr Value some_densities = list_of(a_density);

} // namespace groat::shapes

namespace groat {

[[nodiscard]] PricePolicy read_price_policy(Node const* node, Reading const& reading);

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
/// What stands at a count, where it is in a unit that holds several: "4 dozen"; else empty.
[[nodiscard]] std::string counted_in(Node const* node, Reading const& reading);

namespace read_common_detail {

/// What an effort is counted by: one of the words of `per`, the first where nothing is said.
Per read_driver(Node const* node, std::span<std::string_view const> words, Countable countable,
                Reading const& reading);

/// Reports what scales with a part of a batch and does not go by the batch.
void check_scales(bool scales, Per per, Span where, Reading const& reading);

} // namespace read_common_detail

template <Shape const& shape>
std::vector<Task> read_tasks(Node const* node, Countable countable, Reading const& reading) {
    std::vector<Task> tasks;
    for (Node const& each : read_list(node, "a list of tasks", reading)) {
        Fields<shape> fields(each, reading.found);
        Task task;
        task.origin = fields.where();
        Node const* const unattended = fields.at("unattended");
        auto const is_unattended = fields.template read<bool>("unattended", reading);
        assign(task.is_unattended, is_unattended);
        bool const is_attended = unattended == nullptr || is_unattended == false;
        Node const* const by = is_attended ? fields.needed("by") : fields.at("by");
        fields.read_into(task, reading);
        // of what cannot be read, nobody is missed
        if (unattended != nullptr && !is_unattended) task.is_unattended = by == nullptr;
        task.per = read_common_detail::read_driver(fields.at("per"), words_of<shape>("per"),
                                                   countable, reading);
        read_common_detail::check_scales(task.scales, task.per, fields.place_of("scales"), reading);
        fields.close();
        if (fields.is_mapping()) tasks.push_back(std::move(task));
    }
    return tasks;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_common.ipp>
#endif
