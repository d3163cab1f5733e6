#include "tests/ui/driver.h"

#include <doctest/doctest.h>

#include "render/ui/context.h"

namespace spurwright::test {

std::string source_folder() { return SPURWRIGHT_SOURCE; }

words::Words words_of_language(const std::string& language) {
    auto words = words::load_words(io::Assets(source_folder() + "/assets"), language);
    REQUIRE(words.has_value());
    return *std::move(words);
}

namespace {
std::vector<words::WordFile> word_files() {
    std::vector<words::WordFile> files;
    for (const std::string_view language : words::languages) {
        auto file = words::load_word_file(io::Assets(source_folder() + "/assets"), language);
        REQUIRE(file.has_value());
        files.push_back(*std::move(file));
    }
    return files;
}
} // namespace

std::vector<ui::Spoken> spoken_languages() {
    std::vector<ui::Spoken> spoken;
    for (const words::WordFile& file : word_files()) spoken.push_back({file.language, file.name});
    return spoken;
}

std::vector<std::string> all_texts() {
    std::vector<std::string> texts;
    for (const words::WordFile& file : word_files()) {
        texts.push_back(file.name);
        for (const auto& [key, text] : file.texts) texts.push_back(text);
    }
    return texts;
}

Driver::Driver(const Look& look)
    : look_(look), words_(words_of_language(look.language)), spoken_(spoken_languages()),
      ranges_(ui::glyph_ranges(all_texts())) {
    context_ = ImGui::CreateContext();
    ui::prepare_context();
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(look.width), static_cast<float>(look.height)};
    io.DeltaTime = 1.0f / 60;
    io.MousePos = {-1000, -1000};
    grid_.scale = static_cast<float>(look.percent) / 100;
    grid_.em = ui::Grid::snapped(ui::em_at_one * grid_.scale);
    const auto files = ui::find_fonts();
    REQUIRE(files.has_value());
    const auto fonts = ui::build_fonts(*files, ranges_, grid_.em);
    REQUIRE(fonts.has_value());
    fonts_ = *fonts;
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
    ui::apply(look.face, grid_);
}

Driver::~Driver() { ImGui::DestroyContext(context_); }

std::optional<ui::Request> Driver::frame(const ui::State& state, const ui::Marks& marks) {
    probe_.clear();
    ui::Ui ui{words_, look_.face, grid_, fonts_, keys_, &probe_};
    ImGui::NewFrame();
    auto asked = ui::draw_screens(state, views, spoken_, marks, ui);
    ImGui::Render();
    keys_.clear();
    return asked;
}

void Driver::settle(const ui::State& state, const ui::Marks& marks) {
    for (int i = 0; i < 4; ++i) frame(state, marks);
}

std::optional<ui::Request> Driver::click(const ui::State& state, std::string_view name) {
    settle(state);
    const ui::Probed* found = probe_.find(name);
    REQUIRE_MESSAGE(found, std::string(name));
    REQUIRE_MESSAGE(found->seen.height() > 2, std::string(name));
    ImGuiIO& io = ImGui::GetIO();
    io.MousePos = {(found->seen.x0 + found->seen.x1) / 2, (found->seen.y0 + found->seen.y1) / 2};
    auto asked = frame(state);
    for (const bool down : {true, false}) {
        io.MouseDown[0] = down;
        if (auto one = frame(state)) asked = one;
    }
    io.MousePos = {-1000, -1000};
    return asked;
}

std::optional<ui::Request> Driver::press(const ui::State& state, ui::KeyPress key) {
    ImGuiIO& io = ImGui::GetIO();
    keys_ = {key};
    io.KeyCtrl = key.ctrl;
    io.KeyShift = key.shift;
    io.KeysDown[key.key] = true;
    auto asked = frame(state);
    io.KeysDown[key.key] = false;
    io.KeyCtrl = io.KeyShift = false;
    if (auto one = frame(state)) asked = one;
    return asked;
}

void Driver::type(const ui::State& state, const std::string& text) {
    ImGui::GetIO().AddInputCharactersUTF8(text.c_str());
    frame(state);
}

} // namespace spurwright::test
