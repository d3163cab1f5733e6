#include "tests/scenarios/schema.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace spurwright::test {

std::string schema_fault(const std::string& schema_name, const std::string& json_text) {
    const std::string path = SPURWRIGHT_SOURCE "/assets/schemas/" + schema_name + ".json";
    std::ifstream file(path);
    if (!file) return "no schema " + path;
    const nlohmann::json schema_json = nlohmann::json::parse(file, nullptr, false);
    const nlohmann::json json = nlohmann::json::parse(json_text, nullptr, false);
    if (schema_json.is_discarded()) return "the schema is no JSON";
    if (json.is_discarded()) return "not JSON: " + json_text.substr(0, 200);
    valijson::Schema schema;
    valijson::SchemaParser parser;
    const valijson::adapters::NlohmannJsonAdapter schema_adapter(schema_json);
    parser.populateSchema(schema_adapter, schema);
    valijson::Validator validator;
    const valijson::adapters::NlohmannJsonAdapter adapter(json);
    valijson::ValidationResults results;
    if (validator.validate(schema, adapter, &results)) return "";
    valijson::ValidationResults::Error error;
    std::string all;
    while (results.popError(error)) {
        for (const std::string& step : error.context) all += step;
        all += ": " + error.description + "\n";
    }
    return all.empty() ? "refused" : all;
}

} // namespace spurwright::test
