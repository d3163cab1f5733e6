#include "scenarios/quiz/item_words.h"

namespace spurwright::quiz {

std::string question_text(const words::Words& words, const Item& item) {
    const Arguments side{{"side", TextKey{item.side == Side::right ? "side.right" : "side.left"}}};
    return words("quiz.ask." + std::string(word_of(item.kind)), side);
}

std::string answer_text(const words::Words& words, const Item& item, const Answer& answer) {
    std::string text;
    for (const std::uint8_t digit : answer) {
        if (!text.empty()) text += " + ";
        text += std::to_string(int{digit});
        if (!item.words.empty() && digit >= 1 && digit <= item.words.size()) text += " " + words.sentence(item.words[digit - 1u]);
    }
    return text;
}

} // namespace spurwright::quiz
