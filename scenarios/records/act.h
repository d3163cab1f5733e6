// One act of a person on the store: all of it or nothing, noted with its time, and undone by another act.
#pragma once

#include <string>
#include <string_view>

#include "scenarios/records/store.h"

namespace spurwright::records {

// Rolls back at the end of its life where nothing was committed.
class Rollback {
public:
    explicit Rollback(Store& store) : store_(store) {}
    ~Rollback();
    void committed() { open_ = false; }
    Rollback(const Rollback&) = delete;
    Rollback& operator=(const Rollback&) = delete;

private:
    Store& store_;
    bool open_ = true;
};

class Act {
public:
    // `what` is its word in the history: "crew-import", "book-import", ... Refused (cannot_write) while another program
    // writes, for 5 seconds.
    [[nodiscard]] static Result<std::unique_ptr<Act>> begin(Store& store, std::string_view what, const std::string& when_utc);

    std::int64_t number() const { return number_; }
    [[nodiscard]] Result<void> commit(); // on the disk when it returns

private:
    explicit Act(Store& store) : store_(store), rollback_(store) {}
    Store& store_;
    Rollback rollback_;
    std::int64_t number_ = 0;
};

struct DoneAct {
    std::int64_t number = 0;
    std::string when_utc, what;
    std::int64_t changes = 0;
};

// The last act whose word begins with `kind` that was not undone and undoes none.
[[nodiscard]] Result<std::optional<DoneAct>> last_act(Store& store, std::string_view kind);

// Puts every row back as it was before that act, by an act of its own. Needs it to be the last of its kind.
[[nodiscard]] Result<void> undo(Store& store, const DoneAct& act, const std::string& when_utc);

} // namespace spurwright::records
