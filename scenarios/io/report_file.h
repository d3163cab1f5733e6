// What somebody reports beside a plan: what the bundle weighed. {"weight_g": 840, "tared": true, "counted_buds": 27,
// "date": "2027-01-10"}; the weight is needed, the rest may be left out. Schema: assets/schemas/report-1.json.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/rules/facts.h"

namespace spurwright::io {

struct ReportFile {
    rules::Report report;
    std::optional<std::int64_t> counted_buds;
    std::string date; // as written; empty: none
};

// Faults: bad_file, with line, column and key.
[[nodiscard]] Result<ReportFile> read_report(std::string_view text, const std::string& source);
[[nodiscard]] Result<ReportFile> load_report(const std::string& path);

} // namespace spurwright::io
