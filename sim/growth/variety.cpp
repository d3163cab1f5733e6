#include "sim/growth/variety.h"

#include <string>

namespace spurwright::growth {
namespace {

constexpr auto told_read = ValueStatus::read, told_choice = ValueStatus::choice, told_memory = ValueStatus::memory;

constexpr Told base_fruit_vinifera{0.15, told_choice}, base_fruit_hybrid{0.5, told_choice};
constexpr Told reserve_plain{0.36, told_choice, "epee-2024"}, reserve_none{0, told_read, "antcliff-1965"};
constexpr Told ri_vinifera{7, told_choice, "trought-2017"}, ri_labruscana{17.5, told_read, "bates-2021"};

constexpr Told bunch(double grams) { return {grams, told_memory}; }

constexpr Variety wine(std::string_view name, std::string_view shown, Burst burst, Told bunch_mass,
                       std::string_view hardiness, bool own = true) {
    return {name, shown,      Species::vinifera,   burst,         hardiness,
            own,  bunch_mass, base_fruit_vinifera, reserve_plain, ri_vinifera,
            false};
}

constexpr auto variety_rows = std::to_array<Variety>({
    wine("plain", "plain", Burst::late, {142, told_read, "ajev-6021"}, "cabernet-sauvignon", false),
    wine("cabernet-sauvignon", "Cabernet Sauvignon", Burst::late, {142, told_read, "ajev-6021"}, "cabernet-sauvignon"),
    wine("sauvignon-blanc", "Sauvignon blanc", Burst::late, {82, told_read, "epee-2024"}, "sauvignon-blanc"),
    wine("chardonnay", "Chardonnay", Burst::early, bunch(120), "chardonnay"),
    wine("riesling", "Riesling", Burst::late, bunch(110), "riesling"),
    wine("merlot", "Merlot", Burst::late, bunch(140), "merlot"),
    wine("pinot-noir", "Pinot noir", Burst::early, bunch(100), "pinot-gris", false),
    wine("syrah", "Syrah", Burst::late, bunch(150), "syrah"),
    wine("sangiovese", "Sangiovese", Burst::late, bunch(200), "sangiovese"),
    wine("sunmuscat", "Sunmuscat", Burst::late, bunch(250), "grenache", false),
    {"sultana", "Sultana", Species::vinifera, Burst::early, "grenache", false, bunch(250), base_fruit_hybrid,
     reserve_none, ri_vinifera, false},
    {"concord", "Concord", Species::labruscana, Burst::early, "concord", true, bunch(100), base_fruit_hybrid,
     reserve_plain, ri_labruscana, true},
    {"chambourcin", "Chambourcin", Species::hybrid, Burst::late, "lemberger", false, bunch(200), base_fruit_hybrid,
     reserve_plain, ri_vinifera, false},
});

constexpr auto field_rows = std::to_array<VarietyField>({
    {"bunch_mass_g", "bunch_mass_ref", &Variety::bunch_mass_g},
    {"noncount_f", "noncount_f", &Variety::noncount_f},
    {"reserve_a", "reserve_a", &Variety::reserve_a},
    {"ri_star", "ri_star", &Variety::ri_star},
});

// A variety beside the texts that it points to.
struct KeptVariety {
    std::string name, shown, hardiness;
    std::array<std::string, field_rows.size()> sources;
    Variety variety;
};

} // namespace

std::span<const Variety> varieties() { return variety_rows; }

const Variety* find_variety(std::string_view name) {
    for (const Variety& variety : variety_rows)
        if (variety.name == name) return &variety;
    return nullptr;
}

std::span<const VarietyField> variety_fields() { return field_rows; }

std::shared_ptr<const Variety> kept(const Variety& variety) {
    const auto whole = std::make_shared<KeptVariety>();
    whole->variety = variety;
    whole->variety.name = whole->name = variety.name;
    whole->variety.shown = whole->shown = variety.shown;
    whole->variety.hardiness = whole->hardiness = variety.hardiness;
    for (std::size_t i = 0; i < field_rows.size(); ++i) {
        Told& told = whole->variety.*field_rows[i].value;
        told.source = whole->sources[i] = told.source;
    }
    return {whole, &whole->variety};
}

bool usually_grafted(const Variety& variety) { return variety.species == Species::vinifera; }

bool usually_grafted(std::string_view name) {
    const Variety* variety = find_variety(name);
    return !variety || usually_grafted(*variety);
}

Constants with_variety(const Constants& base, const Variety& variety) {
    Constants c = base;
    c.bunch_mass_ref = variety.bunch_mass_g.value;
    c.noncount_f = variety.noncount_f.value;
    c.reserve_a = variety.reserve_a.value;
    c.ri_star = variety.ri_star.value;
    return c;
}

} // namespace spurwright::growth
