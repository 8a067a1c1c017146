#pragma once

#include <groat/books/read_shop.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>
#include <groat/books/read_judgement.hpp>
#include <groat/books/read_look.hpp>
#include <groat/books/read_style.hpp>
#include <groat/books/read_words.hpp>
#include <groat/books/scalar_text.hpp>

#include <string>
#include <utility>

namespace groat {

namespace read_shop_detail {

/// `none` is the word for no fee and no tax, so nothing can be called that.
inline void refuse_none(Key const& key, Reading const& reading) {
    if (key.text == "none")
        reading.found.error(key.where, "bad-name",
                            "'none' is no name here: it says that there is none",
                            "call it something else");
}

/// The form of books that is read here.
inline constexpr int form_of_books = 1;

/// Whether the books are of a later form, which is an error and the only one: keys are not looked at, since that
/// form may have others.
inline bool is_of_later_form(Node const& node, Reading const& reading) {
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
        if (node.keys[i].text != "groat") continue;
        Node const& value = node.items[i];
        std::optional<Number> form;
        if (value.is_scalar())
            if (auto const number = parse_number(value.text)) form = *number;
        if (form && *form == form_of_books) return false;
        bool const is_later = form && *form > form_of_books && form->denominator() == 1;
        reading.found.error(
            value.where, is_later ? Code("later-form") : Code("bad-form"),
            is_later ? fmt::format("these books are of form {}, and this groat reads form {}",
                                   shortened(value.text, 16), form_of_books)
                     : "this is no form of books",
            is_later ? "install a newer groat" : "write 'groat: 1', or take it out");
        return is_later;
    }
    return false;
}

inline Currency read_currency(Node const* node, Reading const& reading) {
    auto const currency =
        read_scalar(node, "a currency", reading, [](std::string_view text) -> Result<Currency> {
            if (auto const found = Currency::find(text)) return *found;
            std::string capitals;
            for (char const c : text)
                capitals += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
            return refuse("unknown-currency",
                          fmt::format("'{}' is not a currency", shortened(text, 32)),
                          Currency::find(capitals)
                              ? fmt::format("did you mean '{}'?", capitals)
                              : "write the three letters of ISO 4217, such as USD, EUR or GBP");
        });
    return currency.value_or(Currency());
}

inline Fee read_fee(Key const& key, Node const& node, Reading const& reading) {
    refuse_none(key, reading);
    Fields<shapes::fee> fields(node, reading.found);
    Fee fee{key.text, {}, {}};
    fields.read_into(fee, reading);
    fields.close();
    return fee;
}

/// The words of words.yaml; over English where they name no language.
inline Words own_words(Reading const& reading) {
    if (!reading.own_words) return {};
    Words const& own = *reading.own_words;
    return own.language() == undetermined ? own.in("en") : own;
}

inline SheetRule read_sheet_rule(Node const& node, Reading const& reading) {
    Fields<shapes::sheets> fields(node, reading.found);
    SheetRule rule;
    rule.words = own_words(reading);
    read_style(fields, rule, reading);
    read_look(fields, rule, reading);
    fields.close();
    return rule;
}

inline void read_variable(Node const* node, Shop& shop, Reading const& reading) {
    if (node == nullptr) return;
    shop.is_variable = {};
    for (Node const& each : read_list(node, "a list of categories", reading))
        if (auto const category = read_word(&each, category_words, reading))
            shop.is_variable[*category] = true;
}

} // namespace read_shop_detail

GROAT_INLINE bool read_value(Role& role, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::role> fields(node, reading.found);
    fields.read_into(role, reading);
    if (role.wage.per != nullptr && role.wage.per->factor > 3600)
        reading.found.error(fields.place_of("wage"), "wage-per-day",
                            "a wage is for an hour: how many hours a day of work has is not known",
                            "divide it by the hours worked: 'wage: 21.00 / h'");
    fields.close();
    return true;
}

