// Vines that no one would draw and a file may still hold: the little vine with fields overwritten, as far as
// check_vine lets them pass. Shown, pruned, weighed, judged and searched, they may not fall over. Each 8 bytes of the
// input are one overwrite: table, row, field, a spare byte, a value.
#include <cstring>

#include "scenarios/commands/judged.h"
#include "scenarios/commands/vine_answer.h"
#include "scenarios/io/json_fields.h"
#include "scenarios/words/load_words.h"
#include "sim/core/check.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

namespace {

// A length as a file may hold it: the whole range, the small values more often.
Length length_of(std::int32_t value) {
    if (value % 3 == 0) return {value % 300'000};
    return {value % io::Fields::longest_length.count};
}

void overwrite(Node& n, int field, std::int32_t value) {
    switch (field % 9) {
    case 0: n.joint = length_of(value); break;
    case 1: n.major = length_of(value); break;
    case 2: n.minor = length_of(value); break;
    case 3: n.place.x = length_of(value); break;
    case 4: n.place.y = length_of(value); break;
    case 5: n.place.z = length_of(value); break;
    case 6: n.harm = static_cast<Harm>(value & 3); break;
    case 7: n.tendril_class = (value & 7) % 3; break;
    default: n.major = n.minor = length_of(value); break;
    }
}

void overwrite(Axis& a, int field, std::int32_t value) {
    switch (field % 5) {
    case 0: a.ripe = length_of(value); break;
    case 1: a.born = (value & 127) % 5; break;
    case 2: a.state = static_cast<AxisState>(value & 1); break;
    case 3: a.mark = static_cast<Role>((value & 7) % 7); break;
    default: a.side = static_cast<Side>((value & 3) % 3); break;
    }
}

void overwrite(Vine& v, int field, std::int32_t value) {
    switch (field % 9) {
    case 0: v.spacing = {600'000 + (value & 0x7fffffff) % 3'150'000}; break;
    case 1: v.winter = 1 + (value & 255) % 200; break;
    case 2: v.wires[0].height = length_of(value); break;
    case 3: v.origin_left = length_of(value); break;
    case 4: v.origin_right = length_of(value); break;
    case 5: v.neighbours[value & 1].reach = length_of(value); break;
    case 6: v.neighbours[value & 1].kind = static_cast<NeighbourKind>((value >> 1 & 3) % 3); break;
    case 7: v.graft = node_id(AxisId{1}, static_cast<std::uint32_t>(value & 1)); break;
    default: v.buds[static_cast<std::size_t>(value & 0xffff) % v.buds.size()].harmed = true; break;
    }
}

} // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Vine little = io::load_vine_file(SPURWRIGHT_SOURCE "/assets/vines/little.json").value().vine;
    static const words::Words words = words::bare_words();
    Vine vine = little;
    for (; size >= 8; data += 8, size -= 8) {
        std::int32_t value = 0;
        std::memcpy(&value, data + 4, 4);
        const std::size_t row = data[1];
        if (data[0] % 3 == 0)
            overwrite(vine.nodes[row % vine.nodes.size()], data[2], value);
        else if (data[0] % 3 == 1)
            overwrite(vine.axes[row % vine.axes.size()], data[2], value);
        else
            overwrite(vine, data[2], value);
    }
    if (check_vine(vine)) return 0;
    static_cast<void>(commands::vine_answer({vine, "", {}}, words));
    for (const char* plan : {"", "lay a4 left wraps 1; lay a7 right wraps 1; cut a2.1+1.0 saw; cut a6.1+1.0 shears"}) {
        const auto pruned = commands::prune_by_text(vine, plan);
        if (!pruned) continue;
        static_cast<void>(prunings(vine, pruned->after));
        if (!commands::can_be_judged(vine, "fuzz")) continue;
        const rules::HouseRules house;
        const planning::Planning planning(vine, house);
        const auto judged = commands::judged(vine, pruned->plan, house, planning);
        SPURWRIGHT_CHECK(judged.has_value(), ==, true);
        if (judged->best) SPURWRIGHT_CHECK(judged->judgement.points.count, <=, judged->best->count);
    }
    return 0;
}
