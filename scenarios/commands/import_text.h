// What an import tells: the rows that went in or would, and each refused row by line, column and reason. The same for
// every list that is read.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/records/table_import.h"

namespace spurwright::commands {

// How an import was asked for.
struct ImportWish {
    bool dry_run = false, all_or_none = false;
    std::optional<std::string> refused_file; // where the refused rows go, to be mended
    bool writes(std::size_t refused) const { return !dry_run && !(all_or_none && refused > 0); }
};
ImportWish import_wish(const Asked& asked);
std::vector<VerbOption> import_options();

// "refused": [{"line", "column", "reason"}].
io::Json refused_list(const std::vector<records::RefusedRow>& refused, const words::Words& words);

// A line each, the first ones of many, and how many more there are.
std::string refused_text(const std::vector<records::RefusedRow>& refused, const std::string& file, const words::Words& words);

// How many were new, changed and the same, and whether they were written.
std::string counts_text(const records::ImportCounts& counts, std::size_t refused, const ImportWish& wish, const words::Words& words);

// The refused rows under the file's own heading.
[[nodiscard]] Result<void> write_refused(const ImportWish& wish, const std::string& heading, const std::vector<records::RefusedRow>& refused);

} // namespace spurwright::commands
