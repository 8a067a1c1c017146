// What goes to a client is made of a type that has no cost in it; a quote is none.
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/client_quote_sheet.hpp>

groat::Book book;
groat::Quote quote;
groat::Sheet sheet() {
    return groat::client_quote_sheet(groat::quote_for_client(quote, book), book.shop);
}

#if CASE == 1
// refused: invalid initialization of reference
// refused: no matching function for call
// refused: could not convert
// refused: no viable conversion
groat::Sheet of_the_worksheet() { return groat::client_quote_sheet(quote, book.shop); }
#elif CASE == 2
// refused: has no member named 'profit'
// refused: no member named 'profit'
groat::Money earned(groat::ClientQuote const& told) { return told.totals.profit; }
#elif CASE == 3
// refused: has no member named 'burden'
// refused: no member named 'burden'
groat::Money cost(groat::ClientQuote const& told) { return told.lines.front().burden.cost; }
#endif
