/// Books from which everything is taken that belongs to orders, for laws about runs.
#pragma once

#include "books.hpp"

namespace groat::test {

/// The same book without order work, overhead by the order, efforts by the order, and whole packs.
Book without_what_belongs_to_orders(Book book);

} // namespace groat::test
