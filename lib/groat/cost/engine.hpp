/// What it costs: demand runs down through the formulas, costs run back up in the share that each use
/// took, and nothing is lost or counted twice on the way.
#pragma once

#include <groat/cost/breakdown.hpp>
#include <groat/cost/request.hpp>
#include <groat/model/linked_book.hpp>

#include <memory>
#include <vector>

namespace groat {

struct Formulary;
struct KeptGood;

/// A book calculated for a date: everything that does not depend on an order is done here, once. Copies share
/// what was calculated. What it tells of owns what it points to, so that a cost or a quote may outlive it.
class Costing {
public:
    Costing(LinkedBook book, Date date);
    Costing(Costing const&) = default; // moved is copied: there is no empty one
    Costing& operator=(Costing const&) = default;

    /// These three stand in the costing: refused of one that dies at once.
    [[nodiscard]] Book const& book() const&;
    [[nodiscard]] Formulary const& formulary() const&;
    Book const& book() const&& = delete;
    Formulary const& formulary() const&& = delete;
    [[nodiscard]] LinkedBook linked() const;
    [[nodiscard]] Date date() const;
    /// What a piece or gram of a formula costs of which the leftover is kept, and the run it is made in; null for
    /// others, and where it cannot be costed.
    [[nodiscard]] KeptGood const* kept(std::size_t formula) const&;
    KeptGood const* kept(std::size_t formula) const&& = delete;

    /// Whatever keeps a formula from being costed on the date (cycles, missing facts, missing prices), and
    /// warnings: for all formulas of the book and the ways they are sold, or for one formula, what it uses,
    /// and one way of selling it.
    [[nodiscard]] Diagnostics findings() const;
    [[nodiscard]] Diagnostics findings(std::size_t formula, SaleUnit const* unit = nullptr) const;
    /// The same for weighing a formula only, for which nothing needs a price.
    [[nodiscard]] Diagnostics weighing_findings(std::size_t formula) const;

    /// The cost of what is requested, exact.
    ///
    /// The lines' costs add up to the order's, the yield losses to the ingredient cost. The formulas must
    /// be free of errors (see `findings`), else this throws `std::logic_error`. The result keeps alive what it
    /// points to, so it may outlive this.
    [[nodiscard]] OrderCost cost(CostRequest const& request) const;

private:
    enum class Prices { needed, not_needed };
    void collect(std::size_t formula, Prices prices, std::vector<bool>& seen,
                 Diagnostics& found) const;
    void collect_packing(SaleUnit const& unit, Diagnostics& found) const;
    void need(std::size_t ingredient, Span where, Diagnostics& found) const;

    struct All;
    std::shared_ptr<All const> all_;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/engine.ipp>
#endif
