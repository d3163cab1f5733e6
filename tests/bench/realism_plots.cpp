// Pictures of whole blocks of vines, system by system, with their data beside them: how prunings spread, how neighbours
// go together, what a shoot weighs by how many there are, how many shoots come from no counted bud.
// Usage: realism_plots FOLDER [VINES]   Writes CSV files; PNG files too where gnuplot is installed (gnuplot-nox).
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "tests/support/block.h"
#include "tests/support/statistics.h"

using namespace spurwright;

namespace {

struct Plotted {
    test::SystemSite system;
    std::string file;
    double log_mean = 0, log_deviation = 0;  // of the prunings, once grown
};

std::vector<Plotted> plotted() {
    std::vector<Plotted> all;
    for (const test::SystemSite& system : test::system_sites()) {
        std::string file = system.name;
        std::replace(file.begin(), file.end(), ' ', '-');
        all.push_back({system, std::move(file)});
    }
    return all;
}

bool write_data(const std::string& folder, Plotted& one, int vines) {
    std::ofstream file(folder + "/" + one.file + ".csv");
    file << "prunings_kg,next_vine_kg,shoots,grams_a_shoot,non_count_share,bunches_a_shoot,load\n";
    for (const bool mixed : {false, true}) {
        const auto block = test::block(one.system.site, {vines, 0, 50, mixed});
        for (std::size_t i = 0; i < block.size(); ++i) {
            const auto& v = block[i];
            file << v.prunings_kg << ',' << block[i + 1 < block.size() ? i + 1 : i].prunings_kg << ',' << v.shoots() << ',' << v.grams_a_shoot() << ','
                 << v.non_count / v.shoots() << ',' << v.bunches / v.shoots() << ',' << (mixed ? static_cast<int>(i % 4) + 1 : 0) << '\n';
        }
        if (mixed) continue;
        test::Sample kg;
        for (const auto& v : block) kg.push_back(v.prunings_kg);
        one.log_mean = test::mean(test::logarithms(kg));
        one.log_deviation = test::deviation(test::logarithms(kg));
        std::printf("%-12s %5d vines: mean %.2f kg, variation %.3f, skew %.2f, of logarithms %.2f\n", one.system.name, vines, test::mean(kg), test::variation(kg), test::skewness(kg), test::skewness(test::logarithms(kg)));
    }
    return file.good();
}

// Four panels, one a system, of the same plot.
void panels(std::FILE* gnuplot, const std::vector<Plotted>& all, const std::string& folder, const std::string& name, const std::string& head, const std::string& plot) {
    std::fprintf(gnuplot, "set output '%s/%s.png'\nset multiplot layout 2,2 title '%s'\n%s\n", folder.c_str(), name.c_str(), name.c_str(), head.c_str());
    for (const Plotted& one : all) {
        std::string line = plot;
        for (std::size_t at; (at = line.find("FILE")) != std::string::npos;) line.replace(at, 4, "'" + folder + "/" + one.file + ".csv'");
        std::fprintf(gnuplot, "set title '%s'\nm = %f\ns = %f\n%s\n", one.system.name, one.log_mean, one.log_deviation, line.c_str());
    }
    std::fprintf(gnuplot, "unset multiplot\nunset logscale\nset autoscale\nset xtics auto\nset ytics auto\n");
}

} // namespace

int main(int argc, char** argv) {
    const std::string folder = argc > 1 ? argv[1] : "";
    const int vines = argc > 2 ? std::atoi(argv[2]) : 1000;
    std::error_code failed;
    if (folder.empty() || folder.find('\'') != std::string::npos || vines < 8 || (std::filesystem::create_directories(folder, failed), failed))
        return std::fprintf(stderr, "usage: realism_plots FOLDER [VINES, 8 or more]\n"), 2;
    std::vector<Plotted> all = plotted();
    for (Plotted& one : all)
        if (!write_data(folder, one, vines)) return std::fprintf(stderr, "realism_plots: %s cannot be written to\n", folder.c_str()), 2;
    if (std::system("command -v gnuplot >/dev/null") != 0) return std::printf("no gnuplot (gnuplot-nox): the data alone are in %s\n", folder.c_str()), 0;
    std::FILE* gnuplot = popen("gnuplot", "w");
    if (!gnuplot) return std::fprintf(stderr, "realism_plots: gnuplot does not start\n"), 2;
    std::fprintf(gnuplot, "set terminal pngcairo size 1280,960 font 'DejaVu Sans,11'\nset datafile separator ','\nset key autotitle columnhead top right\nset grid\n");
    panels(gnuplot, all, folder, "prunings", "set xlabel 'one-year prunings, kg a vine'\nset ylabel 'vines'\nset xrange [0:4]\nset yrange [0:*]\nset style fill solid 0.5",
           "bell(x) = x > 0 ? " + std::to_string(vines) + "*0.1/(x*s*sqrt(2*pi))*exp(-(log(x)-m)**2/(2*s**2)) : 0\n"
           "plot FILE using ($7==0 ? 0.1*floor($1/0.1)+0.05 : NaN):(1) smooth frequency with boxes title 'grown', bell(x) with lines lw 2 title 'lognormal of the same spread'");
    panels(gnuplot, all, folder, "neighbours", "set xlabel 'kg a vine'\nset ylabel 'kg of the next vine in the row'\nset xrange [0:4]\nset yrange [0:4]",
           "plot FILE using ($7==0 ? $1 : NaN):2 with points pt 7 ps 0.4 title 'vines'");
    panels(gnuplot, all, folder, "grams-a-shoot", "set xlabel 'shoots a vine'\nset ylabel 'g a shoot'\nset logscale xy\nset xrange [8:90]\nset yrange [15:160]\nset xtics (10, 20, 30, 50, 80)\nset ytics (20, 30, 50, 80, 120)",
           "plot for [k=1:4] FILE using ($7==k ? $3 : NaN):4 with points pt 4+k ps 0.6 title word('0.7 1.0 1.3 1.6', k).' of the usual buds', 45*(x/30)**(-0.81) with lines lw 2 title 'power -0.81, as published'");
    panels(gnuplot, all, folder, "non-count", "set xlabel 'share of shoots from no counted bud'\nset ylabel 'vines'\nset xrange [0:0.6]\nset yrange [0:*]\nset style fill solid 0.5",
           "plot FILE using ($7==0 ? 0.02*floor($5/0.02)+0.01 : NaN):(1) smooth frequency with boxes title 'grown'");
    const bool drawn = pclose(gnuplot) == 0;
    std::printf("%s %s\n", drawn ? "drawn in" : "gnuplot failed; the data are in", folder.c_str());
    return drawn ? 0 : 1;
}
