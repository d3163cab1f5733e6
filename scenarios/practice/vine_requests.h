// Carries out what is asked of the vine in hand alone: pointing, acts, moving among them, the look back, what is shown
// on it. Must not know: the session, screens, where work is kept.
#pragma once

#include <optional>
#include <type_traits>

#include "scenarios/practice/practice.h"
#include "scenarios/practice/request.h"

namespace spurwright::practice {

template <class Asked, class... Kinds>
constexpr bool one_of = (std::is_same_v<Asked, Kinds> || ...);

// What the hand does on the vine: not while something is shown on it.
template <class Asked>
constexpr bool of_the_hand = one_of<Asked, ask::TakeTool, ask::TapeSays, ask::Choose, ask::WalkCanes, ask::WalkBuds, ask::CutHere, ask::PullCane, ask::LayTo, ask::TieHere,
                                    ask::MarkAs, ask::Confirm, ask::Undo, ask::Redo, ask::JumpTo, ask::GoToStep, ask::NextStep>;

// What changes nothing but the vine in hand, and what stands around it in Practice.
template <class Asked>
constexpr bool of_the_vine = one_of<Asked, ask::TakeTool, ask::TapeSays, ask::Choose, ask::WalkCanes, ask::WalkBuds, ask::CutHere, ask::PullCane, ask::LayTo, ask::TieHere,
                                    ask::MarkAs, ask::Confirm, ask::Undo, ask::Redo, ask::JumpTo, ask::CutAgain, ask::GoOnPruning, ask::ShowPiece, ask::NextPiece,
                                    ask::ShowTwin, ask::NextAsGood, ask::TakeCut, ask::NextCut, ask::MoveCut, ask::LeaveCut, ask::GrowOn, ask::SayStanding, ask::WatchNext, ask::WatchBack, ask::WatchRest, ask::DrillAnswer, ask::DrillNext, ask::SayAnswer, ask::QuestionNext, ask::SayDead,
                                    ask::BudsNext>;

// What has come of it, for whoever says things and keeps work.
enum class Came : unsigned char {
    pointed,  // no act touched, what was said stays
    acted,    // an act was tried: `refused` tells why not
    moved,    // among acts: they are the same ones, the vine is another
    shown,    // not the trainee's work
};
struct Carried {
    Came came{};
    std::optional<Error> refused{};
};

// None for a request of another kind.
std::optional<Carried> carry_out_on(Practice& vine, const Request& request);

}  // namespace spurwright::practice
