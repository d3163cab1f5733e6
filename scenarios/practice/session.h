// Everything the window does apart from drawing and looking: the vine in hand, what is said, settings and work kept on
// disk, the search beside it. One Session a window; carries out requests. Must not know: screens, pictures, OpenGL.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>

#include "scenarios/house/own_house.h"
#include "scenarios/practice/book_desk.h"
#include "scenarios/practice/crew_quiz.h"
#include "scenarios/practice/keeping.h"
#include "scenarios/practice/ladder_desk.h"
#include "scenarios/practice/look_drill.h"
#include "scenarios/practice/open_vine.h"
#include "scenarios/practice/paper_errand.h"
#include "scenarios/practice/record_keeper.h"
#include "scenarios/practice/seat.h"
#include "scenarios/practice/shell.h"
#include "scenarios/practice/sign_desk.h"
#include "scenarios/practice/two_vines.h"
#include "scenarios/practice/vine_requests.h"
#include "scenarios/practice/way_ahead.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/records/weighing_record.h"
#include "scenarios/practice/worker.h"
#include "scenarios/words/words.h"

namespace spurwright::practice {

// What was asked when the window was opened.
struct Opening {
    std::optional<std::string> language, code, scene;
};

class Session {
public:
    // `fresh_seed` gives the seed of each next vine. Faults: what the opening's code or scene is refused for, and words
    // that cannot be read. What is wrong with settings or work kept from before is said on the screen, not refused.
    [[nodiscard]] static Result<std::unique_ptr<Session>> make(const io::Assets& assets, const settings::Folders& folders, const Opening& opening,
                                                               std::function<std::uint64_t()> fresh_seed);

    const Shell& shell() const { return shell_; }
    Shell& shell() { return shell_; }
    const Practice* practice() const { return practice_ ? &*practice_ : nullptr; }
    Practice* practice() { return practice_ ? &*practice_ : nullptr; }
    // Next winter's two vines: shown where none of them is in hand; null where there are none.
    const TwoVines* two_vines() const { return winters_.empty() ? nullptr : &winters_.back(); }
    bool shows_two() const { return two_vines() && !two_vines()->in_hand; }
    std::size_t winters() const { return winters_.size(); }  // grown on, one after another
    // The crew's quiz, set up or on; null where the wall was not gone to.
    const CrewQuiz* crew() const { return crew_ ? &*crew_ : nullptr; }
    // The weighing of somebody's prunings; null where the scale was not gone to.
    const weighing::Exercise* weighing() const { return weighing_ ? &*weighing_ : nullptr; }
    // What is said of the coming winter's buds once it is weighed; null where nobody asks.
    const weighing::NextBuds* next_buds() const { return next_buds_ ? &*next_buds_ : nullptr; }
    // The reference vines; null where the book was not gone to.
    const BookDesk* book() const { return book_ ? &*book_ : nullptr; }
    // The question's vine stands before the eye, and no hand is on it.
    const quiz::Item* on_wall() const { return crew_ && shell_.screen == Screen::wall ? crew_->item() : nullptr; }
    // Look and say, set up or on; null where it was not gone to.
    const LookDrill* looks() const { return looks_ ? &*looks_ : nullptr; }
    // What next and which vines come back; null where it was not gone to.
    const WayAhead* way() const { return way_ ? &*way_ : nullptr; }
    // Where somebody stands on the ladder and its lessons; null where it was not gone to.
    const LadderDesk* ladder() const { return ladder_ ? &*ladder_ : nullptr; }
    // The crew by its quizzes; null where it was not gone to.
    const records::CrewView* crew_page() const { return crew_page_ ? &*crew_page_ : nullptr; }
    // Sign-offs and consent; null where it was not gone to.
    const SignDesk* sign() const { return sign_ ? &*sign_ : nullptr; }
    // What is shown for a question of the wall or a look, and a number that rises with each.
    const quiz::Item* shown_item() const;
    std::uint64_t shown_item_number() const;
    void item_seen() {  // it stands before the eye
        if (looks_) looks_->seen();
    }
    bool makes_paper() const { return paper_worker_ != nullptr; }
    bool works() const { return shell_.searching || shell_.growing || paper_worker_ || (looks_ && looks_->stage() == LookStage::making) || (crew_ && crew_->stage() == QuizStage::making) || (book_ && book_->works()) || (shows_two() && !two_vines()->found) || (practice_ && (practice_->spring_lived() || practice_->awaits_seasons())); }  // an answer is due
    const words::Words& words() const { return words_; }
    std::uint64_t vine_number() const { return vine_number_; }  // rises with each new vine: pictures begin anew
    std::uint64_t words_number() const { return words_number_; }
    bool leaving() const { return leaving_; }

    // False: nothing to do with a request of this kind here (looking about is the picture's).
    bool carry_out(const Request& request);
    // Takes what the search has found; true where anything changed.
    bool poll();
    void say(const Error& error) { shell_.message = Message{error.key, error.arguments}; }

private:
    Session(const io::Assets& assets, const settings::Folders& folders, words::Words words, house::OwnHouse house, std::function<std::uint64_t()> fresh_seed);
    struct Asker;  // requests of the session's own, one function a kind

