#include "scenarios/settings/settings.h"

#include <algorithm>

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/words/load_words.h"

namespace spurwright::settings {
namespace {

constexpr std::size_t largest_settings = 64 * 1024;

}  // namespace

Result<Settings> read_settings(std::string_view text, const std::string& source) {
    const auto json = io::read_json(text, source);
    if (!json) return failure(json.error());
    io::Refusal refusal(source);
    io::Fields fields(refusal, *json);
    const std::string kind = fields.text("kind", 100);
    const auto version = fields.whole("version", 1, 1'000'000);
    if (!refusal.any() && kind != settings_kind) refusal.add("error.settings.kind", {{"text", kind}}, *json);
    if (!refusal.any() && version > settings_version) refusal.add("error.settings.newer", {{"version", Count{version}}}, *json, Fault::newer);
    Settings s;
    s.language = fields.text("language", 20, s.language);
    if (!refusal.any() && std::find(words::languages.begin(), words::languages.end(), s.language) == words::languages.end())
        refusal.add("error.settings.language", {{"text", s.language}}, *json);
    s.text_percent = static_cast<int>(fields.whole("text_percent", least_text_percent, most_text_percent, s.text_percent));
    s.theme = fields.word<ThemeName>("theme", s.theme);
    s.units = fields.word<UnitsName>("units", s.units);
    s.reduced_motion = fields.yes("reduced_motion", s.reduced_motion);
    s.step_feedback = fields.yes("step_feedback", s.step_feedback);
    s.safety_seen = fields.yes("safety_seen", s.safety_seen);
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return s;
}

std::string print_settings(const Settings& s) {
    io::Json o = io::Json::object();
    o.set("kind", settings_kind);
    o.set("version", settings_version);
    o.set("language", s.language);
    o.set("text_percent", s.text_percent);
    o.set("theme", word_of(s.theme));
    o.set("units", word_of(s.units));
    o.set("reduced_motion", s.reduced_motion);
    o.set("step_feedback", s.step_feedback);
    o.set("safety_seen", s.safety_seen);
    return io::print_json(o);
}

Loaded load_settings(const std::string& path) {
    if (!io::is_there(path)) return {};
    const auto text = io::read_file(path, largest_settings);
    if (!text) return {{}, false, text.error()};
    const auto settings = read_settings(*text, path);
    if (!settings) return {{}, false, settings.error()};
    return {*settings, true, {}};
}

Result<void> save_settings(const std::string& path, const Settings& settings) { return io::write_file(path, print_settings(settings)); }

}  // namespace spurwright::settings
