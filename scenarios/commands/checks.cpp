// checks: the published checks of the model, run here and now, with what a pass of each group means.
#include <atomic>
#include <cmath>
#include <mutex>
#include <thread>

#include "scenarios/commands/cite.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/checks/check.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {
namespace {

using checks::Check;
using checks::Compared;

struct RunCheck {
    const Check* check = nullptr;
    std::vector<Compared> numbers;
    bool passes() const { return checks::passes(numbers); }
};

// On as many threads as there are: the checks know nothing of each other.
std::vector<RunCheck> run_checks(std::vector<const Check*> asked, void (*progress)(int, int)) {
    std::vector<RunCheck> runs(asked.size());
    std::atomic<std::size_t> next{asked.size()};
    std::mutex telling;
    int done = 0;
    const auto work = [&] {
        // From the last on: the long ones stand there.
        for (std::size_t left = next.fetch_sub(1); left > 0 && left <= asked.size(); left = next.fetch_sub(1)) {
            runs[left - 1] = {asked[left - 1], asked[left - 1]->compare()};
            const std::lock_guard<std::mutex> one(telling);
            ++done;
            if (progress) progress(done, static_cast<int>(asked.size()));
        }
    };
    std::vector<std::thread> others;
    for (unsigned i = 1; i < std::min<unsigned>(std::thread::hardware_concurrency(), 16); ++i)
        others.emplace_back(work);
    work();
    for (std::thread& other : others) other.join();
    return runs;
}

std::string short_number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.5g", value);
    return text;
}

std::string asked_text(const Compared& n, const words::Words& words) {
    if (!std::isnan(n.expected)) return short_number(n.expected);
    if (std::isinf(n.high)) return words("checks.at-least", {{"low", short_number(n.low)}});
    return words("checks.between", {{"low", short_number(n.low)}, {"high", short_number(n.high)}});
}

template <class Text>
std::string joined(const std::vector<Compared>& numbers, const Text& text) {
    std::string all;
    for (const Compared& n : numbers) all += (all.empty() ? "" : "; ") + text(n);
    return all;
}

// The number that is worst off: how much of its tolerance it uses.
const Compared& tightest(const std::vector<Compared>& numbers) {
    const auto used = [](const Compared& n) {
        if (std::isinf(n.high)) return n.passes() ? 0.0 : 1e9;
        const double half = (n.high - n.low) / 2;
        return half > 0 ? std::fabs(n.got - (n.low + half)) / half : n.got == n.low ? 0.0 : 1e9;
    };
    const Compared* worst = &numbers.front();
    for (const Compared& n : numbers)
        if (used(n) > used(*worst)) worst = &n;
    return *worst;
}

std::string what_key(const Check& check) {
    return "check." + std::string(check.id < 10 ? "0" : "") + std::to_string(check.id);
}

// The figures that miss: with their names for whoever mends them, without in the record, whose sentence says what they
// are.
std::string misses(const RunCheck& run, bool named, const words::Words& words) {
    std::vector<Compared> missed;
    for (const Compared& n : run.numbers)
        if (!n.passes()) missed.push_back(n);
    return joined(missed, [&](const Compared& n) {
        return (!named || n.name.empty() ? "" : n.name + ": ") +
               words("checks.got-asked", {{"got", short_number(n.got)}, {"asked", asked_text(n, words)}});
    });
}

std::string known_text(const RunCheck& run, const words::Words& words) {
    return words(what_key(*run.check) + ".known", {{"figures", misses(run, false, words)}});
}

io::Json finite(double value) { return std::isfinite(value) ? io::Json::number(value, 9) : io::Json(); }

