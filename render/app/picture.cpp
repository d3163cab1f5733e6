#include "render/app/picture.h"

#include <algorithm>

#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::app {

Result<void> check_size(int width, int height) {
    for (const int side : {width, height})
        if (side < least_pixels || side > most_pixels)
            return failure(Error{Fault::out_of_range,
                                 {"error.picture.size"},
                                 {{"size", std::to_string(width) + "x" + std::to_string(height)},
                                  {"low", Count{least_pixels}},
                                  {"high", Count{most_pixels}}},
                                 {"--size", 0, 0, 0}});
    return {};
}

Result<std::unique_ptr<Studio>> Studio::make(const std::string& assets) {
    auto context = gl::OffscreenContext::make();
    if (!context) return failure(context.error());
    auto renderer = gl::Renderer::make(assets + "/shaders");
    if (!renderer) return failure(renderer.error());
    auto studio = std::make_unique<Studio>();
    studio->context_ = std::move(*context);
    studio->renderer_ = std::move(*renderer);
    return studio;
}

void Studio::show(const Vine& vine) {
    const std::uint64_t hash = vine_hash(vine);
    if (drawn_ == hash) return;
    shape_ = shape::vine_shape(vine);
    mesh::build_vine(vine_, shape_, mesh::fine_detail);
    mesh::bake_occlusion(vine_, shape_);
    mesh::build_surroundings(surroundings_, shape_, mesh::fine_detail);
    renderer_->upload(scene::Of::vine, vine_);
    renderer_->upload(scene::Of::surroundings, surroundings_);
    drawn_ = hash;
}

Result<std::vector<std::uint8_t>> Studio::draw(const Vine& vine, const PictureWish& wish) {
    if (auto fits = check_size(wish.width, wish.height); !fits) return failure(fits.error());
    show(vine);
    const auto camera = wish.camera ? *wish.camera : scene::camera_of(wish.view, shape_, wish.chosen);
    auto list = scene::draw_list(vine_, surroundings_, wish.emphases, camera, scene::light_of(wish.sky), wish.plain);
    list.spacing = static_cast<float>(shape_.spacing);
    list.row_spacing = static_cast<float>(shape_.row_spacing);
    const int columns = (wish.width + wish.tile - 1) / wish.tile, rows = (wish.height + wish.tile - 1) / wish.tile;
    if (columns == 1 && rows == 1) {
        const gl::Canvas canvas(wish.width, wish.height);
        if (!canvas.complete()) return failure(Error{Fault::missing, {"error.picture.no-gl"}, {}, {}});
        renderer_->draw(list, canvas.target());
        auto pixels = canvas.pixels();
        scene::see_as(pixels, wish.sight);
        return pixels;
    }
    std::vector<std::uint8_t> whole(static_cast<std::size_t>(wish.width) * static_cast<std::size_t>(wish.height) * 4);
    const gl::Canvas canvas(std::min(wish.tile, wish.width), std::min(wish.tile, wish.height));
    if (!canvas.complete()) return failure(Error{Fault::missing, {"error.picture.no-gl"}, {}, {}});
    for (int tile = 0; tile < columns * rows; ++tile) {
        gl::Target target = canvas.target();
        target.whole_width = wish.width;
        target.whole_height = wish.height;
        // The last ones lie over their neighbours rather than beyond the picture.
        target.left = std::min(tile % columns * wish.tile, wish.width - target.width);
        target.low = std::min(tile / columns * wish.tile, wish.height - target.height);
        renderer_->draw(list, target);
        const auto pixels = canvas.pixels();
        const std::size_t line = static_cast<std::size_t>(target.width) * 4;
        for (int y = 0; y < target.height; ++y)
            std::copy_n(pixels.data() + static_cast<std::size_t>(y) * line, line,
                        whole.data() + (static_cast<std::size_t>(target.low + y) * static_cast<std::size_t>(wish.width) + static_cast<std::size_t>(target.left)) * 4);
    }
    scene::see_as(whole, wish.sight);
    return whole;
}

} // namespace spurwright::app
