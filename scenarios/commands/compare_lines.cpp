#include "scenarios/commands/compare_lines.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scenarios/commands/spread_object.h"

namespace spurwright::commands {
namespace {

using namespace reference_vines;

constexpr double balanced_from = 5, balanced_to = 10; // crop over prunings [trought-2017]

Count percent_of(double share) { return Count{std::llround(100 * share)}; }
Count whole_buds_of(double buds) { return Count{balance::whole_buds(buds)}; }

std::string signed_percent(double share) {
    const long percent = std::lround(100 * share);
    return (percent > 0 ? "+" : "") + std::to_string(percent) + " %";
}

class Comparing {
public:
    Comparing(const BlockComparison& compared, const CompareWish& wish, const words::Words& words) : compared_(compared), wish_(wish), words_(words) {}

    CompareLines lines() {
        lines_.head = words_("book.compare-head", {{"block", compared_.block.name}, {"n", Count{compared_.vines}}, {"spacing", compared_.block.spacing}});
        if (compared_.winters.empty()) {
            lines_.about_winters.push_back(words_("book.no-winters"));
            return std::move(lines_);
        }
        winters();
        changes();
        rows();
        sizes();
        relations();
        return std::move(lines_);
    }

private:
    std::string kg(double value, int decimals = 2) const { return kg_column(value, words_, decimals); }
    std::string signed_kg(double value) const { return (value >= 0.005 ? "+" : "") + kg(value); }
    std::vector<std::string> heads(std::initializer_list<std::string_view> names) const {
        std::vector<std::string> head;
        for (const std::string_view name : names) head.push_back(words_("book.column." + std::string(name)));
        return head;
    }

    void winters() {
        lines_.winters.push_back(heads({"winter", "vines", "median-kg", "half-kg", "mean-kg", "per-m", "buds-kg", "crop-ratio"}));
        for (const WinterSummary& w : compared_.winters)
            lines_.winters.push_back({std::to_string(w.winter), std::to_string(w.kg.n), kg(w.kg.median), kg(w.kg.low) + "-" + kg(w.kg.high),
                                      w.kg.n >= 2 ? kg(w.kg.mean) + " ± " + kg(w.half_width) : kg(w.kg.mean), kg(w.kg_per_m.median), w.buds_a_kg.n ? kg(w.buds_a_kg.median, 1) : "-",
                                      w.crop_ratio.n ? kg(w.crop_ratio.median, 1) : "-"});
        lines_.about_winters.push_back(words_("book.columns", {{"percent", percent_of(wish_.confidence)}}));
        const WinterSummary& last = compared_.winters.back();
        if (last.vines_for_wish > 0)
            lines_.about_winters.push_back(words_("book.vines-needed", {{"within", percent_of(wish_.within)}, {"percent", percent_of(wish_.confidence)}, {"n", Count{last.vines_for_wish}}, {"known", Count{static_cast<std::int64_t>(std::ceil(last.vines_if_known))}}, {"have", Count{last.kg.n}}}));
    }

    void changes() {
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
            lines_.changes.push_back(words_(key, said));
        }
        if (lines_.changes.empty()) return;
        lines_.about_changes.push_back(words_("book.same-vines"));
        const auto tests = static_cast<double>(compared_.changes.size() + compared_.rows.size() + compared_.row_differences.size());
        if (tests >= 3) lines_.about_changes.push_back(words_("book.many-tests", {{"n", Count{std::llround(tests)}}, {"chance", Ratio{tests * (1 - wish_.confidence)}}}));
    }

    void rows() {
        if (compared_.rows.empty()) return;
        lines_.rows.push_back(heads({"row", "vines", "winters", "buds", "median-kg", "since", "p"}));
        for (const RowSummary& row : compared_.rows) {
            const auto& since = row.since;
            lines_.rows.push_back({row.row, std::to_string(row.kg.n), std::to_string(row.first) + "-" + std::to_string(row.last), row.buds.n ? kg(row.buds.median, 0) : "-", kg(row.kg.median),
                                   since.tested ? signed_kg(since.mean) + " (" + signed_kg(since.low) + " .. " + signed_kg(since.high) + ")" : "-", since.tested ? chance_text(since.p, words_) : "-"});
        }
        for (const RowDifference& rows : compared_.row_differences) {
            if (!rows.kg.tested) continue;
            lines_.about_rows.push_back(words_(rows.kg.p < 1 - wish_.confidence ? "book.rows-differ" : "book.rows-not-told", {{"first", rows.first}, {"second", rows.second}, {"change", signed_kg(rows.kg.mean)}, {"low", signed_kg(rows.kg.low)}, {"high", signed_kg(rows.kg.high)}, {"p", chance_text(rows.kg.p, words_)}}));
        }
        lines_.about_rows.push_back(words_("book.rows-say"));
    }

    void sizes() {
        const double per_m = compared_.winters.back().kg_per_m.median;
        const auto name = [&](balance::SizeSet set) { return TextKey{size_key(balance::size_class(per_m, set))}; };
        const auto cool = name(balance::SizeSet::cool), warm = name(balance::SizeSet::warm);
        lines_.sizes.push_back(words_(cool == warm ? "book.size-agree" : "book.size-differ", {{"size", kg(per_m)}, {"cool", cool}, {"warm", warm}}));
        if (compared_.winters.back().crop_ratio.n == 0) return;
        const double ratio = compared_.winters.back().crop_ratio.median;
        lines_.sizes.push_back(words_("book.crop-ratio", {{"ratio", kg(ratio, 1)}}));
        if (ratio < balanced_from || ratio > balanced_to) lines_.sizes.push_back(words_(ratio < balanced_from ? "book.crop-low" : "book.crop-high"));
    }

