// One material a compile, small things (SMALL) together: both sides of a branch would be paid for.
uniform sampler2D detail;
uniform vec4 look;   // rgb, tint
uniform float dim;

centroid in vec3 place;
centroid in vec3 n;
centroid in vec3 along;
centroid in vec2 at;
centroid in vec3 organ;  // age / 16 years, open share, node
flat in uint kind;
#ifdef THIN
in float coverage;
#endif
layout(location = 0) out vec4 colour;

const uint FRESH = 2u, DEAD = 4u, RIBBON = 8u, SHADED = 16u, BEHIND = 32u, ROOTSTOCK = 64u, UNRIPE = 128u;
const uint HARM = 3u, SPOTTED = 1u, SCARRED = 2u, CRACKED = 3u;  // of a cane's joint

float height(vec4 d) {
#if defined(CANE)
    return d.g;
#elif defined(TWO_YEAR)
    return d.b * 0.8 + d.r * 0.4;
#else
    return d.r;
#endif
}

vec3 bumped(vec3 normal, vec2 uv, float strength) {
#ifdef BUMP
    float texels = length(fwidth(uv) * vec2(256.0, 512.0));
    float fade = clamp(2.5 - 0.35 * texels, 0.0, 1.0);
    if (fade <= 0.0) return normal;
    float h = height(texture(detail, uv));
    float hu = height(texture(detail, uv + vec2(1.0 / 256.0, 0.0))), hv = height(texture(detail, uv + vec2(0.0, 1.0 / 512.0)));
    vec3 b = normalize(cross(normal, along)), t = along;
    return normalize(normal + fade * strength * 6.0 * ((hu - h) * b + 0.5 * (hv - h) * t));
#else
    return normal;
#endif
}

