#include "scenarios/commands/spread_object.h"

#include <cmath>

namespace spurwright::commands {

io::Json vine_spread_object(const balance::VineSpread& spread) {
    if (spread.n == 0) return {};
    io::Json o = io::Json::object();
    o.set("n", spread.n);
    o.set("least", io::Json::number(spread.least, 6));
    o.set("low", io::Json::number(spread.low, 6));
    o.set("median", io::Json::number(spread.median, 6));
    o.set("high", io::Json::number(spread.high, 6));
    o.set("most", io::Json::number(spread.most, 6));
    o.set("mean", io::Json::number(spread.mean, 6));
    o.set("deviation", io::Json::number(spread.deviation, 6));
    return o;
}

std::string chance_text(double p, const words::Words& words) {
    if (p < 0.001) return "< " + words::number_text(1, 3, 3, words.numbers());
    return words::number_text(std::llround(p * 1000), 3, 3, words.numbers());
}

std::string kg_column(double kg, const words::Words& words, int decimals) {
    std::string text = words::number_text(std::llround(kg * 1e6), 6, decimals, words.numbers());
    if (decimals == 0) return text;
    const std::string& point = words.numbers().point;
    auto at = text.find(point);
    if (at == std::string::npos) {
        at = text.size();
        text += point;
    }
    text.append(at + point.size() + static_cast<std::size_t>(decimals) - text.size(), '0');
    return text;
}

} // namespace spurwright::commands
