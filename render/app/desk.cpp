#include "render/app/desk.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include <glad/gl.h>
#include <imgui.h>
#include <imgui_impl_opengl3.h>

#include "render/app/desk_report.h"
#include "render/app/place_on_vine.h"
#include "render/app/wall_marks.h"
#include "scenarios/words/load_words.h"
#include "sim/pruning/legal_edits.h"

namespace spurwright::app {
namespace {

namespace ask = practice::ask;
using practice::Practice;
using practice::Screen;

constexpr float line_px = 3;  // between the two pictures
// The others show on whole canes, seen from the row.
bool shows_close(drill::Skill skill) { return skill != drill::Skill::joints && skill != drill::Skill::wire_side && skill != drill::Skill::which_job; }
constexpr float look_raised_deg = 5;  // a panel lies over the foot of the picture: our choice

}  // namespace

Desk::Desk(const io::Assets& assets, std::unique_ptr<practice::Session> session) : assets_(assets), session_(std::move(session)) {}

Result<std::unique_ptr<Desk>> Desk::make(const io::Assets& assets, std::unique_ptr<practice::Session> session) {
    std::unique_ptr<Desk> desk(new Desk(assets, std::move(session)));
    desk->stage_ = std::make_unique<Stage>(assets.folder() + "/shaders");
    auto files = ui::find_fonts();
    if (!files) return failure(std::move(files.error()));
    desk->font_files_ = *files;
    desk->imgui_ = ImGui::CreateContext();
    begin_input(ImGui::GetIO());
    if (!ImGui_ImplOpenGL3_Init("#version 330 core")) return failure({Fault::missing, {"error.picture.no-gl"}, {}, {}});
    desk->imgui_draws_ = true;
    std::vector<std::string> texts;
    for (const std::string_view language : words::languages) {
        const auto file = words::load_word_file(assets, language);
        if (!file) continue;  // a regional file that is not there says nothing of its own
        if (file->shown) desk->spoken_.push_back({file->language, file->name});
        for (const auto& [key, text] : file->texts) texts.push_back(text);
        texts.push_back(file->name);
    }
    desk->ranges_ = ui::glyph_ranges(texts);
    desk->session_->shell().machine = desk->stage_->machine();
    if (auto built = desk->build_fonts(); !built) return failure(std::move(built.error()));
    return desk;
}

Desk::~Desk() {
    if (imgui_draws_) ImGui_ImplOpenGL3_Shutdown();
    if (imgui_) ImGui::DestroyContext(imgui_);
}

namespace {

// The renderer has made white letters whose four channels differ in one: two megabytes where half a one does.
void keep_letters_in_one_channel() {
    ImFontAtlas& fonts = *ImGui::GetIO().Fonts;
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    fonts.GetTexDataAsAlpha8(&pixels, &width, &height);
    if (!pixels) return;
    glBindTexture(GL_TEXTURE_2D, static_cast<GLuint>(reinterpret_cast<std::uintptr_t>(fonts.TexID)));
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, width, height, 0, GL_RED, GL_UNSIGNED_BYTE, pixels);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    constexpr std::array<GLint, 4> white_by_alpha{GL_ONE, GL_ONE, GL_ONE, GL_RED};
    glTexParameteriv(GL_TEXTURE_2D, GL_TEXTURE_SWIZZLE_RGBA, white_by_alpha.data());
}

}  // namespace

Result<void> Desk::build_fonts() {
    float em = std::round(ui::em_at_one * content_scale_ * static_cast<float>(session_->shell().settings.text_percent) / 100.0f);
    if (session_->crew() && session_->crew()->quiz() && session_->shell().screen == Screen::wall) em = std::max(em, std::round(height_ * ui::wall_em_share));
    if (em == built_em_) return {};
    const bool ever_built = built_em_ > 0;
    if (ever_built) ImGui_ImplOpenGL3_DestroyFontsTexture();
    auto fonts = ui::build_fonts(font_files_, ranges_, em);
    if (!fonts) return failure(std::move(fonts.error()));
    fonts_ = *fonts;
    built_em_ = em;
    if (ever_built) ImGui_ImplOpenGL3_CreateFontsTexture();
    else ImGui_ImplOpenGL3_CreateDeviceObjects();  // the texture with the rest: left to the first frame it is made twice
    keep_letters_in_one_channel();
    ImGui::GetIO().Fonts->ClearTexData();  // the renderer has the one, and the next size reads the other anew
    ImGui::GetIO().Fonts->ClearInputData();
    again_ = 3;
    return {};
}

