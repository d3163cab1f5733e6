// Buds cut open after a cold winter: six at a time from the base of middling canes, the dead primaries counted, and at
// the end what two published schools make of the share. The buds are the vine's own, killed by the model's winter.
// Must not know: pictures, sentences.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sim/balance/bud_injury.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

inline constexpr std::size_t buds_a_cane = 6, most_canes_sampled = 8; // [cornell-nny-2014]: 6-8 nodes of 6-10 canes
inline constexpr std::array methods_told{balance::InjuryMethod::cornell, balance::InjuryMethod::msu};

struct OpenedBud {
    NodeId node;
    bool primary = true, secondary = true, tertiary = true; // green inside
};

struct SampledCane {
    AxisId cane;
    std::vector<OpenedBud> buds; // from the base on
    std::optional<int> said;     // dead primaries
    int dead() const;
    bool right() const { return said == dead(); }
};

class BudSample {
public:
    // One of 400 winters that the model draws inland, from one drawn by the vine on the first that killed
    // 15 to 60 of 100 primaries (our choice: fewer ask for nothing, more for waiting). Needs an uncut vine.
    explicit BudSample(const Vine& uncut);

    const std::vector<SampledCane>& canes() const { return canes_; } // none: no cane has six ripe buds
    std::size_t at() const { return at_; }                          // canes().size(): the end
    const SampledCane* here() const { return at_ < canes_.size() ? &canes_[at_] : nullptr; }
    bool answered() const { return here() && here()->said; }
    int right() const;

    void answer(int dead); // the first answer stands
    void next();           // only from a counted cane

    int dead() const; // of the sample
    int buds() const;
    double share() const; // dead of the sample, 0 to 1
    double whole_share() const { return whole_share_; } // of all ripe count buds of the vine
    // How cold the worst night was, against what buds stood then: below 0 they were colder than half of them stand.
    double margin_c() const { return margin_c_; }

private:
    std::vector<SampledCane> canes_;
    std::size_t at_ = 0;
    double whole_share_ = 0, margin_c_ = 0;
};

} // namespace spurwright::practice
