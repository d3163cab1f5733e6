// The shape alone: part names for tests, or the outline of what is chosen, pushed out by some pixels.
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec2 uv;
layout(location = 3) in uint part;
uniform float grow_px;
uniform bool thin;  // never narrower than a pixel
uniform float back; // metres that it is put farther from the eye, in depth alone
flat out uint part_of;
void main() {
    vec3 p = position;
    if (thin) {
        vec3 middle = position - normal * uv.x;
        float half_pixel = (clip_from_world * vec4(middle, 1.0)).w * bounce.w;
        p = middle + normal * max(uv.x, half_pixel * 1.05);
    }
    vec4 c = clip_from_world * vec4(p, 1.0);
    // Lines of crossings would fill wood that is few pixels wide: they come in between 400 and 800 pixels a metre.
    float grown = back > 0.0 ? grow_px * smoothstep(400.0, 800.0, 0.5 / (c.w * bounce.w)) : grow_px;
    if (grown > 0.0) {
        vec4 out_there = clip_from_world * vec4(p + normal * 0.001, 1.0);
        vec2 way = (out_there.xy / out_there.w - c.xy / c.w) * picture.xy;
        float size = length(way);
        if (size > 1e-6) c.xy += way / size * 2.0 * grown / picture.xy * c.w;
    }
    if (back > 0.0) {
        vec4 behind = clip_from_world * vec4(p + back * normalize(p - eye.xyz), 1.0);
        c.z = behind.z / behind.w * c.w;
    }
    part_of = part;
    gl_Position = c;
}
