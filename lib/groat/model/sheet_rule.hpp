/// How a shop's sheets are set: `sheets:` in shop.yaml, and its words.
#pragma once

#include <groat/model/words.hpp>
#include <groat/paper/look.hpp>

namespace groat {

struct SheetRule {
    Style style = {}; ///< as declared, on every sheet
    Words words = {}; ///< of the sheets that leave the house
    Look look = {};

    /// The style of sheets in the shop's words: as declared, else dates are long ones of the language.
    [[nodiscard]] Style style_in_words() const {
        Style result = style;
        if (!result.is_date_shown) {
            result.dates = words("long date");
            result.months = words.months();
        }
        return result;
    }
};

} // namespace groat