// Next winter's two vines take the picture's place as long as both are shown.
void Desk::show_two() {
    const practice::TwoVines* two = session_->shows_two() ? session_->two_vines() : nullptr;
    const auto next = [&](std::size_t which) { return two && two->found ? two->found->lives[which].next : nullptr; };
    if (shown_two_[0] == next(0) && shown_two_[1] == next(1)) return;
    shown_two_ = {next(0), next(1)};
    again_ = std::max(again_, 2);
    pointing_.resized();
    if (!shown_two_[0]) return stage_->end_two();
    if (const auto shown = stage_->show_two({&shown_two_[0]->vine, &shown_two_[1]->vine}); !shown) session_->say(shown.error());
    else eye_.look_from(scene::View::row, stage_->panes().shape(), {});
}

// A look's place, bent to as the touched places of a drill are; two places side by side are both seen from the row.
void Desk::look_closely(const quiz::Item& item) {
    if (item.places.size() != 1) return;
    const quiz::TapedPlace& at = item.places.front();
    if (const auto place = place_of(stage_->shape(), item.vine, {axis_of(at.node), at.node, at.beyond})) eye_.look_at(*place, true, look_raised_deg);
}

// As near as the question needs it seen from the back of the room: wood by its bark, a cane from its base to the ring,
// the spurs' places. The rest is asked of the whole vine.
void Desk::lean_in_for_the_room(const quiz::Item& item) {
    if (item.kind == quiz::Kind::wood_age) look_closely(item);
    if (item.kind != quiz::Kind::count && item.kind != quiz::Kind::spur) return;
    std::optional<std::pair<glm::vec3, glm::vec3>> held; // the lowest and the farthest of what must be seen
    const auto hold = [&](NodeId node, Length beyond) {
        const auto place = place_of(stage_->shape(), item.vine, {axis_of(node), node, beyond});
        if (place) held = held ? std::pair(glm::min(held->first, *place), glm::max(held->second, *place)) : std::pair(*place, *place);
    };
    for (const quiz::TapedPlace& place : item.places) {
        hold(place.node, place.beyond);
        hold(node_id(axis_of(place.node), 0), {}); // where it grows from
    }
    if (held) eye_.look_over(held->first, held->second);
}

// A question's vine while the wall is before the eye; the one in hand comes back by itself afterwards.
void Desk::show_question(const quiz::Item& item) {
    if (shown_question_ == session_->shown_item_number()) return;
    if (const auto shown = stage_->show(item.vine, true, true); !shown) session_->say(shown.error());
    else eye_.begin(stage_->shape());
    if (session_->on_wall()) lean_in_for_the_room(item);
    else if (shows_close(session_->looks()->look()->skill)) look_closely(item);
    if (item.kind == quiz::Kind::which_rule || item.kind == quiz::Kind::find_the_fault || item.kind == quiz::Kind::which_job)
        eye_.look_from(scene::View::step_back, stage_->shape(), {});  // little may stand above the wire: all of it from farther off
    shown_question_ = session_->shown_item_number();
    shown_vine_ = 0;
    pointing_.vine_changed();
    again_ = std::max(again_, 2);
}

void Desk::show_vine() {
    if (const quiz::Item* item = session_->shown_item()) return show_question(*item);
    shown_question_ = 0;
    const Practice* practice = session_->practice();
    if (!practice) return;
    show_two();
    const bool fresh = shown_vine_ != session_->vine_number();
    if (!fresh && shown_change_ == practice->change()) return;
    if (const auto shown = stage_->show(practice->now(), fresh, session_->shell().settings.reduced_motion); !shown) session_->say(shown.error());
    else if (fresh) eye_.begin(stage_->shape());
    shown_vine_ = session_->vine_number();
    shown_change_ = practice->change();
    pointing_.vine_changed();
    again_ = std::max(again_, 2);
}

