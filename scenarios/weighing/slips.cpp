// What was wrong with a weight that was written down, each with how much it changed it.
#include <algorithm>
#include <charconv>
#include <cstdlib>

#include "scenarios/weighing/exercise.h"
#include "sim/rules/prunings_weighed.h"

namespace spurwright::weighing {
namespace {

constexpr std::string_view slip_keys[] = {"weigh.slip.old-wood",    "weigh.slip.ends",       "weigh.slip.canes",
                                          "weigh.slip.laterals",    "weigh.slip.suckers-out", "weigh.slip.suckers-in",
                                          "weigh.slip.not-zeroed",  "weigh.slip.zeroed-with-bundle", "weigh.slip.wet",
                                          "weigh.slip.wrong-unit",  "weigh.slip.misread"};

// The number before the unit, and the unit.
struct Typed {
    double number = 0;
    std::string_view unit;
};
Typed typed_parts(std::string_view typed) {
    Typed parts;
    const auto [end, fault] = std::from_chars(typed.data(), typed.data() + typed.size(), parts.number);
    (void)fault;  // was read before
    parts.unit = typed.substr(static_cast<std::size_t>(end - typed.data()));
    while (!parts.unit.empty() && parts.unit.front() == ' ') parts.unit.remove_prefix(1);
    return parts;
}

}  // namespace

// One-year wood of a kind that belongs in the bundle and is not there.
Mass Exercise::missing(Kind kind) const {
    Mass mass;
    for (std::size_t i = 0; i < pieces_.size(); ++i)
        if (pieces_[i].kind == kind && pieces_[i].belongs && !goes_along(i)) mass += pieces_[i].mass;
    return mass;
}

std::vector<FoundSlip> Exercise::slips_of(const Written& written) const {
    std::vector<FoundSlip> found;
    const auto add = [&](Slip slip, Mass by, Arguments arguments) {
        arguments.push_back({"by", Mass{std::abs(by.count)}});
        found.push_back({slip, by, TextKey{slip_keys[static_cast<std::size_t>(slip)]}, std::move(arguments)});
    };
    Mass old_wood, suckers;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        if (!goes_along(i) || pieces_[i].belongs) continue;
        (pieces_[i].kind == Kind::sucker ? suckers : old_wood) += pieces_[i].mass;
    }
    if (old_wood.count > 0) add(Slip::old_wood, old_wood, {});
    if (suckers.count > 0) add(Slip::suckers_in, suckers, {});
    const std::pair<Kind, Slip> kinds[] = {{Kind::end, Slip::ends}, {Kind::cane, Slip::canes}, {Kind::lateral, Slip::laterals}, {Kind::bits, Slip::laterals}, {Kind::sucker, Slip::suckers_out}};
    for (const auto& [kind, slip] : kinds)
        if (const Mass mass = missing(kind); mass.count > 0) {
            const auto same = std::find_if(found.begin(), found.end(), [wanted = slip](const FoundSlip& f) { return f.slip == wanted; });
            Mass by = -mass;
            if (same != found.end()) {
                by += same->by;
                found.erase(same);
            }
            add(slip, by, {});
        }
    // The scale.
    const double step_mg = unit() == ScaleUnit::kg ? scale_step.count : lb_in_mg / 100;
    const Mass shown_mass{rounded(shown() * step_mg)};
    if (now().zeroed_with_bundle) add(Slip::zeroed_with_bundle, -(now().nothing - strap_), {});
    else if (!now().zeroed) add(Slip::not_zeroed, strap_, {});
    if (wet()) {
        const Mass water = load() - strap_ - in_bundle();
        FoundSlip slip{Slip::wet, water, TextKey{written.noted_wet ? "weigh.slip.wet-noted" : "weigh.slip.wet"}, {{"by", water}}};
        found.push_back(std::move(slip));
    }
    // The paper.
    const Typed typed = typed_parts(written.typed);
    const bool same_number = std::abs(typed.number * 100 - shown()) < 0.5;
    const std::string scale_unit(word_of(unit()));
    if (same_number && typed.unit != scale_unit) {
        add(Slip::wrong_unit, written.weight - shown_mass, {{"unit", std::string(typed.unit)}, {"scale", scale_unit}, {"text", shown_text()}});
    } else if (std::abs(written.weight.count - shown_mass.count) > step_mg) {
        add(Slip::misread, written.weight - shown_mass, {{"scale", scale_unit}, {"text", shown_text()}, {"typed", written.typed}});
    }
    std::stable_sort(found.begin(), found.end(), [](const FoundSlip& a, const FoundSlip& b) { return std::abs(a.by.count) > std::abs(b.by.count); });
    return found;
}

Verdict Exercise::judged(const Written& written) const {
    Verdict verdict;
    verdict.truly = true_bundle(pieces_);
    verdict.written = written.weight;
    const rules::WeighingFacts facts{rules::Report{written.weight, now().zeroed}, verdict.truly.mass, {}, {}};
    verdict.mark = rules::mark_prunings_weighed(facts, house_);
    verdict.within = rules::as_heavy_as(written.weight, verdict.truly.mass, house_);
    verdict.for_the_trend = verdict.within && !wet() && !written.noted_wet;
    verdict.slips = slips_of(written);
    return verdict;
}

}  // namespace spurwright::weighing
