#include "render/app/window.h"

#include <chrono>
#include <random>

#include <glad/gl.h>
#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

#include "render/app/desk.h"
#include "render/app/memory.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::app {
namespace {

constexpr double idle_wait = 5, settled_wait = 2, search_wait = 0.05, rest_wait = 0.3, held_wait = 1.0 / 30;  // seconds between looks where no event comes

Error lacking(std::string_view key) { return {Fault::missing, TextKey{key}, {}, {}}; }

// The system's window and the library that opened it, closed in order.
class SystemWindow {
public:
    SystemWindow() = default;
    ~SystemWindow() {
        if (window_) glfwDestroyWindow(window_);
        if (begun_) glfwTerminate();
    }
    SystemWindow(const SystemWindow&) = delete;
    SystemWindow& operator=(const SystemWindow&) = delete;

    Result<void> open(int width, int height, const std::string& title) {
        if (!glfwInit()) return failure(lacking("error.window.no-display"));
        begun_ = true;
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
        glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
        glfwWindowHint(GLFW_SAMPLES, 0);  // samples, depth and stencil live in the picture's own framebuffer
        glfwWindowHint(GLFW_DEPTH_BITS, 0);
        glfwWindowHint(GLFW_STENCIL_BITS, 0);
        window_ = glfwCreateWindow(width, height, title.c_str(), nullptr, nullptr);
        if (!window_) return failure(lacking("error.picture.no-gl"));
        glfwMakeContextCurrent(window_);
        if (!gladLoadGL(glfwGetProcAddress)) return failure(lacking("error.picture.no-gl"));
        glfwSwapInterval(1);
        return {};
    }
    GLFWwindow* get() const { return window_; }

private:
    GLFWwindow* window_ = nullptr;
    bool begun_ = false;
};

// Where GLFW's callbacks put what they hear; mouse places come in the window's units and leave in pixels.
struct Listener {
    Input* input = nullptr;
    bool redraw = true;
    float last_x = -1e6f, last_y = -1e6f;  // where the pointer was when the last event came: asking GLFW tells where it is by now

    static Listener& of(GLFWwindow* w) { return *static_cast<Listener*>(glfwGetWindowUserPointer(w)); }
    static void pixels(GLFWwindow* w, double& x, double& y) {
        int ww = 1, wh = 1, fw = 1, fh = 1;
        glfwGetWindowSize(w, &ww, &wh);
        glfwGetFramebufferSize(w, &fw, &fh);
        if (ww > 0) x *= static_cast<double>(fw) / ww;
        if (wh > 0) y *= static_cast<double>(fh) / wh;
    }
    static Event with_mods(Event e, int mods) {
        e.ctrl = (mods & GLFW_MOD_CONTROL) != 0;
        e.shift = (mods & GLFW_MOD_SHIFT) != 0;
        e.alt = (mods & GLFW_MOD_ALT) != 0;
        return e;
    }

    void listen(GLFWwindow* w) {
        glfwSetWindowUserPointer(w, this);
        glfwSetCursorPosCallback(w, [](GLFWwindow* on, double x, double y) {
            pixels(on, x, y);
            of(on).last_x = static_cast<float>(x);
            of(on).last_y = static_cast<float>(y);
            of(on).input->push({.kind = Event::Kind::move, .x = of(on).last_x, .y = of(on).last_y});
        });
        glfwSetCursorEnterCallback(w, [](GLFWwindow* on, int entered) {
            if (!entered) of(on).input->push({.kind = Event::Kind::move, .x = -1e6f, .y = -1e6f});
        });
        glfwSetMouseButtonCallback(w, [](GLFWwindow* on, int button, int action, int mods) {
            of(on).input->push(with_mods({.kind = Event::Kind::button, .x = of(on).last_x, .y = of(on).last_y, .code = button, .down = action == GLFW_PRESS}, mods));
        });
        glfwSetScrollCallback(w, [](GLFWwindow* on, double x, double y) { of(on).input->push({.kind = Event::Kind::wheel, .x = static_cast<float>(x), .y = static_cast<float>(y)}); });
        glfwSetKeyCallback(w, [](GLFWwindow* on, int key, int, int action, int mods) {
            if (key < 0) return;
            of(on).input->push(with_mods({.kind = Event::Kind::key, .code = key, .down = action != GLFW_RELEASE, .repeat = action == GLFW_REPEAT}, mods));
        });
        glfwSetCharCallback(w, [](GLFWwindow* on, unsigned point) { of(on).input->push({.kind = Event::Kind::text, .code = static_cast<int>(point)}); });
        glfwSetWindowFocusCallback(w, [](GLFWwindow* on, int gained) { of(on).input->push({.kind = Event::Kind::focus, .down = gained != 0}); });
        glfwSetWindowRefreshCallback(w, [](GLFWwindow* on) { of(on).redraw = true; });
        glfwSetFramebufferSizeCallback(w, [](GLFWwindow* on, int, int) { of(on).redraw = true; });
        glfwSetWindowContentScaleCallback(w, [](GLFWwindow* on, float, float) { of(on).redraw = true; });
    }
};

float content_scale(GLFWwindow* window) {
    float x = 1, y = 1;
    glfwGetWindowContentScale(window, &x, &y);
    return x > 0.5f && x < 8 ? x : 1.0f;
}

double wait_for(const Desk& desk, bool key_held) {
    if (desk.wants_finer()) return rest_wait;
    if (key_held) return held_wait;
    return desk.waits_for_search() ? search_wait : idle_wait;
}

}  // namespace

