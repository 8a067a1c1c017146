#include "session.hpp"

#include <groat/books/import_prices.hpp>
#include <groat/books/load.hpp>
#include <groat/books/write_receipt.hpp>
#include <groat/model/base_links.hpp>
#include <groat/model/sound_part.hpp>
#include <groat/sheets/import_sheet.hpp>

#include <filesystem>
#include <fstream>
#include <optional>

namespace groat::cli {

namespace {

/// The bytes of a file, unless it cannot be read, which is said then. One that is larger than `most` is
/// not read at all: a byte more than that stands for it.
std::optional<std::string> bytes_of(std::string const& name, std::size_t most) {
    namespace fs = std::filesystem;
    auto const fail = [&](std::string const& why) {
        complain(fmt::format("groat: cannot read '{}': {}\n", printable(name), why));
        return std::nullopt;
    };
    std::error_code error;
    fs::file_status const status = fs::status(name, error);
    if (status.type() == fs::file_type::not_found) return fail("there is no such file");
    if (fs::is_directory(status)) return fail("it is a folder");
    if (!fs::is_regular_file(status)) return fail(error ? error.message() : "it is not a file");
    std::uintmax_t const size = fs::file_size(name, error);
    if (error) return fail(error.message());
    if (size > most) return std::string(most + 1, ' ');
    std::ifstream stream(name, std::ios::binary);
    std::string text(static_cast<std::size_t>(size), '\0');
    if (stream) stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!stream) return fail("check who may read it");
    return text;
}

class Import {
public:
    explicit Import(Options const& options) : options_(options) {}

    int run() {
        auto const asked = asked_date(options_);
        if (!asked) return command_line_wrong;
        std::optional<Date> const on = *asked;
        auto map_bytes = bytes_of(options_.map, most_bytes);
        if (!map_bytes || !bytes_of_csv_are_there()) return file_trouble;
        Loaded loaded = load(std::filesystem::path(options_.books), sources_);
        found_.judge(loaded.book.shop.judgement);
        found_.add(loaded.diagnostics);
        if (found_.has_errors()) keep_sound_part(loaded.book);
        Book const& book = loaded.book;
        for (BookPart const part : {BookPart::shop, BookPart::ingredients, BookPart::prices})
            if (book.doubts.any(part)) return give_up(loaded.unreadable);
        errors_read_ = found_.errors_met();
        Reading const reading{found_, book.shop.currency, book.shop.measures};
        ImportMap map = read_map(std::move(*map_bytes), reading);
        if (!has_new_errors()) link_import_map(map, book, found_);
        if (has_new_errors()) return give_up(false);
        if (!map.from) map.from = on.value_or(today());
        auto bytes = bytes_of(options_.subject, most_csv_bytes);
        if (!bytes) return file_trouble;
        auto const file =
            add_csv(sources_, options_.subject, std::move(*bytes), map.encoding, found_);
        if (!file) return give_up(false);
        ImportedPrices imported = groat::import_prices(map, sources_, *file, reading);
        if (has_new_errors()) return give_up(false);
        std::vector<Offer> const offers =
            map.is_receipt ? paid_offers(imported.receipt, book) : imported.list.offers;
        check_packs(offers, book);
        if (has_new_errors()) return give_up(false);
        suggest_supplier(map, book);
        return hand_over(map, imported, offers, book, on.value_or(*map.from));
    }

private:
    /// So that a file that is not there is said before the books are read, and its bytes are not held yet.
    [[nodiscard]] bool bytes_of_csv_are_there() const {
        return bytes_of(options_.subject, 0).has_value();
    }

    ImportMap read_map(std::string bytes, Reading const& reading) {
        if (bytes.starts_with(byte_order_mark)) bytes.erase(0, byte_order_mark.size());
        std::uint32_t const file = sources_.add(options_.map, std::move(bytes));
        std::vector<Node> const documents = read_tree(sources_, file, found_).documents;
        if (has_new_errors()) return {};
        if (documents.empty())
            found_.error(Span{file}, "empty-file", "the map is empty",
                         "it begins with 'supplier: a name'; 'columns:' and 'items:' follow");
        else if (documents.size() > 1)
            found_.error(documents[1].where, "second-document",
                         "a map is one document, but a second one follows here",
                         "put all into one, without ---");
        return documents.size() == 1 ? read_import_map(documents.front(), reading) : ImportMap{};
    }

    static std::vector<Offer> paid_offers(Receipt& receipt, Book const& book) {
        for (std::size_t i = 0; i < book.suppliers.size(); ++i)
            if (book.suppliers[i].name == receipt.supplier.name) receipt.supplier.index = i;
        return offers_of(receipt, book);
    }

    /// A pack that cannot be turned into what its item is then costed by would be of no use in the books.
    void check_packs(std::vector<Offer> const& offers, Book book) {
        book.offers.insert(book.offers.end(), offers.begin(), offers.end());
        link_bases(book);
        for (Offer const& offer : offers)
            if (auto const content = content_of(offer, book.ingredients[offer.item.index]);
                !content)
                found_.error(offer.origin, content.error());
    }

    /// A supplier without offers may be a new one, or a known one misspelt.
    void suggest_supplier(ImportMap const& map, Book const& book) {
        auto const names = names_of(book.suppliers);
        if (std::find(names.begin(), names.end(), map.supplier.name) != names.end()) return;
        if (auto const near = nearest_name(map.supplier.name, names))
            found_.warn(map.supplier.origin, "new-supplier",
                        fmt::format("the books have no offers of '{}' yet", map.supplier.name),
                        fmt::format("did you mean '{}'?", *near));
    }

    int give_up(bool is_unreadable) const {
        complain(render(found_, sources_));
        complain(fmt::format("\ngroat: {} error{}; nothing was imported\n", found_.errors(),
                             found_.errors() == 1 ? "" : "s"));
        return is_unreadable ? file_trouble : books_have_errors;
    }

    int hand_over(ImportMap const& map, ImportedPrices const& imported,
                  std::vector<Offer> const& offers, Book const& book, Date date) {
        ImportReport report{options_.subject, map.supplier.name, map.from, date, offers};
        report.is_receipt = map.is_receipt;
        report.changes = map.is_receipt ? paid_against_list(book, map.supplier.name, offers, date)
                                        : price_changes(book, map.supplier.name, offers, date);
        for (UnmatchedRow const& row : imported.unmatched)
            report.unmatched.push_back({row.where.line, row.code, row.name, row.price});
        report.rows = imported.rows;
        report.ignored = imported.ignored;
        Sheet const sheet = import_sheet(report, book, sources_);
        if (!found_.empty()) complain(render(found_, sources_) + "\n");
        if (!options_.out.empty()) {
            std::string const note = fmt::format("From {}, by groat import.", options_.subject);
            std::string const text = map.is_receipt ? write_receipt(imported.receipt, note)
                                                    : write_price_list(imported.list, note);
            if (int const code = deliver_to(text, options_.out)) return code;
        }
        return deliver_to(drawn(sheet, options_), {});
    }

    int deliver_to(std::string const& text, std::string const& file) const {
        std::string const trouble = deliver(text, file, options_.may_replace);
        if (trouble.empty()) return done;
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }

    Options const& options_;
    [[nodiscard]] bool has_new_errors() const { return found_.errors_met() > errors_read_; }

    Sources sources_;
    Diagnostics found_;
    std::size_t errors_read_ = 0; ///< met in reading the books
};

} // namespace

int import_prices(Options const& options) { return Import(options).run(); }

} // namespace groat::cli