std::optional<practice::CutPreview> Desk::would_cut() {
    const Practice* practice = session_->practice();
    if (!practice) return std::nullopt;
    const Previewed now{practice->hover, practice->chosen, practice->chosen_node, practice->tool, session_->vine_number(), practice->change()};
    if (now == previewed_) return preview_;
    previewed_ = now;
    preview_ = practice->would_cut();
    return preview_;
}

// Whether the vine is in the picture, with somebody's hand or eye on it.
bool Desk::on_vine() const { return session_->practice() && session_->shell().screen == Screen::row && !session_->shell().growing; }

// Whether it stands beside the house's own rules, to be looked at alone.
bool Desk::beside_house() const {
    return session_->practice() && session_->shell().screen == Screen::house && !session_->shows_two();
}

void Desk::use_mouse() {
    if (!(on_vine() || beside_house() || session_->shown_item()) || stage_->empty()) return;
    const float slack = std::max(1.0f, content_scale_);
    if (beside_house() || session_->shown_item()) {
        pointing_.look_about(eye_, {camera(), width_, height_, slack, moving_});
        return;
    }
    if (session_->shows_two()) {
        pointing_.look_about(eye_, {pane_camera(), width_, height_, slack, moving_});
        if (pointing_.came_nearer()) again_ = 2;
        return;
    }
    const auto asked = pointing_.use(*session_->practice(), *stage_, eye_, {camera(), width_, height_, slack, moving_});
    if (pointing_.came_nearer()) again_ = 2;
    for (const practice::Request& request : asked) ask(request);
}

// The keys of the picture itself. All others are commands of the screens.
void Desk::use_keys() {
    const bool wall = session_->shown_item() != nullptr;
    if (!(on_vine() || wall) || ImGui::GetIO().WantTextInput || views_.takes_arrows()) return;
    if (gaze_.by_keys(presses_, !wall && session_->practice()->hand_rests(), camera().target)) again_ = 2;
}

void Desk::look_at_shown() {
    if (stage_->empty()) return;
    if (session_->shown_item()) return;
    const bool high = width_ < built_em_ * ui::narrow_below_em;
    if (gaze_.to_shown(session_->practice(), stage_->shape(), high)) again_ = std::max(again_, 2);
}

void Desk::ask(const practice::Request& request) {
    again_ = 3;
    Practice* practice = session_->practice();
    if (practice && !stage_->empty() && gaze_.by_request(request, *practice, stage_->shape())) return;
    session_->carry_out(request);
    practice = session_->practice();
    if (!practice) return;
    if (practice->watching()) pointing_.let_keys_lead(*practice);  // what is shown is pointed at by the picture
    if (std::holds_alternative<ask::WalkCanes>(request) || std::holds_alternative<ask::WalkBuds>(request)) {
        pointing_.let_keys_lead(*practice);
        gaze_.to_walked(*practice, stage_->shape(), Projection(camera(), width_, height_));
    }
    const bool piece = std::holds_alternative<ask::NextPiece>(request) || std::holds_alternative<ask::ShowPiece>(request),
               cut = std::holds_alternative<ask::TakeCut>(request) || std::holds_alternative<ask::NextCut>(request) || std::holds_alternative<ask::MoveCut>(request);
    if (piece || cut) gaze_.to_piece(*practice, stage_->shape());
}

