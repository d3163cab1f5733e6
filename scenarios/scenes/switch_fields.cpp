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

void read_numbers(io::Fields& fields, growth::FatTopCane& t) {
    t.diameter = fields.length("diameter_mm", t.diameter);
    t.axis_ratio = {fields.decimal("axis_ratio", 3, t.axis_ratio.count)};
    t.joint = fields.length("joint_mm", t.joint);
    t.above_wire = fields.length("above_wire_mm", t.above_wire);
}

template <class Cane> // far or near
void read_numbers(io::Fields& fields, Cane& t) {
    t.out = fields.length("out_mm", t.out);
    t.diameter = fields.length("diameter_mm", t.diameter);
    t.joint = fields.length("joint_mm", t.joint);
}

void read_numbers(io::Fields& fields, growth::OldUpright& t) {
    t.diameter = fields.length("diameter_mm", t.diameter);
    t.off_vertical = {fields.decimal("off_vertical_deg", 3, t.off_vertical.count)};
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
