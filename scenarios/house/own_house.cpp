#include "scenarios/house/own_house.h"

#include <algorithm>

#include "scenarios/io/safe_file.h"
#include "scenarios/settings/folders.h"

namespace spurwright::house {
namespace {

constexpr std::string_view own_name = "own";

std::string key_of(std::string_view rule, std::string_view name) { return std::string(rule) + "." + std::string(name); }

// Of a range, both ends.
bool alike(rules::HouseRules a, rules::HouseRules b, const Part& part) {
    const auto of_a = rules::parameters(a), of_b = rules::parameters(b);
    for (std::size_t i = 0; i < of_a.size(); ++i)
        if (of_a[i].rule == part.rule && of_a[i].name == part.name)
            return std::visit([&](auto* slot) { return *slot == *std::get<decltype(slot)>(of_b[i].at); }, of_a[i].at);
    return true;
}

} // namespace

Result<OwnHouse> OwnHouse::make(const io::Assets& assets, std::string path) {
    OwnHouse own(assets, std::move(path));
    io::HouseRulesFile usual;
    usual.name = own_name;
    usual.base = usual_base;
    if (auto taken = own.take(std::move(usual)); !taken) return failure(std::move(taken.error()));
    return own;
}

Result<void> OwnHouse::recall() {
    if (path_.empty() || !io::is_there(path_)) return {};
    auto kept = io::load_house_rules_file(path_, *assets_);
    auto taken = kept ? take(*std::move(kept)) : failure(std::move(kept.error()));
    if (!taken) path_.clear();
    return taken;
}

std::string OwnHouse::name() const { return file_.own.empty() || path_.empty() ? file_.base : path_; }

// Printed and read again: one place says what a set of rules may be.
Result<void> OwnHouse::take(io::HouseRulesFile wanted) {
    if (wanted.base.empty()) wanted.base = usual_base;  // a file that says all itself: every value is its own
    auto read = io::read_house_rules(io::print_house_rules(wanted), path_.empty() ? std::string(own_name) : path_, *assets_);
    if (!read) return failure(std::move(read.error()));
    auto base = io::load_house_rules(read->base, *assets_);
    if (!base) return failure(std::move(base.error()));
    file_ = *std::move(read);
    base_ = base->rules;
    return {};
}

Result<void> OwnHouse::take_and_keep(io::HouseRulesFile wanted) {
    if (auto taken = take(std::move(wanted)); !taken) return taken;
    if (path_.empty()) return {};
    if (auto made = settings::make_folder(settings::folder_of(path_)); !made) return made;
    return write_out(path_);
}

Result<void> OwnHouse::begin_from(const std::string& shipped) {
    auto base = io::load_house_rules(shipped, *assets_);
    if (!base) return failure(std::move(base.error()));
    io::HouseRulesFile wanted = file_;
    wanted.base = shipped;
    // What is the house's own keeps its value; all else is the new base's.
    rules::HouseRules rules = base->rules, old = file_.rules;
    const auto to = rules::parameters(rules), from = rules::parameters(old);
    for (std::size_t i = 0; i < to.size(); ++i) {
        if (std::find(file_.own.begin(), file_.own.end(), key_of(to[i].rule, to[i].name)) == file_.own.end()) continue;
        std::visit([&](auto* slot) { *slot = *std::get<decltype(slot)>(from[i].at); }, to[i].at);
    }
    wanted.rules = rules;
    return take_and_keep(std::move(wanted));
}

Result<void> OwnHouse::step(const Part& part, int steps) {
    io::HouseRulesFile wanted = file_;
    house::step(wanted.rules, part, steps);
    const std::string key = key_of(part.rule, part.name);
    std::erase(wanted.own, key);
    if (!alike(wanted.rules, base_, part)) wanted.own.push_back(key);
    return take_and_keep(std::move(wanted));
}

Result<void> OwnHouse::as_shipped(std::string_view rule, std::string_view name) {
    io::HouseRulesFile wanted = file_;
    std::erase(wanted.own, key_of(rule, name));
    return take_and_keep(std::move(wanted));
}

Result<void> OwnHouse::all_as_shipped() {
    io::HouseRulesFile wanted = file_;
    wanted.own.clear();
    return take_and_keep(std::move(wanted));
}

Result<void> OwnHouse::read_in(const std::string& path) {
    auto read = io::load_house_rules_file(path, *assets_);
    if (!read) return failure(std::move(read.error()));
    return take_and_keep(*std::move(read));
}

Result<void> OwnHouse::write_out(const std::string& path) const {
    return io::write_file(path, io::print_house_rules(file_));
}

} // namespace spurwright::house
