// Where the person's eye turns: by keys, by request, to what was walked to, to what is shown. Must not know: the session,
// windows, OpenGL.
#pragma once

#include <span>

#include "render/app/eye.h"
#include "render/app/place_on_vine.h"
#include "render/ui/ui.h"
#include "scenarios/practice/practice.h"
#include "scenarios/practice/request.h"

namespace spurwright::app {

class Gaze {
public:
    explicit Gaze(Eye& eye) : eye_(eye) {}

    // Turning the head, leaning, coming closer. `rests`: plain arrows are the way to the next and back; `ahead`: what the
    // picture shows in its middle. True where it moved.
    bool by_keys(std::span<const ui::KeyPress> presses, bool rests, glm::vec3 ahead);
    // Requests about looking; false for any other.
    bool by_request(const practice::Request& request, const practice::Practice& practice, const shape::VineShape& shape);
    void to_piece(const practice::Practice& practice, const shape::VineShape& shape);  // of the look back
    // What was walked to by keys, where it does not stand in the middle part of the picture.
    void to_walked(const practice::Practice& practice, const shape::VineShape& shape, const Projection& drawn);
    // The eye goes with the act watched or the place touched, once each; acts on the vine as a whole are seen from the row.
    // `practice`: none where none is shown. `high`: its panel takes much of the picture's foot. True where it turned.
    bool to_shown(const practice::Practice* practice, const shape::VineShape& shape, bool high);

private:
    Eye& eye_;
    std::size_t turned_to_ = 0;  // act watched or place touched that the eye was turned to last, from 1; 0: none
};

}  // namespace spurwright::app
