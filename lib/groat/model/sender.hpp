/// What a shop says of itself outside the house: who it is, in which currency, words and look, with which tax and on what
/// terms. Nothing of what anything costs it is in it.
#pragma once

#include <groat/measure/rate.hpp>
#include <groat/model/reference.hpp>
#include <groat/model/sheet_rule.hpp>

#include <string>
#include <vector>

namespace groat {

struct NamedTax {
    std::string name;
    TaxRate rate;
};

struct TaxRule {
    std::string name = "tax";
    TaxRate rate = {};
    std::vector<NamedTax> other_rates = {};
    bool is_contained = false;        ///< shown prices contain it
    bool is_rounded_per_line = false; ///< else once per rate of the document
    /// What a delivery is taxed at: one of the other rates, `none`, or `main`, which is `rate`; absent or `with
    /// the goods`: as these are, in proportion to their classes.
    Reference delivery = {};
};

/// Whose sheet it is.
struct Sender {
    std::string name;
    std::vector<std::string> address = {};
    std::string contact = {};
    Currency currency = {};
    TaxRule tax = {};
    SheetRule sheets = {};
    std::vector<std::string> terms = {};
};

} // namespace groat
