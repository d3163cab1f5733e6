#include "scenarios/io/temperature_file.h"

#include <array>
#include <charconv>
#include <cmath>
#include <fstream>
#include <optional>

#include "scenarios/io/safe_file.h"
#include "scenarios/io/utf8.h"

namespace spurwright::io {
namespace {

constexpr std::size_t longest_line = 200;
constexpr std::size_t largest_file = longest_line * (most_temperature_lines + 2);
constexpr std::array<std::string_view, 4> headings{"date", "tmin_c", "tmax_c", "tmean_c"};

// One line of the file while it is read.
struct Line {
    std::string_view text;
    int number = 0;
};

Error refused_line(std::string_view key, Arguments arguments, const std::string& source, int line) {
    return {Fault::bad_file, TextKey{key}, std::move(arguments), {source, line, 0, 0}};
}

std::vector<std::string_view> cells_of(std::string_view line) {
    std::vector<std::string_view> cells;
    while (true) {
        const std::size_t comma = line.find(',');
        std::string_view cell = line.substr(0, comma);
        while (!cell.empty() && cell.front() == ' ') cell.remove_prefix(1);
        while (!cell.empty() && cell.back() == ' ') cell.remove_suffix(1);
        cells.push_back(cell);
        if (comma == std::string_view::npos) return cells;
        line.remove_prefix(comma + 1);
    }
}

std::optional<std::chrono::sys_days> day_of(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto number = [&](std::size_t from, std::size_t digits) {
        int value = -1;
        const char* end = text.data() + from + digits;
        const auto [at, fault] = std::from_chars(text.data() + from, end, value);
        return fault == std::errc{} && at == end ? value : -1;
    };
    const int year = number(0, 4), month = number(5, 2), day = number(8, 2);
    if (year < 1000 || month < 1 || day < 1) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) return std::nullopt;
    return std::chrono::sys_days{date};
}

std::string date_text(std::chrono::sys_days day) {
    const std::chrono::year_month_day date{day};
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return text.data();
}

class TemperatureReader {
public:
    explicit TemperatureReader(const std::string& source) : source_(source) {}

    std::optional<Error> heading(const Line& line) {
        const auto cells = cells_of(line.text);
        for (const std::string_view cell : cells)
            if (cell.ends_with("_f") || cell.find("hrenheit") != std::string_view::npos)
                return error("error.temperatures.fahrenheit", {{"text", std::string(cell)}}, line);
        columns_ = cells.size();
        bool right = columns_ == 3 || columns_ == 4;
        for (std::size_t i = 0; right && i < columns_; ++i) right = cells[i] == headings[i];
        if (!right) return error("error.temperatures.heading", {{"text", std::string(line.text)}}, line);
        return std::nullopt;
    }

    std::optional<Error> day(const Line& line) {
        const auto cells = cells_of(line.text);
        if (cells.size() != columns_)
            return error("error.temperatures.columns",
                         {{"found", Count{static_cast<std::int64_t>(cells.size())}},
                          {"wanted", Count{static_cast<std::int64_t>(columns_)}}},
                         line);
        const auto date = day_of(cells[0]);
        if (!date) return error("error.temperatures.date", {{"text", std::string(cells[0])}}, line);
        if (auto wrong = follows(*date, line)) return wrong;
        std::array<double, 3> values{};
        for (std::size_t i = 1; i < columns_; ++i) {
            const auto value = number(cells[i]);
            if (!value)
                return error("error.temperatures.number",
                             {{"text", std::string(cells[i])}, {"column", std::string(headings[i])}}, line);
            if (!(*value >= coldest_c && *value <= warmest_c))
                return error("error.temperatures.range",
                             {{"text", std::string(cells[i])}, {"low", Ratio{coldest_c}}, {"high", Ratio{warmest_c}}},
                             line);
            values[i - 1] = *value;
        }
        if (columns_ == 3) values[2] = (values[0] + values[1]) / 2;
        if (values[0] > values[1] || values[2] < values[0] || values[2] > values[1])
            return error("error.temperatures.order", {}, line);
        file_.lowest_c.push_back(values[0]);
        file_.highest_c.push_back(values[1]);
        file_.mean_c.push_back(values[2]);
        return std::nullopt;
    }

