#include "sim/rules/rule_set_reader.h"

#include <charconv>
#include <map>
#include <string>

namespace spurwright::rules {
namespace {

using ValuesByKey = std::map<std::string_view, std::string_view>;

std::optional<ValuesByKey> values_by_key(std::string_view text) {
    ValuesByKey values;
    while (!text.empty()) {
        const auto end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(end + 1);
        const auto equals = line.find('=');
        if (equals == std::string_view::npos) return std::nullopt;
        if (!values.emplace(line.substr(0, equals), line.substr(equals + 1)).second) return std::nullopt;
    }
    return values;
}

// Takes the lines of one parameter out of the list; false where one is missing or has no such value.
struct TakeValue {
    std::string key;
    ValuesByKey& values;

    std::optional<std::string_view> take(std::string_view suffix) {
        const auto found = values.find(key + std::string(suffix));
        if (found == values.end()) return std::nullopt;
        const std::string_view value = found->second;
        values.erase(found);
        return value;
    }
    bool number(std::string_view suffix, std::int32_t& to) {
        const auto value = take(suffix);
        if (!value) return false;
        if (*value == "-") {
            to = open_end;
            return true;
        }
        const char* end = value->data() + value->size();
        const auto read = std::from_chars(value->data(), end, to);
        return read.ec == std::errc{} && read.ptr == end;
    }
    template <class E>
    bool word(E& to) {
        const auto value = take("");
        const auto read = value ? read_word<E>(*value) : std::nullopt;
        if (read) to = *read;
        return read.has_value();
    }

    bool operator()(bool* v) {
        const auto value = take("");
        if (!value || (*value != "0" && *value != "1")) return false;
        *v = *value == "1";
        return true;
    }
    bool operator()(std::int32_t* v) { return number("", *v); }
    bool operator()(std::optional<std::int32_t>* v) {
        std::int32_t read = 0;
        if (!number("", read)) return false;
        *v = read == open_end ? std::nullopt : std::optional(read);
        return true;
    }
    bool operator()(std::optional<Length>* v) {
        std::int32_t read = 0;
        if (!number("", read)) return false;
        *v = read == open_end ? std::nullopt : std::optional(Length{read});
        return true;
    }
    bool operator()(OriginMeasure* v) { return word(*v); }
    bool operator()(FirstBud* v) { return word(*v); }
    bool operator()(NoNeighbour* v) { return word(*v); }
    template <class Tag>
    bool operator()(Measure<Tag>* v) {
        return number("", v->count);
    }
    template <class M>
    bool operator()(Range<M>* v) {
        return number(".low", v->low.count) && number(".high", v->high.count);
    }
};

}  // namespace

std::optional<HouseRules> read_rule_set(std::string_view text) {
    auto values = values_by_key(text);
    if (!values) return std::nullopt;
    HouseRules house;
    for (const Parameter& parameter : parameters(house))
        if (!std::visit(TakeValue{std::string(parameter.rule) + "." + std::string(parameter.name), *values}, parameter.at)) return std::nullopt;
    if (!values->empty() || rule_set_text(house) != text) return std::nullopt;
    return house;
}

}  // namespace spurwright::rules
