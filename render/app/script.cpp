#include "render/app/script.h"

#include <array>
#include <cstdlib>
#include <sstream>
#include <vector>

#include "render/app/desk.h"
#include "render/app/picture.h"
#include "render/app/window.h"
#include "render/gl/offscreen_context.h"
#include "render/gl/png.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::app {
namespace {

constexpr float frame_seconds = 1.0f / 60;
constexpr int most_settling = 4000;  // frames
constexpr std::size_t largest_script = 1024 * 1024;

constexpr int left_shift = 340, left_ctrl = 341, left_alt = 342;  // as GLFW numbers them

struct NamedKey {
    std::string_view name;
    int key;
};
constexpr std::array<NamedKey, 14> named_keys{{{"Space", 32}, {"Escape", 256}, {"Enter", 257}, {"Tab", 258}, {"Backspace", 259}, {"Right", 262}, {"Left", 263},
                                               {"Down", 264}, {"Up", 265}, {"Home", 268}, {"comma", 44}, {"period", 46}, {"minus", 45}, {"plus", 61}}};

std::optional<Event> key_event(std::string text) {
    Event e{.kind = Event::Kind::key};
    for (bool more = true; more;) {
        more = false;
        for (const auto& [word, mod] : {std::pair{std::string("Ctrl+"), &Event::ctrl}, {std::string("Shift+"), &Event::shift}, {std::string("Alt+"), &Event::alt}})
            if (text.starts_with(word)) {
                e.*mod = more = true;
                text.erase(0, word.size());
            }
    }
    for (const NamedKey& known : named_keys)
        if (text == known.name) e.code = known.key;
    if (text.size() == 1) e.code = text[0] >= 'a' && text[0] <= 'z' ? text[0] - 'a' + 'A' : text[0];
    if (text.size() > 1 && text[0] == 'F') e.code = 289 + std::atoi(text.c_str() + 1);
    return e.code ? std::optional(e) : std::nullopt;
}

class Player {
public:
    Player(Desk& desk, int width, int height) : desk_(desk), canvas_(std::make_unique<gl::Canvas>(width, height)) {}

    Result<void> play(const std::string& line, int number) {
        std::istringstream words(line);
        std::string act;
        if (!(words >> act) || act[0] == '#') return {};
        std::string text;
        std::getline(words >> std::ws, text);
        std::istringstream numbers(text);
        float x = 0, y = 0;
        if (act == "resize" && numbers >> x >> y && x >= 0 && y >= 0 && x <= most_pixels && y <= most_pixels) {
            nothing_ = x < 1 || y < 1;
            if (!nothing_) canvas_ = std::make_unique<gl::Canvas>(static_cast<int>(x), static_cast<int>(y));
        } else if (act == "scale" && numbers >> x) {
            desk_.set_content_scale(x);
        } else if (act == "wait" && numbers >> x) {
            for (int i = 0; i < static_cast<int>(x); ++i) frame();
            return {};
        } else if (act == "settle") {
            settle(true);
        } else if (act == "move" && numbers >> x >> y) {
            move(x, y);
        } else if (act == "press" || act == "release") {
            button(act == "press", std::atoi(text.c_str()));
        } else if (act == "wheel" && numbers >> x) {
            desk_.input().push({.kind = Event::Kind::wheel, .y = x});
        } else if (act == "click") {
            const ui::Probed* widget = desk_.probe().find(text);
            if (!widget) return failure(missing(number, text));
            click((widget->box.x0 + widget->box.x1) / 2, (widget->box.y0 + widget->box.y1) / 2);
        } else if (act == "click-part" || act == "drag-part") {
            std::string name;
            numbers >> name;
            const auto node = read_node(name);
            const auto at = node ? on_screen(*node) : std::nullopt;
            if (!at) return failure(missing(number, name));
            if (act == "click-part") click(at->x, at->y);
            else if (numbers >> x >> y) {
                move(at->x, at->y);
                button(true, 0);
                settle();
                move(at->x + x, at->y + y);
                settle();
                button(false, 0);
            }
        } else if (act == "key") {
            auto press = key_event(text);
            if (!press) return failure(bad(number, line));
            stroke(*press);
        } else if (act == "type") {
            for (const char c : text) desk_.input().push({.kind = Event::Kind::text, .code = static_cast<unsigned char>(c)});
        } else if (act == "frames" && numbers >> x && x >= 0) {
            frames_ = static_cast<int>(x);
            return {};
        } else if (act == "glance") {
            return io::write_file(text, gl::png_bytes(canvas_->pixels(), canvas_->width(), canvas_->height()));
        } else if (act == "shot") {
            frames_ = 0;
            settle(true);
            return io::write_file(text, gl::png_bytes(canvas_->pixels(), canvas_->width(), canvas_->height()));
        } else if (act == "report") {
            settle();
            return io::write_file(text, desk_.report());
        } else {
            return failure(bad(number, line));
        }
        settle();
        return {};
    }

