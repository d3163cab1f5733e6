// Tables of weighings: whatever the bytes, every row is good or refused with its line and a reason, and what is written of
// the good ones reads back the same.
#include "scenarios/reference_vines/book_export.h"
#include "scenarios/reference_vines/book_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;
using namespace spurwright::reference_vines;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Book book{{{1, "north", from_mm(1800), std::nullopt, "", false}, {}}, {{2, "south", from_mm(1500), std::nullopt, "", false}, {}}};
    ReferenceVine known{1, "12", "3", 5, std::nullopt, std::nullopt, {{2024, from_g(900), "900 g", "2024-02-01", 2, 24, std::nullopt, "", "note"}}};
    book[0].vines.push_back(known);
    const records::Day today{2026, 2, 1};
    const auto file = read_book_file(fuzz::text(data, size), "book.csv", book, today);
    if (!file) {
        SPURWRIGHT_CHECK(file.error().where.source, ==, std::string("book.csv"));
        SPURWRIGHT_CHECK(file.error().where.line, >=, 1);
        return 0;
    }
    for (const records::RefusedRow& row : file->refused) {
        SPURWRIGHT_CHECK(row.line, >=, 2);
        SPURWRIGHT_CHECK(row.reason.name.empty(), ==, false);
    }
    SPURWRIGHT_CHECK(file->counts.added + file->counts.changed + file->counts.same, ==, static_cast<std::int64_t>(file->rows.size()));
    // The book as it would be, written and read again.
    Book after = book;
    std::vector<std::pair<std::size_t, std::size_t>> places;
    for (const NamedVine& named : file->vines) {
        auto& vines = after[named.block].vines;
        std::size_t at = 0;
        while (at < vines.size() && vines[at].tag != named.vine.tag) ++at;
        if (at == vines.size()) vines.push_back({});
        std::vector<Weighing> winters = std::move(vines[at].winters);
        vines[at] = named.vine;
        vines[at].winters = std::move(winters);
        places.emplace_back(named.block, at);
    }
    for (const BookRow& row : file->rows) {
        const Weighing& w = row.weighing;
        SPURWRIGHT_CHECK(w.prunings.count, >=, from_g(1000 * least_kg).count);
        SPURWRIGHT_CHECK(w.prunings.count, <=, from_g(1000 * most_kg).count);
        SPURWRIGHT_CHECK(w.winter, >=, first_winter);
        SPURWRIGHT_CHECK(w.winter, <=, 2026);
        auto& winters = after[places[row.vine].first].vines[places[row.vine].second].winters;
        std::erase_if(winters, [&](const Weighing& old) { return old.winter == w.winter; });
        winters.push_back(w);
    }
    const auto again = read_book_file(book_csv(after).text, "again.csv", after, today);
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK(again->refused.size(), ==, std::size_t{0});
    SPURWRIGHT_CHECK(again->counts.added + again->counts.changed, ==, std::int64_t{0});
    return 0;
}
