/// Every sheet there is, for what is written from their shapes.
#pragma once

#include <groat/sheets/shape_books.hpp>
#include <groat/sheets/shape_buy.hpp>
#include <groat/sheets/shape_compare.hpp>
#include <groat/sheets/shape_cost.hpp>
#include <groat/sheets/shape_label.hpp>
#include <groat/sheets/shape_make.hpp>
#include <groat/sheets/shape_menu.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/shape_review.hpp>
#include <groat/sheets/shape_trial.hpp>

namespace groat {

inline constexpr SheetShape const* sheet_shape_list[] = {
    &sheet_shapes::cost::sheet,          &sheet_shapes::client_quote::sheet,
    &sheet_shapes::maker_quote::sheet,   &sheet_shapes::buy::sheet,
    &sheet_shapes::order::sheet,         &sheet_shapes::client_label::sheet,
    &sheet_shapes::maker_label::sheet,   &sheet_shapes::make::sheet,
    &sheet_shapes::menu::sheet,          &sheet_shapes::reprice::sheet,
    &sheet_shapes::runs::sheet,          &sheet_shapes::variance::sheet,
    &sheet_shapes::yields::sheet,        &sheet_shapes::whatif::sheet,
    &sheet_shapes::sensitivity::sheet,   &sheet_shapes::price_limit::sheet,
    &sheet_shapes::costs_between::sheet, &sheet_shapes::check::sheet,
    &sheet_shapes::importing::sheet,     &sheet_shapes::words::sheet,
    &sheet_shapes::compare::sheet,       &sheet_shapes::convert::sheet,
};

} // namespace groat
