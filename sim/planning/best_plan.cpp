#include "sim/planning/best_plan.h"

#include <algorithm>

#include "sim/planning/pieces.h"

namespace spurwright::planning {
namespace {

// Sums in 16-bit words, eight side by side: a full total is 1000, so nothing is lost (check_tables holds the limit),
// and the search asks only how good a pair of canes can be. Which choice it was is read back once, at the end.
using Word = std::int16_t;
constexpr int lanes = 8;
constexpr Word never = no_site;               // three of them and every real worth still fit a word
constexpr std::int32_t not_reached = -5'000;  // below every sum of a choice, above every sum with a `never` in it

constexpr int block_floor(int n) { return n / lanes * lanes; }
constexpr int block_ceiling(int n) { return (n + lanes - 1) / lanes * lanes; }

struct Block {
    alignas(16) Word of[lanes];
};

// of[k] = max(of[k], a[k] + plus)
inline void raise(Block& block, const Word* a, Word plus) {
    for (int k = 0; k < lanes; ++k) {
        const auto sum = static_cast<Word>(a[k] + plus);
        block.of[k] = sum > block.of[k] ? sum : block.of[k];
    }
}

// of[k] = max(of[k], a[k] + b[k] + plus)
inline void raise(Block& block, const Word* a, const Word* b, Word plus) {
    for (int k = 0; k < lanes; ++k) {
        const auto sum = static_cast<Word>(a[k] + b[k] + plus);
        block.of[k] = sum > block.of[k] ? sum : block.of[k];
    }
}

constexpr std::size_t class_count = 4;
constexpr std::size_t class_of(bool over, bool hard) { return (over ? 1u : 0u) | (hard ? 2u : 0u); }

// The best worth of both spurs together by the buds they hold, apart for plans that leave a side bare or lay a sucker.
struct States {
    std::array<std::array<Word, spur_states>, 2> worth;  // [hard][S]
    std::array<bool, 2> any{};
};

class Search {
public:
    explicit Search(const Tables& tables)
        : tables_(tables), left_(laid_canes(tables, Side::left)), right_(laid_canes(tables, Side::right)) {
        check_tables(tables);
        write_words();
        write_totals();
        for (const LaidCane& cane : left_) left_sites_.push_back(sites_beside(tables, Side::left, cane.row));
        for (const LaidCane& cane : right_) right_sites_.push_back(sites_beside(tables, Side::right, cane.row));
    }

    std::optional<Ranked> run(Bound bound) {
        int sure = not_reached;  // points that some choice has
        if (bound == Bound::on) {
            const auto [a, b] = most_promising();
            if (a < left_.size()) {
                look_at(a, b);
                sure = best_points();
                best_.fill({});
            }
        }
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b) {
                if (!may_stand_together(tables_, left_[a], right_[b])) continue;
                if (bound == Bound::on) {
                    const std::int32_t highest = highest_of(a, b);
                    const bool hard = left_[a].sucker || right_[b].sucker;
                    if ((hard ? std::min<int>(highest, tables_.hard_cap) : highest) < sure) continue;
                    if (highest <= best_points()) continue;  // at most a tie, and the earlier pair stands first
                }
                look_at(a, b);
            }
        return read_back();
    }

private:
    struct Found {
        std::int32_t sum = not_reached;
        std::size_t left = 0, right = 0;
    };

    static constexpr std::size_t room = lanes;  // `never` on both sides of a cane's words

    const Word* right_words(std::size_t load, std::size_t b) const {
        return right_words_[load].data() + b * right_stride_ + room;
    }
    const Word* left_words(std::size_t load, std::size_t a) const {
        return left_words_[load].data() + a * left_stride_;
    }
    const Word* totals(bool over, std::size_t load, int on_spurs) const {
        return totals_.data() + ((over ? 2u : 0u) + load) * totals_stride_ * spur_states +
               static_cast<std::size_t>(on_spurs) * totals_stride_;
    }

    void write_words() {
        int left_most = 1, right_most = 1;
        for (const LaidCane& cane : left_) left_most = std::max(left_most, cane.cuts);
        for (const LaidCane& cane : right_) right_most = std::max(right_most, cane.cuts);
        left_stride_ = static_cast<std::size_t>(left_most);
        right_stride_ = static_cast<std::size_t>(block_ceiling(right_most)) + 2 * room;
        for (std::size_t load = 0; load < 2; ++load) {
            left_words_[load].assign(left_.size() * left_stride_, never);
            right_words_[load].assign(right_.size() * right_stride_, never);
            for (std::size_t a = 0; a < left_.size(); ++a)
                for (int i = 0; i < left_[a].cuts; ++i)
                    left_words_[load][a * left_stride_ + static_cast<std::size_t>(i)] =
                        static_cast<Word>(left_[a].worth[load][i]);
            for (std::size_t b = 0; b < right_.size(); ++b)
                for (int j = 0; j < right_[b].cuts; ++j)
                    right_words_[load][b * right_stride_ + room + static_cast<std::size_t>(j)] =
                        static_cast<Word>(right_[b].worth[load][j]);
            bins_[load].assign(static_cast<std::size_t>(block_ceiling(left_most + right_most)) + lanes, never);
        }
    }

