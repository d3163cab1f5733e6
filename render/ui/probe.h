// What stood on the screen this frame: every widget our wrappers made, by name. Tests find and click widgets through
// it; the window leaves it out. Must not know: screens, words.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace spurwright::ui {

struct Box {
    float x0 = 0, y0 = 0, x1 = 0, y1 = 0; // pixels of the window
    float width() const { return x1 - x0; }
    float height() const { return y1 - y0; }
    bool meets(const Box& other) const { return x0 < other.x1 && other.x0 < x1 && y0 < other.y1 && other.y0 < y1; }
};

struct Probed {
    std::string name;     // "row.undo", with the part's name in lists: "acts.3"
    std::string label;    // as shown
    Box box;              // whole, even where a scrolled panel hides some
    Box seen;             // what its panel lets through
    float text_width = 0; // of the widest line of its label
    bool target = false;  // can be clicked
    bool enabled = true;
    bool focused = false;
    int panel = 0; // widgets of one panel lie beside each other; panels may lie over each other where `over` says so
    bool over = false; // on a sheet above everything else
};

struct ProbedPanel {
    std::string name;
    Box box;
    bool over = false;
};

class UiProbe {
public:
    void clear() {
        all_.clear();
        panels_.clear();
    }
    void add(ProbedPanel panel) { panels_.push_back(std::move(panel)); }
    const std::vector<ProbedPanel>& panels() const { return panels_; }
    void add(Probed probed) { all_.push_back(std::move(probed)); }
    const std::vector<Probed>& all() const { return all_; }
    const Probed* find(std::string_view name) const {
        for (const Probed& one : all_)
            if (one.name == name) return &one;
        return nullptr;
    }

private:
    std::vector<Probed> all_;
    std::vector<ProbedPanel> panels_;
};

} // namespace spurwright::ui
