#include "scenarios/practice/look_drill.h"

#include <algorithm>
#include <chrono>

#include "scenarios/io/json_fields.h"
#include "scenarios/practice/look_event.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/clock.h"
#include "scenarios/records/events.h"
#include "scenarios/records/readable_body.h"
#include "sim/core/hash.h"
#include "sim/core/random.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::practice {
namespace {

using drill::LookAnswer;

constexpr std::string_view look_event = "look";
constexpr std::int64_t longest_ms = 600'000; // somebody went away: our choice

std::int32_t day_number(const records::Day& day) {
    using namespace std::chrono;
    return static_cast<std::int32_t>(sys_days(year{day.year} / month{static_cast<unsigned>(day.month)} / std::chrono::day{static_cast<unsigned>(day.day)}).time_since_epoch().count());
}

std::optional<std::uint64_t> hash_in(const std::string& text) {
    std::uint64_t value = 0;
    for (const char c : text) {
        const bool digit = c >= '0' && c <= '9', letter = c >= 'a' && c <= 'f';
        if (!digit && !letter) return std::nullopt;
        value = 16 * value + static_cast<std::uint64_t>(digit ? c - '0' : c - 'a' + 10);
    }
    return text.size() == 16 ? std::optional(value) : std::nullopt;
}

}  // namespace

std::optional<LookAnswer> read_look(const records::Event& event) {
    const auto json = io::read_json(event.body, "event");
    const auto day = records::read_day(event.when_utc.substr(0, 10));
    if (!json || !day || event.version != 1) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    LookAnswer answer;
    answer.skill = fields.word<drill::Skill>("skill");
    answer.right = static_cast<std::size_t>(fields.whole("right", 0, 9));
    answer.said = static_cast<std::size_t>(fields.whole("said", 0, 9));
    answer.ms = fields.whole("ms", 0, longest_ms);
    answer.day = day_number(*day);
    if (refusal.any() || std::max(answer.right, answer.said) >= drill::words_of_skill(answer.skill).size()) return std::nullopt;
    return answer;
}

std::int32_t day_today() { return day_number(*records::read_day(records::utc_now().substr(0, 10))); }

LookDrill::LookDrill(std::string store_file, std::optional<std::int64_t> person, std::string language, const rules::HouseRules& house, LookClock clock, std::int32_t today)
    : store_file_(std::move(store_file)), person_(person), language_(std::move(language)), house_(house), clock_(std::move(clock)), today_(today) {}

bool LookDrill::has(drill::Skill skill) const { return std::find(on.begin(), on.end(), skill) != on.end(); }

void LookDrill::turn(drill::Skill skill) {
    const auto found = std::find(on.begin(), on.end(), skill);
    if (found == on.end()) on.push_back(skill);
    else if (on.size() > 1) on.erase(found);
}

Result<void> LookDrill::recall() {
    auto store = records::Store::open_to_read(store_file_);
    if (!store) return failure(store.error());
    if (!*store) return {};
    auto looks = records::each_event(**store, look_event, 0, [&](const records::Event& event) {
        if (event.person != person_) return;
        if (const auto answer = read_look(event)) answers_.push_back(*answer);
    });
    if (!looks) return looks;
    // No vine that anybody saw in a look before is shown again.
    return (*store)->each("SELECT DISTINCT " + records::in_body("vine_hash") + " FROM event WHERE kind IN ('look', 'answer', 'lesson')", {}, 1, [&](const records::Row& row) {
        if (const auto hash = hash_in(row.text(0))) served_.insert(*hash);
    });
}

std::size_t LookDrill::right_place() const { return look_->pair() ? look_->item.accepted[0][0] - 1u : look_->right; }

void LookDrill::begin(std::uint64_t seed) {
    seed_ = seed;
    made_ = 0;
    sitting_ = 0;
    right_ = 0;
    look_.reset();
    ahead_.reset();
    said_.reset();
    worker_ = std::make_unique<Worker<Made>>();
    stage_ = LookStage::making;
    make_one();
}