    // One row a state for each part of the totals that a class and a load hold; `never` outside it.
    void write_totals() {
        totals_stride_ = static_cast<std::size_t>(tables_.fruiting_totals + 2 * lanes);
        totals_.assign(4 * spur_states * totals_stride_, never);
        for (int s = 0; s < spur_states; ++s)
            for (int f = 0; f < tables_.fruiting_totals; ++f) {
                const bool over = f + s >= tables_.over_from;
                const std::size_t load = at(f + s < tables_.enough_from ? Load::under : Load::enough);
                const std::int32_t worth = tables_.totals_of(f, s);
                highest_total_ = std::max(highest_total_, worth);
                totals_[((over ? 2u : 0u) + load) * totals_stride_ * spur_states +
                        static_cast<std::size_t>(s) * totals_stride_ + static_cast<std::size_t>(f)] =
                    static_cast<Word>(worth);
            }
    }

    std::int32_t highest_of(std::size_t a, std::size_t b) const {
        return left_[a].highest + left_sites_[a].highest + right_[b].highest + right_sites_[b].highest +
               tables_.pair_of(left_[a].row, right_[b].row) + highest_total_ + tables_.constant;
    }

    std::pair<std::size_t, std::size_t> most_promising() const {
        std::pair<std::size_t, std::size_t> pair{left_.size(), right_.size()};
        std::int32_t most = never;
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b)
                if (may_stand_together(tables_, left_[a], right_[b]) && !left_[a].sucker && !right_[b].sucker &&
                    highest_of(a, b) > most) {
                    most = highest_of(a, b);
                    pair = {a, b};
                }
        return pair;
    }

    States states_of(std::size_t a, std::size_t b) const {
        States states;
        for (auto& row : states.worth) row.fill(never);
        const bool sucker = left_[a].sucker || right_[b].sucker;
        const bool left_bare = bare_without_spur(tables_, Side::left, left_[a]);
        const bool right_bare = bare_without_spur(tables_, Side::right, right_[b]);
        std::array<Word, most_spur_buds + 1> left, right;
        for (std::size_t l = 0; l <= most_spur_buds; ++l) {
            left[l] = static_cast<Word>(left_sites_[a].worth(l, right_[b].row));
            right[l] = static_cast<Word>(right_sites_[b].worth(l, left_[a].row));
        }
        for (std::size_t l = 0; l <= most_spur_buds; ++l)
            for (std::size_t m = 0; m <= most_spur_buds; ++m) {
                if (left[l] == never || right[m] == never || !may_both_be_kept(tables_, l, m)) continue;
                const std::size_t hard = sucker || (left_bare && l == 0) || (right_bare && m == 0) ? 1 : 0;
                Word& worth = states.worth[hard][l + m];
                worth = std::max(worth, static_cast<Word>(left[l] + right[m]));
                states.any[hard] = true;
            }
        return states;
    }

    // Best worth of both canes by the buds they hold, over the bins that this load can reach.
    void fold(std::size_t load, std::size_t a, std::size_t b, int from, int to) {
        const Word* left = left_words(load, a);
        const Word* right = right_words(load, b);
        const int left_cuts = left_[a].cuts, right_cuts = right_[b].cuts;
        for (int t = block_floor(from); t < to; t += lanes) {
            Block block;
            for (Word& w : block.of) w = never;
            const int first = std::max(0, t - right_cuts + 1), last = std::min(left_cuts - 1, t + lanes - 1);
            for (int i = first; i <= last; ++i) raise(block, right + (t - i), left[i]);
            std::copy(block.of, block.of + lanes, bins_[load].data() + t);
        }
    }

    void look_at(std::size_t a, std::size_t b) {
        const int bins = left_[a].cuts + right_[b].cuts - 1;
        const int fewest = left_[a].first_buds + right_[b].first_buds;
        const int enough = tables_.enough_from - fewest,
                  over = tables_.over_from - fewest;  // as bins, with no spur bud
        fold(at(Load::under), a, b, 0, std::min(bins, enough));
        fold(at(Load::enough), a, b, std::max(0, enough - (spur_states - 1)), bins);

        const States states = states_of(a, b);
        const std::int32_t others = tables_.constant + tables_.pair_of(left_[a].row, right_[b].row);
        for (const bool hard : {false, true}) {
            if (!states.any[hard ? 1 : 0]) continue;
            for (const bool heavy : {false, true}) {
                Block block;
                for (Word& w : block.of) w = never;
                for (int s = 0; s < spur_states; ++s) {
                    const Word worth = states.worth[hard ? 1 : 0][static_cast<std::size_t>(s)];
                    if (worth == never) continue;
                    const int lowest = heavy ? over - s : 0, highest = heavy ? bins : std::min(bins, over - s);
                    join(block, at(Load::under), heavy, s, worth, fewest, lowest, std::min(highest, enough - s));
                    join(block, at(Load::enough), heavy, s, worth, fewest, std::max(lowest, enough - s), highest);
                }
                const std::int32_t sum = *std::max_element(block.of, block.of + lanes) + others;
                Found& found = best_[class_of(heavy, hard)];
                if (sum > found.sum) found = {sum, a, b};
            }
        }
    }

