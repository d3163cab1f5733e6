#include "scenarios/practice/seat.h"

#include <algorithm>

#include "scenarios/records/act.h"
#include "scenarios/records/events.h"

namespace spurwright::practice {

Result<std::vector<records::Person>> people_to_pick(const std::string& store_file) {
    if (store_file.empty()) return std::vector<records::Person>{};
    auto store = records::Store::open_to_read(store_file);
    if (!store) return failure(std::move(store.error()));
    return *store ? records::people_of(**store) : std::vector<records::Person>{};
}

Result<records::Person> take_new_number(const std::string& store_file, const std::string& language, const std::string& start,
                                        const std::string& when_utc) {
    auto store = records::Store::open(store_file);
    if (!store) return failure(std::move(store.error()));
    auto act = records::Act::begin(*store, "crew-seat", when_utc);  // before the numbers are read: no other window takes the same
    if (!act) return failure(std::move(act.error()));
    auto people = records::people_of(*store);
    if (!people) return failure(std::move(people.error()));
    std::int64_t highest = people->empty() ? 0 : people->back().number;
    if (auto read = records::each_event(*store, "", 0, [&](const records::Event& event) { highest = std::max(highest, event.person.value_or(0)); }); !read)
        return failure(std::move(read.error()));
    if (highest >= records::highest_number) return failure({Fault::out_of_range, {"error.seat.no-number"}, {{"max", Count{records::highest_number}}}, {}});
    const records::Person person{highest + 1, {}, language, {}, start};
    if (auto put = records::put_person(*store, person); !put) return failure(std::move(put.error()));
    if (auto done = (*act)->commit(); !done) return failure(std::move(done.error()));
    return person;
}

}  // namespace spurwright::practice