std::function<std::uint64_t()> seeds(const WindowWish& wish) {
    if (wish.seed) return [next = *wish.seed]() mutable { return next++; };
    return [] {
        std::random_device noise;
        return (static_cast<std::uint64_t>(noise()) << 32) | noise();
    };
}

Result<void> run_window(const io::Assets& assets, const WindowWish& wish) {
    auto session = practice::Session::make(assets, settings::own_folders(), wish.opening, seeds(wish));
    if (!session) return failure(std::move(session.error()));
    SystemWindow window;
    if (auto opened = window.open(wish.width, wish.height, (*session)->words()("window.title")); !opened) return opened;
    auto made = Desk::make(assets, std::move(*session));
    if (!made) return failure(std::move(made.error()));
    Desk& desk = **made;
    desk.keep_probe(!wish.probe_file.empty());
    Listener listener{&desk.input()};
    listener.listen(window.get());
    ImGuiIO& io = ImGui::GetIO();
    io.ClipboardUserData = window.get();
    io.GetClipboardTextFn = [](void* w) { return glfwGetClipboardString(static_cast<GLFWwindow*>(w)); };
    io.SetClipboardTextFn = [](void* w, const char* text) { glfwSetClipboardString(static_cast<GLFWwindow*>(w), text); };
    using Clock = std::chrono::steady_clock;
    Clock::time_point last = Clock::now();
    std::string reported;
    bool gave_back = false;  // since the last frame: a software renderer's store for one is a tenth of all memory
    while (!desk.leaving() && !glfwWindowShouldClose(window.get())) {
        if (desk.more_to_do() || listener.redraw) {
            glfwPollEvents();
        } else {
            const bool held = desk.input().key_held();
            const double asked = wait_for(desk, held), wait = asked == idle_wait && !gave_back ? settled_wait : asked;
            const Clock::time_point from = Clock::now();
            glfwWaitEventsTimeout(wait);
            const bool quiet = !desk.input().waiting() && std::chrono::duration<double>(Clock::now() - from).count() >= 0.9 * wait;
            if (quiet && desk.wants_finer()) desk.finer();
            else if (quiet && !held && !listener.redraw && !desk.waits_for_search()) {  // nothing to draw anew
                if (!gave_back) give_back_freed_memory();
                gave_back = true;
                continue;
            }
        }
        listener.redraw = false;
        int width = 0, height = 0;
        glfwGetFramebufferSize(window.get(), &width, &height);
        if (width < 1 || height < 1) {  // nothing to draw on: wait until there is
            glfwWaitEventsTimeout(idle_wait);
            continue;
        }
        desk.set_content_scale(content_scale(window.get()));
        const Clock::time_point now = Clock::now();
        desk.frame({0, width, height}, std::min(std::chrono::duration<float>(now - last).count(), 0.25f));
        last = now;
        gave_back = false;
        glfwSwapBuffers(window.get());
        if (wish.probe_file.empty()) continue;
        if (std::string report = desk.report(); report != reported) {
            reported = std::move(report);
            (void)io::write_file(wish.probe_file, reported);  // a test's own file: it looks again where this failed
        }
    }
    return {};
}

}  // namespace spurwright::app
