/// Books drawn from a seed, for laws that have to hold in every bakery: formulas by the piece and by mass
/// that use one another, all kinds of losses, yields, labour, ovens, overhead, supplies, prices and terms,
/// and one order. Each is valid: it links, can be costed on `today`, and its targets are within reach.
/// The same seed gives the same book on every machine, since no distribution of the library is used.
#pragma once

#include "books.hpp"

#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace groat::test {

class Draw {
public:
    explicit Draw(std::uint64_t seed) : engine_(seed * 0x9E3779B97F4A7C15U + 1) {}

    [[nodiscard]] std::int64_t whole(std::int64_t least, std::int64_t most) {
        return least +
               static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(most - least + 1));
    }
    /// True in so many of a hundred cases.
    [[nodiscard]] bool chance(int in_a_hundred) { return whole(1, 100) <= in_a_hundred; }
    template <class T> [[nodiscard]] T const& one_of(std::vector<T> const& things) {
        return things[static_cast<std::size_t>(
            whole(0, static_cast<std::int64_t>(things.size()) - 1))];
    }
    /// A percentage in steps of a half, as text.
    [[nodiscard]] std::string share(std::int64_t least, std::int64_t most);

private:
    std::mt19937_64 engine_;
};

/// What a random book is made of; a law that needs a plainer bakery says so.
struct Wanted {
    bool whole_packs = true;   ///< some things are charged by the pack
    bool kept_leftover = true; ///< some formulas keep what is left over
    bool fixed_prices = true;  ///< some prices are given rather than solved
};

/// A book with one order, linked.
Book random_book(std::uint64_t seed, Wanted wanted = {});

/// The sales of its order.
std::vector<Sale> sales_of(Book const& book);

/// One in so many books is tried where the environment says so: a law that all of them have held once is
/// held by fewer under the sanitizers, which make each many times slower.
std::uint64_t one_book_in();

/// Calls `law(book)` for so many books, and says which seed a failure came from.
template <class Law> void for_random_books(std::uint64_t count, Wanted wanted, Law law) {
    for (std::uint64_t seed = 1; seed <= count; seed += one_book_in()) {
        CAPTURE(seed);
        Book const book = random_book(seed, wanted);
        law(book);
    }
}
template <class Law> void for_random_books(std::uint64_t count, Law law) {
    for_random_books(count, {}, law);
}

} // namespace groat::test
