#include "scenarios/reference_vines/book_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <charconv>
#include <map>

#include "scenarios/io/utf8.h"
#include "scenarios/records/act.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/spread.h"

namespace spurwright::reference_vines {
namespace {

using records::ColumnName;
using records::Columns;
using records::Day;
using records::RowFate;
using records::RowReader;

enum BookColumn : std::size_t { block_at, row_at, tag_at, place_at, winter_at, date_at, weight_at, canes_at, buds_at, crop_at, latitude_at, longitude_at, note_at };

const std::vector<ColumnName>& book_columns() {
    static const std::vector<ColumnName> columns{{"block", {"bloque", "cuadro", "cuartel", "parcela"}, true},
                                                 {"row", {"surco", "fila", "hilera"}, false},
                                                 {"tag", {"marca", "etiqueta"}, true},
                                                 {"place", {"lugar"}, false},
                                                 {"winter", {"invierno"}, true},
                                                 {"date", {"fecha"}, false},
                                                 {"weight_kg", {"weight", "weight_g", "weight_lb", "peso", "peso_kg", "peso_g", "peso_lb"}, true},
                                                 {"canes", {"varas"}, false},
                                                 {"buds", {"yemas"}, false},
                                                 {"crop_kg", {"crop", "crop_g", "crop_lb", "cosecha", "cosecha_kg", "cosecha_g", "cosecha_lb"}, false},
                                                 {"latitude", {"latitud"}, false},
                                                 {"longitude", {"longitud"}, false},
                                                 {"note", {"nota"}, false}};
    return columns;
}

struct WeightUnit {
    std::string_view name;
    double kg;
};
constexpr std::array<WeightUnit, 3> weight_units{{{"kg", 1}, {"g", 0.001}, {"lb", balance::kg_per_lb}}};

const WeightUnit* unit_named(std::string_view name) {
    for (const WeightUnit& unit : weight_units)
        if (unit.name == name) return &unit;
    return nullptr;
}

// One column of weights: its unit is its heading's, or that of the first cell.
struct WeightColumn {
    std::size_t column;
    double least, most; // kg
    const WeightUnit* unit = nullptr;
    int unit_line = 0; // 1: the heading's
};

struct ReadWeight {
    Mass mass{};
    std::string typed;
};

WeightColumn weight_column(const Columns& columns, std::size_t column, double least, double most) {
    WeightColumn weights{column, least, most};
    const std::string& heading = columns.heading(column);
    if (const auto dash = heading.rfind('_'); dash != std::string::npos) weights.unit = unit_named(std::string_view(heading).substr(dash + 1));
    if (weights.unit) weights.unit_line = 1;
    return weights;
}

// Nothing where the cell is empty or refused.
std::optional<ReadWeight> read_weight(RowReader& cells, const io::CsvRow& row, const Columns& columns, WeightColumn& weights) {
    const std::string_view cell = columns.cell(row, weights.column);
    if (cell.empty()) return std::nullopt;
    const std::string shown(cell.substr(0, 40));
    const auto no = [&](std::string_view key, Arguments more = {}) -> std::optional<ReadWeight> {
        more.insert(more.begin(), {"text", shown});
        cells.refuse(weights.column, key, std::move(more));
        return std::nullopt;
    };
    if (!io::is_utf8(cell)) {
        cells.refuse(weights.column, "error.import.not-utf8");
        return std::nullopt;
    }
    double value = 0;
    const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    std::string_view rest(end, static_cast<std::size_t>(cell.data() + cell.size() - end));
    if (fault == std::errc::invalid_argument) return no(io::looks_like_formula(cell) ? "error.import.formula" : "error.import.number");
    if (fault == std::errc{} && std::isnan(value)) return no("error.import.number");
    if (fault != std::errc{} || !std::isfinite(value)) return no("error.value.huge");
    if (rest.starts_with(',')) return no("error.value.comma");
    while (rest.starts_with(' ')) rest.remove_prefix(1);
    const WeightUnit* unit = rest.empty() ? nullptr : unit_named(rest);
    if (!rest.empty() && !unit) return no("error.value.mass");
    if (weights.unit && unit && unit != weights.unit)
        return no("error.book.mixed-units", {{"unit", std::string(weights.unit->name)}, {"line", std::to_string(weights.unit_line)}});
    if (!weights.unit && !unit) return no("error.value.no-mass-unit");
    if (!unit && weights.unit_line > 1) return no("error.value.no-mass-unit"); // cells that carry their unit all do
    if (value < 0) return no("error.value.negative");
    const WeightUnit& meant = unit ? *unit : *weights.unit;
    const double kg = value * meant.kg;
    if (kg < weights.least) return no(value == 0 ? "error.book.zero" : "error.book.light", {{"low", from_g(1000 * weights.least)}});
    if (kg > weights.most) return no("error.book.heavy", {{"high", from_g(1000 * weights.most)}});
    if (!weights.unit) weights.unit = unit, weights.unit_line = row.line;
    std::string number(cell.substr(0, static_cast<std::size_t>(end - cell.data())));
    return ReadWeight{from_g(1000 * kg), number + " " + std::string(meant.name)};
}

std::int64_t in_e7(double degrees) { return std::llround(degrees * 1e7); }

bool same_weighing(const Weighing& a, const Weighing& b) {
    return a.prunings == b.prunings && a.day == b.day && a.canes == b.canes && a.buds == b.buds && a.crop == b.crop && a.note == b.note;
}

class BookRows {
public:
    BookRows(const Book& book, const Columns& columns, const Day& today)
        : book_(book), columns_(columns), today_(today), weight_(weight_column(columns, weight_at, least_kg, most_kg)), crop_(weight_column(columns, crop_at, 0, most_crop_kg)) {
        for (std::size_t b = 0; b < book.size(); ++b) {
            blocks_.emplace(book[b].block.name, b);
            for (const ReferenceVine& vine : book[b].vines) known_.emplace(std::pair(b, vine.tag), &vine);
        }
    }

