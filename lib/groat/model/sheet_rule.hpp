/// How a shop's sheets are set: `sheets:` in shop.yaml.
#pragma once

#include <groat/measure/style.hpp>
#include <groat/model/look.hpp>
#include <groat/model/words.hpp>

namespace groat {

struct SheetRule {
    Style style = {};
    Words words = {};
    Look look = {};
};

} // namespace groat
