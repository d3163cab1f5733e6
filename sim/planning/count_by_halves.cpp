#include "sim/planning/count_by_halves.h"

#include <algorithm>
#include <tuple>

#include "sim/planning/pieces.h"

namespace spurwright::planning {
namespace {

constexpr std::size_t most_kinds = 8;
constexpr std::int32_t out_of_reach = 1 << 20;

// One way to set one side, or many that are worth the same: a cane with its cut node, a spur with its buds.
struct Half {
    std::int32_t worth = 0;
    int fruiting = 0;
    int buds = 0;          // on the spur
    std::size_t kind = 0;  // of the cane, as the pair term sees it
    bool hard = false;     // held under the hard cap by this side alone
    std::uint32_t count = 1;
};
using Halves = std::array<std::vector<Half>, 2>;  // [load]

// A half in one word, so that sorting brings the same buds together, the lower worth first.
constexpr int most_fruiting = 1'023;
constexpr std::int32_t worth_bias = highest_sum;
static_assert(2 * highest_sum < 1 << 14 && most_kinds <= 8 && most_spur_buds < 4);

constexpr std::uint32_t key_of(const Half& h) {
    const auto bits = [](auto value) { return static_cast<std::uint32_t>(value); };
    return (bits(h.kind) << 1 | bits(h.hard)) << 26 | (bits(h.fruiting) << 2 | bits(h.buds)) << 14 |
           bits(h.worth + worth_bias);
}
constexpr Half half_of(std::uint32_t key) {
    return {static_cast<std::int32_t>(key & 0x3fff) - worth_bias,
            static_cast<int>(key >> 16 & 0x3ff),
            static_cast<int>(key >> 14 & 3),
            key >> 27,
            (key >> 26 & 1) != 0,
            1};
}
constexpr std::uint32_t buds_and_kind(std::uint32_t key) { return key >> 14; }

// All halves that hold the same buds, counted from each worth upward.
struct Row {
    Half lowest;
    std::vector<std::uint64_t> from;  // by worth above the lowest; the last is 0

    std::uint64_t at_least(std::int32_t worth) const {
        const std::int32_t row = std::clamp(worth - lowest.worth, 0, static_cast<std::int32_t>(from.size()) - 1);
        return from[static_cast<std::size_t>(row)];
    }
};
using Rows = std::array<std::vector<Row>, 2>;  // [load]

std::vector<Half> merged(const std::vector<std::uint32_t>& sorted) {
    std::vector<Half> halves;
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        if (i > 0 && sorted[i] == sorted[i - 1])
            ++halves.back().count;
        else
            halves.push_back(half_of(sorted[i]));
    }
    return halves;
}

std::vector<Row> rows_of(const std::vector<std::uint32_t>& sorted) {
    std::vector<Row> rows;
    for (std::size_t first = 0, last = 0; first < sorted.size(); first = last) {
        while (last < sorted.size() && buds_and_kind(sorted[last]) == buds_and_kind(sorted[first])) ++last;
        Row row{half_of(sorted[first]), {}};
        row.from.assign(std::size_t{sorted[last - 1] - sorted[first]} + 2, 0);
        for (std::size_t i = first; i < last; ++i) ++row.from[sorted[i] - sorted[first]];
        for (std::size_t i = row.from.size() - 1; i-- > 0;) row.from[i] += row.from[i + 1];
        rows.push_back(std::move(row));
    }
    return rows;
}

struct Counts {
    std::uint64_t at_least = 0, above = 0;
};

class HalfCount {
public:
    HalfCount(const Tables& tables, int points) : tables_(tables), points_(points) {
        for (const Side side : both_sides) {
            canes_[at(side)] = laid_canes(tables, side);
            for (const LaidCane& cane : canes_[at(side)]) ways_[at(side)].push_back(spur_ways(tables, side, cane.row));
        }
    }

