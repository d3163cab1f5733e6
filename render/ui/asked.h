// What a person asked for in one frame: at most one thing, the last one drawn.
#pragma once

#include <optional>
#include <utility>

#include "scenarios/practice/request.h"

namespace spurwright::ui {

using Asked = std::optional<practice::Request>;

inline void take(Asked& asked, Asked one) {
    if (one) asked = std::move(one);
}

} // namespace spurwright::ui
