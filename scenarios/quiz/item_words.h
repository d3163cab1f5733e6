// A question and an answer of it in words, alike on the wall and on paper.
#pragma once

#include <string>

#include "scenarios/quiz/item.h"
#include "scenarios/words/words.h"

namespace spurwright::quiz {

std::string question_text(const words::Words& words, const Item& item);

// The digits, each with its word where the question gives words: "1 + 3", "2 Two years".
std::string answer_text(const words::Words& words, const Item& item, const Answer& answer);

} // namespace spurwright::quiz
