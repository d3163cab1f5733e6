#include "sim/core/ids.h"

#include <charconv>

namespace spurwright {
namespace {

template <class Tag>
std::string lettered(char letter, Id<Tag> id) {
    return id ? letter + std::to_string(id.value) : std::string("-");
}

std::optional<std::uint32_t> whole_number(std::string_view text, std::uint32_t highest) {
    if (text.empty() || (text.size() > 1 && text[0] == '0')) return std::nullopt;
    std::uint32_t value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc{} || end != text.data() + text.size() || value > highest) return std::nullopt;
    return value;
}

}  // namespace

std::string name_of(AxisId id) { return lettered('a', id); }
std::string name_of(WoundId id) { return lettered('c', id); }
std::string name_of(TieId id) { return lettered('t', id); }
std::string name_of(BrushId id) { return lettered('b', id); }
std::string name_of(WireId id) { return lettered('w', id); }
std::string name_of(NodeId id) { return id ? name_of(axis_of(id)) + "." + std::to_string(index_of(id)) : std::string("-"); }
std::string name_of(BudId id) { return id ? name_of(node_of(id)) + "/" + std::to_string(slot_of(id)) : std::string("-"); }

std::optional<std::uint32_t> read_row(char letter, std::string_view name) {
    if (name.empty() || name[0] != letter) return std::nullopt;
    const auto value = whole_number(name.substr(1), highest_axis);
    return value && *value > 0 ? value : std::nullopt;
}

std::optional<AxisId> read_axis(std::string_view name) {
    const auto value = read_row('a', name);
    return value ? std::optional<AxisId>(AxisId{*value}) : std::nullopt;
}

std::optional<NodeId> read_node(std::string_view name) {
    const std::size_t dot = name.find('.');
    if (dot == std::string_view::npos) return std::nullopt;
    const auto axis = read_axis(name.substr(0, dot));
    const auto index = whole_number(name.substr(dot + 1), highest_node_index);
    if (!axis || !index) return std::nullopt;
    return node_id(*axis, *index);
}

}  // namespace spurwright
