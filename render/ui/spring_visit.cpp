#include "render/ui/spring_visit.h"

#include <cmath>

#include "render/ui/row_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using ahead::Figure;
using practice::FrostWay;
using practice::SpringVisit;

// "4 May", of a day of the year.
std::string date_text(const Ui& ui, int day) {
    constexpr std::array<std::string_view, 12> months{"jan", "feb", "mar", "apr", "may", "jun",
                                                      "jul", "aug", "sep", "oct", "nov", "dec"};
    constexpr std::array<int, 12> lengths{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    std::size_t month = 0;
    while (month + 1 < months.size() && day > lengths[month]) day -= lengths[month++];
    return ui.say("date." + std::string(months[month]), {{"n", Count{day}}});
}

std::string temperature_text(const Ui& ui, double celsius) {
    const auto tenths = std::llround(std::fabs(celsius) * 10);
    return ui.say(celsius < 0 ? "screen.spring.below" : "screen.spring.above", {{"n", Tenths{static_cast<std::int32_t>(tenths)}}});
}

void wood_line(Ui& ui, const char* key, const SpringVisit::Wood& wood) {
    if (wood.buds > 0)
        text(ui, ui.say(key, {{"dead", Count{wood.dead}}, {"of", Count{wood.buds}}, {"open", Count{wood.open}}}));
}

std::string spread_text(const Ui& ui, const ahead::Spread& spread, bool share) {
    const auto number = [&](double value) { return share ? Argument{Count{std::llround(value * 100)}} : Argument{Ratio{std::round(value * 10) / 10}}; };
    return ui.say("screen.two.value", {{"own", number(spread.median)}, {"low", number(spread.low)}, {"high", number(spread.high)}});
}

// Over all draws, a way a line.
void ways_table(Ui& ui, const SpringVisit& visit) {
    if (!ImGui::BeginTable("###spring-ways", 4, ImGuiTableFlags_SizingStretchProp)) return;
    for (const float weight : {1.3f, 0.7f, 1.1f, 1.1f}) ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, weight);
    for (const char* head : {"screen.spring.way", "screen.spring.opens", "screen.spring.lost", "screen.spring.fruit"}) {
        ImGui::TableNextColumn();
        text(ui, ui.say(head), true);
    }
    for (std::size_t i = 0; i < practice::frost_way_count; ++i) {
        if (!visit.ways[i]) continue;
        const ahead::AheadWinter& told = visit.ways[i]->told;
        ImGui::TableNextColumn();
        text(ui, ui.say("screen.spring.way-" + std::string(word_of(static_cast<FrostWay>(i)))));
        ImGui::TableNextColumn();
        const ahead::Spread& opens = told[Figure::open_day];
        text(ui, opens.known ? date_text(ui, static_cast<int>(std::lround(opens.median))) : ui.say("screen.two.none"));
        ImGui::TableNextColumn();
        text(ui, spread_text(ui, told[Figure::frost_loss_share], true));
        ImGui::TableNextColumn();
        text(ui, spread_text(ui, told[Figure::yield_kg], false));
    }
    ImGui::EndTable();
    const auto& kicker = visit.ways[static_cast<std::size_t>(FrostWay::kicker)];
    if (kicker) text(ui, ui.say("screen.spring.kicker-laid", {{"n", Count{kicker->kickers_laid}}, {"of", Count{ahead::weather_draws}}}));
    if (kicker) text(ui, ui.say("screen.spring.no-delay"));
    text(ui, ui.say("screen.spring.how", {{"n", Count{ahead::weather_draws}}, {"date", date_text(ui, visit.day)}}), true);
}

Asked decide(Ui& ui, const SpringVisit& visit) {
    if (visit.laid.buds == 0) {
        text(ui, ui.say("screen.spring.nothing-laid"));
        return {};
    }
    if (visit.kickers.empty()) {
        text(ui, ui.say(visit.laid_sound ? "screen.spring.none-sound" : "screen.spring.none-dead"));
        return {};
    }
    if (visit.said) {
        const std::string key = std::string("screen.spring.") + (visit.laid_sound ? "sound-" : "dead-") + (visit.said_off ? "off" : "kept");
        strong_text(ui, ui.say(visit.right() ? "screen.spring.right" : "screen.spring.wrong"));
        text(ui, ui.say(key));
        return {};
    }
    Asked asked;
    strong_text(ui, ui.say("screen.spring.asks"));
    const std::string off = ui.say("screen.spring.take-off"), keep = ui.say("screen.spring.keep");
    if (button(ui, "look.spring-off", off)) asked = ask::SayStanding{true};
    flow(ui, button_width(ui, keep));
    if (button(ui, "look.spring-keep", keep)) asked = ask::SayStanding{false};
    return asked;
}

} // namespace

Asked spring_visit_part(const State& state, Views& views, Ui& ui) {
    const practice::Practice& practice = *state.practice;
    if (const auto* lived = practice.spring_lived()) {
        text(ui, ui.say("screen.spring.living", {{"n", Count{*lived}}, {"of", Count{practice::springs_lived}}}));
        return {};
    }
    const SpringVisit& visit = *practice.spring();
    if (!views.look.spring_shown) ImGui::SetScrollY(0); // asked for at the foot of a long panel
    strong_text(ui, ui.say("screen.spring.title", {{"date", date_text(ui, visit.day)}}));
    text(ui, ui.say("screen.spring.night", {{"date", date_text(ui, visit.frost_day)},
                                            {"text", temperature_text(ui, visit.frost_c)},
                                            {"opened", date_text(ui, visit.open_day)}}));
    wood_line(ui, "screen.spring.laid", visit.laid);
    wood_line(ui, "screen.spring.spurs", visit.spurs);
    if (visit.laid.buds > 0) wood_line(ui, "screen.spring.standing", visit.standing);
    Asked asked = decide(ui, visit);
    if (visit.laid.buds > 0 && (visit.said || visit.kickers.empty())) ways_table(ui, visit);
    if (button(ui, "look.spring-close", ui.say("screen.grow.close"), {Weight::main, true, false, 0, {}}))
        asked = ask::SpringVisit{false};
    return asked;
}

} // namespace spurwright::ui
