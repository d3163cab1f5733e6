// What the trainee has done so far. Undo moves a cursor; nothing is ever un-cut. The vine on screen is always
// prune(start, done()), so it cannot drift from the log.
#pragma once

#include "sim/pruning/plan.h"

namespace spurwright {

class EditLog {
public:
    Plan done() const { return {{edits_.begin(), edits_.begin() + static_cast<std::ptrdiff_t>(cursor_)}}; }
    Plan all() const { return {edits_}; }  // with what was undone
    void add(Edit edit) {
        edits_.resize(cursor_);  // a new edit forgets what was undone
        edits_.push_back(edit);
        ++cursor_;
    }
    bool undo() { return cursor_ > 0 && (--cursor_, true); }
    bool redo() { return cursor_ < edits_.size() && (++cursor_, true); }
    std::size_t undone() const { return edits_.size() - cursor_; }

private:
    std::vector<Edit> edits_;
    std::size_t cursor_ = 0;  // <= edits_.size()
};

}  // namespace spurwright
