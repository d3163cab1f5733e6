// The journal of a quiz: whatever a crash left reads as whole entries and a tail; an event read is printed and read the same,
// or refused. A quiz takes any events in any order without harm.
#include <algorithm>

#include "scenarios/io/journal.h"
#include "scenarios/quiz/event_text.h"
#include "scenarios/quiz/results.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

namespace {

quiz::Quiz small_quiz() {
    quiz::Item places, number;
    places.kind = quiz::Kind::pick_two;
    places.places.resize(5);
    places.accepted = {{1, 4}};
    number.kind = quiz::Kind::count;
    number.places.resize(1);
    number.accepted = {{7}};
    return {{1, {quiz::Kind::pick_two}, 2, "general", "", "en", {3, 3}}, {places, number}};
}

} // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto bytes = fuzz::text(data, size);
    const io::JournalEntries found = io::read_entries(bytes);
    SPURWRIGHT_CHECK(found.good_bytes, <=, bytes.size());
    std::string again;
    for (const std::string& entry : found.entries) again += io::entry_bytes(entry);
    SPURWRIGHT_CHECK(again == bytes.substr(0, found.good_bytes), ==, true);

    quiz::Quiz quiz = small_quiz();
    const auto hears = [&](std::string_view line) {
        const auto event = quiz::read_event(line, "journal");
        if (!event) return;
        const auto same = quiz::read_event(quiz::print_event(*event), "journal");
        SPURWRIGHT_CHECK(same.has_value() && *same == *event, ==, true);
        const bool may = quiz.allows(*event);
        SPURWRIGHT_CHECK(quiz.take(*event), ==, may);
    };
    for (const std::string& entry : found.entries) hears(entry);
    for (std::size_t from = 0; from < bytes.size();) { // and as plain lines, which a fuzzer finds more easily
        const std::size_t end = std::min(bytes.find('\n', from), bytes.size());
        hears(std::string_view(bytes).substr(from, end - from));
        from = end + 1;
    }
    const quiz::Results results = quiz::results_of(quiz);
    SPURWRIGHT_CHECK(results.all.right, <=, results.all.of);
    return 0;
}
