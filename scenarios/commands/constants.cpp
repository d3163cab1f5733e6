// constants: every number of the growth model, once, with its unit, range, status and source.
#include <charconv>
#include <optional>

#include "scenarios/commands/cite.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/growth/growth_constants.h"
#include "sim/growth/variety.h"
#include "sim/vine/words_of.h"
#include "sim/weather/climate.h"
#include "sim/weather/frost.h"
#include "sim/weather/hardiness.h"

namespace spurwright::commands {
namespace {

using growth::ValueStatus;

struct ShownConstant {
    std::string name;
    double value = 0;
    std::string_view unit;
    std::optional<double> low, high; // none: no range is stated
    ValueStatus status{};
    std::string_view source;
    bool editable = false;
};

std::string shortest(double value) {
    char text[32];
    const auto [end, fault] = std::to_chars(text, text + sizeof text, value);
    return std::string(text, fault == std::errc{} ? end : text);
}

void add_hardiness(std::vector<ShownConstant>& rows) {
    using weather::Hardiness;
    struct Field {
        std::string_view name;
        double Hardiness::*value;
        std::string_view unit;
    };
    constexpr Field fields[] = {{"threshold_endo", &Hardiness::threshold_endo, "°C"},
                                {"threshold_eco", &Hardiness::threshold_eco, "°C"},
                                {"harden_endo", &Hardiness::harden_endo, "°C/°C d"},
                                {"soften_endo", &Hardiness::soften_endo, "°C/°C d"},
                                {"harden_eco", &Hardiness::harden_eco, "°C/°C d"},
                                {"soften_eco", &Hardiness::soften_eco, "°C/°C d"},
                                {"at_start", &Hardiness::at_start, "°C"},
                                {"hardiest", &Hardiness::hardiest, "°C"},
                                {"least_hardy", &Hardiness::least_hardy, "°C"},
                                {"theta", &Hardiness::theta, "-"},
                                {"chilling_end", &Hardiness::chilling_end, "°C d"},
                                {"rmse", &Hardiness::rmse, "°C"}};
    for (const Hardiness& row : weather::hardiness_table())
        for (const Field& field : fields)
            rows.push_back({"hardiness." + std::string(row.cultivar) + "." + std::string(field.name),
                            row.*field.value,
                            field.unit,
                            {},
                            {},
                            ValueStatus::read,
                            "ferguson-2014",
                            false});
}

void add_frost(std::vector<ShownConstant>& rows) {
    const auto add = [&](const weather::FrostRow& row, std::string_view column, double value, ValueStatus status,
                         std::string_view source) {
        rows.push_back({"frost." + std::string(word_of(row.stage)) + "." + std::string(column),
                        value,
                        "°C",
                        {},
                        {},
                        status,
                        source,
                        false});
    };
    for (const weather::FrostRow& row : weather::frost_table()) {
        add(row, "concord_10", row.concord_10, ValueStatus::read, row.concord_source);
        add(row, "concord_90", row.concord_90, ValueStatus::read, row.concord_source);
        add(row, "vinifera", row.vinifera, row.vinifera_status,
            row.vinifera_status == ValueStatus::read ? "gardea-1987" : "-");
        add(row, "labruscana", row.labruscana, ValueStatus::computed, row.concord_source);
    }
}

void add_climates(std::vector<ShownConstant>& rows) {
    for (const weather::Climate& climate : weather::climates()) {
        const std::string name = "climate." + std::string(climate.name) + ".";
        rows.push_back({name + "mean", climate.mean_c, "°C", {}, {}, climate.status, "-", false});
        rows.push_back({name + "swing", climate.swing_c, "°C", {}, {}, climate.status, "-", false});
        rows.push_back({name + "warmest_day", climate.warmest_day, "day", {}, {}, climate.status, "-", false});
        rows.push_back({name + "day_range", climate.day_range_c, "°C", {}, {}, climate.status, "-", false});
    }
}

void add_varieties(std::vector<ShownConstant>& rows) {
    for (const growth::Variety& variety : growth::varieties()) {
        const auto add = [&](std::string_view field, const growth::Told& told, std::string_view unit) {
            rows.push_back({"variety." + std::string(variety.name) + "." + std::string(field),
                            told.value,
                            unit,
                            {},
                            {},
                            told.status,
                            told.source,
                            false});
        };
        add("bunch_mass", variety.bunch_mass_g, "g");
        add("noncount_f", variety.noncount_f, "-");
        add("reserve_a", variety.reserve_a, "share");
        add("ri_star", variety.ri_star, "kg/kg");
    }
}

void add_growth(std::vector<ShownConstant>& rows) {
    const growth::Constants constants;
    for (const growth::ConstantRow& row : growth::constant_rows())
        rows.push_back({std::string(row.name), constants.*row.value, row.unit, row.low, row.high, row.status,
                        row.source, row.editable});
}

io::Json number_or_null(std::optional<double> value) { return value ? io::Json::number(*value, 9) : io::Json(); }

// Where a value comes from, in words: "read, eltom-2015"; "our choice".
std::string origin_text(const ShownConstant& row, const words::Words& words) {
    const std::string_view status =
        row.status == ValueStatus::common_practice ? "common-practice" : word_of(row.status);
    return words("status." + std::string(status)) + (row.source == "-" ? "" : ", " + std::string(row.source));
}

std::string section_text(const std::vector<ShownConstant>& rows, const words::Words& words) {
    words::Table table;
    table.rows.push_back({words("constants.name"), words("constants.value"), words("constants.unit"),
                          words("constants.range"), words("constants.origin")});
    table.right = {false, true, false, false, false};
    for (const ShownConstant& row : rows)
        table.rows.push_back({row.name, shortest(row.value) + (row.editable ? "*" : " "), std::string(row.unit),
                              row.low ? shortest(*row.low) + ".." + shortest(*row.high) : "", origin_text(row, words)});
    return words::table_text(table) + "\n";
}

io::Json constant_object(const ShownConstant& row) {
    io::Json o = io::Json::object();
    o.set("name", row.name);
    o.set("value", io::Json::number(row.value, 9));
    o.set("unit", row.unit);
    o.set("low", number_or_null(row.low));
    o.set("high", number_or_null(row.high));
    o.set("status", word_of(row.status));
    o.set("source", row.source);
    o.set("cite", cite_json(row.source));
    o.set("editable", row.editable);
    return o;
}

Result<Answer> answer_constants(const Asked&, const Surroundings& around) {
    Answer answer;
    io::Json list = io::Json::list();
    for (const auto add : {add_growth, add_varieties, add_climates, add_hardiness, add_frost}) {
        std::vector<ShownConstant> rows;
        add(rows);
        for (const ShownConstant& row : rows) list.push(constant_object(row));
        answer.text += section_text(rows, around.words);
    }
    answer.object.set("constants", std::move(list));
    answer.text += words::wrapped(around.words("constants.about"));
    return answer;
}

} // namespace

Verb constants_verb() { return {"constants", "", TextKey{"verb.constants"}, {}, answer_constants}; }

} // namespace spurwright::commands
