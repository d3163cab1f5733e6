// How long growth takes, as ratios: a season a node, and a whole history a node, against the floor kernel (a counter-
// based random number, library sines and cosines, one 64-byte record a node) timed in the same run. Also how the time
// grows with the number of vines. Never a test: prints, and fails only by not running.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <vector>

#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"

using namespace spurwright;

namespace {

double seconds() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

struct Record {
    float at[3], way[3], radius, pad[9];
};
static_assert(sizeof(Record) == 64);

struct Four {
    std::uint32_t v[4];
};

// Philox4x32-10: the published multipliers and Weyl steps (memory).
Four philox(Four c, std::uint32_t k0, std::uint32_t k1) {
    for (int round = 0; round < 10; ++round) {
        const std::uint64_t a = std::uint64_t{0xD2511F53u} * c.v[0], b = std::uint64_t{0xCD9E8D57u} * c.v[2];
        c = {{static_cast<std::uint32_t>(b >> 32) ^ c.v[1] ^ k0, static_cast<std::uint32_t>(b),
              static_cast<std::uint32_t>(a >> 32) ^ c.v[3] ^ k1, static_cast<std::uint32_t>(a)}};
        k0 += 0x9E3779B9u;
        k1 += 0xBB67AE85u;
    }
    return c;
}

float unit_of(std::uint32_t bits) { return static_cast<float>(bits >> 8) * 0x1p-24f; }

// Nanoseconds a node of the floor kernel, the best of several passes.
double floor_ns() {
    std::vector<Record> records(200'000);
    double best = 1e9, sum = 0;
    for (int pass = 0; pass < 7; ++pass) {
        const double start = seconds();
        for (std::uint32_t i = 0; i < records.size(); ++i) {
            const Four u = philox({{i, 0, static_cast<std::uint32_t>(pass), 0}}, 1, 2);
            const float azimuth = 6.2831853f * unit_of(u.v[0]), lean = 1.5f * unit_of(u.v[1]);
            const float sa = std::sin(azimuth), ca = std::cos(azimuth), sl = std::sin(lean), cl = std::cos(lean);
            records[i] = {{sl * ca, cl, sl * sa}, {ca, sa, sl}, unit_of(u.v[2]) + unit_of(u.v[3]), {}};
        }
        best = std::min(best, (seconds() - start) / static_cast<double>(records.size()) * 1e9);
        sum += static_cast<double>(records[static_cast<std::size_t>(pass)].radius);
    }
    if (sum < 0) std::puts(""); // keeps the records
    return best;
}

growth::Site site_of_seed(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    return site;
}

// Best seconds of three for growing `count` vines.
double grow_seconds(int count, std::size_t& nodes) {
    double best = 1e9;
    for (int pass = 0; pass < 3; ++pass) {
        nodes = 0;
        const double start = seconds();
        for (int i = 0; i < count; ++i)
            nodes += growth::grow_vine(site_of_seed(static_cast<std::uint64_t>(i)))->nodes.size();
        best = std::min(best, seconds() - start);
    }
    return best;
}

} // namespace

int main() {
    const double floor = floor_ns();
    std::vector<Vine> cut;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        growth::Site site = site_of_seed(seed);
        --site.age;
        const Vine vine = *growth::grow_vine(site);
        cut.push_back(*prune(vine, growth::history_plan(vine, growth::habits_in(site, vine.winter))));
    }
    double season = 1e9;
    std::size_t nodes = 0;
    for (int pass = 0; pass < 7; ++pass) {
        nodes = 0;
        const double start = seconds();
        for (const Vine& vine : cut) nodes += growth::season(vine, {}).nodes.size();
        season = std::min(season, (seconds() - start) / static_cast<double>(nodes) * 1e9);
    }
    const double history = grow_seconds(40, nodes) / static_cast<double>(nodes) * 1e9;
    std::printf("L1 season: %.1f x the floor kernel (bar 10); context %.0f ns a node, floor %.1f ns\n", season / floor,
                season, floor);
    std::printf("L1 history of 12 winters: %.1f x the floor kernel (bar 180); context %.2f ms a vine\n",
                history / floor, history * static_cast<double>(nodes) / 40e6);
    // Slope of log time over log count, 1 to 8 times the vines.
    double sx = 0, sy = 0, sxx = 0, sxy = 0;
    for (const int times : {1, 2, 4, 8}) {
        const double x = std::log(times), y = std::log(grow_seconds(25 * times, nodes));
        sx += x, sy += y, sxx += x * x, sxy += x * y;
    }
    std::printf("L28 growth in vines: slope %.3f (bar 1.05)\n", (4 * sxy - sx * sy) / (4 * sxx - sx * sx));
    return 0;
}
