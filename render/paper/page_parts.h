// What the drawings on paper share: handles of cairo and Pango that free themselves, and where bytes go.
#pragma once

#include <cairo.h>
#include <memory>
#include <pango/pangocairo.h>
#include <string>

namespace spurwright::paper {

struct Freed {
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_t* c) const { cairo_destroy(c); }
    void operator()(PangoLayout* l) const { g_object_unref(l); }
    void operator()(PangoFontDescription* f) const { pango_font_description_free(f); }
};
template <class T>
using Held = std::unique_ptr<T, Freed>;

inline cairo_status_t add_bytes(void* to, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace spurwright::paper
