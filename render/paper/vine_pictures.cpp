#include "render/paper/vine_pictures.h"

#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>

#include "scenarios/io/json.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/io/vine_file.h"
#include "sim/core/ids.h"

extern char** environ;

namespace spurwright::paper {
namespace {

Error no_picture(std::string_view key) { return {Fault::missing, TextKey{key}, {}, {"spurwright-window", 0, 0, 0}}; }

std::string window_program() {
    std::array<char, 4096> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    const std::string_view whole(path.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    return std::string(whole.substr(0, whole.rfind('/') + 1)) + "spurwright-window";
}

// Its standard output, where it ended well.
std::optional<std::string> run(const std::string& program, std::vector<std::string> words) {
    int ends[2];
    if (::pipe(ends) != 0) return std::nullopt;
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    ::posix_spawn_file_actions_addclose(&actions, ends[0]);
    ::posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", 1, 0); // its sentence is not ours
    words.insert(words.begin(), program);
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    pid_t child = -1;
    const int spawned = ::posix_spawn(&child, program.c_str(), &actions, nullptr, arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    ::close(ends[1]);
    std::string out;
    std::array<char, 4096> buffer{};
    for (ssize_t got = 0; spawned == 0 && (got = ::read(ends[0], buffer.data(), buffer.size())) > 0;) out.append(buffer.data(), static_cast<std::size_t>(got));
    ::close(ends[0]);
    int status = -1;
    if (spawned != 0 || ::waitpid(child, &status, 0) != child || !WIFEXITED(status) || WEXITSTATUS(status) != 0) return std::nullopt;
    return out;
}

// The item's places, then where their wood begins: both have to be seen.
std::string places_text(const quiz::Item& item) {
    std::string text, bases;
    for (const quiz::TapedPlace& place : item.places) {
        text += (text.empty() ? "" : ",") + name_of(place.node) + "+" + io::Json(place.beyond).text;
        bases += "," + name_of(node_id(axis_of(place.node), 0)) + "+0";
    }
    return text + bases;
}

bool of_the_whole_vine(quiz::Kind kind) { return kind == quiz::Kind::which_job || kind == quiz::Kind::which_rule || kind == quiz::Kind::find_the_fault; }

std::optional<std::pair<double, double>> pixel(const io::Json& at) {
    if (at.items.size() != 2) return std::nullopt;
    return std::pair(std::atof(at.items[0].text.c_str()), std::atof(at.items[1].text.c_str()));
}

// The part of the picture that holds all of these with some room about, as wide for its height as the picture.
void cut_out(VinePicture& drawn, const std::vector<std::pair<double, double>>& held) {
    constexpr double room = 150; // pixels
    if (held.empty()) return;
    double left = picture_width, right = 0, top = picture_height, foot = 0;
    for (const auto& [x, y] : held) {
        left = std::min(left, x - room);
        right = std::max(right, x + room);
        top = std::min(top, y - room);
        foot = std::max(foot, y + room);
    }
    const double share = std::clamp(std::max((right - left) / picture_width, (foot - top) / picture_height), 1.0 / least_cut, 1.0);
    drawn.width = share * picture_width;
    drawn.height = share * picture_height;
    drawn.left = std::clamp((left + right - drawn.width) / 2, 0.0, picture_width - drawn.width);
    drawn.top = std::clamp((top + foot - drawn.height) / 2, 0.0, picture_height - drawn.height);
}

} // namespace

PictureFolder::PictureFolder() {
    std::error_code fault;
    std::string name = (std::filesystem::temp_directory_path(fault) / "spurwright-XXXXXX").string();
    if (!fault && ::mkdtemp(name.data())) path_ = name;
}

PictureFolder::~PictureFolder() {
    std::error_code fault;
    if (!path_.empty()) std::filesystem::remove_all(path_, fault);
}

Result<VinePicture> vine_picture(const quiz::Item& item, const PictureFolder& folder) {
    const std::string program = window_program(), vine = folder.path() + "/vine.json", picture = folder.path() + "/vine.png";
    if (!io::is_there(program)) return failure(no_picture("error.picture.no-window"));
    if (folder.path().empty()) return failure(no_picture("error.quiz.no-picture"));
    io::VineFile file;
    file.vine = item.vine;
    if (auto saved = io::save_vine_file(vine, file); !saved) return failure(saved.error());
    std::vector<std::string> words{"picture", vine, "--size", std::to_string(picture_width) + "x" + std::to_string(picture_height), "--light", "overcast", "-o", picture, "--json"};
    if (of_the_whole_vine(item.kind)) words.insert(words.end(), {"--view", "whole"});
    else if (item.kind != quiz::Kind::where_to_cut) words.emplace_back("--plain"); // no neighbours behind what is looked for
    if (!item.places.empty()) {
        words.emplace_back("--places");
        words.push_back(places_text(item));
    }
    const auto out = run(program, std::move(words));
    const auto said = out ? io::read_json(*out, "spurwright-window") : Result<io::Json>(failure(no_picture("error.quiz.no-picture")));
    const io::Json* places = said ? said->find("places") : nullptr;
    auto png = io::read_file(picture, 64u << 20);
    const std::size_t told = places ? places->items.size() : 0; // a vine without places is not asked about them
    if (!said || told != 2 * item.places.size() || !png) return failure(no_picture("error.quiz.no-picture"));
    VinePicture drawn;
    drawn.png = *std::move(png);
    std::vector<std::pair<double, double>> held;
    for (std::size_t i = 0; i < told; ++i) {
        const auto at = pixel(places->items[i]);
        if (i < item.places.size()) drawn.places.push_back(at);
        if (at) held.push_back(*at);
    }
    if (!of_the_whole_vine(item.kind)) cut_out(drawn, held);
    return drawn;
}

} // namespace spurwright::paper
