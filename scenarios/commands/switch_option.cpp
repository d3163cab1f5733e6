#include "scenarios/commands/switch_option.h"

#include "scenarios/commands/quantities.h"

namespace spurwright::commands {
namespace {

enum class Post : unsigned char { near, far };
constexpr auto words_of(Post) { return std::to_array<std::string_view>({"near", "far"}); }

// The alternative of this name, tried in the order of the variant; the names passed over are told where none fits.
template <std::size_t i = 0>
Result<growth::Temptation> switch_named(std::string_view name, Side side, std::string_view option, std::string passed = {}) {
    if constexpr (i < std::variant_size_v<growth::Temptation>) {
        std::variant_alternative_t<i, growth::Temptation> wanted;
        if (name == wanted.name) {
            wanted.side = side;
            return growth::Temptation(wanted);
        }
        return switch_named<i + 1>(name, side, option, passed + (passed.empty() ? "" : ", ") + std::string(wanted.name));
    } else {
        return failure(unknown_word(name, option, std::move(passed)));
    }
}

} // namespace

Result<std::vector<growth::Temptation>> read_switches(std::string_view text, std::string_view option) {
    std::vector<growth::Temptation> switches;
    while (true) {
        const std::size_t comma = std::min(text.find(','), text.size());
        const std::string_view one = text.substr(0, comma);
        const std::size_t colon = std::min(one.find(':'), one.size());
        const auto post = read_choice<Post>(colon < one.size() ? one.substr(colon + 1) : std::string_view{}, option);
        const auto read = switch_named(one.substr(0, colon), post && *post == Post::far ? Side::right : Side::left, option);
        if (!read) return failure(read.error());
        if (!post) return failure(post.error());
        switches.push_back(*read);
        if (comma == text.size()) return switches;
        text.remove_prefix(comma + 1);
    }
}

} // namespace spurwright::commands
