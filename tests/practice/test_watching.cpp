// The best plan watched: to the end it is the best plan, forwards and back the same vine, and every reason is true.
#include <doctest/doctest.h>

#include "scenarios/practice/practice.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/rules/judge.h"
#include "sim/rules/rule_list.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"

using namespace spurwright;
using practice::Practice;
using practice::Reason;
using practice::WatchedAct;
using practice::Watching;

namespace {

// Sites of every pruner and vigour: neglect leaves dead and old wood, far canes, suckers.
Practice grown(std::uint32_t number) {
    growth::Site site;
    site.seed = 300 + number;
    site.age = std::array{5, 8, 12, 20}[number % 4];
    site.pruner = static_cast<Pruner>(number % 8);
    site.vigour = static_cast<Vigour>(number % 3);
    site.neighbours = static_cast<growth::Neighbours>(number / 3 % 4);
    return Practice({test::grown(site), "", "", "general", {}, {}});
}
constexpr std::uint32_t vines = 16;

// Watched from the start; false where the vine offers no plan.
bool watched(Practice& practice) {
    practice.add_plans(practice::search_plans(practice.start(), practice.task().house));
    return practice.watch().has_value();
}

const Argument& argument(const Reason& reason, std::string_view gap) {
    for (const Named& named : reason.arguments)
        if (named.gap == gap) return named.value;
    FAIL(std::string(reason.key.name) << " has no " << std::string(gap));
    return reason.arguments.front().value;
}
Count count(const Reason& reason, std::string_view gap) { return std::get<Count>(argument(reason, gap)); }
AxisId part(const Reason& reason, std::string_view gap = "part") { return std::get<AxisId>(argument(reason, gap)); }

bool stands_on(const Vine& vine, AxisId piece, AxisId wood) {
    for (const Axis* axis = vine.find(piece); axis && axis->parent; axis = vine.find(axis_of(axis->parent)))
        if (axis_of(axis->parent) == wood) return true;
    return false;
}

// What a reason of the tables claims, asked of the tables anew.
bool is_true(const Vine& vine, const Vine& after, const Reason& reason) {
    const std::string_view key = reason.key.name;
    if (!key.starts_with("watch.off.")) return true;
    const Axis& axis = *vine.find(part(reason));
    const auto stays = [&](AxisId id) { return after.find(id) && !after.find(id)->removed && id != axis.id; };
    const auto bears_kept = [&] {
        for (const Axis& a : after.axes)
            if (!a.removed && a.mark != Role::none && stands_on(vine, a.id, axis.id)) return true;
        return false;
    };
    if (key == "watch.off.rootstock") return on_rootstock(vine, axis);
    if (key == "watch.off.sucker") return is_sucker(vine, axis) && !on_rootstock(vine, axis);
    if (key == "watch.off.lateral") return is_lateral(vine, axis) && axis_of(axis.parent) == part(reason, "on") && after.find(part(reason, "on"))->mark != Role::none;
    if (key == "watch.off.short") return count(reason, "n").value == static_cast<std::int64_t>(ripe_count_nodes(vine, axis).size()) && count(reason, "n").value < count(reason, "least").value;
    if (key == "watch.off.chosen-instead") return stays(part(reason, "kept")) && after.find(part(reason, "kept"))->mark != Role::none && age(vine, axis) == 1;
    if (key == "watch.off.not-asked") return age(vine, axis) == 1;
    if (key.ends_with("-beyond")) return age(vine, axis) == 2 && stays(part(reason, "kept")) && stands_on(vine, part(reason, "kept"), axis.id) && after.find(part(reason, "kept"))->mark != Role::none &&
                                         (key != "watch.off.old-cane-beyond" || was_laid_last_winter(vine, axis)) && (key != "watch.off.old-spur-beyond" || was_spur_last_winter(vine, axis));
    if (bears_kept()) return false;
    if (key == "watch.off.dead") return axis.state == AxisState::dead;
    if (key == "watch.off.old-cane") return was_laid_last_winter(vine, axis);
    if (key == "watch.off.old-spur") return was_spur_last_winter(vine, axis);
    if (key == "watch.off.old-wood") return age(vine, axis) == count(reason, "n").value && age(vine, axis) > 1;
    return false;
}

words::Words words_of(const char* language) {
    auto words = words::load_words(io::Assets(std::string(SPURWRIGHT_SOURCE) + "/assets"), language);
    REQUIRE(words.has_value());
    return *std::move(words);
}

}  // namespace

