#include "render/mesh/ground_mesh.h"

#include <cmath>

#include "render/mesh/noise.h"

namespace spurwright::mesh {
namespace {

// Lines of a grid that is fine near the vine and coarse far off.
std::vector<double> grid_lines(double reach, double fine_reach, double step) {
    std::vector<double> half{0};
    while (half.back() < reach) {
        if (half.back() > fine_reach) step *= 1.25;
        half.push_back(half.back() + std::fmin(step, 6));
    }
    std::vector<double> lines;
    for (std::size_t i = half.size() - 1; i > 0; --i) lines.push_back(-half[i]);
    lines.insert(lines.end(), half.begin(), half.end());
    return lines;
}

double row_bump(double across, double row_spacing) {
    const double from_row = across - row_spacing * std::round(across / row_spacing);
    return 0.05 * std::exp(-from_row * from_row / (2 * 0.2 * 0.2)) -
           0.018 * std::exp(-std::pow((std::fabs(from_row) - 0.8) / 0.13, 2));
}

Vec3 normal_at(double x, double z) {
    constexpr double e = 0.02;
    return shape::unit(
        {ground_height(x - e, z) - ground_height(x + e, z), 2 * e, ground_height(x, z - e) - ground_height(x, z + e)});
}

} // namespace

double ground_height(double x, double z) {
    // The trunk's foot is the origin: soil is there 20 mm high whatever lies around.
    const double base = row_bump(z, 2.4) - 0.05;
    const double rough = 0.012 * noise::smooth(x / 0.16, z / 0.16, 11) +
                         0.009 * noise::smooth(x / 0.055 + 3, z / 0.055, 12) +
                         0.02 * noise::smooth(x / 0.9, z / 0.9, 13);
    const double away = x * x + z * z;
    const double mound = std::exp(-away / (2 * 0.09 * 0.09));
    return (base + rough) * (1 - mound) + 0.006 * mound;
}

void add_ground(Writer& w, const Detail& detail) {
    w.begin(PartKind::ground, Material::ground);
    const auto xs = grid_lines(60, 1.3, detail.soil_step), zs = grid_lines(70, 1.0, detail.soil_step);
    const auto first = static_cast<std::uint32_t>(w.mesh().vertices.size());
    for (const double z : zs)
        for (const double x : xs) {
            const double away = std::sqrt(x * x + z * z);
            // Under the vine the sky is a little hidden; at the very foot more so.
            const double foot = 1 - 0.5 * std::exp(-away * away / (2 * 0.07 * 0.07));
            const double under = 1 - 0.12 * std::exp(-z * z / (2 * 0.25 * 0.25));
            w.occlusion = static_cast<std::uint8_t>(255 * foot * under);
            w.vertex({x, ground_height(x, z), z},
                     shape::unit(normal_at(x, z) + (0.6 + 0.5 * away * away) * Vec3{0, 1, 0}), x, z);
        }
    const auto wide = static_cast<std::uint32_t>(xs.size());
    for (std::uint32_t k = 0; k + 1 < zs.size(); ++k)
        for (std::uint32_t i = 0; i + 1 < wide; ++i) {
            const std::uint32_t a = first + k * wide + i, b = a + 1, c = a + wide, d = c + 1;
            w.triangle(a, c, d);
            w.triangle(a, d, b);
        }
    w.end();
}

void add_straw(Writer& w, double row_spacing, const Detail& detail) {
    w.begin(PartKind::straw, Material::card);
    for (int k = 0; k < detail.straw_cards; ++k) {
        const auto id = static_cast<std::uint32_t>(k);
        // Denser near the vine; the strip under the row stays nearly bare. Beyond the row it shows the most, seen flat.
        const double far = noise::unit(id, 1), x = noise::between(-1, 1, id, 2) * (0.8 + 6 * far * far),
                     z = noise::between(-1.8, 1.5, id, 3) * (1 + 1.5 * far);
        const double from_row = std::fabs(z - row_spacing * std::round(z / row_spacing));
        if (from_row < 0.38 && noise::unit(id, 4) < 0.75) continue;
        const double turn = 6.2832 * noise::unit(id, 5);
        const Vec3 along{std::cos(turn), 0, std::sin(turn)}, side{-along.z, 0, along.x};
        const double sort = noise::unit(id, 6);
        const bool leaf = sort<0.03, grass = sort> 0.55 && from_row > 0.42;
        const double size = leaf    ? noise::between(0.035, 0.065, id, 7)
                            : grass ? noise::between(0.04, 0.09, id, 7)
                                    : noise::between(0.05, 0.16, id, 7),
                     wide = leaf ? 0.8 * size : noise::between(0.0015, 0.0032, id, 8);
        const double lift = leaf    ? 0.02
                            : grass ? noise::between(0.02, 0.06, id, 9)
                                    : noise::between(0.004, 0.05, id, 9) * (noise::unit(id, 10) < 0.25 ? 1 : 0.25);
        w.flags = ribbon;
        w.age = leaf ? 200 : grass ? 150 : static_cast<std::uint8_t>(10 + 100 * noise::unit(id, 11));
        std::uint32_t before[3] = {};
        const int pieces = leaf ? 3 : 2;
        for (int p = 0; p <= pieces; ++p) {
            const double share = static_cast<double>(p) / pieces, bow = 4 * share * (1 - share);
            Vec3 at = Vec3{x, 0, z} + ((share - 0.5) * size) * along;
            const double soil = ground_height(at.x, at.z);
            const double curl = leaf ? 0.4 : 0;
            const double half = wide / 2 * (leaf ? 0.35 + bow * 0.65 : 1 - 0.7 * share);
            std::uint32_t now[3] = {};
            for (int q = 0; q < 3; q += leaf ? 1 : 2) {
                const double s = q - 1;
                const double high = soil + 0.003 + lift * (leaf ? 0.4 * bow + curl * s * s : share);
                now[q] = w.vertex({at.x + s * half * side.x, high, at.z + s * half * side.z},
                                  shape::unit(Vec3{0, 1, 0} - (leaf ? 0.5 * s : 0.2 * s) * side), share, s);
            }
            if (p > 0)
                for (int q = 0; q < 2; q += leaf ? 1 : 2) {
                    const int r = leaf ? q + 1 : q + 2;
                    w.triangle(before[q], now[r], now[q]);
                    w.triangle(before[q], before[r], now[r]);
                }
            for (int q = 0; q < 3; ++q) before[q] = now[q];
        }
    }
    w.end();
}

void add_tufts(Writer& w, double row_spacing, const Detail& detail) {
    constexpr int blades = 6;
    constexpr double across = 7, along = 5.5; // metres from the vine
    w.begin(PartKind::straw, Material::card);
    for (int k = 0; k < detail.straw_cards / 5; ++k) {
        const auto id = static_cast<std::uint32_t>(900'000 + k);
        const double far = noise::unit(id, 1), z = noise::between(-1, 0.3, id, 2) * across * (0.25 + 0.75 * far);
        const double x = noise::between(-1, 1, id, 3) * along * (0.3 + 0.7 * far);
        const double from_row = std::fabs(z - row_spacing * std::round(z / row_spacing));
        // In patches, and next to none on the strip that is kept bare.
        const double patch = noise::smooth(x / 0.7, z / 0.7, 31);
        if (from_row < 0.35 + 0.1 * noise::unit(id, 4) || patch < noise::between(-0.9, 0.6, id, 5)) continue;
        const bool dry = noise::unit(id, 6) < 0.35;
        w.flags = ribbon;
        for (int b = 0; b < blades; ++b) {
            const auto nth = static_cast<std::uint32_t>(10 + 6 * b);
            const double turn = 6.2832 * noise::unit(id, nth), size = noise::between(0.03, 0.085, id, nth + 1) * (0.8 + 0.3 * patch);
            const Vec3 out{std::cos(turn), 0, std::sin(turn)}, side{-out.z, 0, out.x};
            const Vec3 foot = Vec3{x, 0, z} + noise::between(0, 0.02, id, nth + 2) * out;
            const double soil = ground_height(foot.x, foot.z), half = noise::between(0.0011, 0.0022, id, nth + 3);
            const Vec3 tip = foot + noise::between(0.2, 0.8, id, nth + 4) * size * out + Vec3{0, soil + size * 0.8, 0};
            const Vec3 normal = shape::unit(Vec3{0, 0.9, 0} + 0.4 * out);
            w.age = dry ? static_cast<std::uint8_t>(20 + 60 * noise::unit(id, nth + 5)) : 150;
            const double shade = noise::between(0, 0.5, id, nth + 5);
            const auto l = w.vertex(foot - half * side + Vec3{0, soil, 0}, normal, shade, 0), r = w.vertex(foot + half * side + Vec3{0, soil, 0}, normal, shade, 0),
                       t = w.vertex(tip, normal, shade + 0.5, 0);
            w.triangle(l, r, t);
        }
    }
    w.end();
}

} // namespace spurwright::mesh
