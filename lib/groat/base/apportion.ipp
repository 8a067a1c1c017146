#pragma once

#include <groat/base/apportion.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <numeric>

namespace groat {

GROAT_INLINE std::vector<Number> round_together(std::span<Number const> figures, Number const& step,
                                                Tie tie) {
    Number const sum = std::accumulate(figures.begin(), figures.end(), Number());
    return round_to_total(figures, step, round_to(sum, step, tie));
}

GROAT_INLINE std::vector<Number> round_to_total(std::span<Number const> figures, Number const& step,
                                                Number const& total) {
    std::vector<Integer> parts;
    std::vector<Number> remainders;
    Integer missing = steps(total, step, Tie::half_even);
    for (Number const& figure : figures) {
        parts.push_back(steps(figure, step, Tie::down));
        remainders.push_back(figure / step - parts.back());
        missing -= parts.back();
    }
    std::vector<std::size_t> order(figures.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return remainders[a] > remainders[b]; });
    // Usually fewer steps are missing than there are figures; a total at the edge of its range takes one
    // more round, or gives one step back, from the figures that it changes least.
    while (missing.sign() > 0 && !order.empty()) {
        for (std::size_t const index : order) {
            if (missing.sign() == 0) break;
            parts[index] += 1;
            missing -= 1;
        }
    }
    for (auto index = order.rbegin(); missing.sign() < 0 && index != order.rend(); ++index) {
        parts[*index] -= 1;
        missing += 1;
    }
    std::vector<Number> rounded;
    rounded.reserve(parts.size());
    for (Integer const& part : parts) rounded.push_back(Number(part) * step);
    return rounded;
}

GROAT_INLINE std::vector<Integer> apportion(Integer const& total, std::span<Number const> weights) {
    if (weights.empty()) throw std::logic_error("apportioning over no parts");
    Number sum;
    for (Number const& weight : weights) {
        if (weight.is_negative()) throw std::logic_error("apportioning by a negative weight");
        sum += weight;
    }
    std::vector<Integer> parts(weights.size());
    if (sum.is_zero()) {
        parts.front() = total;
        return parts;
    }
    // By magnitude, so that a discount is divided as the same surcharge would be.
    Integer const size = abs(total);
    std::vector<Number> shares;
    shares.reserve(weights.size());
    for (Number const& weight : weights) shares.push_back(weight * size / sum);
    std::vector<Number> const rounded = round_to_total(shares, 1, size);
    std::transform(rounded.begin(), rounded.end(), parts.begin(), [&](Number const& part) {
        return total.sign() < 0 ? Integer(-part.numerator()) : part.numerator();
    });
    return parts;
}

} // namespace groat
