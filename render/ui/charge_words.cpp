#include "render/ui/charge_words.h"

namespace spurwright::ui {
namespace {

using planning::FindingShare;
using planning::LostTo;
using practice::ChargedLook;
using practice::Practice;

std::string of_act(const Ui& ui, const Practice& practice, const ChargedLook& charged, const planning::Charge& charge) {
    return review::charge_sentence(charge, charged.plan.edits[charge.edit], practice.now(), charged.row_before(charge.edit), ui.words);
}

std::vector<std::string> season_of(const Ui& ui, const ChargedLook& charged, std::optional<std::size_t> edit) {
    const ahead::ActAhead* lived = charged.seasons ? ahead::find_act(*charged.seasons, edit) : nullptr;
    return lived ? review::season_sentences(*lived, ui.words) : std::vector<std::string>{};
}

std::string act_share(const Ui& ui, const Practice& practice, const ChargedLook& charged, const FindingShare& share) {
    const planning::Charge* charge = charged.of_act(share.edit);
    if (!charge) {
        const practice::NamedAct act = practice::named(charged.plan.edits[share.edit], practice.now());
        return ui.say("screen.look.to-even", {{"edit", counted(share.edit + 1)}, {"act", ui.words.sentence(act.key, act.arguments)}});
    }
    const std::string whole = of_act(ui, practice, charged, *charge);
    if (share.lost == charge->lost) return whole;
    return ui.say(share.lost > charge->lost ? "screen.look.more-here" : "screen.look.of-it-here", {{"text", whole}, {"lost", share.lost}});
}

} // namespace

std::string charge_words(const Ui& ui, const Practice& practice, const practice::Walked& stop) {
    const practice::LookBack& look = *practice.look();
    if (stop.stop == practice::Stop::cap && look.charged)
        return review::cap_charge_sentence(look.charged->caps[stop.at], look.charged->plan, practice.now(), ui.words);
    const auto share = practice::charged_to(look, stop);
    if (!share) return {};
    switch (share->to) {
    case LostTo::vine: return ui.say("screen.look.to-vine", {{"lost", share->lost}});
    case LostTo::act: return act_share(ui, practice, *look.charged, *share);
    case LostTo::open:
        return look.charged->charges.mending ? review::mending_sentence(*look.charged->charges.mending, ui.words) : std::string();
    case LostTo::hand: return ui.say("screen.look.to-hand", {{"lost", share->lost}});
    }
    return {};
}

std::vector<std::string> season_words(const Ui& ui, const Practice& practice, const practice::Walked& stop) {
    const auto share = practice::charged_to(*practice.look(), stop);
    if (!share || (share->to != LostTo::act && share->to != LostTo::open)) return {};
    return season_of(ui, *practice.look()->charged, share->to == LostTo::act ? std::optional(share->edit) : std::nullopt);
}

std::optional<std::size_t> charged_act(const Practice& practice) {
    const auto& look = practice.look();
    if (!look || look->current >= look->walk.size()) return std::nullopt;
    const practice::Walked& stop = look->walk[look->current];
    auto share = practice::charged_to(*look, stop);
    if (stop.stop == practice::Stop::cap && look->charged) share = FindingShare{look->charged->caps[stop.at].to, look->charged->caps[stop.at].edit, {}};
    if (!share || share->to != LostTo::act || share->edit < practice.task().begun.edits.size()) return std::nullopt;
    return share->edit;
}

std::vector<review::Told::Act> all_charge_words(const Ui& ui, const Practice& practice) {
    std::vector<review::Told::Act> told;
    if (!practice.look()->charged) return told;
    const ChargedLook& charged = *practice.look()->charged;
    for (std::size_t i = 0; i < charged.caps.size(); ++i) {
        const rules::Cap& cap = practice.look()->mine.caps[i];
        told.push_back({ui.words.sentence(cap.key, cap.arguments) + " " + review::cap_charge_sentence(charged.caps[i], charged.plan, practice.now(), ui.words), {}});
    }
    for (const planning::Charge& charge : charged.charges.edits) told.push_back({of_act(ui, practice, charged, charge), season_of(ui, charged, charge.edit)});
    if (charged.charges.mending) told.push_back({review::mending_sentence(*charged.charges.mending, ui.words), season_of(ui, charged, std::nullopt)});
    Tenths hand;
    for (const planning::HandLoss& loss : charged.charges.hand) hand += loss.lost;
    if (hand.count != 0) told.push_back({review::hand_sentence(hand, ui.words), {}});
    return told;
}

} // namespace spurwright::ui
