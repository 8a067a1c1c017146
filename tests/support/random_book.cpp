#include "random_book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace groat::test {

std::string Draw::share(std::int64_t least, std::int64_t most) {
    std::int64_t const halves = whole(least * 2, most * 2);
    return fmt::format("{}.{} %", halves / 2, halves % 2 == 0 ? 0 : 5);
}

namespace random_books {

class Baker {
public:
    Baker(std::uint64_t seed, Wanted wanted)
        : draw_(seed), draw_purchase_(seed + 1000003), wanted_(wanted) {}

    Book bake() {
        std::string const code = draw_.one_of<std::string>({"USD", "USD", "EUR", "KWD", "JPY"});
        book_ = a_book(code);
        digits_ = book_.shop.currency.minor_digits();
        write_shop();
        write_ingredients();
        write_supplies();
        std::int64_t const formulas = draw_.whole(3, 8);
        for (std::int64_t i = 0; i < formulas; ++i) write_formula(i);
        shuffle_formulas();
        write_order();
        write_terms();
        write_receipts();
        return std::move(book_);
    }

private:
    /// An amount between so many hundredths, in the minor unit of the book.
    std::string amount(std::int64_t least, std::int64_t most) {
        std::int64_t const hundredths = draw_.whole(least, most);
        if (digits_ == 0) return fmt::format("{}", hundredths);
        return digits_ == 2 ? fmt::format("{}.{:02}", hundredths / 100, hundredths % 100)
                            : fmt::format("{}.{:02}5", hundredths / 100, hundredths % 100);
    }
    Money some_money(std::int64_t least, std::int64_t most) {
        return money(amount(least, most), book_.shop.currency.code());
    }

    void write_shop() {
        Shop& shop = book_.shop;
        shop.address = {"1 Test Lane"};
        std::int64_t const roles = draw_.whole(1, 3);
        for (std::int64_t i = 0; i < roles; ++i)
            role(book_, fmt::format("baker {}", i), amount(1200, 3000), draw_.share(0, 30));
        std::int64_t const ovens = draw_.whole(1, 2);
        for (std::int64_t i = 0; i < ovens; ++i)
            oven(book_, fmt::format("oven {}", i), fmt::format("{} W", draw_.whole(800, 9000)),
                 draw_.share(20, 100), fmt::format("{}", draw_.whole(0, 40)), amount(10, 60));
        using Driver = Overhead::Driver;
        for (Driver const driver : {Driver::labour_hour, Driver::oven_hour, Driver::order,
                                    Driver::piece, Driver::ingredients, Driver::prime_cost}) {
            if (!draw_.chance(40)) continue;
            bool const is_share = driver == Driver::ingredients || driver == Driver::prime_cost;
            overhead(book_, fmt::format("overhead {}", static_cast<int>(driver)), driver,
                     is_share ? draw_.share(1, 20) : amount(1, 800));
        }
        if (draw_.chance(50))
            shop.order_work.push_back(task("papers", some_role(), minutes_text(), Per::order));
        for (Overhead& each : shop.overheads)
            if (draw_.chance(30)) each.is_variable = draw_.chance(60);
        shop.delivery_flat = some_money(0, 900);
        if (draw_.chance(60)) shop.driver = named(some_role());
        shop.delivery_rate = rate(amount(10, 90), "km", shop.currency.code());
        fee(book_, "card", draw_.share(0, 4), amount(0, 60));
        if (draw_.chance(60)) shop.paid_by = named("card");
        shop.tax.rate = share_of<TaxRate>(draw_.share(0, 25));
        shop.tax.other_rates.push_back({"reduced", share_of<TaxRate>(draw_.share(0, 10))});
        shop.tax.is_contained = draw_.chance(40);
        shop.tax.is_rounded_per_line = draw_.chance(40);
        if (draw_.chance(30))
            shop.tax.delivery = named(draw_.one_of<std::string>({"main", "none", "reduced"}));
        shop.price = some_policy(100, 50);
        if (draw_.chance(40)) shop.minimum_order = some_money(2000, 20000);
        if (draw_.chance(40))
            shop.rush = RushRule{Days(3), share_of<Surcharge>(draw_.share(0, 25))};
        shop.deposit = share_of<Share>(draw_.share(0, 100));
        if (draw_.chance(50)) shop.valid = Days(14);
        if (draw_.chance(50))
            shop.cash_rounding = Money{shop.currency.minor_unit() * 5, shop.currency};
        for (bool& is_variable : shop.is_variable) is_variable = draw_.chance(75);
    }

