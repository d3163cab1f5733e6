// book compare: a block's winters side by side, what changed and with what doubt.

#include "scenarios/commands/compare_lines.h"
#include "scenarios/commands/compare_wish.h"
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/spread_object.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/reference_vines/compare.h"
#include "scenarios/words/layout.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {
namespace {

using namespace reference_vines;

io::Json winter_object(const WinterSummary& winter) {
    io::Json o = io::Json::object();
    o.set("winter", winter.winter);
    o.set("kg", vine_spread_object(winter.kg));
    o.set("kg_per_m", vine_spread_object(winter.kg_per_m));
    io::Json classes = io::Json::object();
    for (std::size_t i = 0; i < winter.classes.size(); ++i) classes.set(words_of(balance::SizeClass{})[i], winter.classes[i]);
    o.set("classes", std::move(classes));
    for (const auto set : {balance::SizeSet::cool, balance::SizeSet::warm})
        o.set("class_" + std::string(word_of(set)), std::string(word_of(balance::size_class(winter.kg_per_m.median, set))));
    o.set("buds_per_kg", vine_spread_object(winter.buds_a_kg));
    o.set("crop_to_prunings", vine_spread_object(winter.crop_ratio));
    o.set("half_width_kg", winter.kg.n >= 2 ? io::Json::number(winter.half_width, 6) : io::Json());
    o.set("vines_for_precision", winter.vines_for_wish > 0 ? io::Json(winter.vines_for_wish) : io::Json());
    o.set("vines_if_known", winter.vines_for_wish > 0 ? io::Json::number(winter.vines_if_known, 2) : io::Json());
    return o;
}

io::Json change_object(const WinterChange& change) {
    io::Json o = io::Json::object();
    o.set("from", change.from);
    o.set("to", change.to);
    o.set("pairs", change.kg.pairs);
    o.set("mean_kg", io::Json::number(change.kg.mean, 6));
    o.set("share", io::Json::number(change.share, 4));
    const bool tested = change.kg.tested;
    o.set("low_kg", tested ? io::Json::number(change.kg.low, 6) : io::Json());
    o.set("high_kg", tested ? io::Json::number(change.kg.high, 6) : io::Json());
    o.set("t", tested ? io::Json::number(change.kg.t, 6) : io::Json());
    o.set("p", tested ? io::Json::number(change.kg.p, 9) : io::Json());
    o.set("vines_to_see", tested ? io::Json(change.vines_to_see) : io::Json());
    return o;
}

io::Json history_object(const std::optional<balance::OwnHistory>& history) {
    if (!history) return {};
    io::Json o = io::Json::object();
    o.set("years", history->years);
    o.set("low", io::Json::number(history->low, 3));
    o.set("median", io::Json::number(history->median, 3));
    o.set("high", io::Json::number(history->high, 3));
    return o;
}

io::Json line_object(const balance::LineFit& line) {
    if (!line.fitted) return {};
    io::Json o = io::Json::object();
    o.set("points", line.points);
    o.set("kg_per_bud", io::Json::number(line.slope, 6));
    o.set("low", io::Json::number(line.slope_low, 6));
    o.set("high", io::Json::number(line.slope_high, 6));
    o.set("r", io::Json::number(line.r, 4));
    o.set("p", io::Json::number(line.p, 9));
    return o;
}

io::Json row_object(const RowSummary& row) {
    io::Json o = io::Json::object();
    o.set("row", row.row);
    o.set("first_winter", row.first);
    o.set("last_winter", row.last);
    o.set("kg", vine_spread_object(row.kg));
    o.set("buds", vine_spread_object(row.buds));
    o.set("pairs", row.since.pairs);
    o.set("mean_kg", io::Json::number(row.since.mean, 6));
    o.set("low_kg", row.since.tested ? io::Json::number(row.since.low, 6) : io::Json());
    o.set("high_kg", row.since.tested ? io::Json::number(row.since.high, 6) : io::Json());
    o.set("p", row.since.tested ? io::Json::number(row.since.p, 9) : io::Json());
    return o;
}

io::Json difference_object(const RowDifference& rows) {
    io::Json o = io::Json::object();
    o.set("first", rows.first);
    o.set("second", rows.second);
    o.set("mean_kg", io::Json::number(rows.kg.mean, 6));
    o.set("low_kg", rows.kg.tested ? io::Json::number(rows.kg.low, 6) : io::Json());
    o.set("high_kg", rows.kg.tested ? io::Json::number(rows.kg.high, 6) : io::Json());
    o.set("p", rows.kg.tested ? io::Json::number(rows.kg.p, 9) : io::Json());
    return o;
}

std::string text_of(const CompareLines& lines, const BlockComparison& compared, const words::Words& words) {
    const auto table = [](const std::vector<std::vector<std::string>>& rows, bool first_is_text) {
        words::Table laid;
        laid.rows = rows;
        laid.right.assign(rows.front().size(), true);
        laid.right.front() = !first_is_text;
        return words::table_text(laid);
    };
    const auto wrapped = [](const std::vector<std::string>& sentences) {
        std::string text;
        for (const std::string& one : sentences) text += words::wrapped(one);
        return text;
    };
    std::string text = lines.head + "\n";
    if (compared.block.invented) text += words::wrapped(words("book.invented-line"));
    if (compared.winters.empty()) return text + wrapped(lines.about_winters);
    text += "\n" + table(lines.winters, false) + wrapped(lines.about_winters) + "\n";
    if (!lines.changes.empty()) {
        text += words("book.changes-head") + "\n";
        for (const std::string& change : lines.changes) text += words::hanging("", change, 2);
        text += wrapped(lines.about_changes);
    }
    if (!lines.rows.empty()) text += "\n" + words("book.rows-head") + "\n" + table(lines.rows, true) + wrapped(lines.about_rows) + "\n";
    return text + wrapped(lines.sizes) + wrapped(lines.relations);
}

io::Json vines_object(const BlockBook& book) {
    io::Json list = io::Json::list();
    for (const ReferenceVine& vine : book.vines) {
        io::Json winters = io::Json::list();
        for (const Weighing& w : vine.winters) {
            io::Json one = io::Json::object();
            one.set("winter", w.winter);
            one.set("kg", io::Json::decimal(w.prunings.count, 6));
            one.set("typed", w.typed);
            one.set("buds", w.buds ? io::Json(*w.buds) : io::Json());
            winters.push(std::move(one));
        }
        io::Json o = io::Json::object();
        o.set("tag", vine.tag);
        o.set("row", vine.row);
        o.set("place", vine.place ? io::Json(*vine.place) : io::Json());
        o.set("winters", std::move(winters));
        list.push(std::move(o));
    }
    return list;
}

std::string vines_text(const BlockBook& book, const words::Words& words) {
    words::Table table;
    table.right = {false, false, true, false};
    table.rows.push_back({words("book.row"), words("book.tag"), words("book.place"), words("book.weights")});
    for (const ReferenceVine& vine : book.vines) {
        std::string weights;
        for (const Weighing& w : vine.winters) weights += (weights.empty() ? "" : "  ") + std::to_string(w.winter) + " " + kg_column(w.prunings.count / 1e6, words);
        table.rows.push_back({vine.row, vine.tag, vine.place ? std::to_string(*vine.place) : "-", std::move(weights)});
    }
    return "\n" + words::table_text(table);
}

Result<Answer> answer_book_compare(const Asked& asked, const Surroundings& around) {
    const auto wish = compare_wish(asked);
    if (!wish) return failure(wish.error());
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return failure(unknown_block(asked.subject, {}));
    auto book = book_of(**store, asked.subject, wish->row);
    if (!book) return failure(book.error());
    BlockBook shown; // every vine's weights, where they are asked for
    if (asked.has("--vines")) shown = book->front();
    const BlockComparison compared = compare(std::move(book->front()), *wish);
    if (wish->row && compared.vines == 0) return failure(refusal(Fault::unknown_part, "error.book.no-row", {{"text", *wish->row}}, "--row"));
    Answer answer;
    io::Json& o = answer.object;
    o.set("block", compared.block.name);
    o.set("invented", compared.block.invented);
    o.set("row", wish->row ? io::Json(*wish->row) : io::Json());
    o.set("vines", compared.vines);
    o.set("confidence", io::Json::number(wish->confidence, 2));
    o.set("within", io::Json::number(wish->within, 2));
    io::Json winters = io::Json::list(), changes = io::Json::list();
    for (const WinterSummary& winter : compared.winters) winters.push(winter_object(winter));
    for (const WinterChange& change : compared.changes) changes.push(change_object(change));
    o.set("winters", std::move(winters));
    o.set("changes", std::move(changes));
    io::Json rows = io::Json::list();
    for (const RowSummary& row : compared.rows) rows.push(row_object(row));
    o.set("rows", std::move(rows));
    io::Json differences = io::Json::list();
    for (const RowDifference& one : compared.row_differences) differences.push(difference_object(one));
    o.set("row_differences", std::move(differences));
    o.set("next_by_buds", line_object(compared.next_by_buds));
    o.set("history", history_object(compared.history));
    answer.text = text_of(compare_lines(compared, *wish, around.words), compared, around.words);
    if (asked.has("--vines")) {
        o.set("by_vine", vines_object(shown));
        answer.text += vines_text(shown, around.words);
    }
    return answer;
}

} // namespace

Verb book_compare_verb() {
    return {"book compare", "BLOCK", TextKey{"verb.book-compare"},
            {{"--row", "NAME", TextKey{"option.block-row"}},
             {"--from", "WINTER", TextKey{"option.from-winter"}},
             {"--to", "WINTER", TextKey{"option.to-winter"}},
             {"--within", "PERCENT", TextKey{"option.within"}},
             {"--confidence", "PERCENT", TextKey{"option.confidence"}},
             {"--sizes", "cool|warm", TextKey{"option.size-set"}},
             {"--vines", "", TextKey{"option.by-vine"}}},
            answer_book_compare};
}

} // namespace spurwright::commands
