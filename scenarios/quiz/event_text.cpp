#include "scenarios/quiz/event_text.h"

#include <charconv>

#include "scenarios/io/json_fields.h"

namespace spurwright::quiz {
namespace {

using io::Json;

enum class EventName : unsigned char { gathered, answered, counted, locked, talk, revealed, next, back, ended, dropped, rekeyed };
constexpr auto words_of(EventName) {
    return std::to_array<std::string_view>({"gathered", "answered", "counted", "locked", "talk", "revealed", "next", "back", "ended", "dropped", "rekeyed"});
}
constexpr std::int64_t most_items = 200, most_posts = 6, most_at_post = 999, most_number_kept = 9'999;

Json answer_json(const Answer& answer) {
    Json list = Json::list();
    for (const std::uint8_t digit : answer) list.push(Json(int{digit}));
    return list;
}

struct EventWriter {
    Json& out;
    void operator()(const event::Gathered& e) const {
        out.set("seed", std::to_string(e.seed));
        out.set("items", static_cast<std::int64_t>(e.items));
        out.set("house", e.house);
        out.set("rule_set", e.rule_set);
        out.set("language", e.language);
        Json kinds = Json::list(), posts = Json::list();
        for (const Kind kind : e.kinds) kinds.push(word_of(kind));
        for (const int count : e.posts) posts.push(count);
        out.set("kinds", std::move(kinds));
        out.set("posts", std::move(posts));
    }
    void operator()(const event::Answered& e) const {
        out.set("way", word_of(e.voter.way));
        out.set("number", e.voter.number);
        out.set("answer", answer_json(e.answer));
    }
    void operator()(const event::Counted& e) const {
        out.set("answer", answer_json(e.answer));
        out.set("hands", e.hands);
    }
    void operator()(const event::Dropped& e) const { out.set("item", static_cast<std::int64_t>(e.item)); }
    void operator()(const event::Rekeyed& e) const {
        Json list = Json::list();
        for (const Answer& answer : e.accepted) list.push(answer_json(answer));
        out.set("item", static_cast<std::int64_t>(e.item));
        out.set("accepted", std::move(list));
    }
    template <class Bare>
    void operator()(const Bare&) const {}
};

class EventReader {
public:
    EventReader(io::Refusal& refusal, const Json& object) : refusal_(refusal), fields_(refusal, object) {}

    Event read() {
        Event event = body(fields_.word<EventName>("event"));
        fields_.end();
        return event;
    }

private:
    Event body(EventName name) {
        switch (name) {
        case EventName::gathered: return gathered();
        case EventName::answered: {
            const Voter voter{fields_.word<Way>("way"), static_cast<int>(fields_.whole("number", 0, most_number_kept))};
            return event::Answered{voter, answer(fields_.required("answer"), "answer")};
        }
        case EventName::counted: {
            Answer said = answer(fields_.required("answer"), "answer");
            return event::Counted{std::move(said), static_cast<int>(fields_.whole("hands", 0, most_at_post))};
        }
        case EventName::locked: return event::Locked{};
        case EventName::talk: return event::Talk{};
        case EventName::revealed: return event::Revealed{};
        case EventName::next: return event::Next{};
        case EventName::back: return event::Back{};
        case EventName::ended: return event::Ended{};
        case EventName::dropped: return event::Dropped{item()};
        case EventName::rekeyed: break;
        }
        event::Rekeyed rekeyed{item(), {}};
        for (const Json& one : fields_.list("accepted", true)) rekeyed.accepted.push_back(answer(one, "accepted"));
        return rekeyed;
    }

    Event gathered() {
        event::Gathered e;
        e.seed = seed(fields_.text("seed", 20));
        e.items = static_cast<std::size_t>(fields_.whole("items", 1, most_items));
        e.house = fields_.text("house", 200);
        e.rule_set = fields_.text("rule_set", 16);
        e.language = fields_.text("language", 20);
        for (const Json& kind : fields_.list("kinds", true)) {
            const auto read = read_word<Kind>(fields_.text_of(kind, "kinds", 40));
            if (read) e.kinds.push_back(*read);
            else out_of_range(kind, "kinds", 0, kind_count - 1);
        }
        for (const Json& post : fields_.list("posts", false)) e.posts.push_back(bounded(post, "posts", most_at_post));
        if (e.posts.size() > most_posts) out_of_range(fields_.object(), "posts", 0, most_posts);
        return e;
    }

    int bounded(const Json& value, std::string_view key, std::int64_t most) {
        const std::int32_t read = fields_.decimal_of(value, key, 0);
        if (read >= 0 && read <= most) return read;
        out_of_range(value, key, 0, most);
        return 0;
    }

    // As text, since a number of JSON is a double to most readers.
    std::uint64_t seed(const std::string& text) {
        std::uint64_t value = 0;
        const char* end = text.data() + text.size();
        const auto read = std::from_chars(text.data(), end, value);
        if (text.empty() || read.ec != std::errc{} || read.ptr != end) refusal_.add("error.json.not-whole", {{"key", std::string("seed")}, {"text", text}}, fields_.object());
        return value;
    }

    void out_of_range(const Json& value, std::string_view key, std::int64_t low, std::int64_t high) {
        refusal_.add("error.json.range", {{"key", std::string(key)}, {"text", value.text.substr(0, 40)}, {"low", std::to_string(low)}, {"high", std::to_string(high)}}, value);
    }

    std::size_t item() { return static_cast<std::size_t>(fields_.whole("item", 0, most_items)); }

    Answer answer(const Json& value, std::string_view key) {
        Answer digits;
        if (!value.is(Json::Kind::list) || value.items.size() > 2) {
            out_of_range(value, key, 1, 2);
            return digits;
        }
        for (const Json& digit : value.items) digits.push_back(static_cast<std::uint8_t>(bounded(digit, key, most_counted)));
        return digits;
    }

    io::Refusal& refusal_;
    io::Fields fields_;
};

}  // namespace

std::string print_event(const Event& event) {
    Json out = Json::object();
    out.set("event", words_of(EventName{})[event.index()]);
    std::visit(EventWriter{out}, event);
    return print_json_line(out);
}

Result<Event> read_event(std::string_view line, const std::string& source) {
    const auto json = io::read_json(line, source);
    if (!json) return failure(json.error());
    io::Refusal refusal(source);
    EventReader reader(refusal, *json);
    Event event = reader.read();
    if (refusal.any()) return failure(refusal.take());
    return event;
}

}  // namespace spurwright::quiz
