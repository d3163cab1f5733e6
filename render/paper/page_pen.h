// A pen for pages of A4: text that wraps, in one language or two, lines, boxes to tick. Points from the upper left.
#pragma once

#include <algorithm>
#include <cairo-pdf.h>
#include <functional>

#include "render/paper/page_parts.h"
#include "scenarios/words/words.h"

namespace spurwright::paper {

inline constexpr double a4_wide = 595.276, a4_high = 841.890; // points; A4 of ISO 216, 210 x 297 mm, from memory

class PagePen {
public:
    explicit PagePen(cairo_t* page) : page_(page) {}
    cairo_t* page() const { return page_; }

    // How high it stands; a width of 0 never wraps; without `draws` it is only measured.
    double text(const std::string& said, double x, double y, double size, double width, bool strong = false, double grey = 0.05, bool draws = true, PangoAlignment aligned = PANGO_ALIGN_LEFT) const {
        const Held<PangoLayout> layout(pango_cairo_create_layout(page_));
        const Held<PangoFontDescription> font(pango_font_description_from_string(strong ? "DejaVu Sans Bold" : "DejaVu Sans"));
        pango_font_description_set_absolute_size(font.get(), size * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), font.get());
        if (width > 0) pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
        pango_layout_set_alignment(layout.get(), aligned);
        pango_layout_set_text(layout.get(), said.data(), static_cast<int>(said.size()));
        int high = 0;
        pango_layout_get_size(layout.get(), nullptr, &high);
        if (draws) {
            cairo_set_source_rgb(page_, grey, grey, grey);
            cairo_move_to(page_, x, y);
            pango_cairo_show_layout(page_, layout.get());
        }
        return static_cast<double>(high) / PANGO_SCALE;
    }
    // One language over the other, once where both say the same; how high both stand.
    double twice(const std::string& one, const std::string& other, double x, double y, double size, double width, bool strong = false, bool draws = true) const {
        const double high = text(one, x, y, size, width, strong, 0.05, draws);
        return one == other ? high : high + text(other, x, y + high, 0.85 * size, width, false, 0.3, draws);
    }
    void line(double x1, double y1, double x2, double y2, double width = 0.5) const {
        cairo_set_source_rgb(page_, 0.45, 0.45, 0.45);
        cairo_set_line_width(page_, width);
        cairo_move_to(page_, x1, y1);
        cairo_line_to(page_, x2, y2);
        cairo_stroke(page_);
    }
    void box(double x, double y, double side) const {
        cairo_set_source_rgb(page_, 0.2, 0.2, 0.2);
        cairo_set_line_width(page_, 0.8);
        cairo_rectangle(page_, x, y, side, side);
        cairo_stroke(page_);
    }

private:
    cairo_t* page_;
};

// A PDF of A4 with this title, the same bytes each time; `draw` shows its pages itself.
inline std::string a4_pdf(const std::string& title, const std::function<void(cairo_t*)>& draw) {
    std::string bytes;
    {
        const Held<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(add_bytes, &bytes, a4_wide, a4_high));
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, title.c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
        const Held<cairo_t> page(cairo_create(surface.get()));
        draw(page.get());
        if (cairo_status(page.get()) != CAIRO_STATUS_SUCCESS) return {};
    }
    return bytes;
}

} // namespace spurwright::paper
