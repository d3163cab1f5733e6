#include "scenarios/commands/quantities.h"

#include <array>
#include <charconv>
#include <cmath>

namespace spurwright::commands {
namespace {

struct Unit {
    std::string_view name;
    double metres;
};
constexpr std::array<Unit, 5> length_units{{{"mm", 0.001}, {"cm", 0.01}, {"m", 1.0}, {"in", 0.0254}, {"ft", 0.3048}}};

Error bad(std::string_view key, std::string_view text, std::string_view option) {
    return {Fault::bad_text, TextKey{key}, {{"text", std::string(text)}}, {std::string(option), 0, 0, 0}};
}

} // namespace

Result<double> read_metres(std::string_view text, std::string_view option) {
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault == std::errc::result_out_of_range) return failure(bad("error.value.huge", text, option));
    if (fault != std::errc{} || !std::isfinite(value)) return failure(bad("error.value.length", text, option));
    std::string_view unit = text.substr(static_cast<std::size_t>(end - text.data()));
    if (!unit.empty() && unit[0] == ',') return failure(bad("error.value.comma", text, option));
    while (!unit.empty() && unit[0] == ' ') unit.remove_prefix(1);
    if (unit.empty()) return failure(bad("error.value.no-unit", text, option));
    for (const Unit& known : length_units) {
        // 1.8 m and 900 mm must be the very numbers the model's own defaults are, so mm divide rather than multiply.
        if (unit == known.name)
            return known.metres == 0.001 ? value / 1000 : known.metres == 0.01 ? value / 100 : value * known.metres;
    }
    return failure(bad("error.value.length", text, option));
}

Result<std::int64_t> read_whole(std::string_view text, std::string_view option, std::int64_t low, std::int64_t high) {
    std::int64_t value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault == std::errc::invalid_argument || end != text.data() + text.size())
        return failure(bad("error.value.whole", text, option));
    if (fault != std::errc{} || value < low || value > high) {
        Error error = bad("error.value.range", text, option);
        error.fault = Fault::out_of_range;
        error.arguments.push_back({"low", std::to_string(low)});
        error.arguments.push_back({"high", std::to_string(high)});
        return failure(std::move(error));
    }
    return value;
}

Result<bool> read_yes(std::string_view text, std::string_view option) {
    if (text == "yes" || text == "no") return text == "yes";
    return failure(unknown_word(text, option, "yes, no"));
}

Error unknown_word(std::string_view text, std::string_view option, std::string words) {
    Error error = bad("error.value.word", text, option);
    error.arguments.push_back({"words", std::move(words)});
    return error;
}

} // namespace spurwright::commands
