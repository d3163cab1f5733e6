#include "scenarios/sheet/sheet_page.h"

#include "scenarios/review/drawing.h"
#include "sim/vine/words_of.h"

namespace spurwright::sheet {
namespace {

using review::escaped;

constexpr std::string_view sheet_style = R"(
@page { size: A4; margin: 14mm; }
body { font: 12pt/1.35 sans-serif; color: #111; background: #fff; }
h1 { font-size: 20pt; margin: 0 0 .3em; } .other { color: #444; font-size: .85em; }
table { border-collapse: collapse; width: 100%; } td { border-bottom: 1px solid #999; padding: .3em .5em .3em 0; vertical-align: top; }
td.what { width: 45%; } td.value { font-weight: bold; } p { margin: .6em 0; }
)";

std::string range_words(const rules::Range<Length>& range, const words::Words& words) {
    return words("sheet.from-to", {{"low", range.low}, {"high", range.high}});
}

// Lines in the order of the work.
class Lines {
public:
    Lines(const BlockSheet& sheet, const words::Words& words) : sheet_(sheet), words_(words) {}

    std::vector<SheetLine> all() {
        text("sheet.date", sheet_.date);
        text("sheet.by", sheet_.by);
        add("sheet.system", words_("sheet.system-is." + std::string(word_of(sheet_.system))));
        add("sheet.space", words_("sheet.space-is", {{"spacing", sheet_.spacing}, {"rows", sheet_.rows}, {"wire", sheet_.wire}}));
        const bool cordon = sheet_.system == System::cordon;
        if (!cordon)
            add("sheet.canes", words_(sheet_.system == System::one_cane ? "sheet.cane-is" : "sheet.canes-are", {{"n", Count{sheet_.canes}}}));
        add("sheet.buds", words_("sheet.buds-are", {{"weak", Count{sheet_.buds[0]}}, {"middle", Count{sheet_.buds[1]}}, {"strong", Count{sheet_.buds[2]}}}));
        text("sheet.told-by", sheet_.told_by);
        if (cordon) {
            add("sheet.spurs", words_("sheet.spurs-along", {{"n", Count{sheet_.spur_buds}}}));
            add("sheet.apart", range_words(sheet_.apart, words_));
        } else {
            add("sheet.spurs", words_("sheet.spurs-are", {{"n", Count{sheet_.spurs}}, {"buds", Count{sheet_.spur_buds}}}));
            of_canes();
        }
        text("sheet.brush", sheet_.brush);
        text("sheet.tools", sheet_.tools);
        text("sheet.order", sheet_.order);
        text("sheet.notes", sheet_.notes);
        return std::move(lines_);
    }

private:
    void of_canes() {
        add("sheet.thickness", range_words(sheet_.thickness, words_));
        add("sheet.heights", range_words(sheet_.heights, words_));
        add("sheet.head", words_("house." + sheet_.head));
        add("sheet.gap", range_words(sheet_.gap, words_));
        add("sheet.no-neighbour", words_("sheet.no-neighbour-is." + std::string(word_of(sheet_.no_neighbour))));
        if (sheet_.spares > 0) add("sheet.spare", words_("sheet.spare-is", {{"n", Count{sheet_.spares}}}));
        if (sheet_.kickers > 0)
            add("sheet.kicker", sheet_.kicker_until.empty() ? words_("sheet.kicker-is", {{"n", Count{sheet_.kickers}}})
                                                            : words_("sheet.kicker-until", {{"n", Count{sheet_.kickers}}, {"until", sheet_.kicker_until}}));
        add("sheet.tie", words_("sheet.tie-is", {{"wraps", Ratio{sheet_.half_wraps / 2.0}}}));
        text("sheet.tie-with", sheet_.tie_with);
    }
    void add(std::string_view key, std::string value) { lines_.push_back({words_(key), std::move(value)}); }
    void text(std::string_view key, const std::string& value) {
        if (!value.empty()) add(key, value);
    }

    const BlockSheet& sheet_;
    const words::Words& words_;
    std::vector<SheetLine> lines_;
};

} // namespace

std::vector<SheetLine> sheet_lines(const BlockSheet& sheet, const words::Words& words) { return Lines(sheet, words).all(); }

std::string sheet_page(const BlockSheet& sheet, const words::Words& first, const words::Words& second) {
    const auto lines = sheet_lines(sheet, first), others = sheet_lines(sheet, second);
    const auto twice = [](const std::string& one, const std::string& other) {
        return escaped(one) + (one == other ? "" : "<br><span class=\"other\">" + escaped(other) + "</span>");
    };
    std::string out = "<!DOCTYPE html>\n<html lang=\"" + escaped(first.language()) + "\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
                      escaped(sheet.block) + "</title>\n<style>" + std::string(sheet_style) + "</style>\n</head>\n<body>\n<h1>" +
                      escaped(sheet.block) + "</h1>\n<p>" + twice(first("sheet.title"), second("sheet.title")) + "</p>\n<table>\n";
    for (std::size_t i = 0; i < lines.size(); ++i)
        out += "<tr><td class=\"what\">" + twice(lines[i].what, others[i].what) + "</td><td class=\"value\">" +
               twice(lines[i].value, others[i].value) + "</td></tr>\n";
    return out + "</table>\n<p>" + twice(first("safety.line"), second("safety.line")) + "</p>\n</body>\n</html>\n";
}

} // namespace spurwright::sheet
