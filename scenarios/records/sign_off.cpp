#include "scenarios/records/sign_off.h"

#include <algorithm>
#include <chrono>
#include <map>

#include "scenarios/io/json_fields.h"
#include "scenarios/records/act.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/people.h"
#include "scenarios/records/readable_body.h"

namespace spurwright::records {
namespace {

using io::Json;

constexpr std::size_t longest_note = 400; // bytes; our choice

Error refused_sign(Fault fault, std::string_view key, Arguments arguments) { return {fault, TextKey{key}, std::move(arguments), {"crew sign", 0, 0, 0}}; }

Result<void> is_on_the_list(Store& store, std::int64_t number, bool named) {
    const auto name = store.text("SELECT name FROM person WHERE number = ?1", {number});
    if (!name) return failure(name.error());
    const auto there = store.whole("SELECT count(*) FROM person WHERE number = ?1", {number});
    if (!there) return failure(there.error());
    if (there->value_or(0) == 0) return failure(refused_sign(Fault::unknown_part, "error.crew.nobody", {{"n", std::to_string(number)}}));
    if (named && name->value_or("").empty()) return failure(refused_sign(Fault::not_allowed, "error.crew.unnamed", {{"n", std::to_string(number)}}));
    return {};
}

// As much as is kept of a note, no letter cut in two.
std::string note(const std::string& text) {
    std::size_t end = std::min(text.size(), longest_note);
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u) --end;
    return text.substr(0, end);
}

bool blank(const std::string& text) { return text.find_first_not_of(' ') == std::string::npos; }

std::optional<SignOff> read_sign_off(const Event& event) {
    const auto json = io::read_json(event.body, "event");
    if (!json || event.version != 1 || !event.person) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    SignOff sign{event.id, *event.person, 0, fields.text("skill", 60), "", {}, {}};
    if (!fields.required("by").is(Json::Kind::null)) sign.by = fields.whole("by", -(std::int64_t{1} << 53), highest_number);
    sign.saw = fields.text("saw", 4 * longest_note);
    const auto on = read_day(fields.text("on", 10)), until = read_day(fields.text("until", 10));
    if (refusal.any() || !on || !until) return std::nullopt;
    sign.on = *on;
    sign.until = *until;
    return sign;
}

int season_end_year(const Day& day) { return day.month >= 10 ? day.year + 1 : day.year; }

bool of_a_sign_off(std::string_view kind) { return kind == sign_off_kind || kind == withdrawn_kind || kind == consent_kind; }

// "2026-11-30 2026-12-30": on that day everything due to that day was shown.
struct Shown {
    Day on, through;
};
Result<std::vector<Shown>> shown_lists(Store& store) {
    const auto text = store.text("SELECT value FROM meta WHERE key = 'due_shown'");
    if (!text) return failure(text.error());
    std::vector<Shown> lists;
    const std::string all = text->value_or("");
    for (std::size_t at = 0; at + 21 <= all.size(); at += 22) {
        const auto on = read_day(all.substr(at, 10)), through = read_day(all.substr(at + 11, 10));
        if (on && through) lists.push_back({*on, *through});
    }
    return lists;
}

Result<std::vector<DueEvent>> ending_by(Store& store, const Day& day) {
    std::vector<DueEvent> due;
    auto read = each_event(store, "", 0, [&](const Event& event) {
        if (!event.person || *event.person < 0) return;
        if (const Day until = kept_until(event); until <= day) due.push_back({event.id, *event.person, event.kind, until});
    });
    if (!read) return failure(read.error());
    return due;
}

} // namespace

Day days_after(const Day& day, int days) {
    using namespace std::chrono;
    const sys_days from = year{day.year} / month{static_cast<unsigned>(day.month)} / std::chrono::day{static_cast<unsigned>(day.day)};
    const year_month_day to{from + std::chrono::days{days}};
    return {static_cast<int>(to.year()), static_cast<int>(static_cast<unsigned>(to.month())), static_cast<int>(static_cast<unsigned>(to.day()))};
}

Result<std::int64_t> sign_off(Store& store, const SignOff& sign, const std::string& when_utc) {
    if (auto there = is_on_the_list(store, sign.person, false); !there) return failure(there.error());
    if (auto there = is_on_the_list(store, sign.by, true); !there) return failure(there.error());
    if (sign.person == sign.by) return failure(refused_sign(Fault::not_allowed, "error.crew.signs-herself", {}));
    if (sign.until < sign.on) return failure(refused_sign(Fault::out_of_range, "error.crew.ends-before", {{"text", day_text(sign.until)}}));
    if (blank(sign.saw)) return failure(refused_sign(Fault::bad_text, "error.crew.saw-nothing", {}));
    Json o = Json::object();
    o.set("skill", sign.skill);
    o.set("by", sign.by);
    o.set("saw", note(sign.saw));
    o.set("on", day_text(sign.on));
    o.set("until", day_text(sign.until));
    return add_event(store, {0, std::string(sign_off_kind), 1, when_utc, sign.person, io::print_json_line(o), std::nullopt});
}

