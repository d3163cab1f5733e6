// JSON as the files and verbs of this program use it: a tree that remembers where each value stood, so that a refusal
// can name line and column, and that keeps numbers as they were written, so that no decimal is lost on the way to
// whole micrometres. Must not know: vines, rules, words. The JSON library is behind json.cpp alone.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sim/core/error.h"
#include "sim/core/units.h"

namespace spurwright::io {

inline constexpr std::size_t largest_json = 16 * 1024 * 1024; // bytes
inline constexpr int deepest_json = 64;                       // levels of lists and objects
inline constexpr std::size_t most_json_values = 3'000'000;    // more than the largest vine holds; our choice

struct Json {
    enum class Kind : unsigned char { null, boolean, number, text, list, object };

    Kind kind = Kind::null;
    bool flag = false;             // of a boolean
    int line = 0, column = 0;      // where it stood, from 1; 0 for a value made here
    std::string text;              // of a text; of a number the digits as they were written
    std::vector<Json> items;       // of a list, and the values of an object
    std::vector<std::string> keys; // of an object, beside `items`, in order

    Json() = default;
    Json(bool value) : kind(Kind::boolean), flag(value) {}
    Json(std::string value) : kind(Kind::text), text(std::move(value)) {}
    Json(std::string_view value) : Json(std::string(value)) {}
    Json(const char* value) : Json(std::string(value)) {}
    Json(int value) : Json(std::int64_t{value}) {}
    Json(std::int64_t value) : kind(Kind::number), text(std::to_string(value)) {}
    Json(std::uint64_t value) : kind(Kind::number), text(std::to_string(value)) {}
    Json(Length value) : Json(decimal(value.count, 3)) {}   // mm
    Json(Mass value) : Json(decimal(value.count, 3)) {}     // g
    Json(Angle value) : Json(decimal(value.count, 3)) {}    // degrees
    Json(PerMille value) : Json(decimal(value.count, 3)) {} // 0 to 1
    Json(Tenths value) : Json(decimal(value.count, 1)) {}   // points
    Json(Strain value) : Json(decimal(value.count, 4)) {}   // percent

    static Json decimal(std::int64_t count, int decimals); // count / 10^decimals, exactly, without trailing zeros
    static Json number(double value, int decimals);        // rounded; null where it is no number
    static Json list() { return of(Kind::list); }
    static Json object() { return of(Kind::object); }

    bool is(Kind wanted) const { return kind == wanted; }
    const Json* find(std::string_view key) const; // null where the object has no such key
    Json& set(std::string_view key, Json value);  // appends; the key must be new
    Json& push(Json value);

private:
    static Json of(Kind kind) {
        Json value;
        value.kind = kind;
        return value;
    }
};

// Refusals (Fault::bad_file, with line and column): larger than largest_json, deeper than deepest_json, more values
// than most_json_values, not JSON, not UTF-8, a key twice in one object, a number too large for a double.
[[nodiscard]] Result<Json> read_json(std::string_view text, const std::string& source);

// Two spaces of indent; what fits on a line of 120 stands on one line; LF at the end. Bytes that are no UTF-8 print as
// the replacement character.
std::string print_json(const Json& value);
std::string print_json_line(const Json& value); // on one line, without LF

// `decimal` of the file, in units of 1 / 10^decimals: the nearest double times 10^decimals, rounded to nearest.
enum class Decimal { fine, not_a_number, too_fine, too_large };
Decimal read_decimal(std::string_view text, int decimals, std::int64_t& count);

} // namespace spurwright::io
