#include "scenarios/io/named_file.h"

#include <algorithm>
#include <charconv>

namespace spurwright::io {
namespace {

std::string plain_number(double value) {
    char text[32];
    const auto [end, fault] = std::to_chars(text, text + sizeof text, value);
    return std::string(text, fault == std::errc{} ? end : text);
}

bool is_own_word(std::string_view name) {
    return !name.empty() && name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
}

} // namespace

NamedFile read_named(Fields& fields, std::string_view kind, int newest, const std::vector<std::string_view>& shipped) {
    Refusal& refusal = fields.refusal();
    NamedFile file;
    const std::string found = fields.text("kind", 80);
    if (!refusal.any() && found != kind)
        refusal.add("error.file.kind", {{"wanted", std::string(kind)}, {"found", found}}, fields.required("kind"));
    const std::int64_t version = fields.whole("version", 1, 1'000'000);
    if (!refusal.any() && version > newest)
        refusal.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{newest}}},
                    fields.required("version"), Fault::newer);
    file.name = fields.text("name", longest_own_name);
    if (!refusal.any() && !is_own_word(file.name))
        refusal.add("error.named.name", {{"text", file.name}}, fields.required("name"));
    if (!refusal.any() && std::find(shipped.begin(), shipped.end(), file.name) != shipped.end())
        refusal.add("error.named.taken", {{"text", file.name}}, fields.required("name"));
    file.shown = fields.text("shown", 60, file.name);
    if (file.shown.empty()) file.shown = file.name;
    if (!fields.left_out("base")) file.base = fields.known_word("base", shipped);
    return file;
}

double value_between(Fields& fields, const Json& value, std::string_view key, double low, double high, double other) {
    const double number = fields.decimal_of(value, key, 4) / 1e4;
    if (fields.refusal().any()) return other;
    if (number >= low && number <= high) return number;
    fields.refusal().add(
        "error.json.range",
        {{"key", std::string(key)}, {"text", value.text}, {"low", plain_number(low)}, {"high", plain_number(high)}},
        value);
    return other;
}

bool is_path(std::string_view name_or_path) { return name_or_path.find_first_of("/.") != std::string_view::npos; }

} // namespace spurwright::io
