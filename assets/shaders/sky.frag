uniform mat4 world_from_clip;
in vec2 ndc;
layout(location = 0) out vec4 colour;
void main() {
    vec4 far = world_from_clip * vec4(ndc, 1.0, 1.0);
    vec3 dir = normalize(far.xyz / far.w - eye.xyz);
    colour = vec4(agx(sky_colour(dir) * sun.w) + dither(gl_FragCoord.xy), 1.0);
}
