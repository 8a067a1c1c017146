/// groat: what food costs to make, and what to ask for it. This is the front door: what a program calls, in the order
/// in which it calls it. Reading books from YAML is <groat/books/load.hpp> (groat::yaml), JSON is
/// <groat/paper/json.hpp> (groat::json); samples/programs/ holds whole programs.
///
/// Money is exact (a fraction of whole numbers, never floating point) until it is paid or printed, and net of
/// recoverable tax unless a line says otherwise. A function that can fail says why among `found` and then gives nothing;
/// warnings stand there too. What it gives keeps alive what it points to: a quote may outlive its costing and its book.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

struct Book;       // what the books say: plain, filled by `load` or by hand  (groat/model/book.hpp)
class LinkedBook;  // one to cost by: no name is unresolved, no error in it  (model/linked_book.hpp)
class Costing;     // such a book calculated for a day                       (cost/engine.hpp)
class Diagnostics; // errors and warnings, with places and what mends them   (base/diagnostic.hpp)
class Sources;     // the texts that the places point into                   (base/source.hpp)
struct ItemCost;   // price/item_cost.hpp
struct Quote;      // price/quoted.hpp
struct Comparison; // price/compare.hpp
struct MenuCost;   // price/menu.hpp
struct Buying;     // plan/buying.hpp
struct Production; // plan/production.hpp
struct Sheet;      // tables and remarks, to be drawn in any form            (paper/sheet.hpp)

/// Resolves every name in a book. The only ways to a `LinkedBook` are this and `sound_part`, and a `Costing` takes
/// nothing else. For a book that was loaded, `found` is what was found in loading it.
/// Fails    when an error is among `found`, or a name stands for nothing
/// Example  auto const book = groat::link(std::move(loaded.book), loaded.diagnostics);
///          groat::Costing const costing(*book, groat::parse_date("2026-11-25").value());
[[nodiscard]] std::optional<LinkedBook> link(Book book, Diagnostics& found);

/// What is left of a book when everything is taken out that an error stands in or that uses such a thing, however far
/// up: a slip in one file does not hold up the others.
/// Fails    when the error stands in the shop, on which all rests; `book` is then as it was
[[nodiscard]] std::optional<LinkedBook> sound_part(Book&& book);

/// Everything to be mended or looked at on the day of `costing`: formulas that cannot be costed, prices below cost, stale
/// prices, losses and yields unlike those seen, orders and menus that do not pay. Errors tell what cannot be calculated.
[[nodiscard]] Diagnostics check(Costing const& costing);

/// What an item costs by itself in its standard run, and its price by the target of the books. Cost and profit are net of
/// tax, the price is as shown to whoever buys. `sold_as` names the way it is sold; empty: the first one.
/// Fails    when the item is unknown or cannot be costed, or its target cannot be reached
/// Example  groat::cost(costing, "lemon tart", "box of 6", found)->line.price
[[nodiscard]] std::optional<ItemCost> cost(Costing const& costing, std::string_view item,
                                           std::string_view sold_as, Diagnostics& found);

/// What an order costs and what its client is asked for, with tiers, discount, delivery, tax and payments, at the prices of
/// the day of `costing`. Exact up to each price, which is whole coins.
/// Fails    when the order is unknown, something in it cannot be costed, or a target cannot be reached
/// Example  groat::quote(costing, "2026-041", found)->totals.total
[[nodiscard]] std::optional<Quote> quote(Costing const& costing, std::string_view order,
                                         Diagnostics& found);

/// All offers of an ingredient or supply in force on the day, the cheapest per usable unit first: after trimming, and
/// delivered. Exact.
/// Fails    when there is no such thing, or no offer of it in force
[[nodiscard]] std::optional<Comparison> compare(Costing const& costing, std::string_view ingredient,
                                                Diagnostics& found);

