#include "render/app/picture.h"

#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"

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

Result<std::vector<std::uint8_t>> Studio::draw(const Vine& vine, const PictureWish& wish) {
    if (auto fits = check_size(wish.width, wish.height); !fits) return failure(fits.error());
    const shape::VineShape shape = shape::vine_shape(vine);
    mesh::build_vine(vine_, shape, mesh::fine_detail);
    mesh::bake_occlusion(vine_, shape);
    mesh::build_surroundings(surroundings_, shape, mesh::fine_detail);
    renderer_->upload(scene::Of::vine, vine_);
    renderer_->upload(scene::Of::surroundings, surroundings_);
    gl::Canvas canvas(wish.width, wish.height);
    if (!canvas.complete()) return failure(Error{Fault::missing, {"error.picture.no-gl"}, {}, {}});
    const auto camera = scene::camera_of(wish.view, shape, wish.chosen);
    auto list = scene::draw_list(vine_, surroundings_, wish.emphases, camera, scene::light_of(wish.sky), wish.plain);
    list.spacing = static_cast<float>(shape.spacing);
    list.row_spacing = static_cast<float>(shape.row_spacing);
    renderer_->draw(list, canvas.target());
    return canvas.pixels();
}

} // namespace spurwright::app
