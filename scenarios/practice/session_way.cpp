// The way on from the session: read from the records, taken, and vines met before opened again.
#include "scenarios/practice/session.h"

namespace spurwright::practice {

void Session::go_to_way() {
    shell_.message.reset();
    shell_.screen = Screen::way;
    auto read = way_ahead(records_.store_file(), sitter());
    if (!read) say(read.error());
    way_ = read ? *std::move(read) : WayAhead{};
    if (way_->past.empty()) way_->next = learning::way_on({}, {}, {2000, 1, 1}, 0);
}

void Session::go_to_crew_page() {
    shell_.message.reset();
    shell_.screen = Screen::crew;
    crew_page_.emplace();
    auto store = records::Store::open_to_read(records_.store_file());
    if (!store) return say(store.error());
    if (!*store) return;
    auto view = records::crew_view(**store, records::today());
    if (!view) return say(view.error());
    crew_page_ = *std::move(view);
}

Result<void> Session::open_met_vine(std::size_t at) {
    if (!way_ || at >= way_->past.size()) return {};
    auto met = open_met(records_.store_file(), way_->past[at]);
    if (!met) return failure(std::move(met.error()));
    begin(std::move(met->task));
    for (const Edit& edit : met->before.edits) {
        (void)practice_->act(edit);
        if (practice_->waiting()) (void)practice_->confirm();
    }
    if (practice_->can_undo()) no_offers();
    keep_work();
    return {};
}

void Session::take_way() {
    if (!way_) return;
    switch (way_->next.thing) {
        case learning::NextThing::first_scene: return acted(open(open_scene(assets_, shell_.scenes.front().name, 0)));
        case learning::NextThing::looks: return go_to_looks();
        case learning::NextThing::met_vine: return acted(open_met_vine(way_->next.at));
        case learning::NextThing::new_vine: break;
    }
    const auto code = code_at_difficulty([this] { return next_code(fresh_seed_); }, house_.rules(), way_->next.difficulty);
    acted(code ? open_named(*code) : Result<void>(failure(code.error())));
}

}  // namespace spurwright::practice
