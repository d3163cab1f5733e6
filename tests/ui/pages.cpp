// Saves every screen as a picture, to be looked at: pages FOLDER [LANGUAGE PERCENT WIDTHxHEIGHT FACE [NAME...]]
#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>

#include "tests/ui/driver.h"
#include "tests/ui/page.h"
#include "tests/ui/staged.h"

using namespace spurwright;

int main(int count, char** arguments) {
    doctest::Context context;
    context.setAsDefaultForAssertsOutOfTestCases();
    const std::vector<std::string> asked(arguments + 1, arguments + count);
    if (asked.empty()) return 2;
    test::Look look;
    if (asked.size() > 1) look.language = asked[1];
    if (asked.size() > 2) look.percent = std::stoi(asked[2]);
    if (asked.size() > 3 && std::sscanf(asked[3].c_str(), "%dx%d", &look.width, &look.height) != 2) return 2;
    if (asked.size() > 4 && asked[4] == "dusk") look.face = ui::Face::dusk;
    for (const test::Staged& staged : test::all_staged()) {
        if (asked.size() > 5 && std::find(asked.begin() + 5, asked.end(), staged.name) == asked.end()) continue;
        test::Driver driver(look);
        driver.views = staged.views;
        practice::Shell shell = staged.shell;
        shell.settings.language = look.language;
        shell.settings.text_percent = look.percent;
        driver.settle(staged.state_with(shell), staged.marks);
        test::Page page = test::plain_ground(look.width, look.height);
        test::draw_on(page, *ImGui::GetDrawData());
        test::save_png(page, asked[0] + "/" + staged.name + "-" + look.language + "-" + std::to_string(look.percent) +
                                 ".png");
    }
    return 0;
}
