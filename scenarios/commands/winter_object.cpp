#include "scenarios/commands/winter_object.h"

#include "sim/vine/words_of.h"

namespace spurwright::commands {
namespace {

using ahead::Figure;

io::Json ahead_spread_object(Figure figure, const ahead::Spread& spread) {
    if (!spread.known) return {};
    io::Json o = io::Json::object();
    o.set("median", io::Json::number(spread.median, decimals_of(figure)));
    o.set("low", io::Json::number(spread.low, decimals_of(figure)));
    o.set("high", io::Json::number(spread.high, decimals_of(figure)));
    return o;
}

} // namespace

int decimals_of(Figure figure) {
    switch (figure) {
    case Figure::thickness_mm: return 2;
    case Figure::frost_loss_share: return 3;
    case Figure::yield_kg:
    case Figure::crop_to_prunings: return 2;
    default: return 1;
    }
}

io::Json winter_object(const ahead::AheadWinter& winter) {
    io::Json o = io::Json::object();
    o.set("winter", winter.winter);
    for (std::size_t i = 0; i < ahead::figure_count; ++i) {
        const auto figure = static_cast<Figure>(i);
        o.set(word_of(figure), ahead_spread_object(figure, winter[figure]));
    }
    return o;
}

} // namespace spurwright::commands
