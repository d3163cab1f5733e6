// Look and say in the window: looks made beside the picture, one ahead; answered once each, with how long it took; each
// answer in the records before the next look. Must not know: screens, pictures.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "scenarios/drill/progress.h"
#include "scenarios/practice/worker.h"
#include "scenarios/records/store.h"
#include "sim/rules/house_rules.h"

namespace spurwright::practice {

inline constexpr int looks_a_sitting = 30; // our choice: five minutes

enum class LookStage : unsigned char { setting_up, making, asking, told, over };
constexpr auto words_of(LookStage) { return std::to_array<std::string_view>({"setting-up", "making", "asking", "told", "over"}); }

// Days counted on, by the records' own clock.
std::int32_t day_today();

using LookClock = std::function<std::int64_t()>; // milliseconds, from any start

class LookDrill {
public:
    // `store_file`: where answers are kept; empty: nowhere. `today`: days counted on from any start, above 0.
    LookDrill(std::string store_file, std::optional<std::int64_t> person, std::string language, const rules::HouseRules& house, LookClock clock, std::int32_t today);

    std::vector<drill::Skill> on{drill::Skill::wood_age, drill::Skill::bud_counts, drill::Skill::cane_size, drill::Skill::joints};
    bool has(drill::Skill skill) const;
    void turn(drill::Skill skill); // on or off; the last one stays on

    // What was answered before, from the records. Fault: they cannot be read; then it begins with nothing.
    [[nodiscard]] Result<void> recall();

    LookStage stage() const { return stage_; }
    const drill::Look* look() const { return stage_ == LookStage::asking || stage_ == LookStage::told ? &*look_ : nullptr; }
    drill::Why why() const { return why_; }
    std::size_t shown() const { return shown_; } // rises with each look
    int asked() const { return static_cast<int>(sitting_); } // answered in this sitting
    int right() const { return right_; }
    const drill::LookAnswers& answers() const { return answers_; } // all, those from before first
    std::int32_t today() const { return today_; }

    void begin(std::uint64_t seed);
    bool poll();  // true where a look came
    void seen();  // the look stands before the eye: its time runs from now
    // `said`: a word from 0; of a pair the place, 0 or 1. Fault: it counts and could not be kept.
    [[nodiscard]] Result<void> answer(std::size_t said);
    std::optional<std::size_t> said() const { return said_; }
    bool was_right() const { return said_ && *said_ == right_place(); }
    void next();
    void end(); // of the sitting; what was answered stays

private:
    std::string store_file_;
    std::optional<std::int64_t> person_;
    std::string language_;
    rules::HouseRules house_;
    LookClock clock_;
    std::int32_t today_;
    std::optional<records::Store> store_;
    std::set<std::uint64_t> served_; // vines seen before, by hash
    drill::LookAnswers answers_;
    std::size_t sitting_ = 0, shown_ = 0;
    int right_ = 0;
    LookStage stage_{};
    std::uint64_t seed_ = 0;
    std::uint32_t made_ = 0;
    struct Made {
        std::optional<drill::Look> look;
        drill::Why why{};
    };
    std::unique_ptr<Worker<Made>> worker_;
    std::optional<drill::Look> look_;
    std::optional<Made> ahead_;
    drill::Why why_{};
    std::optional<std::int64_t> since_;
    std::optional<std::size_t> said_;

    std::size_t right_place() const; // of the words, or of the pair's places
    void make_one();
    void show(Made made);
    [[nodiscard]] Result<void> keep(const drill::LookAnswer& answer);
};

}  // namespace spurwright::practice
