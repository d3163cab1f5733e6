#include "render/scene/light.h"

#include <cmath>

namespace spurwright::scene {

Light light_of(Sky sky) {
    // From behind the shoulder of somebody in the row: about 65 degrees off the view axis.
    const float elevation = glm::radians(20.0f), azimuth = glm::radians(62.0f);
    const glm::vec3 to_sun{std::sin(azimuth) * std::cos(elevation), std::sin(elevation),
                           std::cos(azimuth) * std::cos(elevation)};
    if (sky == Sky::sun)
        return {sky,
                to_sun,
                3.0f * glm::vec3(1, .90f, .77f),
                {.38f, .48f, .66f},
                {.62f, .60f, .56f},
                {.30f, .24f, .17f},
                0.95f,
                1.25f,
                0.010f};
    return {sky, to_sun, {0, 0, 0}, {.82f, .86f, .92f}, {.50f, .53f, .58f}, {.30f, .27f, .22f}, 1.35f, 1.40f, 0.026f};
}

std::optional<Sky> read_sky(std::string_view word) {
    const auto words = words_of(Sky{});
    for (std::size_t i = 0; i < words.size(); ++i)
        if (words[i] == word) return static_cast<Sky>(i);
    return std::nullopt;
}

} // namespace spurwright::scene