    void relations() {
        const balance::LineFit& line = compared_.next_by_buds;
        if (line.fitted)
            lines_.relations.push_back(words_("book.next-by-buds", {{"n", Count{line.points}},
                                                                  {"slope", signed_kg(10 * line.slope)},
                                                                  {"low", signed_kg(10 * line.slope_low)},
                                                                  {"high", signed_kg(10 * line.slope_high)},
                                                                  {"r", kg(line.r)},
                                                                  {"p", chance_text(line.p, words_)}}));
        const auto& history = compared_.history;
        lines_.relations.push_back(history ? words_("book.history", {{"n", Count{history->years}},
                                                                    {"held", percent_of(balance::held_within)},
                                                                    {"median", kg(history->median, 1)},
                                                                    {"low", kg(history->low, 1)},
                                                                    {"high", kg(history->high, 1)}})
                                           : words_("book.no-history", {{"held", percent_of(balance::held_within)}, {"n", Count{balance::fewest_years}}}));
    }

    const BlockComparison& compared_;
    const CompareWish& wish_;
    const words::Words& words_;
    CompareLines lines_;
};

std::string_view cause_key(balance::Meeting meeting) {
    return meeting == balance::Meeting::above ? "buds.above" : meeting == balance::Meeting::below ? "buds.below" : "buds.agree";
}

} // namespace

std::string_view size_key(balance::SizeClass size) {
    switch (size) {
    case balance::SizeClass::small: return "book.size.small";
    case balance::SizeClass::target: return "book.size.target";
    case balance::SizeClass::large: return "book.size.large";
    default: return "book.size.excessive";
    }
}

CompareLines compare_lines(const BlockComparison& compared, const CompareWish& wish, const words::Words& words) { return Comparing(compared, wish, words).lines(); }

TextRows suggest_rows(const BlockSuggestion& suggested, const std::optional<std::string>& tag, const words::Words& words) {
    TextRows rows;
    const bool history = suggested.history.has_value();
    std::vector<std::string> head;
    for (const std::string_view key : {"row", "tag", "place", "kg", "kept", "by-weight", "by-space", "smaller", "by-history"}) head.push_back(words("book.suggest." + std::string(key)));
    rows.push_back(std::move(head));
    const auto whole = [](double buds) { return std::to_string(balance::whole_buds(buds)); };
    for (const SuggestedBuds& one : suggested.vines)
        if (!tag || one.tag == *tag)
            rows.push_back({one.row, one.tag, one.place ? std::to_string(*one.place) : "-", kg_column(one.prunings.count / 1e6, words), one.kept ? std::to_string(*one.kept) : "-",
                            whole(one.buds.by_weight) + (one.small_vine ? "*" : ""), whole(one.buds.by_space.low) + "-" + whole(one.buds.by_space.high), whole(one.buds.smaller),
                            history ? whole(one.by_history) : "-"});
    return rows;
}

std::vector<std::string> suggest_middle(const BlockSuggestion& suggested, const words::Words& words) {
    std::vector<std::string> lines;
    if (!suggested.middle) return lines;
    const bool history = suggested.history.has_value();
    const SuggestedBuds& middle = *suggested.middle;
    lines.push_back(words("book.suggest-middle", {{"weight", middle.prunings}, {"buds", whole_buds_of(middle.buds.by_weight)}, {"low", whole_buds_of(middle.buds.by_space.low)}, {"high", whole_buds_of(middle.buds.by_space.high)}, {"n", whole_buds_of(middle.buds.smaller)}}));
    lines.push_back(words(cause_key(middle.buds.meeting)));
    const auto next = [&](std::string_view key, const Arguments& arguments = {}) { lines.push_back(words(key, arguments)); };
    if (suggested.kept) {
        const int more = balance::whole_buds(middle.buds.smaller) - balance::whole_buds(*suggested.kept);
        next(more > 0 ? "book.next.more" : more < 0 ? "book.next.fewer" : "book.next.as-many", {{"winter", std::to_string(suggested.winter)}, {"kept", whole_buds_of(*suggested.kept)}, {"n", Count{more < 0 ? -more : more}}});
    }
    const Count low = whole_buds_of(suggested.low), high = whole_buds_of(suggested.high);
    next(low == high ? "book.next.on-space" : "book.next.on-weight", {{"percent", percent_of(weight_off)}, {"low", low}, {"high", high}});
    if (suggested.change.tested) {
        const auto signed_weight = [&](double kg) { return (kg >= 0.005 ? "+" : "") + kg_column(kg, words); };
        next(suggested.change.p < 0.05 ? "book.next.changed" : "book.next.not-changed", {{"from", std::to_string(suggested.before)}, {"n", Count{suggested.change.pairs}}, {"change", signed_weight(suggested.change.mean)}, {"low", signed_weight(suggested.change.low)}, {"high", signed_weight(suggested.change.high)}});
    }
    lines.push_back(history ? words("book.suggest-history", {{"n", whole_buds_of(middle.by_history)}, {"low", whole_buds_of(middle.history_low)}, {"high", whole_buds_of(middle.history_high)}, {"years", Count{suggested.history->years}}})
                                   : words("book.no-history", {{"held", Count{std::llround(100 * balance::held_within)}}, {"n", Count{balance::fewest_years}}}));
    const int formula = balance::whole_buds(middle.buds.smaller), own = balance::whole_buds(middle.by_history);
    if (history && std::abs(formula - own) > 1) next("book.next.between", {{"low", Count{std::min(formula, own)}}, {"high", Count{std::max(formula, own)}}});
    return lines;
}

} // namespace spurwright::commands
