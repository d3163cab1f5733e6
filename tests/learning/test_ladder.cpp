// The rule of going up and down the ladder, at its edges, by hand; and which lesson comes next.
#include <doctest/doctest.h>

#include "scenarios/learning/ladder.h"

using namespace spurwright;
using namespace spurwright::learning;
using records::LadderVine;
using rules::Step;

namespace {

constexpr int top = 6;

LadderVine vine(int rung, std::vector<records::StepResult> yours = {{Step::choose, Tenths{0}, Tenths{0}, false}}) { return {"first", 0, rung, Tenths{20}, std::move(yours)}; }
LadderVine watched() { return vine(0, {}); }
LadderVine poor(int rung, Step step) { return vine(rung, {{step, Tenths{151}, Tenths{0}, false}}); }
LadderVine middling(int rung) { return vine(rung, {{Step::choose, Tenths{90}, Tenths{0}, false}}); }

int rung_after(const std::vector<LadderVine>& walked) { return standing(walked, top).rung; }

}  // namespace

TEST_CASE("a vine went well within its tolerance, or with at most 6 points more that can be mended now; never with a capped fault") {
    CHECK(went_well(vine(1, {{Step::choose, Tenths{20}, Tenths{0}, false}})));
    CHECK_FALSE(went_well(vine(1, {{Step::choose, Tenths{21}, Tenths{0}, false}})));
    CHECK_FALSE(went_well(vine(1, {{Step::choose, Tenths{11}, Tenths{0}, false}, {Step::lengths, Tenths{10}, Tenths{0}, false}})));
    CHECK(went_well(vine(1, {{Step::lengths, Tenths{60}, Tenths{60}, false}})));
    CHECK_FALSE(went_well(vine(1, {{Step::lengths, Tenths{61}, Tenths{61}, false}})));
    CHECK(went_well(vine(1, {{Step::lengths, Tenths{80}, Tenths{60}, false}})));       // 2 points of it within the tolerance
    CHECK_FALSE(went_well(vine(1, {{Step::lengths, Tenths{81}, Tenths{60}, false}})));
    CHECK_FALSE(went_well(vine(1, {{Step::choose, Tenths{0}, Tenths{0}, true}})));
    CHECK(went_well(vine(1, {{Step::choose, Tenths{-30}, Tenths{0}, false}, {Step::lengths, Tenths{20}, Tenths{0}, false}})));
    CHECK_FALSE(went_well(vine(1, {{Step::choose, Tenths{-30}, Tenths{0}, false}, {Step::lengths, Tenths{21}, Tenths{0}, false}})));  // done better elsewhere mends nothing
}

TEST_CASE("a step is poor with a capped fault or more than 15 points lost") {
    CHECK(poor_steps(vine(1, {{Step::choose, Tenths{150}, Tenths{0}, false}})).empty());
    CHECK(poor_steps(poor(1, Step::choose)) == std::vector{Step::choose});
    CHECK(poor_steps(vine(1, {{Step::choose, Tenths{0}, Tenths{0}, true}, {Step::lengths, Tenths{200}, Tenths{200}, false}})) == std::vector{Step::choose, Step::lengths});
}

TEST_CASE("up: from watching at once, then after two running that went well") {
    CHECK(standing({}, top).rung == 0);
    CHECK(standing({}, top).moved == Moved::begins);
    CHECK(rung_after({watched()}) == 1);
    CHECK(standing({watched()}, top).why == TextKey{"ladder.why.watched"});
    CHECK(rung_after({watched(), vine(1)}) == 1);
    CHECK(standing({watched(), vine(1)}, top).why == TextKey{"ladder.why.one-more"});
    CHECK(rung_after({watched(), vine(1), vine(1)}) == 2);
    CHECK(standing({watched(), vine(1), vine(1)}, top).moved == Moved::up);
    CHECK(standing({}, top, 3).rung == 3);  // work taken up again
    CHECK(standing({vine(3), vine(3)}, top, 3).rung == 4);
    CHECK(rung_after({watched(), vine(1), middling(1), vine(1)}) == 1);  // not running
    CHECK(rung_after({watched(), vine(1), middling(1), vine(1), vine(1)}) == 2);
    CHECK(rung_after({watched(), vine(1), vine(1), vine(2)}) == 2);  // the two before are used up
    CHECK(rung_after({watched(), vine(1), watched(), vine(1)}) == 2);  // watching one more takes nothing away
}

