// Reads a vine file. Rows are checked one by one as they are read (kind, range, spelling), the vine as a whole by
// check_vine; its refusal is given the line on which the part stands.
#include <charconv>
#include <map>

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/io/vine_file.h"
#include "sim/growth/history.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_check.h"

namespace spurwright::io {
namespace {

constexpr std::size_t longest_free_text = 200; // characters

// Where each part stands in the file, by its name.
using Places = std::map<std::string, std::pair<int, int>, std::less<>>;

class Reader {
public:
    Reader(Refusal& refusal, const Json& root) : refusal_(refusal), root_(root), fields_(refusal, root) {}

    Result<VineFile> read() {
        read_kind();
        if (refusal_.any()) return failure(refusal_.take());
        for (std::size_t i = 0; i < root_.keys.size(); ++i) note_place(root_.keys[i], root_.items[i]);
        Vine& v = builder_.vine;
        v.winter = static_cast<int>(fields_.whole("winter", 1, 200));
        v.spacing = fields_.length("spacing");
        v.row_spacing = fields_.length("row_spacing");
        read_wires();
        v.head = fields_.node("head");
        read_axes();
        read_history();
        read_neighbours();
        read_wounds();
        read_laid();
        read_ties();
        read_brush();
        VineFile file;
        read_origin(file);
        fields_.end();
        if (refusal_.any()) return failure(refusal_.take());
        auto vine = builder_.build();
        if (!vine) return failure(placed(std::move(vine.error())));
        file.vine = *std::move(vine);
        check_code(file);
        if (refusal_.any()) return failure(refusal_.take());
        return file;
    }

private:
    Refusal& refusal_;
    const Json& root_;
    Fields fields_;
    VineBuilder builder_;
    Places places_;

    void note_place(const std::string& name, const Json& at) { places_.emplace(name, std::pair(at.line, at.column)); }

    // A code in a file says that anyone can grow this vine again: so it is grown again.
    void check_code(VineFile& file) {
        if (file.code.empty()) return;
        const Json& at = *root_.find("code");
        const auto refuse = [&](Error error) {
            error.where = {refusal_.source(), at.line, at.column, 0};
            refusal_.add(std::move(error));
        };
        const auto coded = read_code(file.code);
        if (!coded) return refuse(coded.error());
        const auto site = growth::site_of(*coded);
        if (!site) return refuse(site.error());
        const auto grown = growth::grow_vine(*site);
        if (!grown) return refuse(grown.error());
        if (vine_hash(*grown) != vine_hash(file.vine)) return refusal_.add("error.file.code", {}, at);
        file.code = print_code(*coded);
    }

    // "a12.3/0" stands where "a12.3" does.
    Error placed(Error error) const {
        error.where.source = refusal_.source();
        for (const Named& argument : error.arguments) {
            const auto* part = std::get_if<std::string>(&argument.value);
            if (argument.gap != "part" || !part) continue;
            auto at = places_.find(*part);
            if (at == places_.end()) at = places_.find(part->substr(0, part->find('/')));
            if (at == places_.end()) continue;
            error.where.line = at->second.first;
            error.where.column = at->second.second;
        }
        return error;
    }

