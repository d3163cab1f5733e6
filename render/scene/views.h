// The views by name, of a vine in hand. `row` is the first: standing in it.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "render/scene/camera.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::scene {

enum class View : unsigned char { row, whole, step_back, other_side, along, head, cane, above };
constexpr auto words_of(View) {
    return std::to_array<std::string_view>(
        {"row", "whole", "step-back", "other-side", "along", "head", "cane", "above"});
}

std::optional<View> read_view(std::string_view word);

// How somebody stands for the views in the row; `row` where the view is an aid.
RowStance stance_of(View view, const shape::VineShape& vine);

// `cane` looks at `chosen`, or where that is none at the cane nearest to a pencil's thickness on the near post's side.
Camera camera_of(View view, const shape::VineShape& vine, AxisId chosen = {});

} // namespace spurwright::scene
