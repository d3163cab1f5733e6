// A site of one's own as a file ("kind": "spurwright-site"): the climate that `ahead` draws weather from, and the vineyard
// that `grow` begins with. A shipped site is a climate over the practice vineyard; a base says what the file leaves out.
// Schema: assets/schemas/site-1.json. Must not know: what the model does with a value.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/growth/site.h"
#include "sim/weather/climate.h"

namespace spurwright::io {

inline constexpr std::string_view site_kind = "spurwright-site";
inline constexpr int site_version = 1;

struct SiteFile {
    std::string name, shown;
    std::shared_ptr<const weather::Climate> climate; // named as people write the site
    growth::Site vineyard;                           // age, system, variety, pruner and seed as by default
};

// Faults: bad_file with line, column and key, also for values out of range; newer.
[[nodiscard]] Result<SiteFile> read_site(std::string_view text, const std::string& source);

// NAME of a shipped climate, or a path (anything with a slash or a dot). A name that is none: bad_text, where `option`.
[[nodiscard]] Result<SiteFile> load_site(const std::string& name_or_path, std::string_view option);

// Every value, without a base. A shipped one prints under a name that may be read: "own-warm".
std::string print_site(const SiteFile& site);

} // namespace spurwright::io
