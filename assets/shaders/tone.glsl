// AgX in the surface shader, no second pass. Constants after B. Wrensch, "Minimal AgX Implementation". The picture is
// written as it is shown (display values), so the target needs no conversion.
vec3 agx(vec3 c) {
#ifdef NO_TONE
    return c;
#endif
    const mat3 inset = mat3(.842479062, .0423282422, .0423756549, .0784335999, .878468636, .0784336, .0792237451, .0791661274, .879142974);
    const mat3 outset = mat3(1.19687900, -.0528968517, -.0529716355, -.0980208811, 1.15190312, -.0980434501, -.0990297440, -.0989611768, 1.15107367);
    c = inset * max(c, vec3(1e-6));
    vec3 x = clamp((log2(c) + 12.47393) / 16.5, 0.0, 1.0);
    vec3 x2 = x * x, x4 = x2 * x2;
    x = 15.5 * x4 * x2 - 40.14 * x4 * x + 31.96 * x4 - 6.868 * x2 * x + 0.4298 * x2 + 0.1191 * x - 0.00232;
    x = pow(max(x, vec3(0.0)), vec3(1.18));
    float grey = dot(x, vec3(.2126, .7152, .0722));
    x = mix(vec3(grey), x, 1.08);
    return clamp(outset * x, 0.0, 1.0);
}

// Half a step of eight bits, by a fixed 4 x 4 table: no bands in the sky, the same picture every time.
float dither(vec2 pixel) {
    int x = int(mod(pixel.x, 4.0)), y = int(mod(pixel.y, 4.0));
    int a = x ^ y;
    int rank = ((a & 1) << 3) | ((x & 1) << 2) | ((a & 2)) | ((x & 2) >> 1);
    return (float(rank) / 15.0 - 0.5) / 255.0;
}
