#pragma once

#include <groat/books/write_prices.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace groat {

namespace write_prices_detail {

/// Whether a text can stand without quotation marks. Narrower than YAML, so that it needs no rules of
/// YAML to be sure of it.
inline bool is_plain(std::string_view text) {
    constexpr std::string_view allowed = " ._/%+-()";
    constexpr std::string_view nothings[] = {"null", "Null", "NULL"};
    if (text.empty() || text.front() == ' ' || text.back() == ' ') return false;
    if (std::find(std::begin(nothings), std::end(nothings), text) != std::end(nothings))
        return false;
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        bool const is_word = (next.code >= '0' && next.code <= '9') ||
                             (next.code >= 'a' && next.code <= 'z') ||
                             (next.code >= 'A' && next.code <= 'Z') ||
                             (next.code > 0xA0 && next.is_valid && !is_unsafe(next.code));
        bool const is_sign = next.code < 0x80 &&
                             allowed.find(static_cast<char>(next.code)) != std::string_view::npos;
        if (!is_word && !(is_sign && at > 0)) return false;
        at += next.length;
    }
    return true;
}

GROAT_INLINE std::string percent_text(Number const& share) {
    return number_text(share * 100) + " %";
}

GROAT_INLINE std::string money_text(Money const& money) {
    return number_text(money.amount(),
                       money.currency().is_none() ? 2 : money.currency().minor_digits());
}

GROAT_INLINE std::string pack_text(Quantity const& pack, std::string const& written) {
    if (!written.empty()) return written;
    constexpr std::string_view units[] = {"g", "mL", "each"};
    auto const dimension = static_cast<std::size_t>(pack.dimension);
    if (dimension >= std::size(units))
        throw std::logic_error("a pack of neither mass, volume nor count");
    return fmt::format("{} {}", number_text(pack.amount), units[dimension]);
}

inline std::string offer_line(Offer const& offer, bool has_own_from) {
    std::string line = "  - {item: " + yaml_text(offer.item.name);
    auto const add = [&](std::string_view key, std::string const& value) {
        line += fmt::format(", {}: {}", key, value);
    };
    add("pack", yaml_text(pack_text(offer.pack, offer.pack_text)));
    add("price", money_text(offer.price));
    if (!offer.code.empty()) add("code", yaml_text(offer.code));
    if (!offer.freight.is_zero()) add("freight", money_text(offer.freight));
    if (!offer.deposit.is_zero()) add("deposit", money_text(offer.deposit));
    if (offer.yield) add("yield", percent_text(offer.yield->value()));
    if (has_own_from && offer.from) add("from", iso_date(*offer.from));
    if (offer.until) add("until", iso_date(*offer.until));
    if (!offer.breaks.empty()) {
        std::string breaks;
        for (PriceBreak const& each : offer.breaks)
            breaks += fmt::format("{}{} packs: {}", breaks.empty() ? "" : ", ",
                                  number_text(each.packs), money_text(each.price));
        add("breaks", "{" + breaks + "}");
    }
    if (offer.most_packs) add("most packs", offer.most_packs->str());
    if (offer.is_only_compared) add("only compared", "yes");
    return line + "}\n";
}

inline std::string terms_text(Supplier const& terms) {
    std::string text;
    auto const add = [&](std::string_view key, std::string const& value) {
        text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", key, value);
    };
    if (terms.minimum_order) add("minimum", money_text(*terms.minimum_order));
    if (terms.delivery) add("delivery", money_text(*terms.delivery));
    if (terms.free_delivery_from) add("free delivery from", money_text(*terms.free_delivery_from));
    if (terms.usual_order) add("usual order", money_text(*terms.usual_order));
    if (terms.is_only_compared) add("only compared", "yes");
    return text;
}

} // namespace write_prices_detail

GROAT_INLINE std::string yaml_text(std::string_view text) {
    if (write_prices_detail::is_plain(text)) return std::string(text);
    std::string quoted = "\"";
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        auto const code = static_cast<std::uint32_t>(next.code);
        if (code == '"' || code == '\\')
            quoted += {'\\', static_cast<char>(code)};
        else if (code == '\n')
            quoted += "\\n";
        else if (code == '\t')
            quoted += "\\t";
        else if (!is_unsafe(next.code))
            quoted += next.is_valid ? text.substr(at, next.length) : std::string_view("\uFFFD");
        else
            quoted +=
                code > 0xFFFF ? fmt::format("\\U{:08X}", code) : fmt::format("\\u{:04X}", code);
        at += next.length;
    }
    return quoted + '"';
}

GROAT_INLINE std::string number_text(Number const& number, unsigned places) {
    Integer rest = number.denominator();
    unsigned twos = 0;
    unsigned fives = 0;
    for (; rest % 2 == 0; ++twos) rest /= 2;
    for (; rest % 5 == 0; ++fives) rest /= 5;
    if (rest != 1) return exact(number);
    return decimal(number, std::max({places, twos, fives}));
}

GROAT_INLINE std::string write_price_list(PriceList const& list, std::string_view note) {
    std::vector<Offer> const& offers = list.offers;
    TaxRate const tax = offers.empty() ? TaxRate() : offers.front().tax_included;
    bool is_one_from = !offers.empty();
    for (Offer const& offer : offers) {
        if (offer.tax_included != tax)
            throw std::logic_error("a price list with two rates of tax in its prices");
        is_one_from = is_one_from && offer.from == offers.front().from;
    }
    std::string text;
    if (!note.empty()) text += fmt::format("# {}\n\n", printable(note));
    text += fmt::format("supplier: {}\n", yaml_text(list.supplier.name));
    if (is_one_from && offers.front().from)
        text += fmt::format("from: {}\n", iso_date(*offers.front().from));
    if (tax.value().is_positive())
        text += fmt::format("tax included: {}\n", write_prices_detail::percent_text(tax.value()));
    std::string terms = write_prices_detail::terms_text(list.terms);
    if (!terms.empty()) text += fmt::format("terms: {{{}}}\n", terms);
    text += offers.empty() ? "offers: []\n" : "offers:\n";
    for (Offer const& offer : offers) text += write_prices_detail::offer_line(offer, !is_one_from);
    return text;
}

} // namespace groat
