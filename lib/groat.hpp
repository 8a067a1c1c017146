/// groat: food cost and pricing. Everything that reckons and everything that draws as text; reading books from
/// YAML is groat/yaml/load.hpp, drawing JSON is groat/paper/json.hpp.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/model/link.hpp>
#include <groat/paper/buy_sheet.hpp>
#include <groat/paper/compare_sheet.hpp>
#include <groat/paper/convert_sheet.hpp>
#include <groat/paper/cost_sheet.hpp>
#include <groat/paper/import_sheet.hpp>
#include <groat/paper/label_sheet.hpp>
#include <groat/paper/make_sheet.hpp>
#include <groat/paper/menu_sheet.hpp>
#include <groat/paper/quote_sheet.hpp>
#include <groat/paper/reprice_sheet.hpp>
#include <groat/paper/runs_sheet.hpp>
#include <groat/paper/text.hpp>
#include <groat/paper/variance_sheet.hpp>
#include <groat/paper/whatif_sheet.hpp>
#include <groat/paper/yield_sheet.hpp>
#include <groat/trade/conversion.hpp>
#include <groat/trade/item_cost.hpp>
#include <groat/trade/menu.hpp>
#include <groat/trade/production.hpp>
#include <groat/trade/quote.hpp>
#include <groat/trade/receipt_draft.hpp>
#include <groat/trade/reprice.hpp>
