#include "scenarios/records/clock.h"

#include <array>
#include <chrono>
#include <cstdio>
#include <ctime>

namespace spurwright::records {

std::string utc_now() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm parts{};
    ::gmtime_r(&now, &parts);
    std::array<char, 32> text{};
    return {text.data(), std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%SZ", &parts)};
}

Day today() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm parts{};
    ::localtime_r(&now, &parts);
    return {parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday};
}

std::optional<Day> read_day(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto part = [&](std::size_t from, std::size_t digits) {
        int value = 0;
        for (const char c : text.substr(from, digits)) {
            if (c < '0' || c > '9') return -1;
            value = 10 * value + (c - '0');
        }
        return value;
    };
    const Day day{part(0, 4), part(5, 2), part(8, 2)};
    if (day.year < 1900 || day.year > 2199 || day.month < 1 || day.day < 1) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year{day.year}, std::chrono::month{static_cast<unsigned>(day.month)},
                                           std::chrono::day{static_cast<unsigned>(day.day)}};
    if (!date.ok()) return std::nullopt;
    return day;
}

std::string day_text(const Day& day) {
    std::array<char, 48> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", day.year, day.month, day.day);
    return text.data();
}

} // namespace spurwright::records
