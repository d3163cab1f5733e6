#include "scenarios/commands/grow_row.h"

#include <cstdio>
#include <filesystem>
#include <system_error>

#include "scenarios/io/make_folder.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/growth/row.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

std::string file_of_place(int number) {
    char name[32];
    std::snprintf(name, sizeof name, "place-%04d.json", number);
    return name;
}

Mass one_year_wood(const Vine& vine) { return from_g(prunings(vine, vine).before.one_year_mg / 1000.0); }

class RowList {
public:
    explicit RowList(const words::Words& words) : words_(words) {
        table_.right = {true, false, true, true, true, true, false, false};
        std::vector<std::string> head;
        for (const std::string_view key : {"place", "state", "age", "patch", "capacity", "one-year-kg", "near", "far"})
            head.push_back(words("table." + std::string(key)));
        table_.rows.push_back(std::move(head));
    }

    void add(const growth::RowPlace& place, const Vine* vine, const std::string& path) {
        io::Json o = io::Json::object();
        o.set("place", place.number);
        o.set("state", word_of(place.state));
        o.set("age_years", vine ? io::Json(vine->winter) : io::Json());
        o.set("patch_share", PerMille{rounded(1000 * place.patch)});
        o.set("capacity_shoots", vine ? io::Json(PerMille{vine->capacity}) : io::Json());
        o.set("one_year_kg", vine ? io::Json(PerMille{rounded(in_g(one_year_wood(*vine)))}) : io::Json());
        for (const Side side : both_sides) o.set(word_of(side), word_of(place.beside[side == Side::right ? 1 : 0]));
        o.set("seed", vine ? io::Json(place.site.seed) : io::Json());
        o.set("hash", vine ? io::Json(hash_text(vine_hash(*vine))) : io::Json());
        o.set("file", path.empty() ? io::Json() : io::Json(path));
        list.push(std::move(o));
        const auto& style = words_.numbers();
        const auto beside = [&](std::size_t i) { return words_("beside." + std::string(word_of(place.beside[i]))); };
        table_.rows.push_back(
            {std::to_string(place.number), words_("place." + std::string(word_of(place.state))),
             vine ? std::to_string(vine->winter) : "-", words::number_text(rounded(1000 * place.patch), 3, 2, style),
             vine ? words::number_text(vine->capacity, 3, 1, style) : "-",
             vine ? words::number_text(one_year_wood(*vine).count, 6, 2, style) : "-", beside(0), beside(1)});
    }
    std::string text() const { return words::table_text(table_); }

    io::Json list = io::Json::list();

private:
    const words::Words& words_;
    words::Table table_;
};

} // namespace

Result<Answer> row_answer(const growth::Site& site, int places, const std::optional<std::string>& folder,
                          const Surroundings& around) {
    if (folder)
        if (auto made = io::make_folder(*folder); !made) return failure(std::move(made.error()));
    RowList list(around.words);
    std::array<int, 4> counts{};
    for (const growth::RowPlace& place : growth::row_places(site, site.seed, places)) {
        auto grown = growth::grow_place(place);
        if (!grown) return failure(std::move(grown.error()));
        const std::optional<Vine>& vine = *grown;
        std::string path;
        if (vine && folder) {
            path = (std::filesystem::path(*folder) / file_of_place(place.number)).string();
            io::VineFile file;
            file.vine = *vine;
            if (auto written = io::save_vine_file(path, file); !written) return failure(std::move(written.error()));
        }
        list.add(place, vine ? &*vine : nullptr, path);
        ++counts[static_cast<std::size_t>(place.state)];
        if (around.progress) around.progress(place.number, places);
    }
    Answer answer;
    answer.object.set("seed", site.seed);
    answer.object.set("system", word_of(site.system));
    answer.object.set("folder", folder ? io::Json(*folder) : io::Json());
    answer.object.set("places", std::move(list.list));
    answer.text = words::wrapped(around.words("grow.row", {{"n", Count{places}},
                                                           {"seed", Count{static_cast<std::int64_t>(site.seed)}},
                                                           {"growing", Count{counts[0]}},
                                                           {"replanted", Count{counts[1]}},
                                                           {"dead", Count{counts[2]}},
                                                           {"missing", Count{counts[3]}}})) +
                  "\n" + list.text() + "\n" +
                  words::wrapped(around.words(folder ? "grow.row-written" : "grow.row-not-written"));
    return answer;
}

} // namespace spurwright::commands
