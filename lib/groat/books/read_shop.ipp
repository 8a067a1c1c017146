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

inline Role read_role(Key const& key, Node const& node, Reading const& reading) {
    Fields<shapes::role> fields(node, reading.found);
    Role role{key.text, {}, {}, key.where};
    assign(role.wage, read_money_rate(fields.at("wage"), Dimension::time, reading));
    if (role.wage.per != nullptr && role.wage.per->factor > 3600)
        reading.found.error(fields.place_of("wage"), "wage-per-day",
                            "a wage is for an hour: how many hours a day of work has is not known",
                            "divide it by the hours worked: 'wage: 21.00 / h'");
    assign(role.on_cost, read_rate<Surcharge>(fields.at("on-cost"), reading));
    fields.close();
    return role;
}

inline Oven read_oven(Key const& key, Node const& node, Reading const& reading) {
    Fields<shapes::oven> fields(node, reading.found);
    Oven oven{key.text, {0, Dimension::power, nullptr}, *Share::of(1),
              0,        {"electricity", key.where},     key.where};
    assign(oven.power,
           read_quantity(fields.at("power"), {"the power", {Dimension::power}, "5.5 kW"}, reading));
    assign(oven.duty, read_rate<Share>(fields.at("duty"), reading));
    if (auto const preheat = read_quantity(
            fields.at("preheat"), {"the preheating", {Dimension::time}, "25 min", true}, reading))
        oven.preheat = preheat->amount / 60;
    if (Reference fuel = read_reference(fields.at("fuel"), reading); fuel.is_given())
        oven.fuel = std::move(fuel);
    fields.close();
    return oven;
}

inline Overhead read_overhead(Node const& node, Reading const& reading) {
    Fields<shapes::overhead> fields(node, reading.found);
    Overhead overhead;
    overhead.origin = fields.where();
    assign(overhead.name, read_name(fields.at("name"), reading));
    auto rate =
        read_scalar(fields.at("rate"), "an overhead rate", reading, [&](std::string_view text) {
            return parse_overhead_rate(text, reading.currency);
        });
    if (rate) {
        overhead.driver = rate->driver;
        overhead.amount = std::move(rate->amount);
        overhead.share = std::move(rate->share);
    }
    overhead.is_variable = read_yes_no(fields.at("variable"), reading);
    fields.close();
    return overhead;
}

inline Fee read_fee(Key const& key, Node const& node, Reading const& reading) {
    refuse_none(key, reading);
    Fields<shapes::fee> fields(node, reading.found);
    Fee fee{key.text, {}, {}};
    assign(fee.share, read_rate<FeeRate>(fields.at("share"), reading));
    assign(fee.fixed, read_money(fields.at("fixed"), reading));
    fields.close();
    return fee;
}

inline TaxRule read_tax(Node const& node, Reading const& reading) {
    Fields<shapes::tax> fields(node, reading.found);
    TaxRule tax;
    assign(tax.name, read_name(fields.at("name"), reading));
    assign(tax.rate, read_rate<TaxRate>(fields.at("rate"), reading));
    tax.is_contained = read_word(fields.at("prices"), shapes::sides_of_tax, reading) == 1;
    tax.is_rounded_per_line = read_word(fields.at("rounded"), shapes::tax_roundings, reading) == 1;
    each_named(
        fields.at("other rates"), "a mapping of rates", reading,
        [&](Key const& key, Node const& each) {
            refuse_none(key, reading);
            if (key.text == "main" || key.text == "with the goods")
                reading.found.error(
                    key.where, "bad-name",
                    fmt::format("'{}' is no name here: it says how deliveries are taxed", key.text),
                    "call it something else");
            NamedTax other{key.text, {}};
            assign(other.rate, read_rate<TaxRate>(&each, reading));
            tax.other_rates.push_back(std::move(other));
        });
    tax.delivery = read_reference(fields.at("delivery"), reading);
    fields.close();
    return tax;
}

inline RushRule read_rush(Node const& node, Reading const& reading) {
    Fields<shapes::rush> fields(node, reading.found);
    RushRule rush;
    assign(rush.within, read_days(fields.at("within"), reading));
    assign(rush.surcharge, read_rate<Surcharge>(fields.at("surcharge"), reading));
    fields.close();
    return rush;
}

