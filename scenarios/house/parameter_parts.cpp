#include "scenarios/house/parameter_parts.h"

#include <algorithm>
#include <cstdlib>

namespace spurwright::house {
namespace {

using rules::open_end;
using rules::Range;

// Finer for small numbers: a cane's thickness by half a millimetre, a height by ten.
std::int32_t length_step(std::int32_t micrometres) {
    if (micrometres < 20'000) return 500;
    if (micrometres < 100'000) return 5'000;
    return 10'000;
}

constexpr std::int32_t usual_length = 300'000, usual_count = 30; // where what was open begins

// Downward a number takes the step of where it comes to, so that down undoes up.
template <class StepOf>
void step_number(std::int32_t& value, int steps, std::int32_t begin, StepOf step_of) {
    if (value == open_end) {
        if (steps < 0) value = begin;
        return;
    }
    for (int i = 0; i < std::abs(steps); ++i)
        value = steps > 0 ? value + step_of(value) : std::max(0, value - step_of(std::max(0, value - 1)));
}

template <class E>
void next_word(E* v, int steps) {
    const int count = static_cast<int>(words_of(E{}).size());
    *v = static_cast<E>(((static_cast<int>(*v) + steps) % count + count) % count);
}

constexpr auto by(std::int32_t size) {
    return [size](std::int32_t) { return size; };
}

struct Stepper {
    bool upper;
    int steps;

    void operator()(bool* v) const { *v = steps % 2 == 0 ? *v : !*v; }
    void operator()(std::int32_t* v) const { step_number(*v, steps, usual_count, by(1)); }
    void operator()(std::optional<std::int32_t>* v) const {
        std::int32_t value = v->value_or(open_end);
        step_number(value, steps, usual_count, by(1));
        if (value != open_end) *v = value;
    }
    void operator()(Length* v) const { step_number(v->count, steps, usual_length, length_step); }
    void operator()(std::optional<Length>* v) const {
        Length value = v->value_or(Length{open_end});
        (*this)(&value);
        if (value.count != open_end) *v = value;
    }
    void operator()(Angle* v) const { step_number(v->count, steps, 0, by(5'000)); }
    void operator()(PerMille* v) const { step_number(v->count, steps, 0, by(50)); }
    void operator()(Tenths* v) const { step_number(v->count, steps, 0, by(10)); }
    template <class M>
    M* end(Range<M>* v) const {
        return upper ? &v->high : &v->low;
    }
    void operator()(Range<Length>* v) const { (*this)(end(v)); }
    void operator()(Range<PerMille>* v) const { (*this)(end(v)); }
    void operator()(Range<rules::BudsPerMetre>* v) const { step_number(end(v)->count, steps, 0, by(1'000)); }
    void operator()(rules::CountRange* v) const { step_number(end(v)->count, steps, usual_count, by(1)); }
    void operator()(rules::TurnRange* v) const { step_number(end(v)->count, steps, 6, by(1)); }
    template <class E>
        requires std::is_enum_v<E>
    void operator()(E* v) const {
        next_word(v, steps);
    }
};

struct Reader {
    bool upper;

    static Value number(Measured measured, std::int64_t count, std::int64_t scale, bool ranged = false) {
        return {measured, count == open_end, count == open_end ? 0 : count * scale, {}, ranged};
    }
    Value operator()(const bool* v) const { return {Measured::yes, false, *v ? 1000 : 0, {}, false}; }
    Value operator()(const std::int32_t* v) const { return number(Measured::count, *v, 1000); }
    Value operator()(const std::optional<std::int32_t>* v) const { return number(Measured::count, v->value_or(open_end), 1000); }
    Value operator()(const Length* v) const { return number(Measured::mm, v->count, 1); }
    Value operator()(const std::optional<Length>* v) const { return number(Measured::mm, v->value_or(Length{open_end}).count, 1); }
    Value operator()(const Angle* v) const { return number(Measured::deg, v->count, 1); }
    Value operator()(const PerMille* v) const { return number(Measured::share, v->count, 1); }
    Value operator()(const Tenths* v) const { return number(Measured::points, v->count, 100); }
    template <class M>
    std::int32_t end(const Range<M>* v) const {
        return upper ? v->high.count : v->low.count;
    }
    Value operator()(const Range<Length>* v) const { return number(Measured::mm, end(v), 1, true); }
    Value operator()(const Range<PerMille>* v) const { return number(Measured::share, end(v), 1, true); }
    Value operator()(const Range<rules::BudsPerMetre>* v) const { return number(Measured::per_metre, end(v), 1, true); }
    Value operator()(const rules::CountRange* v) const { return number(Measured::count, end(v), 1000, true); }
    Value operator()(const rules::TurnRange* v) const { return number(Measured::turns, end(v), 500, true); }
    template <class E>
        requires std::is_enum_v<E>
    Value operator()(const E* v) const {
        return {Measured::word, false, 0, word_of(*v), false};
    }
};

struct IsRange {
    template <class M>
    bool operator()(const Range<M>*) const {
        return true;
    }
    template <class T>
    bool operator()(const T*) const {
        return false;
    }
};

rules::Slot slot_of(rules::HouseRules& house, const Part& part) {
    const auto all = rules::parameters(house);
    const auto at = std::find_if(all.begin(), all.end(), [&](const rules::Parameter& p) { return p.rule == part.rule && p.name == part.name; });
    return at->at;
}

// A weight is written in tenths of a point.
bool is_weight(const Part& part) { return part.name.starts_with("weight"); }

} // namespace

std::vector<std::string_view> groups() {
    rules::HouseRules house;
    std::vector<std::string_view> all;
    for (const rules::Parameter& p : rules::parameters(house))
        if (all.empty() || all.back() != p.rule) all.push_back(p.rule);
    return all;
}

std::vector<Part> parts_of(std::string_view group) {
    rules::HouseRules house;
    std::vector<Part> parts;
    for (const rules::Parameter& p : rules::parameters(house)) {
        if (p.rule != group) continue;
        parts.push_back({p.rule, p.name, false});
        if (std::visit(IsRange{}, p.at)) parts.push_back({p.rule, p.name, true});
    }
    return parts;
}

Value value_of(const rules::HouseRules& house, const Part& part) {
    rules::HouseRules copy = house;
    Value value = std::visit(Reader{part.upper}, slot_of(copy, part));
    if (is_weight(part)) {
        value.measured = Measured::points;
        value.thousandths /= 10;
    }
    return value;
}

void step(rules::HouseRules& house, const Part& part, int steps) {
    const rules::Slot slot = slot_of(house, part);
    std::visit(Stepper{part.upper, is_weight(part) ? steps * 10 : steps}, slot);
}

} // namespace spurwright::house
