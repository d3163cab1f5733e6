#include "sim/pruning/plan_text.h"

#include <array>
#include <charconv>

namespace spurwright {
namespace {

std::string tenths_mm(Length l) {
    const std::int32_t tenths = (l.count < 0 ? -l.count : l.count) / 100;
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

std::string wraps_text(int half_wraps) { return std::to_string(half_wraps / 2) + (half_wraps % 2 ? ".5" : ""); }

struct Printer {
    std::string operator()(const Cut& c) const {
        std::string text = "cut " + name_of(c.past) + (c.beyond.count < 0 ? "-" : "+") + tenths_mm(c.beyond) + " " + std::string(word_of(c.tool));
        if (c.tilt.count != 0) text += " tilt " + std::to_string(c.tilt.count / 1000);
        return text;
    }
    std::string operator()(const Lay& l) const {
        return "lay " + name_of(l.cane) + " " + std::string(word_of(l.side)) + " wraps " + wraps_text(l.half_wraps);
    }
    std::string operator()(const Fasten& t) const {
        return "tie " + name_of(t.at) + "+" + tenths_mm(t.beyond) + (t.tight ? " tight" : "");
    }
    std::string operator()(const Mark& m) const { return "mark " + name_of(m.axis) + " " + std::string(word_of(m.role)); }
};

constexpr std::array<std::string_view, 6> later_words{"pull", "untie", "unclip", "protect", "clean", "snip"};

// Reads one plan text, left to right. Every refusal names the edit being read and its column, both from 1.
class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {}

    Result<Plan> plan() {
        if (text_.size() > longest_plan_text) return refuse("error.plan.too-long", {{"most", Count{static_cast<std::int64_t>(longest_plan_text)}}});
        Plan plan;
        if (const std::string_view first = peek_word(); first.substr(0, 4) == "plan") {
            if (first != "plan1") {
                auto refused = refuse("error.plan.newer", {{"word", std::string(first)}});
                refused.value().fault = Fault::newer;
                return refused;
            }
            at_ += first.size();
            if (at_ == text_.size()) return plan;
            if (text_[at_] != ' ') return refuse("error.plan.edit-wanted", {{"word", rest()}});
            spaces();
            if (at_ == text_.size()) return plan;
        } else if (text_.empty()) {
            return plan;
        }
        while (true) {
            ++step_;
            if (plan.edits.size() >= most_edits) return refuse("error.plan.too-many", {{"most", Count{static_cast<std::int64_t>(most_edits)}}});
            auto edit = one_edit();
            if (!edit) return failure(std::move(edit.error()));
            plan.edits.push_back(*edit);
            spaces();
            if (at_ == text_.size()) return plan;
            if (text_[at_] != ';') return refuse("error.plan.semicolon-wanted", {{"word", rest()}});
            ++at_;
            spaces();
        }
    }

    std::vector<int> columns;  // of each edit read, from 1

private:
    using Refused = tl::unexpected<Error>;

    Refused refuse(std::string_view key, Arguments arguments) const { return refuse_at(at_, key, std::move(arguments)); }
    Refused refuse_at(std::size_t at, std::string_view key, Arguments arguments) const {
        return failure(Error{Fault::bad_text, TextKey{key}, std::move(arguments), {"plan", 0, static_cast<int>(at) + 1, step_}});
    }
    // What stands here, cut short, printable: for the refusal's sentence.
    std::string rest() const {
        std::string word;
        for (std::size_t i = at_; i < text_.size() && word.size() < 24 && text_[i] != ' ' && text_[i] != ';'; ++i)
            word += text_[i] >= 33 && text_[i] < 127 ? text_[i] : '?';
        return word;
    }
    std::string_view peek_word() const {
        std::size_t end = at_;
        while (end < text_.size() && text_[end] != ' ' && text_[end] != ';') ++end;
        return text_.substr(at_, end - at_);
    }
    void spaces() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }
    // The next word, after at least one space.
    Result<std::string_view> next_word() {
        if (at_ >= text_.size() || text_[at_] != ' ') return refuse("error.plan.space-wanted", {{"word", rest()}});
        spaces();
        const std::string_view word = peek_word();
        if (word.empty()) return refuse("error.plan.word-wanted", {});
        at_ += word.size();
        return word;
    }
    std::size_t start_of(std::string_view word) const { return static_cast<std::size_t>(word.data() - text_.data()); }

    Result<Edit> one_edit() {
        columns.push_back(static_cast<int>(at_) + 1);
        const std::string_view word = peek_word();
        const std::size_t start = at_;
        at_ += word.size();
        if (word == "cut") return cut();
        if (word == "lay") return lay();
        if (word == "tie") return tie();
        if (word == "mark") return mark();
        at_ = start;
        for (const std::string_view later : later_words)
            if (word == later) return refuse("error.plan.later-word", {{"word", std::string(word)}});
        return refuse("error.plan.unknown-word", {{"word", rest()}});
    }

