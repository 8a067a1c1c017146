/// What holds for the whole business: wages, ovens, energy, overhead, fees, tax, and how it quotes.
#pragma once

#include <groat/base/judgement.hpp>
#include <groat/measure/money_rate.hpp>
#include <groat/model/costed_as.hpp>
#include <groat/model/effort.hpp>
#include <groat/model/label_rule.hpp>
#include <groat/model/policy.hpp>
#include <groat/model/sender.hpp>

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The categories of cost, in the order they are shown.
enum class Category { ingredients, consumables, packaging, labour, energy, overhead, delivery };
inline constexpr std::size_t category_count = 7;
inline constexpr std::array<std::string_view, category_count> category_words = {
    "ingredients", "consumables", "packaging", "labour", "energy", "overhead", "delivery"};
inline constexpr std::array<Category, category_count> all_categories = {
    Category::ingredients, Category::consumables, Category::packaging, Category::labour,
    Category::energy,      Category::overhead,    Category::delivery};

[[nodiscard]] constexpr std::string_view word_of(Category category) {
    return category_words[static_cast<std::size_t>(category)];
}

struct Role {
    std::string name;
    MoneyRate wage;    ///< per hour
    Surcharge on_cost; ///< employer's contributions and benefits on top
    Span origin = {};
};

struct Oven {
    std::string name;
    Quantity power;
    Share duty;     ///< the part of the time that it draws its power
    Number preheat; ///< minutes, once for each order that uses it
    Reference fuel; ///< names a tariff
    Span origin = {};
};

struct Tariff {
    std::string name;
    MoneyRate rate; ///< per kWh
};

struct Overhead {
    enum class Driver { labour_hour, oven_hour, order, piece, ingredients, prime_cost };
    std::string name;
    Driver driver = Driver::order;
    Money amount = {};    ///< per hour, order or piece
    Surcharge share = {}; ///< of ingredients or prime cost
    Span origin = {};
    std::optional<bool> is_variable = {}; ///< absent: as overhead is as a whole
};

struct Fee {
    std::string name;
    FeeRate share;    ///< of all that the client pays
    Money fixed = {}; ///< for each payment
};

struct RushRule {
    Days within{0};
    Surcharge surcharge = {};
};

struct Shop : Sender {
    Measures measures = Measures::us;
    std::vector<Role> roles = {};
    std::vector<Oven> ovens = {};
    std::vector<Tariff> tariffs = {};
    std::vector<Overhead> overheads = {};
    std::vector<Task> order_work = {};   ///< once for every order
    std::vector<Task> counter_work = {}; ///< once for every sale at the counter
    std::optional<CostedAs> costed_as = {};
    Money delivery_flat = {};
    MoneyRate delivery_rate = {}; ///< per distance
    Reference driver = {};        ///< the role whose time a delivery takes
    std::vector<Fee> fees = {};
    Reference paid_by = {};
    PricePolicy price = {};
    std::optional<Money> minimum_order = {};
    Span minimum_order_origin = {};
    std::optional<RushRule> rush = {};
    Share deposit = {};
    std::optional<Days> valid = {};
    std::optional<Days> stale_after = {};
    std::optional<Money> cash_rounding = {};
    std::optional<Number> standard_run = {};
    bool measures_by_cup = false; ///< the bench wants cups and spoons beside the weights
    std::array<bool, category_count> is_variable = {true, true, true, true, true, false, true};
    LabelRule label = {};
    Judgement judgement = {}; ///< of findings, by their codes
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)

    /// What somebody's minutes cost, with on-cost.
    [[nodiscard]] Money labour_cost(Reference const& role, Number const& time) const {
        return roles[role.index].wage.of(minutes(time)) * (1 + roles[role.index].on_cost.value());
    }
};

} // namespace groat
