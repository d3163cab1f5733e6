// Drives the screens without a display: sets what Dear ImGui is told, draws a frame, reads the probe. Widgets are found
// by name. A state of a mouse button or key is held for one whole frame, as a real one would be at least.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/ui/fonts.h"
#include "render/ui/screens.h"
#include "scenarios/words/load_words.h"

namespace spurwright::test {

// A font file read and every word of our files, once a language: building an atlas is the slow part.
struct Look {
    std::string language = "en";
    int percent = 100;
    int width = 1280, height = 720;
    ui::Face face = ui::Face::paper;
};

std::string source_folder();
words::Words words_of_language(const std::string& language);
std::vector<ui::Spoken> spoken_languages();
std::vector<std::string> all_texts(); // of every word file

class Driver {
public:
    explicit Driver(const Look& look);
    ~Driver();
    Driver(const Driver&) = delete;
    Driver& operator=(const Driver&) = delete;

    // Draws frames until panels have found their height; what was asked in the last one.
    void settle(const ui::State& state, const ui::Marks& marks = {});
    std::optional<ui::Request> frame(const ui::State& state, const ui::Marks& marks = {});
    // Moves there, presses, releases; whatever was asked meanwhile. REQUIREs the widget to be there.
    std::optional<ui::Request> click(const ui::State& state, std::string_view name);
    std::optional<ui::Request> press(const ui::State& state, ui::KeyPress key);
    void type(const ui::State& state, const std::string& text);

    const ui::UiProbe& probe() const { return probe_; }
    const words::Words& words() const { return words_; }
    const ui::Fonts& fonts() const { return fonts_; }
    const Look& look() const { return look_; }
    ui::Views views;

private:
    Look look_;
    words::Words words_;
    std::vector<ui::Spoken> spoken_;
    std::vector<ImWchar> ranges_;
    ImGuiContext* context_ = nullptr;
    ui::Fonts fonts_;
    ui::Grid grid_;
    ui::UiProbe probe_;
    std::vector<ui::KeyPress> keys_;
};

} // namespace spurwright::test
