#include "render/paper/field_sheet.h"

#include <algorithm>
#include <array>
#include <cairo-pdf.h>

#include "render/paper/page_parts.h"
#include "scenarios/reference_vines/book_export.h"

namespace spurwright::paper {
namespace {

// Points of A4. Rows as high as a cold hand writes in: our choice.
constexpr double a4_width = 595.276, a4_height = 841.890, edge = 40, row_height = 25;

struct FieldColumn {
    std::string_view key;
    double width; // points; the last takes what is left
};
constexpr std::array<FieldColumn, 8> field_columns{
    {{"row", 42}, {"place", 42}, {"tag", 70}, {"last", 78}, {"weight", 80}, {"canes", 44}, {"buds", 44}, {"note", 0}}};

class FieldPen {
public:
    FieldPen(cairo_t* page, const words::Words& first, const words::Words& second) : page_(page), first_(first), second_(second) {}

    // How high it stands.
    double text(const std::string& said, double x, double y, double size, bool strong = false, double width = 0, bool right = false) const {
        const Held<PangoLayout> layout(pango_cairo_create_layout(page_));
        const Held<PangoFontDescription> font(pango_font_description_from_string(strong ? "DejaVu Sans Bold" : "DejaVu Sans"));
        pango_font_description_set_absolute_size(font.get(), size * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), font.get());
        if (width > 0) pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
        pango_layout_set_alignment(layout.get(), right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
        pango_layout_set_text(layout.get(), said.data(), static_cast<int>(said.size()));
        int high = 0;
        pango_layout_get_size(layout.get(), nullptr, &high);
        cairo_set_source_rgb(page_, 0.05, 0.05, 0.05);
        cairo_move_to(page_, x, y);
        pango_cairo_show_layout(page_, layout.get());
        return static_cast<double>(high) / PANGO_SCALE;
    }
    // One language over the other; how high both stand.
    double twice(std::string_view key, double x, double y, double size, double width, bool strong) const {
        const double high = text(first_(key), x, y, size, strong, width);
        return high + text(second_(key), x, y + high, 0.8 * size, false, width);
    }
    void line(double x1, double y1, double x2, double y2, double width = 0.5) const {
        cairo_set_source_rgb(page_, 0.45, 0.45, 0.45);
        cairo_set_line_width(page_, width);
        cairo_move_to(page_, x1, y1);
        cairo_line_to(page_, x2, y2);
        cairo_stroke(page_);
    }

private:
    cairo_t* page_;
    const words::Words &first_, &second_;
};

double column_left(std::size_t column) {
    double x = edge;
    for (std::size_t i = 0; i < column; ++i) x += field_columns[i].width;
    return x;
}
double column_width(std::size_t column) { return column + 1 < field_columns.size() ? field_columns[column].width : a4_width - edge - column_left(column); }

// What stands over the rows; where they begin.
double page_head(const FieldPen& pen, const reference_vines::Block& block) {
    double y = edge;
    y += pen.text(block.name, edge, y, 16, true, a4_width - 2 * edge) + 2;
    y += pen.twice("book.sheet.title", edge, y, 11, a4_width - 2 * edge, false) + 8;
    double x = edge;
    constexpr std::array<std::string_view, 4> asked{"book.sheet.winter", "book.sheet.day", "book.sheet.unit", "book.sheet.by"};
    const double quarter = (a4_width - 2 * edge) / asked.size();
    double high = 0;
    for (const std::string_view key : asked) {
        high = std::max(high, pen.twice(key, x, y, 8.5, quarter - 8, false));
        x += quarter;
    }
    y += high + 20; // room to write in
    for (std::size_t i = 0; i < asked.size(); ++i) pen.line(edge + quarter * static_cast<double>(i), y, edge + quarter * static_cast<double>(i + 1) - 10, y);
    y += 8;
    y += pen.twice("book.sheet.what", edge, y, 8.5, a4_width - 2 * edge, false) + 8;
    high = 0;
    for (std::size_t i = 0; i < field_columns.size(); ++i)
        high = std::max(high, pen.twice("book.sheet." + std::string(field_columns[i].key), column_left(i) + 3, y, 8.5, column_width(i) - 4, true));
    y += high + 3;
    pen.line(edge, y, a4_width - edge, y, 1);
    return y;
}

void vine_line(const FieldPen& pen, const reference_vines::ReferenceVine& vine, double y) {
    const double middle = y + 7;
    pen.text(vine.row, column_left(0) + 3, middle, 10, false, column_width(0) - 4);
    if (vine.place) pen.text(std::to_string(*vine.place), column_left(1) + 3, middle, 10);
    pen.text(vine.tag, column_left(2) + 3, middle, 10, true, column_width(2) - 4);
    if (!vine.winters.empty()) {
        const auto& last = vine.winters.back();
        pen.text(std::to_string(last.winter) + "  " + reference_vines::kg_text(last.prunings), column_left(3) + 3, middle, 8);
    }
    pen.line(edge, y + row_height, a4_width - edge, y + row_height);
    for (std::size_t i = 0; i <= field_columns.size(); ++i) {
        const double x = i < field_columns.size() ? column_left(i) : a4_width - edge;
        pen.line(x, y, x, y + row_height);
    }
}

} // namespace

FieldSheet field_sheet(const reference_vines::BlockBook& book, const words::Words& first, const words::Words& second) {
    FieldSheet sheet;
    const auto draw = [&](cairo_t* page, int of) {
        const FieldPen pen(page, first, second);
        std::size_t vine = 0;
        int number = 0;
        while (vine < book.vines.size()) {
            ++number;
            double y = page_head(pen, book.block);
            for (; vine < book.vines.size() && y + row_height <= a4_height - edge; ++vine, y += row_height) vine_line(pen, book.vines[vine], y);
            pen.text(std::to_string(number) + (of > 0 ? " / " + std::to_string(of) : ""), edge, a4_height - edge + 8, 8.5, false, a4_width - 2 * edge, true);
            cairo_show_page(page);
        }
        return number;
    };
    const auto written = [&](int of) {
        sheet.bytes.clear();
        const Held<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(add_bytes, &sheet.bytes, a4_width, a4_height));
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, book.block.name.c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z"); // the same bytes each time
        const Held<cairo_t> page(cairo_create(surface.get()));
        return draw(page.get(), of);
    };
    sheet.pages = written(0); // once to count the pages, once with their number
    written(sheet.pages);
    return sheet;
}

} // namespace spurwright::paper