    // Millimetres with at most one decimal, at most 100 m.
    Result<Length> millimetres(std::string_view word) {
        const auto bad = [&] { return refuse_at(start_of(word), "error.plan.mm", {{"word", std::string(word.substr(0, 24))}}); };
        const std::size_t dot = word.find('.');
        const std::string_view whole_part = word.substr(0, dot);
        if (whole_part.empty() || (whole_part.size() > 1 && whole_part[0] == '0') || whole_part.size() > 6) return bad();
        int mm = 0;
        const auto [end, fault] = std::from_chars(whole_part.data(), whole_part.data() + whole_part.size(), mm);
        if (fault != std::errc{} || end != whole_part.data() + whole_part.size() || whole_part[0] == '-') return bad();
        int tenth = 0;
        if (dot != std::string_view::npos) {
            if (word.size() != dot + 2 || word[dot + 1] < '0' || word[dot + 1] > '9') return bad();
            tenth = word[dot + 1] - '0';
        }
        if (mm > 100'000) return bad();
        return Length{mm * 1000 + tenth * 100};
    }

    Result<AxisId> axis(std::string_view word) {
        if (const auto id = read_axis(word)) return *id;
        return refuse_at(start_of(word), "error.plan.cane-name", {{"word", std::string(word.substr(0, 24))}});
    }

    struct Spot { NodeId node; Length beyond; };
    // "a12.4+20.0"; without a sign the place is `fallback`, where one is given.
    Result<Spot> spot(std::string_view word, std::optional<Length> fallback, bool minus_allowed) {
        const std::size_t sign = word.find_first_of("+-");
        const auto node = read_node(word.substr(0, sign));
        if (!node) return refuse_at(start_of(word), "error.plan.node-name", {{"word", std::string(word.substr(0, 24))}});
        if (sign == std::string_view::npos) {
            if (!fallback) return refuse_at(start_of(word), "error.plan.place-wanted", {{"part", *node}});
            return Spot{*node, *fallback};
        }
        const bool minus = word[sign] == '-';
        if (minus && (!minus_allowed || index_of(*node) != 0)) return refuse_at(start_of(word) + sign, "error.plan.minus", {{"part", *node}});
        auto mm = millimetres(word.substr(sign + 1));
        if (!mm) return failure(std::move(mm.error()));
        return Spot{*node, minus ? -*mm : *mm};
    }

    Result<Edit> cut() {
        auto place_word = next_word();
        if (!place_word) return failure(std::move(place_word.error()));
        auto place = spot(*place_word, std::nullopt, true);
        if (!place) return failure(std::move(place.error()));
        auto tool_word = next_word();
        if (!tool_word) return failure(std::move(tool_word.error()));
        const auto tool = read_word<Tool>(*tool_word);
        if (!tool) return refuse_at(start_of(*tool_word), "error.plan.tool", {{"word", std::string(tool_word->substr(0, 24))}});
        Cut cut{place->node, place->beyond, *tool, {}};
        const std::size_t before = at_;
        spaces();
        if (peek_word() != "tilt") {
            at_ = before;
            return cut;
        }
        at_ += 4;
        auto word = next_word();
        if (!word) return failure(std::move(word.error()));
        int degrees = 0;
        const auto [end, fault] = std::from_chars(word->data(), word->data() + word->size(), degrees);
        const std::string_view digits = word->substr((*word)[0] == '-' ? 1 : 0);
        const bool zero_led = digits.size() > 1 && digits[0] == '0';
        if (fault != std::errc{} || end != word->data() + word->size() || degrees < -60 || degrees > 60 || zero_led)
            return refuse_at(start_of(*word), "error.plan.tilt", {{"word", std::string(word->substr(0, 24))}});
        cut.tilt = {degrees * 1000};
        return cut;
    }

    Result<Edit> lay() {
        auto name = next_word();
        if (!name) return failure(std::move(name.error()));
        auto id = axis(*name);
        if (!id) return failure(std::move(id.error()));
        auto side_word = next_word();
        if (!side_word) return failure(std::move(side_word.error()));
        const auto side = read_word<Side>(*side_word);
        if (!side || *side == Side::none) return refuse_at(start_of(*side_word), "error.plan.side", {{"word", std::string(side_word->substr(0, 24))}});
        auto wraps_word = next_word();
        if (!wraps_word) return failure(std::move(wraps_word.error()));
        if (*wraps_word != "wraps") return refuse_at(start_of(*wraps_word), "error.plan.wraps-wanted", {{"word", std::string(wraps_word->substr(0, 24))}});
        auto number = next_word();
        if (!number) return failure(std::move(number.error()));
        for (int half = 0; half <= 6; ++half)
            if (*number == wraps_text(half)) return Lay{*id, *side, half};
        return refuse_at(start_of(*number), "error.plan.wraps", {{"word", std::string(number->substr(0, 24))}});
    }

    Result<Edit> tie() {
        auto word = next_word();
        if (!word) return failure(std::move(word.error()));
        auto place = spot(*word, Fasten{}.beyond, false);
        if (!place) return failure(std::move(place.error()));
        Fasten tie{place->node, place->beyond, false};
        const std::size_t before = at_;
        spaces();
        const std::string_view how = peek_word();
        if (how == "tight" || how == "loose") {
            at_ += how.size();
            tie.tight = how == "tight";
        } else {
            at_ = before;
        }
        return tie;
    }

    Result<Edit> mark() {
        auto name = next_word();
        if (!name) return failure(std::move(name.error()));
        auto id = axis(*name);
        if (!id) return failure(std::move(id.error()));
        auto word = next_word();
        if (!word) return failure(std::move(word.error()));
        const auto role = read_word<Role>(*word);
        if (!role) return refuse_at(start_of(*word), "error.plan.role", {{"word", std::string(word->substr(0, 24))}});
        return Mark{*id, *role};
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int step_ = 0;
};

}  // namespace

std::string print_edit(const Edit& edit) { return std::visit(Printer{}, edit); }

std::string print_plan(const Plan& plan) {
    std::string text;
    for (const Edit& edit : plan.edits) {
        if (!text.empty()) text += "; ";
        text += print_edit(edit);
    }
    return text;
}

Result<Plan> parse_plan(std::string_view text) { return Reader(text).plan(); }

std::vector<int> edit_columns(std::string_view text) {
    Reader reader(text);
    static_cast<void>(reader.plan());
    return std::move(reader.columns);
}

}  // namespace spurwright
