// The words of the language asked, from assets/words: "es-CL" reads es-CL.json, es.json, en.json where there are.
#pragma once

#include <array>
#include <string_view>

#include "scenarios/io/assets.h"
#include "scenarios/words/words.h"

namespace spurwright::words {

// The languages the program can be asked for.
inline constexpr std::array<std::string_view, 4> languages{"en", "es", "es-ES", "es-CL"};

// Fault::out_of_range where there is no such language; bad_file where a word file cannot be read.
[[nodiscard]] Result<Words> load_words(const io::Assets& assets, std::string_view language);
[[nodiscard]] Result<WordFile> load_word_file(const io::Assets& assets, std::string_view language);

// Enough English to say what is wrong when no word file can be read.
Words bare_words();

} // namespace spurwright::words
