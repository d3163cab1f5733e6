#include "scenarios/commands/error_text.h"

#include <algorithm>

namespace spurwright::commands {
namespace {

constexpr std::size_t longest_shown = 90; // characters of a text that a user gave

// One line of printable text: what a file or a person gave may hold anything.
std::string tidied(std::string text) {
    for (char& c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
    if (text.size() <= longest_shown) return text;
    std::size_t end = longest_shown;
    while (end > 0 && (text[end] & 0xc0) == 0x80) --end; // not inside a character
    return text.substr(0, end) + "...";
}

Arguments tidied(Arguments arguments) {
    for (Named& argument : arguments)
        if (auto* text = std::get_if<std::string>(&argument.value)) *text = tidied(std::move(*text));
    return arguments;
}

// The count of the argument of that name, or nothing.
std::optional<std::int64_t> count_of(const Arguments& arguments, std::string_view gap) {
    for (const Named& argument : arguments)
        if (const auto* count = std::get_if<Count>(&argument.value); argument.gap == gap && count) return count->value;
    return std::nullopt;
}

} // namespace

std::string_view word_of_fault(Fault fault) {
    switch (fault) {
    case Fault::unknown_part: return "unknown-part";
    case Fault::already_gone: return "already-gone";
    case Fault::not_allowed: return "not-allowed";
    case Fault::bad_text: return "bad-text";
    case Fault::bad_file: return "bad-file";
    case Fault::newer: return "newer";
    case Fault::out_of_range: return "out-of-range";
    case Fault::cannot_write: return "cannot-write";
    case Fault::missing: return "missing";
    }
    return "bad-text";
}

std::string where_text(const Error& error, const words::Words& words) {
    const Where& where = error.where;
    if (error.key.name.starts_with("error.code.")) {
        if (const auto group = count_of(error.arguments, "group"))
            return words("where.code-group", {{"group", Count{*group}}});
        return words("where.code");
    }
    std::string source = where.source == "plan" ? words("where.plan") : tidied(where.source);
    if (where.line > 0) {
        source += ":" + std::to_string(where.line);
        if (where.column > 0) source += ":" + std::to_string(where.column);
        return source;
    }
    if (where.step > 0) source = words("where.edit", {{"source", source}, {"step", std::to_string(where.step)}});
    if (where.column > 0)
        source = words("where.column", {{"source", source}, {"column", std::to_string(where.column)}});
    return source;
}

std::string sentence_of(const Error& error, const words::Words& words) {
    return words.sentence(error.key, tidied(error.arguments));
}

std::string error_line(const Error& error, const words::Words& words) {
    const std::string where = where_text(error, words);
    return "spurwright: " + (where.empty() ? "" : where + ": ") + sentence_of(error, words) + "\n";
}

io::Json arguments_object(const Arguments& arguments) {
    struct Set {
        io::Json& object;
        std::string gap;
        void operator()(Count c) const { object.set(gap, c.value); }
        void operator()(Ratio r) const { object.set(gap, io::Json::number(r.value, 6)); }
        void operator()(Length l) const { object.set(gap + "_um", std::int64_t{l.count}); }
        void operator()(Mass m) const { object.set(gap + "_mg", std::int64_t{m.count}); }
        void operator()(Angle a) const { object.set(gap + "_mdeg", std::int64_t{a.count}); }
        void operator()(Tenths t) const { object.set(gap + "_tenths", std::int64_t{t.count}); }
        void operator()(PerMille p) const { object.set(gap + "_permille", std::int64_t{p.count}); }
        void operator()(Strain s) const { object.set(gap + "_ppm", std::int64_t{s.count}); }
        void operator()(TextKey key) const { object.set(gap, key.name); }
        void operator()(AxisId id) const { object.set(gap, name_of(id)); }
        void operator()(NodeId id) const { object.set(gap, name_of(id)); }
        void operator()(const std::string& text) const { object.set(gap, text); }
    };
    io::Json object = io::Json::object();
    for (const Named& argument : arguments) std::visit(Set{object, std::string(argument.gap)}, argument.value);
    return object;
}

io::Json error_object(const Error& error, const words::Words& words) {
    io::Json where = io::Json::object();
    if (!error.where.source.empty()) where.set("source", error.where.source);
    if (error.where.line > 0) where.set("line", error.where.line);
    if (error.where.step > 0) where.set("step", error.where.step);
    if (error.where.column > 0) where.set("column", error.where.column);
    io::Json inner = io::Json::object();
    inner.set("fault", word_of_fault(error.fault));
    inner.set("where", std::move(where));
    inner.set("key", error.key.name);
    inner.set("arguments", arguments_object(tidied(error.arguments)));
    inner.set("sentence", sentence_of(error, words));
    io::Json object = io::Json::object();
    object.set("error", std::move(inner));
    return object;
}

int exit_status(const Error& error) { return error.fault == Fault::missing ? 3 : 2; }

} // namespace spurwright::commands
