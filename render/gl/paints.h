// What everything is painted with: the programs of one set of switches. Few, since a software driver keeps two megabytes
// for each.
#pragma once

#include <array>

#include "render/gl/shaders.h"
#include "render/mesh/mesh.h"

namespace spurwright::gl {

// The switches that programs are compiled with.
struct Finish {
    int shadow_taps = 9; // 1 or 9
    bool bump = true;
    bool tone = true; // false: colours as they are worked out, for measuring what the tone curve costs
};

class Paints {
public:
    // Needs a current context. Fault::missing where a file is missing or the driver refuses it.
    [[nodiscard]] static Result<Paints> make(const Shaders& shaders, const Finish& finish);

    // Begins to paint with a material, under a colour laid over it and so far dimmed.
    struct Look {
        float red = 1, green = 1, blue = 1, tint = 0, dim = 0;
    };
    void use(mesh::Material material, const Look& look) const;

    // The shape alone.
    GLuint depth() const { return depth_.get(); }
    GLuint sky() const { return sky_.get(); }
    GLuint flat() const { return flat_.get(); }

private:
    // One program for materials that paint alike. Small things share one and are told apart by a uniform: they cover so
    // few pixels that what the others would have cost does not show, and each program of its own would cost memory and
    // time at the start.
    enum class Kind : std::uint8_t { cane, two_year, old, small, ground, thin, kinds };
    struct Surface {
        Program program;
        GLint look = -1, dim = -1, stuff = -1;
    };
    static Kind kind_of(mesh::Material material);

    std::array<Surface, static_cast<std::size_t>(Kind::kinds)> surfaces_;
    Program sky_, depth_, flat_;
};

} // namespace spurwright::gl
