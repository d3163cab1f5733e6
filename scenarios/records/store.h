// The one store of what must last: people, events, the reference vines. SQLite behind a few calls; only this file's
// source knows by which library. Every answer comes back as text, whole number or nothing. Must not know: what the
// tables are for (schema.h), verbs, screens.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sim/core/error.h"

namespace spurwright::records {

struct Bytes {
    std::string bytes;
};
using Value = std::variant<std::monostate, std::int64_t, std::string, Bytes>; // the first is SQL's null
using Values = std::vector<Value>;

Value value_of(const std::optional<std::int64_t>& value); // null where there is none
Value value_of(const std::optional<std::string>& value);
Value text_or_null(const std::string& text); // null where it is empty

// One row of an answer, until the next comes.
class Row {
public:
    virtual ~Row() = default;
    virtual bool null(std::size_t column) const = 0;
    virtual const std::string& text(std::size_t column) const = 0; // empty where null
    std::int64_t whole(std::size_t column) const;                  // 0 where null
    std::optional<std::int64_t> maybe_whole(std::size_t column) const;
};

class Store {
public:
    // Opens the store at `path` to write, and makes it, with its folder, where there is none; an older one is brought up
    // to date after a copy was made of it. Refused: a folder or file that cannot be written (cannot_write), a file that is
    // no store or a damaged one (bad_file, left as it was), one of a newer program (newer, left as it was).
    [[nodiscard]] static Result<Store> open(const std::string& path);

    // To read only; nothing where there is no such file. No file is made.
    [[nodiscard]] static Result<std::optional<Store>> open_to_read(const std::string& path);

    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;
    ~Store();

    const std::string& path() const;

    // One statement with ?1, ?2 ... filled in order.
    [[nodiscard]] Result<void> run(std::string_view sql, const Values& values = {});

    // Every row of one statement that answers `columns` columns.
    [[nodiscard]] Result<void> each(std::string_view sql, const Values& values, std::size_t columns, const std::function<void(const Row&)>& row);

    // The first column of the first row.
    [[nodiscard]] Result<std::optional<std::string>> text(std::string_view sql, const Values& values = {});
    [[nodiscard]] Result<std::optional<std::int64_t>> whole(std::string_view sql, const Values& values = {});

    // Reads the whole file; bad_file where it is damaged.
    [[nodiscard]] Result<void> check();

    std::int64_t last_number() const; // of the row put in last

private:
    struct Inside;
    explicit Store(std::unique_ptr<Inside> inside);
    static Result<Store> open_as(const std::string& path, std::string_view mode);
    std::unique_ptr<Inside> inside_;
};

} // namespace spurwright::records
