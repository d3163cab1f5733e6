#include "sim/vine/vine_code.h"

#include <algorithm>
#include <array>
#include <vector>

namespace spurwright {
namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr int characters = 24, groups = 6, bits = 90, whole_check_bits = 7;

// 0 to 31, or -1: I and L read as 1, O as 0, U is no character.
int value_of(char c) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    if (c == 'I' || c == 'L') c = '1';
    if (c == 'O') c = '0';
    const auto at = alphabet.find(c);
    return at == std::string_view::npos ? -1 : static_cast<int>(at);
}

constexpr bool is_space(char c) { return c == '-' || c == ' '; }

// Product in GF(32) with x^5 = x^2 + 1.
constexpr int product(int a, int b) {
    int p = 0;
    for (int i = 0; i < 5; ++i)
        if (b >> i & 1) p ^= a << i;
    for (int i = 8; i >= 5; --i)
        if (p >> i & 1) p ^= 0b100101 << (i - 5);
    return p;
}

constexpr int group_check(int d1, int d2, int d3, int group) { return product(8, d1) ^ product(4, d2) ^ product(2, d3) ^ group; }

using Bits = std::array<int, bits>;

// CRC-7, x^7 + x^3 + 1, start 0, over the first `count` bits.
int crc7(const Bits& all, int count) {
    int crc = 0;
    for (int i = 0; i < count; ++i) {
        const int top = (crc >> 6 & 1) ^ all[static_cast<std::size_t>(i)];
        crc = (crc << 1 & 127) ^ (top ? 0b1001 : 0);
    }
    return crc;
}

class Packer {
public:
    void put(std::uint64_t value, int width) {
        for (int i = width - 1; i >= 0; --i) all_[next_++] = static_cast<int>(value >> i & 1);
    }
    Bits all_{};
    std::size_t next_ = 0;
};

class Unpacker {
public:
    explicit Unpacker(const Bits& all) : all_(all) {}
    std::uint64_t take(int width) {
        std::uint64_t value = 0;
        for (int i = 0; i < width; ++i) value = value << 1 | static_cast<unsigned>(all_[next_++]);
        return value;
    }

private:
    const Bits& all_;
    std::size_t next_ = 0;
};

Error refusal(std::string_view key, Arguments arguments) { return {Fault::bad_text, TextKey{key}, std::move(arguments), {"the code", 0, 0, 0}}; }

Error out_of_range(std::string_view field, std::uint64_t value) {
    return refusal("error.code.field", {{"field", std::string(field)}, {"value", Count{static_cast<std::int64_t>(value)}}});
}

}  // namespace

std::string print_code(const CodedSite& s) {
    Packer p;
    p.put(static_cast<std::uint64_t>(s.recipe), 5);
    p.put(static_cast<std::uint64_t>(s.system), 3);
    p.put(static_cast<std::uint64_t>(s.age), 6);
    p.put(static_cast<std::uint64_t>(s.vigour), 2);
    p.put(s.frost, 1);
    p.put(static_cast<std::uint64_t>(s.spacing_step), 6);
    p.put(static_cast<std::uint64_t>(s.rows_step), 5);
    p.put(static_cast<std::uint64_t>(s.wire_step), 3);
    p.put(static_cast<std::uint64_t>(s.variety), 5);
    p.put(static_cast<std::uint64_t>(s.pruner), 4);
    p.put(s.two_trunks, 1);
    p.put((s.missing_left ? 1u : 0u) | (s.missing_right ? 2u : 0u), 2);
    p.put(s.seed, 40);
    p.put(static_cast<std::uint64_t>(crc7(p.all_, bits - whole_check_bits)), whole_check_bits);

    Unpacker values(p.all_);
    std::string text;
    for (int g = 1; g <= groups; ++g) {
        const int d1 = static_cast<int>(values.take(5)), d2 = static_cast<int>(values.take(5)), d3 = static_cast<int>(values.take(5));
        if (g > 1) text += '-';
        for (const int d : {d1, d2, d3, group_check(d1, d2, d3, g)}) text += alphabet[static_cast<std::size_t>(d)];
    }
    return text;
}

bool looks_like_code(std::string_view text) {
    const auto count = std::count_if(text.begin(), text.end(), [](char c) { return !is_space(c); });
    return count == characters && std::all_of(text.begin(), text.end(), [](char c) { return is_space(c) || value_of(c) >= 0; });
}

Result<CodedSite> read_code(std::string_view text) {
    std::string plain;
    for (const char c : text)
        if (!is_space(c)) plain += c;
    if (plain.size() != characters)
        return failure(refusal("error.code.length", {{"wanted", Count{characters}}, {"found", Count{static_cast<std::int64_t>(plain.size())}}}));
    Packer p;
    for (int g = 1; g <= groups; ++g) {
        const std::string group = plain.substr(static_cast<std::size_t>(4 * (g - 1)), 4);
        int d[4];
        for (std::size_t i = 0; i < 4; ++i) d[i] = value_of(group[i]);
        if (*std::min_element(d, d + 4) < 0 || group_check(d[0], d[1], d[2], g) != d[3]) {
            Error error = refusal("error.code.group", {{"group", Count{g}}, {"groups", Count{groups}}, {"text", group}});
            error.where.source = "group " + std::to_string(g) + " of the code";
            return failure(std::move(error));
        }
        for (int i = 0; i < 3; ++i) p.put(static_cast<std::uint64_t>(d[i]), 5);
    }
    Unpacker u(p.all_);
    CodedSite s;
    const std::uint64_t recipe = u.take(5), system = u.take(3), age = u.take(6), vigour = u.take(2), frost = u.take(1),
                        spacing = u.take(6), rows = u.take(5), wire = u.take(3), variety = u.take(5), pruner = u.take(4),
                        trunks = u.take(1), missing = u.take(2), seed = u.take(40), check = u.take(whole_check_bits);
    if (check != static_cast<std::uint64_t>(crc7(p.all_, bits - whole_check_bits))) return failure(refusal("error.code.whole", {}));
    if (recipe > static_cast<std::uint64_t>(newest_recipe)) {
        Error error = refusal("error.code.recipe", {{"recipe", Count{static_cast<std::int64_t>(recipe)}}, {"newest", Count{newest_recipe}}});
        error.fault = Fault::newer;
        return failure(std::move(error));
    }
    if (system > 4) return failure(out_of_range("system", system));
    if (age < 3 || age > 40) return failure(out_of_range("age", age));
    if (vigour > 2) return failure(out_of_range("vigour", vigour));
    if (pruner > 7) return failure(out_of_range("pruner", pruner));
    s.recipe = static_cast<int>(recipe);
    s.system = static_cast<System>(system);
    s.age = static_cast<int>(age);
    s.vigour = static_cast<Vigour>(vigour);
    s.frost = frost != 0;
    s.spacing_step = static_cast<int>(spacing);
    s.rows_step = static_cast<int>(rows);
    s.wire_step = static_cast<int>(wire);
    s.variety = static_cast<int>(variety);
    s.pruner = static_cast<Pruner>(pruner);
    s.two_trunks = trunks != 0;
    s.missing_left = missing & 1;
    s.missing_right = missing & 2;
    s.seed = seed;
    return s;
}

}  // namespace spurwright
