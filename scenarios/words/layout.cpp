#include "scenarios/words/layout.h"

#include <algorithm>

namespace spurwright::words {

std::size_t width_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xc0) != 0x80; }));
}

std::string padded(std::string_view text, std::size_t width) {
    const std::size_t have = width_of(text);
    return std::string(text) + std::string(have < width ? width - have : 0, ' ');
}

std::string padded_left(std::string_view text, std::size_t width) {
    const std::size_t have = width_of(text);
    return std::string(have < width ? width - have : 0, ' ') + std::string(text);
}

std::string hanging(std::string_view head, std::string_view text, std::size_t indent, std::size_t width) {
    std::string out, line(head);
    bool empty = true; // no word on this line yet
    while (!text.empty()) {
        const std::size_t space = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, space);
        text.remove_prefix(std::min(space + 1, text.size()));
        if (word.empty()) continue;
        if (!empty && width_of(line) + 1 + width_of(word) > width) {
            out += line + "\n";
            line.assign(indent, ' ');
            empty = true;
        }
        if (!empty) line += ' ';
        line += word;
        empty = false;
    }
    return out + line + "\n";
}

std::string wrapped(std::string_view text, std::size_t width) { return hanging("", text, 0, width); }

std::string table_text(const Table& table) {
    std::vector<std::size_t> widths;
    for (const auto& row : table.rows)
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (widths.size() <= i) widths.push_back(0);
            widths[i] = std::max(widths[i], width_of(row[i]));
        }
    std::string out;
    for (const auto& row : table.rows) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) line += "  ";
            if (i + 1 == row.size()) break;
            line +=
                i < table.right.size() && table.right[i] ? padded_left(row[i], widths[i]) : padded(row[i], widths[i]);
        }
        if (row.empty()) continue;
        const std::size_t last = row.size() - 1;
        const bool right = last < table.right.size() && table.right[last];
        const std::string cell = right ? padded_left(row[last], widths[last]) : row[last];
        if (right || width_of(line) + width_of(cell) <= console_width) {
            line += cell;
            line.erase(line.find_last_not_of(' ') + 1);
            out += line + "\n";
        } else {
            out += hanging(line, cell, width_of(line));
        }
    }
    return out;
}

} // namespace spurwright::words
