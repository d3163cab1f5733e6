#include "scenarios/io/report_file.h"

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::io {
namespace {

constexpr std::int64_t most_counted_buds = 100'000;
constexpr Mass heaviest_bundle{200'000'000}; // 200 kg: no vine's; our choice

} // namespace

Result<ReportFile> read_report(std::string_view text, const std::string& source) {
    const auto root = read_json(text, source);
    if (!root) return failure(root.error());
    Refusal refusal(source);
    Fields fields(refusal, *root);
    ReportFile file;
    file.report.weight = fields.mass("weight_g");
    file.report.tared = fields.yes("tared", true);
    const std::int64_t buds = fields.whole("counted_buds", 0, most_counted_buds, std::int64_t{-1});
    if (buds >= 0) file.counted_buds = buds;
    file.date = fields.text("date", 40, "");
    fields.end();
    const bool odd = file.report.weight.count < 0 || file.report.weight > heaviest_bundle;
    if (!refusal.any() && odd) refusal.add("error.report.weight", {{"measured", file.report.weight}}, *root->find("weight_g"));
    if (refusal.any()) return failure(refusal.take());
    return file;
}

Result<ReportFile> load_report(const std::string& path) {
    const auto text = read_file(path, largest_json);
    if (!text) return failure(text.error());
    return read_report(*text, path);
}

} // namespace spurwright::io
