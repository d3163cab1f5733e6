#include "render/app/picture_size.h"

#include <charconv>

#include "render/app/picture.h"
#include "scenarios/commands/verb.h"

namespace spurwright::app {

using commands::refusal;

Result<Size> read_size(const std::string& text) {
    Size size;
    const char *at = text.data(), *end = at + text.size();
    const auto width = std::from_chars(at, end, size.width);
    const bool crossed = width.ec == std::errc() && width.ptr != end && *width.ptr == 'x';
    const auto height = crossed ? std::from_chars(width.ptr + 1, end, size.height) : width;
    if (width.ec == std::errc::result_out_of_range || height.ec == std::errc::result_out_of_range)
        return failure(refusal(Fault::out_of_range, "error.picture.size", {{"size", text}, {"low", Count{least_pixels}}, {"high", Count{most_pixels}}}, "--size"));
    if (!crossed || height.ec != std::errc() || height.ptr != end) return failure(refusal(Fault::bad_text, "error.picture.size-text", {{"text", text}}, "--size"));
    if (auto fits = check_size(size.width, size.height); !fits) return failure(fits.error());
    return size;
}

}  // namespace spurwright::app
