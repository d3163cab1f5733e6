#include "scenarios/sheet/block_sheet.h"

#include <algorithm>

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"
#include "sim/vine/words_of.h"

namespace spurwright::sheet {
namespace {

using io::Fields;
using io::Json;

constexpr std::size_t longest_line = 200, longest_note = 600;
constexpr std::int64_t most_sheet_buds = 300;
// The part band of a thickness lies so far outside its full one, as in the shipped sets (our choice).
constexpr Length thinner_part{1'600}, thicker_part{2'000};

rules::Range<Length> length_pair(Fields& fields, std::string_view key, rules::Range<Length> other) {
    if (fields.left_out(key)) return other;
    const std::vector<Json>& ends = fields.list(key, true);
    if (ends.size() != 2) {
        fields.refusal().add("error.sheet.pair", {{"key", std::string(key)}}, fields.required(key));
        return other;
    }
    const rules::Range<Length> range{fields.length_of(ends[0], key), fields.length_of(ends[1], key)};
    if (!fields.refusal().any() && (range.low.count < 0 || range.low > range.high))
        fields.refusal().add("error.sheet.pair", {{"key", std::string(key)}}, fields.required(key));
    return range;
}

std::int32_t small_number(Fields& fields, std::string_view key, std::int64_t low, std::int64_t high, std::optional<std::int64_t> other = {}) {
    return static_cast<std::int32_t>(fields.whole(key, low, high, other));
}

void read_buds(BlockSheet& sheet, Fields& fields) {
    Fields buds(fields.refusal(), fields.required("buds"));
    const auto names = words_of(Strength{});
    for (std::size_t i = 0; i < names.size(); ++i) sheet.buds[i] = small_number(buds, names[i], 1, most_sheet_buds);
    sheet.told_by = buds.text("told_by", longest_line, "");
    buds.end();
    if (!fields.refusal().any() && !std::is_sorted(sheet.buds.begin(), sheet.buds.end()))
        fields.refusal().add("error.sheet.buds-fall", {}, fields.required("buds"));
}

// So many canes are laid, and so many spurs kept, on vines of this system.
std::int32_t pieces_of(System system) { return system == System::two_cane ? 2 : system == System::one_cane ? 1 : 0; }

void read_spurs(BlockSheet& sheet, Fields& fields) {
    sheet.spurs = pieces_of(sheet.system);
    if (const Json* given = fields.optional("spurs")) {
        Fields spurs(fields.refusal(), *given);
        if (sheet.spurs > 0) sheet.spurs = small_number(spurs, "wanted", sheet.spurs, sheet.spurs, sheet.spurs);
        sheet.spur_buds = small_number(spurs, "buds", 1, 3, 2);
        spurs.end();
    }
}

// What is said of canes laid, and of what stands beside them.
void read_canes(BlockSheet& sheet, Fields& fields) {
    sheet.canes = small_number(fields, "canes", pieces_of(sheet.system), pieces_of(sheet.system), pieces_of(sheet.system));
    sheet.thickness = length_pair(fields, "thickness", sheet.thickness);
    sheet.heights = length_pair(fields, "heights", sheet.heights);
    sheet.gap = length_pair(fields, "gap", sheet.gap);
    sheet.head = fields.text("head", longest_line, sheet.head);
    if (!fields.refusal().any() && sheet.head != "close-head" && sheet.head != "slow-arms")
        fields.refusal().add("error.sheet.head", {{"text", sheet.head}}, fields.required("head"));
    sheet.no_neighbour = fields.word<rules::NoNeighbour>("no_neighbour", rules::NoNeighbour::stop);
    sheet.spares = small_number(fields, "spare", 0, 2, 0);
    if (const Json* given = fields.optional("kicker")) {
        Fields kicker(fields.refusal(), *given);
        sheet.kickers = small_number(kicker, "wanted", 0, 2, 0);
        sheet.kicker_until = kicker.text("until", longest_line, "");
        kicker.end();
    }
    if (const Json* given = fields.optional("tie")) {
        Fields tie(fields.refusal(), *given);
        const std::int32_t tenths = tie.decimal("wraps", 1, 10);
        if (tenths < 0 || tenths > 30 || tenths % 5 != 0)
            fields.refusal().add("error.file.wraps", {}, *given);
        sheet.half_wraps = tenths / 5;
        sheet.tie_with = tie.text("with", longest_line, "");
        tie.end();
    }
}

void set_text(Json& o, std::string_view key, const std::string& text) {
    if (!text.empty()) o.set(key, text);
}
Json pair_of(const rules::Range<Length>& range) {
    Json list = Json::list();
    list.push(range.low);
    list.push(range.high);
    return list;
}

void set_canes(Json& o, const BlockSheet& sheet) {
    Json kicker = Json::object(), tie = Json::object();
    o.set("canes", std::int64_t{sheet.canes});
    o.set("thickness", pair_of(sheet.thickness));
    o.set("heights", pair_of(sheet.heights));
    o.set("gap", pair_of(sheet.gap));
    o.set("head", sheet.head);
    o.set("no_neighbour", word_of(sheet.no_neighbour));
    o.set("spare", std::int64_t{sheet.spares});
    kicker.set("wanted", std::int64_t{sheet.kickers});
    set_text(kicker, "until", sheet.kicker_until);
    o.set("kicker", std::move(kicker));
    tie.set("wraps", Json::decimal(sheet.half_wraps * 5, 1));
    set_text(tie, "with", sheet.tie_with);
    o.set("tie", std::move(tie));
}

} // namespace

Result<BlockSheet> read_block_sheet(std::string_view text, const std::string& source) {
    const auto root = io::read_json(text, source);
    if (!root) return failure(root.error());
    io::Refusal refusal(source);
    Fields fields(refusal, *root);
    BlockSheet sheet;
    const std::string kind = fields.text("kind", longest_line);
    if (!refusal.any() && kind != block_sheet_kind)
        refusal.add("error.file.kind", {{"wanted", std::string(block_sheet_kind)}, {"found", kind}}, *root->find("kind"));
    const std::int64_t version = fields.whole("version", 1, 1'000'000);
    if (!refusal.any() && version > block_sheet_version)
        refusal.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{block_sheet_version}}},
                    *root->find("version"), Fault::newer);
    if (refusal.any()) return failure(refusal.take());
    sheet.block = fields.text("block", longest_line);
    sheet.date = fields.text("date", longest_line, "");
    sheet.by = fields.text("by", longest_line, "");
    sheet.system = fields.word<System>("system", System::two_cane);
    const bool judged_system =
        sheet.system == System::two_cane || sheet.system == System::one_cane || sheet.system == System::cordon;
    if (!refusal.any() && !judged_system) refusal.add("error.sheet.system", {}, *root->find("system"));
    sheet.spacing = fields.length("spacing", sheet.spacing);
    sheet.rows = fields.length("rows", sheet.rows);
    sheet.wire = fields.length("wire", sheet.wire);
    read_buds(sheet, fields);
    read_spurs(sheet, fields);
    if (sheet.system == System::cordon) {
        sheet.canes = 0;
        sheet.apart = length_pair(fields, "apart", sheet.apart);
    } else {
        read_canes(sheet, fields);
    }
    sheet.brush = fields.text("brush", longest_line, "");
    sheet.tools = fields.text("tools", longest_line, "");
    sheet.order = fields.text("order", longest_line, "");
    sheet.notes = fields.text("notes", longest_note, "");
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return sheet;
}