    PricePolicy some_policy(int target_chance, int point_chance) {
        PricePolicy policy;
        if (draw_.chance(target_chance)) {
            switch (draw_.whole(0, wanted_.fixed_prices ? 5 : 4)) {
            case 0: policy = at_margin(draw_.share(0, 60)); break;
            case 1: policy = at_markup(draw_.share(0, 300)); break;
            case 2: policy = at_food_cost(draw_.share(10, 100)); break;
            case 3: policy = aims_at(Contribution{some_money(0, 900)}); break;
            case 4: policy = aims_at(share_of<PrimeCostShare>(draw_.share(20, 100))); break;
            default: policy = aims_at(GivenPrice{some_money(100, 5000)}); break;
            }
        }
        if (draw_.chance(point_chance)) {
            PricePoint point;
            if (digits_ > 0 && draw_.chance(40)) {
                point.endings = {number("0.50"), number("0.99")};
            } else {
                Number const steps = draw_.one_of<std::int64_t>({1, 5, 25, 100});
                point.step = Money{book_.shop.currency.minor_unit() * steps, book_.shop.currency};
                point.to_nearest = draw_.chance(50);
            }
            policy.point = point;
        }
        return policy;
    }

    std::string some_role() { return draw_.one_of(book_.shop.roles).name; }
    std::string minutes_text() {
        return fmt::format("{}/{}", draw_.whole(1, 90), draw_.whole(1, 4));
    }

    void price(std::string const& name, std::string const& unit) {
        std::string const usual = fmt::format("supplier Zarnitz{}", draw_.whole(1, 3));
        offer(book_, name, fmt::format("{} {}", draw_.whole(1, 25), unit), amount(50, 6000), usual);
        complete(book_.offers.back());
        std::int64_t const others = draw_.whole(0, 2);
        for (std::int64_t i = 0; i < others; ++i) {
            Offer& other =
                offer(book_, name,
                      fmt::format("{} x {} {}", draw_.whole(30, 60), draw_.whole(1, 9), unit),
                      amount(500, 60000), fmt::format("supplier Zarnitz{}", draw_.whole(1, 3)));
            complete(other);
            if (draw_.chance(60)) other.from = today + Days(draw_.whole(-90, 20));
            if (draw_.chance(30)) other.until = today + Days(draw_.whole(-20, 90));
            if (unit != "each" && draw_.chance(30))
                other.yield = share_of<Yield>(draw_.share(40, 120));
        }
        if (draw_.chance(20)) book_.ingredients.back().preferred_supplier = named(usual);
        if (wanted_.whole_packs) book_.ingredients.back().buys_whole_packs = draw_.chance(25);
    }

    void complete(Offer& offer) {
        if (draw_.chance(30)) offer.freight = some_money(0, 300);
        if (draw_.chance(20)) offer.deposit = some_money(0, 100);
        if (draw_.chance(30)) offer.tax_included = share_of<TaxRate>(draw_.share(0, 25));
    }

    void write_terms() {
        for (Supplier& each : book_.suppliers) {
            if (!draw_purchase_.chance(40)) continue;
            each.delivery = Money{Number(draw_purchase_.whole(0, 20)), book_.shop.currency};
            if (draw_purchase_.chance(70))
                each.usual_order =
                    Money{Number(draw_purchase_.whole(20, 200)), book_.shop.currency};
            if (draw_purchase_.chance(40))
                each.free_delivery_from =
                    Money{Number(draw_purchase_.whole(50, 200)), book_.shop.currency};
        }
    }

    /// Some of what is listed was bought, at another price and before or after the list.
    void write_receipts() {
        for (Offer const& listed : book_.offers) {
            if (!draw_purchase_.chance(25)) continue;
            std::int64_t const packs = draw_purchase_.whole(1, 6);
            BoughtPacks& bought = receipt(
                book_, iso_date(today + Days(draw_purchase_.whole(-60, 5))), listed.item.name,
                listed.pack_text, packs, fmt::format("{}", draw_purchase_.whole(5, 60) * packs),
                book_.suppliers[listed.supplier].name);
            if (draw_purchase_.chance(30))
                bought.deposit = Money{Number(draw_purchase_.whole(0, 4)), book_.shop.currency};
            if (draw_purchase_.chance(30)) bought.tax_included = share_of<TaxRate>("7 %");
            bought.is_stopgap = draw_purchase_.chance(15);
        }
    }

    void write_ingredients() {
        std::int64_t const count = draw_.whole(3, 7);
        for (std::int64_t i = 0; i < count; ++i) {
            std::string const name = fmt::format("food {}", i);
            Ingredient& entry = food(book_, name);
            if (draw_.chance(60))
                entry.densities.push_back(density(fmt::format("{} g / cup", draw_.whole(60, 350))));
            if (draw_.chance(40)) entry.grams_each = draw_.whole(5, 400);
            if (draw_.chance(40)) entry.yield = share_of<Yield>(draw_.share(30, 130));
            for (Allergen const& allergen : allergens)
                if (draw_.chance(5)) entry.allergens.insert(&allergen);
            price(name, "kg");
        }
    }

