// Why a request could not be carried out: a fault, a text key with typed arguments, and where. No sentences here.
#pragma once

#include <tl/expected.hpp>

#include "sim/core/text_key.h"

namespace spurwright {

enum class Fault {
    unknown_part,  // the name is on no row of this vine
    already_gone,  // an earlier cut of the same plan took it off
    not_allowed,   // legal_edits() does not offer this edit here
    bad_text,      // a plan, code or value that cannot be read
    bad_file,      // wrong kind, version or content
    newer,         // made by a newer version: refused, left as it was
    out_of_range,  // a setting outside what the model grows
    cannot_write,  // the output path
    missing,       // this machine or installation lacks something
};

struct Where {
    std::string source;                   // "plan", "--age", "vines.json", "the code"; empty = not known
    int line = 0, column = 0, step = 0;   // 0 = does not apply
};

struct Error {
    Fault fault;
    TextKey key;
    Arguments arguments;
    Where where;
};

template <class T>
using Result = tl::expected<T, Error>;

inline auto failure(Error error) { return tl::unexpected<Error>(std::move(error)); }

}  // namespace spurwright