    void take(const io::CsvRow& row, BookFile& file) {
        RowReader cells(row, columns_);
        BookRow read;
        read.line = row.line;
        if (!cells.refused()) read_row(cells, row, file, read);
        if (cells.refused()) {
            file.refused.push_back(cells.refusal());
            return;
        }
        file.counts.count(read.fate);
        file.rows.push_back(std::move(read));
    }

private:
    void read_row(RowReader& cells, const io::CsvRow& row, BookFile& file, BookRow& read) {
        const std::string block = cells.text(block_at), tag = cells.text(tag_at);
        if (block.empty()) cells.refuse(block_at, "error.import.missing");
        if (tag.empty()) cells.refuse(tag_at, "error.import.missing");
        const auto at = blocks_.find(block);
        if (!cells.refused() && at == blocks_.end()) {
            const Error error = unknown_block(block, book_);
            cells.refuse(block_at, error.key.name, error.arguments);
        }
        if (cells.refused()) return;
        read.block = at->second;
        ReferenceVine vine;
        const auto known = known_.find(std::pair(read.block, tag));
        if (known != known_.end()) {
            vine = *known->second;
            vine.winters.clear();
        }
        const bool is_new = known == known_.end();
        const ReferenceVine before = vine;
        vine.tag = tag;
        read_place(cells, vine);
        read_weighing(cells, row, known == known_.end() ? nullptr : known->second, read.weighing);
        if (cells.refused()) return;
        if (!vine_of_row(cells, row, std::move(vine), before, is_new, file, read)) return;
        const auto [twice, first] = lines_.emplace(std::pair(read.vine, read.weighing.winter), row.line);
        if (!first) {
            cells.refuse(tag_at, "error.book.twice", {{"text", tag}, {"winter", std::to_string(read.weighing.winter)}, {"line", std::to_string(twice->second)}});
            return;
        }
        const Weighing* old = is_new ? nullptr : weighing_in(*known->second, read.weighing.winter);
        const bool moved = file.vines[read.vine].changed && file.vines[read.vine].line == row.line;
        read.fate = !old ? RowFate::added : same_weighing(*old, read.weighing) && !moved ? RowFate::same : RowFate::changed;
    }

    static const Weighing* weighing_in(const ReferenceVine& vine, int winter) {
        for (const Weighing& weighing : vine.winters)
            if (weighing.winter == winter) return &weighing;
        return nullptr;
    }

