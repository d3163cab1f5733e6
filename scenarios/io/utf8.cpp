#include "scenarios/io/utf8.h"

namespace spurwright::io {

bool is_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t at) { return at < text.size() ? static_cast<unsigned char>(text[at]) : 0u; };
        const unsigned lead = byte(i);
        const std::size_t more = lead < 0x80                   ? 0
                                 : lead >= 0xc2 && lead < 0xe0 ? 1
                                 : lead >= 0xe0 && lead < 0xf0 ? 2
                                 : lead >= 0xf0 && lead < 0xf5 ? 3
                                                               : 9;
        if (more == 9) return false;
        for (std::size_t k = 1; k <= more; ++k)
            if ((byte(i + k) & 0xc0) != 0x80) return false;
        const unsigned second = byte(i + 1);
        if ((lead == 0xe0 && second < 0xa0) || (lead == 0xed && second > 0x9f) || (lead == 0xf0 && second < 0x90) ||
            (lead == 0xf4 && second > 0x8f))
            return false;
        i += more + 1;
    }
    return true;
}

} // namespace spurwright::io
