// book compare: a block's winters side by side, what changed and with what doubt.
#include <cmath>

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

Count percent_of(double share) { return Count{std::llround(100 * share)}; }

class ComparisonText {
public:
    ComparisonText(const BlockComparison& compared, const CompareWish& wish, const words::Words& words) : compared_(compared), wish_(wish), words_(words) {}

    std::string all() const {
        std::string text = words_("book.compare-head", {{"block", compared_.block.name}, {"n", Count{compared_.vines}}, {"spacing", compared_.block.spacing}}) + "\n";
        if (compared_.block.invented) text += words::wrapped(words_("book.invented-line"));
        if (compared_.winters.empty()) return text + words::wrapped(words_("book.no-winters"));
        return text + "\n" + winters() + "\n" + changes() + rows() + sizes() + relations();
    }

private:
    std::string kg(double value, int decimals = 2) const { return kg_column(value, words_, decimals); }

    std::string winters() const {
        words::Table table;
        table.right = {true, true, true, true, true, true, true, true};
        std::vector<std::string> head;
        for (const std::string_view key : {"winter", "vines", "median-kg", "half-kg", "mean-kg", "per-m", "buds-kg", "crop-ratio"}) head.push_back(words_("book.column." + std::string(key)));
        table.rows.push_back(std::move(head));
        for (const WinterSummary& w : compared_.winters)
            table.rows.push_back({std::to_string(w.winter), std::to_string(w.kg.n), kg(w.kg.median), kg(w.kg.low) + "-" + kg(w.kg.high),
                                  w.kg.n >= 2 ? kg(w.kg.mean) + " ± " + kg(w.half_width) : kg(w.kg.mean), kg(w.kg_per_m.median), w.buds_a_kg.n ? kg(w.buds_a_kg.median, 1) : "-",
                                  w.crop_ratio.n ? kg(w.crop_ratio.median, 1) : "-"});
        std::string text = words::table_text(table);
        text += words::wrapped(words_("book.columns", {{"percent", percent_of(wish_.confidence)}}));
        const WinterSummary& last = compared_.winters.back();
        if (last.vines_for_wish > 0)
            text += words::wrapped(words_("book.vines-needed", {{"within", percent_of(wish_.within)}, {"percent", percent_of(wish_.confidence)}, {"n", Count{last.vines_for_wish}}, {"have", Count{last.kg.n}}}));
        return text;
    }

    std::string changes() const {
        std::string text;
        for (const WinterChange& change : compared_.changes) {
            const Arguments said{{"from", std::to_string(change.from)},
                                 {"to", std::to_string(change.to)},
                                 {"n", Count{change.kg.pairs}},
                                 {"change", signed_kg(change.kg.mean)},
                                 {"share", signed_percent(change.share)},
                                 {"low", signed_kg(change.kg.low)},
                                 {"high", signed_kg(change.kg.high)},
                                 {"p", chance_text(change.kg.p, words_)},
                                 {"within", percent_of(wish_.within)},
                                 {"needed", Count{change.vines_to_see}}};
            const std::string_view key = !change.kg.tested ? "book.change-few" : change.kg.p < 1 - wish_.confidence ? "book.change-told" : "book.change-not-told";
            text += words::hanging("", words_(key, said), 2);
        }
        if (text.empty()) return text;
        text = words_("book.changes-head") + "\n" + text + words::wrapped(words_("book.same-vines"));
        const auto tests = static_cast<double>(compared_.changes.size() + compared_.rows.size());
        if (tests >= 3) text += words::wrapped(words_("book.many-tests", {{"n", Count{std::llround(tests)}}, {"chance", Ratio{tests * (1 - wish_.confidence)}}}));
        return text;
    }

    std::string rows() const {
        if (compared_.rows.empty()) return {};
        words::Table table;
        table.right = {false, true, true, true, true, true, true};
        std::vector<std::string> head;
        for (const std::string_view key : {"row", "vines", "winters", "buds", "median-kg", "since", "p"}) head.push_back(words_("book.column." + std::string(key)));
        table.rows.push_back(std::move(head));
        for (const RowSummary& row : compared_.rows) {
            const auto& since = row.since;
            table.rows.push_back({row.row, std::to_string(row.kg.n), std::to_string(row.first) + "-" + std::to_string(row.last), row.buds.n ? kg(row.buds.median, 0) : "-", kg(row.kg.median),
                                  since.tested ? signed_kg(since.mean) + " (" + signed_kg(since.low) + " .. " + signed_kg(since.high) + ")" : "-", since.tested ? chance_text(since.p, words_) : "-"});
        }
        return "\n" + words_("book.rows-head") + "\n" + words::table_text(table) + "\n";
    }

    std::string sizes() const {
        const double per_m = compared_.winters.back().kg_per_m.median;
        const auto name = [&](balance::SizeSet set) { return TextKey{size_key(balance::size_class(per_m, set))}; };
        const auto cool = name(balance::SizeSet::cool), warm = name(balance::SizeSet::warm);
        std::string text = words::wrapped(words_(cool == warm ? "book.size-agree" : "book.size-differ", {{"size", kg(per_m)}, {"cool", cool}, {"warm", warm}}));
        if (compared_.winters.back().crop_ratio.n > 0) text += words::wrapped(words_("book.crop-ratio", {{"ratio", kg(compared_.winters.back().crop_ratio.median, 1)}}));
        return text;
    }

    static std::string_view size_key(balance::SizeClass size) {
        switch (size) {
        case balance::SizeClass::small: return "book.size.small";
        case balance::SizeClass::target: return "book.size.target";
        case balance::SizeClass::large: return "book.size.large";
        default: return "book.size.excessive";
        }
    }

    std::string relations() const {
        std::string text;
        const balance::LineFit& line = compared_.next_by_buds;
        if (line.fitted)
            text += words::wrapped(words_("book.next-by-buds", {{"n", Count{line.points}},
                                                               {"slope", signed_kg(10 * line.slope)},
                                                               {"low", signed_kg(10 * line.slope_low)},
                                                               {"high", signed_kg(10 * line.slope_high)},
                                                               {"r", kg(line.r)},
                                                               {"p", chance_text(line.p, words_)}}));
        const auto& history = compared_.history;
        return text + words::wrapped(history ? words_("book.history", {{"n", Count{history->years}},
                                                                      {"held", percent_of(balance::held_within)},
                                                                      {"median", kg(history->median, 1)},
                                                                      {"low", kg(history->low, 1)},
                                                                      {"high", kg(history->high, 1)}})
                                             : words_("book.no-history", {{"held", percent_of(balance::held_within)}, {"n", Count{balance::fewest_years}}}));
    }

    std::string signed_kg(double value) const { return (value >= 0.005 ? "+" : "") + kg(value); }
    static std::string signed_percent(double share) {
        const long percent = std::lround(100 * share);
        return (percent > 0 ? "+" : "") + std::to_string(percent) + " %";
    }

    const BlockComparison& compared_;
    const CompareWish& wish_;
    const words::Words& words_;
};

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
    o.set("next_by_buds", line_object(compared.next_by_buds));
    o.set("history", history_object(compared.history));
    answer.text = ComparisonText(compared, *wish, around.words).all();
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
