#include "scenarios/io/site_file.h"

#include <algorithm>
#include <charconv>

#include "scenarios/io/named_file.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::io {
namespace {

using growth::Site;

std::vector<std::string_view> shipped_climates() {
    std::vector<std::string_view> names;
    for (const weather::Climate& climate : weather::climates()) names.push_back(climate.name);
    return names;
}

// A millimetre of the file in the metres that growth takes.
constexpr double um_per_m = 1e6;
Json in_file_mm(double metres) { return Json::number(metres * 1000, 3); }

// A key is needed where there is no base to say it.
class VineyardReader {
public:
    VineyardReader(Refusal& refusal, const Json& object, bool whole)
        : refusal_(refusal), object_(object), fields_(refusal, object), whole_(whole) {}

    void read(Site& site) {
        site.vigour = fields_.word<Vigour>("vigour", unless(site.vigour));
        site.frost = fields_.yes("frost", unless(site.frost));
        metres("spacing", site.spacing_m);
        metres("rows", site.rows_m);
        metres("wire", site.wire_m);
        if (whole_ || !fields_.left_out("catch")) {
            site.catch_m.clear();
            for (const Json& pair : fields_.list("catch", true))
                site.catch_m.push_back(fields_.length_of(pair, "catch").count / um_per_m);
        }
        if (whole_ || !fields_.left_out("head_below"))
            site.head_below_mm = fields_.length("head_below").count / 1000.0;
        if (whole_ || !fields_.left_out("hedge")) read_hedge(site);
        site.thinning = fields_.yes("thinning", unless(site.thinning));
        site.harvest = fields_.word<growth::Harvest>("harvest", unless(site.harvest));
        site.wires_in_winter = fields_.word<growth::WiresInWinter>("wires_in_winter", unless(site.wires_in_winter));
        site.drip = fields_.yes("drip", unless(site.drip));
        fields_.end();
        if (!refusal_.any()) check_ranges(site);
    }

private:
    template <class T>
    std::optional<T> unless(T value) const {
        return whole_ ? std::nullopt : std::optional<T>(value);
    }
    void metres(std::string_view key, double& into) {
        if (whole_ || !fields_.left_out(key)) into = fields_.length(key).count / um_per_m;
    }
    // null: not hedged.
    void read_hedge(Site& site) {
        site.hedge_m.reset();
        const Json& given = fields_.required("hedge");
        if (!given.is(Json::Kind::null) || refusal_.any()) site.hedge_m = fields_.length_of(given, "hedge").count / um_per_m;
    }
    // The ranges are growth's own; its refusal names an option and metres, ours the key, millimetres and the line.
    void check_ranges(const Site& site) {
        const auto fine = growth::check(site);
        if (fine) return;
        const Error& error = fine.error();
        std::string key = error.where.source.substr(std::min<std::size_t>(2, error.where.source.size()));
        std::replace(key.begin(), key.end(), '-', '_');
        const Json* place = object_.find(key);
        const Json& at = place ? *place : object_;
        if (error.key.name == "error.grow.catch-pairs") return refusal_.add(error.key.name, error.arguments, at);
        const double to_mm = key == "head_below" ? 1 : 1000;
        Arguments arguments{{"key", key}};
        for (const Named& argument : error.arguments) {
            double number = 0;
            if (const auto* ratio = std::get_if<Ratio>(&argument.value)) number = ratio->value;
            if (const auto* digits = std::get_if<std::string>(&argument.value))
                std::from_chars(digits->data(), digits->data() + digits->size(), number);
            arguments.push_back({argument.gap, Ratio{number * to_mm}});
        }
        refusal_.add("error.site.range", std::move(arguments), at);
    }

    Refusal& refusal_;
    const Json& object_;
    Fields fields_;
    bool whole_;
};

void read_climate(Fields& fields, const Json& object, weather::Climate& climate, bool whole) {
    Fields of(fields.refusal(), object);
    for (const weather::ClimateField& field : weather::climate_fields()) {
        const Json* given = whole ? &of.required(field.name) : of.optional(field.name);
        if (given && !fields.refusal().any())
            climate.*field.value =
                value_between(of, *given, field.name, field.low, field.high, climate.*field.value);
    }
    climate.status = of.word<growth::ValueStatus>("status", growth::ValueStatus::choice);
    of.end();
}

} // namespace

Result<SiteFile> read_site(std::string_view text, const std::string& source) {
    const auto root = read_json(text, source);
    if (!root) return failure(root.error());
    Refusal refusal(source);
    Fields fields(refusal, *root);
    const NamedFile file = read_named(fields, site_kind, site_version, shipped_climates());
    if (refusal.any()) return failure(refusal.take());
    const bool whole = file.base.empty();
    weather::Climate climate = whole ? weather::climates()[0] : *weather::find_climate(file.base);
    SiteFile site{file.name, file.shown, {}, {}};
    climate.name = site.shown;
    if (whole || !fields.left_out("climate")) read_climate(fields, fields.required("climate"), climate, whole);
    if (whole || !fields.left_out("vineyard"))
        VineyardReader(refusal, fields.required("vineyard"), whole).read(site.vineyard);
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    site.climate = weather::kept(climate);
    return site;
}

Result<SiteFile> load_site(const std::string& name_or_path, std::string_view option) {
    if (is_path(name_or_path)) {
        const auto text = read_file(name_or_path, largest_json);
        if (!text) return failure(text.error());
        return read_site(*text, name_or_path);
    }
    if (const weather::Climate* climate = weather::find_climate(name_or_path))
        return SiteFile{name_or_path, name_or_path, weather::kept(*climate), {}};
    std::string known;
    for (const std::string_view name : shipped_climates()) known += (known.empty() ? "" : ", ") + std::string(name);
    return failure({Fault::bad_text,
                    {"error.site.unknown"},
                    {{"text", name_or_path}, {"known", known}},
                    {std::string(option), 0, 0, 0}});
}

std::string print_site(const SiteFile& site) {
    const bool shipped = weather::find_climate(site.name) != nullptr;
    const Site& v = site.vineyard;
    Json o = Json::object(), climate = Json::object(), vineyard = Json::object(), pairs = Json::list();
    for (const weather::ClimateField& field : weather::climate_fields())
        climate.set(field.name, Json::number((*site.climate).*field.value, 4));
    climate.set("status", word_of(site.climate->status));
    for (const double pair : v.catch_m) pairs.push(in_file_mm(pair));
    vineyard.set("vigour", word_of(v.vigour));
    vineyard.set("frost", v.frost);
    vineyard.set("spacing", in_file_mm(v.spacing_m));
    vineyard.set("rows", in_file_mm(v.rows_m));
    vineyard.set("wire", in_file_mm(v.wire_m));
    vineyard.set("catch", std::move(pairs));
    vineyard.set("head_below", Json::number(v.head_below_mm, 3));
    vineyard.set("hedge", v.hedge_m ? in_file_mm(*v.hedge_m) : Json());
    vineyard.set("thinning", v.thinning);
    vineyard.set("harvest", word_of(v.harvest));
    vineyard.set("wires_in_winter", word_of(v.wires_in_winter));
    vineyard.set("drip", v.drip);
    o.set("kind", site_kind);
    o.set("version", site_version);
    o.set("name", (shipped ? "own-" : "") + site.name);
    o.set("shown", site.shown);
    o.set("climate", std::move(climate));
    o.set("vineyard", std::move(vineyard));
    return print_json(o);
}

} // namespace spurwright::io
