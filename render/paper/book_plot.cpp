#include "render/paper/book_plot.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "render/paper/page_parts.h"
#include "scenarios/io/csv.h"
#include "scenarios/reference_vines/book_export.h"

namespace spurwright::paper {
namespace {

using reference_vines::BlockBook;
using reference_vines::BlockComparison;
using reference_vines::ReferenceVine;
using reference_vines::Weighing;

struct Colour {
    double r, g, b;
};
constexpr Colour ink{0.1, 0.1, 0.1}, pale{0.78, 0.78, 0.78};
// Told apart with any eyes for colour (Okabe and Ito's palette, common practice); each has a shape of its own beside it.
constexpr std::array<Colour, 6> row_colours{{{0.00, 0.45, 0.70}, {0.84, 0.37, 0.00}, {0.00, 0.62, 0.45}, {0.80, 0.47, 0.65}, {0.34, 0.71, 0.91}, {0.90, 0.62, 0.00}}};
constexpr std::size_t most_rows_shown = row_colours.size();

struct Box {
    double left, top, right, bottom;
};

class Canvas {
public:
    explicit Canvas(cairo_t* page) : page_(page) {}
    cairo_t* page() const { return page_; }
    void use(const Colour& c, double width = 1, double opacity = 1) const {
        cairo_set_source_rgba(page_, c.r, c.g, c.b, opacity);
        cairo_set_line_width(page_, width);
    }
    void line(double x1, double y1, double x2, double y2) const {
        cairo_move_to(page_, x1, y1);
        cairo_line_to(page_, x2, y2);
        cairo_stroke(page_);
    }
    // `across`, `down`: where the point lies on the text, 0 to 1.
    void text(const std::string& said, double x, double y, double size, double across = 0, double down = 0, bool strong = false, double width = 0) const {
        const Held<PangoLayout> layout(pango_cairo_create_layout(page_));
        const Held<PangoFontDescription> font(pango_font_description_from_string(strong ? "DejaVu Sans Bold" : "DejaVu Sans"));
        pango_font_description_set_absolute_size(font.get(), size * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), font.get());
        if (width > 0) pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_text(layout.get(), said.data(), static_cast<int>(said.size()));
        int wide = 0, high = 0;
        pango_layout_get_pixel_size(layout.get(), &wide, &high);
        use(ink);
        cairo_move_to(page_, x - across * wide, y - down * high);
        pango_cairo_show_layout(page_, layout.get());
    }
    // One shape a row: disc, square, triangle, diamond, ring, cross.
    void mark(std::size_t shape, double x, double y, double half, bool filled = true) const {
        switch (shape % most_rows_shown) {
        case 1: cairo_rectangle(page_, x - half, y - half, 2 * half, 2 * half); break;
        case 2:
            cairo_move_to(page_, x, y - 1.2 * half);
            cairo_line_to(page_, x + 1.1 * half, y + half);
            cairo_line_to(page_, x - 1.1 * half, y + half);
            cairo_close_path(page_);
            break;
        case 3:
            cairo_move_to(page_, x, y - 1.3 * half);
            cairo_line_to(page_, x + 1.3 * half, y);
            cairo_line_to(page_, x, y + 1.3 * half);
            cairo_line_to(page_, x - 1.3 * half, y);
            cairo_close_path(page_);
            break;
        case 4:
            filled = false;
            cairo_arc(page_, x, y, half, 0, 6.2831853);
            break;
        case 5:
            cairo_move_to(page_, x - half, y - half);
            cairo_line_to(page_, x + half, y + half);
            cairo_move_to(page_, x + half, y - half);
            cairo_line_to(page_, x - half, y + half);
            filled = false;
            break;
        default: cairo_arc(page_, x, y, half, 0, 6.2831853);
        }
        filled ? cairo_fill(page_) : cairo_stroke(page_);
    }

private:
    cairo_t* page_;
};

// A scale with ticks at 1, 2 or 5 times a power of ten.
class Scale {
public:
    Scale(double low, double high, double from, double to, int ticks) : from_(from), to_(to) {
        if (!(high > low)) high = low + 1;
        const double raw = (high - low) / ticks, power = std::pow(10.0, std::floor(std::log10(raw)));
        step_ = power * (raw <= power ? 1 : raw <= 2 * power ? 2 : raw <= 5 * power ? 5 : 10);
        low_ = step_ * std::floor(low / step_);
        high_ = step_ * std::ceil(high / step_);
    }
    double at(double value) const { return from_ + (to_ - from_) * (value - low_) / (high_ - low_); }
    std::vector<double> ticks() const {
        std::vector<double> all;
        const long count = std::lround((high_ - low_) / step_);
        for (long i = 0; i <= count; ++i) all.push_back(low_ + step_ * static_cast<double>(i));
        return all;
    }

private:
    double from_, to_, low_ = 0, high_ = 1, step_ = 1;
};

double kilograms(Mass mass) { return mass.count / 1e6; }

class BlockPlot {
public:
    BlockPlot(const Canvas& canvas, const BlockBook& book, const BlockComparison& compared, const reference_vines::CompareWish& wish, const words::Words& words)
        : canvas_(canvas), book_(book), compared_(compared), wish_(wish), words_(words) {
        for (const ReferenceVine& vine : book.vines)
            if (std::find(rows_.begin(), rows_.end(), vine.row) == rows_.end()) rows_.push_back(vine.row);
        if (rows_.size() > most_rows_shown) rows_.clear(); // too many to tell apart: the block as one
    }

