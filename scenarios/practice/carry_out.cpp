// Which request goes where, and what those ask that are the session's own.
#include <algorithm>

#include "scenarios/practice/session.h"
#include "scenarios/practice/settings_requests.h"

namespace spurwright::practice {
namespace {

template <class Asked>
constexpr bool of_looking = one_of<Asked, ask::LookAtPiece, ask::LookFrom, ask::LookAtChosen, ask::Orbit>;

}  // namespace

struct Session::Asker {
    Session& s;

    Practice& vine() { return *s.practice_; }
    bool any() const { return s.practice_.has_value(); }

    // Carried out before, or with no vine in hand nothing to do.
    template <class Asked>
        requires(of_the_vine<Asked> || of_looking<Asked>)
    void operator()(const Asked&) {}

    void operator()(const ask::TakeBack&) {
        if (s.shell_.message) s.shell_.message.reset();
        else if (any() && vine().waiting()) vine().take_back();
        else if (s.shell_.offers_watch || s.shell_.offers_drill || s.shell_.offers_questions) s.no_offers();
        else if (any() && vine().look() && vine().look()->moved) vine().leave_cut();
        else if (any() && vine().pulled()) vine().pull({});
        else if (any() && vine().tool != HandTool::none) {
            vine().tool = HandTool::none;
            vine().calliper_asked = false;
        } else if (any()) vine().choose({});
    }
    // ---- the way through
    void operator()(const ask::GoToStep& a) {
        if (any()) go_to(a.step);
    }
    void operator()(const ask::NextStep&) {
        if (!any()) return;
        if (vine().finished()) return s.acted(s.next_vine());
        // What is to be shown is shown before the strip goes on.
        if (vine().to_be_shown(vine().step())) return go_to(vine().step());
        // From a step left early the strip goes on to the next one; it names what is still to do, and never blocks.
        go_to(step_after(vine().strip(), vine().step()));
    }
    void operator()(const ask::NextVine&) { s.acted(s.next_vine()); }
    void operator()(const ask::RowOf& a) { s.shell_.row_system = a.system; }
    void operator()(const ask::OpenScene& a) {
        s.acted(s.open_of_scene(a.name, a.number, [this_session = &s](Opened opened) { return this_session->open(std::move(opened)); }));
    }
    void operator()(const ask::OpenCode& a) { s.acted(s.open_named(a.code)); }
    void operator()(const ask::OfferTaken& a) {
        if (!s.keeping_.offered()) return;
        if (a.yes) return s.acted(s.take_up(*s.keeping_.offered()));
        (void)s.keeping_.take_offered();
        s.shell_.offered = false;
        s.keeping_.set_aside();
    }
    void operator()(const ask::StopGrowing&) { s.stop_growing(); }
    void operator()(const ask::SpringVisit& a) {
        if (any()) s.visit_in_spring(a.on);
    }
    // ---- the next winter
    void operator()(const ask::NextWinter&) {
        if (any()) told(s.live_on());
    }
    void operator()(const ask::PruneOfTwo& a) { s.prune_of_two(a.which); }
    void operator()(const ask::BackToTwo&) { s.back_to_two(); }
    void operator()(const ask::LeaveTwo&) { s.leave_two(); }
    void operator()(const ask::Disagree& a) {
        s.shell_.message.reset();
        if (any()) s.acted(s.keeping_.keep_disagreement(vine(), a.note));
    }
    // ---- shown on the vine: nothing of it is the trainee's work, so that no act is kept
    void operator()(const ask::Watch& a) {
        if (!any()) return;
        if (!a.on) return ended();
        s.no_offers();
        s.watched_ = true;
        s.shell_.screen = Screen::row;
        told(vine().watch());
    }
    void operator()(const ask::WatchOwn&) { ended(); }
    void operator()(const ask::Drill&) {
        if (!any()) return;
        s.shell_.offers_drill = false;
        s.shell_.screen = Screen::row;
        told(vine().begin_drill());
    }
    void operator()(const ask::Questions&) {
        if (!any()) return;
        s.shell_.offers_questions = false;
        s.shell_.screen = Screen::row;
        told(vine().begin_questions());
    }
    void operator()(const ask::BudSampling&) {
        if (!any()) return;
        s.shell_.screen = Screen::row;
        told(vine().begin_buds());
    }
    void operator()(const ask::DrillEnd&) {
        s.shell_.offers_drill = s.shell_.offers_questions = false;
        if (any() && (vine().drill() || vine().buds() || vine().questions())) vine().end_showing();
        s.shell_.message.reset();
    }
    // ---- the house's own rules
    void operator()(const ask::HouseFrom& a) { s.changed_house(s.house_.begin_from(a.shipped)); }
    void operator()(const ask::HouseStep& a) { s.changed_house(s.house_.step(a.part, a.steps)); }
    void operator()(const ask::HouseAsShipped& a) {
        s.changed_house(a.part.rule.empty() ? s.house_.all_as_shipped() : s.house_.as_shipped(a.part.rule, a.part.name));
    }
    void operator()(const ask::HouseIn& a) { s.changed_house(s.house_.read_in(a.path)); }
    void operator()(const ask::HouseOut& a) {
        if (auto written = s.house_.write_out(a.path); !written) return s.say(written.error());
        s.shell_.message = Message{{"screen.house.written"}, {{"path", a.path}}};
    }
    // ---- the crew's quiz
    void operator()(const ask::Wall&) { s.go_to_wall(); }
    void operator()(const ask::WallKind& a) {
        if (CrewQuiz* crew = setting_up()) crew->setup.turn(a.kind);
    }
    void operator()(const ask::WallQuestions& a) {
        if (CrewQuiz* crew = setting_up()) crew->setup.questions = std::clamp(a.n, fewest_questions, most_questions);
    }
    void operator()(const ask::WallPosts& a) {
        if (CrewQuiz* crew = setting_up()) crew->setup.posts = std::clamp(a.n, 0, most_posts);
    }
    void operator()(const ask::WallLanguages& a) {
        if (CrewQuiz* crew = setting_up()) crew->setup.two_languages = a.two;
    }
    void operator()(const ask::WallBegin&) { s.begin_quiz(false); }
    void operator()(const ask::WallGoOn&) { s.begin_quiz(true); }
    void operator()(const ask::WallDo& a) { s.happen(a.event); }
    void operator()(const ask::WallClose&) { s.close_wall(); }
    // ---- look and say
    void operator()(const ask::Looks&) { s.go_to_looks(); }
    void operator()(const ask::LooksSkill& a) {
        if (s.looks_) s.looks_->turn(a.skill);
    }
    // ---- the scale and the book
    void operator()(const ask::Weigh&) { told(s.go_to_scale()); }
    void operator()(const ask::WeighDo& a) {
        if (s.weighing_) told(s.weighing_->act(a.act));
    }
    void operator()(const ask::WeighUndo& a) {
        if (!s.weighing_) return;
        if (a.step > 0) s.take_weighing_back();
        else s.do_weighing_again();
        s.shell_.message.reset();
    }
    void operator()(const ask::WeighWrite& a) {
        if (s.weighing_) s.wrote_down(s.weighing_->write(a.typed, a.noted_wet));
    }
    void operator()(const ask::WeighAgain&) {
        while (s.weighing_ && s.weighing_->can_undo()) s.weighing_->undo();
        s.next_buds_.reset();
        s.shell_.message.reset();
    }
    void operator()(const ask::LeaveOut& a) {
        if (s.next_buds_) s.next_buds_->leave_out(a.winter, a.yes);
    }
    void operator()(const ask::SayNext& a) {
        if (s.next_buds_) s.said_next(s.next_buds_->say(a.by_weight, a.by_space, a.keep));
    }
    void operator()(const ask::WeighClose&) {
        if (s.shell_.message) s.shell_.message.reset();
        else s.leave_scale();
    }
    void operator()(const ask::Book&) { s.go_to_book(); }
    void operator()(const ask::BookDo& a) { s.do_in_book(a.act); }
    void operator()(const ask::BookPaper& a) { told(s.set_on_paper(a)); }
    void operator()(const ask::PractiseLike&) { told(s.practise_like()); }
    void operator()(const ask::LooksBegin&) {
        s.shell_.message.reset();
        if (s.looks_) s.looks_->begin(s.fresh_seed_());
    }
    void operator()(const ask::LookSaid& a) {
        if (s.looks_) told(s.looks_->answer(a.said));
    }
    void operator()(const ask::LookNext&) {
        if (s.looks_) s.looks_->next();
    }
    void operator()(const ask::LooksEnd&) {
        if (s.looks_) s.looks_->end();
    }
    void operator()(const ask::LooksClose&) { s.close_looks(); }
    // ---- who sits here
    void operator()(const ask::Seat&) { s.go_to_seat(); }
    void operator()(const ask::Sits& a) { s.sit(a.number); }
    void operator()(const ask::SitsNew&) { s.sit_new(); }
    // ---- what a named person says of another
    void operator()(const ask::Sign&) { s.go_to_sign(); }
    void operator()(const ask::SignOf& a) { s.open_sign_page(a.number); }
    void operator()(const ask::SignOff& a) { s.sign_off(a); }
    void operator()(const ask::WithdrawSign& a) { s.withdraw(a); }
    void operator()(const ask::SayConsent& a) { s.say_consent(a.yes); }
    // ---- the way on
    void operator()(const ask::CrewPage&) { s.go_to_crew_page(); }
    void operator()(const ask::Way&) { s.go_to_way(); }
    void operator()(const ask::TakeWay&) { s.take_way(); }
    // ---- the ladder
    void operator()(const ask::Ladder&) { s.go_to_ladder(); }
    void operator()(const ask::LadderVine& a) { s.acted(s.open_ladder_vine(a)); }
    void operator()(const ask::OpenMet& a) { s.acted(s.open_met_vine(a.at)); }
    // ---- the shell
    void operator()(const ask::Hatch& a) { s.shell_.hatch = a.on; }
    void operator()(const ask::GoTo& a) {
        if (a.screen != Screen::row || any()) s.shell_.screen = a.screen;
    }
    void operator()(const ask::Speak& a) { s.acted(s.speak(a.language)); }
    template <class Asked>
        requires of_settings<Asked>
    void operator()(const Asked& a) {
        (void)change_settings(s.shell_.settings, a);
        if constexpr (std::is_same_v<Asked, ask::StepFeedback>)
            if (any()) vine().step_feedback = a.on, vine().silent = false;
        if constexpr (std::is_same_v<Asked, ask::SafetySeen>) s.shell_.screen = any() ? Screen::row : Screen::home;
        s.keep_settings();
    }
    void operator()(const ask::CloseMessage&) { s.shell_.message.reset(); }
    void operator()(const ask::Leave&) { s.leaving_ = true; }

private:
    CrewQuiz* setting_up() { return s.crew_ && s.crew_->stage() == QuizStage::setting_up ? &*s.crew_ : nullptr; }
    void told(const Result<void>& result) {
        if (result) s.shell_.message.reset();
        else s.say(result.error());
    }
    void ended() {
        s.no_offers();
        if (any()) vine().end_showing();
        s.shell_.message.reset();
    }
    void go_to(Step step) {
        vine().go_to(step);
        if (vine().finished()) s.came_to_the_end();
    }
};

bool Session::carry_out(const Request& request) {
    const auto is = [&](auto test) { return std::visit([&](const auto& asked) { return test(asked); }, request); };
    if (is([](const auto& asked) { return of_looking<std::decay_t<decltype(asked)>>; })) return false;
    const bool hand = is([](const auto& asked) { return of_the_hand<std::decay_t<decltype(asked)>>; }),
               vine = is([](const auto& asked) { return of_the_vine<std::decay_t<decltype(asked)>>; });
    if (practice_ && ((hand && practice_->hand_rests()) || ((hand || vine) && shows_two()))) {
        say({Fault::not_allowed, {"error.practice.hand-rests"}, {}, {}});
        return true;
    }
    if (practice_)
        if (const auto carried = carry_out_on(*practice_, request)) {
            answer(*carried);
            return true;
        }
    std::visit(Asker{*this}, request);
    return true;
}

}  // namespace spurwright::practice
