#include "sim/balance/bud_injury.h"

namespace spurwright::balance {
namespace {

struct Told {
    double more; // share of the target
    Advice advice;
};

Told told(InjuryMethod method, double k) {
    switch (method) {
    case InjuryMethod::cornell:
        if (k < 0.20) return {0, Advice::as_usual};
        return k <= 0.80 ? Told{k, Advice::leave_more} : Told{0, Advice::wait};
    case InjuryMethod::msu:
        if (k < 0.20) return {0, Advice::as_usual};
        return k <= 0.50 ? Told{k, Advice::leave_more} : Told{0, Advice::wait};
    case InjuryMethod::purdue:
        if (k < 0.15) return {0, Advice::as_usual};
        if (k < 0.35) return {0.35, Advice::leave_more};
        return k <= 0.50 ? Told{0.50, Advice::leave_more} : Told{0, Advice::minimal};
    case InjuryMethod::ohio_penn: break;
    }
    if (k < 0.15) return {0, Advice::as_usual};
    if (k < 0.35) return {0.35, Advice::leave_more};
    return k <= 0.50 ? Told{1.0, Advice::leave_more} : Told{0, Advice::minimal};
}

} // namespace

InjuryAnswer more_for_killed(InjuryMethod method, double killed_share, double target) {
    constexpr std::string_view sources[] = {"cornell-nny-2014", "zabadal-2002", "purdue-double", "-"};
    const Told t = told(method, killed_share);
    const double buds = target * (1 + t.more);
    return {killed_share, buds, buds * (1 - killed_share), t.advice, sources[static_cast<std::size_t>(method)],
            method == InjuryMethod::ohio_penn || (method == InjuryMethod::cornell && t.advice == Advice::wait)};
}

double buds_by_division(double killed_share, double target) { return target / (1 - killed_share); }

} // namespace spurwright::balance
