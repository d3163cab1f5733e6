// To which choice a loss goes, in words. Must not know: how it is found.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/ui/ui.h"
#include "scenarios/practice/practice.h"
#include "scenarios/review/told.h"

namespace spurwright::ui {

// Of one stop of the walk; empty where it lost nothing or the plans are not found.
std::string charge_words(const Ui& ui, const practice::Practice& practice, const practice::Walked& stop);

// What the act that a stop is charged to means next season; empty where nothing is known of it, or not yet.
std::vector<std::string> season_words(const Ui& ui, const practice::Practice& practice, const practice::Walked& stop);

// The act that the stop in sight is charged to; none where it is not charged to one that can be undone.
std::optional<std::size_t> charged_act(const practice::Practice& practice);

// Where the points went in all: what limits took, each act that cost something with what it means next season, what can
// still be mended, the hand. In order.
std::vector<review::Told::Act> all_charge_words(const Ui& ui, const practice::Practice& practice);

} // namespace spurwright::ui
