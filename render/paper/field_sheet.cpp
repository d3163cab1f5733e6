#include "render/paper/field_sheet.h"

#include <algorithm>
#include <array>

#include "render/paper/page_pen.h"
#include "scenarios/reference_vines/book_export.h"

namespace spurwright::paper {
namespace {

// Points of A4. Rows as high as a cold hand writes in: our choice.
constexpr double edge = 40, row_height = 25;

struct FieldColumn {
    std::string_view key;
    double width; // points; the last takes what is left
};
constexpr std::array<FieldColumn, 8> field_columns{
    {{"row", 42}, {"place", 42}, {"tag", 70}, {"last", 78}, {"weight", 80}, {"canes", 44}, {"buds", 44}, {"note", 0}}};

double column_left(std::size_t column) {
    double x = edge;
    for (std::size_t i = 0; i < column; ++i) x += field_columns[i].width;
    return x;
}
double column_width(std::size_t column) { return column + 1 < field_columns.size() ? field_columns[column].width : a4_wide - edge - column_left(column); }

// What stands over the rows; where they begin.
double page_head(const PagePen& pen, const reference_vines::Block& block, const words::Words& first, const words::Words& second) {
    const auto twice = [&](std::string_view key, double x, double y, double size, double width, bool strong = false) {
        return pen.twice(first(key), second(key), x, y, size, width, strong);
    };
    double y = edge;
    y += pen.text(block.name, edge, y, 16, a4_wide - 2 * edge, true) + 2;
    y += twice("book.sheet.title", edge, y, 11, a4_wide - 2 * edge) + 8;
    double x = edge;
    constexpr std::array<std::string_view, 4> asked{"book.sheet.winter", "book.sheet.day", "book.sheet.unit", "book.sheet.by"};
    const double quarter = (a4_wide - 2 * edge) / asked.size();
    double high = 0;
    for (const std::string_view key : asked) {
        high = std::max(high, twice(key, x, y, 8.5, quarter - 8));
        x += quarter;
    }
    y += high + 20; // room to write in
    for (std::size_t i = 0; i < asked.size(); ++i) pen.line(edge + quarter * static_cast<double>(i), y, edge + quarter * static_cast<double>(i + 1) - 10, y);
    y += 8;
    y += twice("book.sheet.what", edge, y, 8.5, a4_wide - 2 * edge) + 8;
    high = 0;
    for (std::size_t i = 0; i < field_columns.size(); ++i)
        high = std::max(high, twice("book.sheet." + std::string(field_columns[i].key), column_left(i) + 3, y, 8.5, column_width(i) - 4, true));
    y += high + 3;
    pen.line(edge, y, a4_wide - edge, y, 1);
    return y;
}

void vine_line(const PagePen& pen, const reference_vines::ReferenceVine& vine, double y) {
    const double middle = y + 7;
    pen.text(vine.row, column_left(0) + 3, middle, 10, column_width(0) - 4);
    if (vine.place) pen.text(std::to_string(*vine.place), column_left(1) + 3, middle, 10, 0);
    pen.text(vine.tag, column_left(2) + 3, middle, 10, column_width(2) - 4, true);
    if (!vine.winters.empty()) {
        const auto& last = vine.winters.back();
        pen.text(std::to_string(last.winter) + "  " + reference_vines::kg_text(last.prunings), column_left(3) + 3, middle, 8, 0);
    }
    pen.line(edge, y + row_height, a4_wide - edge, y + row_height);
    for (std::size_t i = 0; i <= field_columns.size(); ++i) {
        const double x = i < field_columns.size() ? column_left(i) : a4_wide - edge;
        pen.line(x, y, x, y + row_height);
    }
}

} // namespace

FieldSheet field_sheet(const reference_vines::BlockBook& book, const words::Words& first, const words::Words& second) {
    FieldSheet sheet;
    const auto draw = [&](cairo_t* page, int of) {
        const PagePen pen(page);
        std::size_t vine = 0;
        int number = 0;
        while (vine < book.vines.size()) {
            ++number;
            double y = page_head(pen, book.block, first, second);
            for (; vine < book.vines.size() && y + row_height <= a4_high - edge; ++vine, y += row_height) vine_line(pen, book.vines[vine], y);
            pen.text(std::to_string(number) + (of > 0 ? " / " + std::to_string(of) : ""), edge, a4_high - edge + 8, 8.5, a4_wide - 2 * edge, false, 0.05, true, PANGO_ALIGN_RIGHT);
            cairo_show_page(page);
        }
        return number;
    };
    const auto written = [&](int of) {
        int pages = 0;
        sheet.bytes = a4_pdf(book.block.name, [&](cairo_t* page) { pages = draw(page, of); });
        return pages;
    };
    sheet.pages = written(0); // once to count the pages, once with their number
    written(sheet.pages);
    return sheet;
}

} // namespace spurwright::paper
