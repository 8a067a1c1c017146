/// From a quote to what its client is told: the one place at which costs are left behind.
#pragma once

#include <groat/price/client_quote.hpp>
#include <groat/price/quoted.hpp>

namespace groat {

[[nodiscard]] ClientQuote quote_for_client(Quote const& quote, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/quote_for_client.ipp>
#endif
