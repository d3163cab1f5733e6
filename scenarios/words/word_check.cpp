#include "scenarios/words/word_check.h"

#include <algorithm>

namespace spurwright::words {
namespace {

std::vector<std::string> sorted_gaps(const std::string& text) {
    std::vector<std::string> names = gaps_of(text).names;
    std::stable_sort(names.begin(), names.end());
    return names;
}

std::string joined(const std::vector<std::string>& names) {
    std::string all;
    for (const std::string& name : names) all += (all.empty() ? "{" : " {") + name + "}";
    return all.empty() ? "-" : all;
}

// "plan.count.one" and "plan.count.other" stand together; the stem of one, or nothing.
std::string other_plural(const std::string& key) {
    if (key.ends_with(".one")) return key.substr(0, key.size() - 3) + "other";
    if (key.ends_with(".other")) return key.substr(0, key.size() - 5) + "one";
    return {};
}

void compare(const WordFile& english, const WordFile& file, WordFaults& faults) {
    for (const auto& [key, text] : file.texts) {
        const auto plural = other_plural(key);
        if (!plural.empty() && file.texts.find(plural) == file.texts.end())
            faults.missing.push_back({file.language, plural, ""});
        const auto in_english = english.texts.find(key);
        if (in_english == english.texts.end()) {
            faults.extra.push_back({file.language, key, ""});
            continue;
        }
        const auto wanted = sorted_gaps(in_english->second), found = sorted_gaps(text);
        if (wanted != found) faults.gaps.push_back({file.language, key, joined(wanted) + " / " + joined(found)});
    }
    if (file.falls_to == english.language)
        for (const auto& [key, text] : english.texts)
            if (file.texts.find(key) == file.texts.end()) faults.missing.push_back({file.language, key, ""});
    for (const std::string& key : file.open)
        if (file.texts.find(key) == file.texts.end()) faults.extra.push_back({file.language, key, "_open"});
}

} // namespace

WordFaults word_faults(const std::vector<WordFile>& files) {
    WordFaults faults;
    for (const WordFile& file : files) compare(files.front(), file, faults);
    return faults;
}

} // namespace spurwright::words
