#include "scenarios/weighing/exercise.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>

#include "scenarios/commands/quantities.h"
#include "sim/core/random.h"
#include "sim/rules/prunings_weighed.h"

namespace spurwright::weighing {
namespace {

// All our choice.
constexpr double wet_days = 0.4;
constexpr std::int32_t least_water = 40, most_water = 120;    // thousandths
constexpr std::int32_t least_strap_g = 60, most_strap_g = 240;

enum class ScaleDraw : std::uint32_t { wet = 1, water = 2, strap = 3, unit = 4 };
std::uint64_t scale_draw(std::uint64_t vine, ScaleDraw what) { return draw(vine, static_cast<std::uint32_t>(what), 0); }

// To the nearest step, halves away from zero: whole numbers only, so that every machine shows the same.
std::int32_t steps_of(Mass mass, double step_mg) { return rounded(mass.count / step_mg); }

Error not_ready(std::string_view key) { return {Fault::not_allowed, TextKey{key}, {}, {}}; }

}  // namespace

Exercise::Exercise(std::vector<Piece> pieces, std::uint64_t vine, const rules::HouseRules& house)
    : pieces_(std::move(pieces)),
      house_(house),
      wet_(chance(scale_draw(vine, ScaleDraw::wet), wet_days)),
      water_{between(scale_draw(vine, ScaleDraw::water), least_water, most_water)},
      strap_(from_g(between(scale_draw(vine, ScaleDraw::strap), least_strap_g, most_strap_g))) {
    Moment first;
    for (const Piece& piece : pieces_) first.lies.push_back(piece.found);
    first.stripped.assign(pieces_.size(), 0);
    first.is_short.assign(pieces_.size(), 0);
    first.unit = chance(scale_draw(vine, ScaleDraw::unit), 0.5) ? ScaleUnit::kg : ScaleUnit::lb;
    moments_.push_back(std::move(first));
}

bool Exercise::still_on(std::size_t piece) const { return pieces_[piece].on && !now().stripped[*pieces_[piece].on]; }

std::size_t Exercise::canes_on(std::size_t piece) const {
    std::size_t n = 0;
    for (std::size_t i = 0; i < pieces_.size(); ++i) n += pieces_[i].on == piece && still_on(i);
    return n;
}

// A cane that was not stripped goes where its old wood goes.
bool Exercise::goes_along(std::size_t piece) const { return lies(still_on(piece) ? *pieces_[piece].on : piece) == Lies::bundle; }

Mass Exercise::in_bundle() const {
    Mass mass;
    for (std::size_t i = 0; i < pieces_.size(); ++i)
        if (goes_along(i)) mass += pieces_[i].mass;
    return mass;
}

std::size_t Exercise::bundle_size() const {
    std::size_t n = 0;
    for (std::size_t i = 0; i < pieces_.size(); ++i) n += goes_along(i);
    return n;
}

bool Exercise::has_long() const {
    for (std::size_t i = 0; i < pieces_.size(); ++i)
        if (goes_along(i) && is_long(i)) return true;
    return false;
}

Mass Exercise::load() const {
    if (!hangs()) return strap_;
    const Mass dry = in_bundle();
    return strap_ + dry + (wet() ? Mass{rounded(dry.count * as_share(water_))} : Mass{});
}

std::int32_t Exercise::shown() const { return steps_of(load() - now().nothing, unit() == ScaleUnit::kg ? scale_step.count : lb_in_mg / 100); }

std::string Exercise::shown_text() const {
    const std::int32_t hundredths = std::abs(shown());
    const std::string part = std::to_string(hundredths % 100);
    return (shown() < 0 ? "-" : "") + std::to_string(hundredths / 100) + "." + (part.size() < 2 ? "0" : "") + part;
}

void Exercise::commit(Moment next) {
    moments_.resize(at_ + 1);
    moments_.push_back(std::move(next));
    ++at_;
}

Result<void> Exercise::deed(const Act& act, Moment& next) const {
    const bool of_piece = act.deed == Deed::take || act.deed == Deed::put_back || act.deed == Deed::strip;
    if (of_piece && act.piece >= pieces_.size()) return failure(not_ready("error.weigh.no-piece"));
    const bool bundling = of_piece || act.deed == Deed::shorten;
    if (bundling && tied()) return failure(not_ready(hangs() ? "error.weigh.hangs" : "error.weigh.tied"));
    switch (act.deed) {
        case Deed::take:
            if (still_on(act.piece)) return failure(not_ready("error.weigh.still-on"));
            if (lies(act.piece) == Lies::bundle) return failure(not_ready("error.weigh.in-bundle"));
            next.lies[act.piece] = Lies::bundle;
            return {};
        case Deed::put_back:
            if (lies(act.piece) != Lies::bundle) return failure(not_ready("error.weigh.not-in-bundle"));
            next.lies[act.piece] = Lies::heap;  // nobody hangs it into the wires again
            return {};
        case Deed::strip:
            if (canes_on(act.piece) == 0) return failure(not_ready("error.weigh.nothing-on"));
            next.stripped[act.piece] = 1;
            for (std::size_t i = 0; i < pieces_.size(); ++i)
                if (pieces_[i].on == act.piece) next.lies[i] = lies(act.piece);
            return {};
        case Deed::shorten:
            if (!has_long()) return failure(not_ready("error.weigh.none-long"));
            for (std::size_t i = 0; i < pieces_.size(); ++i)
                if (goes_along(i)) next.is_short[i] = 1;
            return {};
        case Deed::tie:
            if (tied()) return failure(not_ready("error.weigh.tied"));
            if (bundle_size() == 0) return failure(not_ready("error.weigh.empty"));
            if (has_long()) return failure(not_ready("error.weigh.long"));
            next.tied = true;
            return {};
        case Deed::untie:
            if (!tied()) return failure(not_ready("error.weigh.not-tied"));
            if (hangs()) return failure(not_ready("error.weigh.hangs"));
            next.tied = false;
            return {};
        case Deed::let_dry:
            if (!wet()) return failure(not_ready("error.weigh.dry"));
            if (hangs()) return failure(not_ready("error.weigh.hangs"));
            next.dried = true;
            return {};
        case Deed::hang:
            if (!tied()) return failure(not_ready("error.weigh.not-tied"));
            if (hangs()) return failure(not_ready("error.weigh.hangs"));
            next.hangs = true;
            return {};
        case Deed::take_down:
            if (!hangs()) return failure(not_ready("error.weigh.nothing-hangs"));
            next.hangs = false;
            return {};
        case Deed::zero:
            next.nothing = load();
            next.zeroed = true;
            next.zeroed_with_bundle = hangs();
            return {};
        case Deed::turn_unit: next.unit = unit() == ScaleUnit::kg ? ScaleUnit::lb : ScaleUnit::kg; return {};
    }
    return {};
}

Result<void> Exercise::act(const Act& act) {
    if (written()) return failure(not_ready("error.weigh.written"));
    Moment next = now();
    next.by = act;
    if (auto done = deed(act, next); !done) return done;
    commit(std::move(next));
    return {};
}

Result<void> Exercise::write(const std::string& typed, bool noted_wet) {
    if (written()) return failure(not_ready("error.weigh.written"));
    if (!hangs()) return failure(not_ready("error.weigh.nothing-hangs"));
    const auto kg = commands::read_kilograms(typed, "weight");
    if (!kg) return failure(kg.error());
    const Written written{typed, from_g(1000 * *kg), noted_wet};
    Moment next = now();
    next.by.reset();
    next.written = written;
    next.verdict = judged(written);
    commit(std::move(next));
    return {};
}

std::vector<Act> Exercise::deeds() const {
    std::vector<Act> all;
    for (std::size_t i = 0; i <= at_; ++i)
        if (moments_[i].by) all.push_back(*moments_[i].by);
    return all;
}

std::string written_as(const Exercise& exercise) { return exercise.shown_text() + " " + std::string(word_of(exercise.unit())); }

}  // namespace spurwright::weighing
