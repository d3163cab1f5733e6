#include "scenarios/words/words.h"

#include <algorithm>

#include "scenarios/io/json_fields.h"

namespace spurwright::words {
namespace {

constexpr int deepest_key = 4;              // a gap may hold a key whose text has gaps; a circle stops here
constexpr std::size_t longest_text = 2'000; // characters

// Calls `plain` for runs of text and `gap` for names between braces. False where braces are not paired.
template <class Plain, class Gap>
bool walk(std::string_view text, Plain plain, Gap gap) {
    while (!text.empty()) {
        const std::size_t brace = std::min(text.find_first_of("{}"), text.size());
        plain(text.substr(0, brace));
        text.remove_prefix(brace);
        if (text.empty()) return true;
        if (text.size() > 1 && text[0] == text[1]) {
            plain(text.substr(0, 1));
            text.remove_prefix(2);
            continue;
        }
        const std::size_t close = text.find('}');
        if (text[0] == '}' || close == std::string_view::npos || close == 1) return false;
        const std::string_view name = text.substr(1, close - 1);
        if (name.find('{') != std::string_view::npos) return false;
        gap(name);
        text.remove_prefix(close + 1);
    }
    return true;
}

const Named* find_gap(const Arguments& arguments, std::string_view name, std::size_t& at) {
    for (at = 0; at < arguments.size(); ++at)
        if (arguments[at].gap == name) return &arguments[at];
    return nullptr;
}

// Puts a sentence together. Of two measures joined by one short word the unit is said once: "8 to 12 mm".
struct Joiner {
    std::string text;

    void plain(std::string_view part) {
        between_ += part;
        text += part;
    }
    void measure(const std::string& measured) {
        const std::size_t unit = measured.rfind(' ');
        const std::string_view name =
            unit == std::string::npos ? std::string_view{} : std::string_view(measured).substr(unit);
        if (!name.empty() && name == unit_ && short_word(between_))
            text.erase(text.size() - between_.size() - unit_.size(), unit_.size());
        text += measured;
        unit_ = name;
        between_.clear();
    }

private:
    std::string unit_, between_; // of the measure before, and what was said since

    static bool short_word(std::string_view word) {
        const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || c == ' '; };
        return word.size() >= 3 && word.size() <= 5 && word.front() == ' ' && word.back() == ' ' &&
               std::all_of(word.begin(), word.end(), letter);
    }
};

} // namespace

Gaps gaps_of(std::string_view text) {
    Gaps gaps;
    gaps.paired = walk(
        text, [](std::string_view) {},
        [&](std::string_view name) {
            if (std::find(gaps.names.begin(), gaps.names.end(), name) == gaps.names.end())
                gaps.names.emplace_back(name);
        });
    return gaps;
}

Result<WordFile> read_word_file(std::string_view text, const std::string& source) {
    auto root = io::read_json(text, source);
    if (!root) return failure(std::move(root.error()));
    io::Refusal refusal(source);
    io::Fields fields(refusal, *root);
    WordFile file;
    io::Fields about(refusal, fields.required("_about"));
    file.language = about.text("language", 20);
    file.name = about.text("name", 60);
    file.falls_to = about.text("falls_to", 20, "");
    file.shown = about.yes("shown", true);
    about.end();
    for (const io::Json& key : fields.list("_open", false)) file.open.push_back(fields.text_of(key, "_open", 200));
    const std::string* before = nullptr;
    for (std::size_t i = 0; i < root->keys.size(); ++i) {
        const std::string& key = root->keys[i];
        const io::Json& value = root->items[i];
        if (before && !(*before < key)) refusal.add("error.words.order", {{"key", key}, {"before", *before}}, value);
        before = &key;
        if (key.starts_with('_')) {
            if (key != "_about" && key != "_open") refusal.add("error.json.unknown-key", {{"key", key}}, value);
            continue;
        }
        std::string sentence = fields.text_of(value, key, longest_text);
        if (!gaps_of(sentence).paired) refusal.add("error.words.braces", {{"key", key}}, value);
        file.texts.emplace(key, std::move(sentence));
    }
    if (refusal.any()) return failure(refusal.take());
    return file;
}

Words::Words(std::vector<WordFile> chain) : chain_(std::move(chain)) {
    if (const std::string* point = find("number.point")) style_.point = *point;
    if (const std::string* group = find("number.group")) style_.group = *group;
}

bool Words::unchecked() const {
    return std::any_of(chain_.begin(), chain_.end(),
                       [&](const WordFile& file) { return file.language != "en" && !file.open.empty(); });
}

const std::string* Words::find(std::string_view key) const {
    for (const WordFile& file : chain_)
        if (const auto at = file.texts.find(key); at != file.texts.end()) return &at->second;
    return nullptr;
}

std::string Words::filled(const std::string& text, const Arguments& arguments, int depth) const {
    const std::vector<std::string> measures = measure_texts(arguments, style_);
    Joiner out;
    walk(
        text, [&](std::string_view plain) { out.plain(plain); },
        [&](std::string_view name) {
            std::size_t at = 0;
            const Named* argument = find_gap(arguments, name, at);
            if (!argument)
                out.plain("[" + std::string(name) + "]");
            else if (const auto* part = std::get_if<std::string>(&argument->value))
                out.plain(*part);
            else if (const auto* axis = std::get_if<AxisId>(&argument->value))
                out.plain(name_of(*axis));
            else if (const auto* node = std::get_if<NodeId>(&argument->value))
                out.plain(name_of(*node));
            else if (const auto* key = std::get_if<TextKey>(&argument->value))
                out.plain(depth < deepest_key ? sentence(key->name, arguments, depth + 1) : std::string(key->name));
            else
                out.measure(measures[at]);
        });
    return out.text;
}

std::string Words::sentence(std::string_view key, const Arguments& arguments, int depth) const {
    if (const std::string* text = find(key)) return filled(*text, arguments, depth);
    std::size_t at = 0;
    const Named* n = find_gap(arguments, "n", at);
    const auto* count = n ? std::get_if<Count>(&n->value) : nullptr;
    if (const std::string* text = find(std::string(key) + (count && count->value == 1 ? ".one" : ".other")))
        return filled(*text, arguments, depth);
    return "[" + std::string(key) + "]";
}

std::string Words::sentence(TextKey key, const Arguments& arguments) const { return sentence(key.name, arguments, 0); }

} // namespace spurwright::words
