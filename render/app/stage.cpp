#include "render/app/stage.h"

#include <algorithm>

#include "render/app/memory.h"
#include "render/mesh/vine_mesh.h"

namespace spurwright::app {
namespace {

constexpr float moving_scale = 0.75f;  // of the window, on a slow machine while the eye moves (our choice)

bool same(const std::vector<scene::Emphasis>& all, const std::vector<scene::Emphasis>& others) {
    const auto one = [](const scene::Emphasis& a, const scene::Emphasis& b) { return a.axis == b.axis && a.kind == b.kind && a.id == b.id && a.look == b.look; };
    return all.size() == others.size() && std::equal(all.begin(), all.end(), others.begin(), one);
}

}  // namespace

Stage::Stage(std::string shader_folder) : shaders_(std::move(shader_folder)), machine_(gl::machine()), slow_(gl::in_software(machine_)) {}

Result<void> Stage::make_renderer() {
    if (renderer_) return {};
    auto made = gl::Renderer::make(shaders_);
    if (!made) return failure(std::move(made.error()));
    renderer_ = std::move(*made);
    return {};
}

Result<void> Stage::show_two(const std::array<const Vine*, 2>& vines) {
    if (auto made = make_renderer(); !made) return made;
    // The one picture's memory goes to the two.
    canvas_.reset();
    over_.reset();
    shows_over_ = false;
    built_ = {};
    drawn_change_ = ~std::uint64_t{0};
    panes_ = std::make_unique<TwoPanes>(vines, detail());
    return {};
}

void Stage::end_two() {
    panes_.reset();
    built_.stale = built_.around_stale = true;
}

bool Stage::draw_two(const scene::Camera& camera, int width, int height, bool moving) {
    return panes_ && panes_->draw(*renderer_, camera, width, height, moving && slow_ ? moving_scale : 1.0f);
}

Result<void> Stage::show(const Vine& vine, bool new_vine, bool at_once) {
    if (auto made = make_renderer(); !made) return made;
    shape::VineShape now = shape::vine_shape(vine);
    if (new_vine || empty_) brush_.forget();
    else brush_.change(shape_, now, at_once);
    shape_ = std::move(now);
    capsules_ = scene::Capsules(shape_);
    built_.stale = true;
    built_.around_stale = built_.around_stale || new_vine;
    empty_ = false;
    ++change_;
    return {};
}

// The meshes are built when they are first needed.
void Stage::prepare() {
    if (built_.stale) {
        mesh::rebuild_vine(built_.vine, built_.kept, built_.shape, shape_, detail());
        built_.shape = shape_;
        renderer_->upload(scene::Of::vine, built_.vine);
        built_.kept = mesh::KeptOcclusion(built_.vine);
        built_.vine.keep_parts();
        built_.stale = false;
    }
    if (built_.around_stale) {
        mesh::build_surroundings(built_.surroundings, shape_, detail());
        renderer_->upload(scene::Of::surroundings, built_.surroundings);
        built_.surroundings.keep_parts();
        built_.around_stale = false;
    }
    if (built_.lying_change != brush_.lying_change()) {
        brush_.build_lying(built_.lying, detail());
        renderer_->upload(scene::Of::brush, built_.lying);
        built_.lying_change = brush_.lying_change();
    }
}

// What passes, over a copy of the picture: the picture itself stays.
void Stage::draw_over(scene::DrawList& list) {
    shows_over_ = false;
    if (brush_.falls()) {
        if (built_.falling_change != brush_.falling_change()) {
            brush_.build_falling(built_.falling, detail());
            renderer_->upload(scene::Of::falling, built_.falling);
            built_.falling_change = brush_.falling_change();
        }
        scene::add_whole(list.over, scene::Of::falling, built_.falling);
    }
    drawn_falling_ = brush_.falling_change();
    if (list.over.empty()) return;
    const int w = canvas_->width(), h = canvas_->height();
    if (!over_ || over_->width() != w || over_->height() != h) over_ = std::make_unique<gl::Canvas>(w, h);
    if (!over_->complete()) {
        over_.reset();
        return;
    }
    over_->copy(*canvas_);
    renderer_->draw_over(list, over_->target());
    shows_over_ = true;
}

scene::DrawList Stage::list_of(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases) const {
    auto list = scene::draw_list(built_.vine, built_.surroundings, emphases, camera, scene::light_of(scene::Sky::sun));
    list.spacing = static_cast<float>(shape_.spacing);
    list.row_spacing = static_cast<float>(shape_.row_spacing);
    return list;
}

GLuint Stage::draw_glass(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, float x, float y) {
    if (empty_ || !canvas_ || drawings_ == 0) return 0;
    auto list = list_of(camera, emphases);
    scene::add_whole(list.items, scene::Of::brush, built_.lying);
    glass_.draw(*renderer_, list, drawings_, width, height, x, y);
    if (slow_) glFinish();  // a software driver keeps megabytes for every picture that waits to be drawn
    return glass_.texture();
}

bool Stage::draw(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, bool moving) {
    if (empty_ || width < 1 || height < 1) return false;
    const bool quick = moving && slow_;
    const int w = std::max(1, quick ? static_cast<int>(static_cast<float>(width) * moving_scale) : width);
    const int h = std::max(1, quick ? static_cast<int>(static_cast<float>(height) * moving_scale) : height);
    const bool fits = canvas_ && canvas_->width() == w && canvas_->height() == h;
    std::vector<scene::Emphasis> standing, passing;
    for (const scene::Emphasis& e : emphases) (e.passing ? passing : standing).push_back(e);
    const bool picture_same = drawn_change_ == change_ && drawn_lying_ == brush_.lying_change() && camera == camera_ && same(standing, standing_) &&
                              (moving || (fits && !drawn_plain_));
    const bool over_same = same(passing, passing_) && drawn_falling_ == brush_.falling_change();
    if (picture_same && over_same) return false;
    if (!picture_same) {
        prepare();
        if (!fits) canvas_ = std::make_unique<gl::Canvas>(w, h);
        if (!canvas_->complete()) {
            canvas_.reset();
            shows_over_ = false;
            return false;
        }
        drawn_plain_ = quick;
    }
    auto list = list_of(camera, emphases);
    if (!picture_same) {
        ++drawings_;
        scene::add_whole(list.items, scene::Of::brush, built_.lying);
        renderer_->draw(list, canvas_->target(), quick ? gl::quick_samples : gl::fine_samples);
        if (slow_ && !quick) glFinish();  // a software driver keeps megabytes for every picture that waits to be drawn
        if (!quick && !gave_back_) {
            give_back_freed_memory();
            gave_back_ = true;
        }
    }
    draw_over(list);
    camera_ = camera;
    standing_ = std::move(standing);
    passing_ = std::move(passing);
    drawn_change_ = change_;
    drawn_lying_ = brush_.lying_change();
    return true;
}

}  // namespace spurwright::app
