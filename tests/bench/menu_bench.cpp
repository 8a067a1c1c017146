// What a menu of 5,000 items takes: calculating its book, costing it, and drawing its sheet. CPU time of one thread.
//
//   cmake -S . -B build/bench -DGROAT_BENCH=ON -DGROAT_TESTS=OFF && cmake --build build/bench --target groat_menu_bench
//   build/bench/tests/groat_menu_bench
#include <groat.hpp>

#include <benchmark/benchmark.h>

#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

namespace {

using namespace groat;

constexpr std::size_t ingredient_count = 500;
constexpr std::size_t part_count = 300; ///< doughs, fillings and soups that the items are made of
constexpr std::size_t item_count = 5000;

Date date() {
    using namespace std::chrono;
    return sys_days{year(2026) / 11 / 25};
}

/// Books with a menu, every figure of them by chance but always the same.
Book big_book() {
    std::mt19937 chance(19);
    auto const up_to = [&](std::size_t most) { return chance() % most; };
    Currency const usd = *Currency::find("USD");
    auto const money = [&](std::size_t cents) { return Money(Number(cents) / 100, usd); };
    auto const minutes = [&](std::size_t most) { return Number(up_to(most) + 1) / 4; };
    Book book;
    Shop& shop = book.shop;
    shop.name = "bench";
    shop.currency = usd;
    shop.roles = {{"baker", {money(2600), find_unit("h", Measures::us)}, {}, {}}};
    shop.tariffs = {{"electricity", {money(17), find_unit("kWh", Measures::us)}}};
    shop.ovens = {{"deck", {7200, Dimension::energy, nullptr}, {}, 35, {"electricity", {}}, {}}};
    shop.overheads = {
        {"rent", Overhead::Driver::labour_hour, money(1200), {}, {}},
        {"small tools", Overhead::Driver::prime_cost, {}, *Surcharge::of(Number(1) / 50), {}}};
    shop.fees = {{"card", *FeeRate::of(Number(29) / 1000), money(30)}};
    shop.paid_by = {"card", {}};
    shop.tax.rate = *TaxRate::of(Number(6) / 100);
    shop.standard_run = 60;
    book.suppliers.push_back({"mill", {}, {}, {}});
    for (std::size_t i = 0; i < ingredient_count; ++i) {
        Ingredient ingredient;
        ingredient.name = fmt::format("ingredient {}", i);
        if (up_to(2) == 0) ingredient.yield = *Yield::of(Number(up_to(60) + 40) / 100);
        book.ingredients.push_back(std::move(ingredient));
        Offer offer;
        offer.item = {fmt::format("ingredient {}", i), {}};
        offer.pack = *parse_quantity(fmt::format("{} lb", up_to(50) + 1), Measures::us);
        offer.price = money(up_to(9000) + 100);
        offer.supplier = 0;
        book.offers.push_back(std::move(offer));
    }
    Ingredient box;
    box.name = "box";
    box.kind = Ingredient::Kind::supply;
    book.ingredients.push_back(std::move(box));
    Offer boxes;
    boxes.item = {"box", {}};
    boxes.pack = *parse_quantity("100", Measures::us);
    boxes.price = money(4200);
    book.offers.push_back(std::move(boxes));
    auto const line = [&](std::string name, std::size_t grams) {
        Line result;
        result.item = {std::move(name), {}};
        result.amount = Quantity{Number(grams), Dimension::mass, nullptr};
        return result;
    };
    auto const fill = [&](Formula& formula, std::size_t lines) {
        for (std::size_t i = 0; i < lines; ++i)
            formula.lines.push_back(
                line(fmt::format("ingredient {}", up_to(ingredient_count)), up_to(900) + 20));
        Task task;
        task.name = "mix";
        task.role = {"baker", {}};
        task.minutes = minutes(60);
        formula.labour.push_back(task);
        formula.losses.push_back(
            {"bowl", *Loss::of(Number(up_to(5) + 1) / 100), LossStage::before_portioning});
    };
    for (std::size_t i = 0; i < part_count; ++i) {
        Formula part;
        part.name = fmt::format("part {}", i);
        fill(part, 8);
        book.formulas.push_back(std::move(part));
    }
    Menu menu;
    menu.name = "all";
    menu.price.target = *Margin::of(Number(3) / 10);
    for (std::size_t i = 0; i < 10; ++i) menu.categories.push_back({fmt::format("c{}", i), {}, {}});
    for (std::size_t i = 0; i < item_count; ++i) {
        Formula item;
        item.name = fmt::format("item {}", i);
        fill(item, 8);
        for (int k = 0; k < 2; ++k)
            item.lines.push_back(line(fmt::format("part {}", up_to(part_count)), up_to(300) + 10));
        item.makes = Quantity{Number(up_to(40) + 10), Dimension::count, nullptr};
        item.oven = OvenUse{{"deck", {}}, minutes(200), {80, Dimension::count, nullptr}};
        SaleUnit unit;
        unit.name = "single";
        unit.holds = {1, Dimension::count, nullptr};
        Consumption packing;
        packing.supply = {"box", {}};
        packing.amount = 1;
        packing.per = Per::sale_unit;
        unit.packing.push_back(packing);
        item.sold_as.push_back(std::move(unit));
        book.formulas.push_back(std::move(item));
        MenuItem entry;
        entry.item = {fmt::format("item {}", i), {}};
        entry.category = {fmt::format("c{}", i % 10), {}};
        entry.price = money(up_to(1500) + 100);
        entry.sold = Integer(up_to(400));
        menu.items.push_back(std::move(entry));
    }
    menu.fixed_costs = money(250000);
    book.menus.push_back(std::move(menu));
    Diagnostics const found = link(book);
    if (found.has_errors()) {
        std::fputs(render(found, Sources()).c_str(), stderr);
        std::exit(1);
    }
    return book;
}

LinkedBook linked(Book const& book) {
    Diagnostics found;
    return link(book, found).value();
}

void calculate_book(benchmark::State& state) {
    LinkedBook const book = linked(big_book());
    for (auto _ : state) benchmark::DoNotOptimize(Costing(book, date()));
}

void menu_of_5000_items(benchmark::State& state) {
    Book const book = big_book();
    Costing const costing(linked(book), date());
    for (auto _ : state) {
        Diagnostics found;
        auto const cost = cost_menu(costing, book.menus.front(), found);
        if (!cost || cost->lines.size() != item_count || !cost->mix)
            state.SkipWithError("not costed");
        benchmark::DoNotOptimize(cost);
    }
}

void sheet_as_text(benchmark::State& state) {
    Book const book = big_book();
    Costing const costing(linked(book), date());
    Diagnostics found;
    auto const cost = cost_menu(costing, book.menus.front(), found);
    for (auto _ : state) benchmark::DoNotOptimize(to_text(menu_sheet(*cost, costing)));
}

BENCHMARK(calculate_book)->Unit(benchmark::kMillisecond);
BENCHMARK(menu_of_5000_items)->Unit(benchmark::kMillisecond);
BENCHMARK(sheet_as_text)->Unit(benchmark::kMillisecond);

} // namespace

BENCHMARK_MAIN();
