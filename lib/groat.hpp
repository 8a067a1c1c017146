/// groat: food cost and pricing. Everything that calculates and everything that draws as text; reading books from
/// YAML is groat/books/load.hpp, drawing JSON is groat/paper/json.hpp.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/model/link.hpp>
#include <groat/paper/text.hpp>
#include <groat/plan/production.hpp>
#include <groat/plan/receipt_draft.hpp>
#include <groat/price/item_cost.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/quote.hpp>
#include <groat/price/reprice.hpp>
#include <groat/sheets/buy_sheet.hpp>
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
