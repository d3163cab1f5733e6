// The vine file: the little vine's text of the documents, fixed points, refusals by line and part.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "scenarios/io/vine_file.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"
#include "tests/scenarios/schema.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::io;

namespace {

std::string little_text() {
    std::ifstream file(SPURWRIGHT_SOURCE "/assets/vines/little.json");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// The little vine's text with one passage replaced; the passage must be there.
std::string changed(const std::string& passage, const std::string& by) {
    std::string text = little_text();
    const std::size_t at = text.find(passage);
    REQUIRE(at != std::string::npos);
    return text.replace(at, passage.size(), by);
}

std::string refused(const std::string& text) {
    const auto read = read_vine_file(text, "f.json");
    if (read) return "read";
    const Error& e = read.error();
    std::string arguments;
    for (const Named& a : e.arguments)
        if (const auto* part = std::get_if<std::string>(&a.value); part && (a.gap == "part" || a.gap == "key"))
            arguments += " " + *part;
    return std::string(e.key.name) + arguments + " " + std::to_string(e.where.line);
}

} // namespace

TEST_SUITE("scenarios/vine-file") {
    TEST_CASE("the little vine's file reads to its hash, the same as drawn in code") {
        const auto file = read_vine_file(little_text(), "little.json");
        REQUIRE(file);
        CHECK(canonical_text(file->vine) == canonical_text(test::little_vine()));
        CHECK(hash_text(vine_hash(file->vine)) == "c5e6dcf2ebe172d4");
        CHECK(file->code.empty());
        CHECK_FALSE(file->pruned_from);
    }
    TEST_CASE("what is written reads back to the same vine and the same bytes, and keeps the schema") {
        const auto file = read_vine_file(little_text(), "little.json");
        REQUIRE(file);
        const std::string written = print_vine_file(*file);
        const auto again = read_vine_file(written, "again.json");
        REQUIRE(again);
        CHECK(vine_hash(again->vine) == vine_hash(file->vine));
        CHECK(print_vine_file(*again) == written);
        CHECK(test::schema_fault("vine-1", written) == "");
        CHECK(test::schema_fault("vine-1", little_text()) == "");
        CHECK(written.find("\"buds\"") == std::string::npos);
        CHECK(written.find("\"rank\"") == std::string::npos);
        CHECK(written.find('\t') == std::string::npos);
        CHECK(written.find('\r') == std::string::npos);
    }
    TEST_CASE("a pruned vine keeps its brush, wounds, marks, ties and plan through a file") {
        const Vine before = test::little_vine();
        const auto plan = parse_plan("mark a4 left; cut a2.1+18.0 shears; cut a4.5+20.0 shears tilt 20; lay a7 right "
                                     "wraps 1.5; tie a7.1+15.0 tight; lay a4 left wraps 1; cut a6.2+20.0 shears");
        REQUIRE(plan);
        const auto after = prune(before, *plan);
        if (!after) MESSAGE(std::string(after.error().key.name));
        REQUIRE(after);
        VineFile file;
        file.vine = *after;
        file.pruned_from = vine_hash(before);
        file.plan = print_plan(*plan);
        file.title = "Little vine, pruned";
        const std::string written = print_vine_file(file);
        const auto again = read_vine_file(written, "again.json");
        REQUIRE(again);
        CHECK(canonical_text(again->vine) == canonical_text(*after));
        CHECK(again->pruned_from == vine_hash(before));
        CHECK(again->plan == file.plan);
        CHECK(again->title == file.title);
        CHECK(print_vine_file(*again) == written);
        CHECK(test::schema_fault("vine-1", written) == "");
    }
    TEST_CASE("every field away from its default survives") {
        Vine vine = test::little_vine();
        vine.seed = 78'187'493'530;
        vine.recipe = 0;
        vine.vigour = Vigour::high;
        vine.frost = true;
        vine.graft = node_id(AxisId{1}, 1);
        vine.crown_left = node_id(AxisId{1}, 1);
        vine.origin_left.reset();
        vine.origin_right = Length{-1'500};
        vine.capacity = 54'321;
        vine.reserves = {987};
        vine.last_prunings = {680'001};
        vine.last_yield = {3'210'000};
        vine.neighbours[1] = {NeighbourKind::end_post, {700'000}};
        vine.nodes[5].rank = -1;
        vine.nodes[9].tendril_class = 2;
        vine.nodes[9].tendril = Tendril::gripping;
        vine.nodes[9].bunch = Bunch::mummy;
        vine.nodes[9].lateral = Lateral::scar;
        vine.nodes[9].harm = Harm::cracked;
        vine.buds[3].primary = false;
        vine.buds[3].points = Points::across;
        vine.buds[4].harmed = true;
        vine.axes[4].grew = CaneClass::bull;
        vine.axes[4].end = AxisEnd::hedge;
        vine.axes[4].state = AxisState::dead;
        VineFile file;
        file.vine = vine;
        const std::string written = print_vine_file(file);
        const auto again = read_vine_file(written, "again.json");
        REQUIRE(again);
        CHECK(canonical_text(again->vine) == canonical_text(vine));
        CHECK(print_vine_file(*again) == written);
        CHECK(test::schema_fault("vine-1", written) == "");
    }
    TEST_CASE("wrong kind, newer version, missing and unknown keys, wrong words: named with their line") {
        CHECK(refused(changed("spurwright-vine", "spurwright-wine")) == "error.file.kind 1");
        CHECK(refused(changed("\"version\": 1", "\"version\": 2")) == "error.file.newer 1");
        CHECK(refused(changed("\"head\": \"a1.2\", ", "")) == "error.json.missing head 1");
        CHECK(refused(changed("\"origin_left\": 0", "\"origin_lefft\": 0")) == "error.json.unknown-key origin_lefft 5");
        CHECK(refused(changed("\"side\": \"left\", \"ripe\": 203", "\"side\": \"near\", \"ripe\": 203")) ==
              "error.json.not-a-word side 11");
        CHECK(refused(changed("\"joint\": 93,", "\"joint\": 93.00001,")) == "error.json.too-fine joint 14");
        CHECK(refused(changed("\"joint\": 93,", "\"joint\": 1e9,")) == "error.json.too-large-number joint 14");
        CHECK(refused(changed("\"joint\": 93,", "\"joint\": \"93\",")) == "error.json.kind joint 14");
        CHECK(refused(changed("\"wraps\": 1,", "\"wraps\": 0.7,")) == "error.file.wraps 45");
        CHECK(refused(changed("\"born\": 3, \"side\": \"left\"", "\"born\": 3.5, \"side\": \"left\"")) ==
              "error.json.not-whole born 11");
    }
    TEST_CASE("a broken invariant is refused with the part and its line") {
        CHECK(refused(changed("\"on\": \"a3.2\"", "\"on\": \"a3.7\"")) == "error.vine.parent a7 37");
        CHECK(refused(changed("\"d\": [8.8, 8.3], \"at\": [61, 910, 0]", "\"d\": [8.3, 8.8], \"at\": [61, 910, 0]")) ==
              "error.vine.diameters a7.1 39");
        CHECK(refused(changed("\"at\": [61, 1114, 0]", "\"at\": [61, 1214, 0]")) == "error.vine.stretched a7.4 42");
        CHECK(refused(changed("\"spacing\": 1800", "\"spacing\": 180")) == "error.vine.spacing spacing 1");
        CHECK(refused(changed("\"id\": \"a7\"", "\"id\": \"a6\"")) == "error.vine.axis-order a6 33");
        CHECK(refused(changed("\"node\": \"a2.1\", \"beyond\": 15", "\"node\": \"a2.9\", \"beyond\": 15")) ==
              "error.vine.tie t1 46");
    }
    TEST_CASE("a file cut short anywhere is refused and never crashes") {
        const std::string text = little_text();
        for (std::size_t keep = 0; keep + 2 < text.size(); keep += 13) CHECK(refused(text.substr(0, keep)) != "read");
    }
}
