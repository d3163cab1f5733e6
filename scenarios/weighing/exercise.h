// The weighing of one vine's prunings as somebody does it: pieces taken into the bundle, canes stripped off old wood, cut
// to length, tied, hung on a scale that carries its own strap, set to nothing, read, written down. Nothing is refused that
// a person could do wrong; what was wrong is found when the weight is written, with how much it changed. Undo moves a
// cursor over what stood after each act. Must not know: screens, files, sentences.
#pragma once

#include <string>

#include "scenarios/weighing/heap.h"
#include "sim/core/error.h"

namespace spurwright::weighing {

enum class ScaleUnit : unsigned char { kg, lb };  // its steps: 10 g, 0.01 lb
constexpr auto words_of(ScaleUnit) { return std::to_array<std::string_view>({"kg", "lb"}); }

// What a hand does; `piece` for the first three.
enum class Deed : unsigned char { take, put_back, strip, shorten, tie, untie, let_dry, hang, take_down, zero, turn_unit };
constexpr auto words_of(Deed) {
    return std::to_array<std::string_view>({"take", "put-back", "strip", "shorten", "tie", "untie", "let-dry", "hang", "take-down", "zero", "turn-unit"});
}
struct Act {
    Deed deed{};
    std::size_t piece = 0;
};

// The weight as it was written down: a number with its unit (g kg lb oz), and whether it was noted that the wood was wet.
struct Written {
    std::string typed;
    Mass weight;
    bool noted_wet = false;
};

enum class Slip : unsigned char { old_wood, ends, canes, laterals, suckers_out, suckers_in, not_zeroed, zeroed_with_bundle, wet, wrong_unit, misread };
constexpr auto words_of(Slip) {
    return std::to_array<std::string_view>(
        {"old-wood", "ends", "canes", "laterals", "suckers-out", "suckers-in", "not-zeroed", "zeroed-with-bundle", "wet", "wrong-unit", "misread"});
}

struct FoundSlip {
    Slip slip{};
    Mass by;  // how much too heavy (above 0) or too light it made what was written
    TextKey key;
    Arguments arguments;
};

// What came of it.
struct Verdict {
    TrueBundle truly;
    Mass written;
    PerMille mark;                 // as the house's rule of weighed prunings marks it
    bool within = false;           // of the house's full band
    bool for_the_trend = false;    // within it, and neither wet nor noted as wet
    std::vector<FoundSlip> slips;  // those that changed the weight most first
};

inline constexpr Length bundle_length{600'000};  // longer pieces are cut before they are tied; our choice
inline constexpr Mass scale_step{10'000};
inline constexpr double lb_in_mg = 453'592.37;

class Exercise {
public:
    // `vine` draws the day and the scale: whether the bark is wet (two days in five), by how much (4 to 12 %), what the
    // scale's strap weighs (60 to 240 g), which unit it stands at. All our choice.
    Exercise(std::vector<Piece> pieces, std::uint64_t vine, const rules::HouseRules& house);

    const std::vector<Piece>& pieces() const { return pieces_; }
    Lies lies(std::size_t piece) const { return now().lies[piece]; }
    bool still_on(std::size_t piece) const;          // on old wood that was not stripped
    std::size_t canes_on(std::size_t piece) const;   // still on this old wood
    Mass in_bundle() const;                          // dry; with what still stands on its old wood
    std::size_t bundle_size() const;
    bool is_long(std::size_t piece) const { return !now().is_short[piece] && pieces_[piece].length > bundle_length; }
    bool has_long() const;                           // in the bundle

    bool wet() const { return wet_ && !now().dried; }
    bool tied() const { return now().tied; }
    bool hangs() const { return now().hangs; }
    ScaleUnit unit() const { return now().unit; }
    // What the scale shows, in its unit's hundredths: 74 is 0.74.
    std::int32_t shown() const;
    std::string shown_text() const;  // "0.74", with a point; "-0.09"

    // Fault::not_allowed: what the bundle is not ready for, with what to do first.
    [[nodiscard]] Result<void> act(const Act& act);
    // Written down, and judged. Faults: a text that is no weight with its unit; nothing hangs on the scale.
    [[nodiscard]] Result<void> write(const std::string& typed, bool noted_wet);
    const std::optional<Written>& written() const { return now().written; }
    const std::optional<Verdict>& verdict() const { return now().verdict; }  // once written

    bool can_undo() const { return at_ > 0; }
    bool can_redo() const { return at_ + 1 < moments_.size(); }
    void undo() { at_ -= can_undo(); }
    void redo() { at_ += can_redo(); }
    std::size_t acts() const { return at_; }
    std::vector<Act> deeds() const;  // done so far, in order: the same on the same pieces come to the same scale

private:
    // All that an act changes.
    struct Moment {
        std::vector<Lies> lies;
        std::vector<std::uint8_t> stripped, is_short;  // by piece
        bool tied = false, hangs = false, dried = false, zeroed = false, zeroed_with_bundle = false;
        Mass nothing;  // what the scale carries where it shows nothing
        ScaleUnit unit{};
        std::optional<Written> written;
        std::optional<Verdict> verdict;
        std::optional<Act> by;  // what led here; none: the beginning, or what was written
    };

    std::vector<Piece> pieces_;
    rules::HouseRules house_;
    bool wet_ = false;
    PerMille water_;  // on wet bark, of the wood's mass
    Mass strap_;
    std::vector<Moment> moments_;
    std::size_t at_ = 0;

    const Moment& now() const { return moments_[at_]; }
    Mass load() const;  // on the hook, the strap with it
    bool goes_along(std::size_t piece) const;
    Mass missing(Kind kind) const;
    void commit(Moment next);
    [[nodiscard]] Result<void> deed(const Act& act, Moment& next) const;
    Verdict judged(const Written& written) const;
    std::vector<FoundSlip> slips_of(const Written& written) const;
};

// Grams as written on a label: the number a person would type for what the scale shows.
std::string written_as(const Exercise& exercise);

}  // namespace spurwright::weighing
