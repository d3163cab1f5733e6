#include "sim/rules/wood_age.h"

namespace spurwright::rules {
namespace {

Said said_of_age(int age, std::string_view key, Arguments arguments) {
    Said said;
    said.measured = age * 1000;
    said.unit = Unit::years;
    said.full = Wanted{1000, 1000};
    said.key = TextKey{key};
    said.arguments = std::move(arguments);
    return said;
}

}  // namespace

PerMille mark_wood_age(const CaneFacts& cane) { return cane.wood_age == 1 ? full_mark : no_mark; }

Said say_wood_age(const CaneFacts& cane) {
    return said_of_age(cane.wood_age, "rule.wood-age.full", {{"part", cane.axis}});
}

Said say_old_wood_laid(AxisId axis, int age, Side side) {
    Said said = said_of_age(age, "rule.wood-age.old", {{"part", axis}, {"n", Count{age}}, {"side", side_key(side)}});
    if (age == 2) said.measured_word = "two-year";
    return said;
}

const Rule wood_age{RuleName::wood_age, {"rule.wood-age.asks"}, Group::cane_choice, Step::choose,
                    Per::cane,          Status::choice,         wood_age_claims,    {"rule.wood-age.missing"}};

}  // namespace spurwright::rules