TEST_CASE("watched to the end, the vine is worth the best plan's points by the judge, and no own act is in the list") {
    int with_plan = 0;
    for (std::uint32_t number = 0; number < vines; ++number) {
        CAPTURE(number);
        Practice practice = grown(number);
        const std::uint64_t uncut = vine_hash(practice.start());
        if (!watched(practice)) continue;
        ++with_plan;
        const auto best = planning::Planning(practice.start(), practice.task().house).best();
        REQUIRE(best.has_value());
        const std::size_t acts = practice.watching()->acts().size();
        CHECK(acts == best->plan.edits.size() + 1);  // looking comes first
        for (std::size_t i = 0; i < acts; ++i) {
            CHECK(practice.watching()->at() == i);
            practice.watch_next();
        }
        CHECK(practice.watching()->shown() == nullptr);
        CHECK(rules::judge(practice.start(), practice.now(), practice.task().house).points == best->points);
        practice.watch_next();  // the end stays the end
        CHECK(practice.watching()->at() == acts);
        CHECK(practice.acts().empty());
        CHECK(practice.done().edits.empty());
        practice.end_showing();
        CHECK(vine_hash(practice.now()) == uncut);
        CHECK_FALSE(practice.hand_rests());
    }
    CHECK(with_plan > 10);
}

TEST_CASE("stepping forwards and back shows the same vine at each act") {
    for (const std::uint32_t number : {0u, 3u, 6u, 9u}) {
        Practice practice = grown(number);
        if (!watched(practice)) continue;
        const std::size_t acts = practice.watching()->acts().size();
        std::vector<std::uint64_t> seen;
        for (std::size_t i = 0; i <= acts; ++i, practice.watch_next()) seen.push_back(vine_hash(practice.now()));
        for (std::size_t i = acts; i-- > 0;) {
            practice.watch_back();
            CHECK(practice.watching()->at() == i);
            CHECK(vine_hash(practice.now()) == seen[i]);
        }
        practice.watch_back();  // before the first there is none
        CHECK(practice.watching()->at() == 0);
        for (int i = 0; i < 5; ++i) practice.watch_next();
        practice.watch_back();
        CHECK(vine_hash(practice.now()) == seen[4]);
    }
}

TEST_CASE("every act has its reasons: true of the vine, the judge's numbers, words in English and Spanish, no lack in front") {
    const words::Words english = words_of("en"), spanish = words_of("es");
    int reasons = 0, off = 0;
    for (std::uint32_t number = 0; number < vines; ++number) {
        CAPTURE(number);
        Practice practice = grown(number);
        if (!watched(practice)) continue;
        const auto after = prune(practice.start(), planning::Planning(practice.start(), practice.task().house).best()->plan);
        REQUIRE(after.has_value());
        const rules::Judgement judged = rules::judge(practice.start(), *after, practice.task().house);
        for (const WatchedAct& act : practice.watching()->acts()) {
            REQUIRE_FALSE(act.why.empty());
            CHECK_FALSE(act.why.front().lacks);
            for (const Reason& reason : act.why) {
                ++reasons;
                CAPTURE(std::string(reason.key.name));
                CHECK(is_true(practice.start(), *after, reason));
                for (const words::Words* words : {&english, &spanish}) {
                    const std::string says = words->sentence(reason.key, reason.arguments);
                    CHECK_FALSE(says.starts_with("["));
                    CHECK(says.find('{') == std::string::npos);
                    CHECK_FALSE(words->sentence(act.named.key, act.named.arguments).starts_with("["));
                }
                if (reason.key.name.starts_with("watch.off.")) ++off;
                if (!reason.key.name.starts_with("rule.") || reason.key.name.ends_with(".asks")) continue;
                if (const auto* cut = act.edit ? std::get_if<Cut>(&*act.edit) : nullptr; cut && act.step == rules::Step::clear) continue;  // of a piece that goes
                // The judge's own finding: the same sentence with the same numbers.
                bool found = false;
                for (const auto* list : {&judged.findings, &judged.remarks})
                    for (const rules::Finding& f : *list) found |= f.said.key == reason.key && f.said.arguments == reason.arguments && f.rule == reason.rule && (f.lost().count > 0) == reason.lacks;
                CHECK(found);
            }
        }
    }
    CHECK(reasons > 500);
    CHECK(off > 100);
}

