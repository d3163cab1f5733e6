#include "scenarios/io/assets.h"

#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cstdlib>

namespace spurwright::io {
namespace {

bool is_folder(const std::string& path) {
    struct stat there {};
    return ::stat(path.c_str(), &there) == 0 && S_ISDIR(there.st_mode);
}

std::string folder_of_program() {
    std::array<char, 4096> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    if (length <= 0) return ".";
    const std::string_view whole(path.data(), static_cast<std::size_t>(length));
    return std::string(whole.substr(0, whole.rfind('/')));
}

} // namespace

Result<Assets> find_assets() {
    if (const char* told = std::getenv("SPURWRIGHT_ASSETS"); told && *told) {
        if (is_folder(told)) return Assets(told);
        return failure({Fault::missing,
                        TextKey{"error.assets.told"},
                        {{"path", std::string(told)}},
                        {"SPURWRIGHT_ASSETS", 0, 0, 0}});
    }
    for (const std::string& folder : {folder_of_program() + "/assets", std::string(SPURWRIGHT_SOURCE_ASSETS)})
        if (is_folder(folder)) return Assets(folder);
    return failure({Fault::missing, TextKey{"error.assets.none"}, {}, {"assets", 0, 0, 0}});
}

} // namespace spurwright::io
