// Keys as people read them, and commands found by the words typed.
#include <algorithm>
#include <array>

#include "render/ui/commands.h"

namespace spurwright::ui {
namespace {

// Keys of the picture and of a long page, handled where these are: only told here.
std::string_view keys_told(std::string_view name) {
    if (name == "scroll") return "screen.key.up-down";
    if (name == "turn-head") return "screen.key.arrows";
    if (name == "lean") return "screen.key.shift-arrows";
    if (name == "closer") return "screen.key.plus-minus";
    return {};
}

std::string name_of_key(const Ui& ui, int k) {
    switch (k) {
    case key::escape: return ui.say("screen.key.escape");
    case key::enter: return ui.say("screen.key.enter");
    case key::tab: return ui.say("screen.key.tab");
    case key::home: return ui.say("screen.key.home");
    case key::end: return ui.say("screen.key.end");
    case key::space: return ui.say("screen.key.space");
    case key::backspace: return ui.say("screen.key.backspace");
    case key::page_up: return ui.say("screen.key.page-up");
    case key::page_down: return ui.say("screen.key.page-down");
    case key::up: return ui.say("screen.key.up");
    case key::down: return ui.say("screen.key.down");
    case key::left: return ui.say("screen.key.left");
    case key::right: return ui.say("screen.key.right");
    default: break;
    }
    if (k >= key::f1 && k < key::f1 + 12) return "F" + std::to_string(k - key::f1 + 1);
    return std::string(1, static_cast<char>(k));
}

// Letters folded to what is on every keyboard: small, without accents of Spanish.
std::string folded(const std::string& text) {
    static constexpr std::array<std::pair<std::string_view, char>, 14> accents{{{"á", 'a'},
                                                                                {"é", 'e'},
                                                                                {"í", 'i'},
                                                                                {"ó", 'o'},
                                                                                {"ú", 'u'},
                                                                                {"ü", 'u'},
                                                                                {"ñ", 'n'},
                                                                                {"Á", 'a'},
                                                                                {"É", 'e'},
                                                                                {"Í", 'i'},
                                                                                {"Ó", 'o'},
                                                                                {"Ú", 'u'},
                                                                                {"Ñ", 'n'},
                                                                                {"¿", ' '}}};
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto accent = std::find_if(accents.begin(), accents.end(),
                                         [&](const auto& a) { return text.compare(i, a.first.size(), a.first) == 0; });
        if (accent != accents.end()) {
            out += accent->second;
            i += accent->first.size();
            continue;
        }
        const char c = text[i++];
        out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return out;
}

std::vector<std::string> words_in(const std::string& text) {
    std::vector<std::string> found(1);
    for (const char c : text)
        if (c == ' ' || c == ',' || c == '(' || c == ')' || c == '-') {
            if (!found.back().empty()) found.emplace_back();
        } else {
            found.back() += c;
        }
    if (found.back().empty()) found.pop_back();
    return found;
}

} // namespace

std::string key_text(const Ui& ui, const KeyPress& k) {
    if (!k.key) return {};
    std::string text;
    if (k.ctrl) text += ui.say("screen.key.ctrl") + "+";
    if (k.alt) text += ui.say("screen.key.alt") + "+";
    if (k.shift) text += ui.say("screen.key.shift") + "+";
    return text + name_of_key(ui, k.key);
}

std::string key_text(const Ui& ui, std::string_view name) {
    if (const std::string_view told = keys_told(name); !told.empty()) return ui.say(told);
    const Command* command = find_command(name);
    return command ? key_text(ui, command->key) : std::string();
}

bool found_by(const std::string& name, const std::string& typed) {
    const std::vector<std::string> here = words_in(folded(name));
    for (const std::string& wanted : words_in(folded(typed)))
        if (std::none_of(here.begin(), here.end(), [&](const std::string& word) { return word.starts_with(wanted); }))
            return false;
    return true;
}

} // namespace spurwright::ui
