// The mouse on the picture of the vine: what lies under the pointer, and what a click, a pull or the wheel does there.
// Turns the eye itself; anything else it asks for. Must not know: the session, windows, OpenGL.
#pragma once

#include <optional>
#include <vector>

#include "render/app/eye.h"
#include "render/app/stage.h"
#include "render/ui/marks.h"
#include "scenarios/practice/practice.h"
#include "scenarios/practice/request.h"

namespace spurwright::app {

class Pointing {
public:
    // Where the pointer stands on the picture; none over a panel or outside.
    const std::optional<ui::At>& place() const { return pointer_; }
    void resized() { pointer_.reset(); }       // what lies under it is another place
    void vine_changed() { under_.clear(); }
    // What is chosen was walked to: until the pointer moves, it points at nothing.
    void let_keys_lead(practice::Practice& practice);
    bool keys_lead() const { return keys_lead_; }
    void advance(float seconds) { clicked_ago_ += seconds; }

    // `camera` as the picture is drawn, `width` and `height` in pixels, `click_slack` for how far a click may move (1: as
    // at one pixel a design pixel). `moving`: the picture moves under a pointer at rest.
    struct Frame {
        scene::Camera camera;
        float width = 1, height = 1, click_slack = 1;
        bool moving = false;
    };
    // Of one frame of ImGui's input, in order, to be carried out.
    practice::Requests use(practice::Practice& practice, const Stage& stage, Eye& eye, const Frame& frame);

    // Turning, leaning and coming nearer alone, where no vine can be touched.
    void look_about(Eye& eye, const Frame& frame);

    bool came_nearer() const { return came_nearer_; }  // in that frame, by the wheel

private:
    void point(practice::Practice& practice, const Stage& stage, const Frame& frame);
    void press(const practice::Practice& practice, Eye& eye, const scene::Camera& camera, practice::Requests& asked);
    void pull(Eye& eye, float height);
    // The cane in the hand follows it: as far down its way to the wire as the pointer went along that way.
    void pull_cane(const practice::Practice& practice, const Frame& frame, practice::Requests& asked) const;
    void release(const practice::Practice& practice, bool from_behind, float click_slack, practice::Requests& asked);

    struct Drag {
        bool turns = false, leans = false, lays = false;
        AxisId cane;
        NodeId node;  // where the hand holds it
        float x = 0, y = 0, gone = 0;
    } drag_;
    std::optional<ui::At> pointer_;
    bool shift_ = false;  // held, in the frame before
    std::vector<scene::Picked> under_;  // the pointer, best first
    std::size_t cycled_ = 0;
    float clicked_x_ = -1e6f, clicked_y_ = -1e6f, clicked_ago_ = 10;
    bool came_nearer_ = false;
    bool keys_lead_ = false;  // what is chosen was walked to since the pointer last moved
};

}  // namespace spurwright::app