Result<BlockSheet> load_block_sheet(const std::string& path) {
    const auto text = io::read_file(path, io::largest_json);
    if (!text) return failure(text.error());
    return read_block_sheet(*text, path);
}

std::string print_block_sheet(const BlockSheet& sheet) {
    Json o = Json::object(), buds = Json::object(), spurs = Json::object();
    o.set("kind", block_sheet_kind);
    o.set("version", block_sheet_version);
    o.set("block", sheet.block);
    set_text(o, "date", sheet.date);
    set_text(o, "by", sheet.by);
    o.set("system", word_of(sheet.system));
    o.set("spacing", sheet.spacing);
    o.set("rows", sheet.rows);
    o.set("wire", sheet.wire);
    const auto names = words_of(Strength{});
    for (std::size_t i = 0; i < names.size(); ++i) buds.set(names[i], std::int64_t{sheet.buds[i]});
    set_text(buds, "told_by", sheet.told_by);
    o.set("buds", std::move(buds));
    if (sheet.spurs > 0) spurs.set("wanted", std::int64_t{sheet.spurs});
    spurs.set("buds", std::int64_t{sheet.spur_buds});
    o.set("spurs", std::move(spurs));
    if (sheet.system == System::cordon)
        o.set("apart", pair_of(sheet.apart));
    else
        set_canes(o, sheet);
    for (const auto& [key, text] : {std::pair{"brush", &sheet.brush}, {"tools", &sheet.tools}, {"order", &sheet.order}, {"notes", &sheet.notes}})
        set_text(o, key, *text);
    return io::print_json(o);
}

