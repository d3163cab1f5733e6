#include "scenarios/practice/settings_requests.h"

#include <algorithm>

namespace spurwright::practice {
namespace {

// A word that is none of them leaves it as it was.
template <class E>
void read_into(E& to, const std::string& word) {
    if (const auto read = read_word<E>(word)) to = *read;
}

struct Change {
    settings::Settings& now;
    void operator()(const ask::TextScale& a) const { now.text_percent = std::clamp(a.percent, settings::least_text_percent, settings::most_text_percent); }
    void operator()(const ask::Theme& a) const { read_into(now.theme, a.theme); }
    void operator()(const ask::Units& a) const { read_into(now.units, a.units); }
    void operator()(const ask::ReducedMotion& a) const { now.reduced_motion = a.on; }
    void operator()(const ask::StepFeedback& a) const { now.step_feedback = a.on; }
    void operator()(const ask::SafetySeen&) const { now.safety_seen = true; }
};

}  // namespace

bool change_settings(settings::Settings& settings, const Request& request) {
    return std::visit(
        [&](const auto& asked) {
            constexpr bool mine = of_settings<std::decay_t<decltype(asked)>>;
            if constexpr (mine) Change{settings}(asked);
            return mine;
        },
        request);
}

}  // namespace spurwright::practice