vec3 bark(inout vec3 normal, out float rough, out float sheen) {
    vec4 d = texture(detail, at);
    vec3 a;
    sheen = 0.35;
#if defined(CANE)
    vec4 wide = texture(detail, at * vec2(1.0, 0.31) + vec2(0.37, 0.11));
    float tone = clamp(1.15 * wide.a + 0.5 * d.a - 0.32 + 0.22 * (d.g - 0.5), 0.0, 1.0);
    a = mix(linear_of(vec3(112, 84, 61)), linear_of(vec3(181, 147, 111)), tone);
    a *= 1.0 - 0.30 * (1.0 - d.g);
    if ((kind & SHADED) != 0u) a = mix(a, linear_of(vec3(150, 140, 122)), 0.5);
    // Darker at nodes; below each bud the pale crescent that the leaf left.
    float turn = abs(fract(at.x - ((kind & BEHIND) != 0u ? 0.5 : 0.0) + 0.5) - 0.5);
    a *= 1.0 - 0.25 * organ.z * organ.z;
    vec2 off = vec2((1.0 - organ.z) / 0.20, turn / 0.13);
    float scar = 1.0 - smoothstep(0.55, 1.0, dot(off, off));
    a = mix(a, linear_of(vec3(172, 150, 124)), 0.55 * scar);
    // Small dark breathing pores.
    float pores = texture(detail, at * vec2(2.0, 3.3) + 0.21).a;
    a *= 1.0 - 0.30 * smoothstep(0.68, 0.85, pores);
    // Bark that never ripened stays dull and dark; disease leaves sunken spots, a wire rubs both sides to the wood, a
    // cracked base is split.
    if ((kind & UNRIPE) != 0u) a = mix(a, linear_of(vec3(74, 74, 60)), 0.8);
    uint harm = kind & HARM;
    float alley = abs(normal.z) + 0.06 * (d.a - 0.5);  // 1 where it looks into an alley, as the wires of a pair do
    if (harm == SPOTTED) a = mix(a, linear_of(vec3(46, 36, 32)), 0.9 * smoothstep(0.54, 0.58, mix(pores, wide.a, 0.35)));
    else if (harm == SCARRED) a = mix(a * (1.0 - 0.6 * smoothstep(0.94, 1.0, alley + 0.3 * organ.z)), linear_of(vec3(164, 151, 126)) * (0.8 + 0.4 * d.g), smoothstep(1.08, 1.12, alley + 0.3 * organ.z));
    else if (harm == CRACKED) a *= 1.0 - 0.85 * smoothstep(0.94, 0.97, alley + 0.3 * (wide.a - 0.5));
    a = mix(a, vec3(dot(a, vec3(.3, .5, .2))) * vec3(.96, .97, 1.06), 0.12 * (0.5 - 0.5 * normal.y));
    if ((kind & DEAD) != 0u) a = mix(a, linear_of(vec3(120, 112, 102)), 0.7);
    if ((kind & ROOTSTOCK) != 0u) a *= vec3(0.92, 0.86, 0.84);
    normal = bumped(normal, at, 0.10);
    rough = 0.62 + 0.2 * (d.a - 0.5);
    sheen = d.a > 0.45 ? 0.35 : 0.12;
#elif defined(TWO_YEAR)
    vec4 long_peel = texture(detail, at * vec2(2.0, 0.45));
    float fibre = texture(detail, at * vec2(2.0, 0.45)).r, fine = texture(detail, at * vec2(5.0, 0.7) + 0.3).r;
    float peel = smoothstep(0.25, 0.8, long_peel.b);
    a = mix(linear_of(vec3(58, 48, 41)), linear_of(vec3(100, 90, 81)), clamp(0.35 * peel + 0.45 * fibre + 0.35 * fine - 0.1, 0.0, 1.0));
    // Strings of bark wide enough to show at arm's length, where the finer ones run together.
    a *= (0.58 + 0.56 * texture(detail, at * vec2(0.5, 0.2) + 0.17).r) * (0.86 + 0.20 * fine);
    a *= 1.0 - 0.34 * organ.z * organ.z;
    if ((kind & DEAD) != 0u) a = mix(a, linear_of(vec3(120, 112, 102)), 0.7);
    normal = bumped(normal, at * vec2(2.0, 0.45), 0.30);
    rough = 0.88;
    sheen = 0.1;
#else
    // Grooves end: the crevice's depth follows the broad variation along the wood.
    vec4 close = texture(detail, at * vec2(2.0, 3.1) + vec2(0.13, 0.4));
    float groove = clamp(0.55 * texture(detail, at * vec2(1.0, 2.3)).r + 0.45 * close.r + 0.55 * (texture(detail, at * vec2(1.0, 1.2)).a - 0.5), 0.0, 1.0);
    float strip = smoothstep(0.18, 0.85, groove);
    a = mix(linear_of(vec3(66, 55, 47)), linear_of(vec3(118, 106, 94)), strip) * (0.72 + 0.5 * close.a);
    if ((kind & DEAD) != 0u) a = mix(a, linear_of(vec3(124, 118, 110)), 0.7);
    if ((kind & ROOTSTOCK) != 0u) a *= vec3(0.92, 0.86, 0.84);
    normal = bumped(normal, at * vec2(2.0, 3.1) + vec2(0.13, 0.4), 0.65);
    rough = 0.92;
    sheen = 0.05;
#endif
    return a;
}

vec3 cut_wood(out float rough) {
    float r = length(at - 0.5) * 2.0, turn = atan(at.y - 0.5, at.x - 0.5);
    float winters = organ.x * 255.0 / 16.0;
    rough = 0.5;
    float thin = fwidth(r);
    if ((kind & FRESH) != 0u) {
        vec3 wood = linear_of(vec3(222, 204, 160));
        float rays = 0.5 + 0.5 * sin(turn * 34.0);
        float fade = 1.0 - smoothstep(0.2, 0.35, 34.0 * thin / 6.2832);
        vec3 c = wood * (1.0 - 0.08 * rays * fade);
        c = mix(linear_of(vec3(150, 112, 76)), c, smoothstep(0.27, 0.33, r));
        if ((kind & DEAD) == 0u) c = mix(c, linear_of(vec3(120, 160, 70)), smoothstep(0.78, 0.82, r) * (1.0 - smoothstep(0.91, 0.95, r)));
        else c = mix(linear_of(vec3(120, 92, 66)), c, 0.35);
        return mix(c, linear_of(vec3(110, 86, 62)), smoothstep(0.93, 0.98, r));
    }
    // Old: grey-brown, dried cracks, never green.
    float weathered = clamp(winters / 3.0, 0.0, 1.0);
    vec3 c = mix(linear_of(vec3(150, 128, 98)), linear_of(vec3(104, 95, 85)), weathered);
    vec4 d = texture(detail, at * 0.6 + vec2(organ.x * 7.0, 0.3));
    c *= 0.75 + 0.5 * d.a;
    float crack = abs(fract(turn / 6.2832 * 5.0 + 0.6 * d.a) - 0.5) * r;
    c *= 1.0 - 0.40 * (1.0 - smoothstep(0.005, 0.03, crack)) * smoothstep(0.12, 0.3, r) * (1.0 - smoothstep(0.6, 0.85, r)) * weathered;
    c *= 0.7 + 0.45 * texture(detail, at * 1.7).r;
    c = mix(linear_of(vec3(74, 60, 48)), c, smoothstep(0.10, 0.24, r));
    rough = 0.9;
    return mix(c, linear_of(vec3(92, 80, 68)), smoothstep(0.82, 1.0, r));
}