    std::optional<Tally> run() {
        check_tables(tables_);
        if (tables_.single || tables_.fruiting_totals > most_fruiting || !sort_kinds()) return std::nullopt;
        write_needs();
        Counts all = meet(left_halves(every, every), right_rows(every, every));
        for (std::uint16_t z = 0; z <= tables_.count(); ++z) {  // one axis laid to both sides, or no cane at all
            const std::uint16_t row = z == tables_.count() ? no_piece : z;
            if (!lies(row, Side::left) || !lies(row, Side::right)) continue;
            take_off(all, meet(left_halves(row, every), right_rows(row, every)));
        }
        for (std::uint16_t z = 0; z < tables_.count(); ++z) {  // a spur of one side, laid to the other
            const Candidate& c = tables_.candidates[z];
            if (c.spur.empty() || !c.lies(other(c.side))) continue;
            if (c.side == Side::left)
                take_off(all, meet(left_halves(every, z), right_rows(z, every)));
            else
                take_off(all, meet(left_halves(z, every), right_rows(every, z)));
        }
        for (std::uint16_t x = 0; x < tables_.count(); ++x)  // both at once were taken off twice
            for (std::uint16_t y = 0; y < tables_.count(); ++y) {
                const Candidate &left = tables_.candidates[x], &right = tables_.candidates[y];
                if (left.side != Side::left || right.side != Side::right || left.spur.empty() || right.spur.empty())
                    continue;
                if (!left.lies(Side::right) || !right.lies(Side::left)) continue;
                put_back(all, x, y);
            }
        return Tally{counted(), all.above, all.at_least - all.above};
    }

private:
    struct Need {
        std::int32_t at, above;
    };
    const Need& need_of(std::size_t hard, int on_spurs, int fruiting) const {
        const auto row = hard * spur_states + static_cast<std::size_t>(on_spurs);
        return needs_[row * static_cast<std::size_t>(tables_.fruiting_totals) + static_cast<std::size_t>(fruiting)];
    }

    static constexpr std::uint16_t every = 0xfffe;  // check_tables: no row is that high

    bool lies(std::uint16_t row, Side side) const { return row == no_piece || tables_.candidates[row].lies(side); }

    static void take_off(Counts& from, const Counts& some) {
        from.at_least -= some.at_least;
        from.above -= some.above;
    }

    // Canes that the pair term cannot tell apart are of one kind.
    bool sort_kinds() {
        const std::size_t n = tables_.candidates.size() + 1;
        for (const Side side : both_sides) {
            std::vector<std::size_t> first;  // a column or row of each kind
            const auto pair = [&](std::size_t own, std::size_t across) {
                return side == Side::left ? tables_.pair[own * n + across] : tables_.pair[across * n + own];
            };
            for (const LaidCane& cane : canes_[at(side)]) {
                const std::size_t own = tables_.column(cane.row);
                std::size_t kind = 0;
                for (; kind < first.size(); ++kind) {
                    bool same = true;
                    for (std::size_t k = 0; k < n && same; ++k) same = pair(own, k) == pair(first[kind], k);
                    if (same) break;
                }
                if (kind == most_kinds) return false;
                if (kind == first.size()) first.push_back(own);
                kinds_[at(side)].push_back(kind);
            }
            firsts_[at(side)] = std::move(first);
        }
        return true;
    }

    // What both sides must be worth together, by the buds they hold; caps as in the count by pairs.
    void write_needs() {
        for (const bool hard : {false, true})
            for (int s = 0; s < spur_states; ++s)
                for (int f = 0; f < tables_.fruiting_totals; ++f) {
                    int cap = hard ? tables_.hard_cap : no_cap;
                    if (f + s >= tables_.over_from) cap = std::min(cap, tables_.soft_cap);
                    const std::int32_t need = points_ - tables_.constant - tables_.totals_of(f, s);
                    needs_.push_back({cap >= points_ ? need : out_of_reach, cap > points_ ? need + 1 : out_of_reach});
                }
    }

    // Every way to set a side, or those with one cane, or with one spur, or with both; sorted.
    const std::vector<std::uint32_t>& list(Side side, std::size_t load, std::uint16_t cane, std::uint16_t spur) {
        keys_.clear();
        const auto& canes = canes_[at(side)];
        for (std::size_t a = 0; a < canes.size(); ++a) {
            if (cane != every && canes[a].row != cane) continue;
            for (const SpurWay& way : ways_[at(side)][a]) {
                if (spur != every && way.row != spur) continue;
                const bool hard = canes[a].sucker || (way.buds == 0 && bare_without_spur(tables_, side, canes[a]));
                for (int i = 0; i < canes[a].cuts; ++i)
                    keys_.push_back(key_of({canes[a].worth[load][i] + way.worth, canes[a].first_buds + i, way.buds,
                                            kinds_[at(side)][a], hard, 1}));
            }
        }
        std::stable_sort(keys_.begin(), keys_.end());
        return keys_;
    }