void LookDrill::make_one() {
    const std::uint64_t seed = draw(seed_, 71, made_++);
    const drill::NextLook next = drill::next_look(answers_, sitting_, on, seed);
    worker_->ask([next, seed, house = house_, served = served_] {
        Made made;
        made.why = next.why;
        for (std::uint32_t i = 0; i < 8 && !made.look; ++i) {
            const std::uint64_t own = draw(seed, 72, i);
            if (next.beside) made.look = drill::make_pair(next.skill, next.wanted, *next.beside, own, house);
            if (!made.look) made.look = drill::make_look(next.skill, next.wanted, own, house);
            if (made.look && served.count(vine_hash(made.look->item.vine)) > 0) made.look.reset();
        }
        // A word that no vine here carries: wood age always can.
        if (!made.look) made.look = drill::make_look(drill::Skill::wood_age, next.wanted % 3, seed, house);
        return made;
    });
}

void LookDrill::show(Made made) {
    if (!made.look) return end();
    look_ = std::move(made.look);
    why_ = made.why;
    served_.insert(vine_hash(look_->item.vine));
    said_.reset();
    since_.reset();
    ++shown_;
    stage_ = LookStage::asking;
    make_one();  // while this one is looked at
}

bool LookDrill::poll() {
    if (!worker_) return false;
    auto made = worker_->take();
    if (!made) return false;
    if (stage_ == LookStage::making) show(*std::move(made));
    else ahead_ = *std::move(made);
    return true;
}

void LookDrill::seen() {
    if (stage_ == LookStage::asking && !since_) since_ = clock_();
}

Result<void> LookDrill::answer(std::size_t said) {
    if (stage_ != LookStage::asking || said >= (look_->pair() ? 2 : look_->item.words.size())) return {};
    said_ = said;
    LookAnswer answer{look_->skill, look_->right, said, std::clamp<std::int64_t>(since_ ? clock_() - *since_ : 0, 0, longest_ms), today_};
    // Of a pair what was pointed at has a word of its own.
    if (look_->pair()) answer.said = said == right_place() ? look_->right : *look_->beside;
    answers_.push_back(answer);
    ++sitting_;
    right_ += answer.good();
    stage_ = LookStage::told;
    return keep(answer);
}

void LookDrill::next() {
    if (stage_ != LookStage::told) return;
    if (sitting_ >= looks_a_sitting) return end();
    stage_ = LookStage::making;
    if (ahead_) show(*std::exchange(ahead_, std::nullopt));
}

void LookDrill::end() {
    worker_.reset();
    ahead_.reset();
    store_.reset();
    stage_ = LookStage::over;
}

Result<void> LookDrill::keep(const LookAnswer& answer) {
    if (store_file_.empty()) return {};
    if (!store_) {
        auto opened = records::Store::open(store_file_);
        if (!opened) return failure(opened.error());
        store_ = *std::move(opened);
    }
    io::Json o = io::Json::object();
    o.set("skill", word_of(answer.skill));
    o.set("right", static_cast<std::int64_t>(answer.right));
    o.set("said", static_cast<std::int64_t>(answer.said));
    o.set("ms", answer.ms);
    o.set("pair", look_->pair());
    o.set("why", word_of(why_));
    o.set("seed", std::to_string(look_->seed));
    o.set("vine_hash", hash_text(vine_hash(look_->item.vine)));
    o.set("place", name_of(look_->item.places.empty() ? NodeId{} : look_->item.places.front().node));
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house_)));
    o.set("language", language_);
    o.set("program_version", records::program_version());
    const auto added = records::add_event(*store_, {0, std::string(look_event), 1, records::utc_now(), person_, io::print_json_line(o), std::nullopt});
    return added ? Result<void>{} : Result<void>(failure(added.error()));
}

}  // namespace spurwright::practice
