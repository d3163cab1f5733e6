#include "render/paper/school_verbs.h"

#include "render/paper/audit_sheet.h"
#include "render/paper/quiz_paper.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/quiz/item_maker.h"
#include "scenarios/words/load_words.h"
#include "sim/core/hash.h"

#include <charconv>

namespace spurwright::paper {
namespace {

using commands::Answer;
using commands::Asked;
using commands::refusal;
using commands::Surroundings;

constexpr std::int64_t fewest_items = 1, most_items = 20; // as many as fit a shed's half hour; our choice

// What a quiz on the wall begins with, where nothing is said.
const std::vector<quiz::Kind> usual_kinds{quiz::Kind::which_job, quiz::Kind::wood_age, quiz::Kind::pick_one, quiz::Kind::never,
                                          quiz::Kind::pick_two,  quiz::Kind::spur,     quiz::Kind::where_to_cut, quiz::Kind::count};

Result<std::vector<quiz::Kind>> kinds_asked(const Asked& asked) {
    const auto text = asked.value("--kinds");
    if (!text) return usual_kinds;
    std::vector<quiz::Kind> kinds;
    std::string_view rest = *text;
    while (true) {
        const std::string_view one = rest.substr(0, rest.find(','));
        const auto kind = commands::read_choice<quiz::Kind>(one, "--kinds");
        if (!kind) return failure(kind.error());
        if (std::find(kinds.begin(), kinds.end(), *kind) == kinds.end()) kinds.push_back(*kind);
        if (one.size() == rest.size()) return kinds;
        rest.remove_prefix(one.size() + 1);
    }
}

Result<std::uint64_t> seed_asked(const Asked& asked) {
    const std::string text = *asked.value("--seed");
    std::uint64_t seed = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), seed);
    if (text.empty() || read.ec != std::errc{} || read.ptr != text.data() + text.size()) return failure(refusal(Fault::bad_text, "error.quiz.seed", {{"text", text}}, "--seed"));
    return seed;
}

Result<words::Words> other_words(const Surroundings& around) { return words::load_words(around.assets, around.words.language() == "en" ? "es" : "en"); }

io::Json item_object(const quiz::Item& item, std::size_t number, const std::string& rules, bool with_key) {
    io::Json o = io::Json::object();
    o.set("item", static_cast<std::int64_t>(number));
    o.set("kind", word_of(item.kind));
    o.set("code", item.code.empty() ? io::Json() : io::Json(item.code));
    o.set("rule_set_hash", rules);
    if (!with_key) return o;
    io::Json accepted = io::Json::list();
    for (const quiz::Answer& answer : item.accepted) {
        io::Json digits = io::Json::list();
        for (const std::uint8_t digit : answer) digits.push(int{digit});
        accepted.push(std::move(digits));
    }
    o.set("accepted", std::move(accepted));
    o.set("scored", item.scored);
    return o;
}

} // namespace

Result<Answer> answer_quiz_make(const Asked& asked, const Surroundings& around) {
    const auto count = commands::read_whole(*asked.value("--items"), "--items", fewest_items, most_items);
    const auto seed = seed_asked(asked);
    const auto kinds = kinds_asked(asked);
    if (!count) return failure(count.error());
    if (!seed) return failure(seed.error());
    if (!kinds) return failure(kinds.error());
    const auto house = commands::house_rules_asked(asked, around);
    if (!house) return failure(house.error());
    const auto other = other_words(around);
    if (!other) return failure(other.error());
    const int steps = 2 * static_cast<int>(*count);
    const auto told = [&](std::size_t done) {
        if (around.progress) around.progress(static_cast<int>(done), steps);
    };
    quiz::Served served;
    const std::vector<quiz::Item> items = quiz::make_items(*kinds, static_cast<std::size_t>(*count), *seed, house->rules, served, told);
    if (static_cast<std::int64_t>(items.size()) < *count) return failure(refusal(Fault::not_allowed, "error.quiz.no-vines", {}, "quiz make"));
    std::vector<VinePicture> pictures;
    const PictureFolder folder;
    for (const quiz::Item& item : items) {
        auto picture = vine_picture(item, folder);
        if (!picture) return failure(picture.error());
        pictures.push_back(*std::move(picture));
        told(items.size() + pictures.size());
    }
    const QuizPaper paper = quiz_paper(items, pictures, house->name, std::to_string(*seed), around.words, *other);
    if (paper.bytes.empty()) return failure(refusal(Fault::missing, "error.book.cannot-draw", {}, "quiz make"));
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, paper.bytes); !written) return failure(written.error());
    const std::string rules = hash_text(rules::rule_set_hash(house->rules));
    Answer done;
    io::Json list = io::Json::list();
    for (std::size_t i = 0; i < items.size(); ++i) list.push(item_object(items[i], i + 1, rules, asked.has("--key")));
    done.object.set("file", path);
    done.object.set("pages", paper.pages);
    done.object.set("items", std::move(list));
    done.text = around.words("paper.quiz.done", {{"file", path}, {"n", Count{paper.pages}}}) + "\n";
    return done;
}

Result<Answer> answer_audit_sheet(const Asked& asked, const Surroundings& around) {
    if (asked.has("--second") && asked.has("--looking")) return failure(refusal(Fault::bad_text, "error.audit.one-kind", {}, "--second"));
    std::int64_t vines = usual_audited;
    if (const auto text = asked.value("--vines")) {
        const auto read = commands::read_whole(*text, "--vines", fewest_audited, most_audited);
        if (!read) return failure(read.error());
        vines = *read;
    }
    const auto sheet = sheet::load_block_sheet(asked.subject);
    if (!sheet) return failure(sheet.error());
    const auto other = other_words(around);
    if (!other) return failure(other.error());
    const AuditKind kind = asked.has("--second") ? AuditKind::second : asked.has("--looking") ? AuditKind::looking : AuditKind::first;
    const AuditSheet made = audit_sheet(*sheet, kind, static_cast<int>(vines), around.words, *other);
    if (made.bytes.empty()) return failure(refusal(Fault::missing, "error.book.cannot-draw", {}, "audit sheet"));
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, made.bytes); !written) return failure(written.error());
    Answer done;
    done.object.set("file", path);
    done.object.set("block", sheet->block);
    done.object.set("pages", made.pages);
    done.text = around.words("paper.done", {{"file", path}}) + "\n";
    return done;
}

} // namespace spurwright::paper