    void read_place(RowReader& cells, ReferenceVine& vine) {
        if (cells.given(row_at)) {
            const std::string row = cells.text(row_at);
            if (!vine.row.empty() && row != vine.row) cells.refuse(row_at, "error.book.other-place", {{"text", vine.tag}, {"where", vine.row}});
            vine.row = row;
        }
        if (const auto place = cells.whole(place_at, 1, 100'000)) {
            if (vine.place && *place != *vine.place) cells.refuse(place_at, "error.book.other-place", {{"text", vine.tag}, {"where", std::to_string(*vine.place)}});
            vine.place = place;
        }
        const auto latitude = cells.number(latitude_at, -90, 90), longitude = cells.number(longitude_at, -180, 180);
        if (latitude && longitude) {
            vine.latitude_e7 = in_e7(*latitude);
            vine.longitude_e7 = in_e7(*longitude);
        } else if (latitude || longitude)
            cells.refuse(latitude ? longitude_at : latitude_at, "error.import.missing");
    }

    void read_weighing(RowReader& cells, const io::CsvRow& row, const ReferenceVine* known, Weighing& w) {
        const int newest = winter_of(today_);
        const auto winter = cells.whole(winter_at, first_winter, newest);
        if (!winter) cells.refuse(winter_at, "error.import.missing");
        if (cells.refused()) return;
        if (known)
            if (const Weighing* old = weighing_in(*known, static_cast<int>(*winter))) w = *old; // what a file lacks it does not change
        w.winter = static_cast<int>(*winter);
        if (const auto day = cells.day(date_at)) {
            if (*day > today_) cells.refuse(date_at, "error.book.future", {{"text", day_text(*day)}});
            else if (winter_of(*day) != w.winter)
                cells.refuse(date_at, "error.book.other-winter", {{"text", day_text(*day)}, {"winter", std::to_string(w.winter)}, {"before", std::to_string(w.winter - 1)}});
            w.day = day_text(*day);
        }
        const auto weight = read_weight(cells, row, columns_, weight_);
        if (!weight) return cells.refuse(weight_at, "error.import.missing");
        w.prunings = weight->mass;
        w.typed = weight->typed;
        if (const auto canes = cells.whole(canes_at, 0, 200)) w.canes = canes;
        if (const auto buds = cells.whole(buds_at, 0, 2'000)) w.buds = buds;
        if (const auto crop = read_weight(cells, row, columns_, crop_)) {
            w.crop = crop->mass;
            w.crop_typed = crop->typed;
        }
        if (cells.given(note_at)) w.note = cells.text(note_at);
    }

    // The vine's row in the file's list; false where the file itself puts it in two places.
    bool vine_of_row(RowReader& cells, const io::CsvRow& row, ReferenceVine vine, const ReferenceVine& before, bool is_new, BookFile& file, BookRow& read) {
        const auto [at, first] = named_.emplace(std::pair(read.block, vine.tag), file.vines.size());
        read.vine = at->second;
        const auto differs = [](const ReferenceVine& a, const ReferenceVine& b) {
            return a.row != b.row || a.place != b.place || a.latitude_e7 != b.latitude_e7 || a.longitude_e7 != b.longitude_e7;
        };
        if (first) {
            const bool changed = !is_new && differs(vine, before);
            file.vines.push_back({read.block, std::move(vine), changed, row.line});
            return true;
        }
        NamedVine& named = file.vines[read.vine];
        // Cells left empty say nothing; what is said twice must agree.
        if (!cells.given(row_at)) vine.row = named.vine.row;
        if (!cells.given(place_at)) vine.place = named.vine.place;
        if (!cells.given(latitude_at)) vine.latitude_e7 = named.vine.latitude_e7, vine.longitude_e7 = named.vine.longitude_e7;
        if (!differs(vine, named.vine)) return true;
        const bool only_more = (named.vine.row.empty() || vine.row == named.vine.row) && (!named.vine.place || vine.place == named.vine.place) &&
                               (!named.vine.latitude_e7 || (vine.latitude_e7 == named.vine.latitude_e7 && vine.longitude_e7 == named.vine.longitude_e7));
        if (!only_more) {
            cells.refuse(tag_at, "error.book.tag-twice", {{"text", vine.tag}, {"line", std::to_string(named.line)}});
            return false;
        }
        named.vine = std::move(vine);
        named.changed = named.changed || !is_new;
        return true;
    }

    const Book& book_;
    const Columns& columns_;
    Day today_;
    WeightColumn weight_, crop_;
    std::map<std::string, std::size_t, std::less<>> blocks_;
    std::map<std::pair<std::size_t, std::string>, const ReferenceVine*> known_;
    std::map<std::pair<std::size_t, std::string>, std::size_t> named_;
    std::map<std::pair<std::size_t, int>, int> lines_; // vine and winter, where they stood first
};

// Which of the new weights stand apart: from the vine's other winters where there are enough, else from the block's other
// vines in that winter.
class OddWeights {
public:
    OddWeights(const Book& book, const BookFile& file) : book_(book), file_(file) {
        std::map<std::pair<std::size_t, int>, std::vector<double>> of_winter;
        const auto put = [&](std::size_t block, const std::string& tag, const Weighing& w) {
            of_vine_[{block, tag}].push_back(w.prunings.count);
            of_winter[{block, w.winter}].push_back(w.prunings.count);
        };
        for (std::size_t b = 0; b < book.size(); ++b)
            for (const ReferenceVine& vine : book[b].vines)
                for (const Weighing& w : vine.winters) put(b, vine.tag, w);
        for (const BookRow& row : file.rows)
            if (row.fate == RowFate::added) put(row.block, file.vines[row.vine].vine.tag, row.weighing);
        for (auto& [winter, weights] : of_winter) winters_.emplace(winter, balance::middle_of(std::move(weights)));
    }

    std::vector<OddWeight> found() const {
        std::vector<OddWeight> odd;
        for (const BookRow& row : file_.rows) {
            if (row.fate == RowFate::same) continue;
            const std::string& tag = file_.vines[row.vine].vine.tag;
            const balance::Middle own = others(of_vine_.at({row.block, tag}), row.weighing);
            const bool of_vine = own.n >= balance::fewest_to_compare;
            const balance::Middle& compared = of_vine ? own : winters_.at({row.block, row.weighing.winter});
            if (!balance::is_odd(row.weighing.prunings.count, compared)) continue;
            odd.push_back({row.line, book_[row.block].block.name, tag, row.weighing.winter, row.weighing.prunings, Mass{rounded(compared.median)}, of_vine});
        }
        return odd;
    }

private:
    // All but this one: one value of its size is taken out.
    static balance::Middle others(std::vector<double> all, const Weighing& w) {
        const auto at = std::find(all.begin(), all.end(), static_cast<double>(w.prunings.count));
        if (at != all.end()) all.erase(at);
        return balance::middle_of(std::move(all));
    }

    const Book& book_;
    const BookFile& file_;
    std::map<std::pair<std::size_t, std::string>, std::vector<double>> of_vine_;
    std::map<std::pair<std::size_t, int>, balance::Middle> winters_;
};

} // namespace

int winter_of(const Day& day) { return day.month >= 10 ? day.year + 1 : day.year; }

Result<BookFile> read_book_file(std::string_view text, const std::string& source, const Book& book, const Day& today) {
    auto reader = io::CsvReader::of(text, source);
    if (!reader) return failure(reader.error());
    const auto columns = Columns::of(reader->headings(), book_columns(), source);
    if (!columns) return failure(columns.error());
    BookFile file;
    file.heading = reader->heading_line();
    BookRows rows(book, *columns, today);
    io::CsvRow row;
    while (true) {
        const auto there = reader->next(row);
        if (!there) return failure(there.error());
        if (!*there) break;
        if (file.rows.size() + file.refused.size() == most_book_rows)
            return failure({Fault::bad_file, TextKey{"error.import.many"}, {{"most", Count{static_cast<std::int64_t>(most_book_rows)}}}, {source, row.line, 0, 0}});
        rows.take(row, file);
    }
    file.odd = OddWeights(book, file).found();
    return file;
}

Result<void> take_in(records::Store& store, const Book& book, const BookFile& file, const std::string& when_utc) {
    if (file.counts.added + file.counts.changed == 0) return {};
    const auto act = records::Act::begin(store, "book-import", when_utc);
    if (!act) return failure(act.error());
    std::vector<std::int64_t> ids(file.vines.size());
    for (std::size_t i = 0; i < file.vines.size(); ++i) {
        ReferenceVine vine = file.vines[i].vine;
        if (vine.id == 0 || file.vines[i].changed)
            if (auto done = put_vine(store, book[file.vines[i].block].block.id, vine); !done) return done;
        ids[i] = vine.id;
    }
    for (const BookRow& row : file.rows)
        if (row.fate != RowFate::same)
            if (auto done = put_weighing(store, ids[row.vine], row.weighing); !done) return done;
    return (*act)->commit();
}

Result<BookFile> take_in_block(records::Store& store, Block block, std::string_view csv, const std::string& source, const records::Day& today, const std::string& when_utc) {
    auto book = book_of(store);
    if (!book) return failure(book.error());
    const bool there = std::any_of(book->begin(), book->end(), [&](const BlockBook& one) { return one.block.name == block.name; });
    if (!there) {
        const auto act = records::Act::begin(store, "book-block", when_utc);
        if (!act) return failure(act.error());
        if (auto done = put_block(store, block); !done) return failure(done.error());
        if (auto done = (*act)->commit(); !done) return failure(done.error());
        book = book_of(store);
        if (!book) return failure(book.error());
    }
    auto file = read_book_file(csv, source, *book, today);
    if (!file) return failure(file.error());
    if (auto done = take_in(store, *book, *file, when_utc); !done) return failure(done.error());
    return file;
}

} // namespace spurwright::reference_vines