vec3 soil(inout vec3 normal) {
    vec2 p = place.xz;
    mat2 turned = mat2(0.7986, 0.6018, -0.6018, 0.7986);
    float fade = 1.0 / (1.0 + 0.045 * dot(place - eye.xyz, place - eye.xyz));
    float macro = texture(detail, p / vec2(5.3, 10.6) + vec2(0.2, 0.6)).a * 0.6 + texture(detail, turned * p / vec2(13.0, 21.0)).a * 0.4;
    float meso = texture(detail, p / vec2(0.61, 1.22), -0.3).a * 0.5 + texture(detail, turned * p / vec2(0.97, 1.9) + vec2(0.4, 0.1), -0.3).a * 0.5;
    float micro = texture(detail, turned * p / vec2(0.17, 0.31), -0.6).a;
    // Blades and stalks lie every way: two fibrous readings across each other keep the sward from looking like felt.
    float blades = max(texture(detail, turned * p / vec2(0.23, 0.31) + vec2(0.1, 0.7), -0.7).r, texture(detail, turned * p.yx / vec2(0.19, 0.27), -0.7).r);
    float tone = 1.0 + 0.46 * (macro - 0.5) + (0.03 + 0.50 * fade) * (meso - 0.5) + fade * 0.75 * (micro - 0.5);
    float from_row = abs(fract(p.y / picture.w + 0.5) - 0.5) * picture.w;
    tone += (0.45 + 0.35 * (meso - 0.5)) * fade * (blades - 0.60);
    float grassed = smoothstep(0.30, 0.62, from_row + 0.5 * (macro - 0.5) + 0.25 * (meso - 0.5));
    float straw = clamp(grassed * (0.5 + 0.9 * (macro - 0.4) + (0.2 + 0.9 * fade) * (micro - 0.5)), 0.0, 1.0);
    vec3 a = mix(linear_of(vec3(92, 76, 61)), linear_of(vec3(136, 124, 94)), straw);
    a = mix(a, linear_of(vec3(92, 98, 62)), grassed * smoothstep(0.45, 0.75, 0.6 * texture(detail, turned * p / vec2(2.9, 5.1), -1.0).a + 0.4 * micro) * 0.7);
    // Contact: the soil is darker at the foot of every vine.
    float row = floor(p.y / picture.w + 0.5), along_row = p.x / eye.w - 0.37 * row;
    vec2 foot = vec2(eye.w * (along_row - floor(along_row + 0.5)), p.y - picture.w * row);
    tone *= 1.0 - 0.4 * exp(-dot(foot, foot) / 0.012);
    return a * max(tone, 0.25);
}

#ifdef SMALL
uniform int stuff;

