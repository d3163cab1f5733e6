// The order of a quiz, its results from events alone, and the text of its events.
#include <doctest/doctest.h>

#include "scenarios/quiz/event_text.h"
#include "scenarios/quiz/results.h"

using namespace spurwright;
using namespace spurwright::quiz;

namespace {

// Three items by hand: four places, the second right; two places asked; a number.
std::vector<Item> three_items() {
    Item one, two, three;
    one.kind = Kind::pick_one;
    one.places.resize(4);
    one.accepted = {{2}};
    one.rule = rules::RuleName::origin_distance;
    two.kind = Kind::pick_two;
    two.places.resize(6);
    two.accepted = {{1, 4}, {2, 4}};
    two.rule = rules::RuleName::cane_count;
    three.kind = Kind::count;
    three.places.resize(1);
    three.accepted = {{9}};
    three.rule = rules::RuleName::bud_load;
    return {one, two, three};
}

Quiz begun() {
    Quiz quiz({1, {Kind::pick_one}, 3, "general", "00", "es", {5, 6}}, three_items());
    quiz.take(event::Next{});
    return quiz;
}

Voter post(int number) { return {Way::post, number}; }

}  // namespace

TEST_CASE("answers come in only while the item is open, each of its kind, and the last of a voter counts") {
    Quiz quiz = begun();
    CHECK(quiz.phase() == Phase::open);
    CHECK(quiz.take(event::Answered{post(1), {3}}));
    CHECK(quiz.take(event::Answered{post(1), {2}}));
    CHECK(quiz.take(event::Answered{post(2), {1}}));
    CHECK_FALSE(quiz.take(event::Answered{post(2), {5}}));
    CHECK_FALSE(quiz.take(event::Answered{post(2), {1, 2}}));
    CHECK_FALSE(quiz.take(event::Answered{{Way::hands, 0}, {1}}));
    CHECK(quiz.take(event::Counted{{2}, 7}));
    CHECK(quiz.take(event::Counted{{2}, 3}));
    CHECK(quiz.state().last().answers() == 5);
    CHECK_FALSE(quiz.take(event::Revealed{}));
    CHECK(quiz.take(event::Locked{}));
    CHECK_FALSE(quiz.take(event::Answered{post(1), {1}}));
    CHECK(quiz.share_right(0, 0) == PerMille{800});
    CHECK_FALSE(quiz.talk_proposed());
    CHECK(quiz.take(event::Revealed{}));
    CHECK(quiz.take(event::Next{}));
    CHECK(quiz.at() == 1);
}

TEST_CASE("after talking only the second answers count, and both are kept") {
    Quiz quiz = begun();
    quiz.take(event::Answered{post(1), {2}});
    quiz.take(event::Answered{post(2), {1}});
    quiz.take(event::Locked{});
    CHECK(quiz.talk_proposed());
    CHECK(quiz.take(event::Talk{}));
    quiz.take(event::Answered{post(1), {2}});
    quiz.take(event::Answered{post(2), {2}});
    quiz.take(event::Locked{});
    CHECK(quiz.phase() == Phase::locked_again);
    quiz.take(event::Revealed{});
    const Results results = results_of(quiz);
    REQUIRE(results.items.size() == 1);
    CHECK(results.items[0].first == Share{1, 2});
    CHECK(results.items[0].last == Share{2, 2});
    CHECK(results.all == Share{2, 2});
}

