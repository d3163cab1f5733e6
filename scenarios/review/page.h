// A review as one page that needs nothing beside it: HTML with its style and its drawing inside. In the language of the
// words; readable without colour, printable on paper.
#pragma once

#include "scenarios/review/told.h"

namespace spurwright::review {

// `title`: the vine's code or file name.
std::string page(const Review& review, const Vine& before, const std::string& title, const std::string& house_name,
                 const words::Words& words);

} // namespace spurwright::review
