#pragma once

#include <groat/books/read_yields.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>
#include <groat/books/scalar_text.hpp>
#include <groat/books/shape_goods.hpp>

#include <string_view>

namespace groat {

namespace read_yields_detail {

inline constexpr Wanted trimmed_off{"what is trimmed off", {Dimension::mass}, "0.9 kg", true};

inline TrimPart read_part(Key const& key, Node const& node, Reading const& reading) {
    TrimPart part;
    part.name = key.text;
    Node const* mass = &node;
    if (node.is_mapping()) {
        Fields<shapes::trim> fields(node, reading.found);
        mass = fields.at("mass");
        part.worth = read_money_rate(fields.at("worth"), Dimension::mass, reading);
        fields.close();
    }
    if (auto const grams = read_quantity(mass, trimmed_off, reading)) part.grams = grams->amount;
    return part;
}

} // namespace read_yields_detail

GROAT_INLINE YieldTest read_yield_test(Node const& node, Reading const& reading) {
    namespace parts = read_yields_detail;
    Fields<shapes::yield_test> fields(node, reading.found);
    YieldTest test;
    Node const* const name = fields.at("test");
    test.origin = name != nullptr ? name->where : fields.where();
    assign(test.name, read_name(name, reading));
    test.item = read_reference(fields.at("item"), reading);
    test.date = read_date(fields.at("date"), reading);
    assign(test.as_purchased, read_quantity(fields.at("as purchased"),
                                            {"what was purchased",
                                             {Dimension::mass, Dimension::volume, Dimension::count},
                                             "10 kg"},
                                            reading));
    // what cannot be read is not weighed
    if (test.as_purchased.amount.is_positive())
        test.origin_of_purchase = fields.place_of("as purchased");
    Node const* const trim = fields.at("trim");
    each_named(trim, "a mapping of what was trimmed off", reading,
               [&](Key const& key, Node const& value) {
                   test.trim.push_back(parts::read_part(key, value, reading));
               });
    Node const* const usable = trim != nullptr ? fields.at("usable") : fields.needed("usable");
    if (auto const grams =
            read_quantity(usable, {"what is usable", {Dimension::mass}, "8.8 kg"}, reading))
        test.stated_usable = grams->amount;
    test.origin_of_parts = trim != nullptr ? fields.place_of("trim") : fields.place_of("usable");
    if (trim != nullptr && trim->is_mapping() && trim->items.empty())
        reading.found.error(trim->where, "missing-value", "nothing is trimmed off here",
                            "write it as {stones: 0.9 kg}, or take the key out");
    test.price = read_money(fields.at("price"), reading);
    test.supplier = read_reference(fields.at("supplier"), reading);
    fields.close();
    return test;
}

GROAT_INLINE std::optional<Yield> read_yield(Node const* node, YieldSource& source,
                                             Reading const& reading) {
    if (node == nullptr) return std::nullopt;
    source.origin = node->where;
    if (node->is_mapping()) {
        Fields<shapes::cited_test> fields(*node, reading.found);
        source.test = read_reference(fields.at("test"), reading);
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
