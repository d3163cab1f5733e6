// Carries out what is asked of the settings alone. Must not know: the session, screens, where settings are kept.
#pragma once

#include "scenarios/practice/request.h"
#include "scenarios/practice/vine_requests.h"
#include "scenarios/settings/settings.h"

namespace spurwright::practice {

template <class Asked>
constexpr bool of_settings = one_of<Asked, ask::TextScale, ask::Theme, ask::Units, ask::ReducedMotion, ask::StepFeedback, ask::SafetySeen>;

// False for a request of another kind. What else a setting changes (the vine in hand, the screen) is the session's.
bool change_settings(settings::Settings& settings, const Request& request);

}  // namespace spurwright::practice
