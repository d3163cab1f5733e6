#include "scenarios/review/page.h"

#include "scenarios/review/drawing.h"
#include "sim/core/check.h"

namespace spurwright::review {
namespace {

constexpr std::string_view style = R"(
body { font: 17px/1.45 sans-serif; color: #222; background: #fbfaf7; max-width: 60em; margin: 1.5em auto; padding: 0 1em; }
h1 { font-size: 1.5em; } h2 { font-size: 1.15em; margin-top: 1.6em; }
svg { width: 100%; height: auto; background: #fff; border: 1px solid #ccc; }
table { border-collapse: collapse; } td, th { text-align: left; vertical-align: top; padding: .25em .8em .25em 0; border-bottom: 1px solid #ddd; }
td.n { text-align: right; white-space: nowrap; }
.from { color: #555; font-size: .88em; } .mend { font-weight: bold; white-space: nowrap; }
.cap { border-left: 6px solid #a33; padding-left: .8em; }
)";

std::string section_head(std::string_view key, const words::Words& words) { return "<h2>" + escaped(words(key)) + "</h2>\n"; }

std::string paragraph(const std::string& text, std::string_view attribute = {}) {
    return "<p" + std::string(attribute) + ">" + escaped(text) + "</p>\n";
}

std::string bullets(const std::vector<std::string>& lines) {
    std::string out = "<ul>\n";
    for (const std::string& line : lines) out += "<li>" + escaped(line) + "</li>\n";
    return out + "</ul>\n";
}

std::string act_bullets(const Told& told) {
    std::string out = "<ul>\n";
    for (const Told::Act& act : told.acts) {
        out += "<li>" + escaped(act.text);
        for (const std::string& line : act.season) out += "<br><span class=\"from\">" + escaped(line) + "</span>";
        out += "</li>\n";
    }
    out += "</ul>\n";
    return told.season_how.empty() ? out : out + paragraph(told.season_how, " class=\"from\"");
}

std::string losses_table(const Told& told) {
    std::string out = "<table>\n";
    for (const Told::Loss& loss : told.losses)
        out += "<tr><td class=\"n\">" + escaped(loss.lost) + "</td><td>" + escaped(loss.sentence) + "<br><span class=\"from\">" +
               escaped(loss.source) + "</span></td><td class=\"mend\">" + escaped(loss.mend) + "</td></tr>\n";
    return out + "</table>\n";
}

std::string twins_table(const Told& told, const words::Words& words) {
    std::string out = "<table>\n<tr><th></th><th>" + escaped(words("review.page.mine")) + "</th><th>" +
                      escaped(words("review.page.best")) + "</th></tr>\n";
    for (const Told::TwinLine& twin : told.twins)
        out += "<tr><td>" + escaped(twin.where) + "</td><td>" + escaped(twin.mine) + "</td><td>" +
               escaped(twin.same ? words("review.twin.same") : twin.best) + "</td></tr>\n";
    return out + "</table>\n";
}

std::string steps_table(const Told& told) {
    std::string out = "<table>\n";
    for (const Told::StepLost& step : told.steps)
        out += "<tr><td>" + escaped(step.step) + "</td><td class=\"n\">" + escaped(step.lost) + "</td></tr>\n";
    return out + "</table>\n";
}

} // namespace

std::string page(const Review& review, const Vine& before, const std::string& title, const std::string& house_name,
                 const words::Words& words) {
    const Told told = review::told(review, words);
    const auto best = prune(before, review.best_plan.plan);
    SPURWRIGHT_CHECK(best.has_value(), ==, true);
    const std::string head = words("review.page.title", {{"vine", title}});
    std::string out = "<!DOCTYPE html>\n<html lang=\"" + escaped(words.language()) +
                      "\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
                      escaped(head) + "</title>\n<style>" + std::string(style) + "</style>\n</head>\n<body>\n<h1>" + escaped(head) +
                      "</h1>\n";
    for (const std::string& line : told.head) out += paragraph(line);
    for (const std::string& cap : told.caps) out += paragraph(cap, " class=\"cap\"");
    out += drawing({before, review.after, *best}, words);
    out += paragraph(words("review.page.drawing-tells"), " class=\"from\"");
    out += section_head("review.twin.head", words) + twins_table(told, words);
    if (!told.steps.empty()) out += section_head("review.steps", words) + steps_table(told) + act_bullets(told);
    out += section_head(told.losses.empty() ? "judge.nothing-lost" : "judge.lost", words);
    if (!told.losses.empty()) out += losses_table(told);
    if (!told.folded.empty()) out += paragraph(told.folded);
    if (!told.mistakes.empty()) out += section_head("review.mistakes", words) + bullets(told.mistakes);
    if (!told.ends.empty()) out += section_head("review.ends", words) + bullets(told.ends);
    if (!told.remarks.empty()) out += section_head("judge.remarks", words) + bullets(told.remarks);
    out += paragraph(words("review.page.set", {{"name", house_name}}), " class=\"from\"");
    out += paragraph(words("safety.line"));
    if (words.unchecked()) out += paragraph(words("words.unchecked"), " class=\"from\"");
    return out + "</body>\n</html>\n";
}

} // namespace spurwright::review
