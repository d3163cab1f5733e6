#include "render/paper/quiz_paper.h"

#include <array>
#include <cstring>

#include "render/paper/page_pen.h"
#include "scenarios/quiz/item_words.h"

namespace spurwright::paper {
namespace {

using quiz::Item;

// Points; our choice.
constexpr double edge = 40, wide = a4_wide - 2 * edge, picture_high = wide * picture_height / picture_width;
constexpr double question_size = 13, answer_size = 12, key_size = 10, tape_high = 15, tape_wide = 22;
constexpr std::size_t questions_a_page = 2;

// The pixels of a PNG as cairo holds them.
struct PngBytes {
    const std::string& bytes;
    std::size_t at = 0;
};
cairo_status_t next_bytes(void* from, unsigned char* to, unsigned int count) {
    auto& png = *static_cast<PngBytes*>(from);
    if (png.bytes.size() - png.at < count) return CAIRO_STATUS_READ_ERROR;
    std::memcpy(to, png.bytes.data() + png.at, count);
    png.at += count;
    return CAIRO_STATUS_SUCCESS;
}

using Box = std::array<double, 4>; // left, top, right, bottom

bool apart(const Box& a, const Box& b) { return a[2] + 3 < b[0] || b[2] + 3 < a[0] || a[3] + 3 < b[1] || b[3] + 3 < a[1]; }

// Black on white, told by the digit alone: paper is printed without colour.
void tape(const PagePen& pen, int digit, const Box& box) {
    cairo_t* page = pen.page();
    cairo_rectangle(page, box[0], box[1], box[2] - box[0], box[3] - box[1]);
    cairo_set_source_rgb(page, 1, 1, 1);
    cairo_fill_preserve(page);
    cairo_set_source_rgb(page, 0, 0, 0);
    cairo_set_line_width(page, 1.4);
    cairo_stroke(page);
    pen.text(std::to_string(digit), box[0] + 7, box[1] + 0.5, 11.5, tape_wide, true);
}

// Beside its place, clear of the tapes set before and inside the picture.
Box tape_box(double x, double y, const Box& within, const std::vector<Box>& taken) {
    for (int ring = 1; ring < 12; ++ring)
        for (const auto& [across, down] : {std::pair{0.0, -1.0}, {0.9, -0.6}, {-0.9, -0.6}, {1.0, 0.0}, {-1.0, 0.0}, {0.0, 1.0}}) {
            const double left = x + across * (12 + 10 * ring) - tape_wide / 2, top = y + down * (8 + 9 * ring) - tape_high / 2;
            const Box box{left, top, left + tape_wide, top + tape_high};
            if (box[0] < within[0] + 2 || box[2] > within[2] - 2 || box[1] < within[1] + 2 || box[3] > within[3] - 2) continue;
            if (std::all_of(taken.begin(), taken.end(), [&](const Box& other) { return apart(box, other); })) return box;
        }
    return {x, y, x + tape_wide, y + tape_high};
}

void mark_places(const PagePen& pen, const Item& item, const VinePicture& picture, double left, double top) {
    const double scale = wide / picture.width;
    const Box within{left, top, left + wide, top + picture_high};
    std::vector<Box> taken;
    for (std::size_t i = 0; i < picture.places.size(); ++i) {
        if (!picture.places[i]) continue;
        const double x = left + (picture.places[i]->first - picture.left) * scale, y = top + (picture.places[i]->second - picture.top) * scale;
        cairo_t* page = pen.page();
        const auto ring = [&](double radius) {
            for (const auto& [grey, width] : {std::pair{1.0, 4.0}, {0.0, 1.6}}) {
                cairo_new_path(page);
                cairo_arc(page, x, y, radius, 0, 6.2831853);
                cairo_set_source_rgb(page, grey, grey, grey);
                cairo_set_line_width(page, width);
                cairo_stroke(page);
            }
        };
        if (item.places.size() == 1) {
            ring(9);
            continue;
        }
        const Box box = tape_box(x, y, within, taken);
        taken.push_back(box);
        for (const auto& [grey, width] : {std::pair{1.0, 3.5}, {0.0, 1.3}}) {
            cairo_move_to(page, x, y);
            cairo_line_to(page, std::clamp(x, box[0], box[2]), std::clamp(y, box[1], box[3]));
            cairo_set_source_rgb(page, grey, grey, grey);
            cairo_set_line_width(page, width);
            cairo_stroke(page);
        }
        ring(2.5);
        tape(pen, static_cast<int>(i) + 1, box);
    }
}

void vine(const PagePen& pen, const Item& item, const VinePicture& picture, double y) {
    PngBytes png{picture.png};
    const Held<cairo_surface_t> surface(cairo_image_surface_create_from_png_stream(next_bytes, &png));
    // Only what is shown goes into the file.
    const Held<cairo_surface_t> cut(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(picture.width), static_cast<int>(picture.height)));
    {
        const Held<cairo_t> cutting(cairo_create(cut.get()));
        cairo_set_source_surface(cutting.get(), surface.get(), -picture.left, -picture.top);
        cairo_paint(cutting.get());
    }
    cairo_t* page = pen.page();
    cairo_save(page);
    cairo_translate(page, edge, y);
    const double scale = wide / picture.width;
    cairo_scale(page, scale, scale);
    cairo_set_source_surface(page, cut.get(), 0, 0);
    cairo_paint(page);
    cairo_restore(page);
    mark_places(pen, item, picture, edge, y);
}

// What can be said, with room to mark it; where it ends.
double answers(const PagePen& pen, const Item& item, double y, const words::Words& first, const words::Words& second) {
    if (item.kind == quiz::Kind::count) {
        y += pen.twice(first("paper.quiz.number"), second("paper.quiz.number"), edge, y, answer_size, wide / 2);
        pen.line(edge + wide / 2, y - 4, edge + wide * 0.75, y - 4, 1);
        return y;
    }
    const std::size_t choices = static_cast<std::size_t>(item.highest());
    const double each = wide / static_cast<double>(std::max<std::size_t>(choices, 1));
    double high = 0;
    for (std::size_t i = 0; i < choices; ++i) {
        const double x = edge + each * static_cast<double>(i);
        pen.box(x, y + 2, 12);
        const std::string digit = std::to_string(i + 1);
        const auto said = [&](const words::Words& words) { return digit + (i < item.words.size() ? "  " + words.sentence(item.words[i]) : ""); };
        high = std::max(high, pen.twice(said(first), said(second), x + 17, y, answer_size, each - 21, item.words.empty()));
    }
    return y + high;
}

void foot(const PagePen& pen, const std::string& text, int page, int of) {
    pen.text(text, edge, a4_high - 28, 7.5, wide * 0.8, false, 0.35);
    const std::string number = std::to_string(page) + " / " + std::to_string(of);
    pen.text(number, edge + wide - 34, a4_high - 28, 8, 60, false, 0.35);
}

// The key and why, from the top down; false where it does not fit from this item on.
double key_line(const PagePen& pen, std::size_t number, const Item& item, double y, const words::Words& first, const words::Words& second, bool draws) {
    std::string right_first, right_second;
    for (const quiz::Answer& answer : item.accepted) {
        right_first += (right_first.empty() ? "" : " / ") + quiz::answer_text(first, item, answer);
        right_second += (right_second.empty() ? "" : " / ") + quiz::answer_text(second, item, answer);
    }
    const double column = 28, from = y;
    pen.text(std::to_string(number), edge, y, key_size, column, true, 0.05, draws);
    y += pen.twice(right_first, right_second, edge + column, y, key_size, wide - column, true, draws);
    const auto why = [&](const words::Words& words) { return words.sentence(item.reveal.key, item.reveal.arguments) + (item.scored ? "" : " " + words("screen.wall.was-talk-only")); };
    y += pen.twice(why(first), why(second), edge + column, y, 0.9 * key_size, wide - column, false, draws);
    if (draws) pen.line(edge, y + 3, edge + wide, y + 3);
    return y - from + 7;
}

} // namespace

