/// Currencies of ISO 4217 and their minor units.
#pragma once

#include <groat/base/number.hpp>

#include <optional>
#include <string_view>
#include <utility>

namespace groat {

/// A currency by its three-letter code. A default one is no currency at all, the zero of sums.
class Currency {
public:
    constexpr Currency() = default;

    /// The currency of an ISO 4217 code in capitals, or nothing.
    /// Source  ISO 4217 list one as in datasets/currency-codes (codes-all.csv); where CLDR 41 shows fewer
    ///         digits in use (AFN, IQD and others), ISO is followed
    [[nodiscard]] static constexpr std::optional<Currency> find(std::string_view code);

    [[nodiscard]] constexpr bool is_none() const { return code_.empty(); }
    [[nodiscard]] constexpr std::string_view code() const { return code_; }
    /// The number of decimals of the minor unit: 2 for USD, 0 for JPY, 3 for KWD.
    [[nodiscard]] constexpr unsigned minor_digits() const { return digits_; }
    /// The value of one minor unit, such as 0.01.
    [[nodiscard]] Number minor_unit() const;

    friend constexpr bool operator==(Currency a, Currency b) { return a.code_ == b.code_; }

private:
    constexpr Currency(std::string_view code, unsigned digits) : code_(code), digits_(digits) {}
    std::string_view code_;
    unsigned digits_ = 2;
};

// ---------------------------------------------------------------------------------------------------

namespace currency_detail {

inline constexpr std::string_view two_digits =
    "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN "
    "BZD CAD "
    "CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS "
    "GIP GMD "
    "GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD "
    "MDL MGA "
    "MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR "
    "PLN QAR "
    "RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY "
    "TTD TWD "
    "TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG";
inline constexpr std::string_view no_digits =
    "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
inline constexpr std::string_view three_digits = "BHD IQD JOD KWD LYD OMR TND";
inline constexpr std::string_view four_digits = "CLF UYW";

constexpr std::string_view in(std::string_view list, std::string_view code) {
    for (std::size_t at = 0; at + 3 <= list.size(); at += 4)
        if (list.substr(at, 3) == code) return list.substr(at, 3);
    return {};
}

} // namespace currency_detail

constexpr std::optional<Currency> Currency::find(std::string_view code) {
    constexpr std::pair<std::string_view, unsigned> lists[] = {{currency_detail::two_digits, 2U},
                                                               {currency_detail::no_digits, 0U},
                                                               {currency_detail::three_digits, 3U},
                                                               {currency_detail::four_digits, 4U}};
    for (auto const& [list, digits] : lists)
        if (auto const found = currency_detail::in(list, code); !found.empty())
            return Currency(found, digits);
    return std::nullopt;
}

inline Number Currency::minor_unit() const {
    Integer scale = 1;
    for (unsigned i = 0; i < digits_; ++i) scale *= 10;
    return Number(1, scale);
}

} // namespace groat
