#include "render/ui/widgets.h"

#include <algorithm>
#include <cfloat>
#include <cstring>

namespace spurwright::ui {
namespace {

constexpr float mark_share = 1.5f; // width of a ring or box before a label, in em, gap included

ImFont* font_of(const Ui& ui, bool strong) { return strong ? ui.fonts.strong : ui.fonts.body; }

std::string id_of(std::string_view name) { return "###" + std::string(name); }

void draw_text(const Ui& ui, ImVec2 at, ImU32 ink, const std::string& words, float wrap, bool strong = false) {
    ImGui::GetWindowDrawList()->AddText(font_of(ui, strong), ui.em(), at, ink, words.data(),
                                        words.data() + words.size(), wrap);
}

struct Pressable {
    ImVec2 from, to;
    bool pressed = false, hovered = false, held = false, focused = false;
    ImVec2 middle() const { return {(from.x + to.x) / 2, (from.y + to.y) / 2}; }
};

// The one place where a press is found: pointer, Space through the walk by keys, Enter by us.
Pressable pressable(Ui& ui, std::string_view name, ImVec2 size, bool enabled) {
    Pressable p;
    size.x = std::max(size.x, ui.grid.row());
    size.y = std::max(size.y, ui.grid.row());
    if (!enabled) ImGui::BeginDisabled();
    p.pressed = ImGui::InvisibleButton(id_of(name).c_str(), size);
    p.hovered = ImGui::IsItemHovered();
    p.held = ImGui::IsItemActive();
    p.focused = enabled && ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    p.from = ImGui::GetItemRectMin();
    p.to = ImGui::GetItemRectMax();
    if (!enabled) ImGui::EndDisabled();
    if (p.focused && (ui.pressed({key::enter}) || ui.pressed({key::pad_enter}))) p.pressed = true;
    if (p.focused && !ui.scrolls) ImGui::SetScrollHereY(0.5f);
    return p;
}

void focus_ring(const Ui& ui, const Pressable& p) {
    if (!p.focused) return;
    const float out = 2;
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRect({p.from.x - out, p.from.y - out}, {p.to.x + out, p.to.y + out}, ui.colours().ink, corner + out, 0, 2);
}

void ground(const Ui& ui, const Pressable& p, bool quiet) {
    const Palette& c = ui.colours();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    if (!quiet || p.hovered) draw.AddRectFilled(p.from, p.to, p.hovered ? c.hover : c.raised, corner);
    if (!quiet) draw.AddRect(p.from, p.to, c.line, corner, 0, p.held ? 2.0f : 1.0f);
}

float free_width() { return std::max(ImGui::GetContentRegionAvail().x, 1.0f); }
float wrap_room(const Ui& ui, float wanted, float extra) {
    return std::min(wanted, std::max(free_width() - extra, ui.em() * 2));
}

} // namespace

ImVec2 text_size(const Ui& ui, const std::string& words, float width, bool strong) {
    return font_of(ui, strong)->CalcTextSizeA(ui.em(), FLT_MAX, width, words.data(), words.data() + words.size());
}

void record(Ui& ui, std::string_view name, const std::string& label, ImVec2 from, ImVec2 to, float text_width,
            bool target, bool enabled) {
    if (!ui.probe) return;
    const ImDrawList& draw = *ImGui::GetWindowDrawList();
    const ImVec2 least = draw.GetClipRectMin(), most = draw.GetClipRectMax();
    Probed probed;
    probed.name = name;
    probed.label = label;
    probed.box = {from.x, from.y, to.x, to.y};
    probed.seen = {std::max(from.x, least.x), std::max(from.y, least.y), std::min(to.x, most.x),
                   std::min(to.y, most.y)};
    probed.text_width = text_width;
    probed.target = target;
    probed.enabled = enabled;
    probed.focused = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    probed.panel = ui.panels;
    probed.over = ui.over;
    ui.probe->add(std::move(probed));
}

float button_width(const Ui& ui, const std::string& label, std::string_view hint) {
    float width = text_size(ui, label, 0).x + 2 * ui.grid.gap();
    if (!hint.empty()) width += text_size(ui, std::string(hint), 0).x + ui.grid.gap();
    return std::max(width + 1, ui.grid.row());
}

float choice_width(const Ui& ui, const std::string& label) {
    return text_size(ui, label, 0).x + ui.em() * mark_share + 2 * ui.grid.gap() + 1;
}

bool button(Ui& ui, std::string_view name, const std::string& label, const ButtonLook& look) {
    const Palette& c = ui.colours();
    const float gap = ui.grid.gap(), most = look.width > 0 ? look.width : free_width();
    const float hint_width = look.hint.empty() ? 0 : text_size(ui, std::string(look.hint), 0).x + gap;
    const float wrap = std::max(std::min(most, free_width()) - 2 * gap - hint_width - look.before, ui.em());
    const bool strong = look.weight == Weight::main;
    const ImVec2 size = text_size(ui, label, wrap, strong);
    const float width = look.width > 0 ? look.width : size.x + 2 * gap + hint_width + look.before + 1;
    const Pressable p = pressable(ui, name, {width, std::max(size.y + ui.em() * 0.8f, ui.grid.row())}, look.enabled);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    const bool filled = look.weight == Weight::main && look.enabled;
    if (filled) {
        draw.AddRectFilled(p.from, p.to, c.accent, corner);
        if (p.hovered) draw.AddRect(p.from, p.to, c.ink, corner, 0, 2);
    } else {
        ground(ui, p, look.weight == Weight::quiet || !look.enabled);
    }
    if (look.chosen) { // a bar at its foot and a full border
        draw.AddRectFilled({p.from.x, p.to.y - std::max(3.0f, ui.em() * 0.2f)}, p.to, c.accent, corner);
        draw.AddRect(p.from, p.to, c.ink, corner, 0, 2);
    }
    const ImU32 ink = filled ? c.on_accent : look.enabled ? c.ink : c.soft;
    const float text_x = hint_width > 0 || look.width == 0 || look.before > 0
                             ? p.from.x + gap + look.before
                             : p.from.x + std::max((p.to.x - p.from.x - size.x) / 2, gap);
    draw_text(ui, {text_x, p.middle().y - size.y / 2}, ink, label, wrap, strong);
    if (hint_width > 0) {
        const std::string hint(look.hint);
        const ImVec2 hint_size = text_size(ui, hint, 0);
        draw_text(ui, {p.to.x - gap - hint_size.x, p.middle().y - hint_size.y / 2}, filled ? c.on_accent : c.soft, hint,
                  0);
    }
    focus_ring(ui, p);
    record(ui, name, label, p.from, p.to, size.x + hint_width + look.before, true, look.enabled);
    return p.pressed && look.enabled;
}

bool choice(Ui& ui, std::string_view name, const std::string& label, bool chosen, bool enabled) {
    const Palette& c = ui.colours();
    const float gap = ui.grid.gap(), before = ui.em() * mark_share;
    const ImVec2 size = text_size(ui, label, wrap_room(ui, 1e6f, before + 2 * gap));
    const Pressable p = pressable(ui, name, {size.x + before + 2 * gap + 1, size.y + ui.em() * 0.8f}, enabled);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    ground(ui, p, !chosen);
    const ImVec2 ring{p.from.x + gap + ui.em() * 0.5f, p.middle().y};
    draw.AddCircle(ring, ui.em() * 0.42f, enabled ? c.ink : c.soft, 24, std::max(1.5f, ui.em() * 0.09f));
    if (chosen) draw.AddCircleFilled(ring, ui.em() * 0.24f, c.ink, 20);
    draw_text(ui, {p.from.x + gap + before, p.middle().y - size.y / 2}, enabled ? c.ink : c.soft, label,
              wrap_room(ui, 1e6f, before + 2 * gap));
    focus_ring(ui, p);
    record(ui, name, label, p.from, p.to, size.x + before, true, enabled);
    return p.pressed && enabled;
}

bool toggle(Ui& ui, std::string_view name, const std::string& label, bool on) {
    const Palette& c = ui.colours();
    const float gap = ui.grid.gap(), before = ui.em() * mark_share, wrap = wrap_room(ui, 1e6f, before + 2 * gap),
                s = ui.em() * 0.42f;
    const ImVec2 size = text_size(ui, label, wrap);
    const Pressable p = pressable(ui, name, {size.x + before + 2 * gap + 1, size.y + ui.em() * 0.8f}, true);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    ground(ui, p, true);
    const ImVec2 box{p.from.x + gap + ui.em() * 0.5f, p.middle().y};
    const float thick = std::max(1.5f, ui.em() * 0.09f);
    draw.AddRect({box.x - s, box.y - s}, {box.x + s, box.y + s}, c.ink, corner, 0, thick);
    if (on) {
        const ImVec2 tick[] = {
            {box.x - s * 0.6f, box.y}, {box.x - s * 0.1f, box.y + s * 0.55f}, {box.x + s * 0.65f, box.y - s * 0.6f}};
        draw.AddPolyline(tick, 3, c.ink, 0, thick * 1.5f);
    }
    draw_text(ui, {p.from.x + gap + before, p.middle().y - size.y / 2}, c.ink, label, wrap);
    focus_ring(ui, p);
    record(ui, name, label, p.from, p.to, size.x + before, true);
    return p.pressed;
}

bool list_row(Ui& ui, std::string_view name, const std::string& label, bool chosen, const std::string& second,
              float before, bool stands_out) {
    const Palette& c = ui.colours();
    const float gap = ui.grid.gap(), width = free_width(), wrap = std::max(width - 2 * gap - before, ui.em());
    const ImVec2 size = text_size(ui, label, wrap), whole = second.empty() ? ImVec2{0, 0} : text_size(ui, second, wrap);
    const bool beside = !second.empty() && size.x + whole.x + 3 * gap <= wrap && whole.y <= ui.em() * 1.5f;
    const float below = beside ? 0 : whole.y;
    const Pressable p = pressable(ui, name, {width, size.y + below + ui.em() * 0.8f}, true);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    ground(ui, p, !chosen && !stands_out);
    if (chosen) draw.AddRectFilled(p.from, {p.from.x + std::max(3.0f, ui.em() * 0.2f), p.to.y}, c.accent, corner);
    const ImVec2 at{p.from.x + gap + before, p.middle().y - (size.y + below) / 2};
    draw_text(ui, at, c.ink, label, wrap);
    if (beside)
        draw_text(ui, {p.to.x - gap - whole.x, at.y}, c.soft, second, 0);
    else if (!second.empty())
        draw_text(ui, {at.x, at.y + size.y}, c.soft, second, wrap);
    focus_ring(ui, p);
    record(ui, name, label, p.from, p.to, before + (beside ? size.x + whole.x : std::max(size.x, whole.x)), true);
    return p.pressed;
}

bool fold(Ui& ui, std::string_view name, const std::string& label, bool& open) {
    const Palette& c = ui.colours();
    const float gap = ui.grid.gap(), before = ui.em() * 1.1f, width = free_width(),
                wrap = std::max(width - 2 * gap - before, ui.em());
    const ImVec2 size = text_size(ui, label, wrap, true);
    const Pressable p = pressable(ui, name, {width, size.y + ui.em() * 0.8f}, true);
    if (p.pressed) open = !open;
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    ground(ui, p, true);
    const float s = ui.em() * 0.32f;
    const ImVec2 at{p.from.x + gap * 0.5f + s, p.middle().y};
    if (open)
        draw.AddTriangleFilled({at.x - s, at.y - s * 0.6f}, {at.x + s, at.y - s * 0.6f}, {at.x, at.y + s * 0.8f},
                               c.ink);
    else
        draw.AddTriangleFilled({at.x - s * 0.6f, at.y - s}, {at.x + s * 0.8f, at.y}, {at.x - s * 0.6f, at.y + s},
                               c.ink);
    draw_text(ui, {p.from.x + gap * 0.5f + before, p.middle().y - size.y / 2}, c.ink, label, wrap, true);
    focus_ring(ui, p);
    record(ui, name, label, p.from, p.to, size.x + before, true);
    return open;
}

bool slider(Ui& ui, std::string_view name, const std::string& shown, int& value, int low, int high, int step) {
    const Palette& c = ui.colours();
    const std::string base(name);
    const float row = ui.grid.row();
    const int before = value;
    if (button(ui, base + ".less", "–", {Weight::plain, value > low, false, row, {}})) value -= step;
    ImGui::SameLine(0, ui.grid.half());
    const float text_width = text_size(ui, shown, 0).x,
                track =
                    std::max(ui.em() * 5, std::min(ui.em() * 14, free_width() - text_width - row - 3 * ui.grid.gap()));
    const Pressable p = pressable(ui, base + ".track", {track, row}, true);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    if (p.held && p.to.x > p.from.x) {
        const float share = std::clamp((ImGui::GetIO().MousePos.x - p.from.x) / (p.to.x - p.from.x), 0.0f, 1.0f);
        value = low + step * static_cast<int>(share * static_cast<float>((high - low) / step) + 0.5f);
    }
    const float share = static_cast<float>(value - low) / static_cast<float>(std::max(high - low, 1));
    const float y = p.middle().y, knob = p.from.x + ui.em() * 0.5f + share * (p.to.x - p.from.x - ui.em());
    draw.AddRectFilled({p.from.x, y - 2}, {p.to.x, y + 2}, c.line, 2);
    draw.AddRectFilled({p.from.x, y - 2}, {knob, y + 2}, c.accent, 2);
    draw.AddRectFilled({knob - ui.em() * 0.35f, y - ui.em() * 0.6f}, {knob + ui.em() * 0.35f, y + ui.em() * 0.6f},
                       c.ink, corner);
    focus_ring(ui, p);
    record(ui, base + ".track", shown, p.from, p.to, 0, true);
    ImGui::SameLine(0, ui.grid.half());
    if (button(ui, base + ".more", "+", {Weight::plain, value < high, false, row, {}})) value += step;
    ImGui::SameLine(0, ui.grid.gap());
    row_text(ui, shown);
    value = std::clamp(value, low, high);
    return value != before;
}

bool text_field(Ui& ui, std::string_view name, const std::string& hint, Field& field, float width, bool over_list) {
    const Palette& c = ui.colours();
    char typed[512];
    const std::size_t kept = std::min(field.text.size(), sizeof typed - 1);
    std::memcpy(typed, field.text.data(), kept);
    typed[kept] = 0;
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, ImVec2(ui.grid.gap(), (ui.grid.row() - ui.em()) / 2));
    ImGui::SetNextItemWidth(std::min(width, free_width()));
    if (field.focus) ImGui::SetKeyboardFocusHere();
    field.focus = false;
    // A field asked for history keeps up and down to itself: else they would move the focus off it, and Enter would
    // press what stands there.
    // What stands in it is taken as a whole, so that typing anew replaces it.
    const int keeps = over_list ? ImGuiInputTextFlags_CallbackHistory | ImGuiInputTextFlags_AutoSelectAll : ImGuiInputTextFlags_None;
    const bool entered = ImGui::InputText(id_of(name).c_str(), typed, sizeof typed,
                                          ImGuiInputTextFlags_EnterReturnsTrue | keeps,
                                          [](ImGuiInputTextCallbackData*) { return 0; });
    ImGui::PopStyleVar();
    field.text = typed;
    field.active = ImGui::IsItemActive();
    const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRect(from, to, field.active ? c.ink : c.line, corner, 0, field.active ? 2.0f : 1.0f);
    float text_width = 0;
    if (field.text.empty()) {
        const ImVec2 size = text_size(ui, hint, 0);
        draw.PushClipRect(from, to, true);
        draw_text(ui, {from.x + ui.grid.gap(), (from.y + to.y - size.y) / 2}, c.soft, hint, 0);
        draw.PopClipRect();
        text_width = size.x + ui.grid.gap();
    }
    record(ui, name, field.text.empty() ? hint : field.text, from, to, text_width, true);
    return entered;
}

void rule_line(Ui& ui) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::Dummy({free_width(), 1});
    ImGui::GetWindowDrawList()->AddLine(at, {at.x + free_width(), at.y}, ui.colours().line, 1);
}

void flow(Ui& ui, float width) {
    const float last = ImGui::GetItemRectMax().x, end = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    if (last + ui.grid.gap() + width <= end) ImGui::SameLine(0, ui.grid.gap());
}

} // namespace spurwright::ui
