// Text laid out for a console of 100 columns: widths are counted in characters, not bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace spurwright::words {

inline constexpr std::size_t console_width = 100;

std::size_t width_of(std::string_view text);
std::string padded(std::string_view text, std::size_t width);      // to the left edge
std::string padded_left(std::string_view text, std::size_t width); // to the right edge, for numbers

// Lines of at most `width` characters, broken at spaces; LF after each. A longer word stands whole.
std::string wrapped(std::string_view text, std::size_t width = console_width);
// The first line begins with `head`, the others with `indent` spaces. `head` may be as wide as `indent` or less.
std::string hanging(std::string_view head, std::string_view text, std::size_t indent,
                    std::size_t width = console_width);

// Cells in columns as wide as their widest, two spaces between; `right`: columns of numbers. The last column wraps
// where the console ends. LF after each row.
struct Table {
    std::vector<std::vector<std::string>> rows; // the first is the head
    std::vector<bool> right;
};
std::string table_text(const Table& table);

} // namespace spurwright::words
