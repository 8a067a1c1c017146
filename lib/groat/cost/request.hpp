/// What is asked of the engine, and how much of the answer is wanted.
#pragma once

#include <groat/cost/explosion.hpp>
#include <groat/model/order.hpp>

#include <optional>
#include <vector>

namespace groat {

/// What is to be costed.
struct CostRequest {
    std::vector<Sale> sales;
    Wholes wholes = Wholes::all;
    /// Present where it is delivered.
    std::optional<Delivery> delivery = {};
    /// Whether to divide the ingredient cost into what is eaten and what is lost, which takes costing
    /// the same twice more. Without, the yield losses of the result are all zero.
    bool divides_losses = true;
    /// Whether to keep on record what is used of each ingredient and supply. Without, as where thousands of
    /// items are costed one by one, `ingredients` and `supplies` of the result are empty. Only for
    /// `Wholes::none`, in which a unit costs the same however much is used.
    bool keeps_uses = true;
};

} // namespace groat
