#include "scenarios/commands/compare_wish.h"

#include "scenarios/commands/quantities.h"

namespace spurwright::commands {

Result<reference_vines::CompareWish> compare_wish(const Asked& asked) {
    reference_vines::CompareWish wish;
    wish.row = asked.value("--row");
    if (const auto text = asked.value("--confidence")) {
        const auto percent = read_whole(*text, "--confidence", 50, 99);
        if (!percent) return failure(percent.error());
        wish.confidence = static_cast<double>(*percent) / 100;
    }
    if (const auto text = asked.value("--within")) {
        const auto percent = read_whole(*text, "--within", 1, 100);
        if (!percent) return failure(percent.error());
        wish.within = static_cast<double>(*percent) / 100;
    }
    if (const auto text = asked.value("--sizes")) {
        const auto sizes = read_choice<balance::SizeSet>(*text, "--sizes");
        if (!sizes) return failure(sizes.error());
        wish.sizes = *sizes;
    }
    for (const std::string_view option : {"--from", "--to"})
        if (const auto text = asked.value(option)) {
            const auto winter = read_whole(*text, option, 1900, 2200);
            if (!winter) return failure(winter.error());
            (option == "--from" ? wish.first : wish.last) = static_cast<int>(*winter);
        }
    return wish;
}

} // namespace spurwright::commands