QuizPaper quiz_paper(const std::vector<Item>& items, const std::vector<VinePicture>& pictures, const std::string& house, const std::string& seed, const words::Words& first,
                     const words::Words& second) {
    QuizPaper paper;
    const std::string foot_text = first("paper.quiz.foot", {{"house", house}, {"seed", seed}});
    const auto draw = [&](cairo_t* page, int of) {
        const PagePen pen(page);
        int number = 0;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const bool top = i % questions_a_page == 0;
            double y = edge;
            if (top) ++number;
            if (i == 0) {
                y += pen.twice(first("paper.quiz.title"), second("paper.quiz.title"), edge, y - 14, 14, wide * 0.6, true) - 10;
                pen.twice(first("paper.quiz.who"), second("paper.quiz.who"), edge + wide * 0.62, edge - 14, 9, wide * 0.38);
                pen.line(edge + wide * 0.62, y + 4, edge + wide, y + 4, 1);
                y += 12;
            }
            if (!top) y = edge + (a4_high - 2 * edge) / 2 + 12;
            const auto asked = [&](const words::Words& words) { return std::to_string(i + 1) + ".  " + quiz::question_text(words, items[i]); };
            y += pen.twice(asked(first), asked(second), edge, y, question_size, wide, true) + 4;
            vine(pen, items[i], pictures[i], y);
            (void)answers(pen, items[i], y + picture_high + 5, first, second);
            if (top && i + 1 < items.size()) continue;
            foot(pen, foot_text, number, of);
            cairo_show_page(page);
        }
        ++number;
        double y = edge;
        const auto key_head = [&] { y = edge + pen.twice(first("paper.quiz.key"), second("paper.quiz.key"), edge, edge, 14, wide, true) + 8; };
        key_head();
        for (std::size_t i = 0; i < items.size(); ++i) {
            const double high = key_line(pen, i + 1, items[i], y, first, second, false);
            if (y + high > a4_high - edge - 30) {
                foot(pen, foot_text, number++, of);
                cairo_show_page(page);
                key_head();
            }
            y += key_line(pen, i + 1, items[i], y, first, second, true);
        }
        pen.twice(first("screen.wall.not-for-pay"), second("screen.wall.not-for-pay"), edge, y + 6, 8, wide);
        foot(pen, foot_text, number, of);
        cairo_show_page(page);
        return number;
    };
    // Once to count the pages, once with their number.
    (void)a4_pdf(first("paper.quiz.title"), [&](cairo_t* page) { paper.pages = draw(page, 0); });
    paper.bytes = a4_pdf(first("paper.quiz.title"), [&](cairo_t* page) { (void)draw(page, paper.pages); });
    return paper;
}

} // namespace spurwright::paper
