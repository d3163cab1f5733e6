// Own daily temperatures from a text file of comma-separated values: one day a line, degrees Celsius. A strict reader
// of three or four columns; no quoting, since no value needs it.
//   date,tmin_c,tmax_c[,tmean_c]
//   2019-09-07,8.4,21.0
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "sim/core/error.h"
#include "sim/weather/days.h"

namespace spurwright::io {

inline constexpr int most_temperature_lines = 10'000;    // 27 years
inline constexpr double coldest_c = -60, warmest_c = 60; // a vineyard has neither; what lies beyond is another unit

struct TemperatureFile {
    std::chrono::sys_days first;                     // of the first line
    std::vector<double> lowest_c, highest_c, mean_c; // one a day; mean is half the sum of the others where not told
};

// Refuses (Fault::bad_file, with the line): what io::read_file refuses, no UTF-8, another heading, a missing or surplus
// value, text where a number must stand, a temperature no vineyard has (Fahrenheit is named), a lowest above the
// highest, a day that does not follow the one before (a gap, twice, backwards), more lines than most_temperature_lines.
[[nodiscard]] Result<TemperatureFile> load_temperatures(const std::string& path);
[[nodiscard]] Result<TemperatureFile> read_temperatures(std::string_view text, const std::string& source);

// Its whole seasons, 7 September to 31 October of the next year; in the south 8 March to 2 May. Refused where it holds
// none.
[[nodiscard]] Result<std::vector<weather::Temperatures>> seasons_of(const TemperatureFile& file, bool southern,
                                                                    const std::string& source);

} // namespace spurwright::io
