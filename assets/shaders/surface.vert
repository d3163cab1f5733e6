layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec2 uv;
layout(location = 3) in uint part;
layout(location = 4) in vec2 axis;
layout(location = 5) in vec3 bytes;  // age, occlusion, node
layout(location = 6) in uint flags;

centroid out vec3 place;
centroid out vec3 n;
centroid out vec3 along;
centroid out vec2 at;
centroid out vec3 organ;
flat out uint kind;
#ifdef THIN
out float coverage;
#endif

vec3 from_octahedral(vec2 o) {
    vec3 d = vec3(o, 1.0 - abs(o.x) - abs(o.y));
    if (d.z < 0.0) d.xy = (1.0 - abs(d.yx)) * vec2(d.x >= 0.0 ? 1.0 : -1.0, d.y >= 0.0 ? 1.0 : -1.0);
    return normalize(d);
}

void main() {
    vec3 p = position;
#ifdef THIN
    // Never narrower than a pixel: what is added in width is taken off in coverage.
    vec3 middle = position - normal * uv.x;
    float half_pixel = (clip_from_world * vec4(middle, 1.0)).w * bounce.w;
    float radius = max(uv.x, half_pixel * 1.05);
    coverage = clamp(uv.x / radius * 1.15, 0.0, 1.0);
    p = middle + normal * radius;
#endif
    place = p;
    n = normal;
    along = from_octahedral(axis);
    at = uv;
    organ = bytes;
    kind = flags;
    gl_Position = clip_from_world * vec4(p, 1.0);
}
