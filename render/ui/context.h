// Dear ImGui's context as our screens need it, set up once: no settings file, walk by keys, our numbers of keys.
#pragma once

namespace spurwright::ui {

// For the context just made.
void prepare_context();

} // namespace spurwright::ui
