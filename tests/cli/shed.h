// The verbs that keep something, run as a person runs them, with folders of their own that are gone with the test case.
#pragma once

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/cli/program.h"
#include "tests/scenarios/schema.h"

namespace spurwright::test {

class Shed {
public:
    Ran run(const std::vector<std::string>& words) const {
        return run_program_of(SPURWRIGHT_PROGRAM, words, {"XDG_DATA_HOME=" + folder.file("data"), "XDG_CONFIG_HOME=" + folder.file("config")});
    }
    // With --json: the object, held to its schema.
    nlohmann::json object(std::vector<std::string> words, const std::string& schema, int status = 0) const {
        words.push_back("--json");
        const Ran ran = run(words);
        CHECK_MESSAGE(ran.status == status, ran.err);
        CHECK(schema_fault(schema, ran.out) == "");
        return nlohmann::json::parse(ran.out, nullptr, false);
    }
    // The sentence of a refusal.
    std::string refused(const std::vector<std::string>& words) const {
        const Ran ran = run(words);
        CHECK(ran.status == 2);
        CHECK(ran.out.empty());
        CHECK(ran.err.find('[') == std::string::npos);
        return ran.err;
    }
    Folder folder;
};

} // namespace spurwright::test
