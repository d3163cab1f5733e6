// The verbs that draw. Their records stand here, so that the help lists them and their words are checked with the others;
// their answers are in render/app, and `spurwright` hands them to its sibling. Must not know: how a picture is made.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

// Without their answers: this program refuses them, the drawing ones fill them in.
Verb picture_verb();  // spurwright-window
Verb turn_verb();
Verb export_verb();
Verb paper_verb();    // spurwright-paper
Verb book_plot_verb();
Verb book_sheet_verb();
Verb quiz_make_verb();
Verb audit_sheet_verb();

bool is_drawn(const Verb& verb);

// Runs the sibling that draws, in the folder of this program, with all arguments, where the verb asked draws; does not come
// back then. Comes back where it does not draw, or where there is no such program: then the verb refuses by itself.
void hand_over_drawing(const std::vector<std::string>& arguments);

}  // namespace spurwright::commands
