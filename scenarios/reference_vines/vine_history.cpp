#include "scenarios/reference_vines/vine_history.h"

namespace spurwright::reference_vines {
namespace {

std::optional<Mass> mass_at(const records::Row& row, std::size_t column) {
    return row.null(column) ? std::nullopt : std::optional(Mass{static_cast<std::int32_t>(row.whole(column))});
}

VineChangeKind kind_of(const VineChange& change, bool of_weighing, bool was, bool is) {
    if (!is) return VineChangeKind::taken_back;
    if (!of_weighing) return was ? VineChangeKind::moved : VineChangeKind::named;
    if (!was) return VineChangeKind::weighed;
    return change.before != change.after ? VineChangeKind::reweighed : VineChangeKind::noted;
}

} // namespace

Result<std::vector<VineChange>> vine_history(records::Store& store, std::int64_t vine) {
    std::vector<VineChange> all;
    auto read = store.each(
        "SELECT act.when_utc, change.tab = 'weighing', change.before IS NOT NULL, change.after IS NOT NULL, act.undoes IS NOT NULL, json_extract(coalesce(change.after, change.before), '$.winter'), "
        "json_extract(change.before, '$.mass_mg'), json_extract(change.after, '$.mass_mg') FROM change JOIN act ON act.id = change.act "
        "WHERE (change.tab = 'reference_vine' AND change.row_key = ?1) OR (change.tab = 'weighing' AND change.row_key >= ?1 || ' ' AND change.row_key < ?1 || '!') ORDER BY change.id DESC LIMIT ?2",
        {std::to_string(vine), std::int64_t{most_changes_listed}}, 8, [&](const records::Row& row) {
            VineChange change;
            change.when_utc = row.text(0);
            change.undoes = row.whole(4) != 0;
            if (!row.null(5)) change.winter = static_cast<int>(row.whole(5));
            change.before = mass_at(row, 6);
            change.after = mass_at(row, 7);
            change.kind = kind_of(change, row.whole(1) != 0, row.whole(2) != 0, row.whole(3) != 0);
            all.push_back(std::move(change));
        });
    if (!read) return failure(read.error());
    return all;
}

} // namespace spurwright::reference_vines
