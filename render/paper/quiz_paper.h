// A quiz on paper: two questions a page with the vine's picture and its tapes, and the key on a page of its own at the end.
#pragma once

#include <string>
#include <vector>

#include "render/paper/vine_pictures.h"
#include "scenarios/words/words.h"

namespace spurwright::paper {

struct QuizPaper {
    std::string bytes; // of a PDF; empty: it could not be drawn
    int pages = 0;
};

// `pictures` go with `items`. `house`, `seed`: what stands at the foot, so that the same paper can be made again.
QuizPaper quiz_paper(const std::vector<quiz::Item>& items, const std::vector<VinePicture>& pictures, const std::string& house, const std::string& seed, const words::Words& first,
                     const words::Words& second);

} // namespace spurwright::paper
