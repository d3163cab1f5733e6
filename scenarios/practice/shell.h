// What is around the vine in hand: which screen, what is to be said, what was found from before. Plain state for the
// screens to draw. Must not know: screens' layout, files.
#pragma once

#include <atomic>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/house_rules_file.h"
#include "scenarios/practice/practice.h"
#include "scenarios/practice/request.h"
#include "scenarios/records/people.h"
#include "scenarios/settings/settings.h"

namespace spurwright::practice {

// A sentence for the person, with a way out: a refusal, or that something is not saved.
struct Message {
    TextKey key;
    Arguments arguments;
};

// A scene as the shed lists it.
struct SceneLine {
    std::string name, title_key, task_key;
    std::size_t vines = 0;
};

// A vine to come back to: of a scene by name and number, else by its code.
struct WalkedVine {
    std::string code, scene;
    std::size_t number = 0;
    bool operator==(const WalkedVine&) const = default;
};

// A vine that is sought beside the picture: seeds tried so far, of at most so many.
struct Growing {
    std::shared_ptr<std::atomic<int>> tried = std::make_shared<std::atomic<int>>(0);
    int of = 0;
};

struct Shell {
    Screen screen = Screen::home;
    settings::Settings settings;
    std::optional<Message> message;   // shown until closed or the next act
    bool read_only = false;           // another window of this program keeps the work
    bool offered = false;             // work from before lies there: OfferTaken
    WalkedVine offered_vine;          // the one it was done on; neither code nor scene where only its file is kept
    std::size_t offered_acts = 0;
    std::optional<Growing> growing;   // stands before everything until it is there or not wanted
    bool searching = false;           // the plans are still being counted
    std::string machine;              // what draws
    std::string view = "row";         // word of scene::View now in force; empty: moved since
    bool orbit = false, hatch = false;
    bool offers_watch = false, offers_drill = false, offers_questions = false;  // before the first act: to watch it done, to say old or new
    System row_system{};               // of the vines that the row goes on with
    std::vector<SceneLine> scenes;     // those that there are, in the order they are walked
    std::vector<WalkedVine> walked;    // finished in this sitting
    std::optional<records::Person> sits;   // at this window; none: what is done is nobody's
    std::vector<records::Person> people;   // to pick from, as last read
    io::HouseRulesFile house;          // the house's own rules
    rules::HouseRules house_shipped;   // the set they begin from
};

}  // namespace spurwright::practice
