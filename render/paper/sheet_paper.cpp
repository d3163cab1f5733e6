#include "render/paper/sheet_paper.h"

#include <algorithm>

#include "render/paper/page_pen.h"
#include "scenarios/sheet/sheet_page.h"

namespace spurwright::paper {
namespace {

// Points. The margin; type from the largest to the smallest that is read at arm's length on a wall: our choice.
constexpr double margin = 40, gap = 8, what_share = 0.42;
constexpr double largest_type = 12, smallest_type = 7;

// Sets text on the page from the top down; without `draws` only measures.
class Pen {
public:
    Pen(cairo_t* page, double type, bool draws) : pen_(page), type_(type), draws_(draws) {}

    double y = margin;

    // How high it stands.
    double set(const std::string& text, double width, double size, bool strong) const {
        return pen_.text(text, margin, y, scaled(size), width, strong, 0.05, draws_);
    }
    // One language over the other, once where both say the same.
    double twice(const std::string& one, const std::string& other, double x, double width, double size, bool strong) const {
        return pen_.twice(one, other, x, y, scaled(size), width, strong, draws_);
    }

    void line() {
        if (draws_) pen_.line(margin, y, a4_wide - margin, y);
        y += scaled(gap / 2);
    }
    void skip(double points) { y += scaled(points); }

private:
    PagePen pen_;
    double type_;
    bool draws_;

    double scaled(double points) const { return points * type_ / largest_type; }
};

// Where its foot comes to.
double set_sheet(Pen& pen, const sheet::BlockSheet& sheet, const words::Words& first, const words::Words& second) {
    const auto lines = sheet::sheet_lines(sheet, first), others = sheet::sheet_lines(sheet, second);
    const double width = a4_wide - 2 * margin, what = width * what_share;
    pen.y += pen.set(sheet.block, width, 20, true);
    pen.y += pen.twice(first("sheet.title"), second("sheet.title"), margin, width, 12, false);
    pen.skip(gap);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        pen.line();
        const double left = pen.twice(lines[i].what, others[i].what, margin, what - gap, 12, false),
                     right = pen.twice(lines[i].value, others[i].value, margin + what, width - what, 12, true);
        pen.y += std::max(left, right);
        pen.skip(gap / 2);
    }
    pen.line();
    pen.skip(gap);
    pen.y += pen.twice(first("safety.line"), second("safety.line"), margin, width, 12, false);
    return pen.y;
}

} // namespace

Result<std::string> sheet_pdf(const sheet::BlockSheet& sheet, const words::Words& first, const words::Words& second) {
    bool fits = false;
    std::string bytes = a4_pdf(sheet.block, [&](cairo_t* page) {
        double type = largest_type;
        for (; type >= smallest_type; type -= 0.5) {
            Pen measuring(page, type, false);
            fits = set_sheet(measuring, sheet, first, second) <= a4_high - margin;
            if (fits) break;
        }
        if (!fits) return;
        Pen pen(page, type, true);
        set_sheet(pen, sheet, first, second);
        cairo_show_page(page);
    });
    if (!fits) return failure({Fault::not_allowed, {"error.paper.too-full"}, {{"text", sheet.block}}, {}});
    return bytes;
}

} // namespace spurwright::paper
