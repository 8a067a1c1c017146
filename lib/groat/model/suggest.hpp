/// How a name that stands for nothing is answered, whoever finds it.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// A help for a name that was missed, among those there are; else the last one.
using Suggest = std::function<std::string(std::string_view missed,
                                          std::vector<std::string> const& names, std::string)>;

} // namespace groat
