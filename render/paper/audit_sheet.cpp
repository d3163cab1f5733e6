#include "render/paper/audit_sheet.h"

#include <cmath>
#include <vector>

#include "render/paper/page_pen.h"
#include "scenarios/learning/success.h"
#include "scenarios/sheet/sheet_page.h"

namespace spurwright::paper {
namespace {

constexpr double audit_edge = 40, audit_wide = a4_wide - 2 * audit_edge, tick_side = 11;

struct AuditColumn {
    std::string_view key;
    double width; // share of the page; the last takes what is left
    bool tick;
};

std::vector<AuditColumn> columns_of(AuditKind kind) {
    switch (kind) {
    case AuditKind::second: return {{"vine", 0.12, false}, {"kept", 0.13, false}, {"shoots", 0.13, false}, {"blind", 0.13, false}, {"on-spurs", 0.15, false}, {"died", 0.14, false}, {"note", 0, false}};
    case AuditKind::looking:
        return {{"vine", 0.1, false}, {"cane-1", 0.12, false}, {"cane-2", 0.12, false}, {"cane-3", 0.12, false}, {"cane-4", 0.12, false}, {"cane-5", 0.12, false}, {"cane-6", 0.12, false}, {"note", 0, false}};
    case AuditKind::first: break;
    }
    return {{"vine", 0.12, false}, {"canes", 0.12, true}, {"buds", 0.12, true}, {"spurs", 0.12, true}, {"cuts", 0.13, true}, {"clean", 0.14, true}, {"note", 0, false}};
}

std::string_view name_of_kind(AuditKind kind) { return kind == AuditKind::first ? "first" : kind == AuditKind::second ? "second" : "looking"; }

Arguments proof(int vines) {
    const int right = static_cast<int>(std::lround(0.9 * vines));
    const auto found = learning::wilson(right, vines);
    return {{"right", Count{right}}, {"n", Count{vines}}, {"low", Count{std::lround(100 * found.low)}}, {"high", Count{std::lround(100 * found.high)}}};
}

class AuditPage {
public:
    AuditPage(const PagePen& pen, AuditKind kind, const words::Words& first, const words::Words& second) : pen_(pen), kind_(kind), first_(first), second_(second), columns_(columns_of(kind)) {
        for (const AuditColumn& column : columns_) {
            lefts_.push_back(lefts_.empty() ? audit_edge : lefts_.back() + widths_.back());
            widths_.push_back(column.width > 0 ? column.width * audit_wide : audit_edge + audit_wide - lefts_.back());
        }
    }

    void draw(const sheet::BlockSheet& sheet, int vines) const {
        double y = head(sheet);
        y = headings(y);
        const double foot = foot_high(vines), row = std::min(28.0, (a4_high - audit_edge - foot - y) / vines);
        for (int i = 0; i < vines; ++i, y += row) line(i, y, row);
        pen_.line(audit_edge, y, audit_edge + audit_wide, y);
        (void)footing(y + 8, vines, true);
    }

private:
    const PagePen& pen_;
    AuditKind kind_;
    const words::Words &first_, &second_;
    std::vector<AuditColumn> columns_;
    std::vector<double> lefts_, widths_;

    std::string key(std::string_view what) const { return "paper.audit." + std::string(name_of_kind(kind_)) + "." + std::string(what); }
    double twice(std::string_view said, double x, double y, double size, double width, bool strong = false) const {
        return pen_.twice(first_(said), second_(said), x, y, size, width, strong);
    }

    double head(const sheet::BlockSheet& sheet) const {
        double y = audit_edge - 8;
        y += pen_.text(sheet.block, audit_edge, y, 15, audit_wide, true);
        y += twice(key("title"), audit_edge, y, 11, audit_wide, true) + 3;
        y += twice(key("how"), audit_edge, y, 8.5, audit_wide) + 3;
        std::string asked; // what the sheet orders, in a line or two
        for (const sheet::SheetLine& line : sheet::sheet_lines(sheet, first_))
            if (asked.size() < 420) asked += (asked.empty() ? "" : " · ") + line.what + ": " + line.value;
        y += pen_.text(asked, audit_edge, y, 7.5, audit_wide, false, 0.3) + 6;
        const double quarter = audit_wide / 4;
        double high = 0, x = audit_edge;
        for (const std::string_view what : {"paper.audit.pruner", "paper.audit.row", "paper.audit.day", "paper.audit.by"}) {
            high = std::max(high, twice(what, x, y, 8.5, quarter - 8));
            x += quarter;
        }
        y += high + 16;
        for (int i = 0; i < 4; ++i) pen_.line(audit_edge + quarter * i, y, audit_edge + quarter * (i + 1) - 10, y);
        return y + 7;
    }

    double headings(double y) const {
        double high = 0;
        for (std::size_t i = 0; i < columns_.size(); ++i) high = std::max(high, twice(key(columns_[i].key), lefts_[i] + 3, y, 7.8, widths_[i] - 5, true));
        y += high + 3;
        pen_.line(audit_edge, y, audit_edge + audit_wide, y, 1);
        return y;
    }

    void line(int number, double y, double row) const {
        pen_.line(audit_edge, y, audit_edge + audit_wide, y);
        pen_.text(std::to_string(number + 1), lefts_[0] + 3, y + row / 2 - 6, 9, 24, false, 0.35);
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            pen_.line(lefts_[i], y, lefts_[i], y + row);
            if (columns_[i].tick) pen_.box(lefts_[i] + (widths_[i] - tick_side) / 2, y + (row - tick_side) / 2, tick_side);
        }
        pen_.line(audit_edge + audit_wide, y, audit_edge + audit_wide, y + row);
    }

    double foot_high(int vines) const { return footing(0, vines, false) + 12; }

    double footing(double y, int vines, bool draws) const {
        const double from = y;
        const auto said = [&](const std::string& what, const Arguments& arguments) { y += pen_.twice(first_(what, arguments), second_(what, arguments), audit_edge, y, 8.5, audit_wide, false, draws) + 3; };
        if (kind_ == AuditKind::first) {
            said("paper.audit.most-seen", {});
            y += 16;
            if (draws) pen_.line(audit_edge, y, audit_edge + audit_wide, y);
            y += 6;
            said("paper.audit.proves", proof(vines));
        }
        if (kind_ == AuditKind::second) said("paper.audit.expected", {});
        if (kind_ == AuditKind::looking) said("paper.audit.agreement", {});
        said("screen.wall.not-for-pay", {});
        return y - from;
    }
};

} // namespace

AuditSheet audit_sheet(const sheet::BlockSheet& sheet, AuditKind kind, int vines, const words::Words& first, const words::Words& second) {
    AuditSheet made;
    if (kind == AuditKind::looking) vines = looked_at;
    made.bytes = a4_pdf(sheet.block, [&](cairo_t* page) {
        const PagePen pen(page);
        const AuditPage audit(pen, kind, first, second);
        audit.draw(sheet, vines);
        cairo_show_page(page);
    });
    made.pages = 1;
    return made;
}

} // namespace spurwright::paper