    void draw() const {
        canvas_.text(words_("book.compare-head", {{"block", compared_.block.name}, {"n", Count{compared_.vines}}, {"spacing", compared_.block.spacing}}), 40, 18, 22, 0, 0, true);
        if (compared_.block.invented) canvas_.text(words_("book.invented-line"), 40, 50, 15);
        winters({90, 110, plot_width - 190, 500});
        changes({90, 590, 620, plot_height - 70});
        next_winter({740, 590, plot_width - 40, plot_height - 70});
    }

private:
    std::string number(double value, int decimals) const { return words::number_text(std::llround(value * 1e6), 6, decimals, words_.numbers()); }

    std::size_t row_number(const std::string& row) const {
        const auto at = std::find(rows_.begin(), rows_.end(), row);
        return at == rows_.end() ? 0 : static_cast<std::size_t>(at - rows_.begin());
    }

    void frame(const Box& box, const std::string& title, const std::string& up, const Scale& y, int decimals) const {
        canvas_.text(title, box.left, box.top - 12, 15, 0, 1, true, box.right - box.left + 30);
        for (const double tick : y.ticks()) {
            canvas_.use(pale, 1);
            canvas_.line(box.left, y.at(tick), box.right, y.at(tick));
            canvas_.text(number(tick, decimals), box.left - 8, y.at(tick), 13, 1, 0.5);
        }
        canvas_.text(up, box.left - 8, box.bottom + 12, 13, 1, 0);
        canvas_.use(ink, 1.2);
        canvas_.line(box.left, box.top, box.left, box.bottom);
        canvas_.line(box.left, box.bottom, box.right, box.bottom);
    }

    double winter_x(const Box& box, int winter) const {
        const int first = compared_.winters.front().winter, last = compared_.winters.back().winter;
        const double share = last > first ? static_cast<double>(winter - first) / (last - first) : 0.5;
        return box.left + 40 + share * (box.right - box.left - 80);
    }

    void winters(const Box& box) const {
        double most = 0;
        for (const auto& w : compared_.winters) most = std::max(most, w.kg.most);
        const Scale y(0, most, box.bottom, box.top, 6);
        frame(box, words_("book.plot.winters"), "kg", y, 2);
        for (const auto& w : compared_.winters) canvas_.text(std::to_string(w.winter), winter_x(box, w.winter), box.bottom + 6, 13, 0.5, 0);
        for (const ReferenceVine& vine : book_.vines) {
            canvas_.use(row_colours[row_number(vine.row)], 0.8, 0.25);
            const Weighing* before = nullptr;
            for (const Weighing& w : vine.winters) {
                if (before && w.winter == before->winter + 1)
                    canvas_.line(winter_x(box, before->winter), y.at(kilograms(before->prunings)), winter_x(box, w.winter), y.at(kilograms(w.prunings)));
                before = &w;
            }
        }
        const std::size_t lines = std::max<std::size_t>(rows_.size(), 1);
        for (std::size_t row = 0; row < lines; ++row) row_middle(box, y, row, lines);
    }

    // The median of a row's vines winter by winter, with the half of them that lies about it.
    void row_middle(const Box& box, const Scale& y, std::size_t row, std::size_t lines) const {
        const double aside = 7 * (static_cast<double>(row) - 0.5 * static_cast<double>(lines - 1)); // so that bars do not hide one another
        double old_x = 0, old_y = 0;
        bool any = false;
        for (const auto& winter : compared_.winters) {
            std::vector<double> kg;
            for (const ReferenceVine& vine : book_.vines)
                if (rows_.empty() || vine.row == rows_[row])
                    for (const Weighing& w : vine.winters)
                        if (w.winter == winter.winter) kg.push_back(kilograms(w.prunings));
            if (kg.empty()) continue;
            const balance::VineSpread spread = balance::vine_spread(std::move(kg));
            const double x = winter_x(box, winter.winter) + aside, middle = y.at(spread.median);
            canvas_.use(row_colours[row], 2.5);
            canvas_.line(x, y.at(spread.low), x, y.at(spread.high));
            if (any) canvas_.line(old_x, old_y, x, middle);
            canvas_.mark(row, x, middle, 6);
            old_x = x, old_y = middle, any = true;
        }
        if (rows_.empty()) return;
        const double key_y = box.top + 26 * static_cast<double>(row);
        canvas_.use(row_colours[row], 2.5);
        canvas_.mark(row, box.right + 22, key_y, 6);
        canvas_.text(words_("book.plot.row", {{"row", rows_[row]}}), box.right + 38, key_y, 14, 0, 0.5, false, 140);
    }

