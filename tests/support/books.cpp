#include "books.hpp"

#include <fmt/format.h>

#include <utility>

namespace groat::test {

Currency currency(std::string_view code) { return Currency::find(code).value(); }

Number number(std::string_view text) { return parse_number(text).value(); }

Number percent(std::string_view text) { return parse_percent(text).value(); }

Money money(std::string_view text, std::string_view code) { return {number(text), currency(code)}; }

Coins coins(std::string_view text, std::string_view code) {
    Number const minor = number(text) / currency(code).minor_unit();
    REQUIRE(minor.is_whole());
    return {minor.numerator(), currency(code)};
}

Quantity quantity(std::string_view text, Measures measures) {
    return parse_quantity(text, measures).value();
}

Density density(std::string_view text, Measures measures) {
    return parse_density(text, measures).value();
}

Date day(std::string_view text) { return parse_date(text).value(); }

MoneyRate rate(std::string_view amount, std::string_view unit, std::string_view code) {
    return {money(amount, code), find_unit(unit, Measures::us)};
}

std::string printed(Number const& value, unsigned places) {
    return decimal(value, places, Tie::half_up);
}

std::string printed(Money const& value, unsigned places) { return printed(value.amount(), places); }

Reference named(std::string_view name) { return {std::string(name), {}, unresolved}; }

Book a_book(std::string_view code) {
    Book book;
    book.shop.name = "Bakery of the Test";
    book.shop.currency = currency(code);
    book.ingredients.reserve(room_for);
    book.suppliers.reserve(room_for);
    book.offers.reserve(room_for);
    book.receipts.reserve(room_for);
    book.formulas.reserve(room_for);
    book.orders.reserve(room_for);
    book.yield_tests.reserve(room_for);
    return book;
}

std::size_t supplier(Book& book, std::string_view name) {
    for (std::size_t i = 0; i < book.suppliers.size(); ++i)
        if (book.suppliers[i].name == name) return i;
    Supplier entry;
    entry.name = name;
    book.suppliers.push_back(std::move(entry));
    return book.suppliers.size() - 1;
}

Offer& offer(Book& book, std::string_view item, std::string_view pack, std::string_view price,
             std::string_view from_whom) {
    Offer entry;
    entry.item = named(item);
    entry.pack = quantity(pack, book.shop.measures);
    entry.price = money(price, book.shop.currency.code());
    entry.pack_text = pack;
    entry.supplier = supplier(book, from_whom);
    book.offers.push_back(std::move(entry));
    return book.offers.back();
}

BoughtPacks& receipt(Book& book, std::string_view bought, std::string_view item,
                     std::string_view pack, Integer const& packs, std::string_view paid,
                     std::string_view from_whom) {
    (void)supplier(book, from_whom);
    BoughtPacks entry;
    entry.item = named(item);
    entry.pack = quantity(pack, book.shop.measures);
    entry.pack_text = pack;
    entry.packs = packs;
    entry.paid = money(paid, book.shop.currency.code());
    book.receipts.push_back({day(bought), named(from_whom), {std::move(entry)}, {}});
    return book.receipts.back().items.front();
}

Ingredient& food(Book& book, std::string_view name) {
    Ingredient entry;
    entry.name = name;
    book.ingredients.push_back(std::move(entry));
    return book.ingredients.back();
}

Ingredient& food(Book& book, std::string_view name, std::string_view pack, std::string_view price) {
    offer(book, name, pack, price);
    return food(book, name);
}

Ingredient& supply(Book& book, std::string_view name, std::string_view pack,
                   std::string_view price) {
    offer(book, name, pack, price);
    Ingredient& entry = food(book, name);
    entry.kind = Ingredient::Kind::supply;
    return entry;
}

Line line(Part const& part, Measures measures) {
    constexpr std::string_view bought = " as bought";
    Line entry;
    entry.item = named(part.item);
    std::string_view amount = part.amount;
    if (amount.ends_with(bought)) {
        entry.is_as_bought = true;
        amount.remove_suffix(bought.size());
    }
    if (amount.ends_with('%'))
        entry.amount = percent(amount);
    else
        entry.amount = quantity(amount, measures);
    return entry;
}

Formula& formula(Book& book, std::string_view name, std::initializer_list<Part> parts) {
    Formula entry;
    entry.name = name;
    for (Part const& part : parts) entry.lines.push_back(line(part, book.shop.measures));
    entry.sold_as.reserve(8);
    book.formulas.push_back(std::move(entry));
    return book.formulas.back();
}

void lose(Formula& formula, std::string_view name, std::string_view share, LossStage stage) {
    formula.losses.push_back({std::string(name), share_of<Loss>(share), stage});
}

SaleUnit& sold_as(Formula& formula, std::string_view name, std::string_view holds) {
    SaleUnit entry;
    entry.name = name;
    entry.holds = quantity(holds);
    formula.sold_as.push_back(std::move(entry));
    return formula.sold_as.back();
}

Role& role(Book& book, std::string_view name, std::string_view wage, std::string_view on_cost) {
    Role entry;
    entry.name = name;
    entry.wage = rate(wage, "h", book.shop.currency.code());
    entry.on_cost = share_of<Surcharge>(on_cost);
    book.shop.roles.push_back(std::move(entry));
    return book.shop.roles.back();
}

Task task(std::string_view name, std::string_view by, std::string_view minutes, Per per) {
    Task entry;
    entry.name = name;
    entry.role = named(by);
    entry.minutes = number(minutes);
    entry.per = per;
    return entry;
}

Task rest(std::string_view name, std::string_view minutes) {
    Task entry = task(name, "", minutes);
    entry.is_unattended = true;
    return entry;
}

Consumption uses(std::string_view supply, std::string_view amount, Per per) {
    Consumption entry;
    entry.supply = named(supply);
    entry.amount = number(amount);
    entry.per = per;
    return entry;
}

Oven& oven(Book& book, std::string_view name, std::string_view power, std::string_view duty,
           std::string_view preheat_minutes, std::string_view per_kilowatt_hour) {
    Tariff tariff;
    tariff.name = fmt::format("electricity of the {}", name);
    tariff.rate = rate(per_kilowatt_hour, "kWh", book.shop.currency.code());
    book.shop.tariffs.push_back(std::move(tariff));
    Oven entry;
    entry.name = name;
    entry.power = quantity(power);
    entry.duty = share_of<Share>(duty);
    entry.preheat = number(preheat_minutes);
    entry.fuel = named(book.shop.tariffs.back().name);
    book.shop.ovens.push_back(std::move(entry));
    return book.shop.ovens.back();
}

OvenUse baked_in(std::string_view oven, std::string_view minutes, std::string_view holds) {
    OvenUse entry;
    entry.oven = named(oven);
    entry.minutes = number(minutes);
    entry.holds = quantity(holds);
    return entry;
}

Overhead& overhead(Book& book, std::string_view name, Overhead::Driver driver,
                   std::string_view amount) {
    Overhead entry;
    entry.name = name;
    entry.driver = driver;
    if (amount.ends_with('%'))
        entry.share = share_of<Surcharge>(amount);
    else
        entry.amount = money(amount, book.shop.currency.code());
    book.shop.overheads.push_back(std::move(entry));
    return book.shop.overheads.back();
}

Fee& fee(Book& book, std::string_view name, std::string_view share, std::string_view fixed) {
    Fee entry;
    entry.name = name;
    entry.share = share_of<FeeRate>(share);
    entry.fixed = money(fixed, book.shop.currency.code());
    book.shop.fees.push_back(std::move(entry));
    return book.shop.fees.back();
}

YieldTest& yield_test(Book& book, std::string_view name, std::string_view item,
                      std::string_view bought, std::string_view usable) {
    YieldTest entry;
    entry.name = name;
    entry.item = named(item);
    entry.as_purchased = quantity(bought, book.shop.measures);
    if (!usable.empty()) entry.stated_usable = quantity(usable, book.shop.measures).amount;
    book.yield_tests.push_back(std::move(entry));
    return book.yield_tests.back();
}

void trim(YieldTest& test, std::string_view part, std::string_view mass,
          std::optional<MoneyRate> worth) {
    test.trim.push_back({std::string(part), quantity(mass).amount, std::move(worth)});
}

YieldSource by_test(std::string_view name) {
    YieldSource source;
    source.kind = name.empty() ? YieldSource::Kind::all_tests : YieldSource::Kind::one_test;
    source.test = named(name);
    return source;
}

PricePolicy aims_at(Target target) {
    PricePolicy policy;
    policy.target = std::move(target);
    return policy;
}

PricePolicy at_margin(std::string_view share) { return aims_at(share_of<Margin>(share)); }

PricePolicy at_markup(std::string_view share) { return aims_at(share_of<Markup>(share)); }

PricePolicy at_food_cost(std::string_view share) { return aims_at(share_of<FoodCostShare>(share)); }

PricePolicy at_price(std::string_view amount, std::string_view code) {
    return aims_at(GivenPrice{money(amount, code)});
}

OrderLine& wants(Order& order, std::string_view item, Integer const& count, std::string_view unit) {
    OrderLine entry;
    entry.item = named(item);
    entry.sale_unit = named(unit);
    entry.count = count;
    order.lines.push_back(std::move(entry));
    return order.lines.back();
}

Order& order(Book& book, std::string_view id) {
    Order entry;
    entry.id = id;
    entry.client = "Reading Circle";
    entry.date = today;
    entry.lines.reserve(room_for);
    book.orders.push_back(std::move(entry));
    return book.orders.back();
}

std::string in_words(Diagnostics const& found) { return render(found, Sources()); }

void link_well(Book& book) {
    book.ingredient_index.clear();
    book.formula_index.clear();
    Diagnostics const found = link(book);
    REQUIRE_MESSAGE(found.empty(), in_words(found));
}

LinkedBook linked(Book const& book) {
    Diagnostics found;
    auto result = link(book, found);
    REQUIRE_MESSAGE(result.has_value(), in_words(found));
    return *std::move(result);
}

std::size_t index_of(Book const& book, std::string_view formula) {
    auto const found = book.formula_index.find(formula);
    REQUIRE(found != book.formula_index.end());
    return found->second;
}

std::size_t ingredient_index(Book const& book, std::string_view name) {
    auto const found = book.ingredient_index.find(name);
    REQUIRE(found != book.ingredient_index.end());
    return found->second;
}

Sale sale(Book const& book, std::string_view item, Number const& count, std::string_view unit) {
    Sale result;
    result.formula = index_of(book, item);
    result.count = count;
    for (SaleUnit const& each : book.formulas[result.formula].sold_as)
        if (each.name == unit) result.unit = &each;
    REQUIRE((unit.empty() || result.unit != nullptr));
    return result;
}

FormulaUse const& of_formula(OrderCost const& cost, Book const& book, std::string_view name) {
    for (FormulaUse const& use : cost.formulas)
        if (book.formulas[use.run.formula].name == name) return use;
    FAIL("no formula of that name was used: " << std::string(name));
    return cost.formulas.front();
}

IngredientUse const& of_ingredient(OrderCost const& cost, Book const& book, std::string_view name) {
    for (auto const* uses : {&cost.ingredients, &cost.supplies})
        for (IngredientUse const& use : *uses)
            if (book.ingredients[use.ingredient].name == name) return use;
    FAIL("no ingredient of that name was used: " << std::string(name));
    return cost.ingredients.front();
}

std::optional<Diagnostic> finding(Diagnostics const& found, std::string_view code) {
    for (Diagnostic const& each : found.sorted())
        if (each.code == code) return each;
    return std::nullopt;
}

bool says(std::string_view text, std::string_view words) {
    return text.find(words) != std::string_view::npos;
}

} // namespace groat::test