    void join(Block& block, std::size_t load, bool over, int on_spurs, Word worth, int fewest, int from, int to) const {
        const Word* row = totals(over, load, on_spurs) + fewest;
        for (int t = block_floor(std::max(0, from)); t < to; t += lanes)
            raise(block, bins_[load].data() + t, row + t, worth);
    }

    int cap_of_class(std::size_t kind) const {
        int cap = no_cap;
        if (kind & 1u) cap = std::min(cap, tables_.soft_cap);
        if (kind & 2u) cap = std::min(cap, tables_.hard_cap);
        return cap;
    }

    int best_points() const {
        int points = not_reached;
        for (std::size_t kind = 0; kind < class_count; ++kind)
            points = std::max(points, std::min<int>(best_[kind].sum, cap_of_class(kind)));
        return points;
    }

    // The lowest choice with the largest sum of its class, of the classes that come out best.
    std::optional<Ranked> read_back() const {
        std::optional<Ranked> best;
        for (std::size_t kind = 0; kind < class_count; ++kind) {
            const Found& found = best_[kind];
            if (found.sum <= not_reached) continue;
            const int points = std::min<int>(found.sum, cap_of_class(kind));
            if (best && (points < best->points || (points == best->points && found.sum < best->sum))) continue;
            const Ranked now{lowest_pick(found, kind), points, found.sum};
            if (!best || better(now, *best)) best = now;
        }
        return best;
    }

    Pick lowest_pick(const Found& found, std::size_t kind) const {
        const LaidCane &left = left_[found.left], &right = right_[found.right];
        const States states = states_of(found.left, found.right);
        const std::int32_t others = tables_.constant + tables_.pair_of(left.row, right.row);
        const auto& worth = states.worth[kind & 2u ? 1 : 0];
        for (int i = 0; i < left.cuts; ++i)
            for (int j = 0; j < right.cuts; ++j) {
                const int fruiting = left.first_buds + i + right.first_buds + j;
                for (int s = 0; s < spur_states; ++s) {
                    const bool over = fruiting + s >= tables_.over_from;
                    if (worth[static_cast<std::size_t>(s)] == never || over != ((kind & 1u) != 0)) continue;
                    const std::size_t load = at(fruiting + s < tables_.enough_from ? Load::under : Load::enough);
                    if (left.worth[load][i] + right.worth[load][j] + worth[static_cast<std::size_t>(s)] +
                            tables_.totals_of(fruiting, s) + others ==
                        found.sum)
                        return lowest_spurs(found, kind, i, j);
                }
            }
        return {};  // not reached: some cut nodes gave this sum
    }

    Pick lowest_spurs(const Found& found, std::size_t kind, int i, int j) const {
        const LaidCane &left = left_[found.left], &right = right_[found.right];
        for (const SpurWay& x : spur_ways(tables_, Side::left, left.row)) {
            if (x.row != no_piece && x.row == right.row) continue;
            for (const SpurWay& y : spur_ways(tables_, Side::right, right.row)) {
                if ((y.row != no_piece && y.row == left.row) || !may_both_be_kept(tables_, x.buds, y.buds)) continue;
                const Pick pick{
                    left.row, right.row, static_cast<std::uint16_t>(i), static_cast<std::uint16_t>(j), x.row, x.buds,
                    y.row,    y.buds};
                const bool over = fruiting_buds(tables_, pick) + planning::spur_buds(pick) >= tables_.over_from;
                const bool hard = left.sucker || right.sucker ||
                                  (x.buds == 0 && bare_without_spur(tables_, Side::left, left)) ||
                                  (y.buds == 0 && bare_without_spur(tables_, Side::right, right));
                if (class_of(over, hard) == kind && sum_of(tables_, pick) == found.sum) return pick;
            }
        }
        return {};  // not reached: some spurs gave this sum
    }

    const Tables& tables_;
    std::vector<LaidCane> left_, right_;
    std::vector<Sites> left_sites_, right_sites_;
    std::array<std::vector<Word>, 2> left_words_, right_words_;  // [load], a stride each cane
    std::array<std::vector<Word>, 2> bins_;                      // [load], of the pair in hand
    std::vector<Word> totals_;                                   // [over][load][S], a stride each
    std::size_t left_stride_ = 0, right_stride_ = 0, totals_stride_ = 0;
    std::int32_t highest_total_ = never;
    std::array<Found, class_count> best_{};
};

}  // namespace

std::optional<Ranked> best_pick(const Tables& tables, Bound bound) { return Search(tables).run(bound); }

}  // namespace spurwright::planning