io::Json check_object(const RunCheck& run, const words::Words& words) {
    const Check& check = *run.check;
    io::Json values = io::Json::list();
    for (const Compared& n : run.numbers) {
        io::Json v = io::Json::object();
        v.set("name", n.name);
        v.set("expected", finite(n.expected));
        v.set("low", finite(n.low));
        v.set("high", finite(n.high));
        v.set("got", finite(n.got));
        v.set("passes", n.passes());
        values.push(std::move(v));
    }
    io::Json o = io::Json::object();
    o.set("id", check.id);
    o.set("what", words(what_key(check)));
    o.set("source", check.source);
    o.set("cite", cite_json(check.source));
    o.set("status", word_of(check.status));
    o.set("group", word_of(check.group));
    o.set("expected", joined(run.numbers, [&](const Compared& n) { return asked_text(n, words); }));
    o.set("got", joined(run.numbers, [](const Compared& n) { return short_number(n.got); }));
    o.set("tolerance", check.tolerance);
    o.set("passes", run.passes());
    o.set("known", check.known && !run.passes() ? io::Json(known_text(run, words)) : io::Json());
    o.set("values", std::move(values));
    return o;
}

std::string group_text(checks::Group group, const std::vector<RunCheck>& runs, const words::Words& words) {
    words::Table table;
    table.rows.push_back({words("checks.number"), words("checks.result"), words("checks.asked"), words("checks.got"),
                          words("checks.source"), words("checks.what")});
    table.right = {true, false, true, true, false, false};
    for (const RunCheck& run : runs) {
        if (run.check->group != group) continue;
        const Compared& n = tightest(run.numbers);
        const std::string_view result = run.passes()       ? "checks.passes"
                                        : run.check->known ? "checks.recorded"
                                                           : "checks.fails";
        const std::string source = run.check->source == "-" ? words("status." + std::string(word_of(run.check->status)))
                                                            : std::string(run.check->source);
        table.rows.push_back({std::to_string(run.check->id), words(result), asked_text(n, words), short_number(n.got),
                              source, words(what_key(*run.check))});
    }
    if (table.rows.size() == 1) return {};
    return words::wrapped(words("checks.group." + std::string(word_of(group)))) + words::table_text(table) + "\n";
}

Result<Answer> answer_checks(const Asked& asked, const Surroundings& around) {
    const words::Words& words = around.words;
    std::vector<const Check*> wanted;
    for (const Check& check : checks::all_checks()) wanted.push_back(&check);
    if (const auto only = asked.value("--only")) {
        const auto id = read_whole(*only, "--only", wanted.front()->id, wanted.back()->id);
        if (!id) return failure(id.error());
        std::erase_if(wanted, [&](const Check* check) { return check->id != *id; });
        if (wanted.empty())
            return failure(refusal(Fault::out_of_range, "error.checks.none", {{"text", *only}}, "--only"));
    }
    const std::vector<RunCheck> runs = run_checks(wanted, around.progress);
    Answer answer;
    io::Json list = io::Json::list();
    std::int64_t passed = 0, recorded = 0;
    for (const RunCheck& run : runs) {
        list.push(check_object(run, words));
        passed += run.passes();
        recorded += !run.passes() && run.check->known;
    }
    const auto all = static_cast<std::int64_t>(runs.size());
    answer.object.set("checks", std::move(list));
    answer.status = passed + recorded < all ? 1 : 0;
    for (std::size_t group = 0; group < words_of(checks::Group{}).size(); ++group)
        answer.text += group_text(static_cast<checks::Group>(group), runs, words);
    for (const RunCheck& run : runs)
        if (!run.passes())
            answer.text += words::hanging(std::to_string(run.check->id) + "  ",
                                          run.check->known ? known_text(run, words) : misses(run, true, words), 4);
    answer.text += words::wrapped(words("checks.count", {{"n", Count{all}},
                                                         {"passed", std::to_string(passed)},
                                                         {"failed", std::to_string(all - passed)},
                                                         {"recorded", std::to_string(recorded)}}));
    return answer;
}

} // namespace

Verb checks_verb() {
    return {"checks", "", TextKey{"verb.checks"}, {{"--only", "N", TextKey{"option.only"}}}, answer_checks};
}

} // namespace spurwright::commands
