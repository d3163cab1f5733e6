// Contrast, marks and the words beside them.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "render/ui/digit_tags.h"
#include "render/ui/part_words.h"
#include "sim/vine/vine_query.h"
#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

using namespace spurwright;

namespace {

// Relative luminance and contrast as WCAG 2 defines them, worked apart from the code under test.
double luminance(ImU32 colour) {
    const auto linear = [&](int shift) {
        const double c = ((colour >> shift) & 255u) / 255.0;
        return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(0) + 0.7152 * linear(8) + 0.0722 * linear(16);
}
double contrast(ImU32 a, ImU32 b) {
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

// Words without a window.
ui::Ui plain_ui(const words::Words& words) { return {words, ui::Face::paper, {}, {}, {}}; }

} // namespace

TEST_CASE("text has 4.5 to 1 on every ground, edges and the accent 3 to 1, in both faces") {
    for (const ui::Face face : {ui::Face::paper, ui::Face::dusk}) {
        const ui::Palette& p = ui::palette(face);
        for (const ImU32 ground : {p.panel, p.field, p.raised, p.hover}) {
            CHECK(contrast(p.ink, ground) >= 4.5);
            CHECK(contrast(p.soft, ground) >= 4.5);
        }
        CHECK(contrast(p.on_accent, p.accent) >= 4.5);
        CHECK(contrast(p.accent, p.panel) >= 3);
        CHECK(contrast(p.line, p.panel) >= 3);
    }
    CHECK(contrast(ui::colour(0x0072B2), ui::colour(0xF4F1EA)) ==
          doctest::Approx(4.60).epsilon(0.01)); // a worked value
}

TEST_CASE("no two tapes look alike without colour, but those of the two canes") {
    const Role roles[] = {Role::left, Role::spur, Role::spare, Role::remove};
    for (const Role a : roles)
        for (const Role b : roles)
            if (a != b) CHECK(ui::tape_of(a).end != ui::tape_of(b).end);
    const rules::Mend mends[] = {rules::Mend::nothing, rules::Mend::now, rules::Mend::next_winter,
                                 rules::Mend::carried};
    for (const rules::Mend a : mends)
        for (const rules::Mend b : mends)
            if (a != b) CHECK(ui::tape_of(a).end != ui::tape_of(b).end);
}

TEST_CASE("labels on the picture keep clear of each other and of the window's edge") {
    test::Driver driver({});
    const practice::Practice practice = test::grown_practice();
    practice::Shell shell;
    shell.screen = practice::Screen::row;
    ui::Marks marks;
    for (int i = 0; i < 4; ++i)
        marks.labels.push_back({{1270, 300.0f + 4.0f * static_cast<float>(i)},
                                "a" + std::to_string(400 + i) + ", like a pencil",
                                "11 buds",
                                false});
    driver.settle({shell, &practice}, marks);
    std::vector<ui::Box> boxes;
    for (const ui::Probed& p : driver.probe().all())
        if (p.name.starts_with("mark.label")) boxes.push_back(p.box);
    REQUIRE(boxes.size() == 4);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        CHECK(boxes[i].x1 <= 1280);
        for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(boxes[i].meets(boxes[j]));
    }
}

TEST_CASE("the pointer's label says hand measure and buds, the millimetres when asked, and never the age") {
    const practice::Practice practice = test::grown_practice();
    for (const char* language : {"en", "es"}) {
        const words::Words words = test::words_of_language(language);
        const ui::Ui ui = plain_ui(words);
        for (const Axis& axis : practice.start().axes) {
            const practice::Spot spot{axis.id, {}, {}};
            const ui::Label plain = ui::hover_label(ui, practice.start(), spot, false, false, {}),
                            exact = ui::hover_label(ui, practice.start(), spot, true, false, {});
            CHECK(plain.first.find("mm") == std::string::npos);
            CHECK(exact.first.find("mm") != std::string::npos);
            for (const std::string_view told : {"year", "old", "cane", "año", "vieja", "vara", "winter", "invierno"})
                CHECK_MESSAGE((plain.first + plain.second).find(told) == std::string::npos, plain.first);
        }
    }
    const words::Words words = test::words_of_language("en");
    const ui::Ui ui = plain_ui(words);
    CHECK(words.sentence(ui::thickness_words(Length{7'000})) == "like a pencil");
    CHECK(words.sentence(ui::thickness_words(Length{5'900})) == "thinner than a pencil");
    CHECK(ui::distance_words(ui, Length{20'000}) == "1 thumb");
    CHECK(ui::distance_words(ui, Length{10'000}) == "½ thumb");
    CHECK(ui::distance_words(ui, Length{90'000}) == "1 fist");
    CHECK(ui::distance_words(ui, Length{300'000}) == "1½ hand spans");
    CHECK(ui::exact_length(ui, Length{25'400}, true) == "1 in");
}

TEST_CASE("what a cut would do is told before it is made") {
    const practice::Practice practice = test::grown_practice();
    const words::Words words = test::words_of_language("en");
    const ui::Ui ui = plain_ui(words);
    const AxisId cane = cane_candidates(practice.start()).front();
    const auto preview = practice::preview(practice.start(), {node_id(cane, 2), Length{20'000}, Tool::shears, {}});
    const ui::Label label = ui::cut_label(ui, preview, {});
    CHECK(label.first.find("1 thumb past node 2") != std::string::npos);
    CHECK(label.first.find(std::to_string(preview.buds_kept) + (preview.buds_kept == 1 ? " bud kept" : " buds kept")) !=
          std::string::npos);
    CHECK(label.second.find(std::to_string(preview.buds_off)) != std::string::npos);
}

TEST_CASE("on the wall a capital letter is a thirtieth of the screen's height or more, of the question a twenty-fifth") {
    for (const float height : {720.0f, 1080.0f, 2160.0f}) {
        test::Look look;
        test::Driver driver(look);
        const float em = std::round(height * ui::wall_em_share);
        const auto files = ui::find_fonts();
        REQUIRE(files.has_value());
        std::vector<ImWchar> ranges{'A', 'Z', 0};
        const auto fonts = ui::build_fonts(*files, ranges, em);
        REQUIRE(fonts.has_value());
        const auto capital = [](const ImFont& font) {
            const ImFontGlyph* glyph = font.FindGlyph('H');
            return glyph->Y1 - glyph->Y0;
        };
        CHECK(capital(*fonts->body) >= height / 30 - 1);
        CHECK(capital(*fonts->head) >= height / 25);
    }
}

TEST_CASE("tapes with digits do not lie over each other, nor over panels, nor over the window's edge") {
    const ui::Box within{0, 0, 1280, 720};
    const std::vector<ui::Box> panels{{720, 0, 1280, 720}};
    for (int seed = 0; seed < 200; ++seed) {
        std::vector<ui::DigitTag> tags;
        for (int i = 0; i < 6; ++i) {
            ui::DigitTag tag;
            tag.at = {300.0f + static_cast<float>((seed * 37 + i * 53) % 120), 200.0f + static_cast<float>((seed * 29 + i * 31) % 90)};
            tag.digit = i + 1;
            tags.push_back(tag);
        }
        const auto boxes = ui::digit_boxes(tags, 60, 45, within, panels);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            CHECK(boxes[i].x0 >= 0);
            CHECK(boxes[i].x1 <= 720);
            for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(boxes[i].meets(boxes[j]));
        }
    }
}
