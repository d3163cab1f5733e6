// The page of the first job, for people, 100 columns wide.
#include <algorithm>

#include "scenarios/commands/job.h"
#include "scenarios/words/layout.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/rule_list.h"
#include "sim/vine/vine_query.h"

namespace spurwright::commands {
namespace {

using rules::Finding;
using words::Words;

std::string line(const Words& words, std::string_view key, const Arguments& arguments = {}) {
    return words::wrapped(words(key, arguments));
}

std::string heading(const std::string& text) { return text + "\n" + std::string(words::width_of(text), '-') + "\n"; }

// "a118, 12 buds" for the piece of one side; "-" where there is none.
template <class Piece>
std::string piece_text(const std::optional<Piece>& piece, const Words& words) {
    if (!piece) return "-";
    return words("job.piece", {{"part", piece->axis}, {"n", Count{piece->count_buds}}});
}

struct Column {
    const Judged& judged;
    rules::PlanFacts facts;
};

Column column_of(const Job& job, const Judged& judged) {
    const Vine& before = job.found.vine;
    const auto after = prune(before, judged.plan);
    return {judged, rules::measure_plan(before, after ? *after : before, job.rules, rules::offers(before, job.rules))};
}

// What each plan keeps, piece by piece, and how both stand.
std::string plans_table(const Column& beginner, const Column& best, const Words& words) {
    words::Table table;
    table.right = {false, false, false};
    table.rows.push_back({"", words("job.beginner"), words("job.best")});
    const auto row = [&](const std::string& name, auto cell) {
        table.rows.push_back({name, cell(beginner), cell(best)});
    };
    for (const Side side : both_sides) {
        const std::size_t at = rules::index_of(side);
        const std::string post = words("side." + std::string(word_of(side)));
        row(words("job.cane-to", {{"side", post}}),
            [&](const Column& c) { return piece_text(c.facts.sides[at].cane, words); });
        row(words("job.spur-to", {{"side", post}}),
            [&](const Column& c) { return piece_text(c.facts.sides[at].spur, words); });
    }
    row(words("job.buds-left"), [&](const Column& c) { return std::to_string(c.facts.load.all); });
    row(words("job.points"),
        [&](const Column& c) { return words::points_text(c.judged.judgement.points, words.numbers()); });
    row(words("job.better"),
        [&](const Column& c) { return words.measure(Count{static_cast<std::int64_t>(c.judged.tally.better)}); });
    return words::table_text(table);
}

struct Sum {
    Tenths points, out_of;
};
Sum sum_of(const rules::Judgement& judgement, const rules::Rule& rule) {
    Sum sum;
    for (const Finding& f : judgement.findings)
        if (f.rule == &rule) {
            sum.points += f.points;
            sum.out_of += f.out_of;
        }
    return sum;
}

// Both judgements side by side, one line a rule, in the order of the rule list.
std::string marks_table(const Job& job, const Words& words) {
    words::Table table;
    table.right = {false, true, true, true};
    table.rows.push_back({words("job.rule"), words("job.beginner"), words("job.best"), words("job.out-of")});
    for (const rules::Rule* rule : rules::all_rules) {
        const Sum mine = sum_of(job.beginner.judgement, *rule), best = sum_of(job.best.judgement, *rule);
        if (best.out_of.count == 0) continue;
        table.rows.push_back(
            {words("rule." + std::string(rule->key()) + ".name"), words::points_text(mine.points, words.numbers()),
             words::points_text(best.points, words.numbers()), words::points_text(best.out_of, words.numbers())});
    }
    table.rows.push_back({words("job.sum"),
                          words::points_text(job.beginner.judgement.points_before_caps, words.numbers()),
                          words::points_text(job.best.judgement.points_before_caps, words.numbers()),
                          words::points_text({1000}, words.numbers())});
    for (const rules::Cap& cap : job.beginner.judgement.caps)
        table.rows.push_back({words("job.cap-row", {{"limit", cap.limit}}),
                              words::points_text(job.beginner.judgement.points, words.numbers()), "", ""});
    return words::table_text(table);
}

// The beginner's losses in the order of work, each with what can be done about it.
std::string losses(const rules::Judgement& judgement, const Words& words) {
    std::string out;
    for (const rules::Cap& cap : judgement.caps) out += words::hanging("  ", words.sentence(cap.key, cap.arguments), 4);
    for (const auto step : rules::words_of(rules::Step{})) {
        std::string of_step;
        for (const Finding& f : judgement.findings) {
            if (word_of(f.step) != step || f.lost().count <= 0) continue;
            const std::string head = words::padded_left(words::points_text(-f.lost(), words.numbers()), 7) + "  ";
            std::string text = words.sentence(f.said.key, f.said.arguments);
            if (f.mend != rules::Mend::nothing) text += " (" + words("mend." + std::string(word_of(f.mend))) + ")";
            of_step += words::hanging(head, text, 9);
        }
        if (!of_step.empty()) out += "  " + words("step." + std::string(step)) + "\n" + of_step;
    }
    return out.empty() ? "  " + words("judge.nothing-lost") + "\n" : out;
}

// A plan as a shell takes it over several lines: a backslash ends each but the last.
std::string plan_lines(const std::string& command, const Plan& plan) {
    std::string out, line = "  ./scenarios/start " + command + " --plan \"";
    for (std::size_t i = 0; i < plan.edits.size(); ++i) {
        const std::string edit = print_edit(plan.edits[i]) + (i + 1 < plan.edits.size() ? "; " : "");
        if (line.size() + edit.size() + 2 > words::console_width) {
            out += line + "\\\n";
            line = "    ";
        }
        line += edit;
    }
    return out + line + "\"\n";
}

std::string try_text(const Job& job, const Words& words) {
    std::string out = line(words, "job.try-best");
    out += plan_lines("judge " + job.found.code, job.best.plan) + "\n";
    out += line(words, "job.try-beginner");
    out += plan_lines("judge " + job.found.code, job.beginner.plan) + "\n";
    return out;
}

} // namespace

std::string job_text(const Job& job, const Words& words) {
    const Vine& v = job.found.vine;
    const Column beginner = column_of(job, job.beginner), best = column_of(job, job.best);
    std::string out = heading(words("job.title", {{"code", job.found.code}}));
    out += line(words, "job.vine",
                {{"n", Count{v.winter}},
                 {"candidates", Count{static_cast<std::int64_t>(cane_candidates(v).size())}},
                 {"spacing", v.spacing}});
    out += line(words, "job.asked", {{"target", Count{rules::target_buds(job.rules, v.spacing)}}});
    out += line(words, "job.counted", {{"counted", Count{static_cast<std::int64_t>(job.best.tally.counted)}}});
    out += "\n" + plans_table(beginner, best, words);
    out += "\n" + marks_table(job, words);
    out += "\n" + heading(words("job.beginner-lost")) + losses(job.beginner.judgement, words);
    out += "\n" + heading(words("job.best-lost")) + losses(job.best.judgement, words);
    out += "\n" + heading(words("job.learn"));
    for (const std::string& key : job.learn_keys) out += words::hanging("  - ", words(key), 4);
    out += "\n" + heading(words("job.try")) + try_text(job, words);
    return out + line(words, "safety.line");
}

} // namespace spurwright::commands
