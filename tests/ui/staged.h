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
    ui::State state() const { return {shell, practice.get(), two.get(), crew.get()}; }
};

// A grown vine, uncut.
practice::Practice grown_practice();
// The same, pruned by a beginner, looked back on with the plans counted.
practice::Practice finished_practice();

std::vector<Staged> all_staged();

} // namespace spurwright::test