// Buds, cut faces, dry stalks, fallen leaves and straw, and what people put up: few pixels each, so one compile serves all.
vec3 small(inout float rough, inout float sheen, inout float ao) {
    vec3 a;
    if (stuff == STUFF_BUD) {
        float scales = smoothstep(0.05, 0.0, abs(at.y - 0.30 - 0.05 * sin(at.x * 12.6))) + 0.8 * smoothstep(0.05, 0.0, abs(at.y - 0.58 - 0.05 * sin(at.x * 12.6 + 2.0)));
        a = mix(linear_of(vec3(112, 74, 50)), linear_of(vec3(152, 118, 92)), smoothstep(0.1, 1.0, at.y));
        a *= 1.0 - 0.45 * clamp(scales, 0.0, 1.0);
        a = mix(a, linear_of(vec3(206, 190, 168)), 0.45 * smoothstep(0.80, 1.0, at.y));
        if ((kind & DEAD) != 0u) a = linear_of(vec3(70, 62, 56));
        ao *= 0.55 + 0.45 * smoothstep(0.0, 0.35, at.y);
        rough = 0.7;
    } else if (stuff == STUFF_FACE) {
        a = cut_wood(rough);
    } else if (stuff == STUFF_TIMBER) {
        vec4 d = texture(detail, at * vec2(1.0, 0.7)), e = texture(detail, at * vec2(3.0, 0.35) + vec2(0.3, 0.0));
        a = linear_of(vec3(128, 116, 101)) * (0.55 + 0.5 * d.a + 0.35 * texture(detail, at * vec2(2.0, 0.5)).r) * (1.0 - 0.5 * smoothstep(0.42, 0.15, e.r));
        a *= mix(0.6, 1.0, smoothstep(0.0, 0.09, place.y));
    } else if (stuff == STUFF_METAL) {
        a = linear_of(vec3(116, 117, 116)) * (0.8 + 0.4 * texture(detail, at).a);
        a = mix(a, linear_of(vec3(120, 98, 80)), 0.35 * smoothstep(0.40, 0.95, texture(detail, at * 1.7 + 0.3).a));
        rough = 0.5;
        sheen = 0.8;
    } else if (stuff == STUFF_RUBBER) {
        a = vec3(0.032, 0.036, 0.034);
        rough = 0.55;
        sheen = 0.7;
    } else if (stuff == STUFF_BACKDROP) {
        a = organ.x < 0.2 ? vec3(.10, .13, .15) : organ.x < 0.5 ? vec3(.085, .095, .07) : vec3(.07, .065, .045);
    } else if (stuff == STUFF_TWINE) {
        a = mix(linear_of(vec3(176, 156, 112)), linear_of(vec3(128, 116, 96)), clamp(organ.x * 8.0, 0.0, 1.0));
    } else if (stuff == STUFF_LEAF || stuff == STUFF_CARD) {
        a = organ.x > 0.7 ? mix(linear_of(vec3(84, 64, 48)), linear_of(vec3(118, 92, 66)), at.x) * (0.7 + 0.6 * texture(detail, place.xz * 9.0).a)
          : organ.x > 0.5 ? mix(linear_of(vec3(70, 82, 44)), linear_of(vec3(112, 120, 70)), at.x)
                          : mix(linear_of(vec3(172, 156, 116)), linear_of(vec3(112, 98, 76)), organ.x * 2.0);
        ao = 0.85;
    } else {
        a = linear_of(vec3(62, 48, 46)) * (0.8 + 0.4 * texture(detail, at).a);
    }
    return a;
}
#endif

void main() {
    vec3 normal = normalize(n);
    float ao = organ.y, rough = 0.9, sheen = 0.1;
    vec3 albedo;
#if defined(CANE) || defined(TWO_YEAR) || defined(OLD)
    if ((kind & RIBBON) != 0u && !gl_FrontFacing) normal = -normal;
    albedo = bark(normal, rough, sheen);
#elif defined(GROUND)
    albedo = soil(normal);
#elif defined(SMALL)
    if ((stuff == STUFF_LEAF || stuff == STUFF_CARD) && !gl_FrontFacing) normal = -normal;
    albedo = small(rough, sheen, ao);
#elif defined(THIN)
    if (organ.x > 0.99) {
        albedo = linear_of(vec3(170, 172, 174));
        rough = 0.5;
        sheen = 1.2;
        // Below two pixels the whole width is shaded alike: else a wire breaks up into beads.
        if (coverage < 0.999) normal = normalize(vec3(0.0, 0.75, 0.66) - dot(vec3(0.0, 0.75, 0.66), along) * along);
        // Zinc mirrors more than it scatters: the sky above, dark soil below, so that its lower edge stands out from pale wood.
        albedo *= mix(0.25, 1.0, smoothstep(0.05, 0.5, normal.y));
    } else {
        albedo = linear_of(vec3(88, 70, 55));
        if (coverage < 0.999) normal = normalize(eye.xyz - place);
        ao *= 0.9;
    }
#endif
    vec3 c = lit(albedo, normal, place, ao, rough, sheen);
#ifdef SMALL
    if (stuff == STUFF_BACKDROP) c = albedo * (sky_horizon.rgb * 1.3 + 0.25 * sun.rgb);
#endif
    vec3 shown = agx(fogged(c, place) * sun.w);
    if (dim > 0.0) shown = mix(shown, agx(sky_colour(vec3(0.0, 0.05, -1.0)) * sun.w), dim);
    shown = mix(shown, look.rgb, look.a);
    shown += dither(gl_FragCoord.xy);
#ifdef THIN
    colour = vec4(shown, coverage);
#else
    colour = vec4(shown, 1.0);
#endif
}
