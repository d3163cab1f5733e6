// One frame of the window, whoever shows it: input in, screens and picture out, requests carried out. A real window and
// a script without one drive the same function. Needs a current context of OpenGL 3.3. Must not know: GLFW, EGL.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/app/desk_report.h"
#include "render/app/eye.h"
#include "render/app/free_area.h"
#include "render/app/gaze.h"
#include "render/app/input.h"
#include "render/app/pointing.h"
#include "render/app/stage.h"
#include "render/app/vine_marks.h"
#include "render/gl/canvas.h"
#include "render/ui/fonts.h"
#include "render/ui/screens.h"
#include "scenarios/practice/session.h"

struct ImGuiContext;

namespace spurwright::app {

class Desk {
public:
    [[nodiscard]] static Result<std::unique_ptr<Desk>> make(const io::Assets& assets, std::unique_ptr<practice::Session> session);
    ~Desk();

    Input& input() { return input_; }
    // Pixels a design pixel as the system has it; the person's text size comes on top.
    void set_content_scale(float scale) { content_scale_ = scale; }

    // Draws into `target`, all of it. Does nothing where it has no area. `seconds` since the last frame.
    void frame(const gl::Target& target, float seconds);
    // Whether there is more to draw without any event: input left over, an ease, the finer picture, an answer due.
    bool more_to_do() const { return again_ > 0 || input_.waiting() || moving_; }
    bool waits_for_search() const { return session_->works(); }
    bool at_rest() const { return !more_to_do() && !waits_for_search() && !rough_; }
    bool wants_finer() const { return rough_; }
    void finer() { finer_asked_ = true; }
    bool leaving() const { return session_->leaving(); }
    practice::Session& session() { return *session_; }
    const ui::UiProbe& probe() const { return probe_; }
    void keep_probe(bool on) { probing_ = on; }
    // What a test looks at beside the widgets: the vine's parts on the screen, and where things stand.
    std::string report() const;
    // The middle of the joint beyond a node, where it can be seen.
    std::optional<ui::At> place_on_screen(NodeId node, float width, float height) const;

private:
    Desk(const io::Assets& assets, std::unique_ptr<practice::Session> session);
    [[nodiscard]] Result<void> build_fonts();
    void show_question(const quiz::Item& item);
    void look_closely(const quiz::Item& item);
    void lean_in_for_the_room(const quiz::Item& item);
    void show_vine();
    void show_two();
    void draw_two(const ui::Ui& ui);
    void draw_glass(const ui::Ui& ui, const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases);
    scene::Camera pane_camera() const;  // of either of the two vines
    scene::Camera camera() const { return in_free_area(eye_.camera(), free_); }  // as the picture is drawn
    void keep_free_area();
    bool on_vine() const;
    bool beside_house() const;
    void use_mouse();
    void use_keys();
    void look_at_shown();
    void ask(const practice::Request& request);
    std::optional<practice::CutPreview> would_cut();

    const io::Assets& assets_;
    std::unique_ptr<practice::Session> session_;
    std::unique_ptr<Stage> stage_;
    Eye eye_;
    Gaze gaze_{eye_};
    Pointing pointing_;
    FreeArea free_;  // of the frame before
    Input input_;
    ImGuiContext* imgui_ = nullptr;
    bool imgui_draws_ = false;
    ui::FontFiles font_files_;
    ui::Fonts fonts_;
    std::vector<ImWchar> ranges_;
    ui::Views views_;
    ui::UiProbe probe_;
    bool probing_ = false;
    std::vector<ui::Spoken> spoken_;
    std::vector<ui::KeyPress> presses_;
    float content_scale_ = 1, built_em_ = 0;
    int again_ = 3;
    bool mouse_was_down_ = false;
    Counted counted_;
    bool moving_ = false, rough_ = false, finer_asked_ = false;
    float width_ = 1, height_ = 1;

    std::uint64_t shown_vine_ = 0, shown_change_ = 0;
    std::size_t shown_question_ = 0;  // 0: none
    std::array<std::shared_ptr<const ahead::NextVine>, 2> shown_two_;

    struct Previewed {
        practice::Spot hover;
        AxisId chosen;
        NodeId node;
        practice::HandTool tool{};
        std::uint64_t vine = 0, change = ~std::uint64_t{0};
        bool operator==(const Previewed&) const = default;
    } previewed_;
    std::optional<practice::CutPreview> preview_;
};

}  // namespace spurwright::app
