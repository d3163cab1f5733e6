// A file given to the book is looked into, and taken in, by a worker.
#pragma once

#include <chrono>
#include <thread>

#include "scenarios/practice/session.h"

namespace spurwright::test {

// Until it is done; half a minute at most.
inline void wait_for_file(practice::Session& session) {
    for (int i = 0; i < 3000 && session.book() && (session.book()->reading() || session.book()->taking_in()); ++i) {
        session.poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
}

} // namespace spurwright::test
