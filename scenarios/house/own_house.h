// The house's own rules: a shipped set and what this house does otherwise, changed value by value and kept in one file
// beside the settings. A change that cannot be used is refused and the old rules stay.
// Must not know: screens, the vine in hand.
#pragma once

#include <string>

#include "scenarios/house/parameter_parts.h"
#include "scenarios/io/house_rules_file.h"

namespace spurwright::house {

inline constexpr std::string_view usual_base = "general";

class OwnHouse {
public:
    // `path`: where it is kept; empty: nowhere. Begins as the shipped general set.
    [[nodiscard]] static Result<OwnHouse> make(const io::Assets& assets, std::string path);

    // What was kept from before, if anything. A file that cannot be used is left as it is and never saved over.
    [[nodiscard]] Result<void> recall();

    const io::HouseRulesFile& file() const { return file_; }
    const rules::HouseRules& rules() const { return file_.rules; }
    const rules::HouseRules& base() const { return base_; }  // as shipped
    // Whether anything is asked otherwise than by the general set.
    bool differs() const { return file_.base != usual_base || !file_.own.empty(); }
    // What work is kept under: the file's path, or the name of the shipped set where nothing differs from it.
    std::string name() const;

    // Each faults as reading the changed file would: bands that cross, weights of nothing. Saved: cannot_write, with the
    // change in force.
    [[nodiscard]] Result<void> begin_from(const std::string& shipped);  // what is set by the house stays
    [[nodiscard]] Result<void> step(const Part& part, int steps);
    [[nodiscard]] Result<void> as_shipped(std::string_view rule, std::string_view name);
    [[nodiscard]] Result<void> all_as_shipped();
    [[nodiscard]] Result<void> read_in(const std::string& path);  // in place of what there is
    [[nodiscard]] Result<void> write_out(const std::string& path) const;

    void keep_nothing() { path_.clear(); }  // another window keeps it

private:
    OwnHouse(const io::Assets& assets, std::string path) : assets_(&assets), path_(std::move(path)) {}
    [[nodiscard]] Result<void> take(io::HouseRulesFile wanted);
    [[nodiscard]] Result<void> take_and_keep(io::HouseRulesFile wanted);

    const io::Assets* assets_;
    std::string path_;
    io::HouseRulesFile file_;
    rules::HouseRules base_;
};

} // namespace spurwright::house
