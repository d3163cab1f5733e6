#include "scenarios/words/load_words.h"

#include <algorithm>

#include "scenarios/io/json.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::words {

Result<WordFile> load_word_file(const io::Assets& assets, std::string_view language) {
    const std::string path = assets.path("words", std::string(language) + ".json");
    auto text = io::read_file(path, io::largest_json);
    if (!text) return failure(std::move(text.error()));
    return read_word_file(*text, path);
}

Result<Words> load_words(const io::Assets& assets, std::string_view language) {
    if (std::find(languages.begin(), languages.end(), language) == languages.end()) {
        std::string known;
        for (const std::string_view one : languages) known += (known.empty() ? "" : ", ") + std::string(one);
        return failure({Fault::out_of_range,
                        TextKey{"error.language"},
                        {{"text", std::string(language)}, {"words", known}},
                        {"--language", 0, 0, 0}});
    }
    std::vector<WordFile> chain;
    std::string next(language);
    while (!next.empty() && chain.size() < languages.size()) {
        auto file = load_word_file(assets, next);
        if (!file) return failure(std::move(file.error()));
        next = file->falls_to;
        chain.push_back(*std::move(file));
    }
    return Words(std::move(chain));
}

Words bare_words() {
    WordFile file;
    file.language = "en";
    file.texts = {
        {"error.assets.none", "The program's own files (the folder assets) were not found."},
        {"error.assets.told", "There is no folder {path}."},
        {"error.file.no-such", "There is no such file."},
        {"error.file.not-allowed", "This file may not be opened."},
        {"error.file.unreadable", "This file cannot be read (system error {code})."},
        {"error.json.not-json", "This is no valid JSON from here on."},
        {"error.json.ends-early", "The file ends before its JSON is complete."},
        {"error.language", "There is no language {text}; there are {words}."},
    };
    return Words({std::move(file)});
}

} // namespace spurwright::words
