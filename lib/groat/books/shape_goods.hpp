/// The shapes of what is bought: ingredients.yaml, supplies.yaml, prices/*.yaml, purchases/*.yaml, yields.yaml
/// and stock.yaml.
#pragma once

#include <groat/books/shape_common.hpp>
#include <groat/model/keeping.hpp>

#include <string_view>

namespace groat::shapes {

inline constexpr std::string_view buying_ways[] = {"as used", "whole packs", "metered"};
inline constexpr std::string_view by_product_ways[] = {"not used", "used"};
inline constexpr Value an_allergen = written(ValueKind::text, "an allergen");

inline constexpr KeyShape buy_key{"buy", may, one_of(buying_ways), "whole packs",
                                  "Whether costs are of what is used, or of the packs opened."};
inline constexpr KeyShape prefer_key{"prefer", may, a_name, "Mill Road Provisions",
                                     "The supplier whose price counts."};

inline constexpr KeyShape ingredient_keys[] = {
    {"density", may, some_densities, "125 g / cup", "What a volume of it weighs."},
    {"each", may, a_mass, "50 g", "What one piece of it weighs."},
    {"yield", may, a_yield, "88 %", "What is usable of what is bought."},
    {"by-products", may, one_of(by_product_ways), "used",
     "Whether what is cut off is used, so that its worth comes off the cost."},
    {"allergens", may, list_of(an_allergen), "[wheat]", "The allergens in it."},
    {"label", may, a_text, "wheat flour", "What labels call it."},
    {"made of", may, texts, "[cocoa mass, sugar]", "What it is made of, for labels."},
    {"keep", may, one_of(keep_at_words), "cold", "Where it is kept."},
    {"shelf life", may, some_days, "30 days", "How long it keeps."},
    buy_key,
    prefer_key,
};
inline constexpr Synonym ingredient_synonyms[] = {
    {"weight", "each"},
    {"weight each", "each"},
    {"contains", "made of"},
    {"ingredients", "made of"},
    {"storage", "keep"},
    {"keeps", "shelf life"},
    {"supplier", "prefer"},
    {"preferred supplier", "prefer"},
    {"waste", "yield", "write what is usable, as 'yield: 88 %'"},
    {"price", {}, "prices stand in the folder prices, a list for each supplier"},
    {"cost", {}, "prices stand in the folder prices, a list for each supplier"},
};
inline constexpr Shape ingredient{"ingredient", "this ingredient", ingredient_keys,
                                  ingredient_synonyms};
inline constexpr Value an_ingredient = mapping(ingredient) | nothing;
inline constexpr Value some_ingredients = names_to("ingredients", an_ingredient);

inline constexpr KeyShape supply_keys[] = {buy_key, prefer_key};
inline constexpr Synonym supply_synonyms[] = {
    {"supplier", "prefer"},
    {"preferred supplier", "prefer"},
    {"price", {}, "prices stand in the folder prices, a list for each supplier"},
    {"cost", {}, "prices stand in the folder prices, a list for each supplier"},
};
inline constexpr Shape supply{"supply", "this supply", supply_keys, supply_synonyms};
inline constexpr Value a_supply = mapping(supply) | nothing;
inline constexpr Value some_supplies = names_to("supplies", a_supply);

inline constexpr KeyShape offer_keys[] = {
    {"item", must, a_name, "plain flour", "The ingredient or supply that is offered."},
    {"pack", must, an_amount, "25 lb", "What one pack holds."},
    {"price", must, some_money, "13.80", "What one pack costs."},
    {"freight", may, some_money, "1.20", "What a pack costs to come here."},
    {"deposit", may, some_money, "0.50", "What comes back when the empty pack does."},
    {"yield", may, a_yield, "88 %", "What is usable of this offer, where that differs."},
    {"from", may, a_date, "2026-11-02", "The first day on which it holds."},
    {"until", may, a_date, "2026-12-31", "The last day on which it holds."},
    {"breaks", may, names_to("numbers of packs", some_money), "{3 packs: 13.10}",
     "What one pack costs from so many packs on."},
    {"most packs", may, a_count, "10", "How many packs can be bought at most."},
    {"code", may, a_text, "FL-01", "What the supplier calls it."},
    {"only compared", may, yes_or_no, "yes", "Whether it is compared, and never bought."},
};
inline constexpr Synonym offer_synonyms[] = {
    {"ingredient", "item"},
    {"product", "item"},
    {"name", "item"},
    {"size", "pack"},
    {"pack size", "pack"},
    {"cost", "price"},
    {"shipping", "freight"},
    {"valid from", "from"},
    {"date", "from"},
    {"valid until", "until"},
    {"price breaks", "breaks"},
    {"quantity breaks", "breaks"},
    {"sku", "code"},
    {"SKU", "code"},
    {"article", "code"},
};
inline constexpr Shape offer{"offer", "this offer", offer_keys, offer_synonyms};
inline constexpr Value an_offer = mapping(offer);

inline constexpr KeyShape terms_keys[] = {
    {"minimum", may, some_money, "50.00", "The least that the supplier takes an order for."},
    {"delivery", may, some_money, "9.00", "What a delivery costs."},
    {"free delivery from", may, some_money, "150.00", "The order from which delivery is free."},
    {"usual order", may, some_money, "120.00",
     "What an order usually comes to; a delivery is shared over it."},
    {"only compared", may, yes_or_no, "yes", "Whether the supplier is compared, and never used."},
};
inline constexpr Synonym terms_synonyms[] = {{"minimum order", "minimum"},
                                             {"delivery fee", "delivery"},
                                             {"free delivery", "free delivery from"}};
inline constexpr Shape terms{"terms", "these terms", terms_keys, terms_synonyms};

inline constexpr KeyShape price_list_keys[] = {
    {"supplier", must, a_name, "Mill Road Provisions", "Whose list it is."},
    {"currency", may, a_currency, "USD", "The currency of its prices: that of the books."},
    {"tax included", may, a_percentage, "7 %", "The tax that its prices contain."},
    {"from", may, a_date, "2026-11-02", "The first day of offers that name none."},
    {"terms", may, mapping(terms), "{minimum: 50.00, delivery: 9.00}",
     "What the supplier asks of every order."},
    {"offers", must, list_of(an_offer), "[{item: plain flour, pack: 25 lb, price: 13.80}]",
     "What is offered, an entry for each pack."},
};
inline constexpr Synonym price_list_synonyms[] = {{"vendor", "supplier"},
                                                  {"date", "from"},
                                                  {"valid from", "from"},
                                                  {"vat included", "tax included"},
                                                  {"prices", "offers"}};
inline constexpr Shape price_list{"price list", "this price list", price_list_keys,
                                  price_list_synonyms};
inline constexpr Value a_price_list = mapping(price_list);

inline constexpr KeyShape bought_keys[] = {
    {"item", must, a_name, "butter", "The ingredient or supply that was bought."},
    {"pack", must, an_amount, "1 lb", "What one pack held."},
    {"packs", must, a_count, "6", "How many packs were bought."},
    {"paid", must, some_money, "25.14", "What all of them took together, with their deposit."},
    {"deposit", may, some_money, "2.00", "The part of it that comes back."},
    {"tax included", may, a_percentage, "7 %", "The tax that was paid with it, where it differs."},
    {"stopgap", may, yes_or_no, "yes", "Whether it was bought in need, and says nothing of costs."},
};
inline constexpr Synonym bought_synonyms[] = {
    {"ingredient", "item"}, {"product", "item"},   {"name", "item"},   {"size", "pack"},
    {"pack size", "pack"},  {"quantity", "packs"}, {"count", "packs"}, {"total", "paid"},
    {"amount", "paid"},     {"cost", "paid"}};
inline constexpr Shape bought{"item of a receipt", "this item", bought_keys, bought_synonyms};
inline constexpr Value a_bought_item = mapping(bought);

inline constexpr KeyShape receipt_keys[] = {
    {"bought", must, a_date, "2026-11-20", "The day it was bought."},
    {"supplier", must, a_name, "Corner Dock Cash & Carry", "From whom."},
    {"tax included", may, a_percentage, "7 %", "The tax that the amounts contain."},
    {"items", must, list_of(a_bought_item), "[{item: butter, pack: 1 lb, packs: 6, paid: 25.14}]",
     "What was bought."},
};
inline constexpr Synonym receipt_synonyms[] = {{"date", "bought"},
                                               {"vendor", "supplier"},
                                               {"shop", "supplier"},
                                               {"vat included", "tax included"},
                                               {"lines", "items"}};
inline constexpr Shape receipt{"receipt", "this receipt", receipt_keys, receipt_synonyms};
inline constexpr Value a_receipt = mapping(receipt);

inline constexpr KeyShape trim_keys[] = {
    {"mass", must, a_mass, "0.3 kg", "What it weighs."},
    {"worth", may, money_per_mass, "5.00 / kg", "What it is worth where it is used."},
};
inline constexpr Synonym trim_synonyms[] = {
    {"weight", "mass"}, {"amount", "mass"}, {"value", "worth"}};
inline constexpr Shape trim{"part that is trimmed off", "this part", trim_keys, trim_synonyms};
inline constexpr Value a_trim = a_mass | mapping(trim);

inline constexpr KeyShape yield_test_keys[] = {
    {"test", must, a_name, "plum 12 november", "What it is called, so that it can be cited."},
    {"item", must, a_name, "plum", "The ingredient that was tested."},
    {"date", must, a_date, "2026-11-12", "The day of the test."},
    {"as purchased", must, an_amount, "10 kg", "What was bought for it."},
    {"trim", may, names_to("parts", a_trim), "{stones: 0.9 kg}", "What was cut off, by name."},
    {"usable", may, a_mass, "8.8 kg", "What was left to use.", {unless("trim")}},
    {"price", may, some_money, "24.00", "What was paid for all of it."},
    {"supplier", may, a_name, "Mill Road Provisions", "From whom it came."},
};
inline constexpr Synonym yield_test_synonyms[] = {{"name", "test"},
                                                  {"ingredient", "item"},
                                                  {"as bought", "as purchased"},
                                                  {"purchased", "as purchased"},
                                                  {"waste", "trim"},
                                                  {"edible portion", "usable"},
                                                  {"cost", "price"},
                                                  {"paid", "price"}};
inline constexpr Shape yield_test{"yield test", "this yield test", yield_test_keys,
                                  yield_test_synonyms};
inline constexpr Value a_yield_test = mapping(yield_test);

inline constexpr KeyShape lot_keys[] = {
    {"as", may, a_name, "box of 12", "The sale unit, of own goods that are packed."},
    {"amount", must, an_amount, "12 kg", "How much there is."},
    {"par", may, an_amount, "20 kg", "What the shelf is filled up to."},
    {"good until", may, a_date, "2026-12-01", "The last day on which it is good."},
};
inline constexpr Synonym lot_synonyms[] = {{"quantity", "amount"},
                                           {"use by", "good until"},
                                           {"best before", "good until"},
                                           {"expires", "good until"}};
inline constexpr Shape lot{"item on the shelf", "this item", lot_keys, lot_synonyms};
inline constexpr Value a_single_lot = an_amount | mapping(lot);
inline constexpr Value some_lots = list_of(a_single_lot);

inline constexpr KeyShape stock_keys[] = {
    {"stock", must, a_date, "2026-11-24", "The day it was counted."},
    {"items", must, names_to("ingredients, supplies and own goods", some_lots),
     "{plain flour: 12 kg}", "What is on the shelf."},
};
inline constexpr Synonym stock_synonyms[] = {
    {"date", "stock"}, {"counted", "stock"}, {"ingredients", "items"}, {"lines", "items"}};
inline constexpr Shape stock{"stock", "this stock", stock_keys, stock_synonyms};
inline constexpr Value a_stock = mapping(stock);

} // namespace groat::shapes
