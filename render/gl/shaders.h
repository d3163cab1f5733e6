// Programs from the shader folder. Bodies carry no version line, so that the same files serve a browser: the loader
// puts the version, the switches and the shared pieces first. Variants are made by #define; only small things share one
// and branch on a uniform (paints.h).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "render/gl/gl_objects.h"
#include "sim/core/error.h"

namespace spurwright::gl {

class Shaders {
public:
    explicit Shaders(std::string folder) : folder_(std::move(folder)) {}

    // "surface.vert" and "surface.frag" with the shared pieces named, and `defines` set. Fails where a file is missing
    // or the driver refuses it; the error says which and gives the driver's words.
    [[nodiscard]] Result<Program> program(std::string_view vertex, std::string_view fragment,
                                          const std::vector<std::string>& defines,
                                          const std::vector<std::string>& fragment_pieces) const;

private:
    Result<std::string> read(std::string_view name) const;
    std::string folder_;
};

} // namespace spurwright::gl
