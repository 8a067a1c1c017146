/// A shop's own look on its sheets: a picture in their head, and two colours.
#pragma once

#include <groat/base/source.hpp>
#include <groat/measure/colour.hpp>

#include <memory>
#include <string>
#include <string_view>
#include <utility>

namespace groat {

/// A long text that never changes: copies of it share it.
class SharedText {
public:
    SharedText() = default;
    SharedText(std::string text)
        : text_(text.empty() ? nullptr : std::make_shared<std::string const>(std::move(text))) {}

    [[nodiscard]] std::string_view view() const { return text_ ? *text_ : std::string_view(); }
    [[nodiscard]] bool empty() const { return text_ == nullptr; }
    [[nodiscard]] friend bool operator==(SharedText const& a, std::string_view b) {
        return a.view() == b;
    }

private:
    std::shared_ptr<std::string const> text_;
};

/// A picture that stands in the page itself.
struct Logo {
    std::string file = {};       ///< as shop.yaml names it, relative to the folder of books
    Span origin = {};            ///< where that stands
    std::string media_type = {}; ///< "image/svg+xml" or "image/png"
    SharedText base64 = {};      ///< its bytes; empty where there is none

    [[nodiscard]] bool is_there() const { return !base64.empty(); }
};

/// Both colours can be read on white, see `least_contrast`.
struct Look {
    Logo logo = {};
    Colour mark = {{0x5a, 0x3a, 0x1b}}; ///< headings, rules and bars
    Colour ink = {{0x22, 0x24, 0x2a}};  ///< text
};

} // namespace groat