void Desk::frame(const gl::Target& target, float seconds) {
    if (target.width < 1 || target.height < 1) return;
    ImGui::SetCurrentContext(imgui_);
    ++counted_.frames;
    if (again_ > 0) --again_;
    if (session_->poll()) again_ = 2;
    if (!build_fonts()) return;
    ImGuiIO& io = ImGui::GetIO();
    if (width_ != static_cast<float>(target.width) || height_ != static_cast<float>(target.height)) pointing_.resized();
    width_ = static_cast<float>(target.width);
    height_ = static_cast<float>(target.height);
    io.DisplaySize = {width_, height_};
    io.DeltaTime = std::max(seconds, 1e-4f);
    input_.feed(io, presses_);
    counted_.key_presses += static_cast<std::int64_t>(presses_.size());
    const bool pressed = !presses_.empty() || ImGui::IsAnyMouseDown() != mouse_was_down_;
    mouse_was_down_ = ImGui::IsAnyMouseDown();
    // A panel folded open takes its new size a frame later: a click before that would fall through it.
    if (pressed) again_ = std::max(again_, 3);
    pointing_.advance(seconds);
    eye_.reduced_motion = session_->shell().settings.reduced_motion;
    const ui::Face face = session_->shell().settings.theme == settings::ThemeName::dusk ? ui::Face::dusk : ui::Face::paper;
    const ui::Grid grid{built_em_, built_em_ / ui::em_at_one};
    ui::apply(face, grid);
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    stage_->advance(seconds);  // first, so that what is cut now begins at its place
    show_vine();
    const scene::Camera before = this->camera();
    use_mouse();
    use_keys();
    show_vine();  // what the mouse did is drawn in this very frame
    look_at_shown();
    const bool eases = eye_.advance(seconds);
    const scene::Camera camera = this->camera();
    moving_ = eases || stage_->falls() || before.eye != camera.eye || before.target != camera.target;

    practice::Shell& shell = session_->shell();
    shell.view = eye_.view();
    shell.orbit = eye_.orbits();
    ui::Ui ui{.words = session_->words(),
              .face = face,
              .grid = grid,
              .fonts = fonts_,
              .keys = presses_,
              .probe = probing_ ? &probe_ : nullptr,
              .panels = 0,
              .over = false,
              .free_keys = !io.WantTextInput};
    probe_.clear();
    Overlay overlay;
    const bool wall = session_->shown_item() != nullptr, picture = (on_vine() || beside_house() || wall) && !stage_->empty();
    if (picture && !wall && stage_->shows_two()) {
        draw_two(ui);
    } else if (picture) {
        overlay = session_->on_wall() ? wall_overlay(*session_->crew()->quiz(), stage_->shape(), camera, ui, width_, height_)
                  : wall              ? look_overlay(*session_->looks(), stage_->shape(), camera, width_, height_)
                       : overlay_of(*session_->practice(), shell, stage_->shape(), camera, would_cut(), pointing_.place(), ui, width_, height_);
        const bool drew = stage_->draw(camera, overlay.emphases, target.width, target.height, moving_ || (stage_->slow() && !finer_asked_));
        rough_ = stage_->plain();
        finer_asked_ = false;
        if (drew) again_ = std::max(again_, 1);
        ImGui::GetBackgroundDrawList()->AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(stage_->texture())), {0, 0}, {width_, height_}, {0, 1}, {1, 0});
    } else {
        rough_ = false;
    }
    const ui::State state{shell, session_->practice(), session_->two_vines(), session_->crew(), session_->weighing(), session_->book(), session_->looks(), session_->way(), session_->crew_page(), session_->next_buds(), session_->ladder(), session_->sign()};
    const float foot_before = views_.wall.foot_height;
    const auto asked = ui::draw_screens(state, views_, spoken_, overlay.marks, ui);
    if (views_.wall.foot_height != foot_before) again_ = std::max(again_, 2);  // what the room reads was set by the foot of the frame before
    if (picture && views_.glass && !stage_->shows_two() && !moving_) draw_glass(ui, camera, overlay.emphases);
    ImGui::Render();
    glBindFramebuffer(GL_FRAMEBUFFER, target.framebuffer);
    glViewport(0, 0, target.width, target.height);
    glDisable(GL_FRAMEBUFFER_SRGB);
    const unsigned ground = ui.colours().panel;
    glClearColor(static_cast<float>(ground & 255) / 255.0f, static_cast<float>((ground >> 8) & 255) / 255.0f, static_cast<float>((ground >> 16) & 255) / 255.0f, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    if (picture) keep_free_area();
    if (wall) session_->item_seen();
    if (asked) ask(*asked);
}

