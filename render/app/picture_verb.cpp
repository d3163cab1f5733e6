#include "render/app/picture_verb.h"

#include "render/app/picture.h"
#include "render/app/picture_size.h"
#include "render/gl/png.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::app {
namespace {

using commands::Answer;
using commands::Asked;
using commands::refusal;

Result<PictureWish> wish_of(const Asked& asked) {
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
    return wish;
}

Result<Answer> answer(const Asked& asked, const commands::Surroundings& around) {
    const auto wish = wish_of(asked);
    if (!wish) return failure(wish.error());
    auto found = commands::find_vine(asked.subject);
    if (!found) return failure(std::move(found.error()));
    Vine vine = std::move(found->vine);
    if (const auto plan = asked.value("--plan")) {
        auto pruned = commands::prune_by_text(vine, *plan);
        if (!pruned) return failure(std::move(pruned.error()));
        vine = std::move(pruned->after);
    }
    const auto studio = Studio::make(around.assets.folder());
    if (!studio) return failure(studio.error());
    const auto pixels = (*studio)->draw(vine, *wish);
    if (!pixels) return failure(pixels.error());
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, gl::png_bytes(*pixels, wish->width, wish->height)); !written) return failure(written.error());
    Answer done;
    done.object.set("file", path);
    done.object.set("width", wish->width);
    done.object.set("height", wish->height);
    done.object.set("view", scene::words_of(wish->view)[static_cast<std::size_t>(wish->view)]);
    done.object.set("light", scene::words_of(wish->sky)[static_cast<std::size_t>(wish->sky)]);
    done.object.set("renderer", (*studio)->machine());
    done.text = around.words("picture.done", {{"file", path}, {"size", std::to_string(wish->width) + "x" + std::to_string(wish->height)}}) + "\n";
    return done;
}

}  // namespace

const std::vector<commands::Verb>& drawing_verbs() {
    static const std::vector<commands::Verb> verbs = [] {
        std::vector<commands::Verb> list{commands::picture_verb()};
        list[0].answer = answer;
        return list;
    }();
    return verbs;
}

}  // namespace spurwright::app
