#include "scenarios/io/variety_file.h"

#include <algorithm>

#include "scenarios/io/named_file.h"
#include "scenarios/io/safe_file.h"
#include "sim/core/check.h"
#include "sim/weather/hardiness.h"

namespace spurwright::io {
namespace {

using growth::Told;
using growth::Variety;

constexpr std::size_t longest_source = 200;

const growth::ConstantRow& range_of(const growth::VarietyField& field) {
    const auto rows = growth::constant_rows();
    const auto at = std::find_if(rows.begin(), rows.end(),
                                 [&](const growth::ConstantRow& row) { return row.name == field.constant; });
    SPURWRIGHT_CHECK((at != rows.end()), ==, true);
    return *at;
}

std::vector<std::string_view> shipped_varieties() {
    std::vector<std::string_view> names;
    for (const Variety& variety : growth::varieties()) names.push_back(variety.name);
    return names;
}

std::vector<std::string_view> cultivars_with_hardiness() {
    std::vector<std::string_view> names;
    for (const weather::Hardiness& row : weather::hardiness_table()) names.push_back(row.cultivar);
    return names;
}

// A number, or {"value": 120, "status": "read", "source": "..."}; `source` is where the text is kept.
Told told_in(Fields& fields, const growth::VarietyField& field, const Told& other, bool needed, std::string& source) {
    const Json* given = needed ? &fields.required(field.name) : fields.optional(field.name);
    if (!given || fields.refusal().any()) return other;
    const growth::ConstantRow& row = range_of(field);
    const auto number = [&](const Json& value) {
        return value_between(fields, value, field.name, row.low, row.high, other.value);
    };
    if (!given->is(Json::Kind::object)) return {number(*given)};
    Fields explained(fields.refusal(), *given);
    Told told{number(explained.required("value"))};
    told.status = explained.word<growth::ValueStatus>("status", growth::ValueStatus::choice);
    source = explained.text("source", longest_source, "-");
    if (source.empty()) source = "-";
    explained.end();
    told.source = source;
    return told;
}

Json told_json(const Told& told) {
    Json o = Json::object();
    o.set("value", Json::number(told.value, 4));
    o.set("status", word_of(told.status));
    if (told.source != "-") o.set("source", told.source);
    return o;
}

} // namespace

Result<std::shared_ptr<const Variety>> read_variety(std::string_view text, const std::string& source) {
    const auto root = read_json(text, source);
    if (!root) return failure(root.error());
    Refusal refusal(source);
    Fields fields(refusal, *root);
    const NamedFile file = read_named(fields, variety_kind, variety_version, shipped_varieties());
    if (refusal.any()) return failure(refusal.take());
    const bool whole = file.base.empty();
    Variety variety = whole ? growth::varieties()[0] : *growth::find_variety(file.base);
    variety.name = file.name;
    variety.shown = file.shown;
    // A key is needed where there is no base to say it.
    const auto unless = [&](auto value) { return whole ? std::nullopt : std::optional(value); };
    variety.species = fields.word<growth::Species>("species", unless(variety.species));
    variety.burst = fields.word<growth::Burst>("burst", unless(variety.burst));
    std::string hardiness;
    if (whole || !fields.left_out("hardiness")) {
        hardiness = fields.known_word("hardiness", cultivars_with_hardiness());
        variety.hardiness = hardiness;
        variety.hardiness_own = false;
    }
    variety.tendrils_everywhere = fields.yes("tendrils_everywhere", unless(variety.tendrils_everywhere));
    const auto values = growth::variety_fields();
    std::vector<std::string> sources(values.size());
    for (std::size_t i = 0; i < values.size(); ++i)
        variety.*values[i].value = told_in(fields, values[i], variety.*values[i].value, whole, sources[i]);
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return growth::kept(variety);
}

Result<std::shared_ptr<const Variety>> load_variety(const std::string& name_or_path, std::string_view option) {
    if (is_path(name_or_path)) {
        const auto text = read_file(name_or_path, largest_json);
        if (!text) return failure(text.error());
        return read_variety(*text, name_or_path);
    }
    if (const Variety* variety = growth::find_variety(name_or_path)) return growth::kept(*variety);
    std::string known;
    for (const std::string_view name : shipped_varieties()) known += (known.empty() ? "" : ", ") + std::string(name);
    return failure({Fault::out_of_range,
                    {"error.grow.variety"},
                    {{"value", name_or_path}, {"known", known}},
                    {std::string(option), 0, 0, 0}});
}

std::string print_variety(const Variety& variety) {
    const bool shipped = growth::find_variety(variety.name) != nullptr;
    Json o = Json::object();
    o.set("kind", variety_kind);
    o.set("version", variety_version);
    o.set("name", (shipped ? "own-" : "") + std::string(variety.name));
    o.set("shown", variety.shown);
    o.set("species", word_of(variety.species));
    o.set("burst", word_of(variety.burst));
    o.set("hardiness", variety.hardiness);
    o.set("tendrils_everywhere", variety.tendrils_everywhere);
    for (const growth::VarietyField& field : growth::variety_fields())
        o.set(field.name, told_json(variety.*field.value));
    return print_json(o);
}

} // namespace spurwright::io
