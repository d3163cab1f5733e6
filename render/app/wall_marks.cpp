#include "render/app/wall_marks.h"

namespace spurwright::app {
namespace {

// The posts that chose a place, and how many others.
std::string votes_at(const quiz::ItemState& state, std::uint8_t digit, const ui::Ui& ui) {
    std::string text;
    int others = 0;
    const auto chose = [&](const quiz::Answer& answer) {
        for (const std::uint8_t d : answer)
            if (d == digit) return true;
        return false;
    };
    for (const auto& [voter, answer] : state.last().voters) {
        if (!chose(answer)) continue;
        if (voter.way == quiz::Way::post) text += (text.empty() ? "" : " ") + ui.say("screen.wall.post-tape", {{"n", Count{voter.number}}});
        else ++others;
    }
    for (const auto& [answer, hands] : state.last().hands)
        if (chose(answer)) others += hands;
    if (others > 0) text += (text.empty() ? "" : " ") + ui.say("screen.wall.votes", {{"n", Count{others}}});
    return text;
}

}  // namespace

Overlay wall_overlay(const quiz::Quiz& quiz, const shape::VineShape& shape, const scene::Camera& camera, const ui::Ui& ui, float width, float height) {
    Overlay out;
    const Projection at(camera, width, height);
    const quiz::Item& item = quiz.item();
    const bool revealed = quiz.phase() == quiz::Phase::revealed;
    for (std::size_t i = 0; i < item.places.size(); ++i) {
        const auto place = place_of(shape, item.vine, {axis_of(item.places[i].node), item.places[i].node, item.places[i].beyond});
        const auto on = place ? at(*place) : std::nullopt;
        if (!on) continue;
        if (item.places.size() == 1) {  // one place asked about: a ring, no digit
            out.marks.rings.push_back(*on);
            continue;
        }
        ui::DigitTag tag;
        tag.at = *on;
        tag.digit = static_cast<int>(i) + 1;
        const auto digit = static_cast<std::uint8_t>(tag.digit);
        if (revealed) {
            for (const quiz::Answer& answer : quiz.state().accepted)
                for (const std::uint8_t d : answer) tag.right = tag.right || d == digit;
            tag.wrong = !tag.right;
            tag.votes = votes_at(quiz.state(), digit, ui);
        }
        out.marks.digits.push_back(std::move(tag));
    }
    return out;
}

Overlay look_overlay(const practice::LookDrill& looks, const shape::VineShape& shape, const scene::Camera& camera, float width, float height) {
    Overlay out;
    const drill::Look* look = looks.look();
    if (!look) return out;
    const Projection at(camera, width, height);
    const quiz::Item& item = look->item;
    for (std::size_t i = 0; i < item.places.size(); ++i) {
        const auto place = place_of(shape, item.vine, {axis_of(item.places[i].node), item.places[i].node, item.places[i].beyond});
        const auto on = place ? at(*place) : std::nullopt;
        if (!on) continue;
        if (!look->pair()) {
            out.marks.rings.push_back(*on);
            continue;
        }
        ui::DigitTag tag;
        tag.at = *on;
        tag.digit = static_cast<int>(i) + 1;
        if (looks.stage() == practice::LookStage::told) {
            tag.right = item.accepted.front().front() == tag.digit;
            tag.wrong = !tag.right;
        }
        out.marks.digits.push_back(std::move(tag));
    }
    return out;
}

}  // namespace spurwright::app