    const Halves& left_halves(std::uint16_t cane, std::uint16_t spur) {
        for (std::size_t load = 0; load < 2; ++load) left_[load] = merged(list(Side::left, load, cane, spur));
        return left_;
    }

    const Rows& right_rows(std::uint16_t cane, std::uint16_t spur) {
        for (std::size_t load = 0; load < 2; ++load) right_[load] = rows_of(list(Side::right, load, cane, spur));
        return right_;
    }

    Counts meet(const Halves& left, const Rows& right) const {
        Counts counts;
        for (std::size_t load = 0; load < 2; ++load)
            for (const Half& half : left[load])
                for (const Row& row : right[load]) {
                    const int fruiting = half.fruiting + row.lowest.fruiting, on_spurs = half.buds + row.lowest.buds;
                    if (at(fruiting + on_spurs < tables_.enough_from ? Load::under : Load::enough) != load) continue;
                    const std::size_t hard = half.hard || row.lowest.hard ? 1 : 0;
                    const Need& need = need_of(hard, on_spurs, fruiting);
                    const std::int32_t have = half.worth + pair_of(half.kind, row.lowest.kind);
                    counts.at_least += half.count * row.at_least(need.at - have);
                    counts.above += half.count * row.at_least(need.above - have);
                }
        return counts;
    }

    // Left cane y beside its spur x, right cane x beside its spur y: few enough to go through one by one.
    void put_back(Counts& counts, std::uint16_t x, std::uint16_t y) const {
        const Candidate &left = tables_.candidates[y], &right = tables_.candidates[x];
        const std::size_t hard = left.sucker || right.sucker ? 1 : 0;
        const std::int32_t others = tables_.pair_of(y, x) + tables_.beside_of(x, y) + tables_.beside_of(y, x);
        for (std::size_t l = 0; l < right.spur.size(); ++l)
            for (std::size_t m = 0; m < left.spur.size(); ++m) {
                const int on_spurs = static_cast<int>(l + m) + 2;
                const std::int32_t spurs = others + right.spur[l] + left.spur[m];
                for (std::size_t i = 0; i < left.cane[0][0].size(); ++i)
                    for (std::size_t j = 0; j < right.cane[1][0].size(); ++j) {
                        const int fruiting = left.first_buds + right.first_buds + static_cast<int>(i + j);
                        const std::size_t load =
                            at(fruiting + on_spurs < tables_.enough_from ? Load::under : Load::enough);
                        const Need& need = need_of(hard, on_spurs, fruiting);
                        const std::int32_t have = spurs + left.cane[0][load][i] + right.cane[1][load][j];
                        counts.at_least += have >= need.at;
                        counts.above += have >= need.above;
                    }
            }
    }

    std::int32_t pair_of(std::size_t left, std::size_t right) const {
        return tables_.pair[firsts_[0][left] * (tables_.candidates.size() + 1) + firsts_[1][right]];
    }

    std::uint64_t counted() const {
        std::uint64_t sum = 0;
        for (std::size_t a = 0; a < canes_[0].size(); ++a)
            for (std::size_t b = 0; b < canes_[1].size(); ++b) {
                const LaidCane &left = canes_[0][a], &right = canes_[1][b];
                if (!may_stand_together(tables_, left, right)) continue;
                sum += static_cast<std::uint64_t>(left.cuts) * static_cast<std::uint64_t>(right.cuts) *
                       free_ways(Side::left, a, right) * free_ways(Side::right, b, left);
            }
        return sum;
    }

    std::uint64_t free_ways(Side side, std::size_t own, const LaidCane& across) const {
        const std::uint64_t all = ways_[at(side)][own].size();
        if (across.row == no_piece || tables_.candidates[across.row].side != side) return all;
        return all - tables_.candidates[across.row].spur.size();
    }

    const Tables& tables_;
    int points_;
    std::array<std::vector<LaidCane>, 2> canes_;             // [side]
    std::array<std::vector<std::vector<SpurWay>>, 2> ways_;  // [side][cane]
    std::array<std::vector<std::size_t>, 2> kinds_;          // [side][cane]
    std::array<std::vector<std::size_t>, 2> firsts_;         // [side][kind]: a column of the pair matrix
    std::vector<Need> needs_;                                // [hard][S][F]
    std::vector<std::uint32_t> keys_;
    Halves left_;
    Rows right_;
};

}  // namespace

std::optional<Tally> tally_by_halves(const Tables& tables, int points) { return HalfCount(tables, points).run(); }

}  // namespace spurwright::planning
