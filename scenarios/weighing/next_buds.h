// What is said once a reference vine was weighed: which winters of its log may stand beside each other, and the buds that
// its weight, its space and the smaller of both ask for. Must not know: screens, sentences, the store.
#pragma once

#include <string>
#include <vector>

#include "scenarios/weighing/exercise.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"

namespace spurwright::weighing {

// A winter of the vine's own log, as somebody wrote it down.
struct LoggedWinter {
    int winter = 0;     // named by the year of the spring that follows
    Mass prunings;
    bool wet = false;   // noted so: the water was weighed too
    bool operator==(const LoggedWinter&) const = default;
};

struct NextBudsTask {
    std::string formula;            // as people write it: "20+20"
    balance::BudFormula numbers;    // of it
    Length spacing;
    std::vector<LoggedWinter> log;  // by winter
};

// One number off is rounding (our choice).
inline constexpr int buds_off = 1;

enum class NextSlip : unsigned char { by_weight, by_space, keep, wet_kept, dry_left_out };
constexpr auto words_of(NextSlip) { return std::to_array<std::string_view>({"by-weight", "by-space", "keep", "wet-kept", "dry-left-out"}); }
struct FoundNextSlip {
    NextSlip slip{};
    TextKey key;
    Arguments arguments;
};

enum class Beside : unsigned char { below, within, above };  // the dry winters of the log
constexpr auto words_of(Beside) { return std::to_array<std::string_view>({"below", "within", "above"}); }

struct SaidBuds {
    std::int64_t by_weight = 0, by_space = 0, keep = 0;
};

struct NextVerdict {
    balance::BudTarget of_written, of_true;  // of the weight written, and of the bundle's own
    std::vector<FoundNextSlip> slips;
    int dry = 0;                             // winters of the log
    Mass least, middle, most;                // of them
    Beside beside{};                         // where the weight written lies
};

class NextBuds {
public:
    // `verdict`: what came of the weighing.
    NextBuds(NextBudsTask task, const Verdict& verdict);

    const NextBudsTask& task() const { return task_; }
    Mass written() const { return written_; }
    bool left_out(std::size_t winter) const { return left_out_[winter] != 0; }
    // Whether a winter stays out of the trend; nothing of it once the numbers were said.
    void leave_out(std::size_t winter, bool yes);
    // Faults: what is no whole number of buds from 1 to 200; said already.
    [[nodiscard]] Result<void> say(const std::string& by_weight, const std::string& by_space, const std::string& keep);
    void say(const SaidBuds& said);
    void unsay() { verdict_.reset(); }
    const SaidBuds& said() const { return said_; }  // of verdict()
    const std::optional<NextVerdict>& verdict() const { return verdict_; }

private:
    NextBudsTask task_;
    Mass written_, truly_;
    std::vector<std::uint8_t> left_out_;
    SaidBuds said_;
    std::optional<NextVerdict> verdict_;
};

}  // namespace spurwright::weighing
