// The texts of one language: keys to sentences with named gaps, falling back from the regional file to its base and to
// English. The one place where a sentence is made. Must not know: how a rule marks, what a screen looks like.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/words/measures.h"
#include "sim/core/error.h"
#include "sim/core/text_key.h"

namespace spurwright::words {

// One file of assets/words: what it says itself, before any falling back.
struct WordFile {
    std::string language, name, falls_to; // "es-CL", "Español", "es"; falls_to empty: to nothing
    bool shown = true;
    std::vector<std::string> open; // keys whose wording no native pruner has checked
    std::map<std::string, std::string, std::less<>> texts;
};

// Faults: bad_file, with line and column: what io::read_json refuses, a text that is no text, unpaired braces, keys
// out of byte order.
[[nodiscard]] Result<WordFile> read_word_file(std::string_view text, const std::string& source);

class Words {
public:
    // `chain`: the language asked first, then what it falls back to, English last.
    explicit Words(std::vector<WordFile> chain);

    const std::string& language() const { return chain_.front().language; }
    bool has(std::string_view key) const { return find(key) != nullptr; }
    // Whether any wording of this language is still open.
    bool unchecked() const;

    // The sentence of a key with its gaps filled. Plural keys: `.one` or `.other` by the gap `n`. A gap that holds a
    // key is resolved with the same arguments. A key no file has prints as [key]: the tests see to it that none is.
    std::string sentence(TextKey key, const Arguments& arguments = {}) const;
    std::string operator()(std::string_view key, const Arguments& arguments = {}) const {
        return sentence(TextKey{key}, arguments);
    }

    // A measure alone, as it stands in sentences.
    std::string measure(const Argument& value) const { return measure_text(value, style_); }
    const NumberStyle& numbers() const { return style_; }

private:
    std::vector<WordFile> chain_;
    NumberStyle style_;

    const std::string* find(std::string_view key) const;
    std::string filled(const std::string& text, const Arguments& arguments, int depth) const;
    std::string sentence(std::string_view key, const Arguments& arguments, int depth) const;
};

// The gaps a text names, in order, without repeats; an error text where braces are not paired.
struct Gaps {
    std::vector<std::string> names;
    bool paired = true;
};
Gaps gaps_of(std::string_view text);

} // namespace spurwright::words
