#include "scenarios/records/record_export.h"

#include <algorithm>
#include <array>

#include "scenarios/io/csv.h"
#include "scenarios/io/json.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/quiz_record.h"

namespace spurwright::records {
namespace {

using io::Json;

constexpr std::array<std::string_view, 25> record_columns{"id",       "kind",      "when_utc",      "corrects",      "person",   "quiz", "question", "asked",         "answer",
                                                          "right",    "of",        "vine_hash",     "vine_code",     "plan",     "rule_set", "rule_set_hash", "judge_version", "language",
                                                          "mode",     "view",      "marks",         "best",          "plans_counted", "plans_better", "note"};

// One row, cell by cell; a column that is not given stays empty.
class RecordRow {
public:
    RecordRow(const Event& event) {
        number("id", std::to_string(event.id));
        text("kind", event.kind);
        text("when_utc", event.when_utc);
        if (event.corrects) number("corrects", std::to_string(*event.corrects));
        if (event.person) number("person", std::to_string(*event.person));
    }
    void text(std::string_view column, std::string_view said) { at(column) = io::csv_text(said); }
    void number(std::string_view column, std::string digits) { at(column) = std::move(digits); } // by type: never guarded
    // From the body, where it has it.
    void take(const Json& body, std::string_view key, std::string_view column) {
        const Json* value = body.find(key);
        if (!value) return;
        if (value->is(Json::Kind::text)) text(column, value->text);
        if (value->is(Json::Kind::number)) number(column, value->text);
    }
    void tenths(const Json& body, std::string_view key, std::string_view column) {
        const Json* value = body.find(key);
        std::int64_t count = 0;
        if (value && value->is(Json::Kind::number) && io::read_decimal(value->text, 0, count) == io::Decimal::fine) number(column, Json::decimal(count, 1).text);
    }
    std::string line() const {
        std::string all;
        for (std::size_t i = 0; i < cells_.size(); ++i) all += (i ? "," : "") + cells_[i];
        return all + std::string(io::csv_line_end);
    }

private:
    std::array<std::string, record_columns.size()> cells_;
    std::string& at(std::string_view column) {
        std::size_t i = 0;
        while (i + 1 < record_columns.size() && record_columns[i] != column) ++i;
        return cells_[i];
    }
};

std::string digits_text(const Json* answers) {
    std::string text;
    if (!answers || !answers->is(Json::Kind::list)) return text;
    for (const Json& answer : answers->items) {
        if (!text.empty()) text += " / ";
        for (std::size_t i = 0; i < answer.items.size(); ++i) text += (i ? "+" : "") + answer.items[i].text;
    }
    return text;
}

void share_cells(const Json* share, RecordRow& row) {
    if (!share) return;
    row.take(*share, "right", "right");
    row.take(*share, "of", "of");
}

void judged_by(const Json& body, RecordRow& row) {
    row.take(body, "rule_set_name", "rule_set");
    row.take(body, "rule_set_hash", "rule_set_hash");
    row.take(body, "judge_version", "judge_version");
    row.take(body, "language", "language");
}

void answer_rows(const Event& event, const Json& body, const words::Words& words, std::vector<std::string>& lines) {
    RecordRow row(event);
    row.text("asked", words("records.asked.whole-vine"));
    judged_by(body, row);
    for (const std::string_view key : {"vine_hash", "vine_code", "plan", "mode", "view", "plans_counted", "plans_better"}) row.take(body, key, key);
    row.take(body, "plan", "answer");
    row.tenths(body, "marks_tenths", "marks");
    row.tenths(body, "best_tenths", "best");
    lines.push_back(row.line());
}

void quiz_rows(const Event& event, const Json& body, const words::Words& words, std::vector<std::string>& lines) {
    const Json *questions = body.find("questions"), *results = body.find("results"), *came = results ? results->find("questions") : nullptr;
    for (std::size_t i = 0; questions && i < questions->items.size(); ++i) {
        const Json& question = questions->items[i];
        RecordRow row(event);
        judged_by(body, row);
        row.take(body, "quiz", "quiz");
        row.number("question", std::to_string(i + 1));
        if (const Json* kind = question.find("kind")) row.text("asked", words("quiz.kind." + kind->text));
        row.text("answer", digits_text(question.find("accepted")));
        row.take(question, "vine_hash", "vine_hash");
        row.take(question, "vine_code", "vine_code");
        for (const Json& result : came ? came->items : std::vector<Json>())
            if (const Json* number = result.find("question"); number && number->text == std::to_string(i + 1)) {
                share_cells(result.find("last"), row);
                if (const Json* dropped = result.find("dropped"); dropped && dropped->flag) row.text("note", words("screen.wall.was-dropped"));
                else if (const Json* rekeyed = result.find("rekeyed"); rekeyed && rekeyed->flag) row.text("note", words("screen.wall.was-keyed-anew"));
            }
        lines.push_back(row.line());
    }
}

void other_row(const Event& event, const Json& body, std::vector<std::string>& lines) {
    RecordRow row(event);
    row.take(body, "quiz", "quiz");
    row.take(body, "language", "language");
    row.take(body, "right", "right");
    row.take(body, "of", "of");
    row.take(body, "skill", "asked");
    row.take(body, "saw", "note");
    row.take(body, "reason", "note");
    lines.push_back(row.line());
}

bool wished(const Event& event, const ExportWish& wish) { return (wish.kind.empty() || event.kind == wish.kind) && (!wish.person || event.person == wish.person); }

Json whole_event(const Event& event) {
    Json o = Json::object();
    o.set("id", event.id);
    o.set("kind", event.kind);
    o.set("version", event.version);
    o.set("when_utc", event.when_utc);
    o.set("person", event.person ? Json(*event.person) : Json());
    o.set("corrects", event.corrects ? Json(*event.corrects) : Json());
    auto body = io::read_json(event.body, "event");
    o.set("body", body ? std::move(*body) : Json(event.body));
    return o;
}

// What `hash` columns of the bodies name, each once.
void add_named(const Json& value, std::string_view key, std::vector<std::string>& hashes) {
    for (std::size_t i = 0; i < value.items.size(); ++i) {
        if (value.is(Json::Kind::object) && value.keys[i] == key && value.items[i].is(Json::Kind::text)) {
            if (std::find(hashes.begin(), hashes.end(), value.items[i].text) == hashes.end()) hashes.push_back(value.items[i].text);
        } else {
            add_named(value.items[i], key, hashes);
        }
    }
}

Result<Json> rule_sets_of(Store& store, const std::vector<std::string>& hashes) {
    Json list = Json::list();
    for (const std::string& hash : hashes) {
        const auto kept = kept_rule_set(store, hash);
        if (!kept) return failure(kept.error());
        if (!*kept) continue;
        Json o = Json::object();
        o.set("hash", hash);
        o.set("name", (*kept)->name);
        o.set("judge_version", (*kept)->judge_version);
        o.set("lines", (*kept)->lines);
        list.push(std::move(o));
    }
    return list;
}

Result<Json> vines_of(Store& store, const std::vector<std::string>& hashes) {
    Json list = Json::list();
    for (const std::string& hash : hashes) {
        const auto kept = kept_vine(store, hash);
        if (!kept) return failure(kept.error());
        if (!*kept) continue;
        auto file = io::read_json((*kept)->file, hash);
        Json o = Json::object();
        o.set("hash", hash);
        o.set("code", (*kept)->code ? Json(*(*kept)->code) : Json());
        o.set("file", file ? std::move(*file) : Json());
        list.push(std::move(o));
    }
    return list;
}

} // namespace

Result<ExportedRecords> records_csv(Store& store, const ExportWish& wish, const words::Words& words) {
    ExportedRecords exported;
    for (std::size_t i = 0; i < record_columns.size(); ++i) exported.text += (i ? "," : "") + std::string(record_columns[i]);
    exported.text += io::csv_line_end;
    auto read = each_event(store, "", 0, [&](const Event& event) {
        if (!wished(event, wish)) {
            ++exported.left_out;
            return;
        }
        const auto body = io::read_json(event.body, "event");
        std::vector<std::string> lines;
        if (!body) lines.push_back(RecordRow(event).line());
        else if (event.kind == answer_kind) answer_rows(event, *body, words, lines);
        else if (event.kind == quiz_kind) quiz_rows(event, *body, words, lines);
        else other_row(event, *body, lines);
        for (const std::string& line : lines) exported.text += line;
        exported.rows += static_cast<std::int64_t>(lines.size());
        ++exported.written;
    });
    if (!read) return failure(read.error());
    return exported;
}

Result<ExportedRecords> records_json(Store& store, const ExportWish& wish, const words::Words& words) {
    ExportedRecords exported;
    Json events = Json::list();
    auto read = each_event(store, "", 0, [&](const Event& event) {
        if (!wished(event, wish)) {
            ++exported.left_out;
            return;
        }
        events.push(whole_event(event));
        ++exported.written;
    });
    if (!read) return failure(read.error());
    std::vector<std::string> vine_hashes, rule_hashes;
    add_named(events, "vine_hash", vine_hashes);
    add_named(events, "rule_set_hash", rule_hashes);
    auto rule_sets = rule_sets_of(store, rule_hashes), vines = wish.with_vines ? vines_of(store, vine_hashes) : Result<Json>(Json::list());
    if (!rule_sets) return failure(rule_sets.error());
    if (!vines) return failure(vines.error());
    exported.rows = exported.written;
    exported.rule_sets = static_cast<std::int64_t>(rule_sets->items.size());
    exported.vines = static_cast<std::int64_t>(vines->items.size());
    Json o = Json::object();
    o.set("kind", "spurwright-records");
    o.set("version", 1);
    o.set("program_version", program_version());
    o.set("note", words("screen.wall.not-for-pay"));
    o.set("events", std::move(events));
    o.set("rule_sets", std::move(*rule_sets));
    o.set("vines", std::move(*vines));
    exported.text = io::print_json(o);
    return exported;
}

} // namespace spurwright::records
