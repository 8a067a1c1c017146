#pragma once

#include <groat/books/read_yields.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>
#include <groat/books/scalar_text.hpp>

#include <string_view>

namespace groat {

GROAT_INLINE bool read_value(TrimPart& part, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_short<&TrimPart::grams>(part, node, key, reading);
}

GROAT_INLINE YieldTest read_yield_test(Node const& node, Reading const& reading) {
    Fields<shapes::yield_test> fields(node, reading.found);
    YieldTest test;
    test.origin = fields.origin("test");
    Node const* const trim = fields.at("trim");
    fields.read_into(test, reading);
    // what cannot be read is not weighed
    if (test.as_purchased.amount.is_positive())
        test.origin_of_purchase = fields.place_of("as purchased");
    test.origin_of_parts = trim != nullptr ? fields.place_of("trim") : fields.place_of("usable");
    if (trim != nullptr && trim->is_mapping() && trim->items.empty())
        reading.found.error(trim->where, "missing-value", "nothing is trimmed off here",
                            "write it as {stones: 0.9 kg}, or take the key out");
    fields.close();
    return test;
}

GROAT_INLINE std::optional<Yield> read_yield(Node const* node, YieldSource& source,
                                             Reading const& reading) {
    if (node == nullptr) return std::nullopt;
    source.origin = node->where;
    if (node->is_mapping()) {
        Fields<shapes::cited_test> fields(*node, reading.found);
        fields.read_into(source, reading);
        if (source.test.is_given()) source.kind = YieldSource::Kind::one_test;
        fields.close();
        return std::nullopt;
    }
    std::string_view const text = node->is_scalar() ? trimmed(node->text) : std::string_view();
    if (text == "tested") {
        source.kind = YieldSource::Kind::all_tests;
        return std::nullopt;
    }
    if (!text.empty() && scalar_text_detail::is_letter(text.front())) {
        reading.found.error(node->where, "unknown-word",
                            fmt::format("'{}' is no yield", shortened(text, 32)),
                            "write a percentage, as 88 %, 'tested' for all yield tests of it, or "
                            "{test: NAME} for one");
        return std::nullopt;
    }
    return read_rate<Yield>(node, reading);
}

} // namespace groat
