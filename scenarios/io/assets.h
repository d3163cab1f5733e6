// Where the program's own files lie: $SPURWRIGHT_ASSETS, else `assets` beside the program, else the source folder known
// from configuring. The first that exists is taken.
#pragma once

#include <string>
#include <string_view>

#include "sim/core/error.h"

namespace spurwright::io {

class Assets {
public:
    explicit Assets(std::string folder) : folder_(std::move(folder)) {}
    const std::string& folder() const { return folder_; }
    std::string path(std::string_view kind, std::string_view file) const {
        return folder_ + "/" + std::string(kind) + "/" + std::string(file);
    }

private:
    std::string folder_;
};

// Fault::missing where there is none. What $SPURWRIGHT_ASSETS names must exist.
[[nodiscard]] Result<Assets> find_assets();

} // namespace spurwright::io
