#include "render/paper/sheet_paper.h"

#include <algorithm>
#include <cairo-pdf.h>

#include "render/paper/page_parts.h"
#include "scenarios/sheet/sheet_page.h"

namespace spurwright::paper {
namespace {

// Points. A4 and its margin; type from the largest to the smallest that is read at arm's length on a wall: our choice.
constexpr double page_width = 595.276, page_height = 841.890, margin = 40, gap = 8, what_share = 0.42;
constexpr double largest_type = 12, smallest_type = 7;

// Sets text on the page from the top down; without `draws` only measures.
class Pen {
public:
    Pen(cairo_t* page, double type, bool draws) : page_(page), type_(type), draws_(draws) {}

    double y = margin;

    // How high it stands.
    double set(const std::string& text, double x, double width, double size, bool strong, double grey) {
        const Held<PangoLayout> layout(pango_cairo_create_layout(page_));
        const Held<PangoFontDescription> font(pango_font_description_from_string(strong ? "DejaVu Sans Bold" : "DejaVu Sans"));
        pango_font_description_set_absolute_size(font.get(), size * type_ / largest_type * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), font.get());
        pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
        pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
        int high = 0;
        pango_layout_get_size(layout.get(), nullptr, &high);
        if (draws_) {
            cairo_set_source_rgb(page_, grey, grey, grey);
            cairo_move_to(page_, x, y);
            pango_cairo_show_layout(page_, layout.get());
        }
        return static_cast<double>(high) / PANGO_SCALE;
    }

    // One language over the other, once where both say the same.
    double twice(const std::string& one, const std::string& other, double x, double width, double size, bool strong) {
        const double top = y, first = set(one, x, width, size, strong, 0.07);
        if (one == other) return first;
        y = top + first;
        const double second = set(other, x, width, size * 0.85, false, 0.27);
        y = top;
        return first + second;
    }

    void line() {
        if (draws_) {
            cairo_set_source_rgb(page_, 0.6, 0.6, 0.6);
            cairo_set_line_width(page_, 0.5);
            cairo_move_to(page_, margin, y);
            cairo_line_to(page_, page_width - margin, y);
            cairo_stroke(page_);
        }
        y += type_ / largest_type * gap / 2;
    }
    void skip(double points) { y += points * type_ / largest_type; }

private:
    cairo_t* page_;
    double type_;
    bool draws_;
};

// Where its foot comes to.
double set_sheet(Pen& pen, const sheet::BlockSheet& sheet, const words::Words& first, const words::Words& second) {
    const auto lines = sheet::sheet_lines(sheet, first), others = sheet::sheet_lines(sheet, second);
    const double width = page_width - 2 * margin, what = width * what_share;
    pen.y += pen.set(sheet.block, margin, width, 20, true, 0.07);
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
    std::string bytes;
    {
        const Held<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(add_bytes, &bytes, page_width, page_height));
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, sheet.block.c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z"); // the same bytes each time
        const Held<cairo_t> page(cairo_create(surface.get()));
        double type = largest_type;
        for (; type >= smallest_type; type -= 0.5) {
            Pen measuring(page.get(), type, false);
            if (set_sheet(measuring, sheet, first, second) <= page_height - margin) break;
        }
        if (type < smallest_type) return failure({Fault::not_allowed, {"error.paper.too-full"}, {{"text", sheet.block}}, {}});
        Pen pen(page.get(), type, true);
        set_sheet(pen, sheet, first, second);
        cairo_show_page(page.get());
    }
    return bytes;
}

} // namespace spurwright::paper
