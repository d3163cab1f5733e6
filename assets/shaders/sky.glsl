// An analytic sky: a clear one with a low sun, or overcast after the CIE's (1 + 2 sin e) / 3.
vec3 sky_colour(vec3 dir) {
    float e = max(dir.y, 0.0);
    if (to_sun.w > 0.5) return vec3(1.00, 1.04, 1.10) * (0.62 + 0.38 * e);
    float c = clamp(dot(dir, to_sun.xyz), -1.0, 1.0), g = acos(c);
    float glow = (0.91 + 6.0 * exp(-3.0 * g) + 0.45 * c * c) * (1.0 - exp(-0.32 / max(e, 0.04)));
    vec3 ramp = mix(vec3(.88, .86, .80), vec3(.20, .42, .84), 1.0 - exp(-3.6 * e));
    vec3 halo = vec3(1.0, .80, .55) * exp(-6.0 * g);
    return 1.25 * ramp * (0.55 + 0.45 * glow) + halo;
}

vec3 fogged(vec3 colour, vec3 place) {
    vec3 way = place - eye.xyz;
    float away = length(way);
    float thick = 1.0 - exp(-sky_horizon.w * max(away - 3.5, 0.0));
    vec3 dir = way / away;
    return mix(colour, sky_colour(normalize(vec3(dir.x, 0.04, dir.z))) * 0.92, thick);
}
