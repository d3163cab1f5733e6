// Every screen in the states that differ in what is drawn, for tests that look at all of them and for the pages.
#pragma once

#include <string>
#include <vector>

#include "render/ui/screens.h"

namespace spurwright::test {

struct Staged {
    std::string name;
    practice::Shell shell;
    std::shared_ptr<practice::Practice> practice;
    ui::Views views;
    ui::Marks marks;
    std::shared_ptr<practice::TwoVines> two{};
    std::shared_ptr<practice::CrewQuiz> crew{};
    std::shared_ptr<weighing::Exercise> weighing{};
    std::shared_ptr<practice::BookDesk> book{};
    std::shared_ptr<practice::LookDrill> looks{};
    std::shared_ptr<practice::WayAhead> way{};
    std::shared_ptr<records::CrewView> crew_page{};
    std::shared_ptr<weighing::NextBuds> next_buds{};
    std::shared_ptr<practice::LadderDesk> ladder{};
    std::shared_ptr<practice::SignDesk> sign{};
    ui::State state() const { return state_with(shell); }
    ui::State state_with(const practice::Shell& other) const { return {other, practice.get(), two.get(), crew.get(), weighing.get(), book.get(), looks.get(), way.get(), crew_page.get(), next_buds.get(), ladder.get(), sign.get()}; }
};

// A grown vine, uncut.
practice::Practice grown_practice();
// The same, pruned by a beginner, looked back on with the plans counted.
practice::Practice finished_practice();

std::vector<Staged> all_staged();

} // namespace spurwright::test
