#include "scenarios/io/house_rules_file.h"

#include <algorithm>
#include <map>

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::io {
namespace {

using rules::open_end;

constexpr int deepest_base = 4;                 // sets based on sets
constexpr std::int64_t largest_count = 100'000; // of a plain number
constexpr std::size_t longest_house_text = 200;

Result<HouseRulesFile> load(const std::string& name_or_path, const Assets& assets, int depth);

// Reads one value into the place its parameter names.
struct SlotReader {
    Fields& fields;
    const Json& value;
    std::string_view key;

    void operator()(bool* v) const {
        if (value.is(Json::Kind::boolean))
            *v = value.flag;
        else
            wrong("json.boolean");
    }
    void operator()(std::int32_t* v) const { *v = count(value); }
    void operator()(std::optional<std::int32_t>* v) const {
        if (value.is(Json::Kind::null))
            v->reset();
        else
            *v = count(value);
    }
    void operator()(Length* v) const { *v = fields.length_of(value, key); }
    void operator()(std::optional<Length>* v) const {
        if (value.is(Json::Kind::null))
            v->reset();
        else
            *v = fields.length_of(value, key);
    }
    void operator()(Angle* v) const { v->count = fields.decimal_of(value, key, 3); }
    void operator()(PerMille* v) const { v->count = fields.decimal_of(value, key, 3); }
    void operator()(Tenths* v) const { v->count = fields.decimal_of(value, key, 1); }
    void operator()(rules::Range<Length>* v) const {
        range(v, [this](const Json& end) { return fields.length_of(end, key).count; });
    }
    void operator()(rules::Range<PerMille>* v) const {
        range(v, [this](const Json& end) { return fields.decimal_of(end, key, 3); });
    }
    void operator()(rules::Range<rules::BudsPerMetre>* v) const {
        range(v, [this](const Json& end) { return fields.decimal_of(end, key, 3); });
    }
    void operator()(rules::CountRange* v) const {
        range(v, [this](const Json& end) { return count(end); });
    }
    void operator()(rules::TurnRange* v) const {
        range(v, [this](const Json& end) { return turns(end); });
    }
    void operator()(rules::OriginMeasure* v) const { word(v); }
    void operator()(rules::FirstBud* v) const { word(v); }
    void operator()(rules::NoNeighbour* v) const { word(v); }

    void wrong(std::string_view wanted) const {
        fields.refusal().add("error.house-rules.kind", {{"key", std::string(key)}, {"wanted", TextKey{wanted}}}, value);
    }
    std::int32_t count(const Json& json) const {
        const std::int32_t thousandths = fields.decimal_of(json, key, 3);
        if (thousandths % 1000 == 0 && std::abs(thousandths / 1000) <= largest_count) return thousandths / 1000;
        fields.refusal().add("error.json.not-whole", {{"key", std::string(key)}, {"text", json.text}}, json);
        return 0;
    }
    // Half turns are written as turns: 1.5.
    std::int32_t turns(const Json& json) const {
        const std::int32_t tenths = fields.decimal_of(json, key, 1);
        if (tenths % 5 != 0) fields.refusal().add("error.file.wraps", {}, json);
        return tenths / 5;
    }
    template <class E>
    void word(E* v) const {
        if (const auto read = value.is(Json::Kind::text) ? read_word<E>(value.text) : std::nullopt) {
            *v = *read;
            return;
        }
        std::string all;
        for (const auto one : words_of(E{})) all += (all.empty() ? "" : ", ") + std::string(one);
        fields.refusal().add("error.json.not-a-word", {{"key", std::string(key)}, {"text", value.text}, {"words", all}},
                             value);
    }
    // An upper end may be open: null.
    template <class M, class Read>
    void range(rules::Range<M>* v, Read read) const {
        if (!value.is(Json::Kind::list) || value.items.size() != 2)
            return fields.refusal().add("error.house-rules.pair", {{"key", std::string(key)}}, value);
        v->low.count = read(value.items[0]);
        v->high.count = value.items[1].is(Json::Kind::null) ? open_end : read(value.items[1]);
    }
};

struct SlotPrinter {
    Json operator()(const bool* v) const { return *v; }
    Json operator()(const std::int32_t* v) const { return std::int64_t{*v}; }
    Json operator()(const std::optional<std::int32_t>* v) const { return *v ? Json(std::int64_t{**v}) : Json(); }
    Json operator()(const std::optional<Length>* v) const { return *v ? Json(**v) : Json(); }
    Json operator()(const rules::OriginMeasure* v) const { return word_of(*v); }
    Json operator()(const rules::FirstBud* v) const { return word_of(*v); }
    Json operator()(const rules::NoNeighbour* v) const { return word_of(*v); }
    template <class Tag>
    Json operator()(const Measure<Tag>* v) const {
        return *v;
    }
    Json end(Length l) const { return l; }
    Json end(PerMille p) const { return p; }
    Json end(rules::BudsPerMetre b) const { return Json::decimal(b.count, 3); }
    Json end(decltype(rules::CountRange::low) c) const { return std::int64_t{c.count}; }
    Json end(decltype(rules::TurnRange::low) t) const { return Json::decimal(t.count * 5, 1); }
    template <class M>
    Json operator()(const rules::Range<M>* v) const {
        Json list = Json::list();
        for (const M& m : {v->low, v->high}) list.push(m.count == open_end ? Json() : end(m));
        return list;
    }
};

const rules::Parameter* find_parameter(const std::vector<rules::Parameter>& all, std::string_view rule,
                                       std::string_view name) {
    for (const rules::Parameter& p : all)
        if (p.rule == rule && p.name == name) return &p;
    return nullptr;
}

class HouseRulesReader {
public:
    // `shipped`: a set of the program; what it sets is its own choice, not a house's.
    HouseRulesReader(Refusal& refusal, const Json& root, const Assets& assets, int depth, bool shipped)
        : refusal_(refusal), root_(root), fields_(refusal, root), assets_(assets), depth_(depth), shipped_(shipped) {}

    Result<HouseRulesFile> read() {
        read_head();
        if (refusal_.any()) return failure(refusal_.take());
        if (!file_.base.empty()) {
            auto base = load(file_.base, assets_, depth_ + 1);
            if (!base) return failure(std::move(base.error()));
            file_.rules = base->rules;
        }
        read_rules();
        fields_.end();
        if (!refusal_.any() && file_.base.empty()) need_all();
        if (!refusal_.any()) check_whole();
        if (refusal_.any()) return failure(refusal_.take());
        return std::move(file_);
    }

private:
    Refusal& refusal_;
    const Json& root_;
    Fields fields_;
    const Assets& assets_;
    int depth_;
    bool shipped_;
    HouseRulesFile file_;
    std::map<std::string, const Json*> places_;

    void read_head() {
        const std::string kind = fields_.text("kind", 200);
        if (refusal_.any()) return;
        if (kind != house_rules_kind)
            return refusal_.add("error.file.kind", {{"wanted", std::string(house_rules_kind)}, {"found", kind}},
                                *root_.find("kind"));
        const std::int64_t version = fields_.whole("version", 1, 1'000'000);
        if (version > house_rules_version)
            return refusal_.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{house_rules_version}}},
                                *root_.find("version"), Fault::newer);
        file_.name = fields_.text("name", 60);
        file_.title = fields_.text("title", longest_house_text, "");
        file_.base = fields_.text("base", 60, "");
        file_.set_by = fields_.text("set_by", longest_house_text, "");
        file_.set_on = fields_.text("set_on", longest_house_text, "");
        const bool plain = file_.base.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
        if (!plain || depth_ >= deepest_base)
            refusal_.add("error.house-rules.base", {{"text", file_.base}}, *root_.find("base"));
    }

    void read_rules() {
        const auto all = rules::parameters(file_.rules);
        const Json& list = fields_.required("rules");
        const Fields of_rules(refusal_, list); // refuses what is no object
        for (std::size_t r = 0; r < list.keys.size(); ++r) {
            const std::string& rule = list.keys[r];
            const Json& values = list.items[r];
            if (std::none_of(all.begin(), all.end(), [&](const rules::Parameter& p) { return p.rule == rule; }))
                return refusal_.add("error.house-rules.unknown-rule", {{"rule", rule}}, values);
            const Fields of_rule(refusal_, values);
            for (std::size_t i = 0; i < values.keys.size(); ++i)
                read_parameter(all, rule, values.keys[i], values.items[i]);
        }
    }

    void read_parameter(const std::vector<rules::Parameter>& all, const std::string& rule, const std::string& name,
                        const Json& given) {
        const rules::Parameter* parameter = find_parameter(all, rule, name);
        if (!parameter)
            return refusal_.add("error.house-rules.unknown-parameter", {{"rule", rule}, {"key", name}}, given);
        const Json* value = &given;
        if (given.is(Json::Kind::object)) { // with a reason beside it
            Fields explained(refusal_, given);
            value = &explained.required("value");
            explained.text("why", longest_house_text, "");
            explained.end();
        }
        const std::string key = rule + "." + name;
        std::visit(SlotReader{fields_, *value, key}, parameter->at);
        places_[key] = value;
        file_.own.push_back(key);
        const bool threshold = name != "weight" && name != "on";
        for (std::size_t i = 0; i < rules::rule_count && threshold && !shipped_; ++i)
            if (rules::rule_keys[i] == rule) file_.rules.set_by_house[i] = true;
    }

    void need_all() {
        for (const rules::Parameter& p : rules::parameters(file_.rules)) {
            const std::string key = std::string(p.rule) + "." + std::string(p.name);
            if (places_.find(key) == places_.end())
                return refusal_.add("error.house-rules.missing", {{"key", key}}, *root_.find("rules"));
        }
    }

    void check_whole() {
        const auto fault = rules::first_fault(file_.rules);
        if (!fault) return;
        const std::string key = std::string(fault->rule) + "." + std::string(fault->parameter);
        const auto at = places_.find(key);
        const Json* rule = root_.find("rules")->find(fault->rule);
        const Json& place = at != places_.end() ? *at->second : rule ? *rule : *root_.find("rules");
        refusal_.add(fault->key.name,
                     {{"rule", std::string(fault->rule)}, {"parameter", std::string(fault->parameter)}}, place);
    }
};

