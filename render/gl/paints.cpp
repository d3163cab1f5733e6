#include "render/gl/paints.h"

namespace spurwright::gl {

using mesh::Material;

Paints::Kind Paints::kind_of(Material material) {
    switch (material) {
    case Material::cane: return Kind::cane;
    case Material::two_year: return Kind::two_year;
    case Material::old: return Kind::old;
    case Material::ground: return Kind::ground;
    case Material::thin: return Kind::thin;
    case Material::leaf:
    case Material::card:
    case Material::backdrop:
    case Material::bud:
    case Material::dry:
    case Material::timber:
    case Material::metal:
    case Material::rubber:
    case Material::twine:
    case Material::face: break;
    }
    return Kind::small;
}

Result<Paints> Paints::make(const Shaders& shaders, const Finish& finish) {
    constexpr std::array<const char*, static_cast<std::size_t>(Kind::kinds)> define_of{
        "CANE", "TWO_YEAR", "OLD", "SMALL", "GROUND", "THIN"};
    // As surface.frag asks for them by number.
    const auto number = [](const char* name, Material material) {
        return std::string(name) + " " + std::to_string(static_cast<int>(material));
    };
    std::vector<std::string> common{"TAPS " + std::to_string(finish.shadow_taps), number("STUFF_BUD", Material::bud),
                                    number("STUFF_TIMBER", Material::timber), number("STUFF_METAL", Material::metal),
                                    number("STUFF_RUBBER", Material::rubber), number("STUFF_TWINE", Material::twine),
                                    number("STUFF_FACE", Material::face), number("STUFF_BACKDROP", Material::backdrop),
                                    number("STUFF_LEAF", Material::leaf), number("STUFF_CARD", Material::card)};
    if (finish.bump) common.push_back("BUMP");
    if (!finish.tone) common.push_back("NO_TONE");

    Paints paints;
    for (std::size_t k = 0; k < define_of.size(); ++k) {
        std::vector<std::string> defines = common;
        defines.push_back(define_of[k]);
        auto made = shaders.program("surface.vert", "surface.frag", defines, {"tone.glsl", "sky.glsl", "light.glsl"});
        if (!made) return failure(made.error());
        Surface& surface = paints.surfaces_[k];
        surface.program = std::move(*made);
        surface.look = glGetUniformLocation(surface.program.get(), "look");
        surface.dim = glGetUniformLocation(surface.program.get(), "dim");
        surface.stuff = glGetUniformLocation(surface.program.get(), "stuff");
    }
    const auto keep = [](Program& program, Result<Program> made) -> Result<void> {
        if (!made) return failure(made.error());
        program = std::move(*made);
        return {};
    };
    if (auto kept = keep(paints.sky_, shaders.program("sky.vert", "sky.frag", {}, {"tone.glsl", "sky.glsl"})); !kept)
        return failure(kept.error());
    if (auto kept = keep(paints.depth_, shaders.program("depth.vert", "depth.frag", {}, {})); !kept)
        return failure(kept.error());
    if (auto kept = keep(paints.flat_, shaders.program("flat.vert", "flat.frag", {}, {})); !kept)
        return failure(kept.error());
    return paints;
}

void Paints::use(Material material, const Look& look) const {
    const Surface& surface = surfaces_[static_cast<std::size_t>(kind_of(material))];
    glUseProgram(surface.program.get());
    glUniform4f(surface.look, look.red, look.green, look.blue, look.tint);
    glUniform1f(surface.dim, look.dim);
    if (surface.stuff >= 0) glUniform1i(surface.stuff, static_cast<GLint>(material));
}

} // namespace spurwright::gl
