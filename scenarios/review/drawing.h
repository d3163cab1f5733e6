// A vine seen from the row as a drawing in a page: SVG text, in millimetres, no library. Own wood is drawn full, the best
// plan's as a dotted twin line beside it, what was cut off as a pale thin line. Must not know: marks.
#pragma once

#include <string>

#include "scenarios/words/words.h"
#include "sim/vine/vine.h"

namespace spurwright::review {

struct Drawn {
    const Vine& before;
    const Vine& after;  // own plan carried out
    const Vine& best;   // the best plan carried out
};
// One <svg> element, with a title and a description for those who do not see it.
std::string drawing(const Drawn& drawn, const words::Words& words);

// Text safe inside HTML and SVG.
std::string escaped(std::string_view text);

} // namespace spurwright::review
