#include "scenarios/quiz/set_out.h"

#include <algorithm>
#include <string>

#include "sim/core/random.h"
#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

constexpr Length up_the_cane{280'000};  // from its base: above the head's tangle, where canes stand apart; our choice

}  // namespace

TapedPlace tape_place(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    std::uint32_t last = 0;
    Length far;
    for (std::uint32_t i = 1; i < nodes.size() && !nodes[i].removed; ++i) {
        if (i > 1 && far >= up_the_cane) break;
        far += nodes[i].joint;
        last = i;
    }
    if (last == 0) return {nodes[0].id, {}};
    return {nodes[last - 1].id, Length{nodes[last].joint.count / 2}};
}

Length along_row(const Vine& vine, const TapedPlace& place) {
    const Place inner = vine.find(place.node)->place;
    const Node* next = vine.find(node_id(axis_of(place.node), index_of(place.node) + 1));
    return next ? Length{(inner.x.count + next->place.x.count) / 2} : inner.x;
}

std::optional<std::vector<Option>> set_out(std::vector<Option> options, std::size_t count, std::size_t rank, std::uint64_t seed) {
    std::stable_sort(options.begin(), options.end(), [](const Option& a, const Option& b) { return a.along_row < b.along_row; });
    std::vector<std::size_t> keys;
    std::optional<std::size_t> tempting;
    for (std::size_t i = 0; i < options.size(); ++i) {
        if (options[i].good && i >= rank && options.size() - 1 - i >= count - 1 - rank) keys.push_back(i);
        if (!options[i].good && (!tempting || options[i].points > options[*tempting].points)) tempting = i;
    }
    if (keys.empty() || !tempting || count < 2) return std::nullopt;
    const std::size_t key = keys[static_cast<std::size_t>(between(draw(seed, 1, 0), 0, static_cast<std::int32_t>(keys.size()) - 1))];
    if (*tempting < key ? rank == 0 : rank + 1 == count) return std::nullopt;  // no room on its side
    const auto some = [&](std::size_t from, std::size_t to, std::size_t wanted) {
        std::vector<std::size_t> rows;
        for (std::size_t i = from; i < to; ++i) rows.push_back(i);
        std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
            if ((a == *tempting) != (b == *tempting)) return a == *tempting;
            if (options[a].good != options[b].good) return options[b].good;  // few are right: else any answer would do
            return draw(seed, 2, static_cast<std::uint32_t>(a)) < draw(seed, 2, static_cast<std::uint32_t>(b));
        });
        rows.resize(std::min(rows.size(), wanted));
        return rows;
    };
    std::vector<std::size_t> rows = some(0, key, rank);
    rows.push_back(key);
    const std::vector<std::size_t> after = some(key + 1, options.size(), count - 1 - rank);
    rows.insert(rows.end(), after.begin(), after.end());
    std::stable_sort(rows.begin(), rows.end());
    std::vector<Option> shown;
    shown.reserve(rows.size());
    for (const std::size_t row : rows) shown.push_back(options[row]);
    return shown;
}

void call_by_digits(const Item& item, Told& told) {
    for (Named& named : told.arguments) {
        const auto* axis = std::get_if<AxisId>(&named.value);
        const auto* node = std::get_if<NodeId>(&named.value);
        if (!axis && !node) continue;
        const AxisId wood = axis ? *axis : axis_of(*node);
        for (std::size_t i = 0; i < item.places.size(); ++i)
            if (axis_of(item.places[i].node) == wood) {
                named.value = std::to_string(i + 1);
                break;
            }
    }
}

void fill_places(Item& item, const std::vector<Option>& shown) {
    std::optional<Tenths> worst_right, best_wrong;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        item.places.push_back(shown[i].place);
        if (shown[i].good) {
            item.accepted.push_back({static_cast<std::uint8_t>(i + 1)});
            worst_right = std::min(worst_right.value_or(shown[i].points), shown[i].points);
        } else {
            best_wrong = std::max(best_wrong.value_or(shown[i].points), shown[i].points);
        }
    }
    if (worst_right && best_wrong) item.margin = *worst_right - *best_wrong;
}

}  // namespace spurwright::quiz
