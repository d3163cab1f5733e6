#include <doctest/doctest.h>

#include "tests/ui/driver.h"
#include "tests/ui/staged.h"

using namespace spurwright;
using test::Staged;

TEST_CASE("every command has words in each language, shown on no two commands of one screen") {
    for (const std::string_view language : words::languages) {
        const words::Words words = test::words_of_language(std::string(language));
        for (const ui::Command& a : ui::commands()) {
            const std::string name = words("screen.do." + std::string(a.name));
            CHECK_FALSE(name.starts_with("["));
            for (const ui::Command& b : ui::commands())
                if (&a < &b && (a.places & b.places))
                    CHECK_MESSAGE(name != words("screen.do." + std::string(b.name)), name);
        }
    }
}

TEST_CASE("no key does two things on one screen") {
    const auto keys_of = [](const ui::Command& c) { return std::vector<ui::KeyPress>{c.key, c.second}; };
    for (const ui::Command& a : ui::commands())
        for (const ui::Command& b : ui::commands())
            for (const ui::KeyPress& x : keys_of(a))
                for (const ui::KeyPress& y : keys_of(b))
                    if (&a < &b && (a.places & b.places) && x.key != 0)
                        CHECK_MESSAGE(!(x == y), std::string(a.name), " and ", std::string(b.name));
}

TEST_CASE("Find lists each command that can be done on the screen") {
    for (const Staged& one : test::all_staged()) {
        if (one.views.sheet != ui::Sheet::find) continue;
        test::Driver driver({});
        driver.views = one.views;
        driver.settle(one.state());
        for (const ui::Command& command : ui::commands()) {
            if (command.name == "find" || command.name == "enter") continue;
            CHECK_MESSAGE((driver.probe().find("find." + std::string(command.name)) != nullptr) ==
                              command.possible(one.state()),
                          std::string(command.name));
        }
    }
}