    void write_supplies() {
        for (std::string const name : {"box", "liner", "bag"}) {
            food(book_, name).kind = Ingredient::Kind::supply;
            price(name, "each");
        }
    }

    std::string some_supply() { return draw_.one_of<std::string>({"box", "liner", "bag"}); }

    Line line_of_food() {
        std::size_t const index = static_cast<std::size_t>(draw_.whole(0, foods() - 1));
        Ingredient const& what = book_.ingredients[index];
        std::string text = fmt::format("{} g", draw_.whole(5, 900));
        if (what.grams_each && draw_.chance(50))
            text = fmt::format("{}", draw_.whole(1, 12));
        else if (!what.densities.empty() && draw_.chance(50))
            text = fmt::format("{}/{} cup", draw_.whole(1, 9), draw_.whole(1, 4));
        if (draw_.chance(25)) text += " as bought";
        Line result = line({what.name, text});
        if (draw_.chance(20)) result.yield = share_of<Yield>(draw_.share(30, 120));
        return result;
    }

    [[nodiscard]] std::int64_t foods() const {
        return static_cast<std::int64_t>(book_.ingredients.size()) - 3;
    }

    Line line_of_formula(Formula const& what) {
        bool const by_count = what.makes_pieces() && draw_.chance(60);
        return line({what.name, by_count ? fmt::format("{}", draw_.whole(1, 6))
                                         : fmt::format("{} g", draw_.whole(5, 300))});
    }

    void write_formula(std::int64_t number_of) {
        Formula& made = formula(book_, fmt::format("formula {}", number_of), {});
        if (draw_.chance(15)) {
            write_percentages(made);
        } else {
            std::int64_t const lines = draw_.whole(1, 4);
            for (std::int64_t i = 0; i < lines; ++i) made.lines.push_back(line_of_food());
            if (draw_.chance(55)) made.keeping.at = KeepAt::cool;
        }
        std::int64_t const used = number_of == 0 ? 0 : draw_.whole(0, 2);
        for (std::int64_t i = 0; i < used && made.percentage_base.empty(); ++i)
            made.lines.push_back(line_of_formula(
                book_.formulas[static_cast<std::size_t>(draw_.whole(0, number_of - 1))]));
        switch (draw_.whole(0, 2)) {
        case 0: made.portion = quantity(fmt::format("{} g", draw_.whole(8, 120))); break;
        case 1: made.makes = quantity(fmt::format("{}", draw_.whole(1, 80))); break;
        default: break; // by mass
        }
        if (draw_.chance(40)) lose(made, "bowl", draw_.share(0, 10), LossStage::before_portioning);
        if (draw_.chance(40)) lose(made, "bag", draw_.share(0, 10), LossStage::before_portioning);
        if (draw_.chance(50)) lose(made, "baking", draw_.share(0, 25), LossStage::after_portioning);
        if (made.makes_pieces() && draw_.chance(50))
            lose(made, "breakage", draw_.share(0, 12), LossStage::pieces);
        if (draw_.chance(60))
            made.oven = baked_in(draw_.one_of(book_.shop.ovens).name, minutes_text(),
                                 made.makes_pieces() ? fmt::format("{}", draw_.whole(1, 60))
                                                     : fmt::format("{} g", draw_.whole(200, 5000)));
        for (Per const per : {Per::order, Per::batch, Per::mix, Per::load, Per::piece}) {
            if (draw_.chance(30)) {
                made.labour.push_back(task("work", some_role(), minutes_text(), per));
                made.labour.back().scales = per == Per::batch && draw_.chance(40);
            }
            if (per != Per::mix && draw_.chance(20))
                made.consumables.push_back(
                    uses(some_supply(), fmt::format("{}/{}", draw_.whole(1, 5), draw_.whole(1, 3)),
                         per));
        }
        if (draw_.chance(30)) made.labour.push_back(rest("rest", "45"));
        made.batch_step = draw_.one_of<Number>({0, 0, 1, Number(1) / 2, Number(1) / 4});
        if (draw_.chance(40)) made.largest_mix = Number(draw_.whole(1, 8)) / 2;
        made.keeps_leftover = wanted_.kept_leftover && draw_.chance(30);
        if (draw_.chance(40)) made.standard_run = draw_.whole(10, 2000);
        made.price = some_policy(30, 20);
        made.tax = named(draw_.one_of<std::string>({"", "", "reduced", "none"}));
        std::int64_t const units = draw_.whole(made.makes_pieces() ? 0 : 1, 2);
        for (std::int64_t i = 0; i < units; ++i) {
            SaleUnit& unit =
                sold_as(made, fmt::format("unit {}", i),
                        made.makes_pieces() ? fmt::format("{}", draw_.whole(1, 24))
                                            : fmt::format("{} g", draw_.whole(50, 900)));
            if (draw_.chance(70)) unit.packing.push_back(uses(some_supply(), "1", Per::sale_unit));
            if (draw_.chance(40))
                unit.packing.push_back(uses(some_supply(), "3/2", Per::sale_unit));
            if (draw_.chance(60))
                unit.labour.push_back(task("pack", some_role(), minutes_text(), Per::sale_unit));
            unit.price = some_policy(30, 20);
        }
    }

