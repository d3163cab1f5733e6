// Whether the word files agree: every key in every complete language, the same gaps, both plurals, no wording marked
// open that is not there. What the tests check, and `words --check` for those who change a word.
#pragma once

#include <string>
#include <vector>

#include "scenarios/words/words.h"

namespace spurwright::words {

struct WordFault {
    std::string language, key, what; // what: of gaps, the gaps that differ
};

struct WordFaults {
    std::vector<WordFault> missing; // in English but not here; a plural without its other form
    std::vector<WordFault> extra;   // here but not in English; marked open but not here
    std::vector<WordFault> gaps;    // not the same gaps as in English
    bool any() const { return !missing.empty() || !extra.empty() || !gaps.empty(); }
};

// English first. A language that falls to English must be complete; one that falls to another holds only what differs.
WordFaults word_faults(const std::vector<WordFile>& files);

} // namespace spurwright::words
