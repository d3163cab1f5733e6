#include "render/app/drawing_verbs.h"

#include "render/app/export_verb.h"
#include "render/app/picture_verb.h"
#include "render/app/turn_verb.h"

namespace spurwright::app {

const std::vector<commands::Verb>& drawing_verbs() {
    static const std::vector<commands::Verb> verbs{picture(), turn(), exporting()};
    return verbs;
}

}  // namespace spurwright::app
