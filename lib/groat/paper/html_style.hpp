/// The style sheet of a page: a quiet letter on white paper. It reads on a phone and when enlarged, and prints on A4
/// and Letter with the heads of tables repeated and nothing torn apart.
#pragma once

#include <groat/paper/look.hpp>

#include <string>
#include <string_view>

namespace groat {

/// The whole text of `<style>` in the shop's colours; `foot` stands at the foot of every printed page.
[[nodiscard]] std::string style_sheet(Look const& look, std::string_view foot);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/html_style.ipp>
#endif
