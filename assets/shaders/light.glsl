uniform sampler2DShadow shadow_map;

// Three tones of the dome, for a face that looks to n.
vec3 dome(vec3 n) {
    vec3 c = n.y > 0.0 ? mix(sky_horizon.rgb, sky_up.rgb, n.y) : mix(sky_horizon.rgb, bounce.rgb, pow(-n.y, 0.7));
    // Along the row other wood stands in the light's way: round things look round under any sky.
    return c * sky_up.w * (1.0 - 0.38 * n.x * n.x);
}

float sunlit(vec3 place, vec3 n) {
    vec3 at = (shadow_from_world * vec4(place + n * 0.004, 1.0)).xyz * 0.5 + 0.5;
    if (any(lessThan(at.xy, vec2(0.002))) || any(greaterThan(at.xy, vec2(0.998))) || at.z > 1.0) return 1.0;
#if TAPS == 1
    return texture(shadow_map, at);
#else
    float sum = 0.0;
    vec2 texel = 1.2 / vec2(textureSize(shadow_map, 0));
    for (int y = -1; y <= 1; ++y)
        for (int x = -1; x <= 1; ++x) sum += texture(shadow_map, vec3(at.xy + vec2(x, y) * texel, at.z));
    return sum / 9.0;
#endif
}

float open_share(float ao) { return 0.35 + 0.65 * ao; }

// Light on a matt face with a faint sheen: no coloured shine on wood.
vec3 lit(vec3 albedo, vec3 n, vec3 place, float ao, float roughness, float sheen) {
    vec3 c = albedo * dome(n) * open_share(ao);
    if (to_sun.w < 0.5) {
        float facing = max(dot(n, to_sun.xyz), 0.0);
        float s = facing > 0.0 ? sunlit(place, n) * facing : 0.0;
        vec3 view = normalize(eye.xyz - place), h = normalize(view + to_sun.xyz);
        float a = roughness * roughness, a2 = a * a, nh = max(dot(n, h), 0.0);
        float d = nh * nh * (a2 - 1.0) + 1.0;
        float shine = a2 / (3.14159 * d * d) * (0.04 + 0.96 * pow(1.0 - max(dot(view, h), 0.0), 5.0)) * 0.25;
        c += sun.rgb * s * (albedo + vec3(shine * sheen * ao));
    } else {
        vec3 view = normalize(eye.xyz - place);
        float rim = pow(1.0 - max(dot(n, view), 0.0), 4.0);
        c += sheen * 0.05 * rim * dome(reflect(-view, n)) * ao;
    }
    return c;
}

vec3 linear_of(vec3 bytes) { return pow(bytes / 255.0, vec3(2.2)); }
