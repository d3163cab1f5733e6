// Small helpers of the desk that need no state of it: from a pick to a spot of the vine, and the report that tests read.
#pragma once

#include <string>
#include <vector>

#include "render/app/stage.h"
#include "render/ui/probe.h"
#include "scenarios/practice/session.h"

namespace spurwright::app {

// The place of the wood that was picked; on a bud or tie the node alone.
practice::Spot spot_of(const Vine& vine, const scene::Picked& picked);

// Of what lies under the pointer the n-th other axis, round again at the end. Needs one at least.
const scene::Picked& next_axis(const std::vector<scene::Picked>& under, std::size_t n);

// Since the window opened.
struct Counted {
    std::int64_t frames = 0, key_presses = 0;
};

// One JSON object, with whether anything on the screen still moves: screen, acts, chosen, widgets with their boxes, nodes of the vine with where they are on the window.
std::string report_of(const practice::Session& session, const Stage& stage, const std::string& view, const scene::Camera& camera, const ui::UiProbe& probe, bool at_rest, const Counted& counted, float width, float height);

}  // namespace spurwright::app
