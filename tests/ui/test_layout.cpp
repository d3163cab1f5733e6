#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

using namespace spurwright;
using test::Driver;
using test::Staged;

namespace {

constexpr float least_target = 24, slack = 1; // pixels

bool meets(const ui::Box& a, const ui::Box& b) {
    return a.x0 + slack < b.x1 && b.x0 + slack < a.x1 && a.y0 + slack < b.y1 && b.y0 + slack < a.y1;
}

ui::Box shared_part(const ui::Box& a, const ui::Box& b) {
    return {std::max(a.x0, b.x0), std::max(a.y0, b.y0), std::min(a.x1, b.x1), std::min(a.y1, b.y1)};
}

// Whether one lies over the other, where both are seen or both are not: what is scrolled out of sight inside a panel does
// not lie over what stands still beside it.
bool lies_over(const ui::Probed& a, const ui::Probed& b) {
    if (!meets(a.box, b.box)) return false;
    const ui::Box both = shared_part(a.box, b.box);
    return meets(both, a.seen) == meets(both, b.seen);
}

std::string missing_letters(const Driver& driver, const std::string& text) {
    std::string missing;
    const char* at = text.c_str();
    while (*at) {
        const auto lead = static_cast<unsigned char>(*at);
        const int length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        unsigned letter = length == 1 ? lead : lead & (0x7Fu >> length);
        for (int i = 1; i < length; ++i) letter = letter << 6 | (static_cast<unsigned char>(at[i]) & 0x3Fu);
        for (const ImFont* font : {driver.fonts().body, driver.fonts().strong, driver.fonts().head})
            if (letter >= 0x20 && (letter > 0xFFFF || !font->FindGlyphNoFallback(static_cast<ImWchar>(letter))))
                missing += std::string(at, static_cast<std::size_t>(length));
        at += length;
    }
    return missing;
}

// What is wrong with one widget by itself.
std::string fault_of(const Driver& driver, const ui::Probed& p) {
    const auto width = static_cast<float>(driver.look().width);
    if (p.target && (p.box.width() < least_target || p.box.height() < least_target)) return "too small for a finger";
    if (p.text_width > p.box.width() + slack) return "text wider than its place";
    if (p.box.x0 < -slack || p.box.x1 > width + slack) return "over the window's edge";
    const bool shown = p.seen.height() > 0 && p.seen.width() > 0;
    if (shown && (p.seen.x0 > p.box.x0 + slack || p.seen.x1 < p.box.x1 - slack)) return "clipped at its side";
    if (p.label.starts_with("[")) return "a key without words";
    if (const std::string missing = missing_letters(driver, p.label); !missing.empty())
        return "no glyph for " + missing;
    return {};
}

std::vector<std::string> faults_of(const Driver& driver) {
    std::vector<std::string> faults;
    const auto& all = driver.probe().all();
    std::map<std::string, int> names;
    for (const ui::Probed& p : all) {
        if (!p.name.empty() && ++names[p.name] == 2) faults.push_back(p.name + ": twice");
        if (const std::string fault = fault_of(driver, p); !fault.empty())
            faults.push_back(p.name + " '" + p.label + "': " + fault);
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = i + 1; j < all.size(); ++j)
            if (all[i].panel == all[j].panel && lies_over(all[i], all[j]))
                faults.push_back(all[i].name + " '" + all[i].label + "' lies over " + all[j].name + " '" +
                                 all[j].label + "'");
    const auto& panels = driver.probe().panels();
    const ui::Box screen{0, 0, static_cast<float>(driver.look().width), static_cast<float>(driver.look().height)};
    for (std::size_t i = 0; i < panels.size(); ++i) {
        const ui::Box& box = panels[i].box;
        if (box.x0 < -slack || box.y0 < -slack || box.x1 > screen.x1 + slack || box.y1 > screen.y1 + slack)
            faults.push_back("panel " + panels[i].name + " leaves the window");
        for (std::size_t j = i + 1; j < panels.size(); ++j)
            if (panels[i].over == panels[j].over && meets(box, panels[j].box))
                faults.push_back("panel " + panels[i].name + " lies over " + panels[j].name);
    }
    return faults;
}

std::string lines(const std::vector<std::string>& all) {
    std::string text;
    for (const std::string& one : all) text += "\n  " + one;
    return text;
}

void check_all(const test::Look& look, const std::vector<Staged>& staged) {
    Driver driver(look);
    for (const Staged& one : staged) {
        driver.views = one.views;
        practice::Shell shell = one.shell;
        shell.settings.language = look.language;
        shell.settings.text_percent = look.percent;
        driver.settle(one.state_with(shell), one.marks);
        const auto faults = faults_of(driver);
        CHECK_MESSAGE(faults.empty(), one.name, " ", look.language, " ", look.percent, " % ", look.width, "x",
                      look.height, lines(faults));
        CHECK_MESSAGE(!driver.probe().all().empty(), one.name);
    }
}

} // namespace

TEST_CASE("every screen in each language and text size: no name twice, no overlap, no small target, no clipped text, "
          "no missing glyph") {
    const std::vector<Staged> staged = test::all_staged();
    for (const char* language : {"en", "es"})
        for (const int percent : {100, 150, 250})
            for (const auto& [width, height] : {std::pair{1280, 720}, std::pair{1920, 1080}})
                check_all({language, percent, width, height}, staged);
}

TEST_CASE("the regional wordings, the dusk face and odd sizes hold too") {
    const std::vector<Staged> staged = test::all_staged();
    check_all({"es-CL", 200, 1366, 768, ui::Face::dusk}, staged);
    check_all({"es-ES", 125, 1024, 768, ui::Face::dusk}, staged);
    check_all({"en", 175, 2560, 1440}, staged);
}

TEST_CASE("every word of every file has its glyphs") {
    const Driver driver({});
    for (const std::string& text : test::all_texts()) CHECK_MESSAGE(missing_letters(driver, text).empty(), text);
}

TEST_CASE("ids outlive a change of language: the same widgets by the same names") {
    const std::vector<Staged> staged = test::all_staged();
    std::vector<std::vector<std::string>> names;
    for (const char* language : {"en", "es"}) {
        Driver driver({language, 100, 1920, 1080});
        names.emplace_back();
        for (const Staged& one : staged) {
            driver.views = one.views;
            driver.settle(one.state());
            for (const ui::Probed& p : driver.probe().all())
                if (p.target) names.back().push_back(one.name + "/" + p.name);
        }
    }
    CHECK(names[0] == names[1]);
}

TEST_CASE("unchecked wording is said on each full screen that shows it") {
    Driver driver({"es", 100, 1920, 1080});
    const std::string line = driver.words()("words.unchecked");
    for (const Staged& one : test::all_staged()) {
        if (one.views.sheet != ui::Sheet::none) continue;
        driver.views = one.views;
        driver.settle(one.state());
        if (one.shell.read_only) continue; // says that in its place
        bool said = false;
        for (const ui::Probed& p : driver.probe().all()) said |= p.label == line;
        CHECK_MESSAGE(said, one.name);
    }
}

TEST_CASE("a missing font is a sentence that names the package, not an end of the program") {
    const Driver driver({});
    const auto built = ui::build_fonts({"/nowhere/body.ttf", "/nowhere/strong.ttf"}, ui::glyph_ranges({}), 16);
    REQUIRE_FALSE(built.has_value());
    CHECK(built.error().fault == Fault::missing);
    CHECK(driver.words().sentence(built.error().key, built.error().arguments).find("fonts-dejavu-core") !=
          std::string::npos);
}
