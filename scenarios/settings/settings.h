// What a person set once: language, text size, theme, units, motion. Plain data; kept in settings.json.
// Schema: assets/schemas/settings-1.json. Must not know: screens.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "sim/core/error.h"

namespace spurwright::settings {

inline constexpr std::string_view settings_kind = "spurwright-settings";
inline constexpr int settings_version = 1;
inline constexpr int least_text_percent = 100, most_text_percent = 250;

enum class ThemeName : unsigned char { paper, dusk };
constexpr auto words_of(ThemeName) { return std::to_array<std::string_view>({"paper", "dusk"}); }
enum class UnitsName : unsigned char { mm, inch };
constexpr auto words_of(UnitsName) { return std::to_array<std::string_view>({"mm", "inch"}); }

struct Settings {
    std::string language = "en";  // one of words::languages
    int text_percent = 100;       // 100 to 250
    ThemeName theme = ThemeName::paper;
    UnitsName units = UnitsName::mm;
    bool reduced_motion = false;
    bool step_feedback = false;
    bool safety_seen = false;     // the safety card was shown and closed once
    bool operator==(const Settings&) const = default;
};

// Faults: bad_file (line and column), newer.
[[nodiscard]] Result<Settings> read_settings(std::string_view text, const std::string& source);
std::string print_settings(const Settings& settings);

// What to go on with at a start. A file that cannot be read leaves the defaults in force for this run and is never
// saved over: `why` says it.
struct Loaded {
    Settings settings;
    bool may_save = true;
    std::optional<Error> why;
};
Loaded load_settings(const std::string& path);  // no file: defaults
[[nodiscard]] Result<void> save_settings(const std::string& path, const Settings& settings);

}  // namespace spurwright::settings
