#pragma once

#include <groat/price/tax.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE TaxRate tax_rate(TaxRule const& rule, Reference const& name) {
    if (name.name == "none") return {};
    return name.is_resolved() ? rule.other_rates[name.index].rate : rule.rate;
}

GROAT_INLINE Coins tax_of(Coins const& amount, TaxRate const& rate, bool is_contained) {
    Money const exact = amount.money() * rate.value();
    return to_coins(is_contained ? exact / (1 + rate.value()) : exact, {Tie::half_up, 0});
}

namespace tax_detail {

class Taxer {
public:
    Taxer(TaxedDocument const& document, TaxRule const& rule) : document_(document), rule_(rule) {}

    DocumentTax result() {
        for (TaxedAmount const& line : document_.lines) enter(line);
        std::vector<Number> const weights = weights_of_classes();
        for (Coins const& each : document_.shared) share_out(each, weights);
        for (TaxedAmount const& each : document_.apart) enter(each);
        result_.of_lines.resize(document_.lines.size());
        for (std::size_t i = 0; i < parts_.size(); ++i) settle(i);
        return std::move(result_);
    }

    std::vector<Number> weights_of_classes() {
        std::vector<Number> weights(result_.classes.size());
        for (TaxedAmount const& line : document_.lines)
            if (line.amount.minor_units().sign() > 0)
                weights[class_of(line.rate)] += line.amount.minor_units();
        return weights;
    }

private:
    /// The parts that a class consists of; the lines come first, by their number.
    struct Part {
        Coins amount;
        std::size_t line; ///< past the last for all that is no line
    };

    std::size_t class_of(TaxRate const& rate) {
        auto& classes = result_.classes;
        auto const found = std::find_if(classes.begin(), classes.end(),
                                        [&](TaxClass const& each) { return each.rate == rate; });
        if (found != classes.end()) return static_cast<std::size_t>(found - classes.begin());
        classes.push_back({rate, {}, {}, {}});
        parts_.emplace_back();
        return classes.size() - 1;
    }

    void enter(TaxedAmount const& taxed) {
        std::size_t const index = class_of(taxed.rate);
        result_.classes[index].base += taxed.amount;
        parts_[index].push_back({taxed.amount, entered_++});
    }

    void share_out(Coins const& amount, std::vector<Number> const& weights) {
        if (amount.is_zero()) return;
        if (std::all_of(weights.begin(), weights.end(),
                        [](Number const& weight) { return weight.is_zero(); }))
            return enter({amount, document_.main});
        auto const parts = apportion(amount.minor_units(), weights);
        for (std::size_t i = 0; i < parts.size(); ++i)
            if (parts[i].sign() != 0)
                enter({Coins(parts[i], amount.currency()), result_.classes[i].rate});
    }

    void settle(std::size_t index) {
        TaxClass& whole = result_.classes[index];
        std::vector<Coins> taxes;
        if (rule_.is_rounded_per_line) {
            for (Part const& part : parts_[index])
                taxes.push_back(tax_of(part.amount, whole.rate, rule_.is_contained));
            for (Coins const& tax : taxes) whole.tax += tax;
        } else {
            whole.tax = tax_of(whole.base, whole.rate, rule_.is_contained);
            taxes = divided(whole, parts_[index]);
        }
        whole.net = rule_.is_contained ? whole.base - whole.tax : whole.base;
        for (std::size_t i = 0; i < taxes.size(); ++i)
            if (parts_[index][i].line < result_.of_lines.size())
                result_.of_lines[parts_[index][i].line] = taxes[i];
    }

    [[nodiscard]] std::vector<Coins> divided(TaxClass const& whole,
                                             std::vector<Part> const& parts) const {
        Number const share =
            whole.rate.value() / (rule_.is_contained ? 1 + whole.rate.value() : Number(1));
        std::vector<Number> exact;
        for (Part const& part : parts) exact.push_back(share * part.amount.minor_units());
        std::vector<Coins> taxes;
        for (Number const& tax : round_to_total(exact, 1, whole.tax.minor_units()))
            taxes.emplace_back(tax.numerator(), whole.base.currency());
        return taxes;
    }

    TaxedDocument const& document_;
    TaxRule const& rule_;
    DocumentTax result_;
    std::vector<std::vector<Part>> parts_; ///< by class
    std::size_t entered_ = 0;
};

} // namespace tax_detail

GROAT_INLINE DocumentTax tax_of_document(TaxedDocument const& document, TaxRule const& rule) {
    return tax_detail::Taxer(document, rule).result();
}

GROAT_INLINE TaxRate mean_rate(TaxedDocument const& document, TaxRule const& rule) {
    Number all;
    Number other; // tax that comes on top, or what is left without a contained one
    for (TaxedAmount const& line : document.lines) {
        if (line.amount.minor_units().sign() <= 0) continue;
        Number const amount(line.amount.minor_units());
        all += amount;
        other += rule.is_contained ? amount / (1 + line.rate.value()) : amount * line.rate.value();
    }
    if (all.is_zero()) return document.main;
    return *TaxRate::of(rule.is_contained ? all / other - 1 : other / all);
}

} // namespace groat