TEST_CASE("a length's reason counts the buds that the vine then carries, against those asked for") {
    Practice practice = grown(2);
    REQUIRE(watched(practice));
    const rules::HouseRules& house = practice.task().house;
    const auto after = prune(practice.start(), planning::Planning(practice.start(), house).best()->plan);
    REQUIRE(after.has_value());
    int lengths = 0;
    for (const WatchedAct& act : practice.watching()->acts())
        for (const Reason& reason : act.why) {
            if (reason.key.name != "watch.length") continue;
            ++lengths;
            CHECK(count(reason, "n").value == count_buds(*after, *after->find(act.spot.axis)));
            CHECK(count(reason, "asked").value == practice.asked_buds());
            int all = 0;
            for (const Axis& axis : after->axes)
                if (!axis.removed && axis.mark != Role::none) all += count_buds(*after, axis);
            CHECK(count(reason, "all").value == all);
        }
    CHECK(lengths > 0);
}

TEST_CASE("what an act would take off is shown before it is done") {
    Practice practice = grown(1);
    REQUIRE(watched(practice));
    int cuts = 0;
    while (const WatchedAct* act = practice.watching()->shown()) {
        const auto* cut = act->edit ? std::get_if<Cut>(&*act->edit) : nullptr;
        REQUIRE(practice.watching()->goes().has_value() == (cut != nullptr));
        std::vector<NodeId> nodes;
        if (cut) {
            nodes = practice.watching()->goes()->nodes;
            for (const NodeId node : nodes) CHECK_FALSE(practice.now().find(node)->removed);
            ++cuts;
        }
        practice.watch_next();
        for (const NodeId node : nodes) CHECK(practice.now().find(node)->removed);
    }
    CHECK(cuts > 5);
}

TEST_CASE("watching is refused once there are own acts, and they stay as they were; cut again, it is allowed") {
    Practice practice = grown(0);
    practice.add_plans(practice::search_plans(practice.start(), practice.task().house));
    const AxisId cane = cane_candidates(practice.start()).front();
    REQUIRE(practice.mark(cane, Role::left).has_value());
    const auto refused = practice.watch();
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().key.name == "error.practice.watch-own-acts");
    CHECK(practice.role_of(cane) == Role::left);
    practice.undo();
    REQUIRE(practice.watch().has_value());
    practice.watch_next();
    practice.end_showing();
    practice.redo();  // what was undone before is there still
    CHECK(practice.role_of(cane) == Role::left);
    practice.finish();
    CHECK_FALSE(practice.watch().has_value());
    practice.cut_again();
    CHECK(practice.watch().has_value());
}

TEST_CASE("asked for before the plan is found, watching begins with it") {
    Practice practice = grown(0);
    REQUIRE(practice.watch().has_value());
    CHECK(practice.watch_waits());
    CHECK_FALSE(practice.watching().has_value());
    practice.add_plans(practice::search_plans(practice.start(), practice.task().house));
    CHECK_FALSE(practice.watch_waits());
    CHECK(practice.watching().has_value());
}