Result<std::int64_t> withdraw(Store& store, std::int64_t id, std::int64_t by, const std::string& reason, const std::string& when_utc) {
    if (auto there = is_on_the_list(store, by, true); !there) return failure(there.error());
    const auto standing = sign_offs(store);
    if (!standing) return failure(standing.error());
    const auto found = std::find_if(standing->begin(), standing->end(), [&](const SignOff& sign) { return sign.id == id; });
    if (found == standing->end()) return failure(refused_sign(Fault::unknown_part, "error.crew.no-sign-off", {{"n", std::to_string(id)}}));
    if (blank(reason)) return failure(refused_sign(Fault::bad_text, "error.crew.no-reason", {}));
    Json o = Json::object();
    o.set("by", by);
    o.set("reason", note(reason));
    return add_event(store, {0, std::string(withdrawn_kind), 1, when_utc, found->person, io::print_json_line(o), id});
}

Result<std::vector<SignOff>> sign_offs(Store& store) {
    std::map<std::int64_t, SignOff> standing;
    auto read = each_event(store, "", 0, [&](const Event& event) {
        if (event.kind == sign_off_kind)
            if (auto sign = read_sign_off(event)) standing[event.id] = *std::move(sign);
        if (event.kind == withdrawn_kind && event.corrects) standing.erase(*event.corrects);
    });
    if (!read) return failure(read.error());
    std::vector<SignOff> all;
    all.reserve(standing.size());
    for (auto& [id, sign] : standing) all.push_back(std::move(sign));
    std::stable_sort(all.begin(), all.end(), [](const SignOff& a, const SignOff& b) { return std::tie(a.person, a.skill, a.id) < std::tie(b.person, b.skill, b.id); });
    return all;
}

Result<std::int64_t> say_consent(Store& store, std::int64_t person, bool yes, const std::string& language, const std::string& when_utc) {
    if (auto there = is_on_the_list(store, person, false); !there) return failure(there.error());
    Json o = Json::object();
    o.set("yes", yes);
    o.set("language", language);
    return add_event(store, {0, std::string(consent_kind), 1, when_utc, person, io::print_json_line(o), std::nullopt});
}

Result<std::optional<bool>> consent_of(Store& store, std::int64_t person) {
    const auto last = store.whole("SELECT " + in_body("yes") + " FROM event WHERE kind = 'consent' AND person = ?1 ORDER BY id DESC LIMIT 1", {person});
    if (!last) return failure(last.error());
    return *last ? std::optional(**last != 0) : std::nullopt;
}

Day kept_until(const Event& event) {
    const auto day = read_day(event.when_utc.substr(0, 10));
    if (!day) return {9999, 12, 31};
    return {season_end_year(*day) + (of_a_sign_off(event.kind) ? 3 : 1), 9, 30};
}

Result<std::vector<DueEvent>> show_due(Store& store, const Day& today) {
    const Day through = days_after(today, days_of_notice);
    auto due = ending_by(store, through);
    if (!due) return due;
    auto lists = shown_lists(store);
    if (!lists) return failure(lists.error());
    // One line a day is enough, and none older than what could still go.
    std::string text;
    for (const Shown& shown : *lists)
        if (shown.on != today) text += day_text(shown.on) + " " + day_text(shown.through) + ";";
    text += day_text(today) + " " + day_text(through) + ";";
    constexpr std::size_t most_lists = 400, list_length = 22;
    if (text.size() > most_lists * list_length) text.erase(0, text.size() - most_lists * list_length);
    if (auto noted = store.run("INSERT INTO meta VALUES('due_shown', ?1) ON CONFLICT(key) DO UPDATE SET value = excluded.value", {text}); !noted) return failure(noted.error());
    return due;
}

Result<std::int64_t> drop_due(Store& store, const Day& today, const std::string& when_utc) {
    const auto act = Act::begin(store, "records-drop", when_utc);
    if (!act) return failure(act.error());
    const auto over = ending_by(store, days_after(today, -1));
    const auto lists = shown_lists(store);
    if (!over) return failure(over.error());
    if (!lists) return failure(lists.error());
    std::int64_t dropped = 0;
    for (const DueEvent& due : *over) {
        const bool shown = std::any_of(lists->begin(), lists->end(), [&](const Shown& list) { return days_after(list.on, days_of_notice) <= today && list.through >= due.until; });
        if (!shown) continue;
        // What corrects it goes with it: it says what was said.
        if (auto done = store.run("WITH RECURSIVE gone(id) AS (SELECT ?1 UNION SELECT event.id FROM event JOIN gone ON event.corrects = gone.id) DELETE FROM event WHERE id IN (SELECT id FROM gone)",
                                  {due.id});
            !done)
            return failure(done.error());
        ++dropped;
    }
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    if (dropped == 0) return dropped;
    if (auto done = drop_backups(store); !done) return failure(done.error());
    for (const std::string_view sql : {"VACUUM", "PRAGMA wal_checkpoint(TRUNCATE)"})
        if (auto done = store.text(sql); !done) return failure(done.error());
    return dropped;
}

} // namespace spurwright::records