    void read_kind() {
        const std::string kind = fields_.text("kind", 200);
        if (refusal_.any()) return;
        if (kind != vine_kind)
            return refusal_.add("error.file.kind", {{"wanted", std::string(vine_kind)}, {"found", kind}},
                                *root_.find("kind"));
        const std::int64_t version = fields_.whole("version", 1, 1'000'000);
        if (version > vine_version)
            refusal_.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{vine_version}}},
                         *root_.find("version"), Fault::newer);
    }

    void read_wires() {
        for (const Json& item : fields_.list("wires", true)) {
            Fields f(refusal_, item);
            Wire wire;
            wire.id = f.row<struct WireTag>('w', "id");
            wire.kind = f.word<WireKind>("kind");
            wire.height = f.length("height");
            wire.half_gap = f.length("half_gap", Length{});
            wire.state = f.word<WireState>("state", WireState::up);
            f.end();
            note_place(name_of(wire.id), item);
            builder_.vine.wires.push_back(wire);
        }
    }

    void read_history() {
        Vine& v = builder_.vine;
        v.recipe = static_cast<int>(fields_.whole("recipe", 0, 255, 255));
        v.seed = static_cast<std::uint64_t>(fields_.whole("seed", 0, (std::int64_t{1} << 40) - 1, 0));
        v.system = fields_.word<System>("system", System::two_cane);
        v.variety = fields_.text("variety", 40, "plain");
        const bool plain_word = !v.variety.empty() && v.variety.find_first_not_of(
                                                          "abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
        if (!plain_word)
            refusal_.add("error.file.variety", {{"text", v.variety}},
                         root_.find("variety") ? *root_.find("variety") : root_);
        v.vigour = fields_.word<Vigour>("vigour", Vigour::moderate);
        v.frost = fields_.yes("frost", false);
        v.graft = fields_.node_or_null("graft").value_or(NodeId{});
        v.crown_left = fields_.node_or_null("crown_left").value_or(v.head);
        v.crown_right = fields_.node_or_null("crown_right").value_or(v.head);
        v.origin_left = fields_.length_or_null("origin_left");
        v.origin_right = fields_.length_or_null("origin_right");
        v.capacity = fields_.decimal("capacity", 3, 0);
        v.reserves = {fields_.decimal("reserves_share", 3, 1000)};
        v.last_prunings = fields_.mass("last_prunings", Mass{});
        v.last_yield = fields_.mass("last_yield", Mass{});
    }

    void read_neighbours() {
        Vine& v = builder_.vine;
        const Length reach{v.spacing.count / 2 - 50'000};
        v.neighbours = {Neighbour{NeighbourKind::vine, reach}, Neighbour{NeighbourKind::vine, reach}};
        bool told[2] = {false, false};
        for (const Json& item : fields_.list("neighbours", false)) {
            Fields f(refusal_, item);
            const Side side = f.word<Side>("side");
            const std::size_t row = side == Side::right ? 1 : 0;
            if (side == Side::none || told[row])
                refusal_.add("error.file.neighbour-side", {{"text", std::string(word_of(side))}}, item);
            told[row] = true;
            Neighbour& neighbour = v.neighbours[row];
            neighbour.kind = f.word<NeighbourKind>("kind", NeighbourKind::vine);
            neighbour.reach = f.length("reach", neighbour.kind == NeighbourKind::vine ? reach : Length{});
            f.end();
        }
    }

    void read_axes() {
        for (const Json& item : fields_.list("axes", true)) {
            if (refusal_.any()) return;
            Fields f(refusal_, item);
            const AxisId id = f.axis("id");
            note_place(name_of(id), item);
            const Json& on = f.required("on");
            const NodeId parent = on.is(Json::Kind::null) ? NodeId{} : f.node_of(on, "on");
            Axis& axis = builder_.add_axis(id, parent, static_cast<int>(f.whole("born", 1, 200)));
            axis.side = f.word<Side>("side");
            axis.ripe = f.length("ripe");
            axis.grew = f.word<CaneClass>("class", CaneClass::ordinary);
            axis.end = f.word<AxisEnd>("end", AxisEnd::tip);
            axis.state = f.word<AxisState>("state", AxisState::live);
            axis.removed = f.yes("removed", false);
            axis.mark = f.word<Role>("mark", Role::none);
            const bool one_year = axis.born == builder_.vine.winter;
            const auto& nodes = f.list("nodes", true);
            if (nodes.size() > highest_node_index + 1)
                return refusal_.add("error.file.many-nodes",
                                    {{"part", name_of(id)}, {"most", Count{highest_node_index + 1}}}, item);
            for (const Json& node : nodes) read_node(node, id, one_year);
            f.end();
        }
    }

    void read_node(const Json& item, AxisId axis, bool one_year) {
        Fields f(refusal_, item);
        const Length joint = f.length("joint");
        const auto [major, minor] = diameters(f);
        Place place;
        const auto& at = f.list("at", true);
        if (at.size() == 3)
            place = {f.length_of(at[0], "at"), f.length_of(at[1], "at"), f.length_of(at[2], "at")};
        else
            refusal_.add("error.file.place", {{"key", std::string("at")}}, item);
        Node& node = builder_.add_node(joint, major, minor, place);
        const std::uint32_t index = index_of(node.id);
        note_place(name_of(node_id(axis, index)), item);
        node.rank = static_cast<int>(f.whole("rank", -1, 1, index % 2 == 1 ? 1 : -1));
        node.tendril_class = static_cast<int>(f.whole("tendril_class", 0, 2, 0));
        node.tendril = f.word<Tendril>("tendril", Tendril::none);
        node.bunch = f.word<Bunch>("bunch", Bunch::none);
        node.lateral = f.word<Lateral>("lateral", Lateral::none);
        node.harm = f.word<Harm>("harm", Harm::none);
        node.removed = f.yes("removed", false);
        if (f.left_out("buds")) {
            if (one_year) add_default_buds(index);
        } else {
            const auto& buds = f.list("buds", true);
            if (buds.size() > highest_bud_slot + 1)
                return refusal_.add("error.file.many-buds",
                                    {{"part", name_of(node_id(axis, index))}, {"most", Count{highest_bud_slot + 1}}},
                                    item);
            for (const Json& bud : buds) read_bud(bud);
        }
        f.end();
    }

    void add_default_buds(std::uint32_t index) {
        if (index > 0) {
            builder_.add_bud(BudKind::node, index % 2 == 1 ? Points::outward : Points::inward);
        } else {
            builder_.add_bud(BudKind::crown);
            builder_.add_bud(BudKind::crown);
        }
    }

    void read_bud(const Json& item) {
        Fields f(refusal_, item);
        const BudKind kind = f.word<BudKind>("kind");
        const Points points = f.word<Points>("points", Points::outward);
        Bud& bud = builder_.add_bud(kind, points);
        bud.harmed = f.yes("harmed", false);
        if (!f.left_out("alive")) {
            const auto& alive = f.list("alive", true);
            for (const Json& one : alive)
                if (!one.is(Json::Kind::boolean)) refusal_.add("error.file.alive", {}, one);
            if (alive.size() != 3) return refusal_.add("error.file.alive", {}, item);
            bud.primary = alive[0].flag;
            bud.secondary = alive[1].flag;
            bud.tertiary = alive[2].flag;
        }
        f.end();
    }

    std::pair<Length, Length> diameters(Fields& f) {
        const auto& d = f.list("d", true);
        if (d.size() == 2) return {f.length_of(d[0], "d"), f.length_of(d[1], "d")};
        refusal_.add("error.file.diameters", {{"key", std::string("d")}}, f.object());
        return {};
    }

    void read_wounds() {
        for (const Json& item : fields_.list("wounds", false)) {
            Fields f(refusal_, item);
            Wound w;
            w.id = f.row<struct WoundTag>('c', "id");
            w.axis = f.axis("axis");
            w.node = f.node("node");
            w.beyond = f.length("beyond");
            std::tie(w.major, w.minor) = diameters(f);
            w.wood_age = static_cast<int>(f.whole("wood_age", 1, 200));
            w.winter = static_cast<int>(f.whole("winter", 1, 200));
            w.tool = f.word<Tool>("tool");
            w.tilt = {f.decimal("tilt", 3, 0)};
            w.protected_face = f.yes("protected", false);
            f.end();
            note_place(name_of(w.id), item);
            builder_.vine.wounds.push_back(w);
        }
    }

    void read_laid() {
        for (const Json& item : fields_.list("laid", false)) {
            Fields f(refusal_, item);
            Laid l;
            l.axis = f.axis("axis");
            l.winter = static_cast<int>(f.whole("winter", 0, 200));
            l.side = f.word<Side>("side");
            const std::int32_t tenths = f.decimal("wraps", 1, 0);
            if (tenths % 5 != 0 || tenths < 0 || tenths > 30)
                refusal_.add("error.file.wraps", {}, f.left_out("wraps") ? item : *item.find("wraps"));
            l.half_wraps = tenths / 5;
            l.strain = {f.decimal("strain_percent", 4, 0)};
            l.worst = f.node("worst");
            l.state = f.word<LaidState>("state", LaidState::held);
            f.end();
            builder_.vine.laid.push_back(l);
        }
    }

    void read_ties() {
        for (const Json& item : fields_.list("ties", false)) {
            Fields f(refusal_, item);
            Tie t;
            t.id = f.row<struct TieTag>('t', "id");
            t.node = f.node("node");
            t.beyond = f.length("beyond");
            t.winter = static_cast<int>(f.whole("winter", 0, 200));
            t.tight = f.yes("tight", false);
            t.state = f.word<TieState>("state", TieState::on);
            f.end();
            note_place(name_of(t.id), item);
            builder_.vine.ties.push_back(t);
        }
    }

    void read_brush() {
        for (const Json& item : fields_.list("brush", false)) {
            Fields f(refusal_, item);
            Brush b;
            b.id = f.row<struct BrushTag>('b', "id");
            b.node = f.node("node");
            b.hanging = f.yes("hanging", false);
            f.end();
            note_place(name_of(b.id), item);
            builder_.vine.brush.push_back(b);
        }
    }

    void read_origin(VineFile& file) {
        const Json* code = fields_.optional("code");
        if (code && !code->is(Json::Kind::null)) file.code = fields_.text_of(*code, "code", 40);
        if (const Json* from = fields_.optional("pruned_from")) {
            const std::string text = fields_.text_of(*from, "pruned_from", 40);
            std::uint64_t hash = 0;
            const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), hash, 16);
            const bool digits = text.size() == 16 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
            if (!digits || fault != std::errc{} || end != text.data() + text.size())
                refusal_.add("error.file.hash", {{"key", std::string("pruned_from")}}, *from);
            file.pruned_from = hash;
        }
        if (const Json* plan = fields_.optional("plan")) {
            file.plan = fields_.text_of(*plan, "plan", longest_plan_text);
            auto read = parse_plan(file.plan);
            if (!read) {
                read.error().where = {refusal_.source(), plan->line, plan->column, read.error().where.step};
                refusal_.add(std::move(read.error()));
            } else {
                file.plan = print_plan(*read);
            }
        }
        file.title = fields_.text("title", longest_free_text, "");
        file.note = fields_.text("note", longest_free_text, "");
    }
};

} // namespace

Result<VineFile> read_vine_file(std::string_view text, const std::string& source) {
    auto root = read_json(text, source);
    if (!root) return failure(std::move(root.error()));
    Refusal refusal(source);
    return Reader(refusal, *root).read();
}

Result<VineFile> load_vine_file(const std::string& path) {
    auto text = read_file(path, largest_json);
    if (!text) return failure(std::move(text.error()));
    return read_vine_file(*text, path);
}

} // namespace spurwright::io
