/// What a YAML parser means when it complains, in words for somebody who does not know YAML.
#pragma once

#include <string>
#include <string_view>

namespace groat {

struct YamlMishap {
    std::string what;
    std::string help;
    /// The cause is an open bracket before the place, rather than the place.
    bool is_unclosed = false;
    /// The cause is the last backslash before the place.
    bool is_escape = false;
};

/// `message` as yaml-cpp words it (0.6 to 0.8); an unknown one is passed on as it is.
[[nodiscard]] YamlMishap yaml_mishap(std::string_view message, bool is_indented_by_tab);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/yaml_mishap.ipp>
#endif