    // Until nothing is left to do; `fine`: the finer picture too.
    void settle(bool fine = false) {
        frame();
        for (int i = 0; i < (frames_ > 0 ? frames_ - 1 : most_settling); ++i) {
            if (!desk_.more_to_do() && !desk_.waits_for_search()) {
                if (!fine || !desk_.wants_finer()) return;
                desk_.finer();
            }
            frame();
        }
    }

private:
    void frame() { desk_.frame(nothing_ ? gl::Target{} : canvas_->target(), frame_seconds); }
    void move(float x, float y) {
        x_ = x;
        y_ = y;
        desk_.input().push({.kind = Event::Kind::move, .x = x, .y = y});
    }
    void button(bool down, int which) { desk_.input().push({.kind = Event::Kind::button, .x = x_, .y = y_, .code = which, .down = down}); }
    // Down and up again with what is held meanwhile, which is let go: no letters are taken while Ctrl stays down.
    void stroke(Event press) {
        std::vector<int> held;
        if (press.ctrl) held.push_back(left_ctrl);
        if (press.shift) held.push_back(left_shift);
        if (press.alt) held.push_back(left_alt);
        for (const int code : held) desk_.input().push({.kind = Event::Kind::key, .code = code, .down = true});
        for (const bool down : {true, false}) {
            press.down = down;
            desk_.input().push(press);
        }
        for (const int code : held) desk_.input().push({.kind = Event::Kind::key, .code = code, .down = false});
    }
    void click(float x, float y) {
        move(x, y);
        settle();
        button(true, 0);
        button(false, 0);
    }
    // The middle of the joint beyond that node, as people aim.
    std::optional<ui::At> on_screen(NodeId node) {
        return desk_.place_on_screen(node, static_cast<float>(canvas_->width()), static_cast<float>(canvas_->height()));
    }
    static Error bad(int line, const std::string& text) { return {Fault::bad_text, {"error.script.line"}, {{"text", text}}, {"--script", line, 0, 0}}; }
    static Error missing(int line, const std::string& what) { return {Fault::bad_file, {"error.script.not-there"}, {{"text", what}}, {"--script", line, 0, 0}}; }

    Desk& desk_;
    std::unique_ptr<gl::Canvas> canvas_;
    float x_ = 0, y_ = 0;
    int frames_ = 0;        // after each act; 0: until all is done
    bool nothing_ = false;  // shrunk until there is nothing to draw on
};

}  // namespace

Result<void> run_script(const io::Assets& assets, const WindowWish& wish) {
    const auto script = io::read_file(wish.script_file, largest_script);
    if (!script) return failure(script.error());
    auto session = practice::Session::make(assets, settings::own_folders(), wish.opening, seeds(wish));
    if (!session) return failure(std::move(session.error()));
    auto context = gl::OffscreenContext::make();
    if (!context) return failure(std::move(context.error()));
    auto desk = Desk::make(assets, std::move(*session));
    if (!desk) return failure(std::move(desk.error()));
    (*desk)->keep_probe(true);
    Player player(**desk, wish.width, wish.height);
    player.settle();
    std::istringstream lines(*script);
    std::string line;
    for (int number = 1; std::getline(lines, line); ++number)
        if (auto played = player.play(line, number); !played) return played;
    return {};
}

}  // namespace spurwright::app
