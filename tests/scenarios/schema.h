// Whether a JSON text keeps a schema of assets/schemas; an empty answer, or the first fault as a sentence.
#pragma once

#include <string>

namespace spurwright::test {

std::string schema_fault(const std::string& schema_name, const std::string& json_text);

} // namespace spurwright::test
