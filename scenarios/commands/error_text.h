// A refusal as people and programs read it: "spurwright: WHERE: SENTENCE" on one line, or the error object of --json.
#pragma once

#include <string>

#include "scenarios/io/json.h"
#include "scenarios/words/words.h"
#include "sim/core/error.h"

namespace spurwright::commands {

// The faults' words in JSON: "unknown-part", "already-gone", ...
std::string_view word_of_fault(Fault fault);

// "plan, edit 3, column 41", "vines.json:12:7", "--age"; empty where nothing is known.
std::string where_text(const Error& error, const words::Words& words);
std::string sentence_of(const Error& error, const words::Words& words);
std::string error_line(const Error& error, const words::Words& words); // with LF
io::Json error_object(const Error& error, const words::Words& words);

// Arguments of a sentence as JSON: the name says the unit, {"measured_um": 8450}.
io::Json arguments_object(const Arguments& arguments);

int exit_status(const Error& error); // 3 where the machine lacks something, else 2

} // namespace spurwright::commands
