#include "render/ui/part_words.h"

#include <algorithm>
#include <array>

#include "sim/pruning/lay.h"
#include "sim/vine/vine_query.h"

namespace spurwright::ui {
namespace {

struct Bound {
    std::int64_t below_um;
    std::string_view key;
};
constexpr std::array bounds{Bound{6'000, "screen.hand.thinner"},           Bound{8'000, "screen.hand.pencil"},
                            Bound{10'500, "screen.hand.thick-pencil"},     Bound{14'000, "screen.hand.marker"},
                            Bound{17'000, "screen.hand.over-marker"},      Bound{24'000, "screen.hand.thumb-thick"},
                            Bound{2'000'000'000, "screen.hand.over-thumb"}};

struct Measure {
    std::int64_t from_um, size_um;
    std::string_view one, more;
};
constexpr std::array measures{Measure{120'000, 200'000, "screen.hand.span", "screen.hand.spans"},
                              Measure{40'000, 90'000, "screen.hand.fist", "screen.hand.fists"},
                              Measure{0, 20'000, "screen.hand.thumb", "screen.hand.thumbs"}};

std::string halves_text(std::int64_t halves) {
    if (halves == 1) return "½";
    return std::to_string(halves / 2) + (halves % 2 ? "½" : "");
}

} // namespace

TextKey thickness_words(Length diameter) {
    for (const Bound& bound : bounds)
        if (diameter.count < bound.below_um) return TextKey{bound.key};
    return TextKey{bounds.back().key};
}

std::string distance_words(const Ui& ui, Length distance) {
    const std::int64_t size = std::max<std::int64_t>(distance.count, 0);
    for (const Measure& m : measures) {
        if (size < m.from_um) continue;
        const std::int64_t halves = std::max<std::int64_t>((size * 2 + m.size_um / 2) / m.size_um, 1);
        return ui.say(halves <= 2 ? m.one : m.more, {{"text", halves_text(halves)}});
    }
    return {};
}

std::string exact_length(const Ui& ui, Length length, bool inch) {
    if (!inch) return ui.words.measure(length);
    const std::int64_t hundredths = (std::int64_t{length.count} * 100 + 12'700) / 25'400;
    return ui.say("screen.inch", {{"text", words::number_text(hundredths, 2, 2, ui.words.numbers())}});
}

Label hover_label(const Ui& ui, const Vine& vine, const practice::Spot& spot, bool exact, bool inch, At at) {
    Label label;
    label.at = at;
    const Axis* axis = vine.find(spot.axis);
    if (!axis) return label;
    Length thick = first_joint_diameter(vine, *axis);
    for (const Node& node : vine.nodes_of(*axis))
        if (node.id == spot.node && index_of(node.id) > 0) thick = mean_diameter(node);
    label.first = ui.say("screen.hover.part", {{"part", spot.axis}, {"hand", thickness_words(thick)}});
    if (exact) label.first += ", " + exact_length(ui, thick, inch);
    if (const int buds = count_buds(vine, *axis); buds > 0)
        label.second = ui.say("screen.hover.buds", {{"n", Count{buds}}});
    return label;
}

Label cut_label(const Ui& ui, const practice::CutPreview& cut, At at) {
    Label label;
    label.at = at;
    const std::int64_t node = index_of(cut.cut.past);
    if (node == 0)
        label.first = ui.say("screen.cut.base", {{"part", axis_of(cut.cut.past)}});
    else
        label.first =
            ui.say("screen.cut.past",
                   {{"hand", distance_words(ui, cut.cut.beyond)}, {"node", Count{node}}, {"n", Count{cut.buds_kept}}});
    if (cut.warning)
        label.second = ui.words.sentence(*cut.warning);
    else
        label.second = ui.say("screen.cut.off", {{"n", Count{cut.buds_off}}});
    return label;
}

std::string bend_words(const Ui& ui, const HandBend& bend) {
    constexpr std::array<std::string_view, 4> keys{"screen.bend.quiet", "screen.bend.creak", "screen.bend.skin", "screen.bend.breaks"};
    return ui.say(keys[static_cast<std::size_t>(bend.level)]);
}

Label bend_label(const Ui& ui, const HandBend& bend, At at) {
    const std::int64_t share = std::min<std::int64_t>(std::int64_t{bend.strain.count} * 1000 / strain_at_break.count, 9'990);
    return {at, bend_words(ui, bend), ui.say("screen.bend.share", {{"measured", PerMille{static_cast<std::int32_t>(share / 10 * 10)}}}), false};
}

Label refusal_label(const Ui& ui, const Error& why, At at) {
    return {at, ui.words.sentence(why.key, why.arguments), {}, true};
}

} // namespace spurwright::ui
