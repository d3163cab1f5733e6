// Where a person's settings and work lie, by the XDG rules. A folder is made when something is first kept in it.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "sim/core/error.h"

namespace spurwright::settings {

using Environment = std::function<std::optional<std::string>(const char*)>;

// Empty paths: nothing is kept (no home folder is known).
struct Folders {
    std::string settings_file;  // $XDG_CONFIG_HOME/spurwright/settings.json, else ~/.config/...
    std::string work_folder;    // $XDG_DATA_HOME/spurwright/work, else ~/.local/share/...
    std::string house_file{};   // the house's own rules, beside the settings
    std::string store_file{};   // the records, beside the work folder
};
// Only absolute paths count, as XDG asks.
Folders folders_of(const Environment& environment);
Folders own_folders();  // of this process

// Makes the folder and those above it. Fault::cannot_write.
[[nodiscard]] Result<void> make_folder(const std::string& path);
std::string folder_of(const std::string& file);

}  // namespace spurwright::settings
