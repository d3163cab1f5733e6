// What a verb prints, held against its schema; what it refuses, in text and in JSON.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "tests/cli/program.h"
#include "tests/scenarios/schema.h"

namespace spurwright::test {

// The vine that most verbs are asked about.
inline const std::string code = "00RM-K1SX-G00Q-0004-0005-046T";

// The first key that stands twice in one object of this text; empty where none does. A parser keeps the last and says nothing.
inline std::string key_said_twice(const std::string& text) {
    std::vector<std::set<std::string>> open;
    std::string twice;
    using Event = nlohmann::json::parse_event_t;
    const nlohmann::json all = nlohmann::json::parse(text, [&](int, Event event, nlohmann::json& value) {
        if (event == Event::object_start) open.emplace_back();
        if (event == Event::object_end) open.pop_back();
        if (event == Event::key && !open.back().insert(value.get<std::string>()).second && twice.empty()) twice = value.get<std::string>();
        return true;
    }, false);
    return all.is_discarded() ? "no JSON" : twice;
}

// The object that these words print with --json.
inline nlohmann::json answered(std::vector<std::string> arguments, const std::string& schema, const std::string& folder = ".") {
    arguments.push_back("--json");
    const Ran ran = run_program(arguments, folder);
    CHECK_MESSAGE(ran.status == 0, ran.err);
    CHECK((ran.err.empty() || ran.err.front() == '\r'));  // progress alone
    CHECK(ran.out.ends_with("}\n"));
    CHECK(schema_fault(schema, ran.out) == "");
    CHECK(key_said_twice(ran.out) == "");
    return nlohmann::json::parse(ran.out, nullptr, false);
}

// What the refusal says, without the program's name.
inline std::string refused(std::vector<std::string> arguments, int status = 2) {
    const Ran text = run_program(arguments);
    CHECK(text.status == status);
    CHECK(text.out.empty());
    CHECK(text.err.starts_with("spurwright: "));
    CHECK(text.err.ends_with(".\n"));
    CHECK(std::count(text.err.begin(), text.err.end(), '\n') <= 3);
    CHECK(text.err.find('[') == std::string::npos);
    arguments.push_back("--json");
    const Ran json = run_program(arguments);
    CHECK(json.status == status);
    CHECK(json.out.empty());
    CHECK(schema_fault("error", json.err) == "");
    return text.err.size() < 13 ? "" : text.err.substr(12, text.err.size() - 13);
}

} // namespace spurwright::test
