#include "scenarios/io/json_fields.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

namespace spurwright::io {
namespace {

const Json nothing;
const std::vector<Json> no_items;

std::string_view kind_key(Json::Kind kind) {
    switch (kind) {
    case Json::Kind::null: return "json.null";
    case Json::Kind::boolean: return "json.boolean";
    case Json::Kind::number: return "json.number";
    case Json::Kind::text: return "json.text";
    case Json::Kind::list: return "json.list";
    case Json::Kind::object: return "json.object";
    }
    return "json.null";
}

std::string shortened(const std::string& text) { return text.size() <= 60 ? text : text.substr(0, 60).append("..."); }

} // namespace

Fields::Fields(Refusal& refusal, const Json& object) : refusal_(refusal), object_(&object) {
    if (object.is(Json::Kind::object)) return;
    refusal_.add("error.json.kind-here",
                 {{"wanted", TextKey{"json.object"}}, {"found", TextKey{kind_key(object.kind)}}}, object);
    object_ = &nothing;
}

const Json* Fields::optional(std::string_view key) {
    asked_.push_back(key);
    return object_->find(key);
}

const Json& Fields::required(std::string_view key) {
    if (const Json* value = optional(key)) return *value;
    refusal_.add("error.json.missing", {{"key", std::string(key)}}, *object_);
    return nothing;
}

bool Fields::wrong_kind(const Json& value, std::string_view key, Json::Kind wanted) {
    if (value.is(wanted)) return false;
    refusal_.add(
        "error.json.kind",
        {{"key", std::string(key)}, {"wanted", TextKey{kind_key(wanted)}}, {"found", TextKey{kind_key(value.kind)}}},
        value);
    return true;
}

std::int32_t Fields::decimal_of(const Json& value, std::string_view key, int decimals, std::int32_t largest) {
    if (wrong_kind(value, key, Json::Kind::number)) return 0;
    std::int64_t count = 0;
    Decimal read = read_decimal(value.text, decimals, count);
    if (read == Decimal::fine && (count > largest || count < -largest)) read = Decimal::too_large;
    const Arguments arguments{{"key", std::string(key)}, {"text", shortened(value.text)}, {"n", Count{decimals}}};
    switch (read) {
    case Decimal::fine: return static_cast<std::int32_t>(count);
    case Decimal::not_a_number: refusal_.add("error.json.not-a-number", arguments, value); break;
    case Decimal::too_fine: refusal_.add("error.json.too-fine", arguments, value); break;
    case Decimal::too_large: refusal_.add("error.json.too-large-number", arguments, value); break;
    }
    return 0;
}

std::string Fields::text_of(const Json& value, std::string_view key, std::size_t longest) {
    if (wrong_kind(value, key, Json::Kind::text)) return {};
    const auto characters = static_cast<std::size_t>(
        std::count_if(value.text.begin(), value.text.end(), [](char c) { return (c & 0xc0) != 0x80; }));
    if (characters > longest) {
        refusal_.add("error.json.long-text",
                     {{"key", std::string(key)}, {"most", Count{static_cast<std::int64_t>(longest)}}}, value);
        return {};
    }
    return value.text;
}

Length Fields::length(std::string_view key, std::optional<Length> other) {
    const Json* value = other ? optional(key) : &required(key);
    return value ? length_of(*value, key) : *other;
}

std::optional<Length> Fields::length_or_null(std::string_view key) {
    const Json* value = optional(key);
    if (!value || value->is(Json::Kind::null)) return std::nullopt;
    return length_of(*value, key);
}

Mass Fields::mass(std::string_view key, std::optional<Mass> other) {
    const Json* value = other ? optional(key) : &required(key);
    return value ? Mass{decimal_of(*value, key, 3)} : *other;
}

std::int32_t Fields::decimal(std::string_view key, int decimals, std::optional<std::int32_t> other) {
    const Json* value = other ? optional(key) : &required(key);
    return value ? decimal_of(*value, key, decimals) : *other;
}

std::int64_t Fields::whole(std::string_view key, std::int64_t low, std::int64_t high,
                           std::optional<std::int64_t> other) {
    const Json* value = other ? optional(key) : &required(key);
    if (!value) return *other;
    if (wrong_kind(*value, key, Json::Kind::number)) return low;
    std::int64_t number = 0;
    double real = 0;
    const char *first = value->text.data(), *last = first + value->text.size();
    const auto [end, fault] = std::from_chars(first, last, number);
    if (fault != std::errc{} || end != last) {
        const auto as_real = std::from_chars(first, last, real);
        if (as_real.ec != std::errc{} || real != std::floor(real)) {
            refusal_.add("error.json.not-whole", {{"key", std::string(key)}, {"text", shortened(value->text)}}, *value);
            return low;
        }
        number =
            real < -9e15 || real > 9e15 ? std::numeric_limits<std::int64_t>::max() : static_cast<std::int64_t>(real);
    }
    if (low <= number && number <= high) return number;
    refusal_.add("error.json.range",
                 {{"key", std::string(key)},
                  {"text", shortened(value->text)},
                  {"low", std::to_string(low)},
                  {"high", std::to_string(high)}},
                 *value);
    return low;
}

bool Fields::yes(std::string_view key, std::optional<bool> other) {
    const Json* value = other ? optional(key) : &required(key);
    if (!value) return *other;
    return !wrong_kind(*value, key, Json::Kind::boolean) && value->flag;
}

std::string Fields::text(std::string_view key, std::size_t longest, std::optional<std::string> other) {
    const Json* value = other ? optional(key) : &required(key);
    return value ? text_of(*value, key, longest) : *other;
}

const std::vector<Json>& Fields::list(std::string_view key, bool needed) {
    const Json* value = needed ? &required(key) : optional(key);
    if (!value || wrong_kind(*value, key, Json::Kind::list)) return no_items;
    return value->items;
}

NodeId Fields::node_of(const Json& value, std::string_view key) {
    const std::string name = text_of(value, key, 200);
    if (const auto node = read_node(name)) return *node;
    refusal_.add("error.json.not-a-node", {{"key", std::string(key)}, {"text", shortened(name)}}, value);
    return {};
}

NodeId Fields::node(std::string_view key) { return node_of(required(key), key); }

std::optional<NodeId> Fields::node_or_null(std::string_view key) {
    const Json* value = optional(key);
    if (!value || value->is(Json::Kind::null)) return std::nullopt;
    return node_of(*value, key);
}

AxisId Fields::axis(std::string_view key) {
    const Json& value = required(key);
    const std::string name = text_of(value, key, 200);
    if (const auto axis = read_axis(name)) return *axis;
    refusal_.add("error.json.not-an-axis", {{"key", std::string(key)}, {"text", shortened(name)}}, value);
    return {};
}

std::uint32_t Fields::row_number(char letter, const Json& value, std::string_view key) {
    const std::string name = text_of(value, key, 200);
    if (const auto number = read_row(letter, name)) return *number;
    refusal_.add("error.json.not-a-row",
                 {{"key", std::string(key)}, {"text", shortened(name)}, {"example", letter + std::string("1")}}, value);
    return 0;
}

void Fields::refuse_word(const Json& value, std::string_view key, const std::string& found, std::string words) {
    refusal_.add("error.json.not-a-word",
                 {{"key", std::string(key)}, {"text", shortened(found)}, {"words", std::move(words)}}, value);
}

void Fields::end() {
    for (std::size_t i = 0; i < object_->keys.size(); ++i) {
        if (std::find(asked_.begin(), asked_.end(), object_->keys[i]) != asked_.end()) continue;
        refusal_.add("error.json.unknown-key", {{"key", shortened(object_->keys[i])}}, object_->items[i]);
        return;
    }
}

} // namespace spurwright::io