TEST_CASE("whoever does more than is suggested goes up to it at once; less than suggested moves nothing") {
    CHECK(rung_after({vine(6), vine(6)}) == 6);  // skilled hands need no steps between
    CHECK(rung_after({watched(), vine(4), vine(5)}) == 5);  // above the lower of the two
    CHECK(rung_after({watched(), vine(1), vine(1), vine(1), vine(1)}) == 2);
    CHECK(rung_after({watched(), vine(1), vine(1), poor(1, Step::choose), poor(1, Step::choose)}) == 2);
    CHECK(rung_after({watched(), poor(6, Step::choose), poor(6, Step::choose)}) == 1);  // tried, and nothing taken for it
    CHECK(rung_after({vine(6), vine(6), vine(6), vine(6)}) == 6);  // there is no rung above the last
    CHECK(standing({vine(6), vine(6), vine(6)}, top).why == TextKey{"ladder.why.top"});
}

TEST_CASE("down: two running with the same step poor; one together, then theirs again") {
    const std::vector<LadderVine> on_two{watched(), vine(1), vine(1)};
    const auto then = [&](std::vector<LadderVine> more) {
        std::vector<LadderVine> all = on_two;
        all.insert(all.end(), more.begin(), more.end());
        return standing(all, top);
    };
    CHECK(then({poor(2, Step::lengths)}).rung == 2);
    CHECK(then({poor(2, Step::lengths), poor(2, Step::choose)}).rung == 2);  // not the same step
    CHECK(then({poor(2, Step::lengths), middling(2), poor(2, Step::lengths)}).rung == 2);  // not running
    const Standing down = then({poor(2, Step::lengths), poor(2, Step::lengths)});
    CHECK(down.rung == 1);
    CHECK(down.moved == Moved::down);
    CHECK(down.step == Step::lengths);
    CHECK(down.why == TextKey{"ladder.why.down"});
    CHECK(then({poor(2, Step::lengths), poor(2, Step::lengths), vine(1)}).rung == 2);  // one together, then theirs again
    CHECK(then({poor(2, Step::lengths), poor(2, Step::lengths), vine(1), vine(2)}).rung == 2);  // from there two as ever
    CHECK(then({poor(2, Step::lengths), poor(2, Step::lengths), vine(1), vine(2), vine(2)}).rung == 3);
    CHECK(rung_after({watched(), poor(1, Step::choose), poor(1, Step::choose)}) == 0);  // together: watched
    CHECK(rung_after({watched(), poor(1, Step::choose), poor(1, Step::choose), watched()}) == 1);
    CHECK(rung_after({watched(), poor(1, Step::choose), poor(1, Step::choose), watched(), vine(1)}) == 1);
}

TEST_CASE("a lesson stays at hand until two of its vines went well or five were walked; then the next in order") {
    const std::vector<std::string> scenes{"first", "second", "third"};
    const auto of = [](const char* scene, std::size_t number, LadderVine one) {
        one.scene = scene;
        one.number = number;
        return one;
    };
    CHECK(next_lesson({}, scenes) == 0);
    CHECK(next_lesson({of("first", 0, watched())}, scenes) == 0);
    std::vector<LadderVine> walked{of("first", 0, watched()), of("first", 1, vine(1)), of("first", 2, vine(1))};
    CHECK(progress_of(walked, "first").next == 3);
    CHECK(progress_of(walked, "first").walked == 2);
    CHECK(next_lesson(walked, scenes) == 1);
    for (std::size_t i = 0; i < 4; ++i) walked.push_back(of("second", i, middling(2)));
    CHECK(next_lesson(walked, scenes) == 1);
    walked.push_back(of("second", 4, middling(2)));
    CHECK(next_lesson(walked, scenes) == 2);
    CHECK(next_lesson({of("third", 0, vine(1)), of("third", 1, vine(1))}, scenes) == 0);  // round to those not through
    for (std::size_t i = 0; i < 2; ++i) walked.push_back(of("third", i, vine(2)));
    CHECK(next_lesson(walked, scenes) == 0);  // all through: the one walked longest ago
    walked.push_back(of("first", 3, vine(2)));
    CHECK(next_lesson(walked, scenes) == 1);
}
