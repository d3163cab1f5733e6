// Two skies: a low winter sun, and overcast. Linear colours; values tried and looked at, ours.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include <glm/glm.hpp>

namespace spurwright::scene {

enum class Sky : unsigned char { sun, overcast };
constexpr auto words_of(Sky) { return std::to_array<std::string_view>({"sun", "overcast"}); }

struct Light {
    Sky sky{};
    glm::vec3 to_sun;              // unit
    glm::vec3 sun;                 // colour times strength
    glm::vec3 up, horizon, bounce; // the three tones of the dome
    float ambient, exposure, fog;  // fog a metre
};

Light light_of(Sky sky);
std::optional<Sky> read_sky(std::string_view word);

} // namespace spurwright::scene
