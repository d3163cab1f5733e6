uniform vec4 paint;  // a: 0 writes the part's number instead
uniform float set;   // 0 the vine, 1 its surroundings
flat in uint part_of;
layout(location = 0) out vec4 colour;
void main() {
    uint number = part_of + 1u;
    colour = paint.a > 0.0 ? vec4(paint.rgb, 1.0) : vec4(float(number & 255u) / 255.0, float(number >> 8) / 255.0, set, 1.0);
}
