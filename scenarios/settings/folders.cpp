#include "scenarios/settings/folders.h"

#include <sys/stat.h>

#include <cerrno>
#include <cstdlib>

namespace spurwright::settings {
namespace {

std::optional<std::string> absolute(const Environment& environment, const char* name) {
    auto value = environment(name);
    if (!value || value->empty() || value->front() != '/') return std::nullopt;
    return value;
}

bool is_folder(const std::string& path) {
    struct stat there{};
    return ::stat(path.c_str(), &there) == 0 && S_ISDIR(there.st_mode);
}

}  // namespace

Folders folders_of(const Environment& environment) {
    const auto home = absolute(environment, "HOME");
    auto config = absolute(environment, "XDG_CONFIG_HOME");
    auto data = absolute(environment, "XDG_DATA_HOME");
    if (!config && home) config = *home + "/.config";
    if (!data && home) data = *home + "/.local/share";
    Folders folders;
    if (config) {
        folders.settings_file = *config + "/spurwright/settings.json";
        folders.house_file = *config + "/spurwright/house-rules.json";
    }
    if (data) {
        folders.work_folder = *data + "/spurwright/work";
        folders.store_file = *data + "/spurwright/store.sqlite";
    }
    return folders;
}

Folders own_folders() {
    return folders_of([](const char* name) -> std::optional<std::string> {
        const char* value = std::getenv(name);
        return value ? std::optional<std::string>(value) : std::nullopt;
    });
}

Result<void> make_folder(const std::string& path) {
    if (path.empty() || is_folder(path)) return {};
    for (std::size_t at = 1; at != std::string::npos;) {
        at = path.find('/', at + 1);
        const std::string part = path.substr(0, at);
        if (::mkdir(part.c_str(), 0700) != 0 && errno != EEXIST && !is_folder(part))
            return failure({Fault::cannot_write, {"error.settings.folder"}, {{"path", part}}, {part, 0, 0, 0}});
    }
    if (!is_folder(path)) return failure({Fault::cannot_write, {"error.settings.folder"}, {{"path", path}}, {path, 0, 0, 0}});
    return {};
}

std::string folder_of(const std::string& file) {
    const auto slash = file.rfind('/');
    return slash == std::string::npos ? "." : slash == 0 ? "/" : file.substr(0, slash);
}

}  // namespace spurwright::settings
