// words: the wordings no native pruner has checked yet (--open), and whether the word files agree (--check).
#include <algorithm>

#include "scenarios/commands/verbs.h"
#include "scenarios/words/load_words.h"
#include "scenarios/words/word_check.h"

namespace spurwright::commands {
namespace {

Result<Answer> open_words(const Surroundings& around) {
    const std::string language = around.words.language();
    const auto file = words::load_word_file(around.assets, language);
    if (!file) return failure(file.error());
    Answer answer;
    io::Json open = io::Json::list();
    for (const std::string& key : file->open) {
        const auto text = file->texts.find(key);
        if (text == file->texts.end()) continue;
        io::Json o = io::Json::object();
        o.set("key", key);
        o.set("text", text->second);
        open.push(std::move(o));
        answer.text += key + ": " + text->second + "\n";
    }
    answer.text +=
        around.words("words.open-count", {{"n", Count{static_cast<std::int64_t>(open.items.size())}}}) + "\n";
    answer.object.set("language", language);
    answer.object.set("open", std::move(open));
    return answer;
}

io::Json fault_list(const std::vector<words::WordFault>& faults) {
    io::Json list = io::Json::list();
    for (const words::WordFault& fault : faults) {
        io::Json o = io::Json::object();
        o.set("language", fault.language);
        o.set("key", fault.key);
        o.set("what", fault.what);
        list.push(std::move(o));
    }
    return list;
}

Result<Answer> check_words(const Surroundings& around) {
    std::vector<words::WordFile> files;
    for (const std::string_view language : words::languages) {
        auto file = words::load_word_file(around.assets, language);
        if (!file) return failure(std::move(file.error()));
        files.push_back(*std::move(file));
    }
    const words::WordFaults faults = words::word_faults(files);
    Answer answer;
    answer.object.set("missing", fault_list(faults.missing));
    answer.object.set("extra", fault_list(faults.extra));
    answer.object.set("gaps", fault_list(faults.gaps));
    const auto say = [&](std::string_view key, const std::vector<words::WordFault>& list) {
        for (const words::WordFault& fault : list)
            answer.text +=
                around.words(key, {{"language", fault.language}, {"key", fault.key}, {"what", fault.what}}) + "\n";
    };
    say("words.missing", faults.missing);
    say("words.extra", faults.extra);
    say("words.gaps", faults.gaps);
    if (!faults.any()) answer.text = around.words("words.agree") + "\n";
    answer.status = faults.any() ? 1 : 0;
    return answer;
}

Result<Answer> answer_words(const Asked& asked, const Surroundings& around) {
    if (asked.has("--open") == asked.has("--check"))
        return failure(refusal(Fault::bad_text, "error.words.one-of", {}, "words"));
    return asked.has("--open") ? open_words(around) : check_words(around);
}

} // namespace

Verb words_verb() {
    return {"words",
            "",
            TextKey{"verb.words"},
            {{"--open", "", TextKey{"option.open"}}, {"--check", "", TextKey{"option.check"}}},
            answer_words};
}

} // namespace spurwright::commands
