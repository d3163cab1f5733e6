// Old or new? Twelve places of one vine touched in turn: the trainee says whether the wood is last summer's or older, and
// is told at once by what can be seen there. The same vine asks the same places. Must not know: pictures, sentences.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/hand.h"
#include "sim/core/text_key.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

struct Touch {
    Spot spot;  // the middle of a joint: beyond the node below it
    bool older = false;
    TextKey key;  // how it can be told; only to be said once answered
    Arguments arguments;
    std::optional<bool> said_older;
    bool right() const { return said_older == older; }
};

class TouchDrill {
public:
    // Fewer places where the vine has no more; none of a kind where it has none. Trunks are never asked.
    explicit TouchDrill(const Vine& vine);

    const std::vector<Touch>& touches() const { return touches_; }
    std::size_t at() const { return at_; }  // touches().size(): all answered
    const Touch* here() const { return at_ < touches_.size() ? &touches_[at_] : nullptr; }
    bool answered() const { return here() && here()->said_older; }
    int right() const;

    void answer(bool older);  // the first answer stands
    void next();              // only from an answered place

private:
    std::vector<Touch> touches_;
    std::size_t at_ = 0;
};

inline constexpr std::size_t touches_in_a_drill = 12;  // our choice

}  // namespace spurwright::practice
