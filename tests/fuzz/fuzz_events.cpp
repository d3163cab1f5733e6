// Events of the records: whatever a body holds, every reader of it takes it or passes it over, and what is counted of them
// stays within what was asked. First line of the input: a kind and its version; the rest: the body. The vines of the corpus
// of vine files, and the general rules, are kept beside, so that a body may name them.
#include <unistd.h>

#include <filesystem>

#include "scenarios/io/safe_file.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/practice/look_event.h"
#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/records/past_vines.h"
#include "scenarios/records/people.h"
#include "scenarios/records/quiz_record.h"
#include "scenarios/records/record_export.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/sign_off.h"
#include "scenarios/words/load_words.h"
#include "sim/core/check.h"
#include "sim/core/hash.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;
using namespace spurwright::records;

namespace {

constexpr const char* at_noon = "2026-01-31T12:00:00Z";
constexpr std::int64_t somebody = 7;

template <class T>
T needed(Result<T> result) {
    SPURWRIGHT_CHECK(result.has_value(), ==, true);
    return *std::move(result);
}
void needed(Result<void> result) { SPURWRIGHT_CHECK(result.has_value(), ==, true); }

// A store that nobody else has, with what bodies name; gone with the process.
class FuzzedStore {
public:
    FuzzedStore() : folder_(std::filesystem::temp_directory_path() / ("spurwright-fuzz-events-" + std::to_string(::getpid()))), store_(needed(Store::open((folder_ / "s.sqlite").string()))) {
        needed(store_.text("PRAGMA ignore_check_constraints=ON")); // a damaged body may be no JSON at all
        needed(put_person(store_, {somebody, "", "es", "", ""}));
        needed(put_person(store_, {8, "Ana", "es", "", ""}));
        const rules::HouseRules house;
        for (const char* name : {"little.json", "little-pruned.json", "young.json"}) {
            const auto text = needed(io::read_file(std::string(SPURWRIGHT_SOURCE) + "/tests/fuzz/corpus/vine_file/" + name, 1 << 20));
            needed(keep_what_it_needs(store_, needed(io::read_vine_file(text, name)).vine, "", house, "general"));
        }
    }
    ~FuzzedStore() {
        std::error_code fault;
        std::filesystem::remove_all(folder_, fault);
    }
    Store& store() { return store_; }

private:
    std::filesystem::path folder_;
    Store store_;
};

void counts_hold(Store& store) {
    const CrewView view = needed(crew_view(store, {2026, 2, 1}));
    for (const CrewMember& member : view.members) {
        SPURWRIGHT_CHECK(member.all.right, <=, member.all.of);
        for (const auto& [rule, cell] : member.rules) SPURWRIGHT_CHECK(cell.answers.right, <=, cell.answers.of);
    }
    for (const PastVine& past : needed(past_vines(store, somebody))) {
        SPURWRIGHT_CHECK(past.lost().count, >=, 0);
        SPURWRIGHT_CHECK(past.id, >, std::int64_t{0});
    }
    for (const SignOff& sign : needed(sign_offs(store))) SPURWRIGHT_CHECK(sign.id, >, std::int64_t{0});
    static_cast<void>(needed(consent_of(store, somebody)));
}

void every_reader(Store& store, const Event& event) {
    counts_hold(store);
    static const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");
    static const words::Words words = needed(words::load_words(assets, "en"));
    const ExportedRecords csv = needed(records_csv(store, {}, words)), json = needed(records_json(store, {"", {}, true}, words));
    SPURWRIGHT_CHECK(csv.written, ==, json.written);
    SPURWRIGHT_CHECK(io::read_json(json.text, "export").has_value(), ==, true);
    static_cast<void>(needed(check_contents(store)));
    for (const Replayed& one : needed(replay(store, std::nullopt))) SPURWRIGHT_CHECK(one.outcome == Outcome::unreadable, ==, !one.why.name.empty());
    const Day until = kept_until(event);
    SPURWRIGHT_CHECK(until.month, ==, 9);
    if (const auto look = practice::read_look(event)) SPURWRIGHT_CHECK(std::max(look->right, look->said), <, drill::words_of_skill(look->skill).size());
    if (const auto kept = read_kept_quiz(event.body, "event")) {
        const quiz::Results results = quiz::results_of(kept->quiz);
        SPURWRIGHT_CHECK(results.all.right, <=, results.all.of);
    }
}

} // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static FuzzedStore fuzzed;
    Store& store = fuzzed.store();
    const std::string_view text = fuzz::text(data, size);
    const std::size_t line = std::min(text.find('\n'), text.size()), blank = std::min(text.find(' '), line);
    Event event{0, std::string(text.substr(0, blank)), 1, at_noon, somebody, std::string(text.substr(std::min(line + 1, text.size()))), std::nullopt};
    if (blank + 1 < line && text[blank + 1] >= '0' && text[blank + 1] <= '9') event.version = text[blank + 1] - '0';
    if (event.body.find('\0') != std::string::npos || event.kind.find('\0') != std::string::npos) return 0; // ends a text of the store
    needed(store.run("BEGIN"));
    Rollback undone(store);
    event.id = needed(add_event(store, event));
    every_reader(store, event);
    event.corrects = event.id; // what comes after may correct it
    event.id = needed(add_event(store, event));
    counts_hold(store);
    return 0;
}