inline LabelRule read_label_rule(Node const& node, Reading const& reading) {
    Fields<shapes::label> fields(node, reading.found);
    LabelRule rule;
    rule.allergens = static_cast<AllergenLaw>(
        read_word(fields.at("allergens"), shapes::label_laws, reading).value_or(0));
    rule.small = read_rate<Share>(fields.at("small amounts"), reading);
    Number const tenths = rule.small ? rule.small->value() * 200 : Number(1);
    if (!tenths.is_whole() || tenths < 1 || tenths > 4)
        reading.found.error(fields.place_of("small amounts"), "bad-small-amounts",
                            "small amounts are set apart up to 2 %, 1.5 %, 1 % or 0.5 %",
                            "write 'small amounts: 2 %', or take it out");
    rule.is_grouped = read_yes_no(fields.at("grouped"), reading).value_or(false);
    fields.close();
    return rule;
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
    shop.measures = static_cast<Measures>(
        read_word(fields.at("measures"), shapes::cup_measures, reading).value_or(0));
    reading.measures = shop.measures;

    assign(shop.name, read_name(fields.at("shop"), reading));
    shop.address = read_texts(fields.at("address"), reading);
    assign(shop.contact, read_text(fields.at("contact"), reading));
    each_named(fields.at("labour"), "a mapping of roles", reading, [&](auto& key, auto& each) {
        shop.roles.push_back(parts::read_role(key, each, reading));
    });
    each_named(fields.at("ovens"), "a mapping of ovens", reading, [&](auto& key, auto& each) {
        shop.ovens.push_back(parts::read_oven(key, each, reading));
    });
    each_named(fields.at("energy"), "a mapping of tariffs", reading, [&](auto& key, auto& each) {
        Tariff tariff{key.text, {}};
        assign(tariff.rate, read_money_rate(&each, Dimension::energy, reading));
        shop.tariffs.push_back(std::move(tariff));
    });
    for (Node const& each : read_list(fields.at("overhead"), "a list of overheads", reading))
        shop.overheads.push_back(parts::read_overhead(each, reading));
    shop.order_work = read_tasks<shapes::order_task>(fields.at("order work"), {}, reading);
    shop.counter_work = read_tasks<shapes::order_task>(fields.at("counter work"), {}, reading);
    shop.costed_as = read_costed_as(fields.at("costed as"), reading);
    if (Node const* const delivery = fields.at("delivery")) {
        Fields<shapes::shop_delivery> inner(*delivery, reading.found);
        assign(shop.delivery_flat, read_money(inner.at("flat"), reading));
        assign(shop.delivery_rate, read_money_rate(inner.at("rate"), Dimension::distance, reading));
        shop.driver = read_reference(inner.at("driver"), reading);
        inner.close();
    }
    each_named(fields.at("fees"), "a mapping of fees", reading, [&](auto& key, auto& each) {
        shop.fees.push_back(parts::read_fee(key, each, reading));
    });
    shop.paid_by = read_reference(fields.at("paid by"), reading);
    if (Node const* const tax = fields.at("tax")) shop.tax = parts::read_tax(*tax, reading);
    shop.price = read_price_policy(fields.at("price"), reading);
    shop.minimum_order = read_money(fields.at("minimum order"), reading);
    shop.minimum_order_origin = fields.place_of("minimum order");
    if (Node const* const rush = fields.at("rush")) shop.rush = parts::read_rush(*rush, reading);
    assign(shop.deposit, read_rate<Share>(fields.at("deposit"), reading));
    shop.valid = read_days(fields.at("valid"), reading);
    shop.stale_after = read_days(fields.at("stale after"), reading);
    shop.cash_rounding = read_coins(fields.at("cash rounding"), "the step of cash", true, reading);
    assign(shop.measures_by_cup, read_yes_no(fields.at("household measures"), reading));
    shop.standard_run = read_positive(fields.at("standard run"), "a standard run", reading);
    parts::read_variable(fields.at("variable"), shop, reading);
    if (Node const* const label = fields.at("labels"))
        shop.label = parts::read_label_rule(*label, reading);
    shop.sheets.words = parts::own_words(reading);
    if (Node const* const sheets = fields.at("sheets"))
        shop.sheets = parts::read_sheet_rule(*sheets, reading);
    shop.terms = read_texts(fields.at("terms"), reading);
    shop.judgement = read_judgement(fields, reading);
    fields.close();
    return shop;
}

} // namespace groat
