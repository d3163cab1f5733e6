#include "scenarios/commands/quantities.h"

#include <array>
#include <charconv>
#include <cmath>
#include <span>

namespace spurwright::commands {
namespace {

struct Unit {
    std::string_view name;
    double times, over; // a unit that is a tenth, hundredth or thousandth divides: 900 mm is the model's own 0.9
};
constexpr std::array<Unit, 5> length_units{{{"mm", 1, 1000}, {"cm", 1, 100}, {"m", 1, 1}, {"in", 0.0254, 1}, {"ft", 0.3048, 1}}};
constexpr std::array<Unit, 4> mass_units{{{"g", 1, 1000}, {"kg", 1, 1}, {"lb", 0.45359237, 1}, {"oz", 0.45359237, 16}}};

Error bad(std::string_view key, std::string_view text, std::string_view option) {
    return {Fault::bad_text, TextKey{key}, {{"text", std::string(text)}}, {std::string(option), 0, 0, 0}};
}

// A kind of measure: its units, and what is said to text that is none or has no unit.
struct Kind {
    std::span<const Unit> units;
    std::string_view none, no_unit;
};

Result<double> read_with_unit(std::string_view text, std::string_view option, const Kind& kind) {
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault == std::errc::result_out_of_range) return failure(bad("error.value.huge", text, option));
    if (fault != std::errc{} || !std::isfinite(value)) return failure(bad(kind.none, text, option));
    std::string_view unit = text.substr(static_cast<std::size_t>(end - text.data()));
    if (!unit.empty() && unit[0] == ',') return failure(bad("error.value.comma", text, option));
    while (!unit.empty() && unit[0] == ' ') unit.remove_prefix(1);
    if (unit.empty()) return failure(bad(kind.no_unit, text, option));
    for (const Unit& known : kind.units)
        if (unit == known.name) return value * known.times / known.over;
    return failure(bad(kind.none, text, option));
}

} // namespace

Result<double> read_metres(std::string_view text, std::string_view option) {
    return read_with_unit(text, option, {length_units, "error.value.length", "error.value.no-unit"});
}

Result<double> read_kilograms(std::string_view text, std::string_view option) {
    auto kg = read_with_unit(text, option, {mass_units, "error.value.mass", "error.value.no-mass-unit"});
    if (kg && *kg < 0) return failure(bad("error.value.negative", text, option));
    if (kg && *kg > 1000) return failure(bad("error.value.huge", text, option)); // no vine's prunings (our choice)
    return kg;
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