GROAT_INLINE bool read_value(Oven& oven, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::oven> fields(node, reading.found);
    oven.power.dimension = Dimension::power;
    oven.duty = *Share::of(1);
    fields.read_into(oven, reading);
    if (!oven.fuel.is_given()) oven.fuel = {"electricity", oven.origin};
    fields.close();
    return true;
}

GROAT_INLINE bool read_value(Tariff& tariff, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_value(tariff.rate, node, key, reading);
}

GROAT_INLINE bool read_value(Overhead& overhead, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::overhead> fields(node, reading.found);
    overhead.origin = fields.where();
    fields.read_into(overhead, reading);
    auto rate =
        read_scalar(fields.at("rate"), "an overhead rate", reading, [&](std::string_view text) {
            return parse_overhead_rate(text, reading.currency);
        });
    if (rate) {
        overhead.driver = rate->driver;
        overhead.amount = std::move(rate->amount);
        overhead.share = std::move(rate->share);
    }
    fields.close();
    return true;
}

GROAT_INLINE bool read_value(TaxRule& tax, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::tax> fields(node, reading.found);
    fields.read_into(tax, reading);
    each_named(
        fields.at("other rates"), "a mapping of rates", reading,
        [&](Key const& key, Node const& each) {
            read_shop_detail::refuse_none(key, reading);
            if (key.text == "main" || key.text == "with the goods")
                reading.found.error(
                    key.where, "bad-name",
                    fmt::format("'{}' is no name here: it says how deliveries are taxed", key.text),
                    "call it something else");
            NamedTax other{key.text, {}};
            assign(other.rate, read_rate<TaxRate>(&each, reading));
            tax.other_rates.push_back(std::move(other));
        });
    fields.close();
    return true;
}

GROAT_INLINE bool read_value(LabelRule& rule, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::label> fields(node, reading.found);
    fields.read_into(rule, reading);
    Number const tenths = rule.small ? rule.small->value() * 200 : Number(1);
    if (!tenths.is_whole() || tenths < 1 || tenths > 4)
        reading.found.error(fields.place_of("small amounts"), "bad-small-amounts",
                            "small amounts are set apart up to 2 %, 1.5 %, 1 % or 0.5 %",
                            "write 'small amounts: 2 %', or take it out");
    fields.close();
    return true;
}

GROAT_INLINE Shop read_shop(Node const& node, Reading& reading) {
    namespace parts = read_shop_detail;
    reading.is_of_later_form = parts::is_of_later_form(node, reading);
    if (reading.is_of_later_form) return {};
    Fields<shapes::shop> fields(node, reading.found);
    (void)fields.at("groat"); // looked at above
    Shop shop;
    shop.origin = fields.where();
    shop.currency = parts::read_currency(fields.at("currency"), reading);
    reading.currency = shop.currency;
    assign(shop.measures, fields.read<Measures>("measures", reading));
    reading.measures = shop.measures;

    fields.read_into(static_cast<Sender&>(shop), reading);
    fields.read_into(shop, reading);
    shop.order_work = read_tasks<shapes::order_task>(fields.at("order work"), {}, reading);
    shop.counter_work = read_tasks<shapes::order_task>(fields.at("counter work"), {}, reading);
    if (Node const* const delivery = fields.at("delivery")) {
        Fields<shapes::shop_delivery> inner(*delivery, reading.found);
        inner.read_into(shop, reading);
        inner.close();
    }
    each_named(fields.at("fees"), "a mapping of fees", reading, [&](auto& key, auto& each) {
        shop.fees.push_back(parts::read_fee(key, each, reading));
    });
    shop.minimum_order_origin = fields.place_of("minimum order");
    parts::read_variable(fields.at("variable"), shop, reading);
    shop.sheets.words = parts::own_words(reading);
    if (Node const* const sheets = fields.at("sheets"))
        shop.sheets = parts::read_sheet_rule(*sheets, reading);
    shop.judgement = read_judgement(fields.at("accept"), fields.at("severity"), reading);
    fields.close();
    return shop;
}

} // namespace groat
