// The wall as a room reads it: all of a question and of its answer stands there at once, in both languages, and nothing
// that is read is smaller than 10 minutes of arc on a 55-inch screen (0.685 m high) from 6 m.
#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <thread>

#include "render/ui/digit_tags.h"
#include "render/ui/room_text.h"
#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

using namespace spurwright;
namespace happened = quiz::event;

namespace {

constexpr int room_percent = 360; // 16 pixels at 100: the wall's em at 1080 pixels
constexpr float screen_high = 1080;

// Minutes of arc of so many pixels of the screen's height.
float arc_minutes(float pixels) { return std::atan(pixels / screen_high * 0.685f / 6.0f) * 60 * 180 / 3.14159265f; }

std::shared_ptr<practice::CrewQuiz> quiz_of_every_kind(const std::string& language) {
    auto crew = std::make_shared<practice::CrewQuiz>("", test::words_of_language(language == "en" ? "es" : "en"));
    crew->setup.kinds.assign(quiz::all_kinds.begin(), quiz::all_kinds.end());
    crew->setup.questions = static_cast<int>(quiz::kind_count);
    crew->begin(7, "general", rules::HouseRules{}, language);
    while (!crew->poll()) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    REQUIRE(crew->quiz());
    return crew;
}

// What of the room's lines a panel cut off, as text.
std::string cut_off(test::Driver& driver, const ui::State& state) {
    driver.settle(state);
    std::string cut;
    for (const ui::Probed& one : driver.probe().all())
        if (one.name.empty() && one.seen.height() < one.box.height() - 1) cut += one.label + "\n";
    return cut;
}

} // namespace

TEST_CASE("every kind of question, open, answered and shown, stands on the wall at once: nobody in the room can scroll") {
    for (const char* language : {"en", "es"}) {
        CAPTURE(language);
        test::Look look;
        look.language = language;
        look.percent = room_percent;
        look.width = 1920;
        look.height = static_cast<int>(screen_high);
        test::Driver driver(look);
        practice::Shell shell;
        shell.screen = practice::Screen::wall;
        const auto crew = quiz_of_every_kind(language);
        const ui::State state{shell, nullptr, nullptr, crew.get()};
        for (std::size_t at = 0; at < crew->quiz()->items().size(); ++at) {
            REQUIRE(crew->take(happened::Next{}));
            const quiz::Item& item = crew->quiz()->item();
            CAPTURE(std::string(word_of(item.kind)));
            CHECK(cut_off(driver, state) == "");
            for (std::uint8_t digit = 1; digit <= 3; ++digit) {
                const quiz::Answer said = item.asked() == 2 ? quiz::Answer{digit, static_cast<std::uint8_t>(digit + 1)} : quiz::Answer{digit};
                REQUIRE(crew->take(happened::Answered{{quiz::Way::post, digit}, said}));
            }
            CHECK(cut_off(driver, state) == "");
            REQUIRE(crew->take(happened::Locked{}));
            CHECK(cut_off(driver, state) == "");
            REQUIRE(crew->take(happened::Revealed{}));
            CHECK(cut_off(driver, state) == "");
        }
    }
}

TEST_CASE("nothing the room reads is smaller than 10 minutes of arc, and the digits of the tapes are as high as the rule asks") {
    test::Look look;
    look.percent = room_percent;
    test::Driver driver(look);
    const ImFont &body = *driver.fonts().body, &strong = *driver.fonts().strong;
    const auto capital = [](const ImFont& font, ImWchar letter) {
        const ImFontGlyph* glyph = font.FindGlyph(letter);
        return glyph->Y1 - glyph->Y0;
    };
    const float em = screen_high * ui::wall_em_share, of_driver = em / body.FontSize;
    CHECK(arc_minutes(capital(body, 'H') * of_driver) >= 12.9f);
    CHECK(arc_minutes(capital(body, 'H') * of_driver * ui::least_room_share) >= 9.8f); // a letter is whole pixels: half a pixel less
    const float digit = capital(strong, '4') / strong.FontSize * em * ui::tag_height_em * ui::digit_share;
    CHECK(digit >= screen_high / 30 - 1);
}

TEST_CASE("the share falls with what is to be read and is the least where nothing fits") {
    test::Driver driver(test::Look{});
    const words::Words words = test::words_of_language("en");
    ui::Ui ui{words, ui::Face::paper, {}, driver.fonts(), {}};
    const ui::RoomLine line{"one two three four five six seven eight nine ten eleven twelve", {}};
    float before = 1;
    for (std::size_t n = 1; n <= 40; ++n) {
        const float share = ui::room_share(ui, ui::RoomLines(n, line), {300, 400});
        CHECK(share <= before);
        if (share > ui::least_room_share) CHECK(ui::room_height(ui, ui::RoomLines(n, line), 300, share) <= 400);
        before = share;
    }
    CHECK(before == ui::least_room_share);
}
