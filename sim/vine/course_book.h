// How a cane lies once it is laid, and what has been worked out of it so far. Bending a cane is the dearest question a
// vine is asked, and everybody asks it: the search, the judge, whoever lays it. So every vine carries a book of answers,
// shared by its copies and kept by all that an answer depends on: an entry can be missing, never stale. The book is for
// one thread: whoever takes a copy of a vine to another opens a new one for it.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <vector>

#include "sim/vine/vine.h"

namespace spurwright {

struct Course {
    std::vector<Place> places;  // of every node of the axis, crown first, as if none were removed
    Strain strain;              // the largest
    NodeId worst;               // node of it
    LaidState state{};
    Side side{};
    std::uint32_t tie = 0;  // index of the node from which on it lies on the wire; may be past the last
};

class CourseBook {
public:
    using Key = std::vector<std::int32_t>;

    std::shared_ptr<const Course> find(const Key& key) const;
    void keep(Key key, std::shared_ptr<const Course> course);

private:
    std::map<Key, std::shared_ptr<const Course>> courses_;
};

}  // namespace spurwright
