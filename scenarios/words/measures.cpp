#include "scenarios/words/measures.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace spurwright::words {
namespace {

constexpr int finest = 3; // more decimals than this add nothing a person can use

std::string grouped(std::string digits, const std::string& group) {
    if (digits.size() < 5) return digits;
    for (std::size_t at = digits.size() - 3; at > 0 && at < digits.size(); at -= std::min<std::size_t>(at, 3))
        digits.insert(at, group);
    return digits;
}

std::int64_t rounded_div(std::int64_t value, std::int64_t by) {
    const std::int64_t half = by / 2;
    return value < 0 ? -((-value + half) / by) : (value + half) / by;
}

std::string with_unit(std::int64_t value, int scale, int decimals, std::string_view unit, const NumberStyle& style) {
    return number_text(value, scale, decimals, style) + std::string(unit);
}

std::string length_text(Length l, const NumberStyle& style, int finer) {
    const std::int64_t um = l.count, size = std::llabs(um);
    if (size >= 1'000'000 && finer == 0) return with_unit(um, 6, 2, " m", style);
    return with_unit(um, 3, std::min((size < 30'000 ? 1 : 0) + finer, finest), " mm", style);
}

std::string mass_text(Mass m, const NumberStyle& style, int finer) {
    const std::int64_t mg = m.count, size = std::llabs(mg);
    if (size >= 1'000'000) return with_unit(mg, 6, std::min(2 + finer, 6), " kg", style);
    return with_unit(mg, 3, std::min((size < 10'000 ? 1 : 0) + finer, finest), " g", style);
}

std::string ratio_text(double value, const NumberStyle& style, int finer) {
    if (!std::isfinite(value) || std::fabs(value) > 1e15) return "-";
    return number_text(std::llround(value * 1000), 3, std::min(2 + finer, finest), style);
}

} // namespace

std::string number_text(std::int64_t value, int scale, int decimals, const NumberStyle& style) {
    std::int64_t by = 1;
    for (int i = decimals; i < scale; ++i) by *= 10;
    const int places = std::min(scale, decimals);
    const std::int64_t shown = rounded_div(value, by);
    std::string digits = std::to_string(std::llabs(shown));
    const auto kept = static_cast<std::size_t>(places);
    if (digits.size() <= kept) digits.insert(0, kept + 1 - digits.size(), '0');
    std::string fraction = digits.substr(digits.size() - kept);
    while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
    const std::string whole_part = grouped(digits.substr(0, digits.size() - kept), style.group);
    return (shown < 0 ? "-" : "") + whole_part + (fraction.empty() ? "" : style.point + fraction);
}

std::string measure_text(const Argument& value, const NumberStyle& style, int finer) {
    struct Shown {
        const NumberStyle& style;
        int finer;
        std::string operator()(Count c) const { return with_unit(c.value, 0, 0, "", style); }
        std::string operator()(Ratio r) const { return ratio_text(r.value, style, finer); }
        std::string operator()(Length l) const { return length_text(l, style, finer); }
        std::string operator()(Mass m) const { return mass_text(m, style, finer); }
        std::string operator()(Angle a) const { return with_unit(a.count, 3, std::min(finer, finest), "°", style); }
        std::string operator()(Tenths t) const { return with_unit(t.count, 1, 1, "", style); }
        std::string operator()(PerMille p) const {
            return with_unit(p.count, 1, std::min((std::abs(p.count) < 100 ? 1 : 0) + finer, 1), " %", style);
        }
        std::string operator()(Strain s) const { return with_unit(s.count, 4, std::min(1 + finer, 4), " %", style); }
        std::string operator()(TextKey) const { return {}; }
        std::string operator()(AxisId) const { return {}; }
        std::string operator()(NodeId) const { return {}; }
        std::string operator()(const std::string&) const { return {}; }
    };
    return std::visit(Shown{style, finer}, value);
}

std::string points_text(Tenths points, const NumberStyle& style) {
    const int tenths = std::abs(points.count);
    return (points.count < 0 ? "-" : "") + std::to_string(tenths / 10) + style.point + std::to_string(tenths % 10);
}

std::vector<std::string> measure_texts(const Arguments& arguments, const NumberStyle& style) {
    std::vector<std::string> texts;
    for (const Named& argument : arguments) texts.push_back(measure_text(argument.value, style));
    for (std::size_t i = 0; i < arguments.size(); ++i)
        for (std::size_t j = i + 1; j < arguments.size(); ++j) {
            const Argument &a = arguments[i].value, &b = arguments[j].value;
            if (texts[i].empty() || a.index() != b.index() || a == b) continue;
            for (int finer = 1; texts[i] == texts[j] && finer <= finest; ++finer) {
                texts[i] = measure_text(a, style, finer);
                texts[j] = measure_text(b, style, finer);
            }
        }
    return texts;
}

} // namespace spurwright::words
