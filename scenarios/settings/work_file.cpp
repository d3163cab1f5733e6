#include "scenarios/settings/work_file.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "scenarios/commands/formula_option.h"
#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/settings/folders.h"
#include "sim/pruning/plan_text.h"

namespace spurwright::settings {
namespace {

constexpr std::size_t largest_work = 1024 * 1024;
constexpr int most_set_aside = 1000;
constexpr int most_vines = 1000;  // of a scene
constexpr int highest_rung = 100;
constexpr std::size_t longest_told = 200;  // name, tag, formula

bool is_there(const std::string& path) {
    struct stat there{};
    return ::lstat(path.c_str(), &there) == 0;
}

// A scene's vine may have a code as well; any other has a code or a file.
bool names_one_vine(const Work& work) {
    if (work.number) return !work.scene.empty() && work.vine_file.empty();
    return work.code.empty() != work.vine_file.empty();
}

// A digit an act: 1 where it was done for the trainee.
std::string shown_digits(const std::vector<bool>& shown) {
    std::string text;
    for (const bool one : shown) text += one ? '1' : '0';
    return text;
}

void read_shown(io::Fields& fields, std::vector<bool>& shown) {
    const io::Json& value = fields.required("shown");
    const std::string text = fields.text_of(value, "shown", most_edits);
    if (text.find_first_not_of("01") != std::string::npos && !fields.refusal().any()) fields.refusal().add("error.work.shown", {{"text", text}}, value);
    for (const char one : text) shown.push_back(one == '1');
}

reference_vines::VineTarget read_from_book(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    reference_vines::VineTarget target;
    target.block = fields.text("block", longest_told);
    target.tag = fields.text("tag", longest_told);
    target.invented = fields.yes("invented");
    target.winter = static_cast<int>(fields.whole("winter", 1, 9'999));
    target.prunings = Mass{static_cast<std::int32_t>(fields.whole("prunings_mg", 1, 1'000'000'000))};
    target.spacing = Length{static_cast<std::int32_t>(fields.whole("spacing_um", 1, 100'000'000))};
    target.formula = fields.text("formula", longest_told);
    if (auto read = commands::read_formula(target.formula); !read && !refusal.any()) refusal.add(std::move(read.error()));
    fields.end();
    return target;
}

io::Json from_book_object(const reference_vines::VineTarget& target) {
    io::Json o = io::Json::object();
    o.set("block", target.block);
    o.set("tag", target.tag);
    o.set("invented", target.invented);
    o.set("winter", target.winter);
    o.set("prunings_mg", std::int64_t{target.prunings.count});
    o.set("spacing_um", std::int64_t{target.spacing.count});
    o.set("formula", target.formula);
    return o;
}

}  // namespace

Result<Work> read_work(std::string_view text, const std::string& source) {
    const auto json = io::read_json(text, source);
    if (!json) return failure(json.error());
    io::Refusal refusal(source);
    io::Fields fields(refusal, *json);
    const std::string kind = fields.text("kind", 100);
    const auto version = fields.whole("version", 1, 1'000'000);
    if (!refusal.any() && kind != work_kind) refusal.add("error.work.kind", {{"text", kind}}, *json);
    if (!refusal.any() && version > work_version) refusal.add("error.work.newer", {{"version", Count{version}}}, *json, Fault::newer);
    Work work;
    work.code = fields.text("code", 40, std::string());
    work.vine_file = fields.text("vine_file", 100, std::string());
    work.scene = fields.text("scene", 100, std::string());
    if (version > 1 && !fields.left_out("number")) work.number = static_cast<std::size_t>(fields.whole("number", 0, most_vines));
    work.house = fields.text("house", 4096);
    if (version > 2)
        if (const io::Json* object = fields.optional("from_book")) work.from_book = read_from_book(refusal, *object);
    const std::string plan = fields.text("plan", longest_plan_text);
    const auto done = fields.whole("done", 0, static_cast<std::int64_t>(most_edits));
    if (version > 3 && !fields.left_out("rung")) {
        work.rung = static_cast<int>(fields.whole("rung", 0, highest_rung));
        read_shown(fields, work.shown);
    }
    fields.end();
    if (!refusal.any() && work.vine_file.find('/') != std::string::npos) refusal.add("error.work.beside", {{"text", work.vine_file}}, *json);
    if (!refusal.any() && !names_one_vine(work)) refusal.add("error.work.one-vine", {}, *json);
    if (refusal.any()) return failure(refusal.take());
    auto parsed = parse_plan(plan);
    if (!parsed) return failure(std::move(parsed.error()));
    work.plan = *std::move(parsed);
    work.done = std::min<std::size_t>(static_cast<std::size_t>(done), work.plan.edits.size());
    return work;
}

std::string print_work(const Work& work) {
    io::Json o = io::Json::object();
    o.set("kind", work_kind);
    o.set("version", work_version);
    if (!work.code.empty()) o.set("code", work.code);
    if (!work.vine_file.empty()) o.set("vine_file", work.vine_file);
    if (!work.scene.empty()) o.set("scene", work.scene);
    if (work.number) o.set("number", static_cast<std::int64_t>(*work.number));
    o.set("house", work.house);
    if (work.from_book) o.set("from_book", from_book_object(*work.from_book));
    o.set("plan", print_plan(work.plan));
    o.set("done", static_cast<std::int64_t>(work.done));
    if (work.rung) o.set("rung", *work.rung);
    if (work.rung) o.set("shown", shown_digits(work.shown));
    return io::print_json(o);
}

Result<std::optional<Work>> WorkFolder::load() const {
    if (!keeps() || !is_there(present())) return std::optional<Work>();
    auto text = io::read_file(present(), largest_work);
    if (!text) return failure(std::move(text.error()));
    auto work = read_work(*text, present());
    if (work) return std::optional<Work>(*std::move(work));
    if (work.error().fault != Fault::newer) set_aside();
    return failure(std::move(work.error()));
}

Result<void> WorkFolder::save(const Work& work) const {
    if (!keeps()) return {};
    if (auto made = make_folder(folder_); !made) return made;
    return io::write_file(present(), print_work(work));
}

void WorkFolder::set_aside() const {
    if (!keeps()) return;
    for (int n = 1; n <= most_set_aside; ++n) {
        const std::string to = path("left-" + std::to_string(n) + ".json");
        if (is_there(to)) continue;
        (void)std::rename(present().c_str(), to.c_str());
        return;
    }
}

void WorkFolder::clear() const {
    if (keeps()) ::unlink(present().c_str());
}

}  // namespace spurwright::settings