    void changes(const Box& box) const {
        double low = 0, high = 0;
        for (const auto& c : compared_.changes) low = std::min(low, c.kg.low), high = std::max(high, c.kg.high);
        const Scale y(low, high, box.bottom, box.top, 5);
        frame(box, words_("book.plot.changes", {{"percent", Count{std::llround(100 * wish_.confidence)}}}), "kg", y, 2);
        canvas_.use(ink, 1.5);
        canvas_.line(box.left, y.at(0), box.right, y.at(0));
        for (std::size_t i = 0; i < compared_.changes.size(); ++i) {
            const auto& c = compared_.changes[i];
            const double x = box.left + (box.right - box.left) * (static_cast<double>(i) + 0.5) / static_cast<double>(compared_.changes.size());
            const bool told = c.kg.tested && c.kg.p < 1 - wish_.confidence;
            canvas_.use(told ? row_colours[1] : ink, 2);
            if (c.kg.tested) canvas_.line(x, y.at(c.kg.low), x, y.at(c.kg.high));
            canvas_.mark(0, x, y.at(c.kg.mean), 7, told);
            if (compared_.changes.size() <= 12 || i % 3 == 0) canvas_.text(std::to_string(c.to), x, box.bottom + 6, 13, 0.5, 0);
        }
    }

    void next_winter(const Box& box) const {
        const auto& line = compared_.next_by_buds;
        double least = 0, most = 1, heaviest = 0;
        if (!compared_.buds.empty()) {
            least = *std::min_element(compared_.buds.begin(), compared_.buds.end());
            most = *std::max_element(compared_.buds.begin(), compared_.buds.end());
            heaviest = *std::max_element(compared_.next_kg.begin(), compared_.next_kg.end());
        }
        const Scale x(least, most, box.left + 30, box.right - 15, 6), y(0, heaviest, box.bottom, box.top, 5);
        frame(box, line.fitted ? words_("book.plot.next", {{"r", number(line.r, 2)}, {"n", Count{line.points}}}) : words_("book.plot.no-next"), "kg", y, 2);
        for (const double tick : x.ticks()) canvas_.text(number(tick, 0), x.at(tick), box.bottom + 6, 13, 0.5, 0);
        for (const ReferenceVine& vine : book_.vines)
            for (std::size_t i = 0; i + 1 < vine.winters.size(); ++i) {
                const Weighing &w = vine.winters[i], &next = vine.winters[i + 1];
                if (!w.buds || next.winter != w.winter + 1) continue;
                canvas_.use(row_colours[row_number(vine.row)], 1.2, 0.55);
                canvas_.mark(row_number(vine.row), x.at(static_cast<double>(*w.buds)), y.at(kilograms(next.prunings)), 3.5);
            }
        if (!line.fitted) return;
        canvas_.use(ink, 2);
        canvas_.line(x.at(least), y.at(line.intercept + line.slope * least), x.at(most), y.at(line.intercept + line.slope * most));
    }

    const Canvas& canvas_;
    const BlockBook& book_;
    const BlockComparison& compared_;
    const reference_vines::CompareWish& wish_;
    const words::Words& words_;
    std::vector<std::string> rows_; // in walking order; empty where there are too many
};

} // namespace

std::string book_plot(const BlockBook& book, const BlockComparison& compared, const reference_vines::CompareWish& wish, const words::Words& words) {
    const Held<cairo_surface_t> surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, plot_width, plot_height));
    const Held<cairo_t> page(cairo_create(surface.get()));
    cairo_set_source_rgb(page.get(), 1, 1, 1);
    cairo_paint(page.get());
    const Canvas canvas(page.get());
    BlockPlot(canvas, book, compared, wish, words).draw();
    cairo_surface_flush(surface.get());
    std::string bytes;
    if (cairo_status(page.get()) != CAIRO_STATUS_SUCCESS || cairo_surface_write_to_png_stream(surface.get(), add_bytes, &bytes) != CAIRO_STATUS_SUCCESS) return {};
    return bytes;
}

std::string plot_data(const BlockBook& book) {
    const std::string end(io::csv_line_end);
    std::string text = "row,tag,winter,weight_kg,change_kg,buds,next_weight_kg" + end;
    for (const ReferenceVine& vine : book.vines)
        for (std::size_t i = 0; i < vine.winters.size(); ++i) {
            const Weighing& w = vine.winters[i];
            const bool follows = i > 0 && vine.winters[i - 1].winter == w.winter - 1, followed = i + 1 < vine.winters.size() && vine.winters[i + 1].winter == w.winter + 1;
            text += io::csv_text(vine.row) + ',' + io::csv_text(vine.tag) + ',' + std::to_string(w.winter) + ',' + reference_vines::kg_text(w.prunings) + ',' +
                    (follows ? reference_vines::kg_text(w.prunings - vine.winters[i - 1].prunings) : std::string()) + ',' + (w.buds ? std::to_string(*w.buds) : std::string()) + ',' +
                    (followed ? reference_vines::kg_text(vine.winters[i + 1].prunings) : std::string()) + end;
        }
    return text;
}

} // namespace spurwright::paper
