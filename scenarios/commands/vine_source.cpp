#include "scenarios/commands/vine_source.h"


#include <algorithm>

#include "scenarios/io/safe_file.h"
#include "sim/growth/history.h"
#include "sim/pruning/plan_text.h"

namespace spurwright::commands {
namespace {

// A text that can only be meant as a code, though it is none: so a slip is refused as a slip, not as a missing file.
bool meant_as_code(const std::string& text) {
    const auto is_letter = [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    };
    const auto letters = std::count_if(text.begin(), text.end(), is_letter);
    const auto others =
        std::count_if(text.begin(), text.end(), [&](char c) { return !is_letter(c) && c != '-' && c != ' '; });
    const auto hyphens = std::count(text.begin(), text.end(), '-');
    const bool right_length = letters + others == 24;
    return (others <= 1 && right_length && text.find('/') == std::string::npos &&
            text.find('.') == std::string::npos) ||
           (others == 0 && hyphens >= 4 && letters >= 16 && letters <= 32) ||
           (others == 0 && letters >= 22 && letters <= 26);
}

// Where the edit of that number begins, and in it the part named; columns count from 1.
int column_of(const std::string& text, int step, const std::string& part) {
    std::size_t from = 0;
    for (int i = 1; i < step; ++i) {
        const std::size_t semicolon = text.find(';', from);
        if (semicolon == std::string::npos) return 0;
        from = semicolon + 1;
    }
    const std::size_t end = std::min(text.find(';', from), text.size());
    const std::size_t named = part.empty() ? std::string::npos : text.find(part, from);
    if (named < end) return static_cast<int>(named) + 1;
    return static_cast<int>(std::min(text.find_first_not_of(' ', from), text.size())) + 1;
}

std::string part_of(const Error& error) {
    for (const Named& argument : error.arguments) {
        if (argument.gap != "part") continue;
        if (const auto* axis = std::get_if<AxisId>(&argument.value)) return name_of(*axis);
        if (const auto* node = std::get_if<NodeId>(&argument.value)) return name_of(*node);
    }
    return {};
}

} // namespace

Result<FoundVine> vine_of_code(std::string_view code) {
    const auto coded = read_code(code);
    if (!coded) return failure(coded.error());
    const auto site = growth::site_of(*coded);
    if (!site) {
        Error error = site.error();
        error.where = {"the code", 0, 0, 0};
        return failure(std::move(error));
    }
    auto vine = growth::grow_vine(*site);
    if (!vine) return failure(std::move(vine.error()));
    return FoundVine{*std::move(vine), print_code(*coded), *site};
}

Result<FoundVine> find_vine(const std::string& subject) {
    if (looks_like_code(subject)) return vine_of_code(subject);
    if (!io::is_there(subject) && meant_as_code(subject)) return vine_of_code(subject);
    auto file = io::load_vine_file(subject);
    if (!file) return failure(std::move(file.error()));
    FoundVine found{std::move(file->vine), file->code, {}};
    if (!found.code.empty()) {
        const auto coded = read_code(found.code);
        if (coded)
            if (const auto site = growth::site_of(*coded)) found.site = *site;
    }
    return found;
}

Result<Pruned> prune_by_text(const Vine& before, const std::string& plan_text) {
    auto plan = parse_plan(plan_text);
    if (!plan) return failure(std::move(plan.error()));
    auto after = prune(before, *plan);
    if (after) return Pruned{*std::move(plan), *std::move(after)};
    Error error = std::move(after.error());
    if (error.where.column == 0) error.where.column = column_of(plan_text, error.where.step, part_of(error));
    return failure(std::move(error));
}

Result<void> must_be_uncut(const Vine& v, const std::string& subject) {
    const bool removed = std::any_of(v.nodes.begin(), v.nodes.end(), [](const Node& node) { return node.removed; });
    const auto now = [&](const auto& row) { return row.winter == v.winter; };
    const bool worked = std::any_of(v.wounds.begin(), v.wounds.end(), now) ||
                        std::any_of(v.laid.begin(), v.laid.end(), now) ||
                        std::any_of(v.ties.begin(), v.ties.end(), now);
    if (removed || worked)
        return failure({Fault::not_allowed, TextKey{"error.vine.pruned-already"}, {}, {subject, 0, 0, 0}});
    return {};
}

} // namespace spurwright::commands
