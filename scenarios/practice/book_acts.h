// What may be asked of the book of reference vines. Plain data: keys, buttons and tests ask the same way.
#pragma once

#include <cstdint>
#include <string>
#include <variant>

#include "sim/vine/words_of.h"

namespace spurwright::practice {

enum class BookPage : unsigned char { blocks, entry, compare, map };
constexpr auto words_of(BookPage) { return std::to_array<std::string_view>({"blocks", "entry", "compare", "map"}); }
enum class WeightUnit : unsigned char { kg, g, lb };
constexpr auto words_of(WeightUnit) { return std::to_array<std::string_view>({"kg", "g", "lb"}); }

namespace desk {

struct Open { std::string block; };       // to its entry
struct Page { BookPage page{}; };
struct Winter { int step = 1; };          // which is keyed, and shown on the map
struct At { std::size_t vine = 0; };      // in walking order
struct Walk { int step = 1; };
struct Tag { std::string tag; };          // to the vine of that tag
struct Row { int step = 1; };             // of the comparison: all, then row by row
struct Unit { WeightUnit unit{}; };       // of weights typed without one
struct Enter { std::string weight, canes, buds, crop, note; };  // of the vine at hand; an empty text says nothing
struct Keep { bool yes = true; };         // the weight that stands apart
struct TakeBack {};                       // the last act on the book
struct NewBlock { std::string name, spacing; };  // "1.8 m"
struct NewVine { std::string tag, row, place; }; // with the first weight keyed
struct Placed { std::string row, place, latitude, longitude; };  // where the vine at hand stands; an empty text: not known
struct PutAt { std::int64_t latitude_e7 = 0, longitude_e7 = 0; };  // its point on the map
struct Nudge { double north_m = 0, east_m = 0; };  // from where its point is; with none yet, from the middle of the others
struct ReadIn { std::string path; };      // first what it would do; asked again, it is done
struct WriteOut { std::string path; };    // .csv, .geojson
struct Demo {};                           // the invented block

}  // namespace desk

using BookAct = std::variant<desk::Open, desk::Page, desk::Winter, desk::At, desk::Walk, desk::Tag, desk::Row, desk::Unit, desk::Enter, desk::Keep, desk::TakeBack, desk::NewBlock,
                             desk::NewVine, desk::Placed, desk::PutAt, desk::Nudge, desk::ReadIn, desk::WriteOut, desk::Demo>;

}  // namespace spurwright::practice