    void recall();  // settings and work from before
    void begin(Task task);
    void say_how_it_is_told();
    // Sets it before the person; its scene is the one in hand from then on.
    [[nodiscard]] Result<void> open(Result<Opened> opened);
    // A scene's own vines are there at once; one past them is sought beside the picture, and `then` comes once it is found.
    using Then = std::function<Result<void>(Opened)>;
    [[nodiscard]] Result<void> open_of_scene(const std::string& scene, std::size_t number, Then then);
    void stop_growing();
    [[nodiscard]] Result<void> go_on_with(const settings::Work& work, Opened opened);
    [[nodiscard]] Result<void> open_named(const std::string& code);
    [[nodiscard]] Result<void> next_vine();
    [[nodiscard]] Result<void> take_up(settings::Work work);
    [[nodiscard]] Result<void> speak(const std::string& language);

    // ---- the next winter
    [[nodiscard]] Result<void> live_on();
    void prune_of_two(std::size_t which);
    void back_to_two();
    void leave_two();
    void visit_in_spring(bool on);
    void take_in_hand(Practice practice);
    void seek_plans();

    // ---- the crew's quiz
    void go_to_wall();
    void begin_quiz(bool from_before);
    void happen(const quiz::Event& event);
    void keep_quiz();
    void close_wall();

    // ---- look and say
    void go_to_looks();
    void close_looks();

    // ---- who sits here
    void go_to_seat();
    void sit(std::optional<std::int64_t> number);
    void sit_new();
    void seat(std::optional<records::Person> person);
    std::optional<std::int64_t> sitter() const;

    // ---- what a named person says of another
    void go_to_sign();
    void open_sign_page(std::optional<std::int64_t> number);
    void sign_off(const ask::SignOff& typed);
    void withdraw(const ask::WithdrawSign& typed);
    void say_consent(bool yes);
    bool may_sign();
    void wrote_sign(const Result<void>& written, std::optional<Message> says);

    // ---- the way on
    void go_to_way();
    void go_to_crew_page();
    void take_way();
    [[nodiscard]] Result<void> open_met_vine(std::size_t at);

    // ---- the ladder
    [[nodiscard]] Result<void> need_ladder();
    void go_to_ladder();
    [[nodiscard]] Result<void> open_ladder_vine(const ask::LadderVine& wish);
    [[nodiscard]] Result<void> take_up_rung(Opened& opened, const settings::Work& work);
    void keep_ladder_vine();

    // ---- the scale and the book
    [[nodiscard]] Result<void> go_to_scale();
    [[nodiscard]] Result<void> weigh_one_more();
    void begin_weighing(std::vector<weighing::Piece> pieces);
    void tell_look_back();
    void leave_scale();
    void wrote_down(const Result<void>& written);
    void ask_next();
    void take_weighing_back();
    void do_weighing_again();
    void said_next(const Result<void>& said);
    void keep_weight();
    void go_to_book();
    void do_in_book(const BookAct& act);
    [[nodiscard]] Result<void> practise_like();
    [[nodiscard]] Result<void> set_on_paper(const ask::BookPaper& wish);
    void came_from_paper(const PaperAnswer& answer);
    bool poll_book();
    bool poll_seasons();

    // ---- the house's own rules
    void changed_house(const Result<void>& result);
    void tell_house();

    void answer(const Carried& carried);
    void acted(const Result<void>& result);
    void keep_work();
    void keep_settings();
    void came_to_the_end();  // of the vine in hand
    void keep_finished();  // the vine in hand, once its plans are found
    void no_offers() { shell_.offers_watch = shell_.offers_drill = shell_.offers_questions = false; }

    const io::Assets& assets_;
    Keeping keeping_;
    RecordKeeper records_;
    house::OwnHouse house_;
    std::function<std::uint64_t()> fresh_seed_;
    words::Words words_;
    Shell shell_;
    std::optional<scenes::Scene> scene_;
    std::optional<Practice> practice_;
    std::vector<TwoVines> winters_;  // one a winter grown on, the last in sight
    std::optional<CrewQuiz> crew_;
    std::optional<weighing::Exercise> weighing_;
    bool weighing_own_ = false;  // of the vine in hand
    records::WeighedVine weighed_;
    std::optional<weighing::NextBuds> next_buds_;
    std::optional<std::int64_t> weight_kept_;  // number of the event
    std::optional<BookDesk> book_;
    std::optional<LookDrill> looks_;
    std::optional<WayAhead> way_;
    std::optional<LadderDesk> ladder_;
    std::uint64_t ladder_counted_ = 0;  // the vine that was counted last
    std::optional<records::CrewView> crew_page_;
    std::optional<SignDesk> sign_;
    std::uint64_t vine_number_ = 0, words_number_ = 0;
    bool leaving_ = false, watched_ = false;
    int told_vines_ = 0;  // of this sitting, begun with findings after each step or silent among those
    std::unique_ptr<Worker<PaperAnswer>> paper_worker_;  // while a paper is made
    std::string paper_file_;
    std::unique_ptr<Worker<Result<Opened>>> growing_worker_;  // since a vine was first sought so
    Then when_grown_;
    Worker<PlansFound> plan_worker_;
    Worker<std::variant<NextWinter, SpringVisit>> year_worker_;  // of seasons lived through
    std::uint64_t acts_of_ = 0;  // the vine whose acts are asked about
    std::unique_ptr<Worker<ahead::ActsAhead>> acts_worker_;  // what the acts of a look back mean next season; since the first
};

}  // namespace spurwright::practice