// Under the pointer, or at what was walked to where the keys lead.
void Desk::draw_glass(const ui::Ui& ui, const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases) {
    const Practice* practice = session_->practice();
    const bool walked = practice && practice->chosen_node && (pointing_.keys_lead() || !pointing_.place());
    const auto at = walked ? place_on_screen(practice->chosen_node, width_, height_) : pointing_.place();
    if (!at) return;
    const GLuint texture = stage_->draw_glass(camera, emphases, static_cast<int>(width_), static_cast<int>(height_), at->x, at->y);
    if (!texture) return;
    const float half = static_cast<float>(Glass::size_on(height_)) / 2;
    ImDrawList& draw = *ImGui::GetBackgroundDrawList();
    draw.AddImageRounded(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture)), {at->x - half, at->y - half}, {at->x + half, at->y + half}, {0, 1}, {1, 0}, IM_COL32_WHITE, half);
    draw.AddCircle({at->x, at->y}, half, ui.colours().panel, 0, 5 * ui.grid.scale);
    draw.AddCircle({at->x, at->y}, half, ui.colours().ink, 0, 2 * ui.grid.scale);
}

scene::Camera Desk::pane_camera() const { return in_free_area(eye_.camera(), {0, 0.1f, 1, 1}); }

void Desk::draw_two(const ui::Ui& ui) {
    const float foot = views_.two_foot > 1 ? views_.two_foot : height_ * 0.6f, half = width_ / 2;
    if (stage_->draw_two(pane_camera(), static_cast<int>(half), static_cast<int>(foot), moving_ || (stage_->slow() && !finer_asked_))) again_ = std::max(again_, 1);
    rough_ = stage_->plain();
    finer_asked_ = false;
    ImDrawList& draw = *ImGui::GetBackgroundDrawList();
    for (std::size_t which = 0; which < 2; ++which) {
        const float x = half * static_cast<float>(which);
        draw.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(stage_->panes().texture(which))), {x, 0}, {x + half, foot}, {0, 1}, {1, 0});
    }
    draw.AddRectFilled({half - line_px / 2, 0}, {half + line_px / 2, foot}, ui.colours().panel);
}

// A small bar above the tools comes and goes: the picture does not jump for it. A demonstration places its own.
void Desk::keep_free_area() {
    if (session_->shows_two() && !session_->shown_item()) return;
    const Practice* practice = session_->practice();
    const FreeArea now = session_->on_wall() ? free_area(views_.panels, width_, height_)
                         : session_->shown_item() && shows_close(session_->looks()->look()->skill) ? FreeArea{}
                         : session_->shown_item() ? (session_->looks()->stage() == practice::LookStage::asking ? free_area(views_.panels, width_, height_) : free_)
                         : practice->watching() || practice->drill() || practice->questions() ? FreeArea{}
                         : views_.takes_arrows() || views_.row.bar_shown ? free_
                                                                   : free_area(views_.panels, width_, height_);
    if (now == free_) return;
    free_ = now;
    pointing_.resized();
    again_ = std::max(again_, 2);
}

std::optional<ui::At> Desk::place_on_screen(NodeId node, float width, float height) const {
    const Practice* practice = session_->practice();
    const Node* here = practice ? practice->now().find(node) : nullptr;
    if (!here || here->removed) return std::nullopt;
    const Length middle{wood_beyond(practice->now(), *practice->now().find(axis_of(node)), index_of(node)).count / 2};
    const auto place = place_of(stage_->shape(), practice->now(), {axis_of(node), node, middle});
    const auto at = place ? Projection(camera(), width, height)(*place) : std::nullopt;
    if (!at || at->x < 0 || at->y < 0 || at->x >= width || at->y >= height) return std::nullopt;
    return at;
}

std::string Desk::report() const { return report_of(*session_, *stage_, eye_.view(), camera(), probe_, !more_to_do(), counted_, width_, height_); }

}  // namespace spurwright::app
