/// orders/*.yaml: what a client asks for, and on what terms.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/order.hpp>

namespace groat {

/// The order of a document; without a number where the document gives none.
[[nodiscard]] Order read_order(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_orders.ipp>
#endif