Result<HouseRulesFile> read(std::string_view text, const std::string& source, const Assets& assets, int depth,
                            bool shipped) {
    auto root = read_json(text, source);
    if (!root) return failure(std::move(root.error()));
    Refusal refusal(source);
    return HouseRulesReader(refusal, *root, assets, depth, shipped).read();
}

Result<HouseRulesFile> load(const std::string& name_or_path, const Assets& assets, int depth) {
    const bool path = name_or_path.find_first_of("/.") != std::string::npos;
    const std::string file = path ? name_or_path : assets.path("house-rules", name_or_path + ".json");
    auto text = read_file(file, largest_json);
    if (!text) return failure(std::move(text.error()));
    return read(*text, file, assets, depth, !path);
}

} // namespace

Result<HouseRulesFile> read_house_rules(std::string_view text, const std::string& source, const Assets& assets) {
    return read(text, source, assets, 0, false);
}

Result<HouseRulesFile> load_house_rules(const std::string& name_or_path, const Assets& assets) {
    return load(name_or_path, assets, 0);
}

Result<HouseRulesFile> load_house_rules_file(const std::string& path, const Assets& assets) {
    auto text = read_file(path, largest_json);
    if (!text) return failure(std::move(text.error()));
    return read_house_rules(*text, path, assets);
}

