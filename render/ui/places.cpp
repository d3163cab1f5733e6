#include "render/ui/places.h"

#include <algorithm>

namespace spurwright::ui {
namespace {

ImU32 mixed(ImU32 a, ImU32 b, float share) {
    ImVec4 x = ImGui::ColorConvertU32ToFloat4(a), y = ImGui::ColorConvertU32ToFloat4(b);
    return ImGui::ColorConvertFloat4ToU32(
        {x.x + (y.x - x.x) * share, x.y + (y.y - x.y) * share, x.z + (y.z - x.z) * share, 1});
}

} // namespace

void draw_small_vine(ImDrawList& draw, ImVec2 foot, float height, const Palette& p, bool tied) {
    const float thick = std::max(height * 0.07f, 1.2f), head = foot.y - height * 0.52f, wire = foot.y - height * 0.66f;
    const ImVec2 trunk[] = {foot,
                            {foot.x - height * 0.03f, foot.y - height * 0.22f},
                            {foot.x + height * 0.02f, foot.y - height * 0.38f},
                            {foot.x, head}};
    draw.AddPolyline(trunk, 4, p.ink, 0, thick);
    for (const float way : {-1.0f, 1.0f}) {
        const float reach = height * 0.5f * way;
        if (tied) {
            draw.AddBezierCubic({foot.x, head}, {foot.x + reach * 0.2f, wire - height * 0.06f},
                                {foot.x + reach * 0.4f, wire - height * 0.02f}, {foot.x + reach, wire + 1}, p.ink,
                                thick * 0.5f);
            draw.AddLine({foot.x + way * height * 0.05f, head}, {foot.x + way * height * 0.1f, head - height * 0.09f},
                         p.ink, thick * 0.5f);
            continue;
        }
        for (int i = 0; i < 3; ++i) {
            const float lean = reach * (0.12f + 0.22f * static_cast<float>(i));
            draw.AddBezierCubic({foot.x, head}, {foot.x + lean * 0.7f, head - height * 0.06f},
                                {foot.x + lean, head - height * 0.2f}, {foot.x + lean * 1.05f, foot.y - height * 0.98f},
                                p.ink, thick * 0.42f);
        }
    }
}

void draw_row_place(ImDrawList& draw, const Box& box, const Palette& p, float em) {
    draw.PushClipRect({box.x0, box.y0}, {box.x1, box.y1}, true);
    const float w = box.width(), h = box.height(), ground = box.y0 + h * 0.62f;
    draw.AddRectFilled({box.x0, box.y0}, {box.x1, box.y1}, mixed(p.field, p.raised, 0.5f));
    const ImU32 soil = mixed(p.panel, p.ink, 0.16f);
    // A hill, then the alley that runs to a point on the horizon.
    const ImVec2 far{box.x0 + w * 0.27f, ground};
    draw.AddBezierCubic({box.x0, ground - h * 0.05f}, {box.x0 + w * 0.3f, ground - h * 0.26f},
                        {box.x0 + w * 0.6f, ground - h * 0.02f}, {box.x1, ground - h * 0.14f}, p.line, 1.5f);
    draw.AddRectFilled({box.x0, ground}, {box.x1, box.y1}, soil);
    // One row, from the far point to close by: posts, two wires, vines between.
    const auto foot_at = [&](float t) {
        return ImVec2{far.x + (box.x1 + w * 0.02f - far.x) * t, ground + (box.y1 + h * 0.05f - ground) * t};
    };
    const auto tall_at = [&](float t) { return h * (0.04f + 0.98f * t); };
    const float near = 0.95f, away = 0.06f;
    for (const float up : {0.66f, 0.95f}) {
        const ImVec2 a = foot_at(away), b = foot_at(near);
        draw.AddLine({a.x, a.y - tall_at(away) * up}, {b.x, b.y - tall_at(near) * up}, p.soft,
                     std::max(1.0f, em * 0.08f));
    }
    float t = away;
    for (int i = 0; t < 0.72f; ++i, t *= 1.42f) {
        const ImVec2 foot = foot_at(t);
        if (i % 2 == 0)
            draw.AddLine(foot, {foot.x, foot.y - tall_at(t)}, mixed(p.soft, p.ink, 0.3f),
                         std::max(1.0f, tall_at(t) * 0.055f));
        else
            draw_small_vine(draw, foot, tall_at(t), p, true);
    }
    draw.PopClipRect();
}

void draw_shed_place(ImDrawList& draw, const Box& box, const Palette& p, float em) {
    draw.PushClipRect({box.x0, box.y0}, {box.x1, box.y1}, true);
    const float w = box.width(), h = box.height(), ground = box.y0 + h * 0.82f;
    draw.AddRectFilled({box.x0, box.y0}, {box.x1, box.y1}, mixed(p.field, p.raised, 0.5f));
    draw.AddRectFilled({box.x0, ground}, {box.x1, box.y1}, mixed(p.panel, p.ink, 0.16f));
    const float half = std::min(w * 0.3f, h * 0.75f), x = box.x0 + w * 0.5f, eave = box.y0 + h * 0.42f,
                ridge = box.y0 + h * 0.14f, line = std::max(1.5f, em * 0.11f);
    const ImVec2 gable[] = {{x - half, ground}, {x - half, eave}, {x, ridge}, {x + half, eave}, {x + half, ground}};
    draw.AddConvexPolyFilled(gable, 5, mixed(p.panel, p.ink, 0.08f));
    for (float board = -0.8f; board < 0.9f; board += 0.2f) {
        const float top = eave - (eave - ridge) * (1 - (board < 0 ? -board : board));
        draw.AddLine({x + board * half, top}, {x + board * half, ground}, mixed(p.panel, p.ink, 0.22f), 1);
    }
    draw.AddPolyline(gable, 5, p.ink, 0, line);
    const ImVec2 roof[] = {{x - half * 1.16f, eave + h * 0.045f}, {x, ridge}, {x + half * 1.16f, eave + h * 0.045f}};
    draw.AddPolyline(roof, 3, p.ink, 0, line * 1.8f);
    // An open door with light in it, shears and a saw on the wall beside.
    const float door = half * 0.3f, lintel = ground - h * 0.32f;
    draw.AddRectFilled({x - door, lintel}, {x + door, ground}, mixed(p.field, colour(mark::mend_now), 0.22f));
    draw.AddRect({x - door, lintel}, {x + door, ground}, p.ink, 0, 0, line);
    const float sx = x + half * 0.62f, sy = lintel + h * 0.03f, s = h * 0.09f;
    draw.AddLine({sx - s * 0.5f, sy}, {sx + s * 0.25f, sy + s * 1.5f}, p.ink, line);
    draw.AddLine({sx + s * 0.5f, sy}, {sx - s * 0.25f, sy + s * 1.5f}, p.ink, line);
    draw.AddCircleFilled({sx, sy + s * 0.95f}, line, p.ink);
    const float kx = x - half * 0.62f;
    draw.AddTriangleFilled({kx - s * 0.3f, sy}, {kx + s * 0.3f, sy}, {kx + s * 0.05f, sy + s * 1.7f}, p.ink);
    draw.PopClipRect();
}

} // namespace spurwright::ui
