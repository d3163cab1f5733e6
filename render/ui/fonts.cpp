#include "render/ui/fonts.h"

#include <cstdio>
#include <memory>

#include <fontconfig/fontconfig.h>

namespace spurwright::ui {
namespace {

constexpr const char* family = "DejaVu Sans";

Error no_font() {
    return {Fault::missing, TextKey{"screen.error.no-font"}, {{"package", std::string("fonts-dejavu-core")}}, {}};
}

bool opens(const std::string& path) {
    std::FILE* file = std::fopen(path.c_str(), "rb");
    if (file) std::fclose(file);
    return file != nullptr;
}

const FcChar8* fc(const char* text) { return reinterpret_cast<const FcChar8*>(text); }

// Path of the family's file of this weight; empty where another family would stand in for it.
std::string font_file(FcConfig* config, int weight) {
    const std::unique_ptr<FcPattern, void (*)(FcPattern*)> wanted(FcPatternCreate(), FcPatternDestroy);
    FcPatternAddString(wanted.get(), FC_FAMILY, fc(family));
    FcPatternAddInteger(wanted.get(), FC_WEIGHT, weight);
    FcPatternAddInteger(wanted.get(), FC_SLANT, FC_SLANT_ROMAN);
    FcPatternAddInteger(wanted.get(), FC_WIDTH, FC_WIDTH_NORMAL);
    FcConfigSubstitute(config, wanted.get(), FcMatchPattern);
    FcDefaultSubstitute(wanted.get());
    FcResult said{};
    const std::unique_ptr<FcPattern, void (*)(FcPattern*)> found(FcFontMatch(config, wanted.get(), &said),
                                                                 FcPatternDestroy);
    FcChar8 *name = nullptr, *path = nullptr;
    if (!found || FcPatternGetString(found.get(), FC_FAMILY, 0, &name) != FcResultMatch ||
        FcPatternGetString(found.get(), FC_FILE, 0, &path) != FcResultMatch)
        return {};
    if (std::string(reinterpret_cast<const char*>(name)) != family) return {};
    std::string file(reinterpret_cast<const char*>(path));
    return opens(file) ? file : std::string();
}

} // namespace

Result<FontFiles> find_fonts() {
    const std::unique_ptr<FcConfig, void (*)(FcConfig*)> config(FcInitLoadConfigAndFonts(), FcConfigDestroy);
    if (!config) return failure(no_font());
    FontFiles files{font_file(config.get(), FC_WEIGHT_REGULAR), font_file(config.get(), FC_WEIGHT_BOLD)};
    if (files.body.empty() || files.strong.empty()) return failure(no_font());
    return files;
}

std::vector<ImWchar> glyph_ranges(const std::vector<std::string>& texts) {
    // Latin of our languages and those next in line, Polynesian okina, dashes and quotes, euro, arrows, signs.
    static constexpr ImWchar always[] = {0x20,   0x17F,  0x218,  0x21B,  0x2BB,  0x2BB,  0x2010,
                                         0x2026, 0x20AC, 0x20AC, 0x2190, 0x2193, 0x2264, 0x2265,
                                         0x2300, 0x2300, 0x2713, 0x2713, 0x2717, 0x2717, 0};
    ImFontGlyphRangesBuilder builder;
    builder.AddRanges(always);
    for (const std::string& text : texts) builder.AddText(text.c_str(), text.c_str() + text.size());
    ImVector<ImWchar> built;
    builder.BuildRanges(&built);
    return {built.begin(), built.end()};
}

Result<Fonts> build_fonts(const FontFiles& files, const std::vector<ImWchar>& ranges, float em) {
    if (!opens(files.body) || !opens(files.strong)) return failure(no_font());
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    ImFontConfig config;
    config.OversampleH = em > 24 ? 1 : 2; // large letters need no finer steps, and the texture stays small
    config.PixelSnapH = false;
    Fonts fonts;
    fonts.body = atlas.AddFontFromFileTTF(files.body.c_str(), em, &config, ranges.data());
    fonts.strong = atlas.AddFontFromFileTTF(files.strong.c_str(), em, &config, ranges.data());
    fonts.head = atlas.AddFontFromFileTTF(files.strong.c_str(), Grid::snapped(em * head_size), &config, ranges.data());
    if (!fonts.body || !fonts.strong || !fonts.head || !atlas.Build()) return failure(no_font());
    ImGui::GetIO().FontDefault = fonts.body;
    return fonts;
}

} // namespace spurwright::ui
