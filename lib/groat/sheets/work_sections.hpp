/// One formula on the production sheet: how it is mixed, portioned and baked, and what is weighed for it.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/plan/production.hpp>

namespace groat {

/// Grams as a scale shows them: whole ones from 100 g on, tenths from 10 g on, else hundredths. The unit stands
/// in the column's title.
[[nodiscard]] Cell scale_weight(Number const& grams);

/// The same of what is bought; what is not costed by mass has its unit behind it: "2 pieces", "4.93 mL".
[[nodiscard]] Cell scale_amount(Number const& amount, Dimension dimension);

/// What is to be known before one begins, under the formula's name and `number`.
[[nodiscard]] Facts work_facts(Work const& work, std::size_t number, Book const& book);

/// What is weighed: for a mix of each size, or for a piece that is put together, and in all; counted or in cups
/// and spoons beside the weight of what one has in hand; baker's percentages where a base is named.
[[nodiscard]] Table work_lines(Work const& work, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/work_sections.ipp>
#endif
