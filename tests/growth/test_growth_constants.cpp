// The table of constants: every field of the model described once, in range, with its status.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string_view>

#include "sim/growth/growth_constants.h"

using namespace spurwright;

TEST_SUITE("growth/constants") {
    TEST_CASE("every field has exactly one row, in the order of the struct, inside its range") {
        const auto rows = growth::constant_rows();
        REQUIRE(rows.size() == sizeof(growth::Constants) / sizeof(double));
        growth::Constants constants;
        const double* field = &(constants.*rows[0].value);
        std::set<std::string_view> names;
        for (const growth::ConstantRow& row : rows) {
            CAPTURE(row.name);
            CHECK(&(constants.*row.value) == field++);
            CHECK(names.insert(row.name).second);
            CHECK(constants.*row.value >= row.low);
            CHECK(constants.*row.value <= row.high);
            CHECK_FALSE(row.unit.empty());
            CHECK_FALSE(row.source.empty());
            if (row.status == growth::ValueStatus::read) CHECK(row.source != "-");
        }
    }
    TEST_CASE("trials keep their own references: 54 shoots at 1.8 m, 125 cm, joints of 5.2 cm, no handling loss") {
        const growth::Constants trial = growth::trial_constants();
        CHECK(trial.capacity_per_m_moderate * 1.8 == doctest::Approx(54));
        CHECK(trial.length_ref_moderate == 125);
        CHECK(trial.internode_ref == 5.2);
        CHECK(trial.bud_loss_handling == 0);
    }
    TEST_CASE("no law of growth or of the season keeps a number of its own beside the table") {
        // The frozen pruner, the young stem's shape and scenes' temptations have their numbers at home; the sentinel and
        // the published tables' own bases are no constants of ours.
        const std::set<std::string> at_home{"history_pruner.cpp", "history_choice.cpp", "history_cuts.cpp",
                                            "cordon_pruner.cpp",  "training.cpp",       "tempt.cpp",
                                            "added_wood.cpp"};
        const std::set<std::string> no_constants{"no_hedge", "chilling_base", "between_10_and_90"};
        int files = 0;
        for (const char* folder : {"growth", "weather"})
            for (const auto& entry :
                 std::filesystem::directory_iterator(std::filesystem::path(SPURWRIGHT_SOURCE) / "sim" / folder)) {
                ++files;
                if (at_home.count(entry.path().filename().string())) continue;
                std::ifstream in(entry.path());
                for (std::string line; std::getline(in, line);) {
                    std::istringstream words(line);
                    std::string a, b, name;
                    words >> a;
                    if (a == "static" || a == "inline") words >> a;
                    words >> b >> name;
                    CAPTURE(entry.path().filename().string());
                    CAPTURE(line);
                    CHECK_FALSE((a == "constexpr" && b == "double" && name.find('(') == std::string::npos &&
                                 !no_constants.count(name)));
                }
            }
        CHECK(files > 40);
    }
}
