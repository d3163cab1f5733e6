#include "render/app/turn_verb.h"

#include <cstdio>

#include <glm/gtc/matrix_transform.hpp>

#include "render/app/picture_verb.h"
#include "render/gl/png.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/io/make_folder.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::app {
namespace {

using commands::Answer;
using commands::Asked;

constexpr std::int64_t fewest_pictures = 2, usual_pictures = 72, most_pictures = 720;  // one every five degrees; our choice

std::string name_of(std::int64_t number) {
    char name[32];
    std::snprintf(name, sizeof name, "turn-%03d.png", static_cast<int>(number));
    return name;
}

// The view of the whole vine, its eye carried round what it looks at; farther off, since a cane at the row's end comes
// nearer when seen along it (our choice).
constexpr float farther = 1.35f;
scene::Camera turned(scene::Camera camera, double share) {
    const glm::mat4 turn = glm::rotate(glm::mat4(1), static_cast<float>(share * 6.283185307179586), glm::vec3(0, 1, 0));
    camera.eye = camera.target + farther * glm::vec3(turn * glm::vec4(camera.eye - camera.target, 0));
    return camera;
}

Result<Answer> answer(const Asked& asked, const commands::Surroundings& around) {
    auto wish = picture_wish(asked);
    if (!wish) return failure(std::move(wish.error()));
    std::int64_t pictures = usual_pictures;
    if (const auto text = asked.value("--pictures")) {
        const auto read = commands::read_whole(*text, "--pictures", fewest_pictures, most_pictures);
        if (!read) return failure(read.error());
        pictures = *read;
    }
    const auto vine = vine_asked(asked);
    if (!vine) return failure(vine.error());
    const std::string folder = *asked.value("-o");
    const auto studio = Studio::make(around.assets.folder());
    if (!studio) return failure(studio.error());
    if (auto made = io::make_folder(folder); !made) return failure(std::move(made.error()));
    wish->plain = true;  // seen along the row the neighbours would stand before it
    const scene::Camera from = scene::camera_of(scene::View::whole, shape::vine_shape(*vine));
    for (std::int64_t i = 0; i < pictures; ++i) {
        wish->camera = turned(from, static_cast<double>(i) / static_cast<double>(pictures));
        const auto pixels = (*studio)->draw(*vine, *wish);
        if (!pixels) return failure(pixels.error());
        if (auto written = io::write_file(folder + "/" + name_of(i + 1), gl::png_bytes(*pixels, wish->width, wish->height)); !written)
            return failure(std::move(written.error()));
        if (around.progress) around.progress(static_cast<int>(i) + 1, static_cast<int>(pictures));
    }
    Answer done;
    done.object.set("folder", folder);
    done.object.set("pictures", pictures);
    done.object.set("first", name_of(1));
    done.object.set("last", name_of(pictures));
    done.object.set("width", wish->width);
    done.object.set("height", wish->height);
    done.object.set("renderer", (*studio)->machine());
    done.text = around.words("turn.done", {{"folder", folder}, {"n", Count{pictures}}, {"first", name_of(1)}, {"last", name_of(pictures)}}) + "\n";
    return done;
}

}  // namespace

commands::Verb turn() {
    commands::Verb verb = commands::turn_verb();
    verb.answer = answer;
    return verb;
}

}  // namespace spurwright::app
