#include "scenarios/scenes/switch_fields.h"

namespace spurwright::scenes {
namespace {

constexpr std::size_t longest_switch_name = 60;

Side read_side(io::Fields& fields) {
    const Side side = fields.word<Side>("side");
    if (side == Side::none && !fields.refusal().any())
        fields.refusal().add("error.scene.side", {}, fields.object());
    return side;
}

// The numbers a switch has, by the names of its own fields.
template <class T>
void read_numbers(io::Fields& fields, T& t) {
    const auto length = [&](std::string_view key, Length& into) { into = fields.length(key, into); };
    const auto angle = [&](std::string_view key, Angle& into) { into = {fields.decimal(key, 3, into.count)}; };
    if constexpr (requires { t.diameter; }) length("diameter_mm", t.diameter);
    if constexpr (requires { t.joint; }) length("joint_mm", t.joint);
    if constexpr (requires { t.axis_ratio; }) t.axis_ratio = {fields.decimal("axis_ratio", 3, t.axis_ratio.count)};
    if constexpr (requires { t.above_wire; }) length("above_wire_mm", t.above_wire);
    if constexpr (requires { t.below_wire; }) length("below_wire_mm", t.below_wire);
    if constexpr (requires { t.out; }) length("out_mm", t.out);
    if constexpr (requires { t.further_out; }) length("further_out_mm", t.further_out);
    if constexpr (requires { t.further_diameter; }) length("further_diameter_mm", t.further_diameter);
    if constexpr (requires { t.others; }) length("others_mm", t.others);
    if constexpr (requires { t.height; }) length("height_mm", t.height);
    if constexpr (requires { t.ripe; }) length("ripe_mm", t.ripe);
    if constexpr (requires { t.stub; }) length("stub_mm", t.stub);
    if constexpr (requires { t.off_vertical; }) angle("off_vertical_deg", t.off_vertical);
    if constexpr (requires { t.azimuth; }) angle("azimuth_deg", t.azimuth);
}

// The alternative of this name, tried in the order of the variant.
template <std::size_t i = 0>
bool read_named(io::Fields& fields, const std::string& name, growth::Temptation& into) {
    if constexpr (i < std::variant_size_v<growth::Temptation>) {
        using T = std::variant_alternative_t<i, growth::Temptation>;
        if (name != T::name) return read_named<i + 1>(fields, name, into);
        T wanted;
        wanted.side = read_side(fields);
        read_numbers(fields, wanted);
        into = wanted;
        return true;
    }
    return false;
}

} // namespace

growth::Temptation read_switch(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    const std::string name = fields.text("name", longest_switch_name);
    growth::Temptation read;
    if (!read_named(fields, name, read) && !refusal.any())
        refusal.add("error.scene.switch", {{"text", name}}, object);
    fields.end();
    return read;
}

} // namespace spurwright::scenes
