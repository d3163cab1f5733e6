#include "render/app/picture_verb.h"

#include "render/app/picture_size.h"
#include "render/gl/png.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/safe_file.h"

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

Result<Answer> answer(const Asked& asked, const commands::Surroundings& around) {
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
