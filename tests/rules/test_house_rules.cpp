// House rules as data: what is asked, how it is weighed, how a set is named.
#include <doctest/doctest.h>

#include <set>
#include <string>

#include "sim/core/hash.h"
#include "sim/core/source_list.h"
#include "sim/rules/first_pass.h"
#include "sim/rules/asked.h"
#include "sim/rules/findings.h"
#include "sim/rules/rule_list.h"

using namespace spurwright;
using namespace spurwright::rules;

namespace {

const HouseRules house;

// A side offers nothing, one piece for both, a cane and another spur, or several canes.
void offer(SideOffers& side, int kind, std::uint32_t first) {
    if (kind >= 1) side.canes = side.spurs = {AxisId{first}};
    if (kind == 2) side.spurs.push_back(AxisId{first + 1});
    if (kind == 3) side.canes.push_back(AxisId{first + 2});
}

// The next value of any parameter.
struct Nudge {
    void operator()(bool* v) const { *v = !*v; }
    void operator()(std::int32_t* v) const { ++*v; }
    void operator()(std::optional<std::int32_t>* v) const { *v = v->value_or(0) + 1; }
    void operator()(std::optional<Length>* v) const { *v = Length{v->value_or(Length{}).count + 1}; }
    void operator()(OriginMeasure* v) const { *v = OriginMeasure::creep; }
    void operator()(FirstBud* v) const { *v = FirstBud::up; }
    void operator()(NoNeighbour* v) const { *v = NoNeighbour::run_on; }
    template <class Tag>
    void operator()(Measure<Tag>* v) const {
        ++v->count;
    }
    template <class M>
    void operator()(Range<M>* v) const {
        ++v->low.count;
    }
};

TEST_SUITE("rules/rule-list") {
    TEST_CASE("every rule stands at its own place, with a key, an act and a claim with its place or our choice") {
        std::set<std::string_view> keys;
        for (std::size_t i = 0; i < rule_count; ++i) {
            const Rule& rule = *all_rules[i];
            CAPTURE(std::string(rule.key()));
            CHECK(rules::index_of(rule.name) == i);
            CHECK(keys.insert(rule.key()).second);
            CHECK(rule.asks.name == "rule." + std::string(rule.key()) + ".asks");
            CHECK((!rule.claims.empty() || rule.status == Status::choice));
            for (const Claim& claim : rule.claims) {
                CHECK_FALSE(claim.place.empty());
                CHECK(claim.low <= claim.high);
            }
            if (rule.per != Per::vine) CHECK(rule.missing.name.starts_with("rule."));
            CHECK(source_line(rule, rule.status).name ==
                  (rule.claims.empty() ? "source.choice" : "source.choice-from"));
            CHECK(source_keys(rule).empty() == rule.claims.empty());
        }
    }
    TEST_CASE("each work is listed once, with one address of its own, and is used") {
        std::set<std::string_view> keys, addresses, used;
        for (const Rule* rule : all_rules)
            for (const Claim& claim : rule->claims) used.insert(claim.source->key);
        for (const Claim& claim : first_pass_claims) used.insert(claim.source->key);
        for (const Source* source : sources::all) {
            CAPTURE(std::string(source->key));
            CHECK(keys.insert(source->key).second);
            if (source->url != "-") CHECK(addresses.insert(source->url).second);
            CHECK((source->weight == 'A' || source->weight == 'B' || source->weight == 'C'));
            CHECK(used.count(source->key) == 1);
        }
        CHECK(keys == used);
    }
}

TEST_SUITE("rules/asked") {
    TEST_CASE("the shipped weights sum to 1000, in the groups 350, 200, 200, 150, 100") {
        std::array<int, 5> groups{};
        // Kickers, spares and the weighing weigh only where a house asks for them.
        for (const Rule* rule : all_rules)
            if (rule->name < RuleName::kicker_kept) groups[static_cast<std::size_t>(rule->group)] += house.weight(rule->name);
        CHECK(groups == std::array{350, 200, 200, 150, 100});
        CHECK(house.end_cut.weight_canes + house.end_cut.weight_spurs == house.weight(RuleName::end_cut));
    }
    TEST_CASE("weights in force sum to exactly 1000 whatever is asked, and left and right weigh alike") {
        for (int left = 0; left < 4; ++left)
            for (int right = 0; right < 4; ++right)
                for (const bool sucker : {false, true})
                    for (const bool old_wood : {false, true})
                        for (std::size_t off = 0; off <= rule_count; ++off) {
                            HouseRules some = house;
                            if (off < rule_count) some.weighed[off].on = false;
                            Offers offers;
                            offer(offers.sides[0], left, 10);
                            offer(offers.sides[1], right, 20);
                            offers.suckers = sucker;
                            offers.old_wood = old_wood;
                            const Asked asks = asked(offers, some);
                            REQUIRE(asks.total() == Tenths{1000});
                            REQUIRE(asks.cane == std::array{left > 0, right > 0});
                            REQUIRE(asks.spur == std::array{left > 1, right > 1});
                            if (!sucker) REQUIRE(asks.of_vine(RuleName::suckers) == Tenths{0});
                            if (!old_wood) REQUIRE(asks.of_vine(RuleName::old_wood_stub) == Tenths{0});
                            if (off < rule_count) {
                                REQUIRE(asks.per_cane[off] == Tenths{0});
                                REQUIRE(asks.per_spur[off] == Tenths{0});
                                REQUIRE(asks.once[off] == Tenths{0});
                            }
                        }
    }
}

TEST_SUITE("rules/house-rules") {
    TEST_CASE("a set is named by the hash of its sorted lines, worked out on paper for three") {
        const std::vector<std::string> three{"cane-diameter.weight=50", "cane-diameter.full.high=12000",
                                             "cane-diameter.full.low=8000"};
        CHECK(hash_text(rule_set_hash(three, 1)) == "0fe6556f477ebfb5");
        CHECK(hash_text(rule_set_hash(
                  {"cane-diameter.weight=50", "cane-diameter.full.high=12500", "cane-diameter.full.low=8000"}, 1)) ==
              "365b735a67601a08");
    }
    TEST_CASE("every parameter has a line of its own, in table units, sorted by byte") {
        const std::string text = rule_set_text(house);
        std::vector<std::string> lines;
        for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1)
            lines.push_back(text.substr(at, text.find('\n', at) - at));
        for (std::size_t i = 1; i < lines.size(); ++i)
            CHECK(lines[i - 1].substr(0, lines[i - 1].find('=')) < lines[i].substr(0, lines[i].find('=')));
        for (const std::string_view line :
             {"cane-diameter.full.low=8000", "cane-diameter.weight=50", "origin-distance.measure=distance",
              "origin-distance.arm_to=-", "origin-height.half.high=-", "bud-load.target=-", "cane-side.over_the_head=0",
              "cane-reach.no_neighbour=stop", "count_bud.clear_joint=6000", "tying.wraps.high=3", "caps.hard=400"}) {
            CAPTURE(line);
            CHECK(std::find(lines.begin(), lines.end(), line) != lines.end());
        }
    }
    TEST_CASE("changing any one parameter names another set") {
        std::set<std::uint64_t> hashes{rule_set_hash(house)};
        HouseRules changed;
        const std::size_t count = parameters(changed).size();
        for (std::size_t i = 0; i < count; ++i) {
            changed = HouseRules{};
            std::visit(Nudge{}, parameters(changed)[i].at);
            CAPTURE(std::string(parameters(changed)[i].rule) + "." + std::string(parameters(changed)[i].name));
            CHECK(hashes.insert(rule_set_hash(changed)).second);
            CHECK(changed != house);
        }
        CHECK(count > 2 * rule_count);
    }
    TEST_CASE(
        "the shipped set has no fault; crossed bands, numbers below zero and sets that cannot be weighed are named") {
        CHECK_FALSE(first_fault(house));
        const auto fault = [](auto change) {
            HouseRules broken;
            change(broken);
            const auto found = first_fault(broken);
            return found ? std::string(found->rule) + "." + std::string(found->parameter) : "";
        };
        CHECK(fault([](HouseRules& h) { h.cane_diameter.band.full.low = {13'000}; }) == "cane-diameter.full");
        CHECK(fault([](HouseRules& h) { h.internode_length.half.high = {90'000}; }) == "internode-length.full");
        CHECK(fault([](HouseRules& h) { h.origin_distance.full_to = {-1}; }) == "origin-distance.full_to");
        CHECK(fault([](HouseRules& h) { h.weighed[0].weight = -5; }) == "cane-diameter.weight");
        CHECK(fault([](HouseRules& h) { h.cane_count.wanted = 1; }) == "cane-count.wanted");
        CHECK(fault([](HouseRules& h) { h.bud_load.target = 0; }) == "bud-load.target");
        CHECK(fault([](HouseRules& h) { h.end_cut.weight_canes = 30; }) == "end-cut.weight_canes");
        CHECK(fault([](HouseRules& h) {
                  for (Weighed& w : h.weighed) w.on = false;
              }) == "bud-load.weight");
    }
}

}  // namespace
