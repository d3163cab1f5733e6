#include "render/app/picture_verb.h"

#include <charconv>

#include "render/app/picture_size.h"
#include "render/gl/png.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/safe_file.h"
#include "sim/core/ids.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::app {

using commands::Answer;
using commands::Asked;

Result<PictureWish> picture_wish(const Asked& asked) {
    PictureWish wish;
    if (const auto text = asked.value("--size")) {
        const auto size = read_size(*text);
        if (!size) return failure(size.error());
        wish.width = size->width;
        wish.height = size->height;
    }
    if (const auto text = asked.value("--view")) {
        const auto view = commands::read_choice<scene::View>(*text, "--view");
        if (!view) return failure(view.error());
        wish.view = *view;
    }
    if (const auto text = asked.value("--light")) {
        const auto sky = commands::read_choice<scene::Sky>(*text, "--light");
        if (!sky) return failure(sky.error());
        wish.sky = *sky;
    }
    if (const auto text = asked.value("--seen-as")) {
        const auto sight = commands::read_choice<scene::Sight>(*text, "--seen-as");
        if (!sight) return failure(sight.error());
        wish.sight = *sight;
    }
    wish.plain = asked.has("--plain");
    return wish;
}

Result<Vine> vine_asked(const Asked& asked) {
    auto found = commands::find_vine(asked.subject);
    if (!found) return failure(std::move(found.error()));
    const auto plan = asked.value("--plan");
    if (!plan) return std::move(found->vine);
    auto pruned = commands::prune_by_text(found->vine, *plan);
    if (!pruned) return failure(std::move(pruned.error()));
    return std::move(pruned->after);
}

namespace {

// ---- where places of the vine lie in the picture, for a paper that sets its marks over it

struct AskedPlace {
    NodeId node;
    float beyond = 0; // metres past the node
};

// "a12.4+20.0,a5.3+10": nodes with millimetres past them.
Result<std::vector<AskedPlace>> places_asked(const std::optional<std::string>& text) {
    std::vector<AskedPlace> places;
    std::string_view rest = text ? std::string_view(*text) : std::string_view();
    while (!rest.empty()) {
        const std::string_view one = rest.substr(0, rest.find(','));
        rest.remove_prefix(std::min(rest.size(), one.size() + 1));
        const auto plus = one.find('+');
        const auto node = read_node(one.substr(0, plus));
        float mm = 0;
        bool fine = node.has_value();
        if (fine && plus != std::string_view::npos) {
            const auto read = std::from_chars(one.data() + plus + 1, one.data() + one.size(), mm);
            fine = read.ec == std::errc{} && read.ptr == one.data() + one.size() && mm >= 0 && mm < 100'000;
        }
        if (!fine) return failure(commands::refusal(Fault::bad_text, "error.picture.places", {{"text", std::string(one)}}, "--places"));
        places.push_back({*node, mm / 1000});
    }
    return places;
}

glm::vec3 place_in(shape::Vec3 v) { return {v.x, v.y, v.z}; }

// Nothing where it does not stand.
std::optional<glm::vec3> standing_place(const shape::VineShape& shape, const AskedPlace& asked) {
    const shape::Stem* stem = shape.find(axis_of(asked.node));
    if (!stem) return std::nullopt;
    for (std::size_t i = 0; i < stem->nodes.size(); ++i) {
        if (stem->nodes[i].node != asked.node) continue;
        const glm::vec3 here = place_in(stem->nodes[i].place);
        const glm::vec3 way = i + 1 < stem->nodes.size() ? place_in(stem->nodes[i + 1].place) - here : place_in(stem->nodes[i].along);
        return here + glm::normalize(way) * asked.beyond;
    }
    return std::nullopt;
}

// Pixels from the upper left, one decimal; null where it does not stand or lies out of the picture.
io::Json places_seen(const Vine& vine, const std::vector<AskedPlace>& places, const PictureWish& wish) {
    const shape::VineShape shape = shape::vine_shape(vine);
    const glm::mat4 clip_from_world = scene::clip_from_world(scene::camera_of(wish.view, shape, wish.chosen), static_cast<float>(wish.width) / static_cast<float>(wish.height));
    io::Json list = io::Json::list();
    for (const AskedPlace& asked : places) {
        const auto place = standing_place(shape, asked);
        const glm::vec4 clip = place ? clip_from_world * glm::vec4(*place, 1) : glm::vec4(0);
        const bool seen = clip.w > 0.02f && std::abs(clip.x) < clip.w && std::abs(clip.y) < clip.w;
        io::Json at = seen ? io::Json::list() : io::Json();
        if (seen) {
            at.push(io::Json::number(static_cast<double>((clip.x / clip.w * 0.5f + 0.5f) * static_cast<float>(wish.width)), 1));
            at.push(io::Json::number(static_cast<double>((0.5f - clip.y / clip.w * 0.5f) * static_cast<float>(wish.height)), 1));
        }
        list.push(std::move(at));
    }
    return list;
}

Result<Answer> answer(const Asked& asked, const commands::Surroundings& around) {
    const auto places = places_asked(asked.value("--places"));
    if (!places) return failure(places.error());
    const auto wish = picture_wish(asked);
    if (!wish) return failure(wish.error());
    const auto vine = vine_asked(asked);
    if (!vine) return failure(vine.error());
    const auto studio = Studio::make(around.assets.folder());
    if (!studio) return failure(studio.error());
    const auto pixels = (*studio)->draw(*vine, *wish);
    if (!pixels) return failure(pixels.error());
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, gl::png_bytes(*pixels, wish->width, wish->height)); !written) return failure(written.error());
    Answer done;
    done.object.set("file", path);
    done.object.set("width", wish->width);
    done.object.set("height", wish->height);
    done.object.set("view", scene::words_of(wish->view)[static_cast<std::size_t>(wish->view)]);
    done.object.set("light", scene::words_of(wish->sky)[static_cast<std::size_t>(wish->sky)]);
    done.object.set("seen_as", scene::words_of(wish->sight)[static_cast<std::size_t>(wish->sight)]);
    done.object.set("renderer", (*studio)->machine());
    if (asked.has("--places")) done.object.set("places", places_seen(*vine, *places, *wish));
    done.text = around.words("picture.done", {{"file", path}, {"size", std::to_string(wish->width) + "x" + std::to_string(wish->height)}}) + "\n";
    return done;
}

}  // namespace

commands::Verb picture() {
    commands::Verb verb = commands::picture_verb();
    verb.answer = answer;
    return verb;
}

}  // namespace spurwright::app
