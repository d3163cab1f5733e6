// The look back over many vines, each with a plan well or badly carried out: 500 as usual, 10,000 where SPURWRIGHT_FULL is
// set. What list, walk and counts say is one vector; losses add up; every number in a sentence is measured again here,
// from the rows of the tables by a path of its own, in every language.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <set>

#include "scenarios/practice/look_back.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/planning/charges.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/full_size.h"
#include "tests/support/judged.h"
#include "tests/support/mirror.h"

using namespace spurwright;

namespace {

const io::Assets look_back_assets(SPURWRIGHT_SOURCE "/assets");
const rules::HouseRules house;

growth::Site site_of(std::uint32_t number) {
    constexpr std::array spacings{1.2, 1.5, 1.8, 2.1, 2.4};
    growth::Site s;
    s.seed = 20'000 + number;
    s.age = 4 + static_cast<int>(number % 14);
    s.system = number % 6 == 5 ? System::one_cane : System::two_cane;
    s.spacing_m = s.system == System::one_cane ? 1.2 : spacings[number % spacings.size()];
    // A neglected vine has a thousand axes and takes as long as twenty others.
    s.pruner = number % 50 == 49 ? Pruner::neglect : static_cast<Pruner>(number / 3 % 6);
    s.vigour = static_cast<Vigour>(number % 3);
    s.neighbours = static_cast<growth::Neighbours>(number / 5 % 4);
    return s;
}

// ------------------------------------------------------------------ measured again, from rows and places alone

double mm(Length length) { return length.count / 1000.0; }

// Of one vine after a plan. Its own arithmetic in doubles: nothing of the rules' measures is called.
class Ruler {
public:
    Ruler(const Vine& before, const Vine& after) : before_(before), after_(after) {}

    const Axis& was(const std::string& name) const { return *before_.find(*read_axis(name)); }
    const Axis& is(const std::string& name) const { return *after_.find(*read_axis(name)); }

    static double thick(const Node& node) { return (mm(node.major) + mm(node.minor)) / 2; }

    double diameter(const Axis& axis) const {
        const auto nodes = before_.nodes_of(axis);
        if (nodes.size() <= 2) return thick(nodes.back());
        double sum = 0;
        int joints = 0;
        for (std::size_t i = 2; i <= 3 && i < nodes.size(); ++i, ++joints) sum += thick(nodes[i]);
        return sum / joints;
    }

