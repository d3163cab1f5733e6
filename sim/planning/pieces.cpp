#include "sim/planning/pieces.h"

#include <algorithm>

namespace spurwright::planning {

std::vector<LaidCane> laid_canes(const Tables& tables, Side side) {
    std::vector<LaidCane> canes;
    canes.reserve(tables.candidates.size() + 1);
    for (std::uint16_t row = 0; row < tables.count(); ++row) {
        const Candidate& c = tables.candidates[row];
        if (!c.lies(side)) continue;
        const auto& worth = c.cane[at(side)];
        LaidCane cane{row, c.sucker, c.cut_count(side), c.first_buds, {worth[0].data(), worth[1].data()}, worth[0][0]};
        for (const auto& load : worth)
            cane.highest = std::max(cane.highest, *std::max_element(load.begin(), load.end()));
        canes.push_back(cane);
    }
    const auto& none = tables.no_cane[at(side)];
    canes.push_back({no_piece, false, 1, 0, {&none[0], &none[1]}, std::max(none[0], none[1])});
    return canes;
}

std::vector<SpurWay> spur_ways(const Tables& tables, Side side, std::uint16_t cane) {
    std::vector<SpurWay> ways;
    ways.reserve(tables.candidates.size() * most_spur_buds + 1);
    for (std::uint16_t row = 0; row < tables.count(); ++row) {
        const Candidate& c = tables.candidates[row];
        if (c.side != side || row == cane) continue;
        const auto longest = static_cast<std::uint16_t>(c.spur.size());
        for (std::uint16_t buds = 1; buds <= longest; ++buds)
            ways.push_back({row, buds, c.spur[buds - 1u] + tables.beside_of(row, cane)});
    }
    ways.push_back({no_piece, 0, tables.no_spur[at(side)]});
    return ways;
}

Sites sites_beside(const Tables& tables, Side side, std::uint16_t cane) {
    Sites sites;
    sites.of[0][0] = {tables.no_spur[at(side)], no_piece};
    for (std::uint16_t row = 0; row < tables.count(); ++row) {
        const Candidate& c = tables.candidates[row];
        if (c.side != side || row == cane || c.spur.empty()) continue;
        const std::int32_t beside = tables.beside_of(row, cane);
        for (std::size_t l = 0; l < c.spur.size(); ++l) {
            const Site site{c.spur[l] + beside, row};
            auto& best = sites.of[l + 1];
            if (site.worth > best[0].worth) {
                best[1] = best[0];
                best[0] = site;
            } else if (site.worth > best[1].worth) {
                best[1] = site;
            }
        }
    }
    for (const auto& best : sites.of) sites.highest = std::max(sites.highest, best[0].worth);
    return sites;
}

}  // namespace spurwright::planning