    Result<TemperatureFile> whole(int lines) {
        if (file_.mean_c.empty()) return failure(error("error.temperatures.empty", {}, {{}, lines}));
        return std::move(file_);
    }

    Error error(std::string_view key, Arguments arguments, const Line& line) const {
        return refused_line(key, std::move(arguments), source_, line.number);
    }

private:
    std::optional<Error> follows(std::chrono::sys_days date, const Line& line) {
        if (file_.mean_c.empty()) {
            file_.first = date;
            return std::nullopt;
        }
        const auto wanted = file_.first + std::chrono::days{static_cast<int>(file_.mean_c.size())};
        if (date == wanted) return std::nullopt;
        return error(date > wanted ? "error.temperatures.gap" : "error.temperatures.back",
                     {{"found", date_text(date)}, {"wanted", date_text(wanted)}}, line);
    }

    static std::optional<double> number(std::string_view text) {
        double value = 0;
        const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
        if (text.empty() || fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
            return std::nullopt;
        return value;
    }

    const std::string& source_;
    std::size_t columns_ = 0;
    TemperatureFile file_;
};

constexpr std::chrono::month_day season_start(bool southern) {
    return southern ? std::chrono::March / 8 : std::chrono::September / 7;
}

} // namespace

Result<TemperatureFile> read_temperatures(std::string_view text, const std::string& source) {
    TemperatureReader reader(source);
    if (text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
    Line line;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        line = {text.substr(0, end), line.number + 1};
        text.remove_prefix(std::min(end + 1, text.size()));
        if (!line.text.empty() && line.text.back() == '\r') line.text.remove_suffix(1);
        if (line.number > most_temperature_lines)
            return failure(reader.error("error.temperatures.endless", {{"most", Count{most_temperature_lines}}}, line));
        if (line.text.size() > longest_line)
            return failure(reader.error("error.temperatures.long",
                                        {{"most", Count{static_cast<std::int64_t>(longest_line)}}}, line));
        if (!is_utf8(line.text) || line.text.find('\0') != std::string_view::npos)
            return failure(reader.error("error.json.not-utf8", {}, line));
        if (line.text.empty() && text.empty()) break; // a last empty line
        if (auto wrong = line.number == 1 ? reader.heading(line) : reader.day(line)) return failure(std::move(*wrong));
    }
    return reader.whole(std::max(1, line.number));
}

Result<TemperatureFile> load_temperatures(const std::string& path) {
    auto text = read_file(path, largest_file);
    if (text) return read_temperatures(*text, path);
    if (text.error().key.name != "error.file.too-large") return failure(std::move(text.error()));
    // Longer than any good file: its beginning says at which line it goes wrong.
    std::string beginning(largest_file, '\0');
    std::ifstream in(path, std::ios::binary);
    in.read(beginning.data(), static_cast<std::streamsize>(beginning.size()));
    beginning.resize(static_cast<std::size_t>(std::max<std::streamsize>(0, in.gcount())));
    auto file = read_temperatures(beginning, path);
    return file ? failure(std::move(text.error())) : failure(std::move(file.error()));
}

Result<std::vector<weather::Temperatures>> seasons_of(const TemperatureFile& file, bool southern,
                                                      const std::string& source) {
    std::vector<weather::Temperatures> seasons;
    const auto days = static_cast<int>(file.mean_c.size());
    const int first_year = static_cast<int>(std::chrono::year_month_day{file.first}.year());
    for (int year = first_year; year <= first_year + days / 365 + 1; ++year) {
        const std::chrono::sys_days start{std::chrono::year{year} / season_start(southern)};
        const auto from = static_cast<int>((start - file.first).count());
        if (from < 0 || from + weather::season_days > days) continue;
        weather::Temperatures t;
        for (int day = from; day < from + weather::season_days; ++day) {
            t.mean.push_back(file.mean_c[static_cast<std::size_t>(day)]);
            t.lowest.push_back(file.lowest_c[static_cast<std::size_t>(day)]);
        }
        seasons.push_back(std::move(t));
    }
    if (seasons.empty())
        return failure(refused_line("error.temperatures.no-season", {{"n", Count{weather::season_days}}}, source, 0));
    return seasons;
}

} // namespace spurwright::io
