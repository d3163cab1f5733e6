#include "sim/vine/canonical_text.h"

#include <charconv>

#include "sim/core/hash.h"

namespace spurwright {
namespace {

class Line {
public:
    explicit Line(std::string& out, std::string_view table) : out_(out) { out_ += table; }
    ~Line() { out_ += '\n'; }
    Line(const Line&) = delete;
    Line& operator=(const Line&) = delete;

    Line& word(std::string_view text) {
        out_ += ' ';
        out_ += text;
        return *this;
    }
    Line& number(std::int64_t value) {
        char digits[24];
        const auto [end, fault] = std::to_chars(digits, digits + sizeof digits, value);
        static_cast<void>(fault);
        return word({digits, static_cast<std::size_t>(end - digits)});
    }
    template <class Tag>
    Line& number(Measure<Tag> m) { return number(std::int64_t{m.count}); }
    Line& number(bool value) { return word(value ? "1" : "0"); }
    template <class Tag>
    Line& name(Id<Tag> id) { return word(name_of(id)); }
    template <class E>
    Line& kind(E value) { return word(word_of(value)); }
    Line& number(const std::optional<Length>& l) { return l ? number(*l) : word("-"); }

private:
    std::string& out_;
};

}  // namespace

std::string canonical_text(const Vine& v) {
    std::string out = "spurwright-vine 1\n";
    out.reserve(64 * (v.nodes.size() + v.axes.size()) + 40 * v.buds.size() + 512);
    Line(out, "vine").number(std::int64_t{v.recipe}).number(static_cast<std::int64_t>(v.seed)).kind(v.system).word(v.variety)
        .number(std::int64_t{v.winter}).number(v.spacing).number(v.row_spacing).kind(v.vigour).number(v.frost).name(v.graft)
        .name(v.head).name(v.crown_left).name(v.crown_right).number(v.origin_left).number(v.origin_right)
        .number(std::int64_t{v.capacity}).number(v.reserves).number(v.last_prunings).number(v.last_yield);
    for (const Wire& w : v.wires) Line(out, "wire").name(w.id).kind(w.kind).number(w.height).number(w.half_gap).kind(w.state);
    for (const Side side : both_sides)
        Line(out, "neighbour").kind(side).kind(v.neighbour(side).kind).number(v.neighbour(side).reach);
    for (const Axis& a : v.axes)
        Line(out, "axis").name(a.id).name(a.parent).number(std::int64_t{a.born}).number(std::int64_t{a.order}).kind(a.side)
            .number(a.ripe).kind(a.grew).kind(a.end).kind(a.state).number(a.removed).kind(a.mark);
    for (const Node& n : v.nodes)
        Line(out, "node").name(n.id).number(n.joint).number(n.major).number(n.minor).number(n.place.x).number(n.place.y)
            .number(n.place.z).number(std::int64_t{n.rank}).number(std::int64_t{n.tendril_class}).kind(n.tendril).kind(n.bunch)
            .kind(n.lateral).kind(n.harm).number(n.removed);
    for (const Bud& b : v.buds)
        Line(out, "bud").name(b.id).kind(b.kind).number(b.primary).number(b.secondary).number(b.tertiary).kind(b.points).number(b.harmed);
    for (const Wound& w : v.wounds)
        Line(out, "wound").name(w.id).name(w.axis).name(w.node).number(w.beyond).number(w.major).number(w.minor)
            .number(std::int64_t{w.wood_age}).number(std::int64_t{w.winter}).kind(w.tool).number(w.tilt).number(w.protected_face);
    for (const Laid& l : v.laid)
        Line(out, "laid").name(l.axis).number(std::int64_t{l.winter}).kind(l.side).number(std::int64_t{l.half_wraps})
            .number(l.strain).name(l.worst).kind(l.state);
    for (const Tie& t : v.ties)
        Line(out, "tie").name(t.id).name(t.node).number(t.beyond).number(std::int64_t{t.winter}).number(t.tight).kind(t.state);
    for (const Brush& b : v.brush) Line(out, "brush").name(b.id).name(b.node).number(b.hanging);
    return out;
}

std::uint64_t vine_hash(const Vine& vine) { return hash_of(canonical_text(vine)); }

}  // namespace spurwright
