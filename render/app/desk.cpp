#include "render/app/desk.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>
#include <imgui_impl_opengl3.h>

#include "render/app/desk_report.h"
#include "scenarios/words/load_words.h"
#include "sim/pruning/legal_edits.h"

namespace spurwright::app {
namespace {

namespace ask = practice::ask;
using practice::HandTool;
using practice::Practice;
using practice::Screen;

constexpr float drag_turn_deg_a_px = 0.12f, drag_lean_m_a_px = 0.0012f;
// A panel lies over the foot of the picture: what is shown stands so far above the middle, more where text is large.
constexpr float raised_deg = 5, raised_high_deg = 10.5f, over_head_m = 0.15f;  // (our choice)
constexpr float click_slack_px = 5;
constexpr float key_turn_deg = 5, key_fine_deg = 1, key_step_m = 0.05f;
constexpr float cycle_seconds = 1;
constexpr float lay_from_px = 40;  // a cane pulled this far along the row is laid to that side

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

Result<void> Desk::build_fonts() {
    const float em = std::round(ui::em_at_one * content_scale_ * static_cast<float>(session_->shell().settings.text_percent) / 100.0f);
    if (em == built_em_) return {};
    if (built_em_ > 0) ImGui_ImplOpenGL3_DestroyFontsTexture();
    auto fonts = ui::build_fonts(font_files_, ranges_, em);
    if (!fonts) return failure(std::move(fonts.error()));
    fonts_ = *fonts;
    built_em_ = em;
    ImGui_ImplOpenGL3_CreateFontsTexture();
    again_ = 3;
    return {};
}

void Desk::show_vine() {
    const Practice* practice = session_->practice();
    if (!practice) return;
    const bool fresh = shown_vine_ != session_->vine_number();
    if (!fresh && shown_change_ == practice->change()) return;
    if (const auto shown = stage_->show(practice->now(), fresh, session_->shell().settings.reduced_motion); !shown) session_->say(shown.error());
    else if (fresh) eye_.begin(stage_->shape());
    shown_vine_ = session_->vine_number();
    shown_change_ = practice->change();
    under_.clear();
    again_ = std::max(again_, 2);
}

// What lies under the pointer, where no panel does.
void Desk::point(float width, float height) {
    const ImGuiIO& io = ImGui::GetIO();
    Practice* practice = session_->practice();
    const bool in_picture = practice && session_->shell().screen == Screen::row && !io.WantCaptureMouse && io.MousePos.x >= 0 && io.MousePos.y >= 0 &&
                            io.MousePos.x < width && io.MousePos.y < height;
    const bool moved = !pointer_ || pointer_->x != io.MousePos.x || pointer_->y != io.MousePos.y;
    if (!in_picture) {
        pointer_.reset();
        under_.clear();
        if (practice && moved) practice->hover = {};
        return;
    }
    if (moved) keys_lead_ = false;
    if (keys_lead_) return;  // a view that turns under a resting pointer points at nothing
    if (!moved && !moving_ && !under_.empty()) return;
    if (!moved && !moving_ && practice->hover == practice::Spot{}) return;  // keys walk while the pointer rests
    pointer_ = ui::At{io.MousePos.x, io.MousePos.y};
    const scene::Camera camera = this->camera();
    scene::Reach reach;
    reach.radians_a_pixel = glm::radians(camera.fov_deg) / (camera.shown * height);
    under_ = scene::picked_all(stage_->capsules(), scene::ray_through(camera, io.MousePos.x / width, io.MousePos.y / height, width / height), reach);
    std::erase_if(under_, [](const scene::Picked& p) { return !p.axis; });
    cycled_ = 0;
    practice->hover = {};
    if (under_.empty()) return;
    if (!practice->drill()) practice->hover = spot_of(practice->now(), under_.front());  // a name would tell the wood
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

void Desk::click(const scene::Picked* picked) {
    Practice& practice = *session_->practice();
    if (practice.hand_rests()) return;
    if (!picked) {
        if (practice.tool == HandTool::none) ask(ask::Choose{});
        return;
    }
    const practice::Spot spot = spot_of(practice.now(), *picked);
    const bool done = practice.finished();
    if (done || practice.tool == HandTool::none || practice.tool == HandTool::calliper) ask(ask::Choose{spot.axis, picked->kind == mesh::PartKind::bud ? spot.node : NodeId{}});
    else if (practice.tool == HandTool::tape) ask(ask::MarkAs{spot.axis, practice.role_of(spot.axis) == practice.tape ? Role::none : practice.tape});
    else if (practice::cuts(practice.tool)) ask(ask::CutHere{spot, practice.tool});
    else if (practice.tool == HandTool::ties) ask(ask::TieHere{spot});
    else ask(ask::Choose{spot.axis, {}});  // hands: chosen now, laid by pulling or by the bar
}

void Desk::use_mouse(float width, float height) {
    const ImGuiIO& io = ImGui::GetIO();
    Practice* practice = session_->practice();
    if (!practice || session_->shell().screen != Screen::row || stage_->empty()) return;
    point(width, height);
    if (!io.WantCaptureMouse) {
        const scene::Picked* first = under_.empty() ? nullptr : &under_.front();
        if (ImGui::IsMouseClicked(0)) {
            drag_ = {};
            drag_.x = io.MousePos.x;
            drag_.y = io.MousePos.y;
            const bool hands = practice->tool == HandTool::hands && first && !practice->finished();
            drag_.lays = hands;
            if (hands) {
                drag_.cane = first->axis;
                ask(ask::Choose{first->axis, {}});
            }
            drag_.turns = !first && !io.KeyShift;
            drag_.leans = !first && io.KeyShift;
        }
        if (ImGui::IsMouseClicked(1)) {
            drag_ = {};
            drag_.leans = true;
        }
        if (io.MouseWheel != 0) {
            const auto there = first ? first->place : camera().target;
            eye_.nearer(io.MouseWheel, there);
            again_ = 2;
        }
    }
    const bool left = ImGui::IsMouseDown(0), right = ImGui::IsMouseDown(1);
    const bool just_pressed = ImGui::IsMouseClicked(0) || ImGui::IsMouseClicked(1);  // how it came there is no drag
    if ((left || right) && !just_pressed && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        drag_.gone += std::fabs(io.MouseDelta.x) + std::fabs(io.MouseDelta.y);
        const float px = height / 720.0f;
        if (drag_.turns) eye_.turn(-io.MouseDelta.x * drag_turn_deg_a_px / px, io.MouseDelta.y * drag_turn_deg_a_px / px);
        if (drag_.leans) eye_.step(-io.MouseDelta.x * drag_lean_m_a_px / px, io.MouseDelta.y * drag_lean_m_a_px / px);
    }
    if (ImGui::IsMouseReleased(0)) {
        const Drag drag = drag_;
        drag_ = {};
        if (drag.lays && std::fabs(io.MousePos.x - drag.x) >= lay_from_px) {
            const bool towards_far = (io.MousePos.x > drag.x) == (camera().eye.z >= 0 || eye_.orbits());
            ask(ask::LayTo{drag.cane, towards_far ? Side::right : Side::left});
            return;
        }
        if (io.WantCaptureMouse || drag.gone > click_slack_px * std::max(1.0f, content_scale_)) return;
        // Again at one place soon: the next candidate.
        const bool again = clicked_ago_ < cycle_seconds && std::fabs(clicked_x_ - io.MousePos.x) + std::fabs(clicked_y_ - io.MousePos.y) < click_slack_px;
        const bool chooses = practice->tool == HandTool::none || practice->tool == HandTool::calliper || practice->finished();
        cycled_ = again && chooses && !under_.empty() ? cycled_ + 1 : 0;
        clicked_x_ = io.MousePos.x;
        clicked_y_ = io.MousePos.y;
        clicked_ago_ = 0;
        click(under_.empty() ? nullptr : &next_axis(under_, cycled_));
        if (ImGui::IsMouseDoubleClicked(0) && chooses) ask(ask::LookAtChosen{});
    }
    if (ImGui::IsMouseDoubleClicked(0) && !io.WantCaptureMouse && practice->chosen && (practice->tool == HandTool::none || practice->finished())) ask(ask::LookAtChosen{});
}

// The keys of the picture itself: turning the head, leaning, coming closer. All others are commands of the screens.
void Desk::use_keys() {
    if (!session_->practice() || session_->shell().screen != Screen::row || ImGui::GetIO().WantTextInput || views_.takes_arrows()) return;
    namespace key = ui::key;
    const bool rests = session_->practice()->hand_rests();  // then the way to the next and back
    for (const ui::KeyPress& p : presses_) {
        if (p.alt || (rests && !p.shift && !p.ctrl && (p.key == key::left || p.key == key::right))) continue;
        const int x = p.key == key::right ? 1 : p.key == key::left ? -1 : 0, y = p.key == key::up ? 1 : p.key == key::down ? -1 : 0;
        const int closer = p.key == key::pad_plus || p.key == key::equal ? 1 : p.key == key::pad_minus || p.key == key::minus ? -1 : 0;
        if (x || y) {
            const float turn = p.ctrl ? key_fine_deg : key_turn_deg;
            if (p.shift) eye_.step(key_step_m * static_cast<float>(x), key_step_m * static_cast<float>(y));
            else eye_.turn(turn * static_cast<float>(x), turn * static_cast<float>(y));
        } else if (closer && !p.ctrl) {
            eye_.nearer(static_cast<float>(closer), camera().target);
        } else {
            continue;
        }
        again_ = 2;
    }
}

void Desk::look_at_piece() {
    const Practice& practice = *session_->practice();
    if (!practice.look() || practice.look()->current >= practice.look()->walk.size()) return;
    const auto& w = practice.look()->walk[practice.look()->current];
    const auto place = w.axis ? place_of(stage_->shape(), practice.now(), {w.axis, w.node, {0}}) : std::nullopt;
    if (place) eye_.look_at(*place, true);
}

// The eye goes with the act watched or the place touched, once each; acts on the vine as a whole are seen from the row.
void Desk::look_at_shown() {
    const Practice* practice = session_->practice();
    std::size_t at = 0;
    if (practice && practice->drill()) at = practice->drill()->at() + 1;
    else if (practice && practice->watching()) at = practice->watching()->at() + 1;
    if (at == turned_to_ || stage_->empty()) return;
    const bool began = turned_to_ == 0, touches = practice && practice->drill();
    turned_to_ = at;
    again_ = std::max(again_, 2);
    const practice::WatchedAct* act = at > 0 && !touches ? practice->watching()->shown() : nullptr;
    const bool lays = act && act->edit && std::holds_alternative<Lay>(*act->edit);
    const practice::Spot spot = touches ? (practice->drill()->here() ? practice->drill()->here()->spot : practice::Spot{}) : act && !lays ? act->spot : practice::Spot{};
    if (began || !spot) eye_.look_from(scene::View::row, stage_->shape(), {});
    const float raised = width_ < built_em_ * ui::narrow_below_em ? raised_high_deg : raised_deg;
    const shape::Vec3& head = stage_->shape().head;
    if (at > 0 && !spot) eye_.look_at(glm::vec3(head.x, head.y, head.z) + glm::vec3(0, over_head_m, 0), false, raised - raised_deg);
    if (const auto place = spot ? place_of(stage_->shape(), practice->now(), spot) : std::nullopt) eye_.look_at(*place, true, raised);
}

// What was walked to by keys is turned to where it stands beside the picture's middle part.
void Desk::keep_in_sight() {
    const Practice& practice = *session_->practice();
    const NodeId node = practice.chosen_node ? practice.chosen_node : node_id(practice.chosen, 2);
    const auto place = place_of(stage_->shape(), practice.now(), {practice.chosen, practice.now().find(node) ? node : NodeId{}, {0}});
    if (!place) return;
    const auto at = Projection(camera(), width_, height_)(*place);
    const bool seen = at && at->x > 0.1f * width_ && at->x < 0.9f * width_ && at->y > 0.15f * height_ && at->y < 0.85f * height_;
    if (!seen) eye_.look_at(*place, false);
}

// Requests about looking; false for any other.
bool Desk::look(const practice::Request& request) {
    const Practice* practice = session_->practice();
    if (!practice || stage_->empty()) return false;
    if (const auto* from = std::get_if<ask::LookFrom>(&request)) {
        const auto view = scene::read_view(from->view);
        if (view) eye_.look_from(*view, stage_->shape(), practice->chosen);
        return true;
    }
    if (std::holds_alternative<ask::LookAtChosen>(request)) {
        const auto place = place_of(stage_->shape(), practice->now(), {practice->chosen, practice->chosen_node, {0}});
        if (practice->chosen && place) eye_.look_at(*place, true);
        return true;
    }
    if (std::holds_alternative<ask::LookAtPiece>(request)) {
        look_at_piece();
        return true;
    }
    if (const auto* orbit = std::get_if<ask::Orbit>(&request)) {
        eye_.set_orbit(orbit->on, stage_->shape());
        return true;
    }
    return false;
}

void Desk::ask(const practice::Request& request) {
    again_ = 3;
    if (look(request)) return;
    session_->carry_out(request);
    if (std::holds_alternative<ask::WalkCanes>(request) || std::holds_alternative<ask::WalkBuds>(request)) {
        keys_lead_ = true;
        session_->practice()->hover = {};
        under_.clear();
        keep_in_sight();
    }
    if (std::holds_alternative<ask::NextPiece>(request) || std::holds_alternative<ask::ShowPiece>(request)) look_at_piece();
}

void Desk::frame(const gl::Target& target, float seconds) {
    if (target.width < 1 || target.height < 1) return;
    ImGui::SetCurrentContext(imgui_);
    ++frames_;
    if (again_ > 0) --again_;
    if (session_->poll()) again_ = 2;
    if (!build_fonts()) return;
    ImGuiIO& io = ImGui::GetIO();
    if (width_ != static_cast<float>(target.width) || height_ != static_cast<float>(target.height)) pointer_.reset();  // what lies under it is another place
    width_ = static_cast<float>(target.width);
    height_ = static_cast<float>(target.height);
    io.DisplaySize = {width_, height_};
    io.DeltaTime = std::max(seconds, 1e-4f);
    input_.feed(io, presses_);
    if (!presses_.empty()) again_ = std::max(again_, 2);
    clicked_ago_ += seconds;
    eye_.reduced_motion = session_->shell().settings.reduced_motion;
    const ui::Face face = session_->shell().settings.theme == settings::ThemeName::dusk ? ui::Face::dusk : ui::Face::paper;
    const ui::Grid grid{built_em_, built_em_ / ui::em_at_one};
    ui::apply(face, grid);
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    stage_->advance(seconds);  // first, so that what is cut now begins at its place
    show_vine();
    const scene::Camera before = this->camera();
    use_mouse(width_, height_);
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
    const bool picture = session_->practice() && shell.screen == Screen::row && !stage_->empty();
    if (picture) {
        overlay = overlay_of(*session_->practice(), shell, stage_->shape(), camera, would_cut(), pointer_, ui, width_, height_);
        const bool drew = stage_->draw(camera, overlay.emphases, target.width, target.height, moving_ || (stage_->slow() && !finer_asked_));
        rough_ = stage_->plain();
        finer_asked_ = false;
        if (drew) again_ = std::max(again_, 1);
        ImGui::GetBackgroundDrawList()->AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(stage_->texture())), {0, 0}, {width_, height_}, {0, 1}, {1, 0});
    } else {
        rough_ = false;
    }
    const ui::State state{shell, session_->practice()};
    const auto asked = ui::draw_screens(state, views_, spoken_, overlay.marks, ui);
    ImGui::Render();
    glBindFramebuffer(GL_FRAMEBUFFER, target.framebuffer);
    glViewport(0, 0, target.width, target.height);
    glDisable(GL_FRAMEBUFFER_SRGB);
    const unsigned ground = ui.colours().panel;
    glClearColor(static_cast<float>(ground & 255) / 255.0f, static_cast<float>((ground >> 8) & 255) / 255.0f, static_cast<float>((ground >> 16) & 255) / 255.0f, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    if (picture) keep_free_area();
    if (asked) ask(*asked);
}

// A small bar above the tools comes and goes: the picture does not jump for it. A demonstration places its own.
void Desk::keep_free_area() {
    const Practice* practice = session_->practice();
    const FreeArea now = practice->watching() || practice->drill() ? FreeArea{}
                         : views_.takes_arrows()                   ? free_
                                                                   : free_area(views_.panels, width_, height_);
    if (now == free_) return;
    free_ = now;
    pointer_.reset();
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

std::string Desk::report() const { return report_of(*session_, *stage_, eye_.view(), camera(), probe_, !more_to_do(), frames_, width_, height_); }

}  // namespace spurwright::app
