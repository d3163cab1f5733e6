#include "scenarios/reference_vines/book.h"

#include <algorithm>
#include <map>
#include <unordered_map>

#include "scenarios/records/table_import.h"

namespace spurwright::reference_vines {
namespace {

using records::Row;
using records::text_or_null;
using records::Value;
using records::value_of;

std::optional<Mass> maybe_mass(const Row& row, std::size_t column) {
    return row.null(column) ? std::nullopt : std::optional(Mass{static_cast<std::int32_t>(row.whole(column))});
}

template <class Tag>
std::optional<std::int64_t> as_count(const std::optional<Measure<Tag>>& measure) {
    if (!measure) return std::nullopt;
    return measure->count;
}

// Texts with numbers in them in the order people count: "2" before "10", "a2" before "a10".
int natural_order(std::string_view a, std::string_view b) {
    const auto digits = [](std::string_view text) { return std::min(text.find_first_not_of("0123456789"), text.size()); };
    while (!a.empty() && !b.empty()) {
        const std::size_t na = digits(a), nb = digits(b);
        if (na > 0 && nb > 0) {
            std::string_view x = a.substr(0, na), y = b.substr(0, nb);
            while (x.size() > 1 && x.front() == '0') x.remove_prefix(1);
            while (y.size() > 1 && y.front() == '0') y.remove_prefix(1);
            if (x.size() != y.size()) return x.size() < y.size() ? -1 : 1;
            if (const int order = x.compare(y)) return order;
            a.remove_prefix(na);
            b.remove_prefix(nb);
        } else {
            if (a.front() != b.front()) return static_cast<unsigned char>(a.front()) < static_cast<unsigned char>(b.front()) ? -1 : 1;
            a.remove_prefix(1);
            b.remove_prefix(1);
        }
    }
    return a.empty() ? (b.empty() ? 0 : -1) : 1;
}

Result<void> read_blocks(records::Store& store, Book& book) {
    return store.each("SELECT id, name, spacing_um, rows_um, formula, invented FROM block ORDER BY name", {}, 6, [&](const Row& row) {
        Block block{row.whole(0), row.text(1), Length{static_cast<std::int32_t>(row.whole(2))}, std::nullopt, row.text(4), row.whole(5) != 0};
        if (!row.null(3)) block.rows = Length{static_cast<std::int32_t>(row.whole(3))};
        book.push_back({std::move(block), {}});
    });
}

} // namespace

bool walked_before(const ReferenceVine& a, const ReferenceVine& b) {
    if (const int order = natural_order(a.row, b.row)) return order < 0;
    if (a.place != b.place) return a.place.value_or(0) < b.place.value_or(0);
    if (const int order = natural_order(a.tag, b.tag)) return order < 0;
    return a.id < b.id;
}

Error unknown_block(const std::string& name, const Book& book) {
    std::vector<std::string_view> names;
    std::string all;
    for (const BlockBook& one : book) {
        names.push_back(one.block.name);
        if (names.size() <= 12) all += (all.empty() ? "" : ", ") + one.block.name; // more than a line holds are not listed
    }
    const std::string_view near = records::nearest(name, names);
    if (!near.empty()) return {Fault::unknown_part, TextKey{"error.book.block-near"}, {{"text", name}, {"near", std::string(near)}}, {"book", 0, 0, 0}};
    if (names.empty()) return {Fault::unknown_part, TextKey{"error.book.no-block"}, {{"text", name}}, {"book", 0, 0, 0}};
    return {Fault::unknown_part, TextKey{"error.book.block"}, {{"text", name}, {"words", std::move(all)}}, {"book", 0, 0, 0}};
}

Result<std::vector<BlockCounts>> block_counts(records::Store& store) {
    Book book;
    if (auto read = read_blocks(store, book); !read) return failure(read.error());
    std::vector<BlockCounts> counts;
    for (BlockBook& one : book) counts.push_back({std::move(one.block), 0, 0, 0, 0});
    const auto of_block = [&](std::int64_t id) { return std::find_if(counts.begin(), counts.end(), [&](const BlockCounts& one) { return one.block.id == id; }); };
    auto vines = store.each("SELECT block, count(*) FROM reference_vine GROUP BY block", {}, 2, [&](const Row& row) { of_block(row.whole(0))->vines = row.whole(1); });
    if (!vines) return failure(vines.error());
    auto weighings = store.each("SELECT block, count(*), min(winter), max(winter) FROM weighing JOIN reference_vine ON reference_vine.id = vine GROUP BY block", {}, 4, [&](const Row& row) {
        const auto at = of_block(row.whole(0));
        at->weighings = row.whole(1);
        at->first_winter = static_cast<int>(row.whole(2));
        at->last_winter = static_cast<int>(row.whole(3));
    });
    if (!weighings) return failure(weighings.error());
    return counts;
}

Result<Book> book_of(records::Store& store, const std::optional<std::string>& block, const std::optional<std::string>& row_name) {
    Book book;
    if (auto read = read_blocks(store, book); !read) return failure(read.error());
    std::int64_t only = 0; // every block
    if (block) {
        const auto at = std::find_if(book.begin(), book.end(), [&](const BlockBook& one) { return one.block.name == *block; });
        if (at == book.end()) return failure(unknown_block(*block, book));
        BlockBook kept = std::move(*at);
        book.clear();
        book.push_back(std::move(kept));
        only = book[0].block.id;
    }
    std::map<std::int64_t, std::size_t> row_of_block;
    for (std::size_t i = 0; i < book.size(); ++i) row_of_block.emplace(book[i].block.id, i);
    std::unordered_map<std::int64_t, std::pair<std::size_t, std::size_t>> row_of_vine;
    auto vines = store.each("SELECT id, block, tag, vine_row, place, latitude_e7, longitude_e7 FROM reference_vine WHERE (?1 = 0 OR block = ?1) AND (?2 IS NULL OR vine_row = ?2) ORDER BY id", {only, value_of(row_name)}, 7, [&](const Row& row) {
        const std::size_t at = row_of_block.at(row.whole(1));
        row_of_vine.emplace(row.whole(0), std::pair(at, book[at].vines.size()));
        book[at].vines.push_back({row.whole(0), row.text(2), row.text(3), row.maybe_whole(4), row.maybe_whole(5), row.maybe_whole(6), {}});
    });
    if (!vines) return failure(vines.error());
    auto weighings = store.each(
        "SELECT vine, winter, mass_mg, typed, day, canes, buds, crop_mg, crop_typed, note FROM weighing WHERE ?1 = 0 OR vine IN (SELECT id FROM reference_vine WHERE block = ?1 AND (?2 IS NULL OR vine_row = ?2)) "
        "ORDER BY vine, winter",
        {only, value_of(row_name)}, 10, [&](const Row& row) {
            const auto [at, vine] = row_of_vine.at(row.whole(0));
            book[at].vines[vine].winters.push_back({static_cast<int>(row.whole(1)), Mass{static_cast<std::int32_t>(row.whole(2))}, row.text(3), row.text(4), row.maybe_whole(5),
                                                    row.maybe_whole(6), maybe_mass(row, 7), row.text(8), row.text(9)});
        });
    if (!weighings) return failure(weighings.error());
    for (BlockBook& one : book) std::stable_sort(one.vines.begin(), one.vines.end(), walked_before);
    return book;
}

Result<void> may_be_named(const std::string& block) {
    const bool printable = std::none_of(block.begin(), block.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
    if (!block.empty() && block.front() != ' ' && block.back() != ' ' && block.size() <= longest_block_name && printable && !io::looks_like_formula(block)) return {};
    return failure({Fault::bad_text, TextKey{"error.book.block-name"}, {{"most", Count{static_cast<std::int64_t>(longest_block_name)}}}, {"book block", 0, 0, 0}});
}

Result<void> put_block(records::Store& store, Block& block) {
    const Value rows = value_of(as_count(block.rows)), formula = text_or_null(block.formula);
    if (block.id != 0)
        return store.run("UPDATE block SET name = ?2, spacing_um = ?3, rows_um = ?4, formula = ?5, invented = ?6 WHERE id = ?1",
                         {block.id, block.name, std::int64_t{block.spacing.count}, rows, formula, std::int64_t{block.invented}});
    auto done = store.run("INSERT INTO block(name, spacing_um, rows_um, formula, invented) VALUES(?1, ?2, ?3, ?4, ?5)",
                          {block.name, std::int64_t{block.spacing.count}, rows, formula, std::int64_t{block.invented}});
    if (done) block.id = store.last_number();
    return done;
}

Result<void> put_vine(records::Store& store, std::int64_t block, ReferenceVine& vine) {
    if (vine.id != 0)
        return store.run("UPDATE reference_vine SET tag = ?2, vine_row = ?3, place = ?4, latitude_e7 = ?5, longitude_e7 = ?6 WHERE id = ?1",
                         {vine.id, vine.tag, vine.row, value_of(vine.place), value_of(vine.latitude_e7), value_of(vine.longitude_e7)});
    auto done = store.run("INSERT INTO reference_vine(block, tag, vine_row, place, latitude_e7, longitude_e7) VALUES(?1, ?2, ?3, ?4, ?5, ?6)",
                          {block, vine.tag, vine.row, value_of(vine.place), value_of(vine.latitude_e7), value_of(vine.longitude_e7)});
    if (done) vine.id = store.last_number();
    return done;
}

Result<void> put_weighing(records::Store& store, std::int64_t vine, const Weighing& w) {
    return store.run("INSERT INTO weighing VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10) ON CONFLICT(vine, winter) DO UPDATE SET mass_mg = excluded.mass_mg, typed = excluded.typed, "
                     "day = excluded.day, canes = excluded.canes, buds = excluded.buds, crop_mg = excluded.crop_mg, crop_typed = excluded.crop_typed, note = excluded.note",
                     {vine, std::int64_t{w.winter}, std::int64_t{w.prunings.count}, w.typed, text_or_null(w.day), value_of(w.canes), value_of(w.buds), value_of(as_count(w.crop)), text_or_null(w.crop_typed), w.note});
}

} // namespace spurwright::reference_vines
