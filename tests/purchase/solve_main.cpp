// Reads a purchase as plain numbers, answers it and writes the plan: the counterpart of compare.py.
//
//   work, items, demands; suppliers, per supplier: delivery minimum free-from(-1: never); offers, per offer:
//   supplier item content cost counted most(-1: none) breaks, per break: packs cost counted;
//   uses, per item where there are any: useful worth
#include <groat/solve/purchase.hpp>

#include <cstdio>
#include <iostream>

namespace {

groat::Number number() {
    std::string word;
    if (!(std::cin >> word)) throw std::runtime_error("the input ends early");
    auto const read = groat::parse_number(word);
    if (!read) throw std::runtime_error(read.error().what);
    return *read;
}

std::size_t count() { return static_cast<std::size_t>(number().numerator()); }

groat::PurchaseProblem problem() {
    groat::PurchaseProblem problem;
    for (std::size_t n = count(); n > 0; --n) problem.demands.push_back(number());
    for (std::size_t n = count(); n > 0; --n) {
        groat::PurchaseSupplier supplier;
        supplier.delivery = number();
        supplier.minimum = number();
        groat::Number const free = number();
        if (!free.is_negative()) supplier.free_from = free;
        problem.suppliers.push_back(supplier);
    }
    for (std::size_t n = count(); n > 0; --n) {
        groat::PurchaseOffer offer;
        offer.supplier = count();
        offer.item = count();
        offer.content = number();
        offer.price.cost = number();
        offer.price.counted = number();
        groat::Number const most = number();
        if (!most.is_negative()) offer.most_packs = most.numerator();
        for (std::size_t m = count(); m > 0; --m) {
            groat::PackBreak each;
            each.packs = number().numerator();
            each.price.cost = number();
            each.price.counted = number();
            offer.breaks.push_back(each);
        }
        problem.offers.push_back(std::move(offer));
    }
    for (std::size_t n = count(); n > 0; --n) {
        groat::Number const useful = number();
        problem.uses.push_back({useful, number()});
    }
    return problem;
}

} // namespace

/// One answer per problem, until the input ends: `ok net bound worth single packs...` or `no code`.
int main() {
    while (std::cin >> std::ws && !std::cin.eof()) {
        auto const work = static_cast<std::uint64_t>(number().numerator());
        groat::PurchaseProblem const given = problem();
        auto const found = groat::cheapest_purchase(given, work);
        if (!found) {
            std::printf("no %s\n", std::string(found.error().code).c_str());
        } else {
            auto const single = groat::cheapest_single_purchase(given, work);
            std::string line = fmt::format("ok {} {} {} {}", groat::exact(found->net()),
                                           groat::exact(found->bound), groat::exact(found->worth),
                                           single ? groat::exact(single->purchase.net())
                                                  : std::string(single.error().code));
            for (groat::Integer const& packs : found->packs) line += ' ' + packs.str();
            std::printf("%s\n", line.c_str());
        }
        std::fflush(stdout);
    }
}
