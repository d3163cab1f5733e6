// The program that sets type on paper and draws plots, sent out from the window and waited for: the window keeps no library
// of pages in its memory. Must not know: screens.
#pragma once

#include <string>
#include <vector>

namespace spurwright::practice {

struct PaperAnswer {
    bool done = false;
    bool no_program = false;  // none lies beside this one
    std::string said;         // by it, in the language asked, without blanks at the ends
};
// Runs `spurwright-paper` of this program's own folder with these words; blocks until it ends.
PaperAnswer run_paper(const std::vector<std::string>& words);

// A path as it was typed, made whole: with the ending where it has none, and from the root.
std::string paper_path(const std::string& typed, const std::string& otherwise, const std::string& ending);

}  // namespace spurwright::practice