/// What each item of a menu costs and earns at its price, what the menu earns as it sells, and break-even. Prices are on
/// the menu's side of tax. `reprice` (groat/price/reprice.hpp) finds the fewest prices to raise for a margin.
/// Fails    when the menu is unknown, an item cannot be costed, or has neither price nor target
[[nodiscard]] std::optional<MenuCost> menu(Costing const& costing, std::string_view name,
                                           Diagnostics& found);

/// The packs that orders take beyond what the shelf holds, at the least outlay, and proof that there is none lower.
/// Fails    when an order is unknown or cannot be costed, or packs and minimum orders leave something short
[[nodiscard]] std::optional<Buying> buy(Costing const& costing,
                                        std::vector<std::string> const& orders, Diagnostics& found);
[[nodiscard]] std::optional<Buying> buy(Costing const& costing,
                                        std::initializer_list<std::string_view> orders,
                                        Diagnostics& found);

/// What is weighed, mixed, baked and packed for orders together, whole pieces and batches, own goods on the shelf first.
/// Fails    when an order is unknown or cannot be made
[[nodiscard]] std::optional<Production> make(Costing const& costing,
                                             std::vector<std::string> const& orders,
                                             Diagnostics& found);

/// A result as a sheet: rounded as it is printed, totals that are the sum of their lines, the exact figure beside each.
/// That of a quote is the maker's worksheet; `sheet_for_client` is what the client may see, which holds no cost.
[[nodiscard]] Sheet sheet_of(ItemCost const& cost, Costing const& costing);
[[nodiscard]] Sheet sheet_of(Quote const& quote, Costing const& costing);
[[nodiscard]] Sheet sheet_for_client(Quote const& quote, Costing const& costing);
[[nodiscard]] Sheet sheet_of(Comparison const& comparison, Costing const& costing);
[[nodiscard]] Sheet sheet_of(MenuCost const& menu, Costing const& costing);
[[nodiscard]] Sheet sheet_of(Buying const& buying, Costing const& costing);
[[nodiscard]] Sheet sheet_of(Production const& plan, Costing const& costing);

/// A sheet drawn: as text in columns (80 wide unless said), as a page of its own that fetches nothing, as Markdown, as
/// CSV. `to_json` is in groat/paper/json.hpp. All of it UTF-8.
[[nodiscard]] std::string to_text(Sheet const& sheet, std::size_t columns);
[[nodiscard]] std::string to_html(Sheet const& sheet);
[[nodiscard]] std::string to_markdown(Sheet const& sheet);
[[nodiscard]] std::string to_csv(Sheet const& sheet);

/// Findings in words, in the order of their places, each with its line of text and what mends it.
[[nodiscard]] std::string render(Diagnostics const& found, Sources const& sources);

} // namespace groat

// ---------------------------------------------------------------------------------------------------

#include <groat/cost/engine.hpp>
#include <groat/model/link.hpp>
#include <groat/model/sound_part.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>
#include <groat/plan/buying_findings.hpp>
#include <groat/plan/production.hpp>
#include <groat/plan/receipt_draft.hpp>
#include <groat/price/item_cost.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/minimum_order.hpp>
#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/price/reprice.hpp>
#include <groat/review/run_findings.hpp>
#include <groat/review/yield_review.hpp>
#include <groat/sheets/buy_sheet.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/compare_sheet.hpp>
#include <groat/sheets/convert_sheet.hpp>
#include <groat/sheets/cost_sheet.hpp>
#include <groat/sheets/import_sheet.hpp>
#include <groat/sheets/label_sheet.hpp>
#include <groat/sheets/make_sheet.hpp>
#include <groat/sheets/menu_sheet.hpp>
#include <groat/sheets/quote_sheet.hpp>
#include <groat/sheets/reprice_sheet.hpp>
#include <groat/sheets/runs_sheet.hpp>
#include <groat/sheets/variance_sheet.hpp>
#include <groat/sheets/whatif_sheet.hpp>
#include <groat/sheets/yield_sheet.hpp>
#include <groat/trial/conversion.hpp>

#ifndef GROAT_COMPILED
#include <groat/door.ipp>
#endif