    void write_percentages(Formula& made) {
        std::string const base = book_.ingredients.front().name;
        made.lines.push_back(line({base, "100 %"}));
        for (std::int64_t i = 1; i < foods(); ++i)
            made.lines.push_back(
                line({book_.ingredients[static_cast<std::size_t>(i)].name, draw_.share(1, 90)}));
        made.percentage_base.push_back(named(base));
        made.total_grams = draw_.whole(500, 9000);
    }

    /// Books do not write formulas in the order in which they use one another.
    void shuffle_formulas() {
        for (std::size_t i = book_.formulas.size(); i > 1; --i)
            std::swap(book_.formulas[i - 1], book_.formulas[static_cast<std::size_t>(draw_.whole(
                                                 0, static_cast<std::int64_t>(i) - 1))]);
    }

    void write_order() {
        Order& wanted = order(book_);
        std::int64_t const lines = draw_.whole(1, 4);
        for (std::int64_t i = 0; i < lines; ++i) {
            Formula const& item = draw_.one_of(book_.formulas);
            bool const by_piece = item.sold_as.empty() || (item.makes_pieces() && draw_.chance(30));
            OrderLine& entry = wants(wanted, item.name, draw_.whole(1, 60),
                                     by_piece ? std::string() : draw_.one_of(item.sold_as).name);
            entry.price = some_policy(20, 20);
        }
        if (draw_.chance(50)) wanted.due = today + Days(draw_.whole(0, 14));
        if (draw_.chance(30)) wanted.paid_by = named(draw_.chance(50) ? "card" : "none");
        if (draw_.chance(60)) {
            Delivery delivery;
            delivery.distance = quantity(fmt::format("{} km", draw_.whole(0, 40)));
            delivery.charge = draw_.one_of<DeliveryCharge>(
                {DeliveryCharge::in_price, DeliveryCharge::at_cost, DeliveryCharge::amount});
            delivery.amount = some_money(0, 3000);
            delivery.is_both_ways = draw_.chance(40);
            if (book_.shop.driver.is_given() && draw_.chance(50))
                delivery.minutes = draw_.whole(1, 90);
            wanted.delivery = delivery;
        }
        if (draw_.chance(20)) wanted.rush = share_of<Surcharge>(draw_.share(0, 30));
        if (draw_.chance(20)) wanted.rush = some_money(0, 3000);
        if (draw_.chance(40)) {
            wanted.discount = share_of<Surcharge>(draw_.share(0, 40));
            wanted.is_discount_in_price = draw_.chance(40);
        }
        std::int64_t const extras = draw_.chance(30) ? draw_.whole(1, 3) : 0;
        for (std::int64_t i = 0; i < extras; ++i) {
            FreeLine extra{fmt::format("hire {}", i), draw_.chance(25) ? -1 : draw_.whole(1, 9),
                           some_money(100, 3000)};
            if (draw_.chance(50)) extra.cost = some_money(0, 1500);
            extra.tax = named(draw_.one_of<std::string>({"", "reduced", "none"}));
            extra.before = static_cast<std::size_t>(i * lines / extras);
            wanted.extras.push_back(std::move(extra));
        }
        if (draw_.chance(15)) wanted.tax = named(draw_.chance(50) ? "reduced" : "none");
    }

    Draw draw_;
    Draw draw_purchase_; ///< of its own, so that nothing else depends on what was bought
    Wanted wanted_;
    Book book_;
    unsigned digits_ = 2;
};

} // namespace random_books

Book random_book(std::uint64_t seed, Wanted wanted) {
    Book book = random_books::Baker(seed, wanted).bake();
    link_well(book);
    return book;
}

std::vector<Sale> sales_of(Book const& book) { return sales_of(book.orders.front(), book); }

std::uint64_t one_book_in() {
    char const* const said = std::getenv("GROAT_ONE_BOOK_IN");
    return said == nullptr ? 1 : std::max<std::uint64_t>(1, std::strtoull(said, nullptr, 10));
}

} // namespace groat::test
