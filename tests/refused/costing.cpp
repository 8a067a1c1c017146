// A cost tells of purchases that stand in its costing, which must live as long.
#include <groat/cost/engine.hpp>

using groat::Book;
using groat::Costing;
using groat::CostRequest;
using groat::Date;
using groat::OrderCost;

OrderCost cost_of(Book const& book, Date date, CostRequest const& request) {
    Costing const costing(book, date);
    OrderCost cost = costing.cost(request);
    for (auto& use : cost.ingredients) use.purchase = nullptr; // it is on its own from here
    return cost;
}

#if CASE == 1
// refused: use of deleted function
// refused: call to deleted member function
OrderCost cost_of_one_that_dies(Book const& book, Date date, CostRequest const& request) {
    return Costing(book, date).cost(request);
}
#endif