namespace {

// What a sheet sets, by its parameter.
struct Setting {
    rules::RuleName rule;
    const char* key;
};

std::vector<Setting> set_row(rules::HouseRules& house, const BlockSheet& sheet) {
    house.spur_buds.full = {{sheet.spur_buds}, {sheet.spur_buds}};
    auto& apart = house.spur_place.apart;
    apart.full = sheet.apart;
    apart.half = {std::min(apart.half.low, sheet.apart.low), std::max(apart.half.high, sheet.apart.high)};
    return {{rules::RuleName::spur_place, "spur-place.apart_full"}, {rules::RuleName::spur_place, "spur-place.apart_half"}};
}

std::vector<Setting> set_pieces(rules::HouseRules& house, const BlockSheet& sheet) {
    house.cane_diameter.band = {sheet.thickness,
                                {std::max(Length{}, sheet.thickness.low - thinner_part), sheet.thickness.high + thicker_part}};
    house.origin_height.band.full = sheet.heights;
    house.cane_reach.free_wire.full = sheet.gap;
    house.cane_reach.free_wire.half.high = std::max(house.cane_reach.free_wire.half.high, sheet.gap.high);
    house.cane_reach.no_neighbour = sheet.no_neighbour;
    house.spur_buds.full = {{1}, {sheet.spur_buds}};
    house.standing.kickers = sheet.kickers;
    house.standing.spares = sheet.spares;
    house.tying.wraps.high.count = sheet.half_wraps + 1; // half a turn more is no slip
    return {{rules::RuleName::cane_diameter, "cane-diameter.full"},
            {rules::RuleName::cane_diameter, "cane-diameter.half"},
            {rules::RuleName::origin_height, "origin-height.full"},
            {rules::RuleName::cane_reach, "cane-reach.full"},
            {rules::RuleName::cane_reach, "cane-reach.half"},
            {rules::RuleName::cane_reach, "cane-reach.no_neighbour"},
            {rules::RuleName::tying, "tying.wraps"}};
}

} // namespace

Result<io::HouseRulesFile> house_rules_of(const BlockSheet& sheet, Strength strength, const std::string& source,
                                          const io::Assets& assets) {
    const bool cordon = sheet.system == System::cordon;
    io::HouseRulesFile file;
    file.base = cordon ? "spur-cordon" : sheet.head;
    auto base = io::load_house_rules(file.base, assets);
    if (!base) return failure(std::move(base.error()));
    file.name = "block-sheet";
    file.title = sheet.block;
    file.set_by = sheet.by;
    file.set_on = sheet.date;
    rules::HouseRules& house = file.rules = base->rules;
    house.bud_load.target = sheet.buds[static_cast<std::size_t>(strength)];
    std::vector<Setting> set = cordon ? set_row(house, sheet) : set_pieces(house, sheet);
    house.spur_buds.half.high.count = std::max(house.spur_buds.half.high.count, sheet.spur_buds);
    set.insert(set.end(), {{rules::RuleName::bud_load, "bud-load.target"},
                           {rules::RuleName::spur_buds, "spur-buds.full"},
                           {rules::RuleName::spur_buds, "spur-buds.half"}});
    for (const Setting& setting : set) {
        house.set_by_house[rules::index_of(setting.rule)] = true;
        file.own.emplace_back(setting.key);
    }
    if (!cordon)
        for (const char* key : {"kicker.wanted", "spare.wanted"}) file.own.emplace_back(key);
    if (const auto fault = rules::first_fault(house))
        return failure({Fault::bad_file, fault->key,
                        {{"rule", std::string(fault->rule)}, {"parameter", std::string(fault->parameter)}}, {source, 0, 0, 0}});
    return file;
}

} // namespace spurwright::sheet
