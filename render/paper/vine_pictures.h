// Pictures of vines for papers: drawn by the window's program, which has OpenGL, and handed over as a file beside a list
// of where the asked places lie in it. So this program keeps libraries of pages alone, the other those of pictures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/quiz/item.h"
#include "sim/core/error.h"

namespace spurwright::paper {

// Pixels: of the picture as it is drawn, 300 an inch of print, and of the least that is cut out of it round what is asked
// about, half of each side: our choice.
inline constexpr int picture_width = 2144, picture_height = 1206, least_cut = 2;

struct VinePicture {
    std::string png; // bytes
    std::vector<std::optional<std::pair<double, double>>> places; // of the item's, in their order; none: out of the picture
    double left = 0, top = 0, width = picture_width, height = picture_height; // what is shown of it
};

// A folder of its own for what passes between the programs, gone with it.
class PictureFolder {
public:
    PictureFolder();
    ~PictureFolder();
    PictureFolder(const PictureFolder&) = delete;
    PictureFolder& operator=(const PictureFolder&) = delete;
    const std::string& path() const { return path_; } // empty: none could be made

private:
    std::string path_;
};

// The item's vine as it is shown. Refused (missing): no program of the window beside this one, or none of its pictures.
[[nodiscard]] Result<VinePicture> vine_picture(const quiz::Item& item, const PictureFolder& folder);

} // namespace spurwright::paper
