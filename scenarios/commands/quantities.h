// Numbers with units as people type them after an option: "1.8m", "900 mm", "6ft".
// Refused (bad_text, where the option): no number, no unit, an unknown unit, NaN, infinity. Ranges of lengths are the
// model's.
#pragma once

#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {

// Metres. Units: mm cm m in ft.
[[nodiscard]] Result<double> read_metres(std::string_view text, std::string_view option);

// Kilograms, not negative. Units: g kg lb oz.
[[nodiscard]] Result<double> read_kilograms(std::string_view text, std::string_view option);

// A whole number in [low, high].
[[nodiscard]] Result<std::int64_t> read_whole(std::string_view text, std::string_view option, std::int64_t low,
                                              std::int64_t high);

// Whether a word says yes: "yes" or "no".
[[nodiscard]] Result<bool> read_yes(std::string_view text, std::string_view option);

// The refusal of a word that is on no list.
Error unknown_word(std::string_view text, std::string_view option, std::string words);

// One of the words of an enum.
template <class E>
[[nodiscard]] Result<E> read_choice(std::string_view text, std::string_view option) {
    if (const auto value = read_word<E>(text)) return *value;
    std::string words;
    for (const auto word : words_of(E{})) words += (words.empty() ? "" : ", ") + std::string(word);
    return failure(unknown_word(text, option, std::move(words)));
}

} // namespace spurwright::commands
