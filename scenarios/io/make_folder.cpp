#include "scenarios/io/make_folder.h"

#include <filesystem>

namespace spurwright::io {

Result<void> make_folder(const std::string& path) {
    std::error_code fault;
    std::filesystem::create_directories(path, fault);
    if (!std::filesystem::is_directory(path, fault)) return failure(Error{Fault::cannot_write, {"error.grow.folder"}, {}, {path, 0, 0, 0}});
    return {};
}

} // namespace spurwright::io