    // A bud at a node with 6 mm of clear joint below it that is not visibly dead.
    bool counts(const Axis& axis, std::size_t i) const {
        const Node& node = before_.nodes_of(axis)[i];
        if (i == 0 || mm(node.joint) < 6) return false;
        for (const Bud& bud : before_.buds_of(node))
            if (bud.kind == BudKind::node && !bud.harmed) return true;
        return false;
    }
    double along(const Axis& axis, std::size_t to) const {
        double sum = 0;
        for (std::size_t i = 1; i <= to; ++i) sum += mm(before_.nodes_of(axis)[i].joint);
        return sum;
    }
    // Count buds that still stand, where `ripe` those within the ripe wood.
    std::vector<std::size_t> buds(const Axis& axis, bool ripe) const {
        std::vector<std::size_t> found;
        const auto now = after_.nodes_of(*after_.find(axis.id));
        for (std::size_t i = 1; i < now.size() && !now[i].removed; ++i)
            if (counts(axis, i) && (!ripe || along(axis, i) <= mm(axis.ripe))) found.push_back(i);
        return found;
    }
    // From place to place along the kept cane, which is not the column of joints.
    double mean_joint(const Axis& axis) const {
        const auto kept = buds(axis, false);
        const auto nodes = before_.nodes_of(axis);
        double sum = 0;
        for (std::size_t i = kept.front() + 1; i <= kept.back(); ++i) sum += apart(nodes[i - 1].place, nodes[i].place);
        return sum / static_cast<double>(kept.back() - kept.front());
    }
    static double apart(const Place& a, const Place& b) {
        return std::hypot(mm(a.x - b.x), mm(a.y - b.y), mm(a.z - b.z));
    }
    double end_diameter(const Axis& axis) const { return thick(before_.nodes_of(axis)[buds(axis, false).back()]); }
    const Node& first_joint(const Axis& axis) const { return before_.nodes_of(axis)[1]; }
    double below_wire(const Axis& axis) const {
        double lowest = 1e9;
        for (const Wire& wire : before_.wires)
            if (wire.kind == WireKind::fruiting) lowest = std::min(lowest, mm(wire.height));
        return lowest - mm(before_.nodes_of(axis)[0].place.y);
    }
    // Down from bearer to bearer, collars too, and along the trunk to where the side's arm leaves it.
    double to_head(const Axis& axis) const {
        NodeId at = axis.parent;
        double sum = 0;
        while (at) {
            const Axis& on = *before_.find(axis_of(at));
            if (!on.parent || axis_of(before_.crown(axis.side)) == on.id) {
                const std::size_t i = index_of(at), k = index_of(before_.crown(axis.side));
                for (std::size_t n = std::min(i, k) + 1; n <= std::max(i, k); ++n) sum += mm(before_.nodes_of(on)[n].joint);
                return sum;
            }
            for (std::size_t n = 0; n <= index_of(at); ++n) sum += mm(before_.nodes_of(on)[n].joint);
            at = on.parent;
        }
        return sum;
    }
    double off_row(const Axis& axis, Side side) const {
        const auto nodes = before_.nodes_of(axis);
        const Place &a = nodes[0].place, &b = nodes[std::min<std::size_t>(2, nodes.size() - 1)].place;
        const double x = mm(b.x - a.x) * (side == Side::left ? -1 : 1), z = mm(b.z - a.z);
        return std::abs(std::atan2(z, x)) * 180 / 3.14159265358979323846;
    }
    // Of the cut end of a laid cane along the row: the same vine with that cane laid alone and nothing cut, and on it the
    // wood past the last node kept, along the joint it belongs to.
    double free_wire(const Axis& axis, Side side) const {
        const auto now = after_.nodes_of(*after_.find(axis.id));
        std::size_t last = 0;
        while (last + 1 < now.size() && !now[last + 1].removed) ++last;
        double beyond = std::max(0.0, mm(axis.ripe) - along(axis, last));  // left uncut it runs to its ripe end
        for (const Wound& wound : after_.wounds)
            if (wound.axis == axis.id && wound.winter == after_.winter && index_of(wound.node) == last) beyond = mm(wound.beyond);
        Vine alone = before_;
        REQUIRE(prune_one(alone, Lay{axis.id, side, 2}, before_).has_value());
        for (const Tie& tie : after_.ties)
            if (tie.winter == after_.winter && axis_of(tie.node) == axis.id)
                REQUIRE(prune_one(alone, Fasten{tie.node, tie.beyond, tie.tight}, before_).has_value());
        const auto whole = alone.nodes_of(*alone.find(axis.id));
        const std::size_t to = std::min<std::size_t>(last + 1, whole.size() - 1);
        const double x = mm(whole[last].place.x) + mm(whole[to].place.x - whole[to - 1].place.x) / mm(whole[to].joint) * beyond;
        const double out = side == Side::left ? -x : x;
        const Neighbour& next = before_.neighbour(side);
        const bool single = before_.system == System::one_cane;
        if (next.kind == NeighbourKind::vine) return mm(before_.spacing) - out - mm(next.reach);
        const double room = mm(before_.spacing) / (single && next.kind == NeighbourKind::none ? 1 : 2);
        return (single ? 1 : 2) * (room - out);
    }
    bool has_wound_of(double diameter) const {
        return std::any_of(after_.wounds.begin(), after_.wounds.end(),
                           [&](const Wound& w) { return w.winter == after_.winter && std::abs(mm(w.major) - diameter) < 0.002; });
    }
    int all_buds() const {
        int sum = 0;
        for (const Axis& axis : after_.axes)
            if (!axis.removed && axis.state == AxisState::live && axis.parent && axis.born == after_.winter)
                sum += static_cast<int>(buds(*before_.find(axis.id), false).size());
        return sum;
    }

private:
    const Vine& before_;
    const Vine& after_;
};

struct Difference {
    double told = 0, measured = 0, slack = 0;
};

// What a finding's measure should be; nothing where this rule is not measured again here.
std::optional<Difference> again(const Ruler& ruler, const rules::Finding& f) {
    using enum rules::RuleName;
    if (!f.said.measured || f.on.empty()) return std::nullopt;
    const double told = static_cast<double>(*f.said.measured) / 1000;
    if (f.rule->name == wound_size) return std::nullopt;
    const Axis& axis = ruler.was(f.on);
    switch (f.rule->name) {
    case cane_diameter:
        if (f.said.key.name.find("long-joint") != std::string_view::npos) return std::nullopt;
        return Difference{told, ruler.diameter(axis), 0.002};
    case cane_end_diameter: return Difference{told, ruler.end_diameter(axis), 0.002};
    case internode_length: return Difference{told, ruler.mean_joint(axis), 0.6};
    case origin_distance: return Difference{told, ruler.to_head(axis), 0.002};
    case origin_height: return Difference{told, ruler.below_wire(axis), 0.002};
    case cane_side: return Difference{told, ruler.off_row(axis, f.side), 0.01};
    case spur_buds: return Difference{told, static_cast<double>(ruler.buds(axis, true).size()), 0};
    case spur_size: return Difference{told, Ruler::thick(ruler.first_joint(axis)), 0.002};
    case spur_place: return Difference{told, ruler.below_wire(axis), 0.002};
    case cane_reach:
        if (f.said.key.name.find("usual") != std::string_view::npos || f.said.unit != rules::Unit::mm) return std::nullopt;
        return Difference{told, ruler.free_wire(axis, f.side), 0.01};
    default: return std::nullopt;
    }
}

// The numbers that stand in a text, as written; digits of part names count.
std::set<std::string> numbers_in(const std::string& text) {
    std::set<std::string> found;
    for (std::size_t i = 0; i < text.size();) {
        const auto digit = [&](std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
        if (!digit(i)) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (digit(end) || (end < text.size() && (text[end] == '.' || text[end] == ',') && digit(end + 1))) ++end;
        found.insert(text.substr(i, end - i));
        i = end;
    }
    return found;
}

// Numbers of a sentence that none of its arguments holds: they would stand in the text itself.
bool holds_own_numbers(const std::string& sentence, const Arguments& arguments, const words::Words& words) {
    std::set<std::string> allowed;
    for (const Named& argument : arguments) {
        const auto* key = std::get_if<TextKey>(&argument.value);
        if (const auto* axis = std::get_if<AxisId>(&argument.value)) allowed.merge(numbers_in(name_of(*axis)));
        if (const auto* node = std::get_if<NodeId>(&argument.value)) allowed.merge(numbers_in(name_of(*node)));
        if (const auto* text = std::get_if<std::string>(&argument.value)) allowed.merge(numbers_in(*text));
        allowed.merge(numbers_in(key ? words.sentence(*key, arguments) : words.measure(argument.value)));
    }
    // Beside its threshold a measure is told with one more digit than alone: 60.4 degrees, not 60; and beside mm a length of
    // metres in mm.
    const auto value = [](std::string text) {
        std::replace(text.begin(), text.end(), ',', '.');
        return std::atof(text.c_str());
    };
    for (const std::string& number : numbers_in(sentence)) {
        const bool known = allowed.contains(number) || std::any_of(allowed.begin(), allowed.end(), [&](const std::string& one) {
                               return std::abs(value(one) - value(number)) <= 0.5 || std::abs(1'000 * value(one) - value(number)) <= 6;
                           });
        if (!known) return true;
    }
    return false;
}

// ------------------------------------------------------------------ one pass over all vines

struct Found {
    int vines = 0, plans = 0, single = 0, losing = 0, capped = 0;
    int miscounted = 0, missummed = 0, not_monotone = 0, unjust = 0, dead_end = 0, mirrored_apart = 0, untrue = 0,
        odd_sentence = 0, lowered = 0;
    int picks = 0, good_picks = 0, mirrors = 0, mended = 0;
    std::map<std::string, int> measured, untrue_by;  // by rule
    std::string first_untrue, first_odd, first_missummed, first_unjust, first_dead, first_lowered;
};

class Pass {
public:
    Pass() {
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            auto words = words::load_words(look_back_assets, language);
            REQUIRE(words.has_value());
            languages_.push_back(*std::move(words));
        }
    }

    Found run(std::uint32_t count) {
        for (std::uint32_t number = 0; number < count; ++number) look_at(number);
        return std::move(found_);
    }

private:
    void look_at(std::uint32_t number) {
        const auto grown = growth::grow_vine(site_of(number));
        if (!grown) return;
        const Vine& vine = *grown;
        const planning::Planning planning(vine, house);
        const auto best = planning.best();
        if (!best) return;
        ++found_.vines;
        found_.single += vine.system == System::one_cane;
        const test::Judged judged{vine, house};
        std::vector<std::pair<Tenths, std::uint64_t>> ranked;  // points, plans with more
        std::vector<planning::Pick> picks{*planning::pick_of(planning.tables(), best->choice)};
        for (std::uint32_t n = 0; n < 2; ++n) {
            const std::uint64_t seed = std::uint64_t{number} * 16 + n;
            const auto pick = test::random_pick(planning.tables().tables, seed);
            if (!pick) continue;
            Plan plan = planning::complete(vine, house, planning::choice_of(planning.tables(), *pick));
            picks.push_back(*pick);
            if (n == 1) {
                const Plan bad = test::spoilt(vine, number % 2 ? best->plan : plan, seed);
                if (prune(vine, bad)) plan = bad;
            }
            look_at(vine, planning, *best, judged, plan, number, n == 1 && number % 2 == 0);
            if (number % 2 == 0) continue;
            const Tenths points = judged(plan)->points;
            ranked.emplace_back(points, planning.count(points).better);
        }
        if (number % 3 == 0) check_membership(planning, *best, picks);
        for (const auto& [points, better] : ranked)
            for (const auto& [others, more] : ranked) found_.not_monotone += points >= others && better > more;
        forget_one(judged, best->plan, number);
    }

    // A pick is a member of a group as good exactly where its points say so; and the groups hold all that are.
    void check_membership(const planning::Planning& planning, const planning::BestPlan& best, const std::vector<planning::Pick>& picks) {
        const Tenths least = best.points - house.acceptable.within;
        const auto& tables = planning.tables().tables;
        const planning::AsGood good = planning.as_good(least, 400);
        const bool whole = good.shown.size() == good.groups;
        if (!whole) return;
        std::uint64_t members = 0;
        for (const auto& g : good.shown) members += g.count;
        if (members != good.count && found_.unjust++ == 0)
            found_.first_unjust = std::to_string(members) + " members, " + std::to_string(good.count) + " counted";
        for (const planning::Pick& p : picks) {
            ++found_.picks;
            const bool member = std::any_of(good.shown.begin(), good.shown.end(), [&](const auto& g) { return g.holds(p); });
            const bool as_good = planning::points_of(tables, p) >= least.count;
            found_.good_picks += as_good;
            if (as_good && !member && found_.unjust++ == 0) found_.first_unjust = std::to_string(planning::points_of(tables, p)) + " and no member";
        }
    }

    void look_at(const Vine& vine, const planning::Planning& planning, const planning::BestPlan& best, const test::Judged& judged,
                 const Plan& plan, std::uint32_t number, bool charged) {
        ++found_.plans;
        const auto after = prune(vine, plan);
        const rules::Judgement mine = *judged(plan);
        found_.capped += mine.points < mine.points_before_caps;
        check_counts(practice::look_back(vine, *after, house), mine);
        if (charged) check_sums(vine, planning, best, plan, mine, number);
        check_sentences(vine, *after, mine);
        if (number % 4 != 1) return;
        ++found_.mirrors;
        const Vine across = test::mirrored(vine);
        const auto other = test::Judged{across, house}(test::mirrored(plan));
        found_.mirrored_apart += !other || other->points != mine.points || other->points_before_caps != mine.points_before_caps;
    }

    // List, walk and steps read one vector.
    void check_counts(const practice::LookBack& look, const rules::Judgement& mine) {
        const auto stops = [&](practice::Stop stop) {
            std::size_t told = 0;  // a missing piece tells what further rules say of it
            for (const practice::Walked& w : look.walk) told += w.stop == stop ? 1 + w.with.size() : 0;
            return told;
        };
        int losing = 0, in_steps = 0;
        Tenths lost, walked, by_step;
        for (const rules::Finding& f : mine.findings) losing += f.lost().count > 0, lost += f.lost();
        for (const practice::Walked& w : look.walk) walked += w.lost;
        for (const practice::StepLoss& step : look.by_step) in_steps += step.findings, by_step += step.lost;
        found_.losing += losing;
        found_.miscounted += stops(practice::Stop::finding) != mine.findings.size() ||
                             stops(practice::Stop::remark) != mine.remarks.size() ||
                             stops(practice::Stop::cap) != mine.caps.size() || in_steps != losing || walked != lost || by_step != lost;
    }

    void check_sums(const Vine& vine, const planning::Planning& planning, const planning::BestPlan& best, const Plan& plan,
                    const rules::Judgement& mine, std::uint32_t number) {
        Tenths points, out_of;
        for (const rules::Finding& f : mine.findings) points += f.points, out_of += f.out_of;
        const planning::Charges all = planning::charges(vine, house, planning, plan, mine);
        Tenths steps;
        for (const Tenths step : all.by_step) steps += step;
        const bool wrong = points != mine.points_before_caps || out_of != Tenths{1000} ||
                            rules::held_under(mine.caps, points) != mine.points || steps != all.best - all.mine ||
                            best.points - mine.points != steps + all.caps;
        if (wrong && found_.missummed++ == 0)
            found_.first_missummed = "vine " + std::to_string(number) + ": " + std::to_string(points.count) + "/" + std::to_string(mine.points_before_caps.count) + " of " + std::to_string(out_of.count) + ", steps " +
                                     std::to_string(steps.count) + ", best " + std::to_string(all.best.count) + ", mine " + std::to_string(all.mine.count) + ", caps " +
                                     std::to_string(all.caps.count) + ": " + print_plan(plan);
        Tenths open{1'000'000};
        for (const Tenths here : all.open_after) {
            // With no cane left to lay nothing is open, and what is told is not judged by that.
            const bool dead = here > open || (here.count > 0 && here < mine.points);
            if (dead && found_.dead_end++ == 0) found_.first_dead = std::to_string(here.count) + " of " + std::to_string(mine.points.count) + ": " + print_plan(plan);
            open = here;
        }
    }

    void check_sentences(const Vine& vine, const Vine& after, const rules::Judgement& mine) {
        const Ruler ruler(vine, after);
        for (const rules::Finding& f : mine.findings) {
            if (const auto difference = again(ruler, f)) {
                ++found_.measured[std::string(f.rule->key())];
                const bool untrue = std::abs(difference->told - difference->measured) > difference->slack;
                found_.untrue_by[std::string(f.rule->key())] += untrue;
                if (untrue && found_.untrue++ == 0)
                    found_.first_untrue = std::string(f.said.key.name) + " " + f.on + " told " + std::to_string(difference->told) +
                                          ", measured " + std::to_string(difference->measured);
            }
            if (f.rule->name == rules::RuleName::wound_size && f.said.measured && f.lost().count > 0 && *f.said.measured > 0) {
                ++found_.measured["wound-size"];
                found_.untrue += !ruler.has_wound_of(static_cast<double>(*f.said.measured) / 1000);
            }
            if (f.rule->name == rules::RuleName::bud_load && f.said.key.name.find("many") != std::string_view::npos) {
                ++found_.measured["bud-load"];
                found_.untrue += *f.said.measured != 1'000 * ruler.all_buds();
            }
        }
        for (const auto* list : {&mine.findings, &mine.remarks})
            for (const rules::Finding& f : *list) read(f.said.key, f.said.arguments);
        for (const rules::Cap& cap : mine.caps) read(cap.key, cap.arguments);
    }

    // Every number it holds is one of its arguments: none stands in the text itself, none is left open.
    void read(TextKey key, const Arguments& arguments) {
        for (const words::Words& words : languages_) {
            const std::string sentence = words.sentence(key, arguments);
            const bool odd = sentence.empty() || sentence.find_first_of("{}[]") != std::string::npos ||
                             holds_own_numbers(sentence, arguments, words);
            if (odd && found_.odd_sentence++ == 0) found_.first_odd = words.language() + " " + std::string(key.name) + ": " + sentence;
        }
    }

    // One act forgotten and made up for at the end never lowers the total.
    void forget_one(const test::Judged& judged, const Plan& whole, std::uint32_t number) {
        if (whole.edits.empty()) return;
        Plan some = whole;
        const auto at = static_cast<std::size_t>(between(draw(number, 9, 0), 0, static_cast<int>(whole.edits.size()) - 1));
        const Edit forgotten = some.edits[at];
        some.edits.erase(some.edits.begin() + static_cast<std::ptrdiff_t>(at));
        const auto without = judged(some);
        some.edits.push_back(forgotten);
        const auto with = judged(some);
        if (!without || !with) return;
        ++found_.mended;
        if (with->points < without->points && found_.lowered++ == 0)
            found_.first_lowered = std::to_string(without->points.count) + " -> " + std::to_string(with->points.count) + ": " + print_plan(some);
    }

    Found found_;
    std::vector<words::Words> languages_;
};

const Found& found() {
    static const Found all = Pass().run(test::sized(500u, 10'000u));
    return all;
}

}  // namespace

TEST_SUITE("scenarios/look-back") {
    TEST_CASE("the vines looked back on differ: systems, losses, limits") {
        CHECK(found().vines > test::sized(400, 8'000));
        CHECK(found().plans > test::sized(800, 16'000));
        CHECK(found().single > test::sized(50, 1'000));
        CHECK(found().losing > 10 * found().vines);
        CHECK(found().capped > test::sized(30, 600));
    }
    TEST_CASE("counts: the heading, the list, the walk and the steps read one vector") { CHECK(found().miscounted == 0); }
    TEST_CASE("sums: findings make the total before caps, shares 1000, the steps' losses what the best plan has more; caps apart") {
        CAPTURE(found().first_missummed);
        CHECK(found().missummed == 0);
    }
    TEST_CASE("monotone: fewer points never leave fewer plans better") { CHECK(found().not_monotone == 0); }
    TEST_CASE("several good: a choice is a member of a group as good exactly where its own points say so, and groups hold all") {
        CAPTURE(found().first_unjust);
        CHECK(found().unjust == 0);
        CHECK(found().good_picks > found().vines / 10);
        CHECK(found().picks > found().good_picks);
    }
    TEST_CASE("dead ends: what can still be reached never rises with an act and is never less than what came of it") {
        CAPTURE(found().first_dead);
        CHECK(found().dead_end == 0);
    }
    TEST_CASE("sentence truth: each measure told is what the vine measures by another path") {
        CAPTURE(found().first_untrue);
        for (const auto& by_rule : found().untrue_by) {
            CAPTURE(by_rule.first);
            CHECK(by_rule.second == 0);
        }
        CHECK(found().untrue == 0);
        std::string seen;
        for (const auto& [rule, times] : found().measured) seen += rule + " " + std::to_string(times) + "; ";
        CAPTURE(seen);
        CHECK(found().measured.size() == 12);
        for (const auto& [rule, times] : found().measured) CHECK(times >= test::sized(15, 300));
    }
    TEST_CASE("languages: every sentence is whole in each, and holds no number but its arguments") {
        CAPTURE(found().first_odd);
        CHECK(found().odd_sentence == 0);
    }
    TEST_CASE("mirror: the mirrored vine and plan have the same total, before caps too") {
        CHECK(found().mirrors > 100);
        CHECK(found().mirrored_apart == 0);
    }
    TEST_CASE("one forgotten act made up for at the end never lowers the total") {
        CAPTURE(found().first_lowered);
        CHECK(found().mended > found().vines / 2);
        CHECK(found().lowered == 0);
    }
}
