// crew view: the crew on one page, by the quizzes.
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

std::string cell_text(const records::CrewMember& member, rules::RuleName rule, const words::Words& words) {
    const auto found = member.rules.find(rule);
    if (found == member.rules.end()) return "-";
    return std::to_string(found->second.answers.right) + "/" + std::to_string(found->second.answers.of) + " " + words("drill.mastery." + std::string(word_of(found->second.word)));
}

io::Json share_of_view(const quiz::Share& share) {
    io::Json o = io::Json::object();
    o.set("right", share.right);
    o.set("of", share.of);
    return o;
}

Result<Answer> answer_crew_view(const Asked&, const Surroundings& around) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    records::CrewView view;
    if (*store) {
        auto read = records::crew_view(**store, records::today());
        if (!read) return failure(read.error());
        view = *std::move(read);
    }
    Answer answer;
    io::Json members = io::Json::list(), rules_list = io::Json::list();
    words::Table table;
    std::vector<std::string> heading{around.words("crew.number"), around.words("crew.name")};
    for (const rules::RuleName rule : view.rules) {
        heading.push_back(around.words("rule." + std::string(rules::key_of(rule)) + ".name"));
        io::Json o = share_of_view(view.crew[rule]);
        o.set("rule", rules::key_of(rule));
        rules_list.push(std::move(o));
    }
    table.right.assign(heading.size(), false);
    table.rows.push_back(std::move(heading));
    for (const records::CrewMember& member : view.members) {
        std::vector<std::string> row{std::to_string(member.person.number), member.person.name};
        io::Json o = share_of_view(member.all), cells = io::Json::list();
        for (const rules::RuleName rule : view.rules) row.push_back(cell_text(member, rule, around.words));
        for (const auto& [rule, cell] : member.rules) {
            io::Json c = share_of_view(cell.answers);
            c.set("rule", rules::key_of(rule));
            c.set("word", word_of(cell.word));
            cells.push(std::move(c));
        }
        o.set("number", member.person.number);
        o.set("name", member.person.name);
        o.set("language", member.person.language.empty() ? io::Json() : io::Json(member.person.language));
        o.set("quizzes", member.quizzes);
        o.set("signed", static_cast<std::int64_t>(member.signed_off.size()));
        o.set("rules", std::move(cells));
        members.push(std::move(o));
        table.rows.push_back(std::move(row));
    }
    answer.object.set("quizzes", view.quizzes);
    answer.object.set("most_wrong", view.most_wrong ? io::Json(rules::key_of(*view.most_wrong)) : io::Json());
    answer.object.set("rules", std::move(rules_list));
    answer.object.set("members", std::move(members));
    if (view.members.empty()) answer.text = words::wrapped(around.words("crew.nobody"));
    else answer.text = words::table_text(table);
    if (view.most_wrong) answer.text += words::wrapped(around.words("crew.most-wrong", {{"text", around.words("rule." + std::string(rules::key_of(*view.most_wrong)) + ".asks")}}));
    answer.text += words::wrapped(around.words("screen.wall.not-for-pay"));
    return answer;
}

} // namespace

Verb crew_view_verb() { return {"crew view", "", TextKey{"verb.crew-view"}, {}, answer_crew_view}; }

} // namespace spurwright::commands
