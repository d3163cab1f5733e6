#include "render/app/opening.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "render/app/picture_size.h"
#include "scenarios/commands/verb.h"

namespace spurwright::app {
namespace {

using commands::refusal;

constexpr std::array<std::string_view, 7> options{"--size", "--language", "--code", "--scene", "--seed", "--probe", "--script"};

bool is_option(std::string_view text) { return std::find(options.begin(), options.end(), text.substr(0, text.find('='))) != options.end(); }

}  // namespace

bool opens_window(const std::vector<std::string>& arguments) {
    // `--language L` may stand before a verb too: then what follows decides.
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        if (!is_option(arguments[i])) return false;
        if (arguments[i].find('=') == std::string::npos) ++i;
    }
    return true;
}

Result<WindowWish> read_window_wish(const std::vector<std::string>& arguments) {
    WindowWish wish;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string& word = arguments[i];
        const auto equals = word.find('=');
        const std::string name = word.substr(0, equals);
        if (!is_option(name)) return failure(refusal(Fault::bad_text, "error.option.unknown-first", {{"text", word}}, word));
        if (equals == std::string::npos && i + 1 >= arguments.size()) return failure(refusal(Fault::bad_text, "error.option.value-missing", {}, name));
        const std::string value = equals == std::string::npos ? arguments[++i] : word.substr(equals + 1);
        if (name == "--size") {
            const auto size = read_size(value);
            if (!size) return failure(size.error());
            wish.width = size->width;
            wish.height = size->height;
        } else if (name == "--language") {
            wish.opening.language = value;
        } else if (name == "--code") {
            wish.opening.code = value;
        } else if (name == "--scene") {
            wish.opening.scene = value;
        } else if (name == "--seed") {
            std::uint64_t seed = 0;
            const auto read = std::from_chars(value.data(), value.data() + value.size(), seed);
            if (read.ec != std::errc() || read.ptr != value.data() + value.size()) return failure(refusal(Fault::bad_text, "error.value.whole", {{"text", value}}, name));
            wish.seed = seed;
        } else if (name == "--probe") {
            wish.probe_file = value;
        } else {
            wish.script_file = value;
        }
    }
    return wish;
}

}  // namespace spurwright::app