Json parameter_values(const rules::HouseRules& house) {
    rules::HouseRules copy = house;
    Json by_rule = Json::object();
    for (const rules::Parameter& p : rules::parameters(copy)) {
        if (!by_rule.find(p.rule)) by_rule.set(p.rule, Json::object());
        by_rule.items.back().set(p.name, std::visit(SlotPrinter{}, p.at));
    }
    return by_rule;
}

std::string print_house_rules(const HouseRulesFile& file) {
    rules::HouseRules copy = file.rules;
    Json o = Json::object();
    o.set("kind", house_rules_kind);
    o.set("version", house_rules_version);
    o.set("name", file.name);
    if (!file.title.empty()) o.set("title", file.title);
    if (!file.base.empty()) o.set("base", file.base);
    if (!file.set_by.empty()) o.set("set_by", file.set_by);
    if (!file.set_on.empty()) o.set("set_on", file.set_on);
    Json by_rule = Json::object();
    for (const rules::Parameter& p : rules::parameters(copy)) {
        const std::string key = std::string(p.rule) + "." + std::string(p.name);
        if (!file.base.empty() && std::find(file.own.begin(), file.own.end(), key) == file.own.end()) continue;
        if (!by_rule.find(p.rule)) by_rule.set(p.rule, Json::object());
        by_rule.items.back().set(p.name, std::visit(SlotPrinter{}, p.at));
    }
    o.set("rules", std::move(by_rule));
    return print_json(o);
}

} // namespace spurwright::io
