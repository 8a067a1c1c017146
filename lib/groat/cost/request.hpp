/// What is asked of the engine, and how much of the answer is wanted.
#pragma once

#include <groat/cost/explosion.hpp>

#include <optional>
#include <vector>

namespace groat {

/// Whether it is an order that is costed, or a run of something that is sold, which is without what belongs to
/// orders: what is done, used up or spent once for every order, and whole packs bought for it alone.
enum class Scope { order, run };

/// What is to be costed.
struct CostRequest {
    std::vector<Sale> sales;
    Wholes wholes = Wholes::all;
    /// Present where it is delivered.
    std::optional<Delivery> delivery = {};
    /// Whether to divide the ingredient cost into what is eaten and what is lost, which takes costing
    /// the same twice more. Without, the yield losses of the result are all zero.
    bool divides_losses = true;
    /// Whether to keep on record what is used, done and baked. Without, as where thousands of items are costed
    /// one by one, the result tells of its lines and total only.
    bool keeps_record = true;
    Scope scope = Scope::order;
    /// By sale, how it is costed: it costs what it would if all were costed so. None: all of them made together.
    std::vector<CostedAs> ways = {};
    /// What is sold by each of the other orders that are made together with this one.
    std::vector<std::vector<Sale>> companions = {};
    /// Whether what is sold is made for it, even where it is kept and costs go by a run of its own.
    bool makes_kept = false;
    /// How often somebody pays at the counter for what each line sells.
    Number counter_sales = 0;
};

} // namespace groat
