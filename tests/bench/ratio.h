// Ratios measured fairly: both sides in one process, interleaved, after warm-up; the median of the ratios of each pair.
// Every bench is a program that prints them and exits 1 where a bar is missed.
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <functional>
#include <vector>

namespace spurwright::bench {

using Work = std::function<std::uint64_t()>;  // returns something of its result, so that the work cannot be left out

inline double seconds(const Work& work, int times) {
    static volatile std::uint64_t consumed = 0;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < times; ++i) consumed = consumed + work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / times;
}

inline double at_share(std::vector<double> values, double share) {
    std::stable_sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
}

enum class Bar { at_most, at_least, none };

class Bench {
public:
    // `--pairs N` sets the number of pairs of every ratio; default 15.
    Bench(int argc, char** argv) {
        for (int i = 1; i + 1 < argc; ++i)
            if (std::strcmp(argv[i], "--pairs") == 0) pairs_ = std::max(3, std::atoi(argv[i + 1]));
    }

    // Prints over / under, both run `times` in a row a pair.
    void ratio(const char* what, Bar kind, double bar, const Work& over, int over_times, const Work& under, int under_times) {
        for (int i = 0; i < 3; ++i) seconds(over, over_times), seconds(under, under_times);
        std::vector<double> ratios, over_seconds, under_seconds;
        for (int i = 0; i < pairs_; ++i) {
            over_seconds.push_back(seconds(over, over_times));
            under_seconds.push_back(seconds(under, under_times));
            ratios.push_back(over_seconds.back() / under_seconds.back());
        }
        std::printf("%-60s %9.2f (10-90 %%: %.2f-%.2f)", what, at_share(ratios, 0.5), at_share(ratios, 0.1), at_share(ratios, 0.9));
        judge(kind, bar, at_share(ratios, 0.5));
        std::printf("   [context: %.3g us / %.3g us]\n", at_share(over_seconds, 0.5) * 1e6, at_share(under_seconds, 0.5) * 1e6);
    }

    // Prints the slope of log time over log size, fitted through the medians of each size.
    void slope(const char* what, double bar, const std::vector<double>& sizes, const std::function<Work(std::size_t)>& work_of, int times) {
        std::vector<Work> works;
        std::vector<std::vector<double>> found(sizes.size());
        for (std::size_t i = 0; i < sizes.size(); ++i) works.push_back(work_of(i));
        for (int round = 0; round < pairs_ + 2; ++round)
            for (std::size_t i = 0; i < sizes.size(); ++i) {
                const double s = seconds(works[i], times);
                if (round >= 2) found[i].push_back(s);
            }
        double sx = 0, sy = 0, sxx = 0, sxy = 0;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            const double x = std::log(sizes[i]), y = std::log(at_share(found[i], 0.5));
            sx += x, sy += y, sxx += x * x, sxy += x * y;
        }
        const double n = static_cast<double>(sizes.size()), fitted = (n * sxy - sx * sy) / (n * sxx - sx * sx);
        std::printf("%-60s %9.2f slope", what, fitted);
        judge(Bar::at_most, bar, fitted);
        std::printf("   [context: %.3g to %.3g us]\n", at_share(found.front(), 0.5) * 1e6, at_share(found.back(), 0.5) * 1e6);
    }

    // The exit status: 1 where a bar was missed or `require` found a difference.
    int status() const { return missed_ ? 1 : 0; }

    void require(bool holds, const char* what) {
        if (holds) return;
        std::printf("the answers differ: %s\n", what);
        missed_ = true;
    }

private:
    void judge(Bar kind, double bar, double value) {
        if (kind == Bar::none) return;
        const bool met = kind == Bar::at_most ? value <= bar : value >= bar;
        missed_ = missed_ || !met;
        std::printf("  bar %s %g: %s", kind == Bar::at_most ? "<=" : ">=", bar, met ? "met" : "MISSED");
    }

    int pairs_ = 15;
    bool missed_ = false;
};

}  // namespace spurwright::bench
