#include "scenarios/weighing/next_buds.h"

#include <algorithm>
#include <cstdlib>

#include "scenarios/commands/quantities.h"
#include "sim/balance/spread.h"

namespace spurwright::weighing {
namespace {

constexpr std::int64_t most_said = 200;  // buds of one vine; our choice

balance::BudTarget target_by(const NextBudsTask& task, Mass prunings) {
    return balance::bud_target(balance::buds_for(task.numbers, prunings.count / 1e6).buds, in_m(task.spacing));
}

}  // namespace

NextBuds::NextBuds(NextBudsTask task, const Verdict& verdict) : task_(std::move(task)), written_(verdict.written), truly_(verdict.truly.mass), left_out_(task_.log.size(), 0) {}

void NextBuds::leave_out(std::size_t winter, bool yes) {
    if (!verdict_ && winter < left_out_.size()) left_out_[winter] = yes;
}

Result<void> NextBuds::say(const std::string& by_weight, const std::string& by_space, const std::string& keep) {
    if (verdict_) return failure({Fault::not_allowed, {"error.weigh.said"}, {}, {}});
    SaidBuds said;
    for (const auto& [typed, to] : {std::pair(&by_weight, &said.by_weight), std::pair(&by_space, &said.by_space), std::pair(&keep, &said.keep)}) {
        const auto read = commands::read_whole(*typed, "buds", 1, most_said);
        if (!read) return failure(read.error());
        *to = *read;
    }
    say(said);
    return {};
}

void NextBuds::say(const SaidBuds& said) {
    said_ = said;
    NextVerdict verdict;
    verdict.of_written = target_by(task_, written_);
    verdict.of_true = target_by(task_, truly_);
    const auto add = [&](NextSlip slip, std::string_view key, Arguments arguments) { verdict.slips.push_back({slip, TextKey{key}, std::move(arguments)}); };
    const auto asked = [&](NextSlip slip, std::string_view key, std::int64_t number, double wanted, Arguments arguments) {
        const std::int64_t whole = balance::whole_buds(wanted);
        if (std::abs(number - whole) <= buds_off) return;
        arguments.insert(arguments.end(), {{"n", Count{whole}}, {"said", Count{number}}});
        add(slip, key, std::move(arguments));
    };
    const balance::BudTarget& buds = verdict.of_written;
    asked(NextSlip::by_weight, "weigh.next.by-weight", said.by_weight, buds.by_weight, {{"formula", task_.formula}, {"weight", written_}});
    asked(NextSlip::by_space, "weigh.next.by-space", said.by_space, buds.by_space.house, {{"spacing", task_.spacing}});
    asked(NextSlip::keep, "weigh.next.keep", said.keep, buds.smaller,
          {{"by_weight", Count{balance::whole_buds(buds.by_weight)}}, {"high", Count{balance::whole_buds(buds.by_space.high)}}});
    std::vector<double> dry;
    for (std::size_t i = 0; i < task_.log.size(); ++i) {
        const LoggedWinter& one = task_.log[i];
        const Arguments of_it{{"winter", std::to_string(one.winter)}, {"weight", one.prunings}};
        if (one.wet && !left_out(i)) add(NextSlip::wet_kept, "weigh.next.wet-kept", of_it);
        if (!one.wet && left_out(i)) add(NextSlip::dry_left_out, "weigh.next.dry-left-out", of_it);
        if (!one.wet) dry.push_back(one.prunings.count);
    }
    const balance::VineSpread spread = balance::vine_spread(dry);
    verdict.dry = spread.n;
    verdict.least = Mass{rounded(spread.least)};
    verdict.middle = Mass{rounded(spread.median)};
    verdict.most = Mass{rounded(spread.most)};
    verdict.beside = written_ < verdict.least ? Beside::below : verdict.most < written_ ? Beside::above : Beside::within;
    verdict_ = std::move(verdict);
}

}  // namespace spurwright::weighing
