#include "scenarios/review/told.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scenarios/practice/named_act.h"
#include "sim/core/check.h"
#include "sim/rules/missing_piece.h"
#include "sim/rules/say.h"

namespace spurwright::review {
namespace {

using planning::Charge;
using planning::Choice;
using rules::Finding;


Count number_of_plans(std::uint64_t n) { return Count{static_cast<std::int64_t>(n)}; }

// What a piece was to be in a choice.
struct Meant {
    std::string_view as;  // "cane", "spur"; empty: nothing
    Side side{};
    int buds = 0;
};
Meant meant(const Choice& choice, AxisId axis) {
    if (choice.left_cane && axis_of(choice.left_cane) == axis) return {"cane", Side::left};
    if (choice.right_cane && axis_of(choice.right_cane) == axis) return {"cane", Side::right};
    if (choice.left_spur == axis) return {"spur", Side::left, choice.left_buds};
    if (choice.right_spur == axis) return {"spur", Side::right, choice.right_buds};
    return {};
}

// On a cordon every piece is a spur of the side that its place stands on.
Meant meant_in(const planning::CordonChoice& choice, AxisId axis) {
    for (const Side side : both_sides)
        for (const planning::SpurKept& spur : choice[planning::at(side)])
            if (spur.axis == axis) return {"spur", side, spur.buds};
    return {};
}

std::string act_text(const Edit& edit, const Vine& after, const words::Words& words) {
    const practice::NamedAct act = practice::named(edit, after);
    return words.sentence(act.key, act.arguments);
}

// Laid or tied down, and it broke.
bool snapped(const Vine& after, const Edit& edit, AxisId cane) {
    if (!std::holds_alternative<Lay>(edit) && !std::holds_alternative<Fasten>(edit)) return false;
    return std::any_of(after.laid.begin(), after.laid.end(), [&](const Laid& laid) {
        return laid.axis == cane && laid.winter == after.winter && laid.state == LaidState::snapped;
    });
}

std::vector<std::string> told_head(const Review& r, const words::Words& words) {
    std::vector<std::string> head;
    head.push_back(words("judge.points", {{"points", r.mine.points}, {"best", r.best_plan.points}}));
    head.push_back(words(r.row ? "judge.cordon-rank" : "judge.rank", {{"counted", number_of_plans(r.tally.counted)},
                                        {"better", number_of_plans(r.tally.better)},
                                        {"equal", number_of_plans(r.tally.equal)}}));
    head.push_back(words(r.as_good() ? "review.as-good" : "review.not-as-good",
                         {{"n", number_of_plans(r.as_good_count)}, {"least", r.least()}, {"noise", r.noise}}));
    if (!r.mine.caps.empty()) head.push_back(words("judge.before-caps", {{"points", r.mine.points_before_caps}}));
    for (const std::string& house : r.other_houses)
        head.push_back(words("review.other-house", {{"house", words("house." + house)}}));
    return head;
}

std::string loss_source(const Finding& f, const words::Words& words) {
    std::string keys;
    for (const std::string_view key : rules::source_keys(*f.rule)) keys += (keys.empty() ? "" : ", ") + std::string(key);
    return words("review.source", {{"rule", words("rule." + std::string(f.rule->key()) + ".name")},
                                   {"source", words.sentence(rules::source_line(*f.rule, f.status), {{"sources", keys}})}});
}

// Every rule says that a missing piece has nothing to judge: told once for all.
struct Missing {
    Side side{};
    bool spur = false;
    Tenths lost;
    std::int64_t rules = 0;
    rules::Mend mend{};
    const Arguments* in_row = nullptr; // of a cordon: how many of how many
};
bool is_missing_in_row(const Finding& f) { return f.said.key.name == "rule.spur-row.missing"; }

void tell_missing(Told& told, const Review& r, const words::Words& words) {
    std::vector<Missing> all;
    for (const Finding& f : r.mine.findings) {
        if (!rules::tells_missing(f) || f.lost().count <= 0) continue;
        const bool spur = is_missing_in_row(f) || f.rule->per == rules::Per::spur ||
                          f.said.key.name == "rule.end-cut.missing-spur";
        const auto same = std::find_if(all.begin(), all.end(), [&](const Missing& m) { return m.side == f.side && m.spur == spur; });
        Missing& m = same != all.end() ? *same : all.emplace_back(Missing{f.side, spur, {}, 0, f.mend});
        m.lost += f.lost();
        ++m.rules;
        if (is_missing_in_row(f)) m.in_row = &f.said.arguments;
    }
    for (const Missing& m : all) {
        Arguments arguments{{"side", rules::side_key(m.side)}, {"rules", Count{m.rules}}};
        if (m.in_row)
            for (const Named& argument : *m.in_row)
                if (argument.gap != "side") arguments.push_back(argument); // n of those asked
        const std::string_view key = m.in_row ? "review.missing-in-row" : m.spur ? "review.missing-spur" : "review.missing-cane";
        told.losses.push_back({words::points_text(-m.lost, words.numbers()), words(key, arguments),
                               words("mend." + std::string(word_of(m.mend))), words("review.missing-source"), m.mend, m.lost});
    }
}

void tell_losses(Told& told, const Review& r, const words::Words& words) {
    std::vector<const Finding*> lost;
    Tenths small;
    std::int64_t folded = 0;
    tell_missing(told, r, words);
    for (const Finding& f : r.mine.findings) {
        if (f.lost().count <= 0 || rules::tells_missing(f)) continue;
        if (f.lost() >= too_small_to_tell) {
            lost.push_back(&f);
        } else {
            small += f.lost();
            ++folded;
        }
    }
    for (const Finding* f : lost)
        told.losses.push_back({words::points_text(-f->lost(), words.numbers()), words.sentence(f->said.key, f->said.arguments),
                               words("mend." + std::string(word_of(f->mend))), loss_source(*f, words), f->mend, f->lost()});
    std::stable_sort(told.losses.begin(), told.losses.end(), [](const Told::Loss& a, const Told::Loss& b) {
        const bool now_a = a.kind == rules::Mend::now, now_b = b.kind == rules::Mend::now;
        return now_a != now_b ? now_a : a.points > b.points;
    });
    if (folded > 0) told.folded = words("review.folded", {{"n", Count{folded}}, {"lost", small}});
}

std::vector<std::string> told_season(const Review& r, std::optional<std::size_t> edit, const words::Words& words) {
    const ahead::ActAhead* lived = ahead::find_act(r.seasons, edit);
    return lived ? season_sentences(*lived, words) : std::vector<std::string>{};
}

// Where canes that lie should end, of those that should end elsewhere.
std::vector<NodeId> ends_to_cut(const planning::Mending& mending) {
    std::vector<NodeId> ends;
    if (mending.step != rules::Step::lengths) return ends;
    if (mending.better.left_cane != mending.kept.left_cane) ends.push_back(mending.better.left_cane);
    if (mending.better.right_cane != mending.kept.right_cane) ends.push_back(mending.better.right_cane);
    return ends;
}

std::string piece_words(const TwinPiece& twin, NodeId end, const words::Words& words) {
    if (!end) return words(twin.spur ? "choice.no-spur" : "choice.no-cane");
    return words("choice.cut-after", {{"part", axis_of(end)}, {"node", Count{index_of(end)}}});
}

} // namespace

std::string charge_sentence(const Charge& charge, const Review& r, const words::Words& words) {
    const planning::CordonChoice* row = nullptr;
    for (std::size_t i = 0; r.row && i < r.charges.edits.size(); ++i)
        if (r.charges.edits[i].edit == charge.edit) row = &r.row->better[i];
    return charge_sentence(charge, r.plan.edits[charge.edit], r.after, row, words);
}

std::string charge_sentence(const Charge& charge, const Edit& edit, const Vine& after, const planning::CordonChoice* row,
                            const words::Words& words) {
    const AxisId piece = charge.missed ? charge.missed : charge.on;
    const Meant missed = row ? meant_in(*row, piece) : meant(charge.better, piece);
    std::string_view key = "review.charge.less";
    if (charge.lost.count < 0)  // only ways under a limit are open now, whose sum before it may be more
        key = "review.charge.under-limit";
    else if (snapped(after, edit, piece))
        key = charge.left ? "review.charge.cane-broke" : "review.charge.cane-broke-last";
    else if (!charge.left)
        key = "review.charge.none-left";
    else if (charge.missed == charge.on)
        key = missed.as == "cane" ? "review.charge.cane-off" : "review.charge.spur-off";
    else if (charge.missed)
        key = missed.as == "cane" ? "review.charge.cane-gone" : "review.charge.spur-gone";
    else if (std::holds_alternative<Lay>(edit))
        key = missed.as == "spur" ? "review.charge.spur-laid" : "review.charge.laid-away";
    else if (missed.as == "cane")
        key = "review.charge.cane-short";
    else if (missed.as == "spur")
        key = "review.charge.spur-short";
    return words(key, {{"edit", Count{static_cast<std::int64_t>(charge.edit) + 1}},
                       {"act", act_text(edit, after, words)},
                       {"part", charge.missed ? charge.missed : charge.on},
                       {"side", rules::side_key(missed.side)},
                       {"lost", Tenths{std::abs(charge.lost.count)}}});
}

std::string cap_charge_sentence(const planning::ChargedCap& charged, const Plan& plan, const Vine& after, const words::Words& words) {
    using planning::LostTo;
    std::string key = "review.cap." + std::string(word_of(charged.to));
    if (charged.to == LostTo::vine) return words(key);
    if (charged.taken.count == 0) key += "-nothing";
    if (charged.to == LostTo::open) return words(key, {{"lost", charged.taken}});
    return words(key, {{"edit", Count{static_cast<std::int64_t>(charged.edit) + 1}},
                       {"act", act_text(plan.edits[charged.edit], after, words)},
                       {"lost", charged.taken}});
}

std::vector<std::string> season_sentences(const ahead::ActAhead& act, const words::Words& words) {
    std::vector<std::string> told;
    for (const ahead::Figure figure : ahead::parted(act)) {
        const ahead::Spread &left = act.left[figure], &better = act.better[figure];
        const auto number = [figure](double value) -> Argument {
            if (figure == ahead::Figure::yield_kg) return Ratio{std::round(value * 10) / 10};
            if (figure == ahead::Figure::cane_distance_mm) return Length{static_cast<std::int32_t>(std::lround(value) * 1000)};
            return Count{std::llround(value)};
        };
        if (number(left.median) == number(better.median)) continue; // as they are shown
        told.push_back(words("review.season." + std::string(word_of(figure)), {{"left", number(left.median)},
                                                                              {"left_low", number(left.low)},
                                                                              {"left_high", number(left.high)},
                                                                              {"better", number(better.median)},
                                                                              {"better_low", number(better.low)},
                                                                              {"better_high", number(better.high)}}));
    }
    if (told.empty()) told.push_back(words("review.season.alike"));
    return told;
}

std::string mending_sentence(const planning::Mending& mending, const words::Words& words) {
    if (mending.step == rules::Step::spurs) return words("review.mend.spurs", {{"lost", mending.lost}});
    if (mending.step != rules::Step::lengths) return words("review.mend.choose", {{"lost", mending.lost}});
    const std::vector<NodeId> ends = ends_to_cut(mending);
    SPURWRIGHT_CHECK(ends.size(), >, std::size_t{0});  // only lengths part these two
    const auto node = [&](std::size_t i) { return Count{index_of(ends[i])}; };
    Arguments arguments{{"lost", mending.lost}, {"part", axis_of(ends[0])}, {"node", node(0)}};
    if (ends.size() == 1) return words("review.mend.lengths", arguments);
    arguments.push_back({"other", axis_of(ends[1])});
    arguments.push_back({"other_node", node(1)});
    return words("review.mend.lengths-both", arguments);
}

std::string hand_sentence(Tenths lost, const words::Words& words) {
    return words(lost.count > 0 ? "review.hand" : "review.hand-won", {{"lost", Tenths{std::abs(lost.count)}}});
}

std::string mistake_sentence(const rules::Mistake& mistake, const words::Words& words) {
    return words("mistake." + std::string(word_of(mistake.name)), mistake.arguments);
}

std::string end_sentence(const planning::WhatIf& end, const words::Words& words) {
    return words(end.gained.count >= 0 ? "review.end" : "review.end-worse",
                 {{"part", axis_of(end.last)},
                  {"node", Count{index_of(end.last)}},
                  {"points", end.points},
                  {"gained", Tenths{std::abs(end.gained.count)}}});
}

Told told(const Review& r, const words::Words& words) {
    Told told;
    told.head = told_head(r, words);
    for (std::size_t i = 0; i < r.mine.caps.size(); ++i)
        told.caps.push_back(words.sentence(r.mine.caps[i].key, r.mine.caps[i].arguments) + " " +
                            cap_charge_sentence(r.charged_caps[i], r.plan, r.after, words));
    for (std::size_t s = 0; s < r.charges.by_step.size(); ++s)
        if (r.charges.by_step[s].count != 0)
            told.steps.push_back({words("step." + std::string(word_of(static_cast<rules::Step>(s)))),
                                  words::points_text(r.charges.by_step[s], words.numbers())});
    for (const Charge& charge : r.charges.edits) told.acts.push_back({charge_sentence(charge, r, words), told_season(r, charge.edit, words)});
    if (r.charges.mending) told.acts.push_back({mending_sentence(*r.charges.mending, words), told_season(r, std::nullopt, words)});
    if (!r.seasons.empty()) told.season_how = words("review.season.how", {{"n", Count{ahead::weather_draws}}});
    Tenths hand;
    for (const planning::HandLoss& loss : r.charges.hand) hand += loss.lost;
    if (hand.count != 0) told.acts.push_back({hand_sentence(hand, words), {}});
    tell_losses(told, r, words);
    for (const rules::Mistake& mistake : r.mistakes) told.mistakes.push_back(mistake_sentence(mistake, words));
    for (const TwinPiece& twin : r.twins)
        told.twins.push_back({words(twin.spur ? "review.twin.spur" : "review.twin.cane", {{"side", rules::side_key(twin.side)}}),
                              piece_words(twin, twin.mine, words), piece_words(twin, twin.best, words), twin.same()});
    if (!r.charges.mending || ends_to_cut(*r.charges.mending).size() < 2)  // else how far both go back is said above
        for (const planning::WhatIf& end : r.ends) told.ends.push_back(end_sentence(end, words));
    for (const Finding& f : r.mine.remarks) told.remarks.push_back(words.sentence(f.said.key, f.said.arguments));
    return told;
}

} // namespace spurwright::review
