#include "scenarios/review/drawing.h"

#include <algorithm>

#include "sim/vine/vine_query.h"

namespace spurwright::review {
namespace {

constexpr std::int32_t margin_mm = 60, least_stroke_mm = 4;

std::int32_t to_mm(Length l) { return l.count / 1000; }
std::string number_of(std::int32_t n) { return std::to_string(n); }

struct Frame {
    std::int32_t left = 0, right = 0, top = 0;

    void hold(const Place& place) {
        left = std::min(left, to_mm(place.x));
        right = std::max(right, to_mm(place.x));
        top = std::max(top, to_mm(place.y));
    }
    std::int32_t width() const { return right - left + 2 * margin_mm; }
    std::int32_t height() const { return top + 2 * margin_mm; }
    std::int32_t x(Length l) const { return to_mm(l) - left + margin_mm; }
    std::int32_t y(Length l) const { return top + margin_mm - to_mm(l); }
    std::string at(const Place& place) const { return number_of(x(place.x)) + "," + number_of(y(place.y)); }
};

// Places of an axis as far as it stands, from the node that bears it.
std::vector<Place> line_of(const Vine& vine, const Axis& axis) {
    std::vector<Place> places;
    if (axis.parent) places.push_back(vine.find(axis.parent)->place);
    for (const Node& node : vine.nodes_of(axis)) {
        if (node.removed) break;
        places.push_back(node.place);
    }
    return places;
}

std::string points_attribute(const std::vector<Place>& places, const Frame& frame) {
    std::string points;
    for (const Place& place : places) points += (points.empty() ? "" : " ") + frame.at(place);
    return "points=\"" + points + "\"";
}

std::string polyline(const std::vector<Place>& places, const Frame& frame, const std::string& look) {
    return "<polyline " + points_attribute(places, frame) + " " + look + "/>\n";
}

std::int32_t stroke_of(const Vine& vine, const Axis& axis) {
    std::int32_t widest = least_stroke_mm;
    for (const Node& node : vine.nodes_of(axis))
        if (!node.removed) widest = std::max(widest, to_mm(node.major));
    return is_trunk(axis) ? widest : std::min(widest, 20);
}

bool is_kept_cane(const Vine& vine, const Axis& axis) {
    return !axis.removed && axis.state == AxisState::live && !is_trunk(axis) && age(vine, axis) == 1;
}

std::string label(const Vine& vine, const Axis& axis, const Frame& frame) {
    const auto places = line_of(vine, axis);
    return "<text x=\"" + number_of(frame.x(places.back().x)) + "\" y=\"" + number_of(frame.y(places.back().y) - 14) + "\">" +
           name_of(axis.id) + "</text>\n";
}

} // namespace

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        default: out += c;
        }
    }
    return out;
}

std::string drawing(const Drawn& drawn, const words::Words& words) {
    Frame frame;
    for (const Vine* vine : {&drawn.before, &drawn.after, &drawn.best})
        for (const Node& node : vine->nodes) frame.hold(node.place);
    std::string out = "<svg viewBox=\"0 0 " + number_of(frame.width()) + " " + number_of(frame.height()) +
                      "\" role=\"img\" font-size=\"34\" stroke-linejoin=\"round\" fill=\"none\">\n<title>" +
                      escaped(words("review.page.drawing")) + "</title>\n<desc>" + escaped(words("review.page.drawing-tells")) +
                      "</desc>\n";
    const std::int32_t ground = frame.y({});
    const auto level = [&](std::int32_t y, std::string_view look) {
        out += "<line x1=\"0\" x2=\"" + number_of(frame.width()) + "\" y1=\"" + number_of(y) + "\" y2=\"" + number_of(y) + "\" " +
               std::string(look) + "/>\n";
    };
    level(ground, "stroke=\"#6b5d4f\" stroke-width=\"6\"");
    for (const Wire& wire : drawn.before.wires) level(frame.y(wire.height), "stroke=\"#8a8f94\" stroke-width=\"3\"");
    for (const Axis& axis : drawn.before.axes) // what came off
        if (!axis.removed && axis.node_count > 1)
            out += polyline(line_of(drawn.before, axis), frame, "stroke=\"#cfc8bd\" stroke-width=\"3\"");
    for (const Axis& axis : drawn.after.axes) {
        const auto places = line_of(drawn.after, axis);
        if (axis.removed || places.size() < 2) continue;
        const int years = age(drawn.after, axis);
        const std::string colour = is_trunk(axis) || years > 2 ? "#5a4636" : years == 2 ? "#7d5f42" : "#b8722c";
        out += polyline(places, frame, "stroke=\"" + colour + "\" stroke-width=\"" + number_of(stroke_of(drawn.after, axis)) + "\"");
    }
    for (const Axis& axis : drawn.best.axes) // the twin line
        if (is_kept_cane(drawn.best, axis))
            out += polyline(line_of(drawn.best, axis), frame,
                            "stroke=\"#0072b2\" stroke-width=\"9\" stroke-dasharray=\"1 20\" stroke-linecap=\"round\"");
    out += "<g fill=\"#222\">\n";
    for (const Axis& axis : drawn.after.axes)
        if (is_kept_cane(drawn.after, axis)) out += label(drawn.after, axis, frame);
    out += "</g>\n<g fill=\"#0072b2\">\n";
    for (const Axis& axis : drawn.best.axes)
        if (is_kept_cane(drawn.best, axis) && !is_kept_cane(drawn.after, *drawn.after.find(axis.id)))
            out += label(drawn.best, axis, frame);
    out += "</g>\n<g fill=\"#444\">\n<text x=\"10\" y=\"" + number_of(frame.height() - 12) + "\">" + escaped(words("review.page.near")) +
           "</text>\n<text text-anchor=\"end\" x=\"" + number_of(frame.width() - 10) + "\" y=\"" + number_of(frame.height() - 12) + "\">" +
           escaped(words("review.page.far")) + "</text>\n</g>\n</svg>\n";
    return out;
}

} // namespace spurwright::review