TEST_CASE("an item the house disagrees with is dropped or keyed anew, and everything counts again") {
    Quiz quiz = begun();
    quiz.take(event::Answered{post(1), {2}});
    quiz.take(event::Answered{post(2), {1}});
    quiz.take(event::Locked{});
    CHECK_FALSE(quiz.take(event::Dropped{0}));  // not before the reveal
    quiz.take(event::Revealed{});
    CHECK(results_of(quiz).all == Share{1, 2});
    CHECK(results_of(quiz).items[0].commonest_wrong == Answer{1});
    CHECK(quiz.take(event::Rekeyed{0, {{1}}}));
    CHECK(results_of(quiz).all == Share{1, 2});
    CHECK(results_of(quiz).voters.at(post(1)) == Share{0, 1});
    CHECK(results_of(quiz).items[0].rekeyed);
    CHECK(quiz.take(event::Dropped{0}));
    CHECK(results_of(quiz).all == Share{0, 0});
    CHECK(results_of(quiz).items[0].dropped);
    CHECK(quiz.take(event::Dropped{0}));  // taken back
    CHECK(results_of(quiz).all == Share{1, 2});
    CHECK_FALSE(quiz.take(event::Rekeyed{0, {}}));
    CHECK_FALSE(quiz.take(event::Rekeyed{9, {{1}}}));
}

TEST_CASE("ended early, gone back and gone on again: what was left stays as it was") {
    Quiz quiz = begun();
    quiz.take(event::Answered{post(1), {2}});
    quiz.take(event::Locked{});
    quiz.take(event::Revealed{});
    quiz.take(event::Next{});
    quiz.take(event::Answered{post(1), {1, 4}});
    CHECK(quiz.take(event::Back{}));
    CHECK(quiz.phase() == Phase::revealed);
    CHECK(quiz.take(event::Next{}));
    CHECK(quiz.phase() == Phase::open);
    CHECK(quiz.state().last().answers() == 1);
    CHECK(quiz.take(event::Ended{}));
    CHECK(quiz.phase() == Phase::ended);
    CHECK(results_of(quiz).items.size() == 1);
    CHECK(quiz.take(event::Back{}));
    CHECK(quiz.phase() == Phase::open);
}

TEST_CASE("a rule is named as weak from eight answers on; the two most often wrong are shown first") {
    Quiz quiz = begun();
    quiz.take(event::Counted{{1}, 6});
    quiz.take(event::Counted{{2}, 2});
    quiz.take(event::Locked{});
    quiz.take(event::Revealed{});
    quiz.take(event::Next{});
    quiz.take(event::Counted{{1, 4}, 7});
    quiz.take(event::Locked{});
    quiz.take(event::Revealed{});
    const Results results = results_of(quiz);
    REQUIRE(results.rules.size() == 2);
    CHECK(results.rules[0].rule == rules::RuleName::origin_distance);
    CHECK(results.rules[0].named());
    CHECK_FALSE(results.rules[1].named());
    CHECK(results.to_show == std::vector<rules::RuleName>{rules::RuleName::origin_distance});
}

TEST_CASE("every event is read back as it was written") {
    const std::vector<Event> events{event::Gathered{18'000'000'000'000'000'001u, {Kind::pick_two, Kind::which_job}, 8, "own", "0123456789abcdef", "es", {4, 0, 7}},
                                    event::Answered{post(2), {1, 4}},
                                    event::Answered{{Way::person, 7}, {3}},
                                    event::Counted{{2}, 12},
                                    event::Locked{},
                                    event::Talk{},
                                    event::Revealed{},
                                    event::Next{},
                                    event::Back{},
                                    event::Ended{},
                                    event::Dropped{3},
                                    event::Rekeyed{3, {{1}, {2}}}};
    for (const Event& event : events) {
        const std::string line = print_event(event);
        CAPTURE(line);
        const auto read = read_event(line, "journal");
        REQUIRE(read);
        CHECK(*read == event);
    }
}

TEST_CASE("an event that nobody knows, or out of bounds, is refused") {
    for (const char* line : {"", "{}", "[]", R"({"event":"cheer"})", R"({"event":"answered","way":"post","number":1,"answer":[99]})",
                             R"({"event":"answered","way":"post","number":-1,"answer":[1]})", R"({"event":"answered","way":"post","number":1,"answer":[1,2,3]})",
                             R"({"event":"locked","more":1})", R"({"event":"gathered","seed":"x","items":8,"house":"","rule_set":"","language":"en","kinds":[]})",
                             R"({"event":"gathered","seed":"1","items":8,"house":"","rule_set":"","language":"en","kinds":["guess"]})"})
        CHECK_FALSE(read_event(line, "journal"));
}
