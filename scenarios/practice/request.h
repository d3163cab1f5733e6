// What a screen may ask for. Screens draw state and return these; render/app carries them out in order. Plain data, so
// that a test or a script asks the same way.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenarios/drill/look.h"
#include "scenarios/house/parameter_parts.h"
#include "scenarios/practice/book_acts.h"
#include "scenarios/practice/hand.h"
#include "scenarios/quiz/quiz.h"
#include "scenarios/weighing/exercise.h"
#include "sim/rules/rule.h"

namespace spurwright::practice {

enum class Screen : unsigned char { safety, home, row, settings, house, wall, weigh, book, looks, way, crew, seat, ladder, sign };
constexpr auto words_of(Screen) { return std::to_array<std::string_view>({"safety", "home", "row", "settings", "house", "wall", "weigh", "book", "looks", "way", "crew", "seat", "ladder", "sign"}); }

namespace ask {

// ---- the hand
struct TakeTool { HandTool tool{}; };
struct TapeSays { Role role{}; };
struct Choose { AxisId axis; NodeId node; };  // no axis: take back
struct WalkCanes { int step = 1; };
struct WalkBuds { int step = 1; };
// ---- acts; an empty spot or axis means what is chosen
struct CutHere { Spot spot; HandTool tool = HandTool::shears; };
struct PullCane { Pull to; };  // shown alone; no cane: lets go
struct LayTo { AxisId cane; Side side{}; };
struct TieHere { Spot spot; };
struct MarkAs { AxisId axis; Role role{}; };
struct Confirm {};   // the act that waits
struct TakeBack {};  // the act that waits, a message, the choice: whichever stands foremost
struct Undo {};
struct Redo {};
struct JumpTo { std::size_t done = 0; };
// ---- the way through
struct GoToStep { rules::Step step{}; };
struct NextStep {};  // the next on the strip; on the look back the next vine
struct CutAgain {};
struct GoOnPruning {};  // out of the look back, with all acts as they stand
struct NextVine {};
struct RowOf { System system{}; };    // what stands in the row from the next vine on
struct OpenScene { std::string name; std::size_t number = 0; };  // of the scene's vines, from 0
struct OpenCode { std::string code; };
struct StopGrowing {};  // of the vine that is sought: everything stays as it is
struct OfferTaken { bool yes = true; };  // work found from before: go on with it, or leave it
// ---- the look back
struct ShowPiece { std::size_t at = 0; };
struct NextPiece { int step = 1; };
struct LookAtPiece {};
struct ShowTwin { bool on = true; };
struct NextAsGood {};
struct TakeCut { AxisId axis; };          // what if it had ended elsewhere; no axis: of the piece spoken of, else the first
struct NextCut { int step = 1; };         // of the pieces whose cut can be moved
struct MoveCut { std::size_t at = 0; };   // to one of its ends
struct LeaveCut {};
struct Disagree { std::string note; };
struct GrowOn { bool on = true; };  // the scene's two choices through the winters
struct SpringVisit { bool on = true; };  // the frost scene's second visit
struct SayStanding { bool off = true; };  // there: whether the cane that stands comes off
// ---- the next winter
struct NextWinter {};                 // of this vine and of the best plan's, beside each other
struct PruneOfTwo { std::size_t which = 0; };  // 0 mine, 1 the better one: in hand as any vine
struct BackToTwo {};                  // from the one in hand
struct LeaveTwo {};                   // from both, to the look back that they grew from
// ---- shown on the vine: the best plan watched; places touched, old or new
struct Watch { bool on = true; };
struct WatchNext {};
struct WatchBack {};
struct WatchOwn {};  // ends watching, or declines it: the same vine, uncut, in hand
struct Drill {};
struct DrillAnswer { bool older = false; };
struct DrillNext {};  // past the last place: ends it
struct DrillEnd {};
struct Questions {};                              // what the scene asks before the first cut
struct SayAnswer { std::size_t which = 0; };       // from 0
struct QuestionNext {};                           // past the last: to the end; there: ends it
struct BudSampling {};                            // buds cut open after a cold winter
struct SayDead { int dead = 0; };                 // primaries, of the six
struct BudsNext {};                               // past the last cane: to the end; there: ends it
// ---- looking
struct LookFrom { std::string view; };  // a word of scene::View
struct LookAtChosen {};
struct Hatch { bool on = true; };
struct Orbit { bool on = true; };       // the aid
// ---- the house's own rules; the vine in hand is judged anew
struct HouseFrom { std::string shipped; };  // a set of the program
struct HouseStep { house::Part part; int steps = 1; };
struct HouseAsShipped { house::Part part; };  // no rule: all
struct HouseIn { std::string path; };   // read from a file, in place of what there is
struct HouseOut { std::string path; };  // written to a file
// ---- the crew's quiz on the wall
struct Wall {};                            // to it; set up where none is on
struct WallKind { quiz::Kind kind{}; };    // asked or not
struct WallQuestions { int n = 8; };
struct WallPosts { int n = 3; };
struct WallLanguages { bool two = true; };
struct WallBegin {};
struct WallGoOn {};                        // with the one found from before
struct WallDo { quiz::Event event; };
struct WallClose {};                       // the quiz; it stays in its journal
// ---- the weighing of the prunings
struct Weigh {};                           // of the vine looked back on; else of one more, pruned already
struct WeighDo { weighing::Act act; };
struct WeighUndo { int step = 1; };        // -1: forward again
struct WeighWrite { std::string typed; bool noted_wet = false; };
struct WeighAgain {};                      // the same vine, from the heap on
struct LeaveOut { std::size_t winter = 0; bool yes = true; };  // of the vine's log: it stays out of the trend
struct SayNext { std::string by_weight, by_space, keep; };     // the coming winter's buds
struct WeighClose {};                      // back to where it was come from
// ---- the book of reference vines
struct Book {};
struct BookDo { BookAct act; };
enum class PaperKind : unsigned char { sheet, plot };
constexpr auto words_of(PaperKind) { return std::to_array<std::string_view>({"sheet", "plot"}); }
struct BookPaper { PaperKind kind{}; std::string path; };  // of the open block, or its row that is compared: field sheet (PDF), plot (PNG and its numbers)
struct PractiseLike {};                    // a vine whose number of buds the last weight of the one at hand sets
// ---- look and say
struct Looks {};                           // to it: set up where none is on
struct LooksSkill { drill::Skill skill{}; };  // asked or not
struct LooksBegin {};
struct LookSaid { std::size_t said = 0; };  // a word, or the place of a pair
struct LookNext {};
struct LooksEnd {};                        // of the sitting: to what came of it
struct LooksClose {};
// ---- the crew on one page
struct CrewPage {};
// ---- what a named person says of another
struct Sign {};                            // to it: the list of whom it may be about
struct SignOf { std::optional<std::int64_t> number; };  // the page of one; none: back to the list
struct SignOff { rules::RuleName skill{}; std::string by, saw, on, until; };  // as typed
struct WithdrawSign { std::int64_t id = 0; std::string by, reason; };
struct SayConsent { bool yes = true; };    // to the name being kept
// ---- who sits here
struct Seat {};                            // to the list
struct Sits { std::optional<std::int64_t> number; };  // of the list; none: nobody
struct SitsNew {};                         // under the next free number
// ---- the way on
struct Way {};                             // to it: what next, which vines come back
struct TakeWay {};                         // what it proposes
struct OpenMet { std::size_t at = 0; };    // of the vines done before, as it stood before what cost most
// ---- the ladder
struct Ladder {};                          // to it: where one stands, its lessons
struct LadderVine { std::optional<std::size_t> lesson; std::optional<int> rung; };  // the next vine of the lesson on this rung; none: as suggested
struct WatchRest {};                       // of the step shown, or of what is watched, at once
// ---- the shell
struct GoTo { Screen screen{}; };
struct Speak { std::string language; };
struct TextScale { int percent = 100; };
struct Theme { std::string theme; };    // paper, dusk
struct Units { std::string units; };    // mm, inch
struct ReducedMotion { bool on = true; };
struct StepFeedback { bool on = true; };
struct SafetySeen {};
struct CloseMessage {};
struct Leave {};                        // close the window: asked by a person only

}  // namespace ask

using Request = std::variant<ask::TakeTool, ask::TapeSays, ask::Choose, ask::WalkCanes, ask::WalkBuds, ask::CutHere, ask::PullCane, ask::LayTo, ask::TieHere,
                             ask::MarkAs, ask::Confirm, ask::TakeBack, ask::Undo, ask::Redo, ask::JumpTo, ask::GoToStep, ask::NextStep,
                             ask::CutAgain, ask::GoOnPruning, ask::NextVine, ask::RowOf, ask::OpenScene, ask::OpenCode, ask::StopGrowing, ask::OfferTaken, ask::ShowPiece, ask::NextPiece, ask::LookAtPiece,
                             ask::ShowTwin, ask::NextAsGood, ask::TakeCut, ask::NextCut, ask::MoveCut, ask::LeaveCut, ask::Disagree, ask::GrowOn, ask::SpringVisit, ask::SayStanding, ask::NextWinter, ask::PruneOfTwo, ask::BackToTwo, ask::LeaveTwo, ask::Watch, ask::WatchNext, ask::WatchBack, ask::WatchOwn, ask::Drill,
                             ask::DrillAnswer, ask::DrillNext, ask::DrillEnd, ask::Questions, ask::SayAnswer, ask::QuestionNext, ask::BudSampling, ask::SayDead, ask::BudsNext, ask::LookFrom, ask::LookAtChosen, ask::Hatch, ask::Orbit, ask::HouseFrom, ask::HouseStep, ask::HouseAsShipped, ask::HouseIn, ask::HouseOut, ask::Wall, ask::WallKind,
                             ask::WallQuestions, ask::WallPosts, ask::WallLanguages, ask::WallBegin, ask::WallGoOn, ask::WallDo, ask::WallClose, ask::Weigh, ask::WeighDo, ask::WeighUndo, ask::WeighWrite, ask::WeighAgain, ask::LeaveOut, ask::SayNext, ask::WeighClose, ask::Book, ask::BookDo, ask::BookPaper, ask::PractiseLike, ask::Looks, ask::LooksSkill, ask::LooksBegin, ask::LookSaid,
                             ask::LookNext, ask::LooksEnd, ask::LooksClose, ask::CrewPage, ask::Sign, ask::SignOf, ask::SignOff, ask::WithdrawSign, ask::SayConsent, ask::Seat, ask::Sits, ask::SitsNew, ask::Way, ask::TakeWay, ask::OpenMet, ask::Ladder, ask::LadderVine, ask::WatchRest, ask::GoTo,
                             ask::Speak, ask::TextScale, ask::Theme, ask::Units, ask::ReducedMotion, ask::StepFeedback, ask::SafetySeen,
                             ask::CloseMessage, ask::Leave>;
using Requests = std::vector<Request>;

}  // namespace spurwright::practice
